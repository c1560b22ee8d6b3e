//! What the tests of loads share: a corner, its vehicle, a case of one force.

mod bearing;
mod cases;
mod on_the_wheel;
mod search;

use super::*;
use nalgebra::Vector3;
use trammel_geometry::{Corner, Linkage, Pose};

use crate::statics::Steering;

pub(crate) fn linkage() -> Linkage {
    Linkage::new(&trammel_specimens::askew()).unwrap()
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
