//! Least gaps between tie rod, arm tubes, spring and wheel at a pose.
//!
//! Assumed shapes, to be said beside every gap:
//! - tie rod, arm tubes and spring unit are **capsules** from joint to joint: a round bar with round ends;
//! - the tyre is a **ring**, from the rim's radius to the tread's and as wide as the tyre, its section rounded as far as it goes;
//! - the rim is a **thin barrel** as wide as the rim, open at both ends. Disc, hub, brake and the upright itself are not in it.
//!
//! Both middle planes go through the wheel centre. Nothing bends. Parts that meet at a joint are not looked at.

mod shape;

pub use shape::{Capsule, Gap, Ring};

use std::fmt;

use trammel_geometry::{Arm, ArmName, Corner, Point, Pose};

use crate::number::{BadNumber, not_negative, positive};
use crate::source::{Source, Standing};

/// How gaps are found.
pub const GAPS: Source = Source {
    document: "capsules for bars, a ring for the tyre, a barrel for the rim",
    clause: "distances of middle lines less radii",
    standing: Standing::CommonPractice,
};

/// Two things that may touch.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Pair {
    /// Tie rod and the tubes of an arm.
    TieRodAndArm(ArmName),
    /// Tie rod and tyre.
    TieRodAndTyre,
    /// Tie rod and rim.
    TieRodAndRim,
    /// An arm's tubes and the tyre.
    ArmAndTyre(ArmName),
    /// An arm's tubes and the rim.
    ArmAndRim(ArmName),
    /// Spring unit and the tubes of the arm that it doesn't stand on.
    SpringAndOtherArm,
    /// Spring unit and tie rod.
    SpringAndTieRod,
    /// Spring unit and tyre.
    SpringAndTyre,
}

impl Pair {
    /// Every pair.
    pub const ALL: [Self; 11] = [
        Self::TieRodAndArm(ArmName::Upper),
        Self::TieRodAndArm(ArmName::Lower),
        Self::TieRodAndTyre,
        Self::TieRodAndRim,
        Self::ArmAndTyre(ArmName::Upper),
        Self::ArmAndTyre(ArmName::Lower),
        Self::ArmAndRim(ArmName::Upper),
        Self::ArmAndRim(ArmName::Lower),
        Self::SpringAndOtherArm,
        Self::SpringAndTieRod,
        Self::SpringAndTyre,
    ];
}

impl fmt::Display for Pair {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::TieRodAndArm(ArmName::Upper) => "tie rod to upper arm",
            Self::TieRodAndArm(ArmName::Lower) => "tie rod to lower arm",
            Self::TieRodAndTyre => "tie rod to tyre",
            Self::TieRodAndRim => "tie rod to rim",
            Self::ArmAndTyre(ArmName::Upper) => "upper arm to tyre",
            Self::ArmAndTyre(ArmName::Lower) => "lower arm to tyre",
            Self::ArmAndRim(ArmName::Upper) => "upper arm to rim",
            Self::ArmAndRim(ArmName::Lower) => "lower arm to rim",
            Self::SpringAndOtherArm => "spring to the other arm",
            Self::SpringAndTieRod => "spring to tie rod",
            Self::SpringAndTyre => "spring to tyre",
        })
    }
}

/// Thicknesses, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thicknesses {
    /// Diameter of the tie rod.
    pub tie_rod: f64,
    /// Diameter of the upper arm's tubes.
    pub upper_arm: f64,
    /// Diameter of the lower arm's tubes.
    pub lower_arm: f64,
    /// Diameter of the spring unit, over its coil.
    pub spring: f64,
    /// Outer diameter of the tyre.
    pub tyre_diameter: f64,
    /// Width of the tyre.
    pub tyre_width: f64,
    /// Diameter of the rim.
    pub rim_diameter: f64,
    /// Width of the rim.
    pub rim_width: f64,
    /// Thickness of the rim's metal.
    pub rim_thickness: f64,
}

/// Checked thicknesses, ready for any pose.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clearances {
    sizes: Thicknesses,
    wanted: f64,
}

impl Clearances {
    /// Thicknesses, and the least gap that is wanted, mm.
    ///
    /// # Errors
    /// A thickness that is not finite and above zero, a tyre not larger than its rim and its own width, a wanted gap not above zero.
    pub fn new(sizes: Thicknesses, wanted: f64) -> Result<Self, BadNumber> {
        positive("the tie rod's diameter", sizes.tie_rod)?;
        positive("the upper arm's tube diameter", sizes.upper_arm)?;
        positive("the lower arm's tube diameter", sizes.lower_arm)?;
        positive("the spring unit's diameter", sizes.spring)?;
        positive("the tyre's diameter", sizes.tyre_diameter)?;
        positive("the tyre's width", sizes.tyre_width)?;
        positive("the rim's diameter", sizes.rim_diameter)?;
        positive("the rim's width", sizes.rim_width)?;
        not_negative("the rim's thickness", sizes.rim_thickness)?;
        positive("the wanted clearance", wanted)?;
        if sizes.tyre_diameter <= sizes.rim_diameter.max(sizes.tyre_width) {
            return Err(BadNumber {
                what: "the tyre's diameter",
                found: sizes.tyre_diameter,
                expected: "more than the rim's diameter and the tyre's width",
            });
        }
        Ok(Self { sizes, wanted })
    }

