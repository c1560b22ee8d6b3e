//! Where the keyboard is: brought into sight, and ringed, whatever control has it.

use egui::{
    Context, Event, Id, Key, Stroke, StrokeKind,
    accesskit::{Action, ActionRequest, TreeId},
};

use super::Bench;
use crate::tokens::weight;

/// Keys that lead from one control to another.
const LEADING: [Key; 5] = [
    Key::Tab,
    Key::ArrowUp,
    Key::ArrowDown,
    Key::ArrowLeft,
    Key::ArrowRight,
];

/// The focus as it was after the last frame.
#[derive(Debug, Default)]
pub(super) struct Focus {
    on: Option<Id>,
    /// Whether a key led to it. The pointer shows by itself where it is.
    by_key: bool,
    /// A control to be scrolled into sight.
    hidden: Option<Id>,
}

impl Bench {
    /// Asks the page that holds a control out of sight to show it, as a screen reader would ask.
    pub(super) fn bring_focus_into_sight(&mut self, ctx: &Context) {
        let Some(id) = self.focus.hidden.take() else {
            return;
        };
        let request = ActionRequest {
            action: Action::ScrollIntoView,
            target_tree: TreeId::ROOT,
            target_node: id.accesskit_id(),
            data: None,
        };
        ctx.input_mut(|i| i.events.push(Event::AccessKitActionRequest(request)));
    }

    /// Notes where the focus went in this frame and rings it.
    pub(super) fn follow_focus(&mut self, ctx: &Context) {
        let on = ctx.memory(egui::Memory::focused);
        let moved = on != self.focus.on;
        self.focus.on = on;
        let (led, tab, pressed) = ctx.input(|i| {
            let led = LEADING.iter().any(|key| i.key_pressed(*key));
            (led, i.key_pressed(Key::Tab), i.pointer.any_pressed())
        });
        if pressed {
            self.focus.by_key = false;
        } else if tab || (led && moved) {
            self.focus.by_key = true;
        }
        if !self.focus.by_key {
            return;
        }
        let Some(control) = on.and_then(|id| ctx.read_response(id)) else {
            return;
        };
        let seen = control.interact_rect;
        if moved && !seen.expand(1.0).contains_rect(control.rect) {
            self.focus.hidden = on;
            ctx.request_repaint();
        }
        if seen.is_positive() {
            let ring = Stroke::new(weight::SYMBOL, self.tokens.accent);
            ctx.layer_painter(control.layer_id).rect_stroke(
                seen.expand(1.5),
                4.0,
                ring,
                StrokeKind::Outside,
            );
        }
    }
}
