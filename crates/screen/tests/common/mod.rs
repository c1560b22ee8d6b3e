//! A bench in the UI harness, with a machine around it that tests can look into.

#![allow(
    dead_code,
    clippy::expect_used,
    clippy::panic,
    reason = "each test uses a part of it; a test stops where it fails"
)]

pub mod odd;
pub mod pages;
pub mod seen;

use std::{
    cell::RefCell,
    path::{Path, PathBuf},
    rc::Rc,
};

use egui::{Key, Modifiers, Pos2, vec2};
use egui_kittest::{Harness, kittest::Queryable};
use trammel_build::{AxleName, PointName, PointRef, Triple};
use trammel_raster::HarnessRenderer;
use trammel_screen::{
    Bench, Start,
    background::jobs_in_hand,
    drawing::{Projection, handle_name},
    fonts,
    host::{Host, Pick, Picked},
};

/// What happened to the machine.
#[derive(Default)]
pub struct Machine {
    pub asked: Vec<Pick>,
    pub answer: Option<Picked>,
    pub folder: Option<PathBuf>,
    pub quits: usize,
    pub opened: Vec<PathBuf>,
}

/// A machine that does what a test says.
#[derive(Clone, Default)]
pub struct TestHost(pub Rc<RefCell<Machine>>);

impl Host for TestHost {
    fn ask_for_file(&mut self, pick: &Pick, _start: Option<&Path>) {
        self.0.borrow_mut().asked.push(pick.clone());
    }
    fn answer(&mut self) -> Option<Picked> {
        self.0.borrow_mut().answer.take()
    }
    fn state_folder(&self) -> Option<PathBuf> {
        self.0.borrow().folder.clone()
    }
    fn open_in_viewer(&mut self, path: &Path) -> Result<(), String> {
        self.0.borrow_mut().opened.push(path.to_owned());
        Ok(())
    }
    fn quit(&mut self) {
        self.0.borrow_mut().quits += 1;
    }
}

pub type Screen = Harness<'static, Bench>;

/// The bench at 1280 x 800.
pub fn bench(start: Start) -> (Screen, TestHost) {
    let host = TestHost::default();
    let mut screen = bench_on(host.clone(), start);
    rest(&mut screen);
    (screen, host)
}

pub fn bench_on(host: TestHost, start: Start) -> Screen {
    let mut screen = screen_of(Bench::new(Box::new(host), start));
    screen.run_steps(3);
    screen
}

/// A bench in the harness after its first frame.
pub fn screen_of(bench: Bench) -> Screen {
    Harness::builder()
        .with_size(vec2(1280.0, 800.0))
        .with_step_dt(1.0 / 60.0)
        .with_max_steps(20)
        .with_render_cursor(false)
        .renderer(HarnessRenderer::new())
        .with_context_setup(|ctx| ctx.set_fonts(fonts::definitions()))
        .build_ui_state(|ui, bench: &mut Bench| bench.ui(ui), bench)
}

pub fn demo() -> Screen {
    bench(Start::Demo).0
}

/// A demo build in the Tune stage.
pub fn tune(name: &str) -> Screen {
    let (mut screen, _) = bench(Start::NamedDemo(name.into()));
    click(&mut screen, "Tune");
    screen.run_steps(4);
    screen
}

