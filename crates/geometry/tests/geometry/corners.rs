//! Corners to test with, and small helpers.

use proptest::prelude::*;
use trammel_geometry::{Arm, ArmName, Corner, Linkage, Point, Pose, Vector};
pub(crate) use trammel_specimens::kart;

pub(crate) fn arm(front: [f64; 3], rear: [f64; 3], ball: [f64; 3]) -> Arm {
    Arm {
        front_pivot: Point::from(front),
        rear_pivot: Point::from(rear),
        ball_joint: Point::from(ball),
    }
}

pub(crate) fn linkage(corner: &Corner) -> Linkage {
    Linkage::new(corner).expect("a sound corner")
}

/// Every point of a corner moved by its own offset.
pub(crate) fn shaken(corner: &Corner, by: &[[f64; 3]; 11]) -> Corner {
    let mut offsets = by.iter();
    let mut next = move || {
        let o = offsets.next().copied().unwrap_or_default();
        Vector::from(o)
    };
    let mut c = *corner;
    for a in [&mut c.upper_arm, &mut c.lower_arm] {
        a.front_pivot += next();
        a.rear_pivot += next();
        a.ball_joint += next();
    }
    c.tie_rod.inner += next();
    c.tie_rod.outer += next();
    c.wheel.centre += next();
    if let Some(s) = &mut c.spring {
        s.chassis_mount += next();
        s.arm_mount += next();
    }
    c
}

/// Corners around [`kart`], each point up to 40 mm off, either arm carrying the spring, with any rack direction within some 20 degrees of y.
pub(crate) fn any_corner() -> impl Strategy<Value = Corner> {
    let offsets = prop::array::uniform11(prop::array::uniform3(-40.0..40.0_f64));
    (
        offsets,
        (-0.03..0.03_f64, -0.06..0.06_f64),
        (-0.3..0.3_f64, -0.3..0.3_f64),
        any::<bool>(),
        any::<bool>(),
    )
        .prop_map(|(offsets, (toe, camber), (rack_x, rack_z), upper, rack)| {
            let mut c = shaken(&kart(), &offsets);
            c.wheel.toe = toe;
            c.wheel.camber = camber;
            c.rack_axis = rack.then(|| Vector::new(rack_x, 1.0, rack_z));
            if let (true, Some(s)) = (upper, &mut c.spring) {
                s.arm = ArmName::Upper;
                s.arm_mount.z = c.upper_arm.ball_joint.z + 20.0;
            }
            c
        })
        .prop_filter("a linkage that moves", |c| Linkage::new(c).is_ok())
}

/// The pose with the lower arm at an angle, rad from its design position, found along travel with the rack held.
pub(crate) fn at_arm_angle(linkage: &Linkage, angle: f64, rack: f64) -> Pose {
    let mut pose = linkage.pose(0.0, rack).expect("the design height");
    for _ in 0..200 {
        let off = angle - pose.arm_angle;
        if off.abs() < 1e-14 {
            break;
        }
        let travel = pose.travel + off.clamp(-0.05, 0.05) / pose.rates.arm_angle;
        pose = linkage.pose(travel, rack).expect("an arm angle in reach");
    }
    assert!((pose.arm_angle - angle).abs() < 1e-12, "arm angle not met");
    pose
}

/// A point fixed to the upright, carried from the pose `from` to the pose `to`.
pub(crate) fn carried(point: Point, from: &Pose, to: &Pose) -> Point {
    let frame = |p: &Pose| {
        let k = p.steering_axis;
        let arm = p.tie_rod_outer - p.lower_ball_joint;
        let g = (arm - k * arm.dot(&k)).normalize();
        (k, g, k.cross(&g))
    };
    let (k, g, h) = frame(from);
    let (k2, g2, h2) = frame(to);
    let v = point - from.lower_ball_joint;
    to.lower_ball_joint + k2 * v.dot(&k) + g2 * v.dot(&g) + h2 * v.dot(&h)
}

#[track_caller]
pub(crate) fn near(found: f64, wanted: f64, within: f64) {
    assert!(
        (found - wanted).abs() <= within,
        "found {found}, wanted {wanted} within {within}"
    );
}
