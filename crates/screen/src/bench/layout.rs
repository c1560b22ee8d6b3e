//! Where things stand on the screen.

use egui::{CentralPanel, Frame, Margin, Panel, Ui};
use trammel_build::LengthUnit;

use super::Bench;
use crate::{
    bottom_bar::{self, BottomBarInput},
    drawing::{DrawingEvent, DrawingInput},
    message,
    notebook::{self, NotebookInput},
    request::Request,
    top_strip::{self, TopStripInput},
};

const TOP: f32 = 44.0;
const BOTTOM: f32 = 58.0;

/// Snap of drags and nudges in a unit: plain and fine.
pub(super) fn snap(unit: LengthUnit) -> (f64, f64) {
    match unit {
        LengthUnit::Inch => (1.0 / 16.0, 1.0 / 64.0),
        LengthUnit::Millimetre => (1.0, 0.1),
    }
}

impl Bench {
    /// All panels; what was done on the drawing is given back.
    pub(super) fn panels(&mut self, ui: &mut Ui, requests: &mut Vec<Request>) -> Vec<DrawingEvent> {
        let full = ui.available_width();
        let tokens = self.tokens.clone();
        let strip = Frame::new().fill(tokens.panel).inner_margin(Margin::symmetric(14, 0));
        Panel::top("strip").exact_size(TOP).frame(strip).show(ui, |ui| {
            let file_name = self.files.name();
            let input = TopStripInput {
                history: &self.history,
                unsaved: self.files.differs_from_file(self.history.build()),
                file_name: file_name.as_deref(),
                recent: self.files.recent(),
                tokens: &tokens,
            };
            top_strip::ui(ui, &input, &self.view, requests);
        });
        let width = (0.335 * full).clamp(380.0, 560.0);
        let page = Frame::new().fill(tokens.panel);
        Panel::right("notebook").exact_size(width).frame(page).show(ui, |ui| {
            let input = NotebookInput { build: self.history.build(), results: &self.results, tokens: &tokens };
            notebook::ui(ui, &input, &mut self.view, requests);
        });
        let bar = Frame::new().fill(tokens.panel).inner_margin(Margin::symmetric(14, 7));
        Panel::bottom("bar").exact_size(BOTTOM).frame(bar).show(ui, |ui| {
            let input = BottomBarInput {
                build: self.history.build(),
                study: self.results.study.as_ref(),
                tokens: &tokens,
            };
            bottom_bar::ui(ui, &input, &self.view, requests);
        });
        let table = CentralPanel::no_frame().show(ui, |ui| {
            let corner = ui.max_rect().left_bottom();
            (self.table(ui), corner)
        });
        let (events, corner) = table.inner;
        if let Some(said) = &self.message {
            if message::ui(ui.ctx(), said, &tokens, corner) {
                self.message = None;
            }
        }
        events
    }

    fn table(&mut self, ui: &mut Ui) -> Vec<DrawingEvent> {
        let Some(study) = &self.results.study else {
            ui.painter().rect_filled(ui.max_rect(), 0.0, self.tokens.table);
            return Vec::new();
        };
        let unit = self.history.build().unit;
        let (snap, fine_snap) = snap(unit);
        let input = DrawingInput {
            build: self.history.build(),
            study,
            axle: self.view.axle,
            travel: self.view.travel,
            rack: self.view.rack,
            selected: self.view.selected,
            hovered: self.view.hovered,
            snap,
            fine_snap,
            instant_centres: self.view.instant_centres,
            marks: &self.results.marks,
            tokens: &self.tokens,
        };
        self.drawing.ui(ui, &input)
    }
}
