//! An empty window of the size of Trammel's, on the same toolkit with the same features: the yardstick for start, memory and size. It holds an empty panel, so
//! that it paints with the toolkit's own shader as every window does, and the fonts that Trammel carries, so that it could show a word.

use std::sync::Arc;

use eframe::egui::{self, FontData, FontDefinitions, FontFamily};

const FONTS: [(&str, &[u8]); 2] = [
    (
        "plain",
        include_bytes!("../../../../../assets/fonts/DejaVuSans.ttf"),
    ),
    (
        "bold",
        include_bytes!("../../../../../assets/fonts/DejaVuSans-Bold.ttf"),
    ),
];

struct Empty;

impl eframe::App for Empty {
    fn ui(&mut self, ui: &mut egui::Ui, _frame: &mut eframe::Frame) {
        egui::CentralPanel::default().show(ui, |_| {});
    }
}

fn main() -> eframe::Result {
    let options = eframe::NativeOptions {
        viewport: egui::ViewportBuilder::default()
            .with_title("Empty")
            .with_inner_size([1280.0, 800.0]),
        ..Default::default()
    };
    eframe::run_native(
        "Empty",
        options,
        Box::new(|creation| {
            creation.egui_ctx.set_fonts(fonts());
            Ok(Box::new(Empty))
        }),
    )
}

fn fonts() -> FontDefinitions {
    let mut fonts = FontDefinitions::empty();
    for (name, bytes) in FONTS {
        let data = Arc::new(FontData::from_static(bytes));
        fonts.font_data.insert(name.into(), data);
    }
    for family in [FontFamily::Proportional, FontFamily::Monospace] {
        let names = FONTS.map(|(name, _)| name.into()).to_vec();
        fonts.families.insert(family, names);
    }
    fonts
}
