//! Toe conversions against closed forms, and sheets against hand sums.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod common;

use trammel_geometry::Linkage;
use trammel_setup::{
    Board, Method, MethodFault, Raw, ReadingsFault, Row, Run, Shape, Sheet, SheetFault, SpotWay,
    ToePoint, ToeReadings, TravelBy, TravelFault, Way, sign_doubts, travel,
};
use trammel_specimens::behind;

fn degrees(method: Method, raw: Raw) -> f64 {
    method.toe(raw).unwrap().to_degrees()
}

#[test]
fn conversions_are_the_closed_forms() {
    let plate = Method::TwoDials {
        spacing: 250.0,
        grows: Way::In,
    };
    let tan = |a: f64| a.to_radians().tan();
    let pair = |front, rear| Raw::Pair { front, rear };
    assert!((degrees(plate, pair(250.0 * tan(0.3) + 1.0, 1.0)) - 0.3).abs() < 1e-12);
    let other = Method::TwoDials {
        spacing: 250.0,
        grows: Way::Out,
    };
    assert!((degrees(other, pair(250.0 * tan(0.3), 0.0)) + 0.3).abs() < 1e-12);
    let roller = Method::OneDial {
        spacing: 200.0,
        grows: Way::In,
    };
    assert!((degrees(roller, Raw::Dial(-200.0 * tan(0.5))) + 0.5).abs() < 1e-12);
    let ahead = Method::Laser {
        distance: 3000.0,
        board: Board::Ahead,
    };
    let behind = Method::Laser {
        distance: 3000.0,
        board: Board::Behind,
    };
    let spot = Raw::Spot(3000.0 * tan(0.2), SpotWay::Inboard);
    assert!((degrees(ahead, spot) - 0.2).abs() < 1e-12);
    assert!((degrees(behind, spot) + 0.2).abs() < 1e-12);
    let mirror = Method::Mirror { distance: 3000.0 };
    assert!((degrees(mirror, Raw::Spot(3000.0 * tan(0.4), SpotWay::Ahead)) - 0.2).abs() < 1e-12);
    assert!((degrees(Method::Degrees, Raw::Degrees(0.7, Way::Out)) + 0.7).abs() < 1e-12);
}

/// Published: 4 mm in all on 727.7 mm is 0.3149 degrees in all (workshop page).
#[test]
fn the_tape_gives_each_wheel_half() {
    let tape = Method::Tape { across: 727.7 };
    let each = degrees(
        tape,
        Raw::Pair {
            front: 1200.0,
            rear: 1204.0,
        },
    );
    assert!((2.0 * each - 0.314_943).abs() < 2e-6, "{each}");
    assert!(tape.reads_both_wheels());
}

/// At hub height the marks are a diameter apart, at 150 mm above or below it with a radius of 250 a 3-4-5 triangle makes it 400.
#[test]
fn a_tape_below_the_hub_crosses_less_of_the_tyre() {
    let across = |height| match Method::tape_at(250.0, 240.0, height) {
        Some(Method::Tape { across }) => across,
        other => panic!("{other:?}"),
    };
    assert!((across(240.0) - 500.0).abs() < 1e-9);
    assert!((across(90.0) - 400.0).abs() < 1e-9);
    assert_eq!(Method::tape_at(250.0, 240.0, 600.0), None);
}

/// Slope of each conversion by difference quotient against the accuracy it claims.
#[test]
fn accuracies_follow_the_conversions() {
    let plate = Method::TwoDials {
        spacing: 250.0,
        grows: Way::In,
    };
    let slope = plate
        .toe(Raw::Pair {
            front: 1e-3,
            rear: 0.0,
        })
        .unwrap()
        / 1e-3;
    assert!((plate.deviation(0.02) - slope * 0.02 * 2.0_f64.sqrt()).abs() < 1e-9);
    let mirror = Method::Mirror { distance: 2000.0 };
    let slope = mirror.toe(Raw::Spot(1e-3, SpotWay::Ahead)).unwrap() / 1e-3;
    assert!((mirror.deviation(1.0) - slope).abs() < 1e-9);
}

#[test]
fn signs_where_words_belong_are_refused() {
    let fault = Method::Degrees
        .toe(Raw::Degrees(-0.2, Way::In))
        .unwrap_err();
    assert_eq!(fault, MethodFault::Signed { value: -0.2 });
    let laser = Method::Laser {
        distance: 3000.0,
        board: Board::Ahead,
    };
    assert!(matches!(
        laser.toe(Raw::Spot(-2.0, SpotWay::Inboard)),
        Err(MethodFault::Signed { .. })
    ));
    assert!(matches!(
        laser.toe(Raw::Spot(2.0, SpotWay::Ahead)),
        Err(MethodFault::Kind { .. })
    ));
    assert!(matches!(
        laser.toe(Raw::Dial(2.0)),
        Err(MethodFault::Kind { .. })
    ));
    let none = Method::OneDial {
        spacing: 0.0,
        grows: Way::In,
    };
    assert!(matches!(
        none.toe(Raw::Dial(2.0)),
        Err(MethodFault::Setting { .. })
    ));
    assert!(matches!(
        Method::Degrees.toe(Raw::Degrees(f64::NAN, Way::In)),
        Err(MethodFault::NotUsable { .. })
    ));
}

fn sheet(runs: Vec<Vec<(f64, f64)>>) -> Sheet {
    let row = |(travel, front)| Row {
        travel,
        raw: Raw::Dial(front),
    };
    let runs = runs
        .into_iter()
        .map(|rows| Run {
            rack: 0.0,
            rows: rows.into_iter().map(row).collect(),
        })
        .collect();
    Sheet {
        method: Method::OneDial {
            spacing: 1000.0,
            grows: Way::In,
        },
        accuracy: Some(0.02),
        travel_accuracy: 0.0,
        runs,
    }
}

