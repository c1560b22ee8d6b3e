//! The row of page names at the head of a stage's notebook.

use egui::{Button, RichText, Role, Stroke, Ui, WidgetInfo};

use crate::tokens::{Tokens, type_size};

/// A row of page names.
pub(super) struct PageNames<'a, P> {
    /// All pages, in order.
    pub pages: &'a [P],
    /// The one that is open.
    pub open: P,
    /// What a page is called.
    pub label: fn(P) -> &'static str,
    /// What a screen reader says before it, where the name alone would mean something else too.
    pub before: &'static str,
    /// Between two names, points.
    pub gap: f32,
}

impl<P: Copy + PartialEq> PageNames<'_, P> {
    /// Paints it; the page that was clicked.
    pub fn ui(&self, ui: &mut Ui, tokens: &Tokens) -> Option<P> {
        let mut clicked = None;
        ui.horizontal_wrapped(|ui| {
            ui.spacing_mut().item_spacing = egui::vec2(self.gap, 0.0);
            for page in self.pages {
                if self.name(ui, tokens, *page).clicked() {
                    clicked = Some(*page);
                }
            }
        });
        ui.add_space(2.0);
        clicked
    }

    fn name(&self, ui: &mut Ui, tokens: &Tokens, page: P) -> egui::Response {
        let chosen = page == self.open;
        let label = (self.label)(page);
        let colour = if chosen { tokens.ink } else { tokens.ink_soft };
        let text = RichText::new(label).font(type_size::head()).color(colour);
        let response = ui.add(Button::new(text).frame(false).selected(chosen));
        let name = format!("{}{label}", self.before);
        response.widget_info(|| WidgetInfo::selected(Role::Tab, true, chosen, &name));
        if chosen {
            let r = response.rect;
            ui.painter()
                .hline(r.x_range(), r.bottom(), Stroke::new(2.0, tokens.accent));
        }
        response
    }
}
