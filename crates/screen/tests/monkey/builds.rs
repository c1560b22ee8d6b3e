//! Builds to play with: the demos, and random ones made from them by random edits.

use trammel_build::{
    AxleName, Build, Edit, Hit, HitPoint, KeepOut, KeepOutCorners, LengthUnit, Limits, MadeBy,
    Mass, PointName, PointRef, RackSpec, Side, SpringRate, Tolerances, TravelSpec, Vehicle,
};
use trammel_persistence::demos;

use crate::hand::Dice;

const TITLES: [&str; 5] = [
    "",
    "Buggy",
    "\u{202e}reversed \u{0301}☸",
    "A long name that goes on and on until nobody who made it could possibly have wanted all of it",
    "quotes \" and \\ and \n lines",
];

/// A demo with `edits` random edits, those that it takes.
pub fn random(dice: &mut Dice, edits: usize) -> Build {
    let all = demos();
    let demo = &all[dice.below(all.len())];
    let mut build = trammel_persistence::read(demo.text).expect("a demo can be read");
    for _ in 0..edits {
        let edit = edit(dice, &build);
        if let Ok(next) = edit.apply(&build) {
            build = next;
        }
    }
    build
}

/// A length near nought, as large as a part, or absurd, in the build's unit.
fn length(dice: &mut Dice, build: &Build, most_mm: f64) -> f64 {
    let mm = match dice.below(60) {
        0 => dice.one_of(&[0.0, 1e-9, 1e9, -1e9, 1e300]),
        _ => dice.between(-most_mm, most_mm),
    };
    build.unit.from_mm(mm)
}

fn maybe(dice: &mut Dice, low: f64, high: f64) -> Option<f64> {
    (dice.below(4) > 0).then(|| dice.between(low, high))
}

fn edit(dice: &mut Dice, build: &Build) -> Edit {
    let axle = if build.rear.is_some() && dice.below(2) == 0 {
        AxleName::Rear
    } else {
        AxleName::Front
    };
    let point = dice.one_of(&PointName::ALL);
    let side = if dice.below(3) == 0 {
        Side::Right
    } else {
        Side::Left
    };
    let at = PointRef { axle, side, point };
    let spec = build.axle_spec(axle).unwrap_or(&build.front);
    match dice.below(18) {
        0..5 => {
            let by = if dice.below(2) == 0 { 40.0 } else { 6.0 };
            let mut to = build.point(at).unwrap_or_default();
            for v in &mut to {
                *v += length(dice, build, by);
            }
            if dice.below(4) == 0 {
                Edit::MoveRack { point: at, to }
            } else {
                Edit::MovePoint { point: at, to }
            }
        }
        5 => Edit::SeparateRight(axle, point),
        6 => Edit::SetWheel(
            axle,
            trammel_build::WheelSpec {
                loaded_radius: spec.wheel.loaded_radius * dice.between(0.6, 1.5),
                toe_deg: dice.between(-5.0, 5.0),
                camber_deg: dice.between(-8.0, 8.0),
                ..spec.wheel
            },
        ),
        7 => Edit::SetTravel(
            axle,
            (dice.below(4) > 0).then(|| TravelSpec {
                bump: length(dice, build, 150.0).abs(),
                droop: -length(dice, build, 150.0).abs(),
            }),
        ),
        8 => Edit::SetSpring(
            axle,
            spec.spring
                .filter(|_| dice.below(3) > 0)
                .map(|s| trammel_build::SpringSpec {
                    open_length: s.open_length.map(|v| v * dice.between(0.8, 1.2)),
                    rate: Some(SpringRate::NewtonsPerMillimetre(dice.between(0.1, 200.0))),
                    ..s
                }),
        ),
        9 => Edit::SetRack(RackSpec {
            travel: maybe(dice, 0.0, 200.0).map(|mm| build.unit.from_mm(mm)),
            travel_per_turn: maybe(dice, 1.0, 200.0).map(|mm| build.unit.from_mm(mm)),
            ..build.front.rack
        }),
        10 => Edit::SetVehicle(Vehicle {
            wheelbase: maybe(dice, 500.0, 4000.0).map(|mm| build.unit.from_mm(mm)),
            mass: maybe(dice, 0.01, 5000.0).map(Mass::Kilograms),
            front_share: maybe(dice, 0.0, 100.0),
            centre_of_gravity_height: maybe(dice, 1.0, 2000.0).map(|mm| build.unit.from_mm(mm)),
        }),
        11 => Edit::SetHit(Hit {
            weights: maybe(dice, 0.0, 50.0),
            direction: (dice.below(2) == 0).then(|| {
                [
                    dice.between(-1.0, 1.0),
                    dice.between(-1.0, 1.0),
                    dice.part(),
                ]
            }),
            at: dice.one_of(&[None, Some(HitPoint::WheelCentre), Some(HitPoint::Contact)]),
        }),
        12 => Edit::SetLimits(Limits {
            toe_change_deg: maybe(dice, 0.001, 10.0),
            joint_angle_deg: maybe(dice, 0.1, 80.0),
            strength_factor: maybe(dice, 0.1, 10.0),
            clearance: maybe(dice, 0.0, 3.0),
            ..build.limits
        }),
        13 => Edit::SetKeepOuts(
            (0..dice.below(4))
                .map(|i| keep_out(dice, build, i))
                .collect(),
        ),
        14 => Edit::SetTolerances(Tolerances {
            jig_drilled: maybe(dice, 0.0, 1.0),
            tape: maybe(dice, 0.0, 1.0),
            usual: dice.one_of(&[
                None,
                Some(MadeBy::JigDrilled),
                Some(MadeBy::HandHeld),
                Some(MadeBy::Deviation(0.3)),
            ]),
            ..build.tolerances.clone()
        }),
        15 => match dice.below(4) {
            0 => Edit::SetTitle(dice.one_of(&TITLES).into()),
            1 => Edit::SetNotes(dice.one_of(&TITLES).into()),
            2 => Edit::MirrorAll(axle),
            _ => Edit::SetPointLock(axle, point, dice.below(2) == 0),
        },
        16 => Edit::ConvertUnit(dice.one_of(&[LengthUnit::Inch, LengthUnit::Millimetre])),
        _ => Edit::SetRear((dice.below(2) == 0).then(|| {
            Box::new(trammel_build::AxleSpec {
                rack: RackSpec::default(),
                ..build.front.clone()
            })
        })),
    }
}

fn keep_out(dice: &mut Dice, build: &Build, i: usize) -> KeepOut {
    let mut corner = || [0; 3].map(|_| length(dice, build, 600.0));
    let (a, b) = (corner(), corner());
    let corners = if i == 0 {
        KeepOutCorners::Front([a[1], a[2]], [b[1], b[2]])
    } else {
        KeepOutCorners::Box(a, b)
    };
    KeepOut {
        name: format!("thing {i}"),
        corners,
    }
}
