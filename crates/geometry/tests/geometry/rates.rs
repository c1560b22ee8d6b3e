//! Every rate is the slope of what it belongs to.

use proptest::prelude::*;
use trammel_geometry::{Point, Pose, Vector};

use crate::corners::{any_corner, kart, linkage};

const STEP: f64 = 1e-3;

/// Central differences with Richardson's extrapolation: error of the fourth order.
fn slope(wide: (f64, f64), narrow: (f64, f64)) -> f64 {
    let (w, n) = (
        (wide.1 - wide.0) / (4.0 * STEP),
        (narrow.1 - narrow.0) / (2.0 * STEP),
    );
    (4.0 * n - w) / 3.0
}

fn point_slope(wide: [Point; 2], narrow: [Point; 2]) -> Vector {
    Vector::from_fn(|i, _| slope((wide[0][i], wide[1][i]), (narrow[0][i], narrow[1][i])))
}

proptest! {
    #[test]
    fn rates_equal_difference_quotients(corner in any_corner(), travel in -70.0..70.0_f64, rack in -35.0..35.0_f64) {
        let l = linkage(&corner);
        let poses: Vec<Pose> = [-2.0, -1.0, 0.0, 1.0, 2.0]
            .iter()
            .filter_map(|i| l.pose(travel + STEP * i, rack).ok())
            .collect();
        let &[a, b, here, c, d] = poses.as_slice() else {
            return Err(TestCaseError::reject("out of reach"));
        };
        prop_assume!(here.margins.least() > 0.15);
        let points = |of: fn(&Pose) -> Point| point_slope([of(&a), of(&d)], [of(&b), of(&c)]);
        let figures = |of: &dyn Fn(&Pose) -> f64| slope((of(&a), of(&d)), (of(&b), of(&c)));
        let r = here.rates;
        prop_assert!((points(|p| p.lower_ball_joint) - r.lower_ball_joint).norm() < 1e-8);
        prop_assert!((points(|p| p.upper_ball_joint) - r.upper_ball_joint).norm() < 1e-8);
        prop_assert!((points(|p| p.wheel_centre) - r.wheel_centre).norm() < 1e-8);
        prop_assert!((r.wheel_centre.z - 1.0).abs() < 1e-12);
        let outer = r.lower_ball_joint + r.upright.cross(&(here.tie_rod_outer - here.lower_ball_joint));
        prop_assert!((points(|p| p.tie_rod_outer) - outer).norm() < 1e-8);
        let spin = points(|p| Point::from(p.spin_axis));
        prop_assert!((spin - r.upright.cross(&here.spin_axis)).norm() < 1e-10);
        prop_assert!((figures(&|p| p.arm_angle) - r.arm_angle).abs() < 1e-10);
        let m = l.measures(&here);
        prop_assert!((figures(&|p| l.measures(p).toe) - m.toe_rate).abs() < 1e-10);
        prop_assert!((figures(&|p| l.measures(p).camber) - m.camber_rate).abs() < 1e-10);
        let spring = m.spring.unwrap();
        let shortening = -figures(&|p| l.measures(p).spring.unwrap().length);
        prop_assert!((shortening - spring.motion_ratio).abs() < 1e-8);
        let mount = points(|p| p.spring_arm_mount.unwrap());
        prop_assert!((mount - r.spring_arm_mount.unwrap()).norm() < 1e-8);
    }
}

/// Where the inner joint is fixed to the chassis the rack's travel is nothing to it.
#[test]
fn a_fixed_link_takes_no_notice_of_a_rack() {
    let mut c = kart();
    c.rack_axis = None;
    let l = linkage(&c);
    let (still, racked) = (l.pose(30.0, 0.0).unwrap(), l.pose(30.0, 12.0).unwrap());
    assert_eq!(still.tie_rod_outer, racked.tie_rod_outer);
    assert_eq!(l.inner_joint(12.0), c.tie_rod.inner);
    assert!(l.pose(30.0, f64::INFINITY).is_err());
}
