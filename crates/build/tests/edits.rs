//! Edits: what each does, what it refuses, and what it leaves alone.

mod common;

use common::build;
use trammel_build::{
    Axis, AxleName, AxleSpec, Coordinate, Edit, EditFault, LengthUnit, Mass, PointName, PointRef,
    RackSpec, Side, SpringRate, SpringSpec, Stop, Vehicle, WheelSpec, defaults,
};

const INNER: PointRef = PointRef {
    axle: AxleName::Front,
    side: Side::Left,
    point: PointName::TieRodInner,
};

fn right(point: PointName) -> PointRef {
    PointRef {
        axle: AxleName::Front,
        side: Side::Right,
        point,
    }
}

#[test]
fn moving_a_right_hand_point_moves_its_left_twin_until_it_has_a_place_of_its_own() {
    let b = build();
    let edit = Edit::MovePoint {
        point: right(PointName::TieRodInner),
        to: [-3.5, -7.5, 8.75],
    };
    let moved = edit.apply(&b).expect("moves");
    assert_eq!(moved.front.tie_rod.inner, [-3.5, 7.5, 8.75]);

    let apart = Edit::SeparateRight(AxleName::Front, PointName::TieRodInner)
        .apply(&b)
        .expect("apart");
    let moved = edit.apply(&apart).expect("moves");
    assert_eq!(moved.front.tie_rod.inner, b.front.tie_rod.inner);
    assert_eq!(
        moved.point(right(PointName::TieRodInner)),
        Some([-3.5, -7.5, 8.75])
    );
    let again = Edit::MirrorLeft(AxleName::Front, PointName::TieRodInner)
        .apply(&moved)
        .expect("mirrored");
    assert_eq!(again, b);
    assert_eq!(Edit::MirrorAll(AxleName::Front).apply(&moved), Ok(b));
}

#[test]
fn a_locked_coordinate_is_not_moved_but_the_others_are() {
    let z = Coordinate {
        axle: AxleName::Front,
        point: PointName::TieRodInner,
        axis: Axis::Z,
    };
    let locked = Edit::SetLock(z, true).apply(&build()).expect("locked");
    let up = Edit::MovePoint {
        point: INNER,
        to: [-3.5, 7.0, 9.0],
    };
    assert_eq!(up.apply(&locked), Err(EditFault::Locked(z)));
    let out = Edit::MovePoint {
        point: INNER,
        to: [-3.5, 7.25, 8.5],
    };
    assert_eq!(
        out.apply(&locked).map(|b| b.front.tie_rod.inner),
        Ok([-3.5, 7.25, 8.5])
    );
    let free = Edit::SetLock(z, false).apply(&locked).expect("free");
    assert!(up.apply(&free).is_ok());
    assert_eq!(z.to_string(), "front.tie_rod.inner.z");
    assert_eq!(Coordinate::from_path("front.tie_rod.inner.z"), Some(z));
}

#[test]
fn an_edit_never_makes_a_usable_build_unusable() {
    let b = build();
    let onto_itself = Edit::MovePoint {
        point: INNER,
        to: b.front.tie_rod.outer,
    };
    assert!(matches!(onto_itself.apply(&b), Err(EditFault::Unusable(_))));
    let nan = Edit::MovePoint {
        point: INNER,
        to: [f64::NAN, 7.0, 8.5],
    };
    assert!(matches!(nan.apply(&b), Err(EditFault::Unusable(_))));
    let flat = Edit::SetWheel(
        AxleName::Front,
        WheelSpec {
            loaded_radius: 0.0,
            ..b.front.wheel
        },
    );
    assert!(matches!(flat.apply(&b), Err(EditFault::Unusable(_))));
    let share = Edit::SetVehicle(Vehicle {
        front_share: Some(1.5),
        ..b.vehicle
    });
    assert!(matches!(share.apply(&b), Err(EditFault::Unusable(_))));
}

