//! Measured parts put into a build, surveyed points, and the log in another unit.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

use trammel_build::{
    AxleName, Build, Edit, EditFault, JointPart, LengthUnit, Part, PartKind, PointName, PointRef,
    RackPart, ReadingRow, Session, SetUp, Side, SpindlePart, SpringPart, SteeringArm,
    SurveyedPoint, ToeMethod, TravelMeasure,
};
use trammel_geometry::{Linkage, Point, Vector};
use trammel_setup::{Raw, Way};

mod common;
use common::build;

fn part(kind: PartKind) -> Box<Part> {
    Box::new(Part {
        name: "quad".into(),
        unit: LengthUnit::Millimetre,
        notes: String::new(),
        kind,
    })
}

fn spindle(arm: SteeringArm) -> PartKind {
    PartKind::Spindle(SpindlePart {
        ball_joint_spacing: 165.0,
        inclination_deg: 9.0,
        spindle_height: 60.0,
        wheel_out: 75.0,
        arm_length: 95.0,
        arm,
        arm_height: 35.0,
        arm_out: -12.0,
    })
}

fn at(build: &Build, side: Side, point: PointName) -> Point {
    build
        .point_mm(PointRef {
            axle: AxleName::Front,
            side,
            point,
        })
        .unwrap()
}

#[test]
fn a_spindle_keeps_its_measures_and_both_sides_are_mirror_images() {
    for (arm, sign) in [(SteeringArm::Ahead, 1.0), (SteeringArm::Behind, -1.0)] {
        let edit = Edit::PutPart(AxleName::Front, part(spindle(arm)));
        assert_eq!(edit.name(), "Put in quad");
        let next = edit.apply(&build()).unwrap();
        let [lower, upper, outer, centre] = [
            PointName::LowerBallJoint,
            PointName::UpperBallJoint,
            PointName::TieRodOuter,
            PointName::WheelCentre,
        ]
        .map(|p| at(&next, Side::Left, p));
        assert_eq!(lower, at(&build(), Side::Left, PointName::LowerBallJoint));
        let axis = (upper - lower).normalize();
        assert!(((upper - lower).norm() - 165.0).abs() < 1e-3);
        let hole = outer - lower;
        assert!((hole.dot(&axis) - 35.0).abs() < 1e-3);
        let square: Vector = hole - axis * hole.dot(&axis);
        assert!((square.norm() - 95.0_f64.hypot(12.0)).abs() < 1e-3);
        assert!(square.x * sign > 90.0, "{square:?}");
        assert!((centre - (lower + axis * 60.0)).norm() - 75.0 < 1e-3);
        let corner = *next
            .axle(AxleName::Front)
            .unwrap()
            .linkage(Side::Left)
            .corner();
        let linkage = Linkage::new(&corner).unwrap();
        let measures = linkage.measures(&linkage.pose(0.0, 0.0).unwrap());
        let included = measures.steering_axis_inclination + measures.camber;
        assert!(
            (included.to_degrees() - 9.0).abs() < 1e-3,
            "{}",
            included.to_degrees()
        );
        for point in [
            PointName::UpperBallJoint,
            PointName::TieRodOuter,
            PointName::WheelCentre,
        ] {
            let (l, r) = (at(&next, Side::Left, point), at(&next, Side::Right, point));
            assert!((l - Point::new(r.x, -r.y, r.z)).norm() < 1e-9);
        }
    }
}

#[test]
fn a_right_point_of_its_own_gives_way_to_the_part() {
    let separate = Edit::SeparateRight(AxleName::Front, PointName::TieRodOuter);
    let own = separate.apply(&build()).unwrap();
    let next = Edit::PutPart(AxleName::Front, part(spindle(SteeringArm::Behind)))
        .apply(&own)
        .unwrap();
    assert!(!next.has_own_right_point(AxleName::Front, PointName::TieRodOuter));
}

