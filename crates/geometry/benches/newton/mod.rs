//! A general solver of the corner's constraint equations, as one would write it for any linkage: the upright as a rigid body with six unknowns, five
//! rod lengths and the wheel centre's height as equations, Newton's method with the analytic Jacobian and nalgebra's LU.

use nalgebra::{Matrix6, UnitQuaternion, Vector6};
use trammel_geometry::{Corner, Point, Vector};

/// The upright: its turn from the design position and where its wheel centre is.
#[derive(Clone, Copy)]
pub(crate) struct Body {
    turn: UnitQuaternion<f64>,
    centre: Point,
}

pub(crate) struct General {
    /// Joint on the upright from the wheel centre at the design position, joint on the chassis, squared length between them.
    rods: [(Vector, Point, f64); 5],
    design: Body,
}

/// Largest residual accepted, mm^2 for a rod (half the error of its squared length), mm for the height: 1e-11 mm on rods of some 300 mm.
const CLOSE: f64 = 3e-9;
const ROUNDS: usize = 20;

impl General {
    pub(crate) fn new(c: &Corner) -> Self {
        let rod = |on_upright: Point, on_chassis: Point| {
            let length_sq = (on_upright - on_chassis).norm_squared();
            (on_upright - c.wheel.centre, on_chassis, length_sq)
        };
        Self {
            rods: [
                rod(c.upper_arm.ball_joint, c.upper_arm.front_pivot),
                rod(c.upper_arm.ball_joint, c.upper_arm.rear_pivot),
                rod(c.lower_arm.ball_joint, c.lower_arm.front_pivot),
                rod(c.lower_arm.ball_joint, c.lower_arm.rear_pivot),
                rod(c.tie_rod.outer, c.tie_rod.inner),
            ],
            design: Body {
                turn: UnitQuaternion::identity(),
                centre: c.wheel.centre,
            },
        }
    }

    /// The body at a wheel travel, from one near it.
    pub(crate) fn solve(&self, from: Body, travel: f64) -> Option<Body> {
        let mut body = from;
        let height = self.design.centre.z + travel;
        for _ in 0..ROUNDS {
            let mut jacobian = Matrix6::zeros();
            let mut residual = Vector6::zeros();
            for (i, (local, chassis, length_sq)) in self.rods.iter().enumerate() {
                let arm = body.turn * local;
                let rod = body.centre + arm - chassis;
                residual[i] = 0.5 * (rod.norm_squared() - length_sq);
                let moment = arm.cross(&rod);
                jacobian.fixed_view_mut::<1, 3>(i, 0).tr_copy_from(&rod);
                jacobian.fixed_view_mut::<1, 3>(i, 3).tr_copy_from(&moment);
            }
            residual[5] = body.centre.z - height;
            jacobian[(5, 2)] = 1.0;
            if residual.amax() < CLOSE {
                return Some(body);
            }
            let step = jacobian.lu().solve(&residual)?;
            body.centre -= step.fixed_rows::<3>(0);
            let turn = UnitQuaternion::from_scaled_axis(-step.fixed_rows::<3>(3));
            body.turn = turn * body.turn;
        }
        None
    }

    /// From the design position in short strides.
    pub(crate) fn walk_to(&self, travel: f64) -> Option<Body> {
        (1..=10).try_fold(self.design, |body, i| {
            self.solve(body, travel * f64::from(i) / 10.0)
        })
    }

    pub(crate) fn tie_rod_outer(&self, body: &Body) -> Point {
        body.centre + body.turn * self.rods[4].0
    }
}
