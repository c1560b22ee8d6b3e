//! What is in the way in the Tune stage: keep-outs by hand, keyboard and number, the joints' bolts, the clear area, and the loupe by keyboard.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod common;

use common::{INNER, Screen, bench, place, press};
use egui::{Key, Modifiers, Pos2, Vec2, vec2};
use egui_kittest::kittest::{NodeT, Queryable};
use trammel_build::{Axis, BoltAxis, KeepOut, KeepOutCorners};
use trammel_screen::{
    Start,
    drawing::{Projection, keep_out_name},
    tune::settings::TunePage,
};

/// A demo in Tune without keep-outs and bolts, on the page for what is in the way.
fn in_the_way(name: &str) -> Screen {
    let demo = trammel_persistence::demos()
        .into_iter()
        .find(|d| d.name == name)
        .expect("a demo of that name");
    let mut build = trammel_persistence::read(demo.text).expect("a demo reads");
    build.keep_outs.clear();
    build.front.joint_bolts = trammel_build::JointBolts::default();
    let (mut screen, _) = bench(Start::Build(Box::new(build)));
    click(&mut screen, "Tune");
    click(&mut screen, "Room");
    screen.run_steps(4);
    screen
}

fn keep_outs(screen: &Screen) -> Vec<KeepOut> {
    screen.state().build().keep_outs.clone()
}

fn corners(screen: &Screen) -> KeepOutCorners {
    keep_outs(screen).first().expect("a keep-out").corners
}

fn along(screen: &Screen, axis: Axis) -> [f64; 2] {
    corners(screen).along(axis).expect("an extent")
}

/// The field itself; the word before it has the same name.
fn type_in(screen: &mut Screen, name: &str, text: &str) {
    fn field<'a>(screen: &'a Screen, name: &'a str) -> egui_kittest::Node<'a> {
        screen.get_by_role_and_label(egui::Role::TextInput, name)
    }
    field(screen, name).scroll_to_me();
    screen.run_steps(30);
    field(screen, name).click();
    screen.run_steps(2);
    press(screen, Modifiers::COMMAND, Key::A);
    field(screen, name).type_text(text);
    screen.step();
    press(screen, Modifiers::NONE, Key::Enter);
    screen.run_steps(2);
}

/// A control by its name, which may be below the edge of the page.
fn click(screen: &mut Screen, name: &str) {
    screen.get_by_label(name).scroll_to_me();
    screen.run_steps(30);
    common::click(screen, name);
}

