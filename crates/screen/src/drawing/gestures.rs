//! What the hand is doing: dragging a point, shoving the table, zooming.

use egui::{CursorIcon, Key, PointerButton, Pos2, Rect, Ui, Vec2};
use trammel_build::PointRef;

use super::{
    DrawingEvent, DrawingInput,
    drag::PointDrag,
    handles::{Start, Touch},
    keep_outs::{KeepOutEvent, Part, drag::KeepOutDrag, hand as keep_out},
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
    /// A keep-out is moved, resized or drawn.
    KeepOut(KeepOutDrag),
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
        choose(ui, &place, table, events);
        if let Some(start) = table.touch.start {
            *gesture = begin(ui, &start, &place, table, events);
        }
    }
    let place = zoom(ui, place, table.rect);
    carry_on(ui, gesture, place, table, events)
}

fn choose(ui: &Ui, place: &Place, table: &Table<'_>, events: &mut Vec<DrawingEvent>) {
    let touch = table.touch;
    if touch.chosen_nothing {
        let at = ui.input(|i| i.pointer.interact_pos());
        let on = at
            .and_then(|at| keep_out::grip(place, table, at))
            .map(|g| g.index);
        if on != table.input.keep_outs.chosen {
            events.push(DrawingEvent::KeepOut(KeepOutEvent::Choose(on)));
        }
    }
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
    if space || start.button != PointerButton::Primary {
        return shove;
    }
    if table.input.keep_outs.draws {
        return keep_out::draw(start, place, table, events).map_or(shove, Gesture::KeepOut);
    }
    let Some(handle) = start.on else {
        return keep_out::take(start, place, table, events).map_or(shove, Gesture::KeepOut);
    };
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
pub(crate) struct Hand {
    pub pointer: Option<Pos2>,
    pub holds: bool,
    escape: bool,
    fine: bool,
}

impl Hand {
    /// The step that a drag goes by.
    pub(super) fn snap(&self, input: &DrawingInput<'_>) -> f64 {
        if self.fine {
            input.fine_snap
        } else {
            input.snap
        }
    }

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
            idle(ui, &hand, &place, table, events);
        }
        Gesture::GivenUp => {}
        Gesture::Shove(press, origin) => {
            ui.set_cursor_icon(CursorIcon::AllScroll);
            let moved = hand.pointer.map_or(Vec2::ZERO, |p| p - *press);
            let [x, y] = *origin;
            place = place.with_origin([x + f64::from(moved.x), y + f64::from(moved.y)]);
        }
        Gesture::KeepOut(drag) => {
            if hand.escape {
                events.push(DrawingEvent::DragCancelled);
                *gesture = Gesture::GivenUp;
            } else {
                keep_out::follow(drag, &hand, &place, table, events);
            }
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

/// Shows what a press would take, and lets Escape put the tool down.
fn idle(ui: &Ui, hand: &Hand, place: &Place, table: &Table<'_>, events: &mut Vec<DrawingEvent>) {
    let draws = table.input.keep_outs.draws;
    if draws && hand.escape {
        events.push(DrawingEvent::KeepOut(KeepOutEvent::ToolDown));
    }
    let on_table = hand
        .pointer
        .filter(|_| ui.rect_contains_pointer(table.rect));
    if table.touch.over.is_some() && !draws {
        ui.set_cursor_icon(CursorIcon::Grab);
    } else if let Some(at) = on_table {
        let icon = match keep_out::grip(place, table, at).map(|g| g.part) {
            _ if draws => CursorIcon::Crosshair,
            None => return,
            Some(Part::Whole) => CursorIcon::Move,
            Some(Part::Edges { down: None, .. }) => CursorIcon::ResizeHorizontal,
            Some(Part::Edges { across: None, .. }) => CursorIcon::ResizeVertical,
            Some(Part::Edges { .. }) => CursorIcon::Crosshair,
        };
        ui.set_cursor_icon(icon);
    }
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
    if let Some(pointer) = hand.pointer {
        let snap = hand.snap(input);
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
