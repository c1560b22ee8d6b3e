//! What is done on the loupe.

use egui::{CursorIcon, Id, Pos2, Rect, Response, Role, Sense, Ui, Vec2, WidgetInfo, pos2};

use super::{
    keys::{self, Keys},
    place::Place,
};
/// What is done on the loupe.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Touch {
    /// Place under the pointer, in the unit square.
    pub over: Option<[f32; 2]>,
    /// The joint is wanted here.
    pub to: Option<[f32; 2]>,
    /// The button went down on the map in this frame.
    pub began: bool,
    /// The button was let go in this frame.
    pub ended: bool,
    /// The map is wanted so many times as wide.
    pub widen: Option<f64>,
    /// The loupe is wanted larger, or as it was.
    pub resize: bool,
    /// What is done by keyboard while the loupe has the focus.
    pub keys: Option<Keys>,
    /// The map's node for a screen reader.
    pub id: Option<Id>,
    /// The button that has the keyboard's focus.
    pub focused_button: Option<u8>,
}

/// Reads what is done on it; wheel turns over it are taken here, so that the table does not zoom.
pub(crate) fn touch(ui: &Ui, place: &Place, large: bool) -> Touch {
    // The frame takes what would go to joints under it.
    ui.interact(
        place.outer,
        ui.scope_id().with("loupe frame"),
        Sense::CLICK | Sense::DRAG,
    );
    let id = ui.scope_id().with("loupe");
    let response = ui.interact(place.map, id, Sense::click_and_drag());
    response.widget_info(|| WidgetInfo::labeled(Role::Figure, true, "Loupe of the toe map"));
    let pointer = ui.input(|i| i.pointer.interact_pos());
    let inside = |p: &Pos2| place.map.contains(*p);
    let mut touch = Touch {
        over: pointer
            .filter(|p| response.contains_pointer() && inside(p))
            .map(|p| place.part(p)),
        keys: keys::read(ui, &response),
        id: Some(id),
        ..Touch::default()
    };
    press(ui, place, &response, pointer, &mut touch);
    let size = if large {
        "Loupe smaller"
    } else {
        "Loupe larger"
    };
    let wheel = " (or the wheel over the loupe)";
    let buttons = [(size, ""), ("Map wider", wheel), ("Map narrower", wheel)];
    let [resize, plus, minus] =
        [0, 1, 2].map(|n: u8| button(ui, place, n, buttons[usize::from(n)]));
    let focused = [&resize, &plus, &minus].map(Response::has_focus);
    touch.focused_button = (0..BUTTONS).zip(focused).find(|(_, f)| *f).map(|(n, _)| n);
    touch.resize = resize.clicked();
    let by_key = touch.keys.and_then(|k| k.widen);
    touch.widen = match (minus.clicked(), plus.clicked()) {
        (true, _) => Some(1.0 / keys::WIDER),
        (_, true) => Some(keys::WIDER),
        _ => by_key,
    };
    touch
}

/// Takes the wheel before the table does.
pub(crate) fn wheel(ui: &Ui, place: &Place) -> Option<f64> {
    let over = ui
        .input(|i| i.pointer.hover_pos())
        .is_some_and(|p| place.outer.contains(p));
    if !over {
        return None;
    }
    let turned = ui.input_mut(|i| std::mem::take(&mut i.smooth_scroll_delta.y));
    (turned != 0.0).then(|| (-0.0037 * f64::from(turned)).exp())
}

fn press(ui: &Ui, place: &Place, response: &Response, pointer: Option<Pos2>, touch: &mut Touch) {
    if touch.over.is_some() {
        ui.set_cursor_icon(CursorIcon::Crosshair);
    }
    let down = response.is_pointer_button_down_on();
    let clamped = pointer.map(|p| place.part(place.map.clamp(p)));
    touch.began = down && ui.input(|i| i.pointer.primary_pressed());
    touch.ended = response.drag_stopped() || response.clicked();
    if down || touch.ended {
        touch.to = clamped;
    }
}

fn button(ui: &Ui, place: &Place, index: u8, (name, more): (&str, &str)) -> Response {
    let at = button_rect(place, index);
    let id = ui.scope_id().with(("loupe button", index));
    let response = ui.interact(at, id, Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, name));
    response.on_hover_text(format!("{name}{more}"))
}

/// Where a button stands beside the caption, the last one at the right end.
pub(super) fn button_rect(place: &Place, index: u8) -> Rect {
    let right = place.map.right() - 22.0 * f32::from(BUTTONS - 1 - index);
    Rect::from_min_size(
        pos2(right - 20.0, place.map.bottom() + 4.0),
        Vec2::splat(19.0),
    )
}

/// Buttons beside the caption.
pub(super) const BUTTONS: u8 = 3;
