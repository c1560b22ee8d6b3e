//! Drags by name, choosing, and giving up.

use egui::{
    Event, Key, Modifiers, MouseWheelSource, MouseWheelUnit, PointerButton, TouchPhase, vec2,
};
use egui_kittest::kittest::Queryable;
use trammel_build::{Axis, AxleName, Coordinate, PointName, PointRef, Side};
use trammel_screen::drawing::{DrawingEvent, Projection, handle_name};

use crate::bench::{Bench, Hands, build, left, window, window_of};

/// Points on the screen in an inch, from two points of the build that lie a known way apart.
fn inch(window: &impl Hands) -> f32 {
    let a = window.find(left(PointName::WheelCentre), Projection::Front);
    let b = window.find(left(PointName::TieRodInner), Projection::Front);
    (a.x - b.x) / (25.0 - 8.9)
}

#[test]
fn a_point_dragged_by_name_moves_as_far_as_the_pointer_and_snaps() {
    let mut window = window(Bench::new(build()));
    let inner = left(PointName::TieRodInner);
    let from = window.find(inner, Projection::Front);
    let inch = inch(&window);
    window.drag(from, from + vec2(2.0 * inch, -inch));

    let bench = window.state();
    // 8.9 + 2 and 8.75 + 1, on the nearest sixteenth.
    assert_eq!(bench.build.front.tie_rod.inner, [-3.75, 10.875, 9.75]);
    let done = &bench.done;
    assert_eq!(done[0], DrawingEvent::Select(Some(inner)));
    assert_eq!(done[1], DrawingEvent::DragStarted(inner));
    assert!(matches!(done[2], DrawingEvent::DragMoved(p, _) if p == inner));
    assert_eq!(done.last(), Some(&DrawingEvent::DragEnded));
    assert!(!bench.drawing.is_dragging());
    // The point is where the pointer let it go, to within half a snap.
    let now = window.find(inner, Projection::Front);
    assert!((now - from - vec2(2.0 * inch, -inch)).length() < inch / 16.0);
}

#[test]
fn shift_snaps_finely() {
    let mut window = window(Bench::new(build()));
    let inner = left(PointName::TieRodInner);
    let from = window.find(inner, Projection::Plan);
    let inch = inch(&window);
    window.event(Event::ModifiersChanged(Modifiers::SHIFT));
    window.drag(from, from + vec2(0.0, 1.02 * inch));
    let [x, y, z] = window.state().build.front.tie_rod.inner;
    // The plan has forward downwards; -3.75 + 1.02 on the nearest 1/64.
    assert_eq!([y, z], [8.9, 8.75]);
    assert!((x + 2.734_375).abs() <= 1.0 / 64.0 + 1e-12, "{x}");
    assert_eq!((x * 64.0).fract(), 0.0);
    assert_ne!((x * 16.0).fract(), 0.0);
}

#[test]
fn every_view_can_be_dragged_in_and_holds_the_third_coordinate() {
    for (projection, held) in [
        (Projection::Front, 0),
        (Projection::Plan, 2),
        (Projection::Side, 1),
    ] {
        let mut window = window(Bench::new(build()));
        let ball = left(PointName::UpperBallJoint);
        let before = window.state().build.front.upper_arm.ball_joint;
        let from = window.find(ball, projection);
        window.drag(from, from + vec2(14.0, 9.0));
        let after = window.state().build.front.upper_arm.ball_joint;
        for i in 0..3 {
            assert_eq!(before[i] == after[i], i == held, "{projection:?} {i}");
        }
    }
}

#[test]
fn a_right_hand_point_is_dragged_in_its_own_coordinates() {
    let mut window = window(Bench::new(build()));
    let right = PointRef {
        side: Side::Right,
        ..left(PointName::LowerBallJoint)
    };
    let from = window.find(right, Projection::Front);
    let inch = inch(&window);
    // To the left of the picture is outboard for the vehicle's right side.
    window.drag(from, from - vec2(inch, 0.0));
    let bench = window.state();
    let last = bench.done.iter().rev().find_map(|e| match e {
        DrawingEvent::DragMoved(p, to) => Some((*p, *to)),
        _ => None,
    });
    assert_eq!(last, Some((right, [0.3, -23.625, 6.9])));
    // Its left twin follows.
    assert_eq!(bench.build.front.lower_arm.ball_joint, [0.3, 23.625, 6.9]);
}

