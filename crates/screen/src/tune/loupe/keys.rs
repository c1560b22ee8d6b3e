//! The loupe by keyboard: arrows go over the map with a reading place, Enter puts the joint there.

use egui::{EventFilter, Key, Modifiers, Response, Ui};

/// What plus and minus do to the map's width.
pub(super) const WIDER: f64 = 1.5;

/// What was done by keyboard in this frame, with the focus on the loupe.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Keys {
    /// Steps that the reading place goes to the right and up the screen.
    pub steps: [f64; 2],
    /// Fine steps, the same ways.
    pub fine_steps: [f64; 2],
    /// The joint is wanted at the reading place.
    pub put: bool,
    /// The reading place goes back to the joint.
    pub home: bool,
    /// The map is wanted so many times as wide.
    pub widen: Option<f64>,
}

/// Reads the keys while the loupe has the focus.
pub(super) fn read(ui: &Ui, response: &Response) -> Option<Keys> {
    if !response.has_focus() {
        return None;
    }
    let arrows = EventFilter {
        horizontal_arrows: true,
        vertical_arrows: true,
        ..EventFilter::default()
    };
    ui.memory_mut(|m| m.set_focus_lock_filter(response.id, arrows));
    Some(ui.input_mut(|i| {
        let mut keys = Keys::default();
        for (key, axis, sign) in [
            (Key::ArrowRight, 0, 1.0),
            (Key::ArrowLeft, 0, -1.0),
            (Key::ArrowUp, 1, 1.0),
            (Key::ArrowDown, 1, -1.0),
        ] {
            let fine = i.count_and_consume_key(Modifiers::SHIFT, key);
            let plain = i.count_and_consume_key(Modifiers::NONE, key);
            keys.fine_steps[axis] += sign * fine as f64;
            keys.steps[axis] += sign * plain as f64;
        }
        keys.put = i.consume_key(Modifiers::NONE, Key::Enter);
        keys.home = i.consume_key(Modifiers::NONE, Key::Home);
        let wider = [Key::Plus, Key::Equals].map(|k| i.consume_key(Modifiers::NONE, k));
        let narrower = i.consume_key(Modifiers::NONE, Key::Minus);
        keys.widen = match (wider.contains(&true), narrower) {
            (true, _) => Some(WIDER),
            (_, true) => Some(1.0 / WIDER),
            _ => None,
        };
        keys
    }))
}
