//! Keep-outs on the table, in the notebook and in the clear area.

use super::*;

#[test]
fn added_beside_the_joint_named_typed_and_taken_off_again() {
    let mut screen = in_the_way("good");
    let before = screen.state().build().clone();
    click(&mut screen, "Add keep-out");
    let joint = place(&screen, INNER);
    let [from, _] = along(&screen, Axis::Z);
    assert!(from > joint[2], "above the joint: {from}");
    assert_eq!(corners(&screen).along(Axis::X), None, "at every x");
    assert_eq!(screen.state().undo_name(), Some("Add keep-out"));

    type_in(&mut screen, "Keep-out name", "Frame rail");
    assert_eq!(keep_outs(&screen)[0].name, "Frame rail");
    type_in(&mut screen, "Keep-out y, from", "5 1/2");
    type_in(&mut screen, "Keep-out z, to", "4");
    assert_eq!(along(&screen, Axis::Y)[0], 5.5);
    assert_eq!(along(&screen, Axis::Z)[1], 4.0);
    assert_eq!(
        screen.state().undo_name(),
        Some("Resize keep-out Frame rail")
    );

    // No width: refused, and what stood stands.
    let stood = corners(&screen);
    type_in(
        &mut screen,
        "Keep-out z, to",
        &stood.along(Axis::Z).expect("z")[0].to_string(),
    );
    assert_eq!(corners(&screen), stood);
    assert!(screen.state().said().is_some_and(|s| s.contains("differ")));

    click(&mut screen, "Counts: between two");
    let [a, b] = along(&screen, Axis::X);
    assert!(a < joint[0] && joint[0] < b, "about the joint");
    type_in(&mut screen, "Keep-out x, to", "-1");
    assert_eq!(along(&screen, Axis::X)[1], -1.0);
    click(&mut screen, "Counts: at every x");
    assert_eq!(corners(&screen).along(Axis::X), None);

    click(&mut screen, "Remove keep-out");
    assert_eq!(keep_outs(&screen), []);
    assert_eq!(
        screen.state().undo_name(),
        Some("Remove keep-out Frame rail")
    );
    for _ in 0..8 {
        press(&mut screen, Modifiers::COMMAND, Key::Z);
    }
    assert_eq!(screen.state().build(), &before);
}

#[test]
fn a_drag_moves_it_an_edge_resizes_it_and_each_is_one_step() {
    let mut screen = in_the_way("good");
    click(&mut screen, "Add keep-out");
    let added = corners(&screen);
    let from = on_keep_out(&screen, Projection::Front, MIDDLE);
    drag(&mut screen, from, vec2(-22.0, 30.0));
    let moved = corners(&screen);
    let size = |c: KeepOutCorners, axis| {
        let [a, b] = c.along(axis).expect("an extent");
        b - a
    };
    assert_ne!(moved, added);
    for axis in [Axis::Y, Axis::Z] {
        assert_eq!(size(moved, axis), size(added, axis));
        let [a, was] = [moved, added].map(|c| c.along(axis).expect("an extent")[0]);
        assert!(a < was, "in and down: {a} {was}");
        assert_eq!((a * 16.0).fract(), 0.0, "on a sixteenth");
    }
    assert_eq!(screen.state().undo_name(), Some("Move keep-out Tube 1"));

    let edge = on_keep_out(&screen, Projection::Front, vec2(0.5, 0.0));
    drag(&mut screen, edge, vec2(9.0, -25.0));
    let [low, high] = along(&screen, Axis::Z);
    assert_eq!(low, moved.along(Axis::Z).expect("z")[0]);
    assert!(high > moved.along(Axis::Z).expect("z")[1]);
    assert_eq!(along(&screen, Axis::Y), moved.along(Axis::Y).expect("y"));
    assert_eq!(screen.state().undo_name(), Some("Resize keep-out Tube 1"));

    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(corners(&screen), moved);
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(corners(&screen), added);
}

#[test]
fn escape_puts_a_dragged_one_back() {
    let mut screen = in_the_way("good");
    click(&mut screen, "Add keep-out");
    let before = screen.state().build().clone();
    let from = on_keep_out(&screen, Projection::Front, MIDDLE);
    hand(&mut screen, from, vec2(-30.0, 30.0), |s, to| {
        assert_ne!(s.state().build(), &before, "it follows the hand");
        press(s, Modifiers::NONE, Key::Escape);
        s.drop_at(to);
    });
    assert_eq!(screen.state().build(), &before);
}

