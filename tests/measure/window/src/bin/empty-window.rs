//! An empty window of the size of Trammel's, on the same toolkit with the same features: the yardstick for start, memory and size. It holds an empty panel, so
//! that it paints with the toolkit's own shader as every window does; without one the first mesh would be put off for ever.

use eframe::egui;

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
    eframe::run_native("Empty", options, Box::new(|_| Ok(Box::new(Empty))))
}
