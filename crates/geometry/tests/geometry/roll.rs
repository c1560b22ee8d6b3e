//! A rolled axle.

use proptest::prelude::*;
use trammel_geometry::{Axle, mirror_point};

use crate::corners::{any_corner, kart, linkage, near};

proptest! {
    /// The contact points lie on a ground line that is the roll angle off the body, one wheel as far down as the other is up.
    #[test]
    fn contact_points_lie_on_the_ground(left in any_corner(), right in any_corner(), angle in -0.12..0.12_f64, rack in -15.0..15.0_f64) {
        let axle = Axle { left: linkage(&left), right_mirrored: linkage(&right) };
        let Ok(p) = axle.roll(angle, rack) else {
            return Err(TestCaseError::reject("out of reach"));
        };
        prop_assert_eq!(p.left.travel, -p.right_mirrored.travel);
        let across = p.left.contact - mirror_point(p.right_mirrored.contact);
        prop_assert!((across.z + angle.tan() * across.y).abs() < 2e-9);
    }
}

fn axle() -> Axle {
    Axle {
        left: linkage(&kart()),
        right_mirrored: linkage(&kart()),
    }
}

#[test]
fn the_side_that_rises_droops() {
    let p = axle().roll(0.05, 0.0).unwrap();
    assert!(p.left.travel < -20.0 && p.right_mirrored.travel > 20.0);
    let level = axle().roll(0.0, 0.0).unwrap();
    near(level.left.travel, 0.0, 1e-9);
}

/// Close to the steepest roll that the wheels allow a pose is still found, and just beyond it is refused.
#[test]
fn up_to_the_steepest() {
    let (mut can, mut cannot) = (0.0, 1.5);
    for _ in 0..50 {
        let angle = 0.5 * (can + cannot);
        match axle().roll(angle, 0.0) {
            Ok(_) => can = angle,
            Err(_) => cannot = angle,
        }
    }
    assert!(can > 0.15, "{can}");
    let p = axle().roll(can, 0.0).unwrap();
    let across = p.left.contact - mirror_point(p.right_mirrored.contact);
    near(across.z + can.tan() * across.y, 0.0, 2e-9);
    // There one of the wheels is at the end of its reach.
    let least = p.left.margins.least().min(p.right_mirrored.margins.least());
    assert!(least < 1e-3, "{least}");
}

#[test]
fn refuses_what_is_no_roll() {
    for angle in [1.6, -2.0, 1e300, f64::INFINITY, f64::NEG_INFINITY, f64::NAN] {
        assert!(axle().roll(angle, 0.0).is_err(), "{angle}");
    }
    assert!(axle().roll(0.01, f64::NAN).is_err());
    // The side that would rise without end is looked at first: the left one droops.
    assert_eq!(axle().roll(2.0, 0.0).unwrap_err().travel, f64::NEG_INFINITY);
    assert_eq!(axle().roll(-2.0, 0.0).unwrap_err().travel, f64::INFINITY);
}
