//! The set-up part of the build file, sheets of readings, surveys and the drawer.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod drawer;
mod readings;
mod survey;

use trammel_build::{
    Adjusted, AdjustedPart, AxleName, Build, Edit, JointPart, LengthUnit, Part, PartKind,
    PointName, PointRef, RackEndRange, RackPart, ReadingRow, RodRange, Session, SetUp, Side,
    SpindlePart, SpringPart, SpringRate, StackRange, Statics, SteeringArm, SurveyedPoint,
    ToeMethod, TravelMeasure, Weights,
};
use trammel_persistence::{Document, demos, read, write};
use trammel_setup::{Board, Raw, SpotWay, Way};

fn demo() -> Build {
    read(demos()[0].text).unwrap()
}

fn row(place: f64, shown: Raw) -> ReadingRow {
    ReadingRow {
        side: Side::Right,
        run: 2,
        rack: -0.5,
        place,
        ride: place == 10.0,
        shown,
    }
}

fn session(method: ToeMethod, rows: Vec<ReadingRow>) -> Session {
    Session {
        date: "3 May".into(),
        notes: "after the \"big\" hit".into(),
        adjusted: vec![Adjusted {
            part: AdjustedPart::RackEnd,
            side: Side::Left,
            by: 0.1,
        }],
        method,
        accuracy: Some(0.001),
        travel_by: TravelMeasure::WheelHeight,
        travel_accuracy: Some(0.04),
        rows,
    }
}

fn full() -> SetUp {
    let mut set_up = SetUp::default();
    set_up.adjusters.rack_end = Some(RackEndRange {
        turns_out: 4.0,
        turns_in: 2.5,
        only: None,
    });
    set_up.adjusters.washers = Some(StackRange {
        thickness: 0.0625,
        more: 3,
        fewer: 1,
        only: Some(Side::Right),
    });
    set_up.adjusters.washers_along = Some(trammel_build::BoltAxis::Vertical);
    set_up.adjusters.shims = Some(StackRange {
        thickness: 0.03125,
        more: 4,
        fewer: 0,
        only: None,
    });
    set_up.adjusters.rod = Some(RodRange {
        per_turn: 0.1,
        shorter: 0.5,
        longer: 0.75,
    });
    set_up.sessions = vec![
        session(
            ToeMethod::TwoDials(10.0, Way::Out),
            vec![row(
                10.0,
                Raw::Pair {
                    front: 0.0,
                    rear: 0.1,
                },
            )],
        ),
        session(
            ToeMethod::OneDial(10.0, Way::In),
            vec![row(11.0, Raw::Dial(-0.1))],
        ),
        session(
            ToeMethod::Tape(21.0),
            vec![row(
                10.0,
                Raw::Pair {
                    front: 40.0,
                    rear: 41.0,
                },
            )],
        ),
        session(
            ToeMethod::Laser(120.0, Board::Behind),
            vec![row(10.0, Raw::Spot(0.5, SpotWay::Outboard))],
        ),
        session(
            ToeMethod::Mirror(120.0),
            vec![row(10.0, Raw::Spot(0.5, SpotWay::Back))],
        ),
        session(
            ToeMethod::Degrees,
            vec![row(10.0, Raw::Degrees(0.25, Way::Out))],
        ),
    ];
    let point = PointRef {
        axle: AxleName::Front,
        side: Side::Right,
        point: PointName::TieRodInner,
    };
    set_up.surveyed.insert(
        point,
        SurveyedPoint {
            variances: [0.1, 0.2, 0.3],
            covariances: [-0.01, 0.02, 0.0],
        },
    );
    set_up.survey = vec!["unit, in".into(), "mark, A, 0, 0, 0".into()];
    set_up.statics = Statics {
        toe_deg: [Some(0.125), None],
        wanted_toe_deg: Some(0.0),
        camber_deg: [Some(-1.25), Some(-0.75)],
        tape_difference: Some(-0.125),
        shock: [None, Some(13.5)],
        castor_sweep: Some([15.0, 1.5, -1.5]),
        weights: Some(Weights::Pounds([180.0, 181.5, 220.0, 219.0])),
    };
    set_up
}

#[test]
fn everything_of_setting_up_comes_back() {
    let build = Edit::SetSetUp(Box::new(full())).apply(&demo()).unwrap();
    let text = write(&build);
    assert_eq!(read(&text).unwrap(), build, "{text}");
    assert!(text.contains("method: two_dials(10.0, toe_out)"), "{text}");
    assert!(
        text.contains("point: \"front.right.tie_rod.inner\""),
        "{text}"
    );
}

#[test]
fn a_session_added_to_a_file_leaves_the_rest_of_its_text() {
    let document = Document::read(demos()[0].text).unwrap();
    let build = Edit::SetSetUp(Box::new(full()))
        .apply(document.build())
        .unwrap();
    let text = document.text_for(&build);
    assert_eq!(read(&text).unwrap(), build);
    let kept = demos()[0]
        .text
        .lines()
        .filter(|l| text.lines().any(|t| t == *l))
        .count();
    assert!(kept + 2 >= demos()[0].text.lines().count(), "{text}");
}

#[test]
fn a_build_without_it_says_nothing_of_it() {
    assert!(!write(&demo()).contains("set_up"));
    assert_eq!(demo().set_up, SetUp::default());
}

#[test]
fn a_figure_that_cannot_stand_is_named() {
    let mut bad = full();
    bad.sessions[0].method = ToeMethod::TwoDials(0.0, Way::In);
    let fault = Edit::SetSetUp(Box::new(bad)).apply(&demo()).unwrap_err();
    assert!(
        fault
            .to_string()
            .starts_with("set_up.sessions.1.method is 0, expected"),
        "{fault}"
    );
}

#[test]
fn a_reading_without_a_run_is_of_the_first() {
    let build = Edit::SetSetUp(Box::new(full())).apply(&demo()).unwrap();
    let text = write(&build);
    let run = "run: 2, ";
    assert!(text.contains(run), "{text}");
    let first = read(&text.replace(run, "")).unwrap();
    let runs = |build: &Build| build.set_up.sessions[0].rows[0].run;
    assert_eq!((runs(&build), runs(&first)), (2, 1));
}