#[test]
fn the_rack_goes_with_its_joint_across_but_not_along_itself() {
    let b = build();
    let moved = Edit::MoveRack {
        point: INNER,
        to: [-3.25, 7.5, 8.0],
    }
    .apply(&b)
    .expect("moves");
    assert_eq!(moved.front.tie_rod.inner, [-3.25, 7.5, 8.0]);
    assert_eq!(moved.front.rack.face, Some([-3.25, 5.5, 8.0]));
    assert_eq!(moved.front.rack.bore_mouth, Some([-3.25, 4.0, 8.0]));
    let from_right = Edit::MoveRack {
        point: right(PointName::TieRodInner),
        to: [-3.25, -7.5, 8.0],
    };
    assert_eq!(from_right.apply(&b), Ok(moved));
}

#[test]
fn converting_the_unit_keeps_the_vehicle_and_converting_back_keeps_the_numbers() {
    let b = build();
    let mm = Edit::ConvertUnit(LengthUnit::Millimetre)
        .apply(&b)
        .expect("converted");
    assert_eq!(mm.front.tie_rod.inner, [-88.9, 177.8, 215.9]);
    assert_eq!(mm.front.wheel.camber_deg, -1.0, "angles are no lengths");
    let (p, q) = (
        b.point_mm(INNER).expect("there"),
        mm.point_mm(INNER).expect("there"),
    );
    assert!((p - q).norm() < 1e-6);
    assert_eq!(Edit::ConvertUnit(LengthUnit::Inch).apply(&mm), Ok(b));
}

#[test]
fn travel_is_ended_by_the_earlier_of_wish_and_spring() {
    let b = build();
    let range = b.axle(AxleName::Front).expect("poses").travel;
    assert_eq!(
        (range.bump_stop, range.droop_stop),
        (Stop::Wanted, Stop::Wanted)
    );
    assert!((range.bump - 3.0 * 25.4).abs() < 1e-9 && (range.droop + 2.5 * 25.4).abs() < 1e-9);
    let spring = b.front.spring.expect("there");
    let design = 180f64.sqrt(); // 6 in across and 12 in up between the mounts
    let short = SpringSpec {
        closed_length: Some(design - 0.5),
        open_length: Some(design + 5.0),
        ..spring
    };
    let b = Edit::SetSpring(AxleName::Front, Some(short))
        .apply(&b)
        .expect("set");
    let range = b.axle(AxleName::Front).expect("poses").travel;
    assert_eq!(
        (range.bump_stop, range.droop_stop),
        (Stop::Spring, Stop::Wanted)
    );
    let model = b.axle(AxleName::Front).expect("poses");
    let pose = model.axle.left.pose(range.bump, 0.0).expect("reached");
    let length = model
        .axle
        .left
        .measures(&pose)
        .spring
        .expect("spring")
        .length;
    assert!(
        (length - (design - 0.5) * 25.4).abs() < 1e-6,
        "the stop is where the spring is closed: {length}"
    );
    let bare = Edit::SetTravel(AxleName::Front, None)
        .apply(&b)
        .expect("set");
    let bare = Edit::SetSpring(AxleName::Front, None)
        .apply(&bare)
        .expect("set");
    let range = bare.axle(AxleName::Front).expect("poses").travel;
    assert_eq!(
        (range.bump, range.bump_stop),
        (defaults::TRAVEL_EACH_WAY_MM, Stop::Default)
    );
}

#[test]
fn what_is_left_out_of_the_rack_takes_its_defaults() {
    let mut b = build();
    b.front.rack = RackSpec::default();
    let rack = b
        .axle(AxleName::Front)
        .expect("poses")
        .rack
        .expect("steered");
    assert!((rack.left.free_length() - defaults::FREE_LENGTH_MM).abs() < 1e-9);
    assert!(rack.left.bracket_offset().norm() < 1e-9);
    let mouth = rack
        .left
        .outward
        .dot(&(rack.left.face - rack.left.bore_mouth));
    assert!(
        (mouth - defaults::RACK_TRAVEL_MM).abs() < 1e-9,
        "flush at the end of the travel"
    );
    assert_eq!(rack.right.face.y, -rack.left.face.y);
    assert_eq!(rack.right.outward, -rack.left.outward);
}

#[test]
fn pounds_are_pounds() {
    // 1 lb = 0.45359237 kg and 1 lbf = 4.4482216152605 N exactly (International yard and pound agreement, 1959; standard gravity, 3rd CGPM, 1901).
    assert!((Mass::Pounds(100.0).kg() - 45.359_237).abs() < 1e-12);
    assert!((SpringRate::PoundsPerInch(1.0).n_per_mm() - 4.448_221_615_260_5 / 25.4).abs() < 1e-12);
}