/// Steps until something beside the window is done; half a minute at most.
fn wait(screen: &mut Screen, done: impl Fn(&Screen) -> bool) {
    for _ in 0..3000 {
        screen.step();
        if done(screen) {
            return;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
    }
    panic!("still not done");
}

fn wait_for_clear(screen: &mut Screen) {
    wait(screen, |s| s.state().tune().clear_is_current());
}

fn hand(screen: &mut Screen, from: Pos2, by: Vec2, end: impl FnOnce(&mut Screen, Pos2)) {
    screen.hover_at(from);
    screen.step();
    screen.drag_at(from);
    screen.step();
    for i in 1..=10 {
        screen.hover_at(from + by * (i as f32 / 10.0));
        screen.step();
    }
    end(screen, from + by);
    screen.run_steps(2);
}

fn drag(screen: &mut Screen, from: Pos2, by: Vec2) {
    hand(screen, from, by, |s, to| s.drop_at(to));
}

/// A point of the first keep-out on the screen, as parts of its width and height.
fn on_keep_out(screen: &Screen, view: Projection, part: Vec2) -> Pos2 {
    let all = keep_outs(screen);
    let name = keep_out_name(all.first().expect("a keep-out"), view);
    let rect = screen.get_by_label(&name).rect();
    rect.min + part * rect.size()
}

/// Inside, off the edges and off the joints that may lie in its middle.
const MIDDLE: Vec2 = vec2(0.4, 0.6);

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

#[test]
fn the_clear_area_is_shown_or_not() {
    let mut screen = in_the_way("good");
    click(&mut screen, "Show it on the map");
    assert!(!screen.state().view().tune.clear_area);
    assert!(screen.query_by_label("Move it inside").is_none());
    click(&mut screen, "Best spot");
    click(&mut screen, "Clear area");
    assert!(screen.state().view().tune.clear_area);
}

#[test]
fn bolts_are_chosen_typed_and_turned_with_one_click() {
    let mut screen = in_the_way("lifted");
    let inner = |s: &Screen| s.state().build().front.joint_bolts.inner;
    click(&mut screen, "Inner bolt: upright");
    assert_eq!(inner(&screen), Some(BoltAxis::Vertical));
    let offered = screen
        .get_by_label_contains("Turn the inner bolt fore-and-aft: ")
        .accesskit_node()
        .label()
        .expect("a label");
    let numbers: Vec<f64> = offered
        .split([' ', '°'])
        .filter_map(|w| w.parse().ok())
        .collect();
    assert!(
        numbers[0] > 12.0 && numbers[1] < 0.5 * numbers[0],
        "{offered}"
    );
    click(&mut screen, &offered);
    assert_eq!(inner(&screen), Some(BoltAxis::ForeAft));
    assert!(
        screen
            .query_by_label_contains("Turn the inner bolt")
            .is_none()
    );

    click(&mut screen, "Inner bolt: any way");
    assert_eq!(inner(&screen), Some(BoltAxis::Direction([1.0, 0.0, 0.0])));
    type_in(&mut screen, "Inner bolt, z", "0.5");
    assert_eq!(inner(&screen), Some(BoltAxis::Direction([1.0, 0.0, 0.5])));
    // No direction at all: refused.
    type_in(&mut screen, "Inner bolt, z", "0");
    type_in(&mut screen, "Inner bolt, x", "0");
    assert_eq!(inner(&screen), Some(BoltAxis::Direction([1.0, 0.0, 0.0])));
    click(&mut screen, "Inner bolt: not known");
    assert_eq!(inner(&screen), None);

    let outer = |s: &Screen| s.state().build().front.joint_bolts.outer;
    for (name, bolt) in [
        ("Outer bolt: crosswise", BoltAxis::Lateral),
        ("Outer bolt: fore-and-aft", BoltAxis::ForeAft),
        ("Outer bolt: upright", BoltAxis::Vertical),
    ] {
        click(&mut screen, name);
        assert_eq!(outer(&screen), Some(bolt));
    }
}

#[test]
fn the_clear_area_follows_the_bolt() {
    let mut screen = in_the_way("lifted");
    let joint = screen.state().build().point_mm(INNER).expect("a joint");
    let swivels = |s: &Screen| {
        let reasons = s.state().tune().blocks_at(joint).expect("known");
        reasons.iter().any(|r| r.contains("swivels"))
    };
    click(&mut screen, "Inner bolt: upright");
    wait_for_clear(&mut screen);
    assert!(swivels(&screen));
    click(&mut screen, "Inner bolt: fore-and-aft");
    wait_for_clear(&mut screen);
    assert!(!swivels(&screen));
}

fn loupe_value(screen: &Screen) -> String {
    let loupe = screen.get_by_label("Loupe of the toe map");
    loupe.value().unwrap_or_default()
}

#[test]
fn the_loupe_is_read_and_used_by_keyboard() {
    let mut screen = in_the_way("badly-placed-rack");
    let before = screen.state().build().clone();
    screen.get_by_label("Loupe of the toe map").focus();
    screen.run_steps(3);
    let at_joint = loupe_value(&screen);
    assert!(at_joint.contains("y 7 9/16, z 9 1/2"), "{at_joint}");
    for _ in 0..4 {
        press(&mut screen, Modifiers::NONE, Key::ArrowDown);
    }
    press(&mut screen, Modifiers::NONE, Key::ArrowLeft);
    let read = loupe_value(&screen);
    assert!(read.contains("y 7 1/2, z 9 1/4"), "{read}");
    assert!(read.contains('°'), "{read}");
    assert_eq!(screen.state().build(), &before, "reading moves nothing");
    press(&mut screen, Modifiers::NONE, Key::Enter);
    let inner = place(&screen, INNER);
    assert_eq!([inner[1], inner[2]], [7.5, 9.25]);
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(screen.state().build(), &before, "one step");
    press(&mut screen, Modifiers::NONE, Key::Home);
    assert_eq!(loupe_value(&screen), at_joint);

    let width = screen.state().view().tune.map_width;
    press(&mut screen, Modifiers::NONE, Key::Plus);
    assert!(screen.state().view().tune.map_width > width);
    press(&mut screen, Modifiers::NONE, Key::Minus);
    assert!((screen.state().view().tune.map_width - width).abs() < 1e-9);
}

#[test]
fn the_loupe_grows_and_shrinks_back() {
    let mut screen = in_the_way("good");
    let width = |s: &Screen| s.get_by_label("Loupe of the toe map").rect().width();
    let usual = width(&screen);
    screen.get_by_label("Loupe larger").focus();
    screen.run_steps(2);
    press(&mut screen, Modifiers::NONE, Key::Enter);
    assert!(width(&screen) > 1.2 * usual);
    click(&mut screen, "Loupe smaller");
    assert_eq!(width(&screen), usual);
}

#[test]
#[ignore = "makes pictures for the eye"]
fn pictures() {
    for light in [false, true] {
        for name in ["badly-placed-rack", "lifted"] {
            let (mut screen, _) = bench(Start::NamedDemo(name.into()));
            screen.state_mut().set_light(light);
            click(&mut screen, "Tune");
            wait_for_clear(&mut screen);
            let theme = if light { "light" } else { "dark" };
            let save = |screen: &mut Screen, page: &str| {
                let image = screen.render().expect("painted");
                let file = format!("in-the-way-{name}-{page}-{theme}.png");
                image
                    .save(std::env::temp_dir().join(file))
                    .expect("written");
            };
            save(&mut screen, "spot");
            click(&mut screen, "Room");
            screen.state_mut().view_mut().tune.keep_out = Some(0);
            screen.get_by_label("Loupe of the toe map").focus();
            screen.run_steps(10);
            for _ in 0..14 {
                press(&mut screen, Modifiers::NONE, Key::ArrowDown);
            }
            save(&mut screen, "keep-outs");
            screen.get_by_label("Outer bolt: any way").scroll_to_me();
            screen.run_steps(60);
            press(&mut screen, Modifiers::NONE, Key::Num1);
            screen.run_steps(3);
            save(&mut screen, "bolts");
        }
    }
}
