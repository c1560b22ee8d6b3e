//! How far the inner joint moves as the threaded end bends, and what that does to toe.
//!
//! A cantilever of the thread's minor diameter over its free length, built in at the rack face: force `F l^3/(3 E I)` and end moment
//! `M l^2/(2 E I)`, stretch `F l/(A E)`, twist `T l/(G J)` (elementary beam formulas). A bracket that sets the joint off the axis is rigid
//! and turns with the end. The rack bar, its bush and the joint's play are not in it, and they give too.

use nalgebra::Vector3;

use super::RackEnd;
use super::geometry::reject;
use crate::force::TieRod;
use crate::material::{STEEL_MODULUS, STEEL_SHEAR_MODULUS};
use crate::number::{BadNumber, finite, finite_vector};
use crate::stress::RoundSection;

impl RackEnd {
    /// Displacement of the inner joint, mm, under this force on it, N; steel.
    ///
    /// # Errors
    /// A force that is not finite, or a displacement that is not.
    pub fn deflection(&self, force: Vector3<f64>) -> Result<Vector3<f64>, BadNumber> {
        finite_vector("the force on the inner tie-rod joint", force)?;
        let axis = self.geometry.outboard();
        let e = axis.into_inner();
        let length = self.geometry.free_length();
        let across = self.geometry.across();
        let section = RoundSection::through_thread(self.thread);
        let stiffness = STEEL_MODULUS * section.second_moment();
        let side = reject(force, axis);
        // Moment that the bracket brings to the end of the thread.
        let moment = across.cross(&force);
        let (bending, torsion) = (reject(moment, axis), e * moment.dot(&e));
        let bent = side * (length.powi(3) / (3.0 * stiffness))
            + bending.cross(&e) * (length.powi(2) / (2.0 * stiffness));
        let stretched = e * (force.dot(&e) * length / (section.axial_area() * STEEL_MODULUS));
        let turned = e.cross(&side) * (length.powi(2) / (2.0 * stiffness))
            + bending * (length / stiffness)
            + torsion * (length / (STEEL_SHEAR_MODULUS * 2.0 * section.second_moment()));
        finite_vector(
            "the rack end's deflection",
            bent + stretched + turned.cross(&across),
        )
    }
}

impl TieRod {
    /// Turn of the upright about its steering axis (right hand about lower-to-upper, rad) when the inner joint moves by this much, mm, the rest held: the rod
    /// keeps its length. For small moves. With an upright axis, toe of a left wheel changes by the opposite.
    ///
    /// # Errors
    /// A displacement that is not finite, or a turn that is not.
    pub fn turn_for(&self, inner_joint_moves: Vector3<f64>) -> Result<f64, BadNumber> {
        finite(
            "the turn of the upright",
            -inner_joint_moves.dot(&self.outward()) / self.lever(),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grade::Grade;
    use crate::rack_end::{BoreMouth, RackEndGeometry};
    use crate::thread::Thread;
    use approx::assert_relative_eq;
    use nalgebra::{Point3, Rotation3, Unit};
    use proptest::prelude::*;

    fn end(across: Vector3<f64>) -> RackEnd {
        let geometry = RackEndGeometry::on_axis(Vector3::y(), 40.0)
            .unwrap()
            .with_offset(across)
            .unwrap();
        let thread = Thread::find("M12x1.75").unwrap();
        let grade = Grade::find("8.8").unwrap();
        RackEnd::new(geometry, thread, &grade, &BoreMouth::LoadsOnly).unwrap()
    }

    /// By hand: minor diameter 9.85298, I = pi d^4/64 = 462.62 mm^4, E I = 95.763e6; 500 N across over 40 mm: 500 x 64000 / (3 x 95.763e6) = 0.11139 mm.
    /// 500 N along: 500 x 40 / (84.2665 x 207000) = 0.0011466 mm.
    #[test]
    fn cantilever_by_hand() {
        let end = end(Vector3::zeros());
        let moved = end.deflection(Vector3::new(0.0, 500.0, -500.0)).unwrap();
        assert_relative_eq!(moved.z, -0.111_39, max_relative = 1e-4);
        assert_relative_eq!(moved.y, 0.001_146_6, max_relative = 1e-4);
        assert_eq!(moved.x, 0.0);
        assert!(end.deflection(Vector3::new(f64::NAN, 0.0, 0.0)).is_err());
    }

    /// A joint 20 mm above the axis, pulled along it with 500 N: 10000 N mm bend the end: slope 10000 x 40/(E I) = 0.0041770 rad; the joint follows
    /// outwards by 20 times that, 0.083540 mm, and the end falls by 10000 x 1600/(2 E I) = 0.083540 mm.
    #[test]
    fn bracket_by_hand() {
        let moved = end(Vector3::new(0.0, 0.0, 20.0))
            .deflection(Vector3::new(0.0, 500.0, 0.0))
            .unwrap();
        assert_relative_eq!(moved.y - 0.001_146_6, 0.083_540, max_relative = 1e-4);
        assert_relative_eq!(moved.z, -0.083_540, max_relative = 1e-4);
    }

    /// Pulled fore and aft instead, the same bracket twists the thread: 10000 x 40 / (79300 x 2 I) = 0.0054515 rad, on 20 mm 0.10903 mm, beside the
    /// cantilever's 0.11139 mm.
    #[test]
    fn twist_by_hand() {
        let moved = end(Vector3::new(0.0, 0.0, 20.0))
            .deflection(Vector3::new(500.0, 0.0, 0.0))
            .unwrap();
        assert_relative_eq!(moved.x, 0.111_39 + 0.109_03, max_relative = 1e-4);
        assert_relative_eq!(moved.y, 0.0);
        assert_relative_eq!(moved.z, 0.0);
    }

    proptest! {
        /// Work in equals work out (Maxwell and Betti): the deflection under one force along another is the same the other way round.
        #[test]
        fn reciprocal(a in prop::array::uniform3(-1e3..1e3_f64), b in prop::array::uniform3(-1e3..1e3_f64), off in prop::array::uniform3(-30.0..30.0_f64)) {
            let end = end(Vector3::from(off));
            let (a, b) = (Vector3::from(a), Vector3::from(b));
            let (there, back) = (end.deflection(a).unwrap().dot(&b), end.deflection(b).unwrap().dot(&a));
            prop_assert!((there - back).abs() < 1e-9 * (1.0 + there.abs()));
            prop_assert!(end.deflection(a).unwrap().dot(&a) >= 0.0);
        }

        /// The rod keeps its length: turning the outer joint by the answer moves it along the rod as far as the inner joint was moved.
        #[test]
        fn the_rod_keeps_its_length(by in prop::array::uniform3(-1e-3..1e-3_f64)) {
            let (lower, upper) = (Point3::new(5.0, 570.0, 160.0), Point3::new(-15.0, 545.0, 330.0));
            let (inner, outer) = (Point3::new(-90.0, 230.0, 205.0), Point3::new(-85.0, 555.0, 195.0));
            let rod = TieRod::new(lower, upper, inner, outer).unwrap();
            let by = Vector3::from(by);
            let axis = Unit::new_normalize(upper - lower);
            let turn = Rotation3::from_axis_angle(&axis, rod.turn_for(by).unwrap());
            let moved = lower + turn * (outer - lower);
            let change = (moved - (inner + by)).norm() - (outer - inner).norm();
            prop_assert!(change.abs() < 1e-7, "{change}");
        }
    }
}
