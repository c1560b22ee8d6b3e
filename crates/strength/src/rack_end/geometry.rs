//! Where the inner joint stands from the rack face and from the bore mouth, and what that makes of a force.

use nalgebra::{Unit, Vector3};

use crate::number::{BadNumber, direction, finite, finite_vector, not_negative};
use crate::stress::SectionLoads;

/// The rack end's geometry, in any right-handed frame that the forces share (mm).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RackEndGeometry {
    outboard: Unit<Vector3<f64>>,
    free_length: f64,
    across: Vector3<f64>,
    bore_reach: Option<f64>,
}

impl RackEndGeometry {
    /// A joint on the rack axis, this far out of the rack face.
    ///
    /// `outboard` points along the rack axis away from the car's middle, any length: +y on the left corner.
    ///
    /// # Errors
    /// A number that is not finite, a free length below zero, an axis without length.
    pub fn on_axis(outboard: Vector3<f64>, free_length: f64) -> Result<Self, BadNumber> {
        let outboard = direction("the rack axis", outboard)?;
        not_negative("the free length of the rack end", free_length)?;
        Ok(Self {
            outboard,
            free_length,
            across: Vector3::zeros(),
            bore_reach: None,
        })
    }

    /// The same with a bracket that sets the joint off the rack axis: only the part of `offset` across the axis counts.
    ///
    /// # Errors
    /// A component that is not finite.
    pub fn with_offset(self, offset: Vector3<f64>) -> Result<Self, BadNumber> {
        finite_vector("the offset of the inner joint", offset)?;
        Ok(Self {
            across: reject(offset, self.outboard),
            ..self
        })
    }

    /// The same with the bore mouth known: distance along the axis from mouth to joint with the rack at its centre.
    ///
    /// # Errors
    /// A distance that is not finite. Zero or below is taken as it is: the joint would be in the bore.
    pub fn with_bore_mouth(self, reach_at_centre: f64) -> Result<Self, BadNumber> {
        finite(
            "the distance from bore mouth to inner joint",
            reach_at_centre,
        )?;
        Ok(Self {
            bore_reach: Some(reach_at_centre),
            ..self
        })
    }

    /// The same with another free length; joint and bore mouth stay where they are.
    ///
    /// # Errors
    /// A length that is not finite or below zero.
    pub fn with_free_length(self, free_length: f64) -> Result<Self, BadNumber> {
        not_negative("the free length of the rack end", free_length)?;
        Ok(Self {
            free_length,
            ..self
        })
    }

    /// Unit vector along the rack, outboard.
    pub fn outboard(&self) -> Unit<Vector3<f64>> {
        self.outboard
    }

    /// Length of thread that stands free out of the rack face, up to the joint's centre, mm.
    pub fn free_length(&self) -> f64 {
        self.free_length
    }

    /// Offset of the joint across the rack axis, mm.
    pub fn across(&self) -> Vector3<f64> {
        self.across
    }

    /// From the rack face to the joint, mm; it travels with the rack.
    pub fn rack_face_lever(&self) -> Vector3<f64> {
        self.outboard.into_inner() * self.free_length + self.across
    }

    /// From the bore mouth to the joint, mm, with the rack moved outboard by this much; `None` when the mouth is not known.
    pub fn bore_mouth_lever(&self, rack_outboard: f64) -> Option<Vector3<f64>> {
        self.bore_reach
            .map(|reach| self.outboard.into_inner() * (reach + rack_outboard) + self.across)
    }

    /// Loads at the rack face under a force on the joint, N and N mm.
    pub fn loads_at_face(&self, force_on_joint: Vector3<f64>) -> SectionLoads {
        self.loads(self.rack_face_lever(), force_on_joint)
    }

    /// Whether the bore mouth, at this rack travel, lies outboard of the rack face.
    pub(super) fn mouth_is_on_the_thread(&self, rack_outboard: f64) -> bool {
        self.bore_reach
            .is_some_and(|reach| reach + rack_outboard < self.free_length)
    }

    /// Loads at the section from which `lever` goes to the joint.
    pub(super) fn loads(&self, lever: Vector3<f64>, force: Vector3<f64>) -> SectionLoads {
        let moment = lever.cross(&force);
        SectionLoads {
            axial: force.dot(&self.outboard),
            shear: reject(force, self.outboard).norm(),
            bending: reject(moment, self.outboard).norm(),
            torsion: moment.dot(&self.outboard),
        }
    }
}

/// The part of a vector across an axis.
pub(super) fn reject(vector: Vector3<f64>, axis: Unit<Vector3<f64>>) -> Vector3<f64> {
    vector - axis.into_inner() * vector.dot(&axis)
}