#[test]
fn drawn_in_the_front_view_it_counts_at_every_x_and_in_the_plan_it_is_a_box() {
    let mut screen = in_the_way("good");
    click(&mut screen, "Draw keep-out");
    assert!(screen.state().view().tune.draws_keep_out);
    let joint = common::on_screen(&screen, INNER, Projection::Front);
    // Begun on a joint: the tool draws all the same.
    drag(&mut screen, joint, vec2(-60.0, -50.0));
    let [a, b] = along(&screen, Axis::Y);
    assert!(
        (a - place(&screen, INNER)[1]).abs() < 0.1 && b < a,
        "{a} {b}"
    );
    assert_eq!(corners(&screen).along(Axis::X), None);
    assert!(
        !screen.state().view().tune.draws_keep_out,
        "put down after one"
    );
    assert_eq!(screen.state().undo_name(), Some("Add keep-out"));
    assert_eq!(screen.state().view().tune.keep_out, Some(0));

    press(&mut screen, Modifiers::NONE, Key::Num2);
    wait_for_clear(&mut screen);
    click(&mut screen, "Draw keep-out");
    let joint = common::on_screen(&screen, INNER, Projection::Plan);
    drag(&mut screen, joint + vec2(15.0, -30.0), vec2(40.0, 70.0));
    let all = keep_outs(&screen);
    assert_eq!(all.len(), 2);
    let [low, high] = all[1].corners.along(Axis::Z).expect("a box");
    let z = place(&screen, INNER)[2];
    assert!(low < z && z < high, "about the joint: {low} {high}");
    assert!(all[1].corners.along(Axis::X).is_some());

    click(&mut screen, "Draw keep-out");
    press(&mut screen, Modifiers::NONE, Key::Escape);
    assert!(!screen.state().view().tune.draws_keep_out);
    assert_eq!(keep_outs(&screen).len(), 2);
}

#[test]
fn a_click_chooses_it_and_opens_its_page() {
    let mut screen = in_the_way("good");
    click(&mut screen, "Add keep-out");
    click(&mut screen, "Best spot");
    screen.state_mut().view_mut().tune.keep_out = None;
    screen.run_steps(2);
    let at = on_keep_out(&screen, Projection::Front, MIDDLE);
    hand(&mut screen, at, Vec2::ZERO, |s, to| s.drop_at(to));
    assert_eq!(screen.state().view().tune.keep_out, Some(0));
    assert_eq!(screen.state().view().tune.page, TunePage::InTheWay);
}

#[test]
fn by_keyboard_it_is_chosen_moved_resized_and_taken_off() {
    let mut screen = in_the_way("good");
    click(&mut screen, "Add keep-out");
    screen.state_mut().view_mut().tune.keep_out = None;
    let start = corners(&screen);
    let joint = place(&screen, INNER);
    screen.get_by_label("Keep-out Tube 1, front view").focus();
    screen.run_steps(3);
    assert_eq!(
        screen.state().view().tune.keep_out,
        Some(0),
        "the stop chooses it"
    );
    press(&mut screen, Modifiers::NONE, Key::ArrowLeft);
    let by = |screen: &Screen, axis, n: usize| {
        along(screen, axis)[n] - start.along(axis).expect("an extent")[n]
    };
    assert_eq!(
        [by(&screen, Axis::Y, 0), by(&screen, Axis::Y, 1)],
        [-0.0625, -0.0625]
    );
    press(&mut screen, Modifiers::SHIFT, Key::ArrowUp);
    assert_eq!(by(&screen, Axis::Z, 0), 1.0 / 64.0);
    press(&mut screen, Modifiers::ALT, Key::ArrowDown);
    assert_eq!(by(&screen, Axis::Z, 0), 1.0 / 64.0);
    assert!(by(&screen, Axis::Z, 1) < 0.0, "the second corner came down");
    assert_eq!(place(&screen, INNER), joint, "the joint stays");
    press(&mut screen, Modifiers::NONE, Key::Delete);
    assert_eq!(keep_outs(&screen), []);
}

#[test]
fn a_keep_out_over_the_joint_is_named_as_the_reason_and_leaves_the_clear_area_smaller() {
    let mut screen = in_the_way("badly-placed-rack");
    wait_for_clear(&mut screen);
    let at = |s: &Screen| s.state().build().point_mm(INNER).expect("a joint");
    let reasons = |s: &Screen| s.state().tune().blocks_at(at(s)).expect("known");
    let before = reasons(&screen);
    assert!(!before.iter().any(|r| r.contains("keep-out")), "{before:?}");
    click(&mut screen, "Add keep-out");
    type_in(&mut screen, "Keep-out z, from", "9");
    assert!(reasons(&screen).contains(&"keep-out Tube 1".to_owned()));
    let told = screen.query_by_label_contains("In the way: ");
    assert!(told.is_some_and(|n| {
        let node = n.accesskit_node();
        node.value()
            .or(node.label())
            .is_some_and(|t| t.contains("Tube 1"))
    }));
}

