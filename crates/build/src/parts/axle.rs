//! The parts of an axle.

use std::collections::BTreeMap;

use trammel_geometry::ArmName;

use super::{Force, JointParts, RackMount, Tube};
use crate::PointName;

/// What one axle is made of.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct AxleParts {
    /// Tie rod, or the rear's toe link.
    pub tie_rod: TieRodParts,
    /// Upper A-arm.
    pub upper_arm: ArmParts,
    /// Lower A-arm.
    pub lower_arm: ArmParts,
    /// Rim and tyre.
    pub wheel: WheelParts,
    /// Outer diameter of the spring unit over its coil.
    pub spring_diameter: Option<f64>,
    /// The plate under the rack.
    pub rack_mount: Option<RackMount>,
    /// Joint, bolt and bracket by hardpoint: both tie-rod joints, both ball joints, the four arm pivots, both spring mounts.
    pub joints: BTreeMap<PointName, JointParts>,
}

impl AxleParts {
    /// The points that have a joint, a bolt or a bracket.
    pub const JOINTS: [PointName; 10] = [
        PointName::TieRodInner,
        PointName::TieRodOuter,
        PointName::UpperBallJoint,
        PointName::LowerBallJoint,
        PointName::UpperFrontPivot,
        PointName::UpperRearPivot,
        PointName::LowerFrontPivot,
        PointName::LowerRearPivot,
        PointName::SpringChassisMount,
        PointName::SpringArmMount,
    ];

    /// The parts of an arm.
    #[must_use]
    pub fn arm(&self, arm: ArmName) -> &ArmParts {
        match arm {
            ArmName::Upper => &self.upper_arm,
            ArmName::Lower => &self.lower_arm,
        }
    }

    pub(crate) fn arm_mut(&mut self, arm: ArmName) -> &mut ArmParts {
        match arm {
            ArmName::Upper => &mut self.upper_arm,
            ArmName::Lower => &mut self.lower_arm,
        }
    }
}

/// A tie rod: a tube with a threaded adapter at each end that takes a rod end.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct TieRodParts {
    /// The tube.
    pub tube: Option<Tube>,
    /// Thread of adapters and rod ends.
    pub thread: Option<String>,
    /// Grade of the rod ends' shanks.
    pub grade: Option<String>,
    /// Material of the adapters, by name.
    pub adapter_material: Option<String>,
    /// What each adapter adds to the tube's length.
    pub adapter_length: Option<f64>,
    /// Thread of a rod end engaged in its adapter at the middle of its adjustment.
    pub engagement: Option<f64>,
    /// How far each rod end can be screwed in or out from there.
    pub adjustment: Option<f64>,
    /// Thickness of each jam nut.
    pub jam_nut: Option<f64>,
    /// Force of a rock across the middle of the rod.
    pub side_hit: Option<Force>,
}

/// The two tubes of an A-arm, both alike.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ArmParts {
    /// Their section and material.
    pub tube: Option<Tube>,
    /// How many of them carry the spring's mount: 1 or 2.
    pub spring_tubes: Option<u32>,
}

/// Room that a wheel takes.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct WheelParts {
    /// Diameter of the rim.
    pub rim_diameter: Option<f64>,
    /// Width of the rim.
    pub rim_width: Option<f64>,
    /// Thickness of the rim's metal.
    pub rim_thickness: Option<f64>,
    /// Outer diameter of the tyre without load.
    pub tyre_diameter: Option<f64>,
    /// Width of the tyre.
    pub tyre_width: Option<f64>,
}
