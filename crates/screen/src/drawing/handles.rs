//! Points that can be found: by pointer, by keyboard and by name.

use egui::{Id, PointerButton, Pos2, Rect, Response, Role, Sense, Ui, Vec2, WidgetInfo};
use trammel_build::{AxleName, PointName, PointRef, Side};

use crate::landmark::{self, Landmark};

use super::{DrawingInput, Projection, layout, scene::Scene, sheet::Sheet};

/// The point that the guided tour begins with.
const TOURED: PointRef = PointRef {
    axle: AxleName::Front,
    side: Side::Left,
    point: PointName::TieRodInner,
};
/// Half the side of a handle, points: at least nine, so that a shaky hand finds it.
const REACH: f32 = 10.0;
/// Farthest that a point may be from the pointer that takes it, points.
const FARTHEST: f32 = 1.5 * REACH;
/// The selected point wins against one that is nearer by less than this, points.
const SELECTED_ADVANTAGE: f32 = 3.0;
/// Points closer than this on the screen lie on one another.
const STACKED: f32 = 4.0;

/// What a point is called in a view: its name, side and view, such as `Tie rod, inner joint, left, front view`.
#[must_use]
pub fn handle_name(point: PointRef, projection: Projection) -> String {
    format!(
        "{}, {}, {} view",
        point.point.label(),
        point.side.word(),
        projection.word()
    )
}

/// A point in a view.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Handle {
    pub point: PointRef,
    pub projection: Projection,
    pub at: Pos2,
    depth: f64,
}

/// Every point in sight, in the order of tables.
pub(crate) fn handles(
    input: &DrawingInput<'_>,
    scene: &Scene,
    sheet: &Sheet,
    table: Rect,
    fill: Option<Projection>,
) -> Vec<Handle> {
    let mut found = Vec::with_capacity(64);
    for projection in layout::shown(fill) {
        for joints in scene.rest.iter().flatten() {
            if projection == Projection::Side && joints.side == Side::Right {
                continue;
            }
            for (name, p) in joints.points() {
                let at = sheet.screen(projection, p);
                if table.contains(at) {
                    found.push(Handle {
                        point: PointRef {
                            axle: input.axle,
                            side: joints.side,
                            point: name,
                        },
                        projection,
                        at,
                        depth: projection.depth(p),
                    });
                }
            }
        }
    }
    found
}

/// What the pointer and keyboard did to the table and its points since the last frame.
#[derive(Default)]
pub(crate) struct Touch {
    /// Point under the pointer.
    pub over: Option<Handle>,
    /// A point was clicked, or reached by keyboard or screen reader.
    pub chosen: Option<PointRef>,
    /// The empty table was clicked.
    pub chosen_nothing: bool,
    /// The empty table was clicked twice.
    pub double: bool,
    /// A drag began here.
    pub start: Option<Start>,
    /// The point that has the keyboard's focus.
    pub focused: Option<(Id, PointRef)>,
}

/// Where a drag began.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Start {
    pub press: Pos2,
    pub on: Option<Handle>,
    pub button: PointerButton,
}

/// Puts the handles on the screen and asks what happened to them.
///
/// Handles overlap, and the order in which they are placed is the order of the keyboard, so which point the pointer means is decided here and not by
/// that order: see [`nearest`].
pub(crate) fn touch(
    ui: &Ui,
    handles: &[Handle],
    table: &Response,
    selected: Option<PointRef>,
    fill: Option<Projection>,
) -> Touch {
    let stops = fill.unwrap_or(Projection::Front);
    let mut touch = Touch {
        chosen_nothing: table.clicked(),
        double: table.double_clicked(),
        ..Touch::default()
    };
    let (press, now, clicked) = ui.input(|i| {
        let p = &i.pointer;
        (p.press_origin(), p.interact_pos(), p.primary_clicked())
    });
    let pick = |at: Option<Pos2>, fallback: Handle| {
        at.and_then(|at| nearest(handles, at, selected))
            .unwrap_or(fallback)
    };
    let begin = |response: &Response| {
        [PointerButton::Primary, PointerButton::Middle]
            .into_iter()
            .find(|b| response.drag_started_by(*b))
    };
    for handle in handles {
        let response = place(ui, handle, stops);
        if response.has_focus() {
            touch.focused = Some((response.id, handle.point));
        }
        if response.hovered() {
            touch.over = Some(pick(now, *handle));
        }
        if response.clicked() && clicked {
            let hit = pick(now, *handle);
            let chosen = next_in_stack(handles, &hit, selected);
            touch.chosen = Some(chosen);
            focus(ui, chosen, stops);
        } else if response.clicked() {
            // Tab only passes by: Enter, Space or an arrow key choose.
            touch.chosen = Some(handle.point);
        }
        if let Some(button) = begin(&response) {
            let on = pick(press, *handle);
            focus(ui, on.point, stops);
            touch.start = press.map(|press| Start {
                press,
                on: Some(on),
                button,
            });
        }
    }
    if let Some(button) = begin(table) {
        touch.start = press.map(|press| Start {
            press,
            on: None,
            button,
        });
    }
    touch
}

fn id(ui: &Ui, point: PointRef, projection: Projection) -> Id {
    ui.scope_id().with((point, projection))
}

/// One stop of the keyboard for each point is enough: the left one, in the main view.
fn is_stop(point: PointRef, projection: Projection, stops: Projection) -> bool {
    projection == stops && point.side == Side::Left
}

/// Gives the keyboard to a point that the pointer took, or at least takes it from whatever had it, so that arrow keys do not move a slider.
fn focus(ui: &Ui, point: PointRef, stops: Projection) {
    ui.memory_mut(|m| {
        if is_stop(point, stops, stops) {
            m.request_focus(id(ui, point, stops));
        } else if let Some(other) = m.focused() {
            m.surrender_focus(other);
        }
    });
}