/// Steps until something beside the window is done; a minute at most.
pub fn wait(screen: &mut Screen, mut done: impl FnMut(&Screen) -> bool) {
    for _ in 0..6000 {
        screen.step();
        if done(screen) {
            return;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
    }
    panic!("still not done");
}

/// Steps until no figure is being worked out: one that comes in moves what stands below it, away from under the hand.
pub fn rest(screen: &mut Screen) {
    if jobs_in_hand(&screen.ctx) > 0 {
        wait(screen, |screen| jobs_in_hand(&screen.ctx) == 0);
        screen.run_steps(2);
    }
}

/// The left inner tie-rod joint of the front axle.
pub const INNER: PointRef = PointRef {
    axle: AxleName::Front,
    side: trammel_build::Side::Left,
    point: PointName::TieRodInner,
};

pub fn place(screen: &Screen, point: PointRef) -> Triple {
    screen
        .state()
        .build()
        .point(point)
        .expect("the point is there")
}

/// Where a point is on the screen.
pub fn on_screen(screen: &Screen, point: PointRef, view: Projection) -> Pos2 {
    screen
        .get_by_label(&handle_name(point, view))
        .rect()
        .center()
}

pub fn click_point(screen: &mut Screen, point: PointRef, view: Projection) {
    let at = on_screen(screen, point, view);
    screen.hover_at(at);
    screen.step();
    screen.drag_at(at);
    screen.step();
    screen.drop_at(at);
    screen.run_steps(2);
}

/// Presses a point and moves it, without letting go.
pub fn drag_from(screen: &mut Screen, point: PointRef, view: Projection, by: egui::Vec2) -> Pos2 {
    let from = on_screen(screen, point, view);
    pull(screen, from, by)
}

/// Takes hold of what is at a place and moves it, without letting go; where the hand is then.
pub fn pull(screen: &mut Screen, from: Pos2, by: egui::Vec2) -> Pos2 {
    screen.hover_at(from);
    screen.step();
    screen.drag_at(from);
    screen.step();
    let moves = 10;
    for i in 1..=moves {
        screen.hover_at(from + by * (i as f32 / moves as f32));
        screen.step();
    }
    from + by
}

pub fn drag(screen: &mut Screen, point: PointRef, view: Projection, by: egui::Vec2) {
    let to = drag_from(screen, point, view, by);
    screen.drop_at(to);
    screen.run_steps(2);
}

pub fn press(screen: &mut Screen, modifiers: Modifiers, key: Key) {
    screen.key_press_modifiers(modifiers, key);
    screen.run_steps(2);
}

pub fn click(screen: &mut Screen, label: &str) {
    rest(screen);
    screen.get_by_label(label).click();
    screen.run_steps(3);
}

/// Clicks what may be below the edge of its page.
pub fn find_and_click(screen: &mut Screen, label: &str) {
    rest(screen);
    screen.get_by_label(label).scroll_to_me();
    screen.run_steps(30);
    click(screen, label);
}

/// Clicks a control by its kind and name, wherever on its page it is.
pub fn use_it(screen: &mut Screen, role: egui::Role, label: &str) {
    rest(screen);
    screen.get_by_role_and_label(role, label).scroll_to_me();
    screen.run_steps(30);
    screen.get_by_role_and_label(role, label).click();
    screen.run_steps(3);
}

/// Replaces what stands in a field of a page, whose word may have the same name, and ends with Enter.
pub fn fill(screen: &mut Screen, name: &str, text: &str) {
    use_it(screen, egui::Role::TextInput, name);
    press(screen, Modifiers::COMMAND, Key::A);
    if text.is_empty() {
        press(screen, Modifiers::NONE, Key::Backspace);
    } else {
        let field = screen.get_by_role_and_label(egui::Role::TextInput, name);
        field.type_text(text);
        screen.step();
    }
    press(screen, Modifiers::NONE, Key::Enter);
}

/// Types into a field by its name and ends with Enter.
pub fn type_in(screen: &mut Screen, field: &str, text: &str) {
    rest(screen);
    screen.get_by_label(field).click();
    screen.run_steps(2);
    screen.key_press_modifiers(Modifiers::COMMAND, Key::A);
    screen.step();
    screen.get_by_label(field).type_text(text);
    screen.step();
    screen.key_press(Key::Enter);
    screen.run_steps(3);
}

/// Largest toe change of the left front wheel, degrees.
pub fn largest(screen: &Screen) -> f64 {
    screen
        .state()
        .results()
        .study
        .as_ref()
        .expect("studied")
        .front
        .left
        .score
        .largest
        .to_degrees()
}
