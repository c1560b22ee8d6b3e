//! What the hand is doing: dragging a point, shoving the table, zooming.

use egui::{CursorIcon, Key, PointerButton, Pos2, Rect, Ui, Vec2};
use trammel_build::PointRef;

use super::{
    DrawingEvent, DrawingInput,
    drag::PointDrag,
    handles::{Start, Touch},
    layout::Place,
};

/// Zoom for each point that a wheel scrolls: a notch of about 50 points zooms by a fifth.
const ZOOM_PER_POINT: f64 = 0.0037;

/// A gesture under way.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) enum Gesture {
    /// None.
    #[default]
    Idle,
    /// A point is dragged.
    Point(PointDrag),
    /// The table is shoved: where the pointer went down, and the sheet's origin then.
    Shove(Pos2, [f64; 2]),
    /// A drag was given up, the button not yet let go.
    GivenUp,
}

impl Gesture {
    pub(crate) fn is_under_way(&self) -> bool {
        *self != Self::Idle
    }

    /// The point that is dragged.
    pub(crate) fn point(&self) -> Option<PointRef> {
        match self {
            Self::Point(drag) => Some(drag.point),
            _ => None,
        }
    }
}

/// The table in this frame.
pub(crate) struct Table<'a> {
    pub rect: Rect,
    pub input: &'a DrawingInput<'a>,
    pub touch: &'a Touch,
}

/// Carries the gesture on by a frame: the new place of the sheet, and what was done.
pub(crate) fn run(
    ui: &Ui,
    gesture: &mut Gesture,
    place: Place,
    table: &Table<'_>,
    events: &mut Vec<DrawingEvent>,
) -> Place {
    if *gesture == Gesture::Idle {
        choose(table, events);
        if let Some(start) = table.touch.start {
            *gesture = begin(ui, &start, &place, table, events);
        }
    }
    let place = zoom(ui, place, table.rect);
    carry_on(ui, gesture, place, table, events)
}

fn choose(table: &Table<'_>, events: &mut Vec<DrawingEvent>) {
    let touch = table.touch;
    if let Some(over) = touch.over {
        events.push(DrawingEvent::Hover(over.point));
    }
    if let Some(point) = touch.chosen {
        if table.input.selected != Some(point) {
            events.push(DrawingEvent::Select(Some(point)));
        }
    } else if touch.chosen_nothing && table.input.selected.is_some() {
        events.push(DrawingEvent::Select(None));
    }
}

fn begin(
    ui: &Ui,
    start: &Start,
    place: &Place,
    table: &Table<'_>,
    events: &mut Vec<DrawingEvent>,
) -> Gesture {
    let space = ui.input(|i| i.key_down(Key::Space));
    let shove = Gesture::Shove(start.press, place.origin());
    let Some(handle) = start.on else {
        return shove;
    };
    if space || start.button != PointerButton::Primary {
        return shove;
    }
    let Some(here) = table.input.build.point(handle.point) else {
        return Gesture::Idle;
    };
    if table.input.selected != Some(handle.point) {
        events.push(DrawingEvent::Select(Some(handle.point)));
    }
    events.push(DrawingEvent::DragStarted(handle.point));
    Gesture::Point(PointDrag::new(
        handle.point,
        handle.projection,
        handle.at,
        start.press,
        here,
    ))
}

/// What hand and keys do in this frame.
struct Hand {
    pointer: Option<Pos2>,
    holds: bool,
    escape: bool,
    fine: bool,
}

impl Hand {
    fn of(ui: &Ui) -> Self {
        ui.input(|i| Self {
            pointer: i.pointer.interact_pos(),
            holds: i.pointer.any_down(),
            escape: i.key_pressed(Key::Escape),
            fine: i.modifiers.shift,
        })
    }
}

fn carry_on(
    ui: &Ui,
    gesture: &mut Gesture,
    place: Place,
    table: &Table<'_>,
    events: &mut Vec<DrawingEvent>,
) -> Place {
    let hand = Hand::of(ui);
    let mut place = place;
    match gesture {
        Gesture::Idle => {
            if table.touch.over.is_some() {
                ui.set_cursor_icon(CursorIcon::Grab);
            }
        }
        Gesture::GivenUp => {}
        Gesture::Shove(press, origin) => {
            ui.set_cursor_icon(CursorIcon::AllScroll);
            let moved = hand.pointer.map_or(Vec2::ZERO, |p| p - *press);
            let [x, y] = *origin;
            place = place.with_origin([x + f64::from(moved.x), y + f64::from(moved.y)]);
        }
        Gesture::Point(drag) => {
            ui.set_cursor_icon(CursorIcon::Grabbing);
            if hand.escape || !still_there(drag, table.input) {
                events.push(DrawingEvent::DragCancelled);
                *gesture = Gesture::GivenUp;
            } else {
                follow(drag, &hand, &place, table, events);
            }
        }
    }
    if !hand.holds {
        *gesture = Gesture::Idle;
    }
    place
}

/// Whether what is dragged is still on the table: another build or axle may have been put there.
fn still_there(drag: &PointDrag, input: &DrawingInput<'_>) -> bool {
    input.axle == drag.point.axle && input.build.point(drag.point).is_some()
}

fn follow(
    drag: &mut PointDrag,
    hand: &Hand,
    place: &Place,
    table: &Table<'_>,
    events: &mut Vec<DrawingEvent>,
) {
    events.push(DrawingEvent::Hover(drag.point));
    let input = table.input;
    let snap = if hand.fine {
        input.fine_snap
    } else {
        input.snap
    };
    if let Some(pointer) = hand.pointer {
        let to = drag.target(pointer, &place.sheet(table.rect), input.build, snap);
        if to != drag.last {
            drag.last = to;
            events.push(DrawingEvent::DragMoved(drag.point, to));
        }
    }
    if !hand.holds {
        events.push(DrawingEvent::DragEnded);
    }
}

/// Wheel and pinch, about the pointer.
fn zoom(ui: &Ui, place: Place, rect: Rect) -> Place {
    let pointer = ui.input(|i| i.pointer.hover_pos());
    let Some(pointer) = pointer.filter(|_| ui.rect_contains_pointer(rect)) else {
        return place;
    };
    let factor = ui.input_mut(|i| {
        let scroll = f64::from(i.smooth_scroll_delta.y);
        i.smooth_scroll_delta.y = 0.0;
        f64::from(i.zoom_delta()) * (scroll * ZOOM_PER_POINT).exp()
    });
    if factor == 1.0 {
        place
    } else {
        place.zoomed(factor, pointer - rect.min)
    }
}
