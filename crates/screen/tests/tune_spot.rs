//! The page of the best spot: which joints move, which ways, and what is told about it.

#![allow(clippy::expect_used, reason = "a test stops where it fails")]

mod common;

use common::{INNER, bench, click, largest, place, press, tune, wait};
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use trammel_build::{Axis, Coordinate, PointName, PointRef};
use trammel_screen::{Start, tune::settings::SpotWays};

const OUTER: PointRef = PointRef {
    point: PointName::TieRodOuter,
    ..INNER
};

/// The button is there once the search beside the window is done.
fn wait_for_the_spot(screen: &mut common::Screen) {
    wait(screen, |s| s.query_by_label("Exactly").is_some());
}

#[test]
fn both_joints_go_to_their_best_spot_in_one_step() {
    let mut screen = tune("badly-placed-rack");
    let before = screen.state().build().clone();
    click(&mut screen, "Moves: both");
    assert!(screen.state().view().tune.both);
    wait_for_the_spot(&mut screen);
    click(&mut screen, "Exactly");
    assert!(largest(&screen) < 0.03, "{}", largest(&screen));
    let build = screen.state().build();
    let moved = |p: PointRef| build.point(p) != before.point(p);
    assert!(moved(INNER) && moved(OUTER));
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(screen.state().build(), &before);
    wait_for_the_spot(&mut screen);
    click(&mut screen, "Move it there");
    for p in [INNER, OUTER] {
        let [_, y, z] = place(&screen, p);
        assert_eq!([(y * 16.0).fract(), (z * 16.0).fract()], [0.0, 0.0]);
    }
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(screen.state().build(), &before);
}

#[test]
fn any_way_takes_the_nearest_of_equally_good_places() {
    let mut screen = tune("badly-placed-rack");
    let before = place(&screen, INNER);
    click(&mut screen, "Exactly");
    let plane = place(&screen, INNER);
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    click(&mut screen, "May move: any way");
    assert_eq!(screen.state().view().tune.ways, SpotWays::Free);
    wait_for_the_spot(&mut screen);
    click(&mut screen, "Exactly");
    let free = place(&screen, INNER);
    let way = |p: [f64; 3]| {
        let squares = p.iter().zip(before).map(|(a, b)| (a - b) * (a - b));
        squares.sum::<f64>().sqrt()
    };
    assert!(way(free) <= way(plane) + 1e-3, "{free:?} {plane:?}");
    assert!(largest(&screen) < 0.05);
}

#[test]
fn a_locked_coordinate_stays_and_with_all_locked_it_is_said() {
    let with_locks = |axes: &[Axis]| {
        let mut build = tune("badly-placed-rack").state().build().clone();
        build.locked.extend(axes.iter().map(|&axis| Coordinate {
            axle: INNER.axle,
            point: INNER.point,
            axis,
        }));
        let (mut screen, _) = bench(Start::Build(Box::new(build)));
        click(&mut screen, "Tune");
        screen.run_steps(4);
        screen
    };
    let all = with_locks(&[Axis::Y, Axis::Z]);
    assert!(all.query_by_label("No best spot").is_some());
    assert!(all.query_all_by_label_contains("is locked").count() > 0);
    let mut screen = with_locks(&[Axis::Y]);
    let before = place(&screen, INNER);
    click(&mut screen, "Exactly");
    let after = place(&screen, INNER);
    assert_eq!((before[0], before[1]), (after[0], after[1]));
    assert_ne!(before[2], after[2]);
}

#[test]
fn the_reason_is_told_of_either_joint_and_the_rule_beside_it() {
    let mut screen = tune("badly-placed-rack");
    let told = |s: &common::Screen, words: &str| s.query_all_by_label_contains(words).count() > 0;
    assert!(told(&screen, "the inner joint"), "the cure");
    assert!(told(&screen, "misses the best spot by"));
    assert!(told(&screen, "slope: inner joint"));
    click(&mut screen, "Joint: outer");
    screen.run_steps(4);
    assert!(told(&screen, "the outer joint"), "the cure");
    assert!(told(&screen, "slope: outer joint"));
    assert!(told(&screen, "misses the best spot by"));
    for what in [
        "Rack end, one turn out",
        "lifts the outer joint",
        "under the rack",
        "Tie rod, one turn longer",
        "does not cure toe change",
    ] {
        assert!(told(&screen, what), "{what}");
    }
    click(&mut screen, "Two-line rule");
    assert!(!screen.state().view().tune.rule);
}
