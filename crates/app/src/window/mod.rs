//! The window: a thin shell around the screen.

mod desktop;

use eframe::egui;
use trammel_console::Fault;
use trammel_persistence::ScreenState;
use trammel_screen::{Bench, LEAST_WINDOW, Start, fonts};

use desktop::{Desktop, state_folder};

/// Name of the application for the desktop: window grouping, icon, file type.
const APP_ID: &str = "trammel";

/// Opens the window and stays until it is closed.
pub(crate) fn open(start: Start) -> Result<(), Fault> {
    if !has_display() {
        return Err(no_window("no display"));
    }
    let left =
        state_folder().map_or_else(ScreenState::default, |folder| ScreenState::load(&folder));
    let viewport = egui::ViewportBuilder::default()
        .with_title("Trammel")
        .with_app_id(APP_ID)
        .with_inner_size(egui::Vec2::from(left.window.map(f32::from)).max(LEAST_WINDOW))
        .with_min_inner_size(LEAST_WINDOW)
        .with_maximized(left.maximised)
        .with_drag_and_drop(true)
        .with_icon(icon());
    let options = eframe::NativeOptions {
        viewport,
        ..Default::default()
    };
    let shell = move |creation: &eframe::CreationContext<'_>| {
        creation.egui_ctx.set_fonts(fonts::definitions());
        let desktop = Desktop::new(creation.egui_ctx.clone());
        let mut bench = Bench::at_once(Box::new(desktop), start);
        bench.offer_tour();
        let shell: Box<dyn eframe::App> = Box::new(Shell {
            bench,
            title: String::new(),
        });
        Ok(shell)
    };
    eframe::run_native("Trammel", options, Box::new(shell)).map_err(|e| no_window(&e.to_string()))
}

struct Shell {
    bench: Bench,
    title: String,
}

impl eframe::App for Shell {
    fn ui(&mut self, ui: &mut egui::Ui, _frame: &mut eframe::Frame) {
        self.bench.ui(ui);
        let title = self.bench.window_title();
        if title != self.title {
            ui.ctx()
                .send_viewport_cmd(egui::ViewportCommand::Title(title.clone()));
            self.title = title;
        }
    }

    fn on_exit(&mut self, _: Option<&eframe::glow::Context>) {
        self.bench.leave();
    }
}

/// On Linux a display is named by the environment; elsewhere there always is one.
fn has_display() -> bool {
    let named = |name| std::env::var_os(name).is_some_and(|v| !v.is_empty());
    !cfg!(all(unix, not(target_os = "macos")))
        || named("DISPLAY")
        || named("WAYLAND_DISPLAY")
        || named("WAYLAND_SOCKET")
}

fn no_window(why: &str) -> Fault {
    let why = why.split_whitespace().collect::<Vec<_>>().join(" ");
    Fault::Window(format!(
        "no window can be opened here ({why}); these work without one: trammel check, sweep, tune, map, scatter, lift, sheets, picture, demo"
    ))
}

fn icon() -> egui::IconData {
    eframe::icon_data::from_png_bytes(include_bytes!("../../../../assets/icon.png"))
        .unwrap_or_default()
}
