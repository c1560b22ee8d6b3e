//! Tie-rod force from the moments about the steering axis.
//!
//! The arms hold the upright at its two ball joints only, and both lie on the steering axis; whatever forces they carry, the
//! spring's included, have no moment about it. So the tie rod alone balances the moment of the outside forces:
//!
//! `M . k + T ((outer - lower) x (inner - outer)/|inner - outer|) . k = 0`
//!
//! with T positive in tension. In tension the rod pulls the inner joint outwards: force on it `T (outer - inner)/|outer - inner|`.
//! Massless parts without friction, at rest.

use std::ops::Add;

use nalgebra::{Point3, Unit, Vector3};

use crate::number::{BadNumber, direction, finite_point, finite_vector};

/// Smallest lever that is computed with, as a share of the outer joint's distance from the lower ball joint. Below it the rod
/// points along or at the steering axis and can't hold the wheel: the limit only guards the division, it is no design rule.
const LEAST_LEVER: f64 = 1e-9;

/// Why there is no tie-rod force.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ForceError {
    /// A number that can't be computed with, or two joints in one place.
    #[error(transparent)]
    BadNumber(#[from] BadNumber),
    /// The rod has no moment about the steering axis.
    #[error(
        "the tie rod lies in a plane with the steering axis (lever {lever} mm); expected a rod that can turn the upright; its force is not known"
    )]
    InLine {
        /// Lever about the steering axis, mm.
        lever: f64,
    },
}

/// Forces and moments from outside on the upright (road, kerb), summed; vehicle axes.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct UprightLoad {
    force: Vector3<f64>,
    moment_about_origin: Vector3<f64>,
}

impl UprightLoad {
    /// A force (N) at a point (mm).
    ///
    /// # Errors
    /// A component that is not finite.
    pub fn force_at(point: Point3<f64>, force: Vector3<f64>) -> Result<Self, BadNumber> {
        finite_point("the point of the force", point)?;
        finite_vector("the force on the upright", force)?;
        Ok(Self {
            force,
            moment_about_origin: point.coords.cross(&force),
        })
    }

    /// A free moment, N mm.
    ///
    /// # Errors
    /// A component that is not finite.
    pub fn moment(moment: Vector3<f64>) -> Result<Self, BadNumber> {
        finite_vector("the moment on the upright", moment)?;
        Ok(Self {
            force: Vector3::zeros(),
            moment_about_origin: moment,
        })
    }

    /// Sum of the forces, N.
    pub fn total_force(&self) -> Vector3<f64> {
        self.force
    }

    /// Moment about a point, N mm.
    pub fn moment_about(&self, point: Point3<f64>) -> Vector3<f64> {
        self.moment_about_origin - point.coords.cross(&self.force)
    }
}

impl Add for UprightLoad {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self {
            force: self.force + other.force,
            moment_about_origin: self.moment_about_origin + other.moment_about_origin,
        }
    }
}

/// The tie rod of one corner at one pose, with a lever about the steering axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TieRod {
    lower_ball_joint: Point3<f64>,
    steering_axis: Unit<Vector3<f64>>,
    outward: Unit<Vector3<f64>>,
    lever: f64,
}

impl TieRod {
    /// From four joints at the pose: both ball joints of the upright, inner and outer tie-rod joint; mm.
    ///
    /// # Errors
    /// A coordinate that is not finite, two joints in one place, or a rod in a plane with the steering axis.
    pub fn new(
        lower_ball_joint: Point3<f64>,
        upper_ball_joint: Point3<f64>,
        inner: Point3<f64>,
        outer: Point3<f64>,
    ) -> Result<Self, ForceError> {
        let steering_axis = direction(
            "the steering axis, lower to upper ball joint,",
            upper_ball_joint - lower_ball_joint,
        )?;
        let outward = direction("the tie rod, inner to outer joint,", outer - inner)?;
        let arm = finite_vector(
            "the outer tie-rod joint from the lower ball joint",
            outer - lower_ball_joint,
        )?;
        let lever = arm.cross(&-outward.into_inner()).dot(&steering_axis);
        // Coordinates that overflow end here too.
        if lever.is_nan() || lever.abs() <= LEAST_LEVER * arm.norm() {
            return Err(ForceError::InLine { lever });
        }
        Ok(Self {
            lower_ball_joint,
            steering_axis,
            outward,
            lever,
        })
    }

    /// Direction of the rod from inner to outer joint.
    pub fn outward(&self) -> Unit<Vector3<f64>> {
        self.outward
    }

