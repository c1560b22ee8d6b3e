//! The Tune stage: the map, the loupe, the best spot, build error and automatic tuning, by their controls.

#![allow(clippy::expect_used, reason = "a test stops where it fails")]

mod common;

use common::{INNER, click, demo, drag_from, largest, place, press, tune, wait};
use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::Queryable;
use trammel_build::{PointName, PointRef};
use trammel_screen::{
    drawing::Projection,
    tune::settings::{MapRack, SpotWays},
    view::Stage,
};
use trammel_tuning::{Scoring, TieRodJoint};

#[test]
fn the_stage_is_reached_by_its_name_and_by_key_and_left_again() {
    let mut screen = demo();
    click(&mut screen, "Tune");
    assert_eq!(screen.state().view().stage, Stage::Tune);
    assert!(screen.query_by_label("Loupe of the toe map").is_some());
    press(&mut screen, Modifiers::NONE, Key::F2);
    assert_eq!(screen.state().view().stage, Stage::LayOut);
    assert!(screen.query_by_label("Loupe of the toe map").is_none());
    press(&mut screen, Modifiers::NONE, Key::F3);
    assert_eq!(screen.state().view().stage, Stage::Tune);
}

#[test]
fn the_map_is_worked_out_within_a_few_frames_and_during_a_drag() {
    let mut screen = tune("badly-placed-rack");
    assert!(screen.state().tune().map_is_complete());
    let ball = PointRef {
        point: PointName::LowerBallJoint,
        ..INNER
    };
    drag_from(&mut screen, ball, Projection::Front, vec2(0.0, 12.0));
    screen.run_steps(6);
    assert!(screen.state().tune().map_is_complete());
}

#[test]
fn move_it_there_cures_the_badly_placed_demo_in_one_step() {
    let mut screen = tune("badly-placed-rack");
    let before = screen.state().build().clone();
    assert!(largest(&screen) > 2.0);
    click(&mut screen, "Move it there");
    assert!(largest(&screen) < 0.05, "{}", largest(&screen));
    let inner = place(&screen, INNER);
    assert_eq!(
        [(inner[1] * 16.0).fract(), (inner[2] * 16.0).fract()],
        [0.0, 0.0],
        "{inner:?}"
    );
    assert_eq!(inner[0], before.front.tie_rod.inner[0], "as typed");
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(screen.state().build(), &before);
}

#[test]
fn exactly_is_at_least_as_good_as_whole_steps() {
    let mut screen = tune("badly-placed-rack");
    click(&mut screen, "Move it there");
    let stepped = largest(&screen);
    click(&mut screen, "Exactly");
    assert!(largest(&screen) <= stepped + 1e-3);
}

#[test]
fn a_click_in_the_loupe_moves_the_joint_there_and_undo_takes_it_back() {
    let mut screen = tune("badly-placed-rack");
    let before = screen.state().build().clone();
    let at = screen.get_by_label("Loupe of the toe map").rect().center() + vec2(-60.0, 40.0);
    screen.hover_at(at);
    screen.step();
    screen.drag_at(at);
    screen.step();
    screen.drop_at(at);
    screen.run_steps(3);
    let (a, b) = (before.front.tie_rod.inner, place(&screen, INNER));
    assert!(
        b[1] < a[1] && b[2] < a[2],
        "left in the loupe is in, down is down: {a:?} {b:?}"
    );
    assert_eq!((b[2] * 16.0).fract(), 0.0, "snapped");
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(screen.state().build(), &before);
}

#[test]
fn escape_gives_a_drag_in_the_loupe_up() {
    let mut screen = tune("badly-placed-rack");
    let before = screen.state().build().clone();
    let at = screen.get_by_label("Loupe of the toe map").rect().center();
    screen.hover_at(at);
    screen.step();
    screen.drag_at(at);
    screen.step();
    for i in 1..8 {
        screen.hover_at(at + vec2(-5.0 * i as f32, 3.0 * i as f32));
        screen.step();
    }
    assert_ne!(
        screen.state().build(),
        &before,
        "the build follows the drag"
    );
    press(&mut screen, Modifiers::NONE, Key::Escape);
    assert_eq!(screen.state().build(), &before);
    screen.drop_at(at);
    screen.run_steps(2);
    assert_eq!(screen.state().build(), &before);
}