#[test]
fn locked_coordinates_stay_through_a_drag() {
    let mut build = build();
    build.locked.insert(Coordinate {
        axle: AxleName::Front,
        point: PointName::TieRodInner,
        axis: Axis::Z,
    });
    let mut window = window(Bench::new(build));
    let from = window.find(left(PointName::TieRodInner), Projection::Front);
    window.drag(from, from + vec2(30.0, 40.0));
    let [_, y, z] = window.state().build.front.tie_rod.inner;
    assert_eq!(z, 8.75);
    assert_ne!(y, 8.9);
}

#[test]
fn escape_gives_a_drag_up_until_the_button_is_let_go() {
    let mut window = window(Bench::new(build()));
    let from = window.find(left(PointName::TieRodInner), Projection::Front);
    window.press(from);
    window.carry(from, from + vec2(40.0, 0.0));
    assert!(window.state().drawing.is_dragging());
    assert_ne!(window.state().build, build());

    window.key_press(Key::Escape);
    window.step();
    assert_eq!(
        window.state().done.last(),
        Some(&DrawingEvent::DragCancelled)
    );
    assert_eq!(window.state().build, build());

    window.carry(from + vec2(40.0, 0.0), from + vec2(80.0, 50.0));
    window.release(from + vec2(80.0, 50.0));
    assert_eq!(
        window.state().done.last(),
        Some(&DrawingEvent::DragCancelled)
    );
    assert_eq!(window.state().build, build());

    // The next drag works as ever.
    window.drag(from, from + vec2(40.0, 0.0));
    assert_eq!(window.state().done.last(), Some(&DrawingEvent::DragEnded));
    assert_ne!(window.state().build, build());
}

#[test]
fn the_view_stays_while_a_wheel_is_dragged_off_the_table() {
    let mut window = window(Bench::new(build()));
    let pivot = left(PointName::LowerFrontPivot);
    let centre = left(PointName::WheelCentre);
    let still = window.find(pivot, Projection::Front);
    let from = window.find(centre, Projection::Front);
    window.press(from);
    window.carry(from, from + vec2(60.0, -30.0));
    assert_eq!(window.find(pivot, Projection::Front), still);
    window.release(from + vec2(60.0, -30.0));
    window.step();
    // Let go, the table is fitted to the wider track.
    assert_ne!(window.find(pivot, Projection::Front), still);
}

#[test]
fn a_click_chooses_and_a_click_on_the_empty_table_lets_go() {
    let mut window = window(Bench::new(build()));
    let outer = left(PointName::TieRodOuter);
    window
        .get_by_label(&handle_name(outer, Projection::Plan))
        .click();
    window.step();
    assert_eq!(window.state().selected, Some(outer));
    let empty = window.find(outer, Projection::Front) + vec2(-60.0, 150.0);
    window.press(empty);
    window.release(empty);
    assert_eq!(window.state().selected, None);
}

#[test]
fn points_behind_each_other_are_reached_by_clicking_again() {
    let mut window = window(Bench::new(build()));
    let inner = left(PointName::TieRodInner);
    let at = window.find(inner, Projection::Side);
    let mut seen = Vec::new();
    for _ in 0..3 {
        window.press(at);
        window.release(at);
        seen.extend(window.state().selected.map(|p| p.point));
        // Far enough apart not to be a double click.
        for _ in 0..40 {
            window.step();
        }
        assert_eq!(
            window.state().selected.map(|p| p.point),
            seen.last().copied()
        );
    }
    seen.sort();
    assert_eq!(
        seen,
        [
            PointName::TieRodInner,
            PointName::RackFace,
            PointName::RackBoreMouth
        ]
    );
}

#[test]
fn a_screen_reader_can_choose_a_point() {
    let mut window = window(Bench::new(build()));
    let outer = left(PointName::TieRodOuter);
    window
        .get_by_label(&handle_name(outer, Projection::Front))
        .click_accesskit();
    window.step();
    window.step();
    assert_eq!(window.state().selected, Some(outer));
}

#[test]
fn hovering_names_the_point() {
    let mut window = window(Bench::new(build()));
    let ball = left(PointName::LowerBallJoint);
    window.hover_at(window.find(ball, Projection::Front));
    window.step();
    window.step();
    assert_eq!(window.state().hovered, Some(ball));
}

