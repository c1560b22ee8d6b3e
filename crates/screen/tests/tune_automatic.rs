//! The page of automatic tuning: every control, the search, and the layouts it finds.

#![allow(clippy::expect_used, reason = "a test stops where it fails")]

mod common;

use common::{click, largest, press, tune, type_in, wait};
use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::Queryable;
use trammel_screen::tune::auto::How;
use trammel_tuning::{Axis, Coordinate, Dimension, Emphasis, Figure, Hardpoint};

fn automatic(name: &str) -> common::Screen {
    let mut screen = tune(name);
    // High enough for the whole page, so that nothing has to be scrolled to.
    screen.set_size(vec2(1280.0, 2400.0));
    screen.run_steps(3);
    click(&mut screen, "Automatic");
    screen
}

fn find(screen: &mut common::Screen) {
    click(screen, "Find good layouts");
    wait(screen, |s| {
        s.state()
            .tune()
            .found()
            .is_some_and(|(done, n)| done && n > 0)
    });
    screen.run_steps(3);
}

fn row(screen: &common::Screen, dimension: Dimension) -> trammel_screen::tune::auto::Row {
    let moves = &screen.state().view().tune.auto.moves;
    *moves
        .iter()
        .find(|r| r.dimension == dimension)
        .expect("listed")
}

fn want(screen: &common::Screen, figure: Figure) -> trammel_screen::tune::auto::Want {
    let wants = &screen.state().view().tune.auto.wants;
    *wants.iter().find(|w| w.figure == figure).expect("listed")
}

#[test]
fn a_search_finds_layouts_that_are_applied_as_one_step() {
    let mut screen = automatic("badly-placed-rack");
    let before = screen.state().build().clone();
    find(&mut screen);
    click(&mut screen, "Layout 1");
    assert_eq!(screen.state().view().tune.preview, Some(0));
    assert_eq!(screen.state().build(), &before, "a look changes nothing");
    let in_steps = "Apply layout 1 in steps";
    assert!(screen.query_by_label("Apply layout 1 exactly").is_none());
    click(&mut screen, "Show and apply: exactly");
    assert!(
        screen.query_by_label(in_steps).is_none(),
        "one button says it"
    );
    assert_eq!(screen.state().build(), &before, "a choice changes nothing");
    click(&mut screen, "Apply layout 1 exactly");
    assert!(largest(&screen) < 0.03, "{}", largest(&screen));
    assert_eq!(screen.state().undo_name(), Some("Apply layout 1 exactly"));
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(screen.state().build(), &before);
    click(&mut screen, "Show and apply: in steps");
    click(&mut screen, in_steps);
    assert_eq!(screen.state().undo_name(), Some(in_steps));
    let inner = screen.state().build().front.tie_rod.inner;
    assert_eq!(
        [(inner[1] * 16.0).fract(), (inner[2] * 16.0).fract()],
        [0.0, 0.0],
        "{inner:?}"
    );
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(screen.state().build(), &before);
}

#[test]
fn a_point_of_the_picture_shows_its_layout_and_what_rounding_costs() {
    let mut screen = automatic("badly-placed-rack");
    find(&mut screen);
    click(&mut screen, "Show layout 1");
    assert_eq!(screen.state().view().tune.preview, Some(0));
    for column in ["now", "exactly", "in steps", "wanted"] {
        assert!(screen.query_all_by_label(column).count() > 0, "{column}");
    }
    click(&mut screen, "Against: Tie-rod angle");
    assert_eq!(screen.state().view().tune.auto.against, Figure::TieRodAngle);
    click(&mut screen, "Show layout 1");
    assert_eq!(screen.state().view().tune.preview, None, "taken away again");
}

#[test]
fn ends_and_steps_are_typed_and_nonsense_is_refused() {
    let mut screen = automatic("badly-placed-rack");
    type_in(&mut screen, "Rack height, from", "-1/2");
    type_in(&mut screen, "Rack height, to", "3");
    type_in(&mut screen, "Rack height, step", "1/8");
    let height = row(&screen, Dimension::RackHeight);
    assert!((height.range[0] + 12.7).abs() < 1e-9 && (height.range[1] - 76.2).abs() < 1e-9);
    assert_eq!(height.step, Some(3.175));
    for (field, text) in [
        ("Rack height, from", "4"),
        ("Rack height, to", "-1"),
        ("Rack height, to", "40"),
        ("Rack height, step", "0"),
        ("Rack height, from", "low"),
    ] {
        type_in(&mut screen, field, text);
        assert!(
            screen
                .state()
                .said()
                .is_some_and(|s| s.contains("stays at")),
            "{field} {text}"
        );
        assert_eq!(
            row(&screen, Dimension::RackHeight),
            height,
            "{field} {text}"
        );
    }
    find(&mut screen);
    click(&mut screen, "Apply layout 1 in steps");
    let inner = screen.state().build().front.tie_rod.inner;
    assert_eq!((inner[2] * 8.0).fract(), 0.0, "{inner:?}");
}

