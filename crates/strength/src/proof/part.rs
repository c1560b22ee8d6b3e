//! The parts that are checked, and where they sit.

use nalgebra::{Unit, Vector3};
use trammel_geometry::{ArmName, Linkage, Pose};

use super::turned::{Body, Turned};
use crate::arm_tubes::{ArmTubes, SpringOnArm};
use crate::bolt::Bolt;
use crate::bracket::{Bracket, BracketForce};
use crate::check::{Check, Finding, mpa};
use crate::engagement::{self, LEAST_WALL};
use crate::force::TieRod;
use crate::number::{BadNumber, direction, positive};
use crate::rack_end::{BoreMouthCheck, RackEnd, ThreadMaking};
use crate::rod_end::Joint;
use crate::source::{Limit, Source};
use crate::statics::{CornerForces, Equilibrium, Joints};
use crate::tie_rod::{BEAM, TieRodBar};

/// A joint of the corner whose force a bolt, bracket or rod end carries.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum JointPlace {
    /// Tie rod on rack end or chassis.
    TieRodInner,
    /// Tie rod on the upright.
    TieRodOuter,
    /// Ball joint of an arm.
    BallJoint(ArmName),
    /// Forward pivot of an arm.
    FrontPivot(ArmName),
    /// Rearward pivot of an arm.
    RearPivot(ArmName),
    /// The spring's mounts: the same force at both.
    Spring,
}

impl JointPlace {
    /// The force that passes through the joint, N; of action and reaction, one.
    #[must_use]
    pub fn force(self, forces: &CornerForces) -> Vector3<f64> {
        match self {
            Self::TieRodInner | Self::TieRodOuter => forces.force_on_inner_joint,
            Self::BallJoint(arm) => forces.arm(arm).ball_joint_on_upright,
            Self::FrontPivot(arm) => forces.arm(arm).front_pivot,
            Self::RearPivot(arm) => forces.arm(arm).rear_pivot,
            Self::Spring => forces.spring_on_chassis,
        }
    }

    /// Whether a tie rod's end is here.
    fn is_on_the_rod(self) -> bool {
        matches!(self, Self::TieRodInner | Self::TieRodOuter)
    }
}

/// How something sits at a joint: the bolt's direction and the height of a bracket, given at the design position.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mounted {
    at: JointPlace,
    body: Body,
    bolt: Unit<Vector3<f64>>,
    height: Unit<Vector3<f64>>,
}

impl Mounted {
    /// At this joint, fixed to this body, with its bolt in this direction; vehicle axes at the design position, any length.
    ///
    /// # Errors
    /// A direction that is not finite or has no length.
    pub fn new(at: JointPlace, body: Body, bolt: Vector3<f64>) -> Result<Self, BadNumber> {
        let bolt = direction("the bolt's direction", bolt)?;
        // Some direction across the bolt, until a height is given.
        let helper = if bolt.x.abs() < 0.9 {
            Vector3::x()
        } else {
            Vector3::y()
        };
        let height = direction("the bracket's height", bolt.cross(&helper))?;
        Ok(Self {
            at,
            body,
            bolt,
            height,
        })
    }

    /// The same with the direction in which the bracket stands, from its base to the hole; only the part across the bolt counts.
    ///
    /// # Errors
    /// A direction that is not finite, or along the bolt.
    pub fn standing(self, height: Vector3<f64>) -> Result<Self, BadNumber> {
        let across = height - self.bolt.into_inner() * height.dot(&self.bolt);
        let height = direction("the bracket's height, across its bolt,", across)?;
        Ok(Self { height, ..self })
    }

    fn bracket_force(&self, at: &Situation<'_>) -> BracketForce {
        let force = self.at.force(at.forces);
        let bolt = at.turned.direction(self.body, self.bolt);
        let height = at.turned.direction(self.body, self.height);
        BracketForce {
            pull: force.dot(&height),
            along: force.dot(&bolt.cross(&height)),
            across: force.dot(&bolt),
        }
    }
}

/// The rack end with what is known of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RackEndPart {
    /// The rack end, its geometry in vehicle axes of the left corner.
    pub end: RackEnd,
    /// How its thread was made.
    pub making: ThreadMaking,
    /// Toe that its bending may cost, rad.
    pub toe_limit: Limit,
    /// Thread screwed in, mm.
    pub engagement: Option<f64>,
    /// Diameter of the bar that is tapped, mm.
    pub bar_diameter: Option<f64>,
}

/// A part with its name.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// What the builder calls it.
    pub name: String,
    /// What it is.
    pub kind: PartKind,
}

/// What can be checked.
#[derive(Clone, Debug, PartialEq)]
pub enum PartKind {
    /// The threaded end of the rack.
    RackEnd(RackEndPart),
    /// The tie rod.
    TieRod(TieRodBar),
    /// The tubes of an arm.
    ArmTubes(ArmName, ArmTubes),
    /// A bolt at a joint.
    Bolt(Mounted, Bolt),
    /// Tabs at a joint.
    Bracket(Mounted, Bracket),
    /// A rod end or ball joint; its bolt's direction where it is known.
    Joint(JointPlace, Option<Mounted>, Joint),
}

