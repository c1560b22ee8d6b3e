//! The few controls on the table itself: each view's title, which lets it fill the table, and Fit.

use egui::{
    Align2, Color32, Painter, Rect, Response, Role, Sense, Stroke, StrokeKind, Ui, Vec2,
    WidgetInfo, pos2, vec2,
};

use super::{
    Drawing, Projection,
    layout::{self, Place},
};
use crate::tokens::{Tokens, type_size, weight};

const HEIGHT: f32 = 20.0;
const ICON: f32 = 9.0;

/// The controls of a frame.
pub(crate) struct Controls {
    fit: Response,
    titles: Vec<(Projection, Response)>,
    filled: bool,
}

/// Places the controls and asks whether they were used. They are inked later by [`Controls::ink`].
pub(crate) fn place(ui: &Ui, rect: Rect, place: &Place, fill: Option<Projection>) -> Controls {
    let corner = pos2(rect.right() - 8.0, rect.top() + 7.0);
    let fit_rect = Align2::RIGHT_TOP.anchor_size(corner, vec2(34.0, HEIGHT));
    let fit = ui.interact(fit_rect, ui.scope_id().with("fit"), Sense::click());
    fit.widget_info(|| WidgetInfo::labeled(Role::Button, true, "Fit"));
    let fit = fit.on_hover_text("Let the linkage fill the table (or double-click the empty table)");
    let titles = layout::shown(fill)
        .filter_map(|projection| {
            let at = title_rect(ui, rect, place, fill, projection)?;
            Some((projection, title(ui, at, fill, projection)))
        })
        .collect();
    Controls {
        fit,
        titles,
        filled: fill.is_some(),
    }
}

/// Where a view's title stands: the top left of its part of the table, on the border between the views. `None` where that part is hardly in sight.
fn title_rect(
    ui: &Ui,
    rect: Rect,
    place: &Place,
    fill: Option<Projection>,
    projection: Projection,
) -> Option<Rect> {
    let cell = place.cell(rect, projection);
    if cell.width() < 50.0 || cell.height() < 40.0 {
        return None;
    }
    let galley = ui.painter().layout_no_wrap(
        projection.title().to_owned(),
        type_size::small(),
        Color32::PLACEHOLDER,
    );
    let on_border = fill.is_none() && projection != Projection::Plan;
    let top = if on_border {
        cell.top() - 0.5 * HEIGHT
    } else {
        cell.top() + 7.0
    };
    let top = top.max(rect.top() + 7.0);
    let size = vec2(galley.size().x + ICON + 18.0, HEIGHT);
    Some(Rect::from_min_size(pos2(cell.left() + 8.0, top), size))
}

fn title(ui: &Ui, at: Rect, fill: Option<Projection>, projection: Projection) -> Response {
    let id = ui.scope_id().with(("title", projection));
    let response = ui.interact(at, id, Sense::click());
    let name = match fill {
        Some(_) => "Show all three views".to_owned(),
        None => format!("Fill the table with the {} view", projection.word()),
    };
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, name.as_str()));
    response.on_hover_text(name)
}

impl Controls {
    /// Where they stand, for names to keep off.
    pub(crate) fn rects(&self) -> impl Iterator<Item = Rect> {
        let titles = self.titles.iter().map(|(_, r)| r.rect);
        titles.chain(std::iter::once(self.fit.rect))
    }

    /// Does what was asked for.
    pub(crate) fn apply(&self, drawing: &mut Drawing) {
        if self.fit.clicked() {
            drawing.refit();
        }
        if let Some((projection, _)) = self.titles.iter().find(|(_, r)| r.clicked()) {
            drawing.fill = (!self.filled).then_some(*projection);
        }
    }

    /// Inks them over the drawing.
    pub(crate) fn ink(&self, painter: &Painter, tokens: &Tokens) {
        let colour = |r: &Response| {
            if r.hovered() || r.has_focus() {
                tokens.accent
            } else {
                tokens.ink_soft
            }
        };
        let fit = &self.fit;
        let back = tokens.wash(tokens.table, 0.85);
        painter.rect(
            fit.rect.shrink(0.5),
            4.0,
            back,
            Stroke::new(
                weight::HAIR,
                if fit.hovered() {
                    tokens.accent
                } else {
                    tokens.rule
                },
            ),
            StrokeKind::Inside,
        );
        let middle = fit.rect.center();
        painter.text(
            middle,
            Align2::CENTER_CENTER,
            "Fit",
            type_size::small(),
            colour(fit),
        );
        for (_, response) in &self.titles {
            self.ink_title(painter, response, colour(response), tokens);
        }
        for response in self.titles.iter().map(|(_, r)| r).chain([fit]) {
            if response.has_focus() {
                let ring = Stroke::new(weight::NARROW, tokens.accent);
                painter.rect_stroke(response.rect, 4.0, ring, StrokeKind::Inside);
            }
        }
    }

    fn ink_title(&self, painter: &Painter, response: &Response, colour: Color32, tokens: &Tokens) {
        let rect = response.rect;
        painter.rect_filled(
            rect.shrink2(vec2(0.0, 2.0)),
            3.0,
            tokens.wash(tokens.table, 0.8),
        );
        let name = self.titles.iter().find(|(_, r)| r.id == response.id);
        let title = name.map_or("", |(p, _)| p.title());
        let left = pos2(rect.left() + 4.0, rect.center().y);
        painter.text(left, Align2::LEFT_CENTER, title, type_size::small(), colour);
        let middle = pos2(rect.right() - 5.0 - ICON * 0.5, rect.center().y);
        let icon_colour = if response.hovered() {
            tokens.accent
        } else {
            tokens.ink_faint
        };
        self.icon(painter, middle, icon_colour);
    }

    /// Four corners that point out to fill the table, or in to go back to three views.
    fn icon(&self, painter: &Painter, at: egui::Pos2, colour: Color32) {
        let stroke = Stroke::new(weight::NARROW, colour);
        let (far, near) = (ICON * 0.5, ICON * 0.16);
        let (corner, arm) = if self.filled {
            (near, far)
        } else {
            (far, near)
        };
        for (x, y) in [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)] {
            let c = at + vec2(x, y) * corner;
            let ends: [Vec2; 2] = [vec2(x * arm, y * corner), vec2(x * corner, y * arm)];
            painter.line_segment([c, at + ends[0]], stroke);
            painter.line_segment([c, at + ends[1]], stroke);
        }
    }
}
