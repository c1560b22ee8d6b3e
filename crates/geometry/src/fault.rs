//! What can be wrong with a corner, and where a pose ends.

use std::fmt;

/// Why hardpoints do not make a linkage. Points are named as in a build file.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum CornerFault {
    /// A coordinate, radius or angle is not a finite number, or is too large to be a vehicle's.
    #[error("{what} is not a usable number")]
    NotFinite {
        /// The point or figure.
        what: &'static str,
    },
    /// Two joints that need a distance between them are at one place.
    #[error("{first} and {second} are at the same place")]
    Coincident {
        /// One point.
        first: &'static str,
        /// The other.
        second: &'static str,
    },
    /// A joint lies on the axis it should swing about.
    #[error("{joint} lies on the axis through {axis}, so it can't swing about it")]
    OnAxis {
        /// The joint.
        joint: &'static str,
        /// The two points of the axis.
        axis: &'static str,
    },
    /// The linkage is locked at its design position: two members stand in line, so which way they fold is open.
    #[error("{members} stand in line at the design position, so the linkage is locked there")]
    Locked {
        /// The members in line.
        members: &'static str,
    },
    /// The steering axis or an arm's motion leaves the wheel no height to gain.
    #[error("{what}")]
    NoTravel {
        /// What stops the wheel.
        what: &'static str,
    },
    /// The tyre's radius is not positive.
    #[error("wheel.loaded_radius must be more than nothing")]
    NoRadius,
    /// The rack's axis has no direction.
    #[error("rack.axis has no direction")]
    NoRackAxis,
}

/// A member that can run out of reach.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Member {
    /// The upper arm no longer reaches the upright.
    UpperArm,
    /// The arms are at the top or bottom of their swing: the wheel can't go further.
    LowerArm,
    /// The tie rod or toe link no longer reaches the upright's steering arm, or turns it over the point where the wheel can go no further.
    TieRod,
}

impl fmt::Display for Member {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::UpperArm => "upper arm",
            Self::LowerArm => "lower arm",
            Self::TieRod => "tie rod",
        })
    }
}

/// Where the way to a pose ended.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Limit {
    /// At this wheel travel, mm, the rack being where it was asked for.
    Travel(f64),
    /// At this rack travel, mm, the wheel being at its design height.
    Rack(f64),
}

/// A pose that the linkage can't be moved to from its design position.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[error("{}", self.describe())]
pub struct Unreachable {
    /// The member that ran out.
    pub member: Member,
    /// The wheel travel asked for, mm.
    pub travel: f64,
    /// The rack travel asked for, mm.
    pub rack: f64,
    /// Where it ran out.
    pub limit: Limit,
}

impl Unreachable {
    fn describe(&self) -> String {
        if self.travel.is_nan() {
            return "the wheel travel asked for is not a number".to_owned();
        }
        if self.rack.is_nan() {
            return "the rack travel asked for is not a number".to_owned();
        }
        match self.limit {
            Limit::Travel(at) => format!(
                "the {} runs out at a wheel travel of {at:.1} mm (asked for {:.1} mm with the rack at {:.1} mm)",
                self.member, self.travel, self.rack
            ),
            Limit::Rack(at) => {
                format!(
                    "the {} runs out at a rack travel of {at:.1} mm (asked for {:.1} mm)",
                    self.member, self.rack
                )
            }
        }
    }
}
