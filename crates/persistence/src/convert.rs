//! From the fields of the file to a build, by hand.

use std::collections::{BTreeMap, BTreeSet};

use trammel_build::{
    ArmPoints, AxleName, AxleSpec, Build, Coordinate, Hit, HitPoint, JamNutAt, JointBolts, KeepOut,
    KeepOutCorners, LengthUnit, Limits, MadeBy, Mass, PointName, RackEndSpec, RackSpec,
    RightPoints, SpringRate, SpringSpec, ThreadMaking, TieRodPoints, Tolerances, TravelSpec,
    Vehicle, WheelSpec,
};
use trammel_geometry::ArmName;

use crate::{
    convert_parts::{self, parts},
    convert_pieces::{OddName, bolt, force},
    format1 as file,
};

pub(crate) fn build(f: file::BuildFile) -> Result<Build, OddName> {
    Ok(Build {
        title: f.title,
        unit: match f.unit {
            file::Unit::Inch => LengthUnit::Inch,
            file::Unit::Mm => LengthUnit::Millimetre,
        },
        front: axle(f.front, AxleName::Front)?,
        rear: f.rear.map(|rear| axle(rear, AxleName::Rear)).transpose()?,
        vehicle: vehicle(&f.vehicle),
        hit: hit(&f.hit),
        limits: limits(&f.limits),
        keep_outs: f.keep_outs.into_iter().map(keep_out).collect(),
        tolerances: tolerances(&f.tolerances)?,
        set_up: crate::set_up::read::set_up(f.set_up)?,
        steering: convert_parts::steering(&f.steering),
        materials: f
            .materials
            .into_iter()
            .map(convert_parts::material)
            .collect(),
        load_cases: convert_parts::load_cases(f.load_cases),
        accepted: f
            .accepted
            .into_iter()
            .map(convert_parts::accepted)
            .collect(),
        shop: convert_parts::shop(f.shop),
        locked: locks(f.locked)?,
        notes: f.notes,
    })
}

fn locks(names: Vec<String>) -> Result<BTreeSet<Coordinate>, OddName> {
    let odd = |number: usize, found| OddName {
        at: format!("locked.{number}"),
        path: "locked".to_owned(),
        found,
        expected: "axle, point and axis, such as \"front.tie_rod.inner.z\"",
    };
    names
        .into_iter()
        .zip(1..)
        .map(|(found, number)| Coordinate::from_path(&found).ok_or_else(|| odd(number, found)))
        .collect()
}

fn keep_out(f: file::KeepOut) -> KeepOut {
    KeepOut {
        name: f.name,
        corners: match f.corners {
            file::KeepOutCorners::Front(a, b) => KeepOutCorners::Front(a, b),
            file::KeepOutCorners::Box(a, b) => KeepOutCorners::Box(a, b),
        },
    }
}

fn tolerances(f: &file::Tolerances) -> Result<Tolerances, OddName> {
    let (mut points, mut coordinates) = (BTreeMap::new(), BTreeMap::new());
    for (entry, number) in f.points.iter().zip(1..) {
        let path = format!("tolerances.points.{number}.point");
        let odd = |expected| OddName {
            at: path.clone(),
            path: path.clone(),
            found: entry.point.clone(),
            expected,
        };
        let made = made_by(entry.made);
        let before = match (
            axle_point(&entry.point),
            Coordinate::from_path(&entry.point),
        ) {
            (Some(point), _) => points.insert(point, made),
            (None, Some(coordinate)) => coordinates.insert(coordinate, made),
            (None, None) => {
                return Err(odd(
                    "axle and point, such as \"front.tie_rod.inner\", or a coordinate of it",
                ));
            }
        };
        if before.is_some() {
            return Err(odd("every point once"));
        }
    }
    Ok(Tolerances {
        jig_drilled: f.jig_drilled,
        tape: f.tape,
        hand_held: f.hand_held,
        usual: f.usual.map(made_by),
        points,
        coordinates,
    })
}

fn axle_point(path: &str) -> Option<(AxleName, PointName)> {
    let (axle, point) = path.split_once('.')?;
    let axle = [AxleName::Front, AxleName::Rear]
        .into_iter()
        .find(|a| a.word() == axle)?;
    Some((axle, PointName::from_path(point)?))
}

fn made_by(f: file::MadeBy) -> MadeBy {
    match f {
        file::MadeBy::JigDrilled => MadeBy::JigDrilled,
        file::MadeBy::Tape => MadeBy::Tape,
        file::MadeBy::HandHeld => MadeBy::HandHeld,
        file::MadeBy::Deviation(v) => MadeBy::Deviation(v),
    }
}