#[test]
fn a_sheet_counts_from_its_zero_and_checks_the_return() {
    let one = sheet(vec![vec![
        (0.0, 5.0),
        (25.0, 6.0),
        (-25.0, 4.0),
        (0.0, 5.02),
    ]]);
    let reduced = one.reduce().unwrap();
    let changes: Vec<f64> = reduced
        .readings
        .points()
        .map(|p| p.change * 1000.0)
        .collect();
    assert!(
        (changes[0] + 1.01).abs() < 1e-3 && (changes[1] - 0.99).abs() < 1e-3,
        "{changes:?}"
    );
    assert_eq!(reduced.runs[0].came_back(), Some(true));
    let off = sheet(vec![vec![(0.0, 5.0), (25.0, 6.0), (0.0, 5.2)]]);
    assert_eq!(off.reduce().unwrap().runs[0].came_back(), Some(false));
    let once = sheet(vec![vec![(0.0, 5.0), (25.0, 6.0)]]);
    assert_eq!(once.reduce().unwrap().runs[0].came_back(), None);
}

#[test]
fn runs_that_differ_tell_the_repeatability() {
    let two = sheet(vec![
        vec![(0.0, 0.0), (25.0, 1.0)],
        vec![(0.0, 0.0), (25.0, 1.4)],
    ]);
    let reduced = two.reduce().unwrap();
    // Two values 0.4 apart: standard deviation 0.2 sqrt 2.
    assert!((reduced.repeatability.unwrap() - 0.2e-3 * 2.0_f64.sqrt()).abs() < 1e-8);
    let point = *reduced.readings.points().next().unwrap();
    assert!((point.change - 1.2e-3).abs() < 1e-8);
    assert!((point.deviation - 0.2e-3).abs() < 1e-8, "the mean of two");
}

#[test]
fn half_entered_sheets_say_what_is_missing() {
    assert_eq!(sheet(vec![]).reduce().unwrap_err(), SheetFault::Empty);
    let no_zero = sheet(vec![vec![(25.0, 1.0)]]).reduce().unwrap_err();
    assert_eq!(no_zero, SheetFault::NoZero { run: 1 });
    let only_zero = sheet(vec![vec![(0.0, 1.0)]]).reduce().unwrap_err();
    assert_eq!(only_zero, SheetFault::Readings(ReadingsFault::None));
    let odd = sheet(vec![vec![(0.0, 1.0), (25.0, f64::NAN)]])
        .reduce()
        .unwrap_err();
    assert!(matches!(
        odd,
        SheetFault::Line {
            run: 1,
            line: 2,
            ..
        }
    ));
}

fn curve(of: impl Fn(f64) -> f64) -> ToeReadings {
    let point = |i: i32| {
        let travel = 25.0 * f64::from(i);
        ToePoint {
            rack: 0.0,
            travel,
            change: of(travel),
            deviation: 1e-4,
        }
    };
    ToeReadings::new((-3..=3).map(point).collect(), 1e-4).unwrap()
}

/// A cubic is taken apart exactly.
#[test]
fn slope_and_bowl_of_a_known_curve() {
    let readings = curve(|z| 2e-5 * z - 3e-7 * z * z + 1e-9 * z.powi(3));
    let shape = Shape::of(&readings.curves()[0]).unwrap();
    assert!((shape.slope.value - 2e-5).abs() < 1e-12);
    assert!((shape.bowl.value + 3e-7 * 75.0 * 75.0).abs() < 1e-10);
    assert!((shape.at(50.0) - (1e-3 - 7.5e-4 + 1.25e-4)).abs() < 1e-10);
    assert!(shape.slope.is_clear() && shape.bowl.is_clear());
    let flat = Shape::of(&curve(|_| 0.0).curves()[0]).unwrap();
    assert!(!flat.slope.is_clear() && !flat.bowl.is_clear());
}

#[test]
fn one_word_the_wrong_way_round_is_asked_about() {
    let wrong = curve(|z| if z == 50.0 { -1e-3 } else { 2e-5 * z });
    let doubts = sign_doubts(&wrong.curves()[0]);
    assert_eq!(doubts.len(), 1, "{doubts:?}");
    assert!(doubts[0].travel == 50.0 && (doubts[0].expected - 1e-3).abs() < 1e-4);
    assert!(sign_doubts(&curve(|z| 2e-5 * z).curves()[0]).is_empty());
}

#[test]
fn travel_by_shock_length_agrees_with_the_linkage() {
    let linkage = Linkage::new(&behind()).unwrap();
    let spring = |z: f64| {
        linkage
            .measures(&linkage.pose(z, 0.0).unwrap())
            .spring
            .unwrap()
            .length
    };
    let by = TravelBy::ShockLength {
        length: spring(40.0) - 12.0,
        at_ride: spring(0.0) - 12.0,
    };
    assert!((travel(&linkage, by).unwrap() - 40.0).abs() < 1e-6);
    let blocks = TravelBy::Blocks {
        height: 40.0,
        at_ride: 20.0,
    };
    assert_eq!(travel(&linkage, blocks), Ok(-20.0));
    let height = TravelBy::WheelHeight {
        height: 290.0,
        at_ride: 260.0,
    };
    assert_eq!(travel(&linkage, height), Ok(30.0));
    let mut bare = behind();
    bare.spring = None;
    let bare = Linkage::new(&bare).unwrap();
    assert_eq!(travel(&bare, by), Err(TravelFault::NoSpring));
    let odd = TravelBy::Travel(f64::NAN);
    assert!(matches!(
        travel(&linkage, odd),
        Err(TravelFault::NotUsable { .. })
    ));
}