#[test]
fn the_wheel_zooms_about_the_pointer_and_fit_brings_it_back() {
    let mut window = window(Bench::new(build()));
    let ball = left(PointName::LowerBallJoint);
    let pivot = left(PointName::LowerFrontPivot);
    let (at, far) = (
        window.find(ball, Projection::Front),
        window.find(pivot, Projection::Front),
    );
    window.hover_at(at);
    window.step();
    window.event(Event::MouseWheel {
        unit: MouseWheelUnit::Point,
        delta: vec2(0.0, 60.0),
        phase: TouchPhase::Move,
        source: MouseWheelSource::Wheel,
        modifiers: Modifiers::NONE,
    });
    for _ in 0..30 {
        window.step();
    }
    let (at_now, far_now) = (
        window.find(ball, Projection::Front),
        window.find(pivot, Projection::Front),
    );
    assert!((at_now - at).length() < 0.5, "{at_now} {at}");
    let grown = (far_now - at_now).length() / (far - at).length();
    assert!(grown > 1.15 && grown < 1.4, "{grown}");

    window.get_by_label("Fit").click();
    window.step();
    window.step();
    assert_eq!(window.find(pivot, Projection::Front), far);
}

#[test]
fn the_empty_table_and_the_middle_button_shove() {
    let mut window = window(Bench::new(build()));
    let ball = left(PointName::LowerBallJoint);
    let at = window.find(ball, Projection::Front);
    let empty = at + vec2(-70.0, 150.0);
    window.drag(empty, empty + vec2(25.0, -15.0));
    window.step();
    assert_eq!(window.find(ball, Projection::Front), at + vec2(25.0, -15.0));

    let at = window.find(ball, Projection::Front);
    let middle = |pos, pressed| Event::PointerButton {
        pos,
        button: PointerButton::Middle,
        pressed,
        modifiers: Modifiers::NONE,
    };
    window.hover_at(at);
    window.step();
    window.event(middle(at, true));
    window.step();
    window.carry(at, at + vec2(-30.0, 12.0));
    window.event(middle(at + vec2(-30.0, 12.0), false));
    window.step();
    window.step();
    let now = window.find(ball, Projection::Front);
    assert_eq!(now, at + vec2(-30.0, 12.0));
    assert_eq!(window.state().build, build());
}

#[test]
fn with_space_held_a_point_shoves_the_table() {
    let mut window = window(Bench::new(build()));
    let ball = left(PointName::LowerBallJoint);
    let at = window.find(ball, Projection::Front);
    window.key_down(Key::Space);
    window.drag(at, at + vec2(-30.0, 12.0));
    window.key_up(Key::Space);
    window.step();
    assert_eq!(window.find(ball, Projection::Front), at + vec2(-30.0, 12.0));
    assert_eq!(window.state().build, build());
}

#[test]
fn a_double_click_on_the_empty_table_fits() {
    let mut window = window(Bench::new(build()));
    let ball = left(PointName::LowerBallJoint);
    let at = window.find(ball, Projection::Front);
    let empty = at + vec2(-70.0, 150.0);
    window.drag(empty, empty + vec2(25.0, -15.0));
    window.step();
    for _ in 0..40 {
        window.step();
    }
    window.press(empty);
    window.drop_at(empty);
    window.hover_at(empty);
    window.press(empty);
    window.release(empty);
    window.step();
    assert_eq!(window.find(ball, Projection::Front), at);
}

#[test]
fn a_view_fills_the_table_and_gives_it_back() {
    let mut window = window(Bench::new(build()));
    let ball = left(PointName::LowerBallJoint);
    window
        .get_by_label("Fill the table with the front view")
        .click();
    window.step();
    window.step();
    assert_eq!(window.state().drawing.fill, Some(Projection::Front));
    assert!(
        window
            .query_by_label(&handle_name(ball, Projection::Plan))
            .is_none()
    );
    window.get_by_label("Show all three views").click();
    window.step();
    window.step();
    assert_eq!(window.state().drawing.fill, None);
    window.find(ball, Projection::Plan);
}

#[test]
fn every_point_is_in_sight_at_every_size_of_the_table() {
    for size in [vec2(500.0, 300.0), vec2(860.0, 700.0), vec2(2000.0, 1300.0)] {
        let window = window_of(Bench::new(build()), size);
        for projection in Projection::ALL {
            for name in PointName::ALL {
                window.find(left(name), projection);
            }
        }
    }
}

#[test]
fn the_keyboard_finds_a_point_and_its_arrows_stay_on_it() {
    let mut window = window(Bench::new(build()));
    let inner = left(PointName::TieRodInner);
    window
        .get_by_label(&handle_name(inner, Projection::Front))
        .focus();
    window.step();
    window.step();
    assert_eq!(window.state().selected, None, "Tab may be passing by");
    window.key_press(Key::Enter);
    window.step();
    window.step();
    assert_eq!(window.state().selected, Some(inner));
    for key in [Key::ArrowUp, Key::ArrowLeft] {
        window.key_press(key);
        window.step();
        window.step();
    }
    assert!(
        window
            .get_by_label(&handle_name(inner, Projection::Front))
            .is_focused()
    );
}