#[test]
fn the_best_inside_leaves_out_what_a_keep_out_covers() {
    let mut screen = in_the_way("badly-placed-rack");
    wait_for_clear(&mut screen);
    let free = {
        let mut screen = in_the_way("badly-placed-rack");
        wait_for_clear(&mut screen);
        click(&mut screen, "Move it inside");
        place(&screen, INNER)
    };
    click(&mut screen, "Add keep-out");
    for (field, value) in [
        ("Keep-out y, from", free[1] - 0.5),
        ("Keep-out y, to", free[1] + 0.5),
        ("Keep-out z, from", free[2] - 0.25),
        ("Keep-out z, to", free[2] + 0.25),
    ] {
        type_in(&mut screen, field, &value.to_string());
    }
    click(&mut screen, "Move it inside");
    let clear = place(&screen, INNER);
    assert_eq!(
        screen.state().undo_name(),
        Some("Move inner joint into the clear area")
    );
    let off = [clear[1] - free[1], clear[2] - free[2]];
    assert!(
        off[0].abs() > 0.5 || off[1].abs() > 0.25,
        "{clear:?} {free:?}"
    );
    assert_eq!(
        [(clear[1] * 16.0).fract(), (clear[2] * 16.0).fract()],
        [0.0, 0.0]
    );
}

/// A keep-out from half an inch to one side of a place to as far on the other, a quarter below it and above.
fn put_over(screen: &mut Screen, at: [f64; 3]) {
    click(screen, "Room");
    click(screen, "Add keep-out");
    for (field, value) in [
        ("Keep-out y, from", at[1] - 0.53),
        ("Keep-out y, to", at[1] + 0.53),
        ("Keep-out z, from", at[2] - 0.28),
        ("Keep-out z, to", at[2] + 0.28),
    ] {
        type_in(screen, field, &value.to_string());
    }
}

fn is_kept_out(screen: &Screen) -> bool {
    let mm = screen.state().build().point_mm(INNER).expect("a joint");
    let unit = screen.state().build().unit;
    let axle = trammel_build::AxleName::Front;
    keep_outs(screen).iter().any(|k| k.holds(axle, mm, unit))
}

#[test]
fn the_exact_place_inside_is_no_worse_than_the_one_in_whole_steps() {
    let mut screen = in_the_way("badly-placed-rack");
    wait_for_clear(&mut screen);
    click(&mut screen, "Move it inside");
    let free = place(&screen, INNER);
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    put_over(&mut screen, free);
    wait_for_clear(&mut screen);
    click(&mut screen, "Move it inside");
    let in_steps = common::largest(&screen);
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    wait_for_clear(&mut screen);
    wait(&mut screen, |s| {
        s.query_by_label("Exactly inside").is_some()
    });
    click(&mut screen, "Exactly inside");
    assert!(!is_kept_out(&screen));
    let exact = common::largest(&screen);
    assert!(exact < in_steps - 1e-4, "{exact} {in_steps}");
    press(&mut screen, Modifiers::COMMAND, Key::Z);
}

/// The best spot itself keeps clear of keep-outs: of one joint, of both, and any way.
#[test]
fn the_best_spot_stands_clear_of_keep_outs() {
    for choice in ["Moves: this joint", "Moves: both", "May move: any way"] {
        let mut screen = in_the_way("badly-placed-rack");
        click(&mut screen, "Best spot");
        click(&mut screen, "Exactly");
        let free = place(&screen, INNER);
        press(&mut screen, Modifiers::COMMAND, Key::Z);
        put_over(&mut screen, free);
        click(&mut screen, "Best spot");
        if screen.query_by_label(choice).is_some() {
            click(&mut screen, choice);
        }
        wait(&mut screen, |s| {
            s.query_by_label_contains("clear of the keep-outs")
                .is_some()
                || (choice != "Moves: this joint" && s.query_by_label("Exactly").is_some())
        });
        click(&mut screen, "Exactly");
        assert!(!is_kept_out(&screen), "{choice}");
        assert_ne!(place(&screen, INNER), free, "{choice}");
    }
}
