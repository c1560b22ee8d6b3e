//! Keep-outs by keyboard and screen reader: one stop each; arrows move it, with Alt its second corner; Delete takes it off.

use egui::{EventFilter, Key, Modifiers, Rect, Role, Sense, Ui, WidgetInfo};
use trammel_build::{Axis, KeepOutCorners};

use super::{
    super::{DrawingEvent, DrawingInput, Projection, sheet::Sheet},
    KeepOutEvent,
    drag::{pulled, shifted},
    keep_out_name,
    outline::outline,
};

/// Puts the stops on the screen, in the main view, and tells what was done by key.
pub(crate) fn run(
    ui: &Ui,
    input: &DrawingInput<'_>,
    sheet: &Sheet,
    (projection, cell): (Projection, Rect),
) -> Vec<DrawingEvent> {
    let mut events = Vec::new();
    for (index, keep_out) in input.build.keep_outs.iter().enumerate() {
        if !keep_out.corners.counts_for(input.axle) {
            continue;
        }
        let rect = outline(&keep_out.corners, input.build.unit, sheet, cell, projection);
        let id = ui.scope_id().with(("keep-out", index));
        let at = rect.intersect(cell);
        let at = if at.is_positive() { at } else { cell };
        let stop = ui.interact(at, id, Sense::focusable_noninteractive());
        let name = keep_out_name(keep_out, projection);
        stop.widget_info(|| WidgetInfo::labeled(Role::Button, ui.is_enabled(), &name));
        if stop.gained_focus() && input.keep_outs.chosen != Some(index) {
            events.push(KeepOutEvent::Reached(index));
        }
        if !stop.has_focus() {
            continue;
        }
        let filter = EventFilter {
            horizontal_arrows: true,
            vertical_arrows: true,
            ..EventFilter::default()
        };
        ui.memory_mut(|m| m.set_focus_lock_filter(id, filter));
        if ui.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Delete)) {
            events.push(KeepOutEvent::Remove(index));
        } else if let Some(to) = nudged(ui, input, &keep_out.corners, projection) {
            events.push(KeepOutEvent::Put(index, to));
        }
    }
    events.into_iter().map(DrawingEvent::KeepOut).collect()
}

/// Where the keys that were pressed in this frame put it.
fn nudged(
    ui: &Ui,
    input: &DrawingInput<'_>,
    start: &KeepOutCorners,
    projection: Projection,
) -> Option<KeepOutCorners> {
    let mut to = *start;
    for (key, (axis, sign)) in directions(projection) {
        // Those with more modifiers first: a key with none takes any.
        for (modifiers, step, whole) in [
            (Modifiers::ALT | Modifiers::SHIFT, input.fine_snap, false),
            (Modifiers::ALT, input.snap, false),
            (Modifiers::SHIFT, input.fine_snap, true),
            (Modifiers::NONE, input.snap, true),
        ] {
            let times = ui.input_mut(|i| i.count_and_consume_key(modifiers, key));
            let (Some([a, b]), 1..) = (to.along(axis), times) else {
                continue;
            };
            let by = sign * step * times as f64;
            let extent = if whole {
                shifted([a, b], by, step)
            } else {
                [a, pulled(b, a, by, step)]
            };
            to = to.with_along(axis, extent);
        }
    }
    (to != *start).then_some(to)
}

/// Keys with the axis along which they move, and which way.
fn directions(projection: Projection) -> [(Key, (Axis, f64)); 6] {
    let (right, r) = projection.right();
    let (down, d) = projection.down();
    let towards = projection.towards();
    [
        (Key::ArrowRight, (right, r)),
        (Key::ArrowLeft, (right, -r)),
        (Key::ArrowDown, (down, d)),
        (Key::ArrowUp, (down, -d)),
        (Key::PageUp, (towards, 1.0)),
        (Key::PageDown, (towards, -1.0)),
    ]
}
