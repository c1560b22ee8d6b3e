//! What the trade says of a lift, held against two ride heights.

#![allow(clippy::expect_used, reason = "a test stops where it fails")]

mod common;

use common::demo;
use trammel_analysis::{LiftVerdict, Raise, RideHeightRow, Stops, ride_heights, tolerances};
use trammel_build::{Axis, AxleName, Coordinate, LengthUnit, MadeBy, PointName, Side};
use trammel_tuning::{Reset, Spread};

fn row(by: f64, toe_deg: f64, factor: Option<f64>) -> RideHeightRow {
    RideHeightRow {
        by,
        tie_rod_angle: None,
        inner_swivel: 0.0,
        outer_swivel: 0.0,
        toe_change: f64::to_radians(toe_deg),
        rack_end_factor: factor,
        camber: 0.0,
        half_track: 600.0,
    }
}

fn verdict(before: [f64; 2], after: [f64; 2], by: f64) -> LiftVerdict {
    let limit = 0.3_f64.to_radians();
    let [before, after] = [(before, 0.0), (after, by)];
    LiftVerdict::of(
        &row(before.1, before.0[0], Some(before.0[1])),
        &row(after.1, after.0[0], Some(after.0[1])),
        limit,
    )
}

#[test]
fn the_saying_holds_where_toe_stays_and_stress_grows() {
    let found = verdict([0.10, 2.0], [0.15, 1.0], 50.8);
    assert_eq!(found.stress_times(), Some(2.0));
    assert!(found.toe_little && found.is_multiplied() && found.trade_is_right());
    let words = found.in_words(LengthUnit::Inch);
    assert!(words.starts_with("Raised by 2 in,"), "{words}");
    assert!(words.contains("changes little") && words.contains("2.0 times as much"));
    assert!(words.contains("The trade's saying holds here"), "{words}");
}

#[test]
fn the_saying_fails_where_toe_goes_or_stress_stays() {
    let toe_goes = verdict([0.10, 2.0], [0.30, 1.0], 50.8);
    let stress_stays = verdict([0.10, 2.0], [0.10, 1.95], 50.8);
    for found in [toe_goes, stress_stays] {
        assert!(!found.trade_is_right());
        assert!(
            found
                .in_words(LengthUnit::Millimetre)
                .contains("does not hold")
        );
    }
    let lowered = verdict([0.10, 2.0], [0.10, 4.0], -25.4);
    let words = lowered.in_words(LengthUnit::Inch);
    assert!(words.starts_with("Lowered by 1 in,"), "{words}");
    assert!(
        words.contains("falls to 0.50") && !words.contains("saying"),
        "{words}"
    );
}

#[test]
fn without_a_rack_end_it_says_so() {
    let found = LiftVerdict::of(&row(0.0, 0.1, None), &row(25.4, 0.1, None), 0.005);
    assert_eq!(found.stress_times(), None);
    assert!(!found.trade_is_right());
    assert!(found.in_words(LengthUnit::Inch).contains("no rack end"));
}

#[test]
fn the_good_demo_lifted_loads_its_rack_end() {
    let build = demo("good");
    let how = Raise {
        by: 0.0,
        reset: Reset::ToeAndCamber,
        stops: Stops::MovedAlong,
    };
    let rows = ride_heights(
        &build,
        (AxleName::Front, Side::Left),
        &[0.0, 2.75 * 25.4],
        &how,
    );
    let [a, b] = [&rows[0], &rows[1]].map(|r| r.as_ref().expect("a row"));
    let found = LiftVerdict::of(a, b, 0.3_f64.to_radians());
    assert!(found.stress_times().expect("a rack end") > 1.0);
}

#[test]
fn tolerances_are_the_builds_own_and_the_wheel_centre_counts_when_named() {
    let mut build = demo("good");
    build.tolerances = trammel_build::Tolerances::default();
    let front = AxleName::Front;
    let plain = tolerances(&build, front, Side::Left);
    assert_eq!(plain.len(), 24);
    assert!(plain.iter().all(|t| t.spread == Spread::Normal(0.8)));
    let centre = Coordinate {
        axle: front,
        point: PointName::WheelCentre,
        axis: Axis::Z,
    };
    build
        .tolerances
        .coordinates
        .insert(centre, MadeBy::JigDrilled);
    build
        .tolerances
        .points
        .insert((front, PointName::TieRodInner), MadeBy::HandHeld);
    let named = tolerances(&build, front, Side::Left);
    assert_eq!(named.len(), 25);
    let count = |mm: f64| {
        let is = |t: &&trammel_tuning::Tolerance| t.spread == Spread::Normal(mm);
        named.iter().filter(is).count()
    };
    assert_eq!([count(0.4), count(0.8), count(1.6)], [1, 21, 3]);
}