fn place(ui: &Ui, handle: &Handle, stops: Projection) -> Response {
    let id = id(ui, handle.point, handle.projection);
    let sense = if is_stop(handle.point, handle.projection, stops) {
        Sense::click_and_drag()
    } else {
        Sense::CLICK | Sense::DRAG
    };
    let rect = Rect::from_center_size(handle.at, Vec2::splat(2.0 * REACH));
    let response = ui.interact(rect, id, sense);
    if handle.point == TOURED && handle.projection == Projection::Front {
        landmark::mark(ui.ctx(), Landmark::InnerJoint, rect);
    }
    response.widget_info(|| {
        WidgetInfo::labeled(
            Role::Button,
            ui.is_enabled(),
            handle_name(handle.point, handle.projection),
        )
    });
    if response.has_focus() {
        let arrows = egui::EventFilter {
            horizontal_arrows: true,
            vertical_arrows: true,
            ..egui::EventFilter::default()
        };
        ui.memory_mut(|m| m.set_focus_lock_filter(id, arrows));
    }
    response
}

/// The point that is meant at a place: the nearest, the selected one having a small advantage; of points that lie on one another the
/// selected one, then joints before marks on the rack, then the one nearest the viewer.
pub(crate) fn nearest(handles: &[Handle], at: Pos2, selected: Option<PointRef>) -> Option<Handle> {
    let distance = |h: &Handle| {
        let advantage = if Some(h.point) == selected {
            SELECTED_ADVANTAGE
        } else {
            0.0
        };
        (h.at - at).length() - advantage
    };
    let within = handles.iter().filter(|h| (h.at - at).length() <= FARTHEST);
    within
        .min_by(|a, b| {
            let (da, db) = (distance(a), distance(b));
            if (da - db).abs() > 0.5 {
                da.total_cmp(&db)
            } else {
                on_rack(a)
                    .cmp(&on_rack(b))
                    .then(b.depth.total_cmp(&a.depth))
            }
        })
        .copied()
}

fn on_rack(handle: &Handle) -> bool {
    matches!(
        handle.point.point,
        PointName::RackFace | PointName::RackBoreMouth
    )
}

/// A click on the selected point takes the next of those that lie under it, so that all can be reached.
fn next_in_stack(handles: &[Handle], hit: &Handle, selected: Option<PointRef>) -> PointRef {
    if selected != Some(hit.point) {
        return hit.point;
    }
    let stack: Vec<PointRef> = handles
        .iter()
        .filter(|h| h.projection == hit.projection && (h.at - hit.at).length() <= STACKED)
        .map(|h| h.point)
        .collect();
    let here = stack.iter().position(|p| *p == hit.point).unwrap_or(0);
    stack
        .iter()
        .cycle()
        .nth(here + 1)
        .copied()
        .unwrap_or(hit.point)
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::pos2;
    use trammel_build::AxleName;

    fn handle(point: PointName, x: f32, depth: f64) -> Handle {
        Handle {
            point: PointRef::left(AxleName::Front, point),
            projection: Projection::Side,
            at: pos2(x, 0.0),
            depth,
        }
    }

    #[test]
    fn names_say_point_side_and_view() {
        let inner = PointRef::left(AxleName::Front, PointName::TieRodInner);
        assert_eq!(
            handle_name(inner, Projection::Front),
            "Tie rod, inner joint, left, front view"
        );
        let right = PointRef {
            side: Side::Right,
            ..inner
        };
        assert_eq!(
            handle_name(right, Projection::Plan),
            "Tie rod, inner joint, right, plan view"
        );
    }

    #[test]
    fn the_nearest_point_is_meant_unless_the_selected_one_is_about_as_near() {
        let all = [
            handle(PointName::UpperFrontPivot, 0.0, 0.0),
            handle(PointName::UpperRearPivot, 6.0, 0.0),
        ];
        let meant = |x, selected| nearest(&all, pos2(x, 0.0), selected).map(|h| h.point.point);
        assert_eq!(meant(4.0, None), Some(PointName::UpperRearPivot));
        let front = Some(all[0].point);
        assert_eq!(meant(4.0, front), Some(PointName::UpperFrontPivot));
        assert_eq!(meant(6.0, front), Some(PointName::UpperRearPivot));
        assert_eq!(meant(60.0, None), None);
    }

    #[test]
    fn of_points_behind_each_other_joints_come_first_then_the_front_most() {
        let all = [
            handle(PointName::RackFace, 0.0, 9.0),
            handle(PointName::UpperFrontPivot, 0.0, 1.0),
            handle(PointName::UpperRearPivot, 0.1, 2.0),
        ];
        let meant = nearest(&all, pos2(0.0, 0.0), None).unwrap();
        assert_eq!(meant.point.point, PointName::UpperRearPivot);
    }

    #[test]
    fn clicks_on_a_stack_reach_every_point_in_turn() {
        let all = [
            handle(PointName::TieRodInner, 0.0, 2.0),
            handle(PointName::RackFace, 0.0, 1.0),
            handle(PointName::RackBoreMouth, 0.0, 0.0),
        ];
        let mut selected = None;
        let mut seen = Vec::new();
        for _ in 0..4 {
            let hit = nearest(&all, pos2(0.0, 0.0), selected).unwrap();
            selected = Some(next_in_stack(&all, &hit, selected));
            seen.extend(selected.map(|p| p.point));
        }
        assert_eq!(
            seen,
            [
                PointName::TieRodInner,
                PointName::RackFace,
                PointName::RackBoreMouth,
                PointName::TieRodInner
            ]
        );
    }
}
