//! What the tests of loads share: a corner, its vehicle, a case of one force.

mod bearing;
mod cases;
mod on_the_wheel;
mod search;

use super::*;
use nalgebra::Vector3;
use trammel_geometry::{
    Arm, ArmName, Corner, Linkage, Point, Pose, Spring, TieRod as RodPoints, Vector, Wheel,
};

use crate::statics::Steering;

/// A light kart's front left corner, invented.
pub(crate) fn linkage() -> Linkage {
    Linkage::new(&Corner {
        upper_arm: Arm {
            front_pivot: Point::new(96.0, 262.0, 334.0),
            rear_pivot: Point::new(-104.0, 258.0, 328.0),
            ball_joint: Point::new(-16.0, 548.0, 324.0),
        },
        lower_arm: Arm {
            front_pivot: Point::new(132.0, 214.0, 176.0),
            rear_pivot: Point::new(-118.0, 216.0, 170.0),
            ball_joint: Point::new(5.0, 574.0, 158.0),
        },
        tie_rod: RodPoints {
            inner: Point::new(-87.0, 236.0, 203.0),
            outer: Point::new(-83.0, 557.0, 194.0),
        },
        wheel: Wheel {
            centre: Point::new(0.0, 642.0, 266.0),
            loaded_radius: 266.0,
            toe: 0.0,
            camber: 0.0,
        },
        spring: Some(Spring {
            arm: ArmName::Lower,
            chassis_mount: Point::new(6.0, 328.0, 512.0),
            arm_mount: Point::new(12.0, 436.0, 171.0),
        }),
        rack_axis: Some(Vector::new(0.02, 1.0, 0.0)),
    })
    .unwrap()
}

fn vehicle() -> Vehicle {
    Vehicle::new(VehicleSpec {
        mass: 375.0,
        front_share: 0.45,
        centre_of_gravity_height: 480.0,
        wheelbase: 1600.0,
        front_track: 1200.0,
        rear_track: 1250.0,
    })
    .unwrap()
}

pub(crate) fn scene() -> Scene {
    Scene {
        vehicle: vehicle(),
        axle: AxleEnd::Front,
        wheel: WheelSize::new(254.0, 180.0).unwrap(),
        steering: Some(Steering::new(80.0, 140.0).unwrap()),
    }
}

fn force_case(at: Place, size: [f64; 3], unit: ForceUnit, hold: WheelHold) -> LoadCase {
    let mut case = default_cases().remove(0);
    case.hold = hold;
    case.actions = vec![Action::Force {
        at,
        size: Vector3::from(size),
        unit,
        frame: Frame::Wheel,
    }];
    case
}

fn pose() -> Pose {
    linkage().pose(20.0, -15.0).unwrap()
}