#[test]
fn the_switches_change_what_is_judged() {
    let mut screen = tune("good");
    click(&mut screen, "Judged by: RMS");
    assert_eq!(screen.state().view().tune.scoring, Scoring::Rms);
    click(&mut screen, "Judged by: slope");
    assert_eq!(screen.state().view().tune.scoring, Scoring::Slope);
    click(&mut screen, "Rack: worst of three");
    assert_eq!(screen.state().view().tune.racks, MapRack::Worst);
    click(&mut screen, "Rack: as it stands");
    assert_eq!(screen.state().view().tune.racks, MapRack::Here);
    click(&mut screen, "Rack: at centre");
    assert_eq!(screen.state().view().tune.racks, MapRack::Centre);
    click(&mut screen, "May move: height only");
    assert_eq!(screen.state().view().tune.ways, SpotWays::Height);
    click(&mut screen, "May move: width only");
    assert_eq!(screen.state().view().tune.ways, SpotWays::Width);
    click(&mut screen, "Joint: outer");
    assert_eq!(screen.state().view().tune.joint, TieRodJoint::Outer);
    assert_eq!(
        screen.state().view().selected.map(|p| p.point),
        Some(PointName::TieRodOuter)
    );
    screen.run_steps(4);
    assert!(screen.state().tune().map_is_complete());
    let width = screen.state().view().tune.map_width;
    click(&mut screen, "Map wider");
    assert!(screen.state().view().tune.map_width > width);
    click(&mut screen, "Map narrower");
    assert!((screen.state().view().tune.map_width - width).abs() < 1e-9);
    let loupe = screen.get_by_label("Loupe of the toe map").rect().center();
    screen.hover_at(loupe);
    screen.step();
    screen.event(egui::Event::MouseWheel {
        unit: egui::MouseWheelUnit::Point,
        delta: egui::vec2(0.0, -60.0),
        phase: egui::TouchPhase::Move,
        modifiers: Modifiers::NONE,
        source: egui::MouseWheelSource::Wheel,
    });
    screen.run_steps(20);
    assert!(screen.state().view().tune.map_width > width, "by the wheel");
}

#[test]
fn moving_in_height_only_leaves_the_width_alone() {
    let mut screen = tune("badly-placed-rack");
    click(&mut screen, "May move: height only");
    let before = place(&screen, INNER);
    click(&mut screen, "Exactly");
    let after = place(&screen, INNER);
    assert_eq!((before[0], before[1]), (after[0], after[1]));
    assert_ne!(before[2], after[2]);
}

#[test]
#[ignore = "makes pictures for the eye"]
fn pictures() {
    for light in [false, true] {
        let mut screen = tune("badly-placed-rack");
        screen.state_mut().set_light(light);
        let save = |screen: &mut common::Screen, name: &str| {
            let image = screen.render().expect("painted");
            let path = std::env::temp_dir().join(format!(
                "tune-{name}-{}.png",
                if light { "light" } else { "dark" }
            ));
            image.save(path).expect("written");
        };
        click(&mut screen, "Automatic");
        click(&mut screen, "Rack-end factor");
        click(&mut screen, "Find good layouts");
        wait(&mut screen, |s| {
            s.state()
                .tune()
                .found()
                .is_some_and(|(done, n)| done && n > 0)
        });
        click(&mut screen, "Layout 1");
        save(&mut screen, "automatic");
        click(&mut screen, "Ride height");
        wait(&mut screen, |s| s.state().tune().lift_is_current());
        save(&mut screen, "ride-height");
        click(&mut screen, "Build error");
        wait(&mut screen, |s| s.state().tune().scatter_is_current());
        save(&mut screen, "build-error");
        click(&mut screen, "Best spot");
        let at = screen.get_by_label("Loupe of the toe map").rect().center();
        screen.hover_at(at + vec2(40.0, 20.0));
        screen.run_steps(3);
        save(&mut screen, "reading");
    }
}

#[test]
#[ignore = "tells how long a frame takes here"]
fn frame_time_while_dragging() {
    for stage in ["Lay out", "Tune"] {
        for point in [
            INNER,
            PointRef {
                point: PointName::LowerBallJoint,
                ..INNER
            },
        ] {
            let mut screen = tune("lifted");
            click(&mut screen, stage);
            let from = common::on_screen(&screen, point, Projection::Front);
            screen.hover_at(from);
            screen.step();
            screen.drag_at(from);
            screen.step();
            let mut times: Vec<f64> = (0..200)
                .map(|i| {
                    screen.hover_at(from + vec2(0.0, 8.0 + (i % 20) as f32));
                    let start = std::time::Instant::now();
                    screen.step();
                    start.elapsed().as_secs_f64() * 1e3
                })
                .collect();
            times.sort_by(f64::total_cmp);
            println!(
                "{stage}, {}: median {:.2} ms, 95 of 100 below {:.2} ms",
                point.point.label(),
                times[100],
                times[190]
            );
        }
    }
}
