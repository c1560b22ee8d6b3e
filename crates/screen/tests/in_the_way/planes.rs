//! The map in the front, side and plan view: on the table, in the loupe, with its layers, by hand and by keyboard.

use super::*;
use trammel_build::Triple;
use trammel_geometry::Point;
use trammel_tuning::Plane;

fn mapped(screen: &Screen) -> Plane {
    screen.state().view().tune.plane
}

fn choose(screen: &mut Screen, plane: &str) {
    click(screen, "Best spot");
    click(screen, &format!("Map in: {plane}"));
    screen.run_steps(6);
    assert!(screen.state().tune().map_is_complete());
}

fn read(screen: &Screen) -> String {
    let loupe = screen.get_by_label("Loupe of the toe map");
    loupe.value().unwrap_or_default()
}

#[test]
fn the_map_lies_in_the_view_that_fills_the_table_and_the_switch_brings_its_view() {
    let mut screen = in_the_way("badly-placed-rack");
    assert_eq!(mapped(&screen), Plane::Front);
    choose(&mut screen, "side");
    assert_eq!(mapped(&screen), Plane::Side);
    click(&mut screen, "Show all three views");
    assert_eq!(mapped(&screen), Plane::Side, "the map stays where it is");
    click(&mut screen, "Fill the table with the plan view");
    screen.run_steps(3);
    assert_eq!(mapped(&screen), Plane::Plan, "it goes where one looks");
    click(&mut screen, "Show all three views");
    choose(&mut screen, "front");
    assert_eq!(mapped(&screen), Plane::Front);
    let fits_all = screen.query_by_label("Fill the table with the side view");
    assert!(fits_all.is_some(), "all three views stay");
}

/// The joint after Home, keys and Enter on the loupe, less where it was.
fn put(screen: &mut Screen, keys: &[Key]) -> Triple {
    let before = place(screen, INNER);
    screen.get_by_label("Loupe of the toe map").focus();
    screen.run_steps(3);
    press(screen, Modifiers::NONE, Key::Home);
    for key in keys {
        press(screen, Modifiers::NONE, *key);
    }
    let reading = read(screen);
    press(screen, Modifiers::NONE, Key::Enter);
    let after = place(screen, INNER);
    assert!(reading.contains('°'), "{reading}");
    let mut by = after;
    for (by, before) in by.iter_mut().zip(before) {
        *by -= before;
    }
    press(screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(place(screen, INNER), before, "one step");
    by
}

#[test]
fn arrows_on_the_loupe_go_the_way_the_view_shows() {
    let mut screen = in_the_way("badly-placed-rack");
    let keys = [Key::ArrowRight, Key::ArrowUp, Key::ArrowUp];
    let step = 1.0 / 16.0;
    // Forward is to the left in the side view, and down in the plan.
    let cases = [
        ("front", [0.0, step, 2.0 * step], ["y ", ", z "]),
        ("side", [-step, 0.0, 2.0 * step], ["x ", ", z "]),
        ("plan", [-2.0 * step, step, 0.0], ["x ", ", y "]),
    ];
    for (plane, wanted, names) in cases {
        choose(&mut screen, plane);
        let by = put(&mut screen, &keys);
        for (by, wanted) in by.iter().zip(wanted) {
            assert!((by - wanted).abs() < 1e-9, "{plane}: {by} {wanted}");
        }
        let reading = read(&screen);
        assert!(names.iter().all(|n| reading.contains(n)), "{reading}");
    }
}

#[test]
fn a_hand_on_the_loupe_moves_the_joint_in_the_maps_plane_only() {
    for (plane, stays) in [("front", 0), ("side", 1), ("plan", 2)] {
        let mut screen = in_the_way("badly-placed-rack");
        choose(&mut screen, plane);
        let before = place(&screen, INNER);
        let rect = screen.get_by_label("Loupe of the toe map").rect();
        let from = rect.min + vec2(0.6, 0.5) * rect.size();
        drag(&mut screen, from, vec2(18.0, -14.0));
        let after = place(&screen, INNER);
        for axis in 0..3 {
            let same = before[axis] == after[axis];
            assert_eq!(same, axis == stays, "{plane}: {before:?} {after:?}");
        }
        press(&mut screen, Modifiers::COMMAND, Key::Z);
        assert_eq!(place(&screen, INNER), before, "one step");
    }
}

#[test]
fn the_right_corner_is_read_in_vehicle_axes_in_every_plane() {
    let mut screen = in_the_way("badly-placed-rack");
    screen.state_mut().view_mut().side = trammel_build::Side::Right;
    for (plane, text) in [
        ("front", "y −7 9/16"),
        ("plan", "y −7 9/16"),
        ("side", "x "),
    ] {
        choose(&mut screen, plane);
        screen.get_by_label("Loupe of the toe map").focus();
        screen.run_steps(3);
        press(&mut screen, Modifiers::NONE, Key::Home);
        let reading = read(&screen);
        assert!(reading.contains(text), "{plane}: {reading}");
    }
}

#[test]
fn keep_outs_and_limits_count_in_every_plane() {
    for plane in ["front", "side", "plan"] {
        let mut screen = in_the_way("badly-placed-rack");
        choose(&mut screen, plane);
        click(&mut screen, "Room");
        click(&mut screen, "Add keep-out");
        click(&mut screen, "Counts: between two");
        let joint = place(&screen, INNER);
        // About the joint along x and z, beside it along y.
        for (axis, [from, to]) in [("x", [-1.0, 1.0]), ("z", [-1.0, 1.0]), ("y", [0.75, 2.0])] {
            let at = joint["xyz".find(axis).expect("an axis")];
            type_in(
                &mut screen,
                &format!("Keep-out {axis}, from"),
                &(at + from).to_string(),
            );
            type_in(
                &mut screen,
                &format!("Keep-out {axis}, to"),
                &(at + to).to_string(),
            );
        }
        wait_for_clear(&mut screen);
        let blocks = |screen: &Screen, off: f64| {
            let mm = [joint[0], joint[1] + off, joint[2]].map(|v| 25.4 * v);
            let reasons = screen.state().tune().blocks_at(Point::from(mm));
            reasons.expect("known").join(" ")
        };
        assert!(!blocks(&screen, 0.0).contains("keep-out"), "{plane}");
        if plane != "side" {
            assert!(blocks(&screen, 1.0).contains("keep-out"), "{plane}");
        }
        // About the joint along y too: in the way in every plane.
        type_in(
            &mut screen,
            "Keep-out y, from",
            &(joint[1] - 1.0).to_string(),
        );
        wait_for_clear(&mut screen);
        assert!(blocks(&screen, 0.0).contains("keep-out"), "{plane}");
    }
}