#[test]
fn a_rear_axle_has_no_rack() {
    let mut b = build();
    let rear = AxleSpec {
        rack: RackSpec::default(),
        ..b.front.clone()
    };
    b.rear = Some(rear.clone());
    assert_eq!(b.faults(), []);
    assert!(b.axle(AxleName::Rear).expect("poses").rack.is_none());
    b.rear = Some(AxleSpec {
        rack: RackSpec {
            travel: Some(1.0),
            ..RackSpec::default()
        },
        ..rear
    });
    let faults = b.faults();
    assert_eq!(
        faults
            .first()
            .map(trammel_build::BuildFault::path)
            .as_deref(),
        Some("rear.rack")
    );
}

#[test]
fn a_right_hand_point_on_the_left_is_refused() {
    let mut b = build();
    b.front
        .right
        .insert(PointName::WheelCentre, [0.0, 25.0, 10.0]);
    let fault = b.faults().into_iter().next().expect("a fault");
    assert_eq!(fault.path(), "front.right.wheel.centre");
    assert!(
        fault.to_string().contains("y is positive to the left"),
        "{fault}"
    );
}

#[test]
fn every_edit_has_a_name() {
    let names = [
        Edit::MovePoint {
            point: INNER,
            to: [0.0; 3],
        }
        .name(),
        Edit::MoveRack {
            point: INNER,
            to: [0.0; 3],
        }
        .name(),
        Edit::MovePoint {
            point: right(PointName::WheelCentre),
            to: [0.0; 3],
        }
        .name(),
        Edit::ConvertUnit(LengthUnit::Inch).name(),
    ];
    assert_eq!(
        names,
        [
            "Move tie rod, inner joint",
            "Move rack and inner joint",
            "Move wheel centre, right",
            "Convert to inches"
        ]
    );
}

#[test]
fn shop_data_is_changed_by_named_edits_and_never_made_unusable() {
    use trammel_build::{BoltAxis, JointBolts, KeepOut, KeepOutCorners, MadeBy, Tolerances};
    let build = build();
    let bolts = |inner| {
        let inner = Some(inner);
        Edit::SetJointBolts(AxleName::Front, JointBolts { inner, outer: None })
    };
    let turned = bolts(BoltAxis::ForeAft).apply(&build).expect("turns");
    assert_eq!(turned.front.joint_bolts.inner, Some(BoltAxis::ForeAft));
    assert_eq!(bolts(BoltAxis::ForeAft).name(), "Turn joint bolts");
    let keep_out = |far: f64| {
        let corners = KeepOutCorners::Front([1.0, 1.0], [far, 2.0]);
        Edit::SetKeepOuts(vec![KeepOut {
            name: "tube".into(),
            corners,
        }])
    };
    let tolerances = |deviation: f64| {
        Edit::SetTolerances(Tolerances {
            usual: Some(MadeBy::Deviation(deviation)),
            ..Tolerances::default()
        })
    };
    assert_eq!(
        keep_out(2.0)
            .apply(&build)
            .expect("kept out")
            .keep_outs
            .len(),
        1
    );
    let exact = tolerances(0.25).apply(&build).expect("exact");
    let deviation = exact.deviation_mm(AxleName::Front, PointName::TieRodInner);
    assert_eq!(deviation, 0.25 * build.unit.mm());
    assert_eq!(
        build.deviation_mm(AxleName::Front, PointName::TieRodInner),
        0.8
    );
    for (edit, path) in [
        (
            bolts(BoltAxis::Direction([0.0; 3])),
            "front.joint_bolts.inner",
        ),
        (
            bolts(BoltAxis::Direction([f64::NAN, 0.0, 1.0])),
            "front.joint_bolts.inner",
        ),
        (keep_out(1.0), "keep_outs.1.corners"),
        (keep_out(f64::INFINITY), "keep_outs.1.corners"),
        (tolerances(-0.1), "tolerances.usual"),
        (tolerances(f64::NAN), "tolerances.usual"),
    ] {
        let fault = edit.apply(&build).expect_err(path);
        assert!(
            matches!(&fault, EditFault::Unusable(f) if f.path() == path),
            "{path}: {fault}"
        );
    }
}
