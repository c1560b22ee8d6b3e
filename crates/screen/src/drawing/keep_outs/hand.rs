//! A hand on keep-outs: what it takes, and how a drag goes on.

use egui::Pos2;

use super::{
    super::{
        DrawingEvent,
        gestures::{Hand, Table},
        handles::Start,
        layout::{self, Place},
    },
    Grip, KeepOutEvent, Part,
    drag::KeepOutDrag,
    outline,
};

/// What of a keep-out lies there.
pub(crate) fn grip(place: &Place, table: &Table<'_>, at: Pos2) -> Option<Grip> {
    let input = table.input;
    if !input.keep_outs.may_move {
        return None;
    }
    let sheet = place.sheet(table.rect);
    layout::shown(place.fill()).find_map(|projection| {
        let view = (projection, place.cell(table.rect, projection));
        outline::grip(input, &sheet, view, at)
    })
}

/// A hand takes what lies under it.
pub(crate) fn take(
    start: &Start,
    place: &Place,
    table: &Table<'_>,
    events: &mut Vec<DrawingEvent>,
) -> Option<KeepOutDrag> {
    let grip = grip(place, table, start.press)?;
    let corners = table.input.build.keep_outs.get(grip.index)?.corners;
    let began = match grip.part {
        Part::Whole => KeepOutEvent::MoveBegan(grip.index),
        Part::Edges { .. } => KeepOutEvent::ResizeBegan(grip.index),
    };
    events.push(DrawingEvent::KeepOut(began));
    Some(KeepOutDrag::take(grip, start.press, corners))
}

/// A hand begins to draw a new one.
pub(crate) fn draw(
    start: &Start,
    place: &Place,
    table: &Table<'_>,
    events: &mut Vec<DrawingEvent>,
) -> Option<KeepOutDrag> {
    let projection =
        layout::shown(place.fill()).find(|p| place.cell(table.rect, *p).contains(start.press))?;
    let input = table.input;
    events.push(DrawingEvent::KeepOut(KeepOutEvent::DrawBegan));
    Some(KeepOutDrag::draw(
        input.build.keep_outs.len(),
        projection,
        start.press,
        input.axle,
        super::depth(input, projection.towards()),
    ))
}

/// Carries a drag on by a frame.
pub(crate) fn follow(
    drag: &mut KeepOutDrag,
    hand: &Hand,
    place: &Place,
    table: &Table<'_>,
    events: &mut Vec<DrawingEvent>,
) {
    let input = table.input;
    let snap = hand.snap(input);
    if let Some(pointer) = hand.pointer {
        let to = drag.target(pointer, &place.sheet(table.rect), input.build.unit, snap);
        if let Some(corners) = to.filter(|_| to != drag.last) {
            drag.last = to;
            let put = KeepOutEvent::Put(drag.index, corners);
            events.push(DrawingEvent::KeepOut(put));
        }
    }
    if !hand.holds {
        events.push(DrawingEvent::DragEnded);
    }
}
