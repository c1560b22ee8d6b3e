//! What can be drawn against travel or rack position, with its words.

use trammel_geometry::Measures;

/// What a curve runs over.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Against {
    /// Wheel travel at one rack position.
    Travel,
    /// Rack travel at the design height.
    Rack,
}

/// How a quantity's kernel value is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UnitKind {
    /// Radians in the kernel, degrees on screen.
    Angle,
    /// Millimetres in the kernel, the build's unit on screen.
    Length,
    /// A plain ratio.
    Ratio,
    /// Per cent.
    Percent,
}

/// A quantity over travel or lock.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Quantity {
    /// Toe minus toe at the design height, same rack position.
    ToeChange,
    /// Toe itself.
    Toe,
    /// Camber.
    Camber,
    /// Castor angle.
    Castor,
    /// Steering-axis inclination.
    SteeringAxisInclination,
    /// Scrub radius.
    ScrubRadius,
    /// Mechanical trail.
    MechanicalTrail,
    /// Half-track change.
    HalfTrackChange,
    /// Roll-centre height.
    RollCentreHeight,
    /// Front-view swing-arm length.
    SwingArmLength,
    /// Tie-rod angle at the rack.
    TieRodAngle,
    /// Spring motion ratio.
    MotionRatio,
    /// Spring length.
    SpringLength,
    /// Steer angles of both wheels, over the rack's travel.
    SteerAngle,
    /// Ackermann percentage, over the rack's travel.
    Ackermann,
}

impl Quantity {
    /// All of them, in the order of the screen.
    pub const ALL: [Self; 15] = [
        Self::ToeChange,
        Self::Toe,
        Self::Camber,
        Self::Castor,
        Self::SteeringAxisInclination,
        Self::ScrubRadius,
        Self::MechanicalTrail,
        Self::HalfTrackChange,
        Self::RollCentreHeight,
        Self::SwingArmLength,
        Self::TieRodAngle,
        Self::MotionRatio,
        Self::SpringLength,
        Self::SteerAngle,
        Self::Ackermann,
    ];

    /// What it runs over.
    #[must_use]
    pub fn against(self) -> Against {
        match self {
            Self::SteerAngle | Self::Ackermann => Against::Rack,
            _ => Against::Travel,
        }
    }

    /// Full name.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::ToeChange => "Toe change",
            Self::Toe => "Toe",
            Self::Camber => "Camber",
            Self::Castor => "Castor angle",
            Self::SteeringAxisInclination => "Steering-axis inclination",
            Self::ScrubRadius => "Scrub radius",
            Self::MechanicalTrail => "Mechanical trail",
            Self::HalfTrackChange => "Half-track change",
            Self::RollCentreHeight => "Roll-centre height",
            Self::SwingArmLength => "Swing-arm length",
            Self::TieRodAngle => "Tie-rod angle at the rack",
            Self::MotionRatio => "Motion ratio",
            Self::SpringLength => "Spring length",
            Self::SteerAngle => "Steer angles",
            Self::Ackermann => "Ackermann",
        }
    }

    /// Name short enough for a chip.
    #[must_use]
    pub fn short_label(self) -> &'static str {
        match self {
            Self::Castor => "Castor",
            Self::SteeringAxisInclination => "Inclination",
            Self::ScrubRadius => "Scrub",
            Self::MechanicalTrail => "Trail",
            Self::HalfTrackChange => "Half-track",
            Self::RollCentreHeight => "Roll centre",
            Self::SwingArmLength => "Swing arm",
            Self::TieRodAngle => "Rod angle",
            Self::SpringLength => "Spring",
            Self::SteerAngle => "Steer",
            other => other.label(),
        }
    }

    /// What it means and which way its sign goes, in one or two sentences.
    #[must_use]
    pub const fn meaning(self) -> &'static str {
        match self {
            Self::ToeChange => {
                "Toe at this wheel travel less toe at the design height, the rack held. Positive: the front of the wheel comes in."
            }
            Self::Toe => {
                "Angle of the wheel to straight ahead, seen from above. Positive: the front of the wheel points in."
            }
            Self::Camber => "Lean of the wheel seen from the front. Negative: its top leans in.",
            Self::Castor => {
                "Lean of the steering axis seen from the side. Positive: its top leans back."
            }
            Self::SteeringAxisInclination => {
                "Lean of the steering axis seen from the front. Positive: its top leans in."
            }
            Self::ScrubRadius => {
                "Sideways distance on the ground from the tyre's contact point to the steering axis. Positive: the axis is inboard."
            }
            Self::MechanicalTrail => {
                "Distance on the ground from the contact point forward to the steering axis. Positive: the axis is ahead."
            }
            Self::HalfTrackChange => {
                "How far the contact point moves sideways from its design place. Positive: outward."
            }
            Self::RollCentreHeight => {
                "Height above the ground of the point about which a sideways force at the tyre would not roll the frame."
            }
            Self::SwingArmLength => {
                "Distance from the contact point to the front-view instant centre. Positive: the centre is inboard."
            }
            Self::TieRodAngle => {
                "Angle between the tie rod and the rack. The steeper it is, the more a hit on the wheel bends the rack end."
            }
            Self::MotionRatio => {
                "How much the spring shortens for each unit of wheel travel. Positive: bump shortens it."
            }
            Self::SpringLength => "Distance between the spring unit's mounts.",
            Self::SteerAngle => {
                "Angle of each wheel from straight ahead over the rack's travel. Positive: turned to the left."
            }
            Self::Ackermann => {
                "100 per cent: all wheels turn about one centre. 0: both wheels turn by the same angle. Negative: the outer wheel turns more."
            }
        }
    }

    /// How its value is shown.
    #[must_use]
    pub fn unit_kind(self) -> UnitKind {
        match self {
            Self::ScrubRadius
            | Self::MechanicalTrail
            | Self::HalfTrackChange
            | Self::RollCentreHeight
            | Self::SwingArmLength
            | Self::SpringLength => UnitKind::Length,
            Self::MotionRatio => UnitKind::Ratio,
            Self::Ackermann => UnitKind::Percent,
            _ => UnitKind::Angle,
        }
    }

    /// Its value in kernel units at a pose of one wheel. `None` where the pose has none, or where it belongs to the axle
    /// ([`crate::SteerCurve`]). `toe_change` in rad comes from the curve that the pose is part of.
    #[must_use]
    pub fn of(self, measures: &Measures, toe_change: f64) -> Option<f64> {
        Some(match self {
            Self::ToeChange => toe_change,
            Self::Toe => measures.toe,
            Self::Camber => measures.camber,
            Self::Castor => measures.castor,
            Self::SteeringAxisInclination => measures.steering_axis_inclination,
            Self::ScrubRadius => measures.scrub_radius,
            Self::MechanicalTrail => measures.mechanical_trail,
            Self::HalfTrackChange => measures.half_track_change,
            Self::RollCentreHeight => measures.roll_centre_height,
            Self::SwingArmLength => measures.instant_centre?.swing_arm_length,
            Self::TieRodAngle => measures.tie_rod_angle,
            Self::MotionRatio => measures.spring?.motion_ratio,
            Self::SpringLength => measures.spring?.length,
            Self::SteerAngle => measures.steer,
            Self::Ackermann => return None,
        })
    }
}
