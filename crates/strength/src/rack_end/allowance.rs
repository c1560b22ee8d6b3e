//! The inverses: how long, or how steep, before the factor at the rack face falls below a wanted one.

use std::f64::consts::FRAC_PI_2;

use nalgebra::Vector3;

use super::geometry::reject;
use super::{RackEnd, RackEndGeometry};
use crate::number::{BadNumber, finite_vector, positive};
use crate::stress::RoundSection;

/// Steps in which the quarter turn is searched when the joint stands off the axis: a fall below the wanted factor that is narrower
/// than half a degree may be stepped over.
const ANGLE_STEPS: u32 = 180;
/// Halvings of such a step: 0.5 degrees / 2^40 is below rounding.
const HALVINGS: u32 = 40;

/// How far a measure may go with the wanted factor still kept.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Allowance {
    /// The factor is missed from the start; this measure alone doesn't mend it.
    Never,
    /// Kept up to this value (mm or radians).
    UpTo(f64),
    /// Kept whatever the value.
    Always,
}

impl RackEnd {
    /// The greatest free length (mm) at which this force on the joint leaves the wanted factor at the rack face.
    ///
    /// Closed form: the square of the bending moment is a quadratic in the length. With a bracket whose offset moment opposes the lever's,
    /// a much shorter end may miss the factor again: look at it with [`under`](Self::under).
    ///
    /// # Errors
    /// A force that is not finite, a wanted factor that is not finite and above zero.
    pub fn greatest_free_length(
        &self,
        force_on_joint: Vector3<f64>,
        wanted_factor: f64,
    ) -> Result<Allowance, BadNumber> {
        finite_vector("the force on the inner tie-rod joint", force_on_joint)?;
        let allowed_stress = self.allowed_stress(wanted_factor)?;
        let section = RoundSection::through_thread(self.thread);
        let Some(allowed_bending) = self.bending_left(section, force_on_joint, allowed_stress)
        else {
            return Ok(Allowance::Never);
        };
        let axis = self.geometry.outboard();
        let per_length = axis.cross(&force_on_joint);
        let from_offset = reject(self.geometry.across().cross(&force_on_joint), axis);
        Ok(greater_root(per_length, from_offset, allowed_bending))
    }

    /// The greatest angle (radians) between tie rod and rack axis at which a rod force of this size leaves the wanted factor at the
    /// rack face; the rod swings in the plane that it is in now (with a rod along the axis: any plane, or that of the bracket).
    ///
    /// The rod force is held while the angle changes. Closed form when the joint is on the rack axis; with a bracket offset searched in
    /// steps of half a degree and then halved.
    ///
    /// # Errors
    /// A force that is not finite, a wanted factor that is not finite and above zero.
    pub fn greatest_rod_angle(
        &self,
        force_on_joint: Vector3<f64>,
        wanted_factor: f64,
    ) -> Result<Allowance, BadNumber> {
        finite_vector("the force on the inner tie-rod joint", force_on_joint)?;
        let allowed_stress = self.allowed_stress(wanted_factor)?;
        if self.geometry.across() == Vector3::zeros() {
            Ok(self.angle_on_axis(force_on_joint.norm(), allowed_stress))
        } else {
            Ok(self.angle_off_axis(force_on_joint, allowed_stress))
        }
    }

    fn allowed_stress(&self, wanted_factor: f64) -> Result<f64, BadNumber> {
        Ok(self.strength.yield_strength.mpa() / positive("the wanted factor", wanted_factor)?)
    }

    /// The bending moment that torsion, shear and axial force leave room for; `None` when they leave none.
    fn bending_left(
        &self,
        section: RoundSection,
        force: Vector3<f64>,
        allowed_stress: f64,
    ) -> Option<f64> {
        let loads = self.geometry.loads(self.geometry.across(), force);
        let stress = section.stress_under(&loads);
        let tangential = stress.torsion + stress.shear;
        let square = allowed_stress * allowed_stress - 3.0 * tangential * tangential;
        let bending_stress = (square >= 0.0).then(|| square.sqrt() - stress.axial.abs())?;
        (bending_stress >= 0.0).then(|| bending_stress * section.bending_modulus())
    }