fn axle(f: file::Axle, name: AxleName) -> Result<AxleSpec, OddName> {
    Ok(AxleSpec {
        upper_arm: arm(&f.upper_arm),
        lower_arm: arm(&f.lower_arm),
        tie_rod: TieRodPoints {
            inner: f.tie_rod.inner,
            outer: f.tie_rod.outer,
        },
        wheel: WheelSpec {
            centre: f.wheel.centre,
            loaded_radius: f.wheel.loaded_radius,
            toe_deg: f.wheel.toe_deg,
            camber_deg: f.wheel.camber_deg,
        },
        spring: f.spring.as_ref().map(spring),
        travel: f.travel.map(|t| TravelSpec {
            bump: t.bump,
            droop: t.droop,
        }),
        rack: RackSpec {
            axis: f.rack.axis,
            travel: f.rack.travel,
            travel_per_turn: f.rack.travel_per_turn,
            face: f.rack.face,
            bore_mouth: f.rack.bore_mouth,
        },
        rack_end: RackEndSpec {
            thread: f.rack_end.thread,
            grade: f.rack_end.grade,
            engagement: f.rack_end.engagement,
            jam_nut: f.rack_end.jam_nut,
            jam_nut_at: f.rack_end.jam_nut_at.map(|at| match at {
                file::JamNutAt::Rack => JamNutAt::Rack,
                file::JamNutAt::Joint => JamNutAt::Joint,
            }),
            bar_diameter: f.rack_end.bar_diameter,
            bar_grade: f.rack_end.bar_grade,
            bore_depth: f.rack_end.bore_depth,
            hard_to: f.rack_end.hard_to,
            making: f.rack_end.making.map(|making| match making {
                file::ThreadMaking::Rolled => ThreadMaking::Rolled,
                file::ThreadMaking::Cut => ThreadMaking::Cut,
            }),
        },
        joint_bolts: JointBolts {
            inner: f.joint_bolts.inner.map(bolt),
            outer: f.joint_bolts.outer.map(bolt),
        },
        parts: parts(f.parts, name.word())?,
        right: right(&f.right),
    })
}

fn arm(f: &file::Arm) -> ArmPoints {
    ArmPoints {
        front_pivot: f.front_pivot,
        rear_pivot: f.rear_pivot,
        ball_joint: f.ball_joint,
    }
}

fn spring(f: &file::Spring) -> SpringSpec {
    SpringSpec {
        arm: match f.arm {
            file::ArmName::Lower => ArmName::Lower,
            file::ArmName::Upper => ArmName::Upper,
        },
        chassis_mount: f.chassis_mount,
        arm_mount: f.arm_mount,
        open_length: f.open_length,
        closed_length: f.closed_length,
        rate: f.rate.map(|rate| match rate {
            file::Rate::NPerMm(v) => SpringRate::NewtonsPerMillimetre(v),
            file::Rate::LbPerIn(v) => SpringRate::PoundsPerInch(v),
        }),
    }
}

fn right(f: &file::Right) -> RightPoints {
    [
        (PointName::UpperFrontPivot, f.upper_arm.front_pivot),
        (PointName::UpperRearPivot, f.upper_arm.rear_pivot),
        (PointName::UpperBallJoint, f.upper_arm.ball_joint),
        (PointName::LowerFrontPivot, f.lower_arm.front_pivot),
        (PointName::LowerRearPivot, f.lower_arm.rear_pivot),
        (PointName::LowerBallJoint, f.lower_arm.ball_joint),
        (PointName::TieRodInner, f.tie_rod.inner),
        (PointName::TieRodOuter, f.tie_rod.outer),
        (PointName::WheelCentre, f.wheel.centre),
        (PointName::SpringChassisMount, f.spring.chassis_mount),
        (PointName::SpringArmMount, f.spring.arm_mount),
        (PointName::RackFace, f.rack.face),
        (PointName::RackBoreMouth, f.rack.bore_mouth),
    ]
    .into_iter()
    .filter_map(|(name, at)| at.map(|at| (name, at)))
    .collect()
}

fn vehicle(f: &file::Vehicle) -> Vehicle {
    Vehicle {
        wheelbase: f.wheelbase,
        mass: f.mass.map(|mass| match mass {
            file::Mass::Kg(v) => Mass::Kilograms(v),
            file::Mass::Lb(v) => Mass::Pounds(v),
        }),
        front_share: f.front_share,
        centre_of_gravity_height: f.centre_of_gravity_height,
    }
}

fn hit(f: &file::Hit) -> Hit {
    Hit {
        weights: f.weights,
        direction: f.direction,
        at: f.at.map(|at| match at {
            file::HitPoint::WheelCentre => HitPoint::WheelCentre,
            file::HitPoint::Contact => HitPoint::Contact,
        }),
    }
}

fn limits(f: &file::Limits) -> Limits {
    Limits {
        toe_change_deg: f.toe_change_deg,
        tie_rod_angle_deg: f.tie_rod_angle_deg,
        joint_angle_deg: f.joint_angle_deg,
        rack_end_factor: f.rack_end_factor,
        lock_over_deg: f.lock_over_deg,
        strength_factor: f.strength_factor,
        clearance: f.clearance,
        rack_end_toe_deg: f.rack_end_toe_deg,
        hand_force: f.hand_force.map(force),
        kick_back: f.kick_back.map(force),
    }
}