#[test]
fn a_rack_sets_both_inner_joints_and_its_figures() {
    let rack = RackPart {
        joint_to_joint: 420.0,
        travel: 38.0,
        travel_per_turn: 50.0,
        end_thread: "1/2-20".into(),
        hard_to: Some(150.0),
    };
    let next = Edit::PutPart(AxleName::Front, part(PartKind::Rack(rack.clone())))
        .apply(&build())
        .unwrap();
    let (l, r) = (
        at(&next, Side::Left, PointName::TieRodInner),
        at(&next, Side::Right, PointName::TieRodInner),
    );
    assert!(((l - r).norm() - 420.0).abs() < 1e-3);
    assert_eq!(next.front.rack_end.thread.as_deref(), Some("1/2-20"));
    assert!((next.front.rack.travel.unwrap() * next.unit.mm() - 38.0).abs() < 1e-3);
    let hard_to = next.front.rack_end.hard_to.unwrap() * next.unit.mm();
    assert!((hard_to - 150.0).abs() < 1e-3, "{hard_to}");
    let rear = Edit::PutPart(AxleName::Rear, part(PartKind::Rack(rack)))
        .apply(&build())
        .unwrap_err();
    assert!(matches!(rear, EditFault::Part(_)), "{rear}");
}

#[test]
fn springs_joints_and_bad_figures() {
    let mut bare = build();
    bare.front.spring = None;
    let spring = SpringPart {
        open: 500.0,
        closed: 350.0,
        rate: None,
    };
    let edit = Edit::PutPart(AxleName::Front, part(PartKind::Spring(spring)));
    let fault = edit.apply(&bare).unwrap_err();
    assert!(
        fault.to_string().contains("give its two mounts first"),
        "{fault}"
    );
    let joint = |swivel_deg| {
        PartKind::Joint(JointPart {
            ball_width: 16.0,
            swivel_deg,
            rating: None,
        })
    };
    let next = Edit::PutPart(AxleName::Front, part(joint(14.0)))
        .apply(&build())
        .unwrap();
    assert_eq!(next.limits.joint_angle_deg, Some(14.0));
    let fault = Edit::PutPart(AxleName::Front, part(joint(f64::NAN)))
        .apply(&build())
        .unwrap_err();
    assert!(
        fault.to_string().contains("the swivel angle is NaN"),
        "{fault}"
    );
}

fn inner() -> PointRef {
    PointRef::left(AxleName::Front, PointName::TieRodInner)
}

#[test]
fn a_survey_is_one_step_and_a_moved_point_is_no_longer_surveyed() {
    let known = SurveyedPoint {
        variances: [0.5, 0.5, 1.0],
        covariances: [0.0; 3],
    };
    let mut to = build().point(inner()).unwrap();
    to[2] += 0.1;
    let taken = Edit::TakeSurvey(vec![(inner(), to, known)])
        .apply(&build())
        .unwrap();
    assert_eq!(taken.point(inner()), Some(to));
    assert_eq!(taken.set_up.surveyed.get(&inner()), Some(&known));
    to[2] += 0.1;
    let moved = Edit::MovePoint { point: inner(), to }
        .apply(&taken)
        .unwrap();
    assert!(moved.set_up.surveyed.is_empty());
}

#[test]
fn the_log_converts_with_the_build_and_back() {
    let mut b = build();
    b.unit = LengthUnit::Inch;
    let session = Session {
        date: "3 May".into(),
        notes: String::new(),
        adjusted: Vec::new(),
        method: ToeMethod::TwoDials(10.0, Way::In),
        accuracy: Some(0.001),
        travel_by: TravelMeasure::Travel,
        travel_accuracy: None,
        rows: vec![ReadingRow {
            side: Side::Left,
            run: 1,
            rack: 0.0,
            place: 1.0,
            ride: false,
            shown: Raw::Pair {
                front: 0.5,
                rear: 0.25,
            },
        }],
    };
    b.set_up = SetUp {
        sessions: vec![session],
        ..SetUp::default()
    };
    let mm = Edit::ConvertUnit(LengthUnit::Millimetre).apply(&b).unwrap();
    let there = &mm.set_up.sessions[0];
    assert_eq!(there.method, ToeMethod::TwoDials(254.0, Way::In));
    assert_eq!(
        there.rows[0].shown,
        Raw::Pair {
            front: 12.7,
            rear: 6.35
        }
    );
    assert_eq!(there.accuracy, Some(0.0254));
    let back = Edit::ConvertUnit(LengthUnit::Inch).apply(&mm).unwrap();
    assert_eq!(back.set_up, b.set_up);
}