#[test]
fn every_dimension_can_be_ticked_and_a_lock_holds_it() {
    let mut screen = automatic("badly-placed-rack");
    click(&mut screen, "Arm pivots");
    screen.run_steps(20);
    for (label, dimension) in [
        ("Rack, fore and aft", Dimension::RackSetBack),
        ("Upper pivots, height", Dimension::UpperPivotsHeight),
        ("Upper pivots, in and out", Dimension::UpperPivotsWidth),
        ("Lower pivots, height", Dimension::LowerPivotsHeight),
        ("Lower pivots, in and out", Dimension::LowerPivotsWidth),
    ] {
        click(&mut screen, label);
        assert!(row(&screen, dimension).on, "{label}");
    }
    for (group, label, point) in [
        (None, "Outer joint, height", Hardpoint::TieRodOuter),
        (
            Some("Single pivots"),
            "Lower rear pivot, height",
            Hardpoint::LowerRearPivot,
        ),
        (
            Some("Ball joints"),
            "Upper ball joint, height",
            Hardpoint::UpperBallJoint,
        ),
    ] {
        if let Some(group) = group {
            click(&mut screen, group);
            screen.run_steps(20);
        }
        click(&mut screen, label);
        let axis = Axis::Z;
        assert!(
            row(&screen, Dimension::One(Coordinate { point, axis })).on,
            "{label}"
        );
    }
}

#[test]
fn every_figure_can_be_a_limit_or_a_target() {
    let mut screen = automatic("badly-placed-rack");
    for figure in Figure::ALL {
        let name = trammel_screen::tune::auto::long_name(figure);
        click(&mut screen, name);
        let before = want(&screen, figure);
        assert!(before.on, "{name}");
        click(&mut screen, &format!("{name}, {}", before.how.word()));
        assert_eq!(want(&screen, figure).how, before.how.next(), "{name}");
        type_in(&mut screen, &format!("{name}, figure"), "2.5");
        type_in(&mut screen, &format!("{name}, weight"), "3");
        assert_eq!(want(&screen, figure).weight, 3.0, "{name}");
        let factor = trammel_screen::tune::auto::factor(figure, trammel_build::LengthUnit::Inch);
        assert!(
            (want(&screen, figure).value * factor - 2.5).abs() < 1e-9,
            "{name}"
        );
    }
    type_in(&mut screen, "Castor, figure", "steep");
    assert!(
        screen
            .state()
            .said()
            .is_some_and(|s| s.contains("it stays at 2.5"))
    );
    assert_eq!(How::AtLeast.next().next().next(), How::AtLeast);
    click(&mut screen, "Toe over: most in the middle");
    assert_eq!(screen.state().view().tune.auto.emphasis, Emphasis::Middle);
}

#[test]
fn weights_say_what_toe_change_at_lock_counts_against_that_over_the_travel() {
    let at_lock = |weight: &str| {
        let mut screen = automatic("badly-placed-rack");
        click(&mut screen, "Toe change at lock");
        click(&mut screen, "Toe change at lock, at most");
        assert_eq!(want(&screen, Figure::ToeChangeAtLock).how, How::Near);
        type_in(&mut screen, "Toe change at lock, figure", "0");
        type_in(&mut screen, "Toe change at lock, weight", weight);
        type_in(&mut screen, "Least toe change, weight", "1");
        find(&mut screen);
        click(&mut screen, "Show and apply: exactly");
        click(&mut screen, "Apply layout 1 exactly");
        largest(&screen)
    };
    let (little, much) = (at_lock("0.01"), at_lock("50"));
    assert!(
        much > little + 0.01,
        "at centre {little} and {much} degrees"
    );
}

#[test]
fn a_weight_that_makes_no_sense_is_refused() {
    let mut screen = automatic("badly-placed-rack");
    type_in(&mut screen, "Least toe change, weight", "2");
    for text in ["-1", "much", "1000"] {
        type_in(&mut screen, "Least toe change, weight", text);
        let said = screen.state().said().unwrap_or_default();
        assert!(said.contains("stays at 2"), "{said}");
    }
    assert_eq!(screen.state().view().tune.auto.toe_weight, 2.0);
}

#[test]
fn a_limit_is_kept_by_the_layout_that_is_found() {
    let mut screen = automatic("badly-placed-rack");
    click(&mut screen, "Tie-rod angle");
    type_in(&mut screen, "Tie-rod angle, figure", "11");
    find(&mut screen);
    click(&mut screen, "Layout 1");
    assert!(screen.query_by_label("at most 11.0°").is_some());
    assert!(screen.query_by_label("at most 11.0°: missed").is_none());
}

#[test]
fn a_search_can_be_stopped_and_with_nothing_to_move_it_says_so() {
    let mut screen = automatic("lifted");
    click(&mut screen, "Find good layouts");
    click(&mut screen, "Stop");
    wait(&mut screen, |s| {
        s.state().tune().found().is_some_and(|(done, _)| done)
    });
    screen.run_steps(3);
    click(&mut screen, "Rack height");
    click(&mut screen, "Rack width, each side");
    click(&mut screen, "Find good layouts");
    assert!(
        screen
            .state()
            .said()
            .is_some_and(|s| s.contains("Nothing may move"))
    );
}
