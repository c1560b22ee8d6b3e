//! Nudging the selected point with the arrow keys.

use egui::{Context, Key, Modifiers};
use trammel_build::Triple;

use super::{Bench, layout::snap};
use crate::{drawing::Projection, request::Request};

impl Bench {
    /// The nudges that were pressed in this frame, as edits.
    pub(super) fn nudges(&mut self, ctx: &Context) -> Vec<Request> {
        let focused = ctx.memory(egui::Memory::focused);
        let reached = focused.and_then(|id| self.drawing.point_of(id));
        if (focused.is_some() && reached.is_none()) || self.history.is_open() {
            // The keys belong to the control that has the focus, such as a slider or a field.
            return Vec::new();
        }
        // A point that Tab has come to is the one that the keys move, and is selected by that.
        let Some(at) = reached.or(self.view.selected) else {
            return Vec::new();
        };
        let (step, fine) = snap(self.history.build().unit);
        let looking = self.drawing.fill.unwrap_or(Projection::Front);
        let mut requests = Vec::new();
        let mut here = self.history.build().point(at);
        for key in [
            Key::ArrowLeft,
            Key::ArrowRight,
            Key::ArrowUp,
            Key::ArrowDown,
            Key::PageUp,
            Key::PageDown,
        ] {
            for (modifiers, step) in [(Modifiers::SHIFT, fine), (Modifiers::NONE, step)] {
                let times = ctx.input_mut(|i| i.count_and_consume_key(modifiers, key));
                let (Some(from), 1..) = (here, times) else {
                    continue;
                };
                let (axis, sign) = direction(looking, key);
                let mut to: Triple = from;
                if let Some(slot) = to.get_mut(axis) {
                    *slot = on_grid(*slot + sign * step * times as f64, step);
                }
                here = Some(to);
                if self.view.selected != Some(at) && requests.is_empty() {
                    requests.push(Request::Select(Some(at)));
                }
                requests.push(Request::Edit(self.view.moving(at, to)));
            }
        }
        requests
    }
}

/// Which coordinate a key moves, and which way, in the projection that is looked at: the point goes where the arrow points on screen. Page keys
/// move across the picture's plane.
fn direction(looking: Projection, key: Key) -> (usize, f64) {
    const X: usize = 0;
    const Y: usize = 1;
    const Z: usize = 2;
    match (looking, key) {
        (Projection::Front | Projection::Plan, Key::ArrowLeft) => (Y, -1.0),
        (Projection::Front | Projection::Plan, Key::ArrowRight) => (Y, 1.0),
        (Projection::Front | Projection::Side, Key::ArrowUp) => (Z, 1.0),
        (Projection::Front | Projection::Side, Key::ArrowDown) => (Z, -1.0),
        (Projection::Plan, Key::ArrowUp) => (X, -1.0),
        (Projection::Plan, Key::ArrowDown) => (X, 1.0),
        (Projection::Side, Key::ArrowLeft) => (X, 1.0),
        (Projection::Side, Key::ArrowRight) => (X, -1.0),
        (Projection::Front, Key::PageUp) => (X, 1.0),
        (Projection::Front, _) => (X, -1.0),
        (Projection::Plan, Key::PageUp) => (Z, 1.0),
        (Projection::Plan, _) => (Z, -1.0),
        (Projection::Side, Key::PageUp) => (Y, 1.0),
        (Projection::Side, _) => (Y, -1.0),
    }
}

/// Rounds away what repeated steps leave behind, far below the step itself.
fn on_grid(value: f64, step: f64) -> f64 {
    let fine = step / 4096.0;
    (value / fine).round() * fine
}