    /// Moment about the steering axis (right hand about lower-to-upper) for each newton of tension, mm. Its size is the effective
    /// steering-arm length; it shrinks to nothing where the steering goes over centre.
    pub fn lever(&self) -> f64 {
        self.lever
    }

    /// Force in the rod, N; tension positive.
    pub fn tension_under(&self, load: &UprightLoad) -> f64 {
        -load
            .moment_about(self.lower_ball_joint)
            .dot(&self.steering_axis)
            / self.lever
    }

    /// Force of the rod on the inner joint, N, for this tension.
    pub fn force_on_inner_joint(&self, tension: f64) -> Vector3<f64> {
        self.outward.into_inner() * tension
    }

    /// Force of the rod on the outer joint, N, for this tension.
    pub fn force_on_outer_joint(&self, tension: f64) -> Vector3<f64> {
        -self.force_on_inner_joint(tension)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;
    use nalgebra::{Isometry3, Rotation3, Translation3};
    use proptest::prelude::*;

    /// A left corner with an upright steering axis at y = 600 and the rod 100 mm behind it, square to the arm.
    fn square_corner() -> TieRod {
        TieRod::new(
            Point3::new(0.0, 600.0, 150.0),
            Point3::new(0.0, 600.0, 350.0),
            Point3::new(-100.0, 300.0, 200.0),
            Point3::new(-100.0, 600.0, 200.0),
        )
        .unwrap()
    }

    /// Rearward 1000 N at 50 mm outboard of the axis, by hand: the moment about +z is x Fy - y Fx = -(50)(-1000) = +50000 N mm, that turns
    /// the left wheel's front outwards (to the left) and so moves an outer joint behind the axis inwards: 500 N of compression.
    #[test]
    fn rearward_hit_with_the_rod_behind() {
        let rod = square_corner();
        let hit = UprightLoad::force_at(
            Point3::new(0.0, 650.0, 260.0),
            Vector3::new(-1000.0, 0.0, 0.0),
        )
        .unwrap();
        assert_relative_eq!(rod.lever().abs(), 100.0);
        let tension = rod.tension_under(&hit);
        assert_relative_eq!(tension, -500.0, max_relative = 1e-12);
        assert_relative_eq!(
            rod.force_on_inner_joint(tension),
            Vector3::new(0.0, -500.0, 0.0),
            max_relative = 1e-12
        );
        assert_relative_eq!(
            rod.force_on_outer_joint(tension),
            Vector3::new(0.0, 500.0, 0.0),
            max_relative = 1e-12
        );
    }

    /// A free moment of the same size does the same; both together twice that.
    #[test]
    fn free_moments_add() {
        let rod = square_corner();
        let moment = UprightLoad::moment(Vector3::new(7.0, -3.0, 50_000.0)).unwrap();
        let hit = UprightLoad::force_at(
            Point3::new(0.0, 650.0, 260.0),
            Vector3::new(-1000.0, 0.0, 0.0),
        )
        .unwrap();
        assert_relative_eq!(rod.tension_under(&moment), -500.0, max_relative = 1e-12);
        assert_relative_eq!(
            rod.tension_under(&(moment + hit)),
            -1000.0,
            max_relative = 1e-12
        );
    }

    /// Barton & Fieldhouse, Automotive Chassis Engineering (2018), p. 90: 157.7 N m at 8 degrees over 127 mm is 1229.6 N of the printed sum
    /// (moment times cosine over arm, the book's way); here the force is set across the arm, so the cosine is left out.
    #[test]
    fn moment_over_arm() {
        let rod = TieRod::new(
            Point3::origin(),
            Point3::new(0.0, 0.0, 200.0),
            Point3::new(-127.0, -300.0, 0.0),
            Point3::new(-127.0, 0.0, 0.0),
        )
        .unwrap();
        let load = UprightLoad::moment(Vector3::new(0.0, 0.0, 157_700.0)).unwrap();
        let by_the_book = -rod.tension_under(&load) * 8.0_f64.to_radians().cos();
        assert_relative_eq!(by_the_book, 1229.6, max_relative = 1e-4);
    }

    #[test]
    fn a_force_through_the_axis_does_nothing() {
        let rod = square_corner();
        let load = UprightLoad::force_at(
            Point3::new(0.0, 600.0, 20.0),
            Vector3::new(-900.0, 400.0, 2500.0),
        )
        .unwrap();
        assert!(rod.tension_under(&load).abs() < 1e-9);
    }

    #[test]
    fn a_rod_without_lever_is_refused() {
        let lower = Point3::new(0.0, 600.0, 150.0);
        let upper = Point3::new(0.0, 600.0, 350.0);
        let outer = Point3::new(-100.0, 600.0, 200.0);
        let in_line = TieRod::new(lower, upper, Point3::new(-400.0, 600.0, 230.0), outer);
        assert!(matches!(in_line, Err(ForceError::InLine { .. })));
        let on_the_joint = TieRod::new(lower, upper, Point3::new(0.0, 300.0, 150.0), lower);
        assert!(matches!(on_the_joint, Err(ForceError::InLine { .. })));
        assert!(matches!(
            TieRod::new(lower, upper, outer, outer),
            Err(ForceError::BadNumber(_))
        ));
        assert!(matches!(
            TieRod::new(lower, lower, upper, outer),
            Err(ForceError::BadNumber(_))
        ));
        let nowhere = Point3::new(f64::NAN, 0.0, 0.0);
        assert!(matches!(
            TieRod::new(lower, upper, nowhere, outer),
            Err(ForceError::BadNumber(_))
        ));
        assert!(
            TieRod::new(
                lower,
                upper,
                Point3::new(1e308, 0.0, 0.0),
                Point3::new(-1e308, 1.0, 0.0)
            )
            .is_err()
        );
        assert!(UprightLoad::force_at(nowhere, Vector3::x()).is_err());
        assert!(UprightLoad::moment(Vector3::new(0.0, f64::INFINITY, 0.0)).is_err());
    }

    fn point(centre: [f64; 3], spread: f64) -> impl Strategy<Value = Point3<f64>> {
        prop::array::uniform3(-spread..spread)
            .prop_map(move |by| Point3::from(Vector3::from(centre) + Vector3::from(by)))
    }

    prop_compose! {
        /// Joints of a left corner with its rod behind, and a road force at the contact point.
        fn corner()(
            lower in point([0.0, 560.0, 180.0], 30.0),
            upper in point([-15.0, 540.0, 360.0], 30.0),
            inner in point([-90.0, 230.0, 240.0], 40.0),
            outer in point([-100.0, 550.0, 230.0], 30.0),
            contact in point([0.0, 620.0, 0.0], 30.0),
            force in point([0.0, 0.0, 900.0], 3000.0),
            twist in point([0.0, 0.0, 0.0], 60_000.0),
        ) -> ([Point3<f64>; 5], Vector3<f64>, Vector3<f64>) {
            ([lower, upper, inner, outer, contact], force.coords, twist.coords)
        }
    }

    fn tension(
        [lower, upper, inner, outer, contact]: [Point3<f64>; 5],
        force: Vector3<f64>,
        twist: Vector3<f64>,
    ) -> f64 {
        let load =
            UprightLoad::force_at(contact, force).unwrap() + UprightLoad::moment(twist).unwrap();
        TieRod::new(lower, upper, inner, outer)
            .unwrap()
            .tension_under(&load)
    }

    proptest! {
        /// The moment about the axis that is left, with the rod's force put back, is nothing.
        #[test]
        fn the_axis_is_in_balance((joints, force, twist) in corner()) {
            let [lower, upper, inner, outer, contact] = joints;
            let rod = TieRod::new(lower, upper, inner, outer).unwrap();
            let load = UprightLoad::force_at(contact, force).unwrap() + UprightLoad::moment(twist).unwrap();
            let tension = rod.tension_under(&load);
            let total = load + UprightLoad::force_at(outer, rod.force_on_outer_joint(tension)).unwrap();
            // Any point of the axis will do: the upper ball joint, not the one used inside.
            let left = total.moment_about(upper).dot(&(upper - lower).normalize());
            let scale = force.norm() * 700.0 + twist.norm();
            prop_assert!(left.abs() < 1e-11 * scale);
        }

        /// A rigid motion of everything changes nothing; a mirror image of everything neither (a moment is an axial vector and
        /// mirrors with the other sign).
        #[test]
        fn frame_and_side_do_not_matter((joints, force, twist) in corner(), turn in prop::array::uniform3(-3.0..3.0_f64), shift in prop::array::uniform3(-500.0..500.0_f64)) {
            let here = tension(joints, force, twist);
            let close = |other: f64| (other - here).abs() < 1e-9 * (force.norm() + twist.norm() / 50.0) * 100.0;
            let motion = Isometry3::from_parts(Translation3::from(Vector3::from(shift)), Rotation3::from_scaled_axis(Vector3::from(turn)).into());
            prop_assert!(close(tension(joints.map(|joint| motion * joint), motion * force, motion * twist)));
            let mirror = |v: Vector3<f64>| Vector3::new(v.x, -v.y, v.z);
            let mirrored = joints.map(|joint| Point3::from(mirror(joint.coords)));
            prop_assert!(close(tension(mirrored, mirror(force), -mirror(twist))));
        }
    }
}
