//! What each wheel bears of the vehicle.

use approx::assert_relative_eq;
use proptest::prelude::*;

use super::*;

/// By hand: 375 kg x 9.80665 = 3677.494 N, 45 % of it on two wheels 827.436 N; 1 g of braking over 480/1600 puts 551.624 N more on each front
/// wheel; 0.5 g in a corner over 480/1200 moves 330.974 N.
#[test]
fn wheel_loads_by_hand() {
    let vehicle = vehicle();
    let load = |axle, braking, cornering| vehicle.wheel_load(axle, braking, cornering).unwrap();
    assert_relative_eq!(vehicle.weight(), 3_677.493_75, max_relative = 1e-12);
    assert_relative_eq!(
        load(AxleEnd::Front, 0.0, 0.0),
        827.436_09,
        max_relative = 1e-8
    );
    let braked = load(AxleEnd::Front, 1.0, 0.0) - load(AxleEnd::Front, 0.0, 0.0);
    assert_relative_eq!(braked, 551.624_06, max_relative = 1e-8);
    let rolled = load(AxleEnd::Front, 0.0, 0.5) - load(AxleEnd::Front, 0.0, 0.0);
    assert_relative_eq!(rolled, 330.974_44, max_relative = 1e-8);
    // A wheel in the air carries nothing.
    assert_eq!(load(AxleEnd::Front, 0.0, -3.0), 0.0);
}

#[test]
fn vehicles_that_are_none_are_refused() {
    let spec = *vehicle().spec();
    for bad in [
        VehicleSpec { mass: 0.0, ..spec },
        VehicleSpec {
            front_share: 1.2,
            ..spec
        },
        VehicleSpec {
            front_share: -0.1,
            ..spec
        },
        VehicleSpec {
            wheelbase: f64::NAN,
            ..spec
        },
        VehicleSpec {
            rear_track: -5.0,
            ..spec
        },
        VehicleSpec {
            centre_of_gravity_height: f64::INFINITY,
            ..spec
        },
    ] {
        assert!(Vehicle::new(bad).is_err(), "{bad:?}");
    }
    assert!(vehicle().wheel_load(AxleEnd::Front, f64::NAN, 0.0).is_err());
    assert!(WheelSize::new(0.0, 100.0).is_err());
}

proptest! {
    /// Transfer moves load about; it makes none.
    #[test]
    fn the_wheels_carry_the_vehicle(braking in -0.4..0.4_f64, cornering in -0.3..0.3_f64, share in 0.35..0.65_f64) {
        let vehicle = Vehicle::new(VehicleSpec { front_share: share, ..*vehicle().spec() }).unwrap();
        let sum: f64 = [AxleEnd::Front, AxleEnd::Rear]
            .into_iter()
            .flat_map(|axle| [cornering, -cornering].map(|side| vehicle.wheel_load(axle, braking, side).unwrap()))
            .sum();
        prop_assert!((sum - vehicle.weight()).abs() < 1e-9 * vehicle.weight());
    }
}
