use trammel_build::{
    BoltAxis, Edit, JointBolts, KeepOutCorners, Limits, Mass, PointRef, RackSpec, TravelSpec,
    Vehicle,
};
use trammel_geometry::Vector;

use super::*;

fn build() -> Build {
    let demo = trammel_persistence::demos()
        .into_iter()
        .find(|d| d.name == "good")
        .unwrap();
    let mut build = trammel_persistence::read(demo.text).unwrap();
    build.keep_outs.clear();
    build
}

fn ask(build: &Build) -> Ask {
    let axle = build.axle(AxleName::Front).unwrap();
    let corner = *axle.axle.left.corner();
    // The map stays where it is, wherever the joint goes.
    let middle = Point::new(corner.tie_rod.inner.x, 170.0, 225.0);
    let half = Vector::new(0.0, 40.0, 22.5);
    Ask {
        build: build.clone(),
        axle: AxleName::Front,
        side: Side::Left,
        corner,
        joint: TieRodJoint::Inner,
        plane: Plane::Front,
        corners: [middle - half, middle + half],
    }
}

/// Whether the figures of one build do for another.
fn same(edit: &Edit) -> bool {
    let before = build();
    let after = edit.apply(&before).unwrap();
    assert_ne!(before, after, "{}", edit.name());
    ask(&before).same_places(&ask(&after))
}

#[test]
fn it_is_worked_out_anew_for_whatever_it_depends_on() {
    let front = build().front;
    let limits = build().limits;
    let changes = [
        Edit::SetJointBolts(
            AxleName::Front,
            JointBolts {
                inner: Some(BoltAxis::Vertical),
                ..front.joint_bolts
            },
        ),
        Edit::SetJointBolts(
            AxleName::Front,
            JointBolts {
                outer: Some(BoltAxis::Direction([1.0, 2.0, 3.0])),
                ..front.joint_bolts
            },
        ),
        Edit::SetLimits(Limits {
            joint_angle_deg: Some(5.0),
            ..limits
        }),
        Edit::SetLimits(Limits {
            rack_end_factor: Some(4.0),
            ..limits
        }),
        Edit::SetTravel(
            AxleName::Front,
            Some(TravelSpec {
                bump: 2.0,
                droop: 2.0,
            }),
        ),
        Edit::SetRack(RackSpec {
            travel: Some(2.5),
            ..front.rack
        }),
        Edit::SetVehicle(Vehicle {
            mass: Some(Mass::Pounds(1200.0)),
            ..build().vehicle
        }),
        Edit::MovePoint {
            point: PointRef::left(AxleName::Front, PointName::LowerBallJoint),
            to: [0.25, 22.75, 7.0],
        },
        Edit::MovePoint {
            point: PointRef::left(AxleName::Front, PointName::RackFace),
            to: [-3.5, 5.0, 8.75],
        },
    ];
    for edit in changes {
        assert!(!same(&edit), "{}: {edit:?}", edit.name());
    }
}

#[test]
fn it_stands_while_the_joint_moves_with_its_rack_and_for_mere_words() {
    let point = PointRef::left(AxleName::Front, PointName::TieRodInner);
    let others = [
        Edit::MoveRack {
            point,
            to: [-3.5, 6.9, 9.1],
        },
        Edit::SetTitle("Another".to_owned()),
        Edit::SetLimits(Limits {
            toe_change_deg: Some(0.9),
            ..build().limits
        }),
        Edit::SetPointLock(AxleName::Front, PointName::WheelCentre, true),
        Edit::SetKeepOuts(vec![tube()]),
    ];
    for edit in others {
        assert!(same(&edit), "{}", edit.name());
    }
}

fn tube() -> KeepOut {
    KeepOut {
        name: "Frame tube".to_owned(),
        corners: KeepOutCorners::Front([5.0, 8.0], [6.5, 9.5]),
    }
}

#[test]
fn a_keep_out_blocks_its_places_by_name_and_no_others() {
    let build = build();
    let mut work = ClearWork::default();
    let asked = ask(&build);
    work.shown = Some((asked.clone(), Clear::of(&asked)));
    let before = work.edition();
    work.keep_out_of(&[tube()]);
    assert_ne!(work.edition(), before);
    let clear = work.shown(Plane::Front, asked.corners).unwrap();
    let part = |y: f64, z: f64| {
        let [low, high] = asked.corners;
        [
            ((25.4 * y - low.y) / (high.y - low.y)) as f32,
            ((25.4 * z - low.z) / (high.z - low.z)) as f32,
        ]
    };
    assert_eq!(clear.keep_out(part(6.4, 9.0)), Some("Frame tube"));
    assert_eq!(clear.keep_out(part(6.6, 9.0)), None);
    assert!(!clear.keeps(part(6.4, 9.0)));
    let words = clear.blocks(part(6.4, 9.0)).words();
    assert!(
        words.contains(&"keep-out Frame tube".to_owned()),
        "{words:?}"
    );
    let known = work.edition();
    work.keep_out_of(&[tube()]);
    assert_eq!(work.edition(), known, "nothing new");
    work.keep_out_of(&[]);
    assert_eq!(
        work.shown(Plane::Front, asked.corners)
            .unwrap()
            .keep_out(part(6.4, 9.0)),
        None
    );
}

#[test]
fn a_fore_and_aft_bolt_clears_what_an_upright_one_blocks() {
    let on = |bolt| {
        let mut build = build();
        build.front.joint_bolts.inner = Some(bolt);
        build.limits.joint_angle_deg = Some(8.0);
        Clear::of(&ask(&build))
    };
    let (upright, fore_aft) = (on(BoltAxis::Vertical), on(BoltAxis::ForeAft));
    let middle = [0.5, 0.5];
    let [is, limit] = upright.blocks(middle).swivel.unwrap();
    assert!(is > limit && limit == 8.0, "{is} {limit}");
    assert_eq!(fore_aft.blocks(middle).swivel, None);
}