    /// The least gap that is wanted, mm.
    #[must_use]
    pub fn wanted(&self) -> f64 {
        self.wanted
    }

    /// The gap of a pair at a pose of this corner, negative when they run into each other; `None` for a spring that isn't there.
    #[must_use]
    pub fn gap(&self, pair: Pair, corner: &Corner, pose: &Pose) -> Option<Gap> {
        let rod = self.tie_rod(pose);
        Some(match pair {
            Pair::TieRodAndArm(name) => {
                nearest(self.arm(name, corner, pose), |tube| rod.to_capsule(tube))
            }
            Pair::TieRodAndTyre => rod.to_ring(&self.tyre(pose)),
            Pair::TieRodAndRim => rod.to_ring(&self.rim(pose)),
            Pair::ArmAndTyre(name) => {
                let tyre = self.tyre(pose);
                nearest(self.arm(name, corner, pose), |tube| tube.to_ring(&tyre))
            }
            Pair::ArmAndRim(name) => {
                let rim = self.rim(pose);
                nearest(self.arm(name, corner, pose), |tube| tube.to_ring(&rim))
            }
            Pair::SpringAndOtherArm => {
                let spring = self.spring(corner, pose)?;
                let other = match corner.spring?.arm {
                    ArmName::Upper => ArmName::Lower,
                    ArmName::Lower => ArmName::Upper,
                };
                nearest(self.arm(other, corner, pose), |tube| {
                    spring.to_capsule(tube)
                })
            }
            Pair::SpringAndTieRod => self.spring(corner, pose)?.to_capsule(&rod),
            Pair::SpringAndTyre => self.spring(corner, pose)?.to_ring(&self.tyre(pose)),
        })
    }

    fn tie_rod(&self, pose: &Pose) -> Capsule {
        Capsule {
            ends: [pose.tie_rod_inner, pose.tie_rod_outer],
            radius: self.sizes.tie_rod / 2.0,
        }
    }

    fn arm(&self, name: ArmName, corner: &Corner, pose: &Pose) -> [Capsule; 2] {
        let tubes = |arm: &Arm, ball: Point, diameter: f64| {
            [arm.front_pivot, arm.rear_pivot].map(|pivot| Capsule {
                ends: [pivot, ball],
                radius: diameter / 2.0,
            })
        };
        match name {
            ArmName::Upper => tubes(
                &corner.upper_arm,
                pose.upper_ball_joint,
                self.sizes.upper_arm,
            ),
            ArmName::Lower => tubes(
                &corner.lower_arm,
                pose.lower_ball_joint,
                self.sizes.lower_arm,
            ),
        }
    }

    fn spring(&self, corner: &Corner, pose: &Pose) -> Option<Capsule> {
        Some(Capsule {
            ends: [corner.spring?.chassis_mount, pose.spring_arm_mount?],
            radius: self.sizes.spring / 2.0,
        })
    }

    fn tyre(&self, pose: &Pose) -> Ring {
        let (tread, rim) = (
            self.sizes.tyre_diameter / 2.0,
            self.sizes.rim_diameter / 2.0,
        );
        let half_width = self.sizes.tyre_width / 2.0;
        let radius = half_width.min((tread - rim) / 2.0);
        let (inner, outer, side) = (rim + radius, tread - radius, half_width - radius);
        Ring {
            centre: pose.wheel_centre,
            axis: pose.spin_axis,
            profile: [[inner, -side], [outer, side]],
            radius,
        }
    }

    fn rim(&self, pose: &Pose) -> Ring {
        let (radius, half_width) = (self.sizes.rim_diameter / 2.0, self.sizes.rim_width / 2.0);
        Ring {
            centre: pose.wheel_centre,
            axis: pose.spin_axis,
            profile: [[radius, -half_width], [radius, half_width]],
            radius: self.sizes.rim_thickness / 2.0,
        }
    }
}

fn nearest([first, second]: [Capsule; 2], gap: impl Fn(&Capsule) -> Gap) -> Gap {
    let (a, b) = (gap(&first), gap(&second));
    if b.distance < a.distance { b } else { a }
}

#[cfg(test)]
mod tests;
