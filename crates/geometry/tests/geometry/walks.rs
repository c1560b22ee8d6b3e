//! A walk gives the poses that single questions give, whatever the order.

use proptest::prelude::*;
use trammel_geometry::{Limit, Linkage, Pose, Walk};

use crate::corners::{any_corner, linkage};

fn apart(a: &Pose, b: &Pose) -> f64 {
    let points = [
        a.lower_ball_joint - b.lower_ball_joint,
        a.upper_ball_joint - b.upper_ball_joint,
        a.tie_rod_outer - b.tie_rod_outer,
        a.wheel_centre - b.wheel_centre,
        a.contact - b.contact,
    ];
    points
        .iter()
        .map(nalgebra::Matrix::norm)
        .fold(0.0, f64::max)
}

/// The pose by 0.1 mm strides from the design position, rack first: every stride a question of its own to a fresh walk's neighbour.
fn by_small_strides(l: &Linkage, travel: f64, rack: f64) -> Option<Pose> {
    let mut walk = Walk::new(l, rack).ok()?;
    let strides = (travel.abs() / 0.1).ceil().max(1.0) as u32;
    (0..=strides)
        .map(|i| walk.pose(travel * f64::from(i) / f64::from(strides)))
        .last()?
        .ok()
}

proptest! {
    #[test]
    fn order_does_not_matter(corner in any_corner(), rack in -40.0..40.0_f64, travels in prop::collection::vec(-150.0..150.0_f64, 1..24)) {
        let l = linkage(&corner);
        let Ok(mut walk) = Walk::new(&l, rack) else {
            prop_assert!(l.pose(0.0, rack).is_err());
            return Ok(());
        };
        for travel in travels {
            match (walk.pose(travel), l.pose(travel, rack)) {
                (Ok(a), Ok(b)) => {
                    let within = 1e-9 / b.margins.least().min(0.1).powi(2);
                    prop_assert!(apart(&a, &b) < within, "{} at {travel}", apart(&a, &b));
                }
                (Err(a), Err(b)) => prop_assert_eq!(a, b),
                (a, b) => prop_assert!(false, "{a:?} {b:?}"),
            }
        }
    }

    /// Far jumps land where small strides do, up to the end of the reach.
    #[test]
    fn jumps_stay_on_the_branch(corner in any_corner(), rack in -60.0..60.0_f64, part in 0.0..0.9999_f64, up in any::<bool>()) {
        let l = linkage(&corner);
        let far = if up { 1e4 } else { -1e4 };
        let Limit::Travel(end) = l.pose(far, rack).unwrap_err().limit else {
            return Err(TestCaseError::reject("rack out of reach"));
        };
        let travel = end * part;
        let jump = l.pose(travel, rack).unwrap();
        let walked = by_small_strides(&l, travel, rack).unwrap();
        prop_assert!(apart(&jump, &walked) < 1e-9 / walked.margins.least().min(0.1).powi(2));
        prop_assert!(by_small_strides(&l, end + far.signum() * 1e-3, rack).is_none());
    }

    #[test]
    fn an_error_does_not_spoil_the_walk(corner in any_corner(), travel in -40.0..40.0_f64) {
        let l = linkage(&corner);
        let mut walk = Walk::new(&l, 0.0).unwrap();
        for bad in [1e5, f64::NAN, f64::INFINITY] {
            prop_assert!(walk.pose(bad).is_err());
        }
        match (walk.pose(travel), l.pose(travel, 0.0)) {
            (Ok(a), Ok(b)) => prop_assert!(apart(&a, &b) < 1e-9 / b.margins.least().min(0.1).powi(2)),
            (a, b) => prop_assert_eq!(a, b),
        }
    }
}