/// A corner at a pose under a load.
pub(super) struct Situation<'a> {
    pub linkage: &'a Linkage,
    pub pose: &'a Pose,
    pub rod: &'a TieRod,
    pub forces: &'a CornerForces,
    pub turned: &'a Turned,
}

/// The steady part of a pose: joints, equilibrium and turned bodies.
pub(super) struct Stand {
    pub equilibrium: Equilibrium,
    pub turned: Turned,
}

impl PartKind {
    /// Every check of the part in this situation.
    pub(super) fn check(
        &self,
        at: &Situation<'_>,
        found: impl FnMut(Finding),
    ) -> Result<(), BadNumber> {
        match self {
            Self::RackEnd(part) => return part.check(at, found),
            Self::TieRod(bar) => bar.check(at.forces.tie_rod_tension, found),
            Self::ArmTubes(name, tubes) => {
                let joints = Joints::at(at.linkage, at.pose);
                let spring = joints.spring.filter(|spring| spring.arm == *name);
                let spring = spring.map(|spring| SpringOnArm {
                    mount: spring.arm_mount,
                    force: -at.forces.spring_on_chassis,
                });
                tubes.check(joints.arm(*name), at.forces.arm(*name), spring, found);
            }
            Self::Bolt(mounted, bolt) => {
                let force = mounted.bracket_force(at);
                bolt.check(force.pull.hypot(force.along), found);
            }
            Self::Bracket(mounted, bracket) => bracket.check(&mounted.bracket_force(at), found),
            Self::Joint(place, _, joint) => joint.check(place.force(at.forces).norm(), found),
        }
        Ok(())
    }

    /// The checks that a pose changes and no load does.
    pub(super) fn check_stance(&self, at: &Stand, found: impl FnMut(Finding)) {
        if let Self::Joint(place, Some(mounted), joint) = self
            && place.is_on_the_rod()
        {
            let bolt = at.turned.direction(mounted.body, mounted.bolt);
            joint.check_stance(at.equilibrium.tie_rod().outward(), bolt, found);
        }
    }

    /// The checks that no load or pose changes.
    pub(super) fn check_once(&self, found: impl FnMut(Finding)) -> Result<(), BadNumber> {
        match self {
            Self::RackEnd(part) => return part.check_once(found),
            Self::TieRod(bar) => bar.check_once(found),
            Self::Joint(_, _, joint) => joint.check_once(found),
            Self::ArmTubes(..) | Self::Bolt(..) | Self::Bracket(..) => {}
        }
        Ok(())
    }
}

impl RackEndPart {
    fn check(&self, at: &Situation<'_>, mut found: impl FnMut(Finding)) -> Result<(), BadNumber> {
        let force = at.forces.force_on_inner_joint;
        let outboard = self.end.geometry().outboard();
        let to_the_left = at
            .linkage
            .corner()
            .rack_axis
            .map_or(0.0, |axis| axis.dot(&outboard));
        let rack_outboard = at.pose.rack * 1.0_f64.copysign(to_the_left);
        let stress = self.end.under(force, rack_outboard)?;
        let face = stress.rack_face;
        let of_yield = |check, von_mises, yields, source| {
            Finding::below(check, von_mises, mpa(yields, source), BEAM)
        };
        let strength = face.strength;
        found(of_yield(
            Check::RackFaceYield,
            face.von_mises(),
            strength.yield_strength.mpa(),
            strength.source,
        ));
        if let Some(BoreMouthCheck::Checked(mouth)) = stress.bore_mouth {
            let yields = mouth.strength.yield_strength.mpa();
            found(of_yield(
                Check::BoreMouthYield,
                mouth.von_mises(),
                yields,
                mouth.strength.source,
            ));
        }
        if let Some(fatigue) = self.end.fatigue(&face, self.making) {
            found(fatigue);
        }
        let toe = at.rod.turn_for(self.end.deflection(force)?)?;
        found(Finding::below(
            Check::RackEndToe,
            toe.abs(),
            self.toe_limit,
            BEAM,
        ));
        Ok(())
    }

    fn check_once(&self, mut found: impl FnMut(Finding)) -> Result<(), BadNumber> {
        let thread = self.end.thread();
        let millimetres = |value, source: Source| Limit {
            value,
            unit: "mm",
            source,
        };
        if let Some(engaged) = self.engagement {
            positive("the thread engagement", engaged)?;
            let one_diameter = engagement::length_in_steel(thread);
            let three_threads = engagement::length_of_least_threads(thread);
            let least = millimetres(
                one_diameter.max(three_threads),
                engagement::DIAMETERS_IN_STEEL.source,
            );
            found(Finding::above(
                Check::ThreadEngagement,
                engaged,
                least,
                least.source,
            ));
        }
        if let Some(bar) = self.bar_diameter {
            let least = millimetres(engagement::least_wall(thread), LEAST_WALL.source);
            let left = engagement::wall_left(bar, thread)?;
            found(Finding::above(Check::WallLeft, left, least, least.source));
        }
        Ok(())
    }
}