    /// `(k sin + a cos)^2 + q sin^2 = allowed^2` solved for the angle: in the double angle it is one sine wave.
    fn angle_on_axis(&self, rod_force: f64, allowed: f64) -> Allowance {
        let section = RoundSection::through_thread(self.thread);
        let bending = rod_force * self.geometry.free_length() / section.bending_modulus();
        let axial = rod_force / section.axial_area();
        let shear_squared = 3.0 * (rod_force / section.shear_area()).powi(2);
        if axial > allowed {
            return Allowance::Never;
        }
        let across_squared = bending * bending + shear_squared;
        let (swing, lean) = (bending * axial, (across_squared - axial * axial) / 2.0);
        let height =
            (allowed * allowed - (across_squared + axial * axial) / 2.0) / swing.hypot(lean);
        // Without any force the ratio is not a number.
        if height >= 1.0 || height.is_nan() {
            return Allowance::Always;
        }
        let angle = (lean.atan2(swing) + height.max(-1.0).asin()) / 2.0;
        if angle < FRAC_PI_2 {
            Allowance::UpTo(angle.max(0.0))
        } else {
            Allowance::Always
        }
    }

    fn angle_off_axis(&self, force: Vector3<f64>, allowed: f64) -> Allowance {
        let keeps = |angle: f64| {
            let turned = swung(&self.geometry, force, angle);
            let loads = self.geometry.loads(self.geometry.rack_face_lever(), turned);
            RoundSection::through_thread(self.thread)
                .stress_under(&loads)
                .von_mises()
                <= allowed
        };
        if !keeps(0.0) {
            return Allowance::Never;
        }
        let at_step = |step: u32| f64::from(step) * FRAC_PI_2 / f64::from(ANGLE_STEPS);
        let Some(missed) = (1..=ANGLE_STEPS).find(|&step| !keeps(at_step(step))) else {
            return Allowance::Always;
        };
        let (mut kept, mut missed) = (at_step(missed - 1), at_step(missed));
        for _ in 0..HALVINGS {
            let middle = f64::midpoint(kept, missed);
            if keeps(middle) {
                kept = middle;
            } else {
                missed = middle;
            }
        }
        Allowance::UpTo(kept)
    }
}

/// The greater length L at which `|L per_length + from_offset|` equals `allowed`.
fn greater_root(per_length: Vector3<f64>, from_offset: Vector3<f64>, allowed: f64) -> Allowance {
    let a = per_length.norm_squared();
    let half_b = per_length.dot(&from_offset);
    let c = from_offset.norm_squared() - allowed * allowed;
    if a == 0.0 {
        return if c <= 0.0 {
            Allowance::Always
        } else {
            Allowance::Never
        };
    }
    let discriminant = half_b * half_b - a * c;
    let root = (discriminant.max(0.0).sqrt() - half_b) / a;
    if discriminant < 0.0 || root < 0.0 {
        Allowance::Never
    } else if root.is_finite() {
        Allowance::UpTo(root)
    } else {
        Allowance::Always
    }
}

/// The force turned, in its plane with the rack axis, to this angle from the axis. Reversing a force changes no stress but
/// their signs, so an inward force is first taken as an outward one.
fn swung(geometry: &RackEndGeometry, force: Vector3<f64>, angle: f64) -> Vector3<f64> {
    let axis = geometry.outboard();
    let outward = if force.dot(&axis) < 0.0 {
        -force
    } else {
        force
    };
    let across = reject(outward, axis)
        .try_normalize(1e-9 * force.norm())
        .or_else(|| geometry.across().try_normalize(0.0))
        .unwrap_or_else(Vector3::zeros);
    let (sine, cosine) = angle.sin_cos();
    (axis.into_inner() * cosine + across * sine) * force.norm()
}
