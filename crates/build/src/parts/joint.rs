//! What sits at a hardpoint.

use super::{Force, Section};
use crate::{BoltAxis, Triple};

/// Joint, bolt and bracket at one hardpoint.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct JointParts {
    /// Rod end, ball joint or bush.
    pub end: Option<JointEnd>,
    /// The bolt through it.
    pub bolt: Option<BoltSpec>,
    /// The tabs that hold the bolt.
    pub bracket: Option<BracketSpec>,
}

impl JointParts {
    /// Whether nothing is said.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

/// A rod end, ball joint or bush.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct JointEnd {
    /// A size of the standard's table, such as `AS81935/1-06`; figures given below go before the table's.
    pub listed: Option<String>,
    /// Rating of the maker's sheet. No table has one.
    pub rating: Option<Force>,
    /// How far it swivels each way, degrees.
    pub swivel_deg: Option<f64>,
    /// Width of the ball or bush along the bolt.
    pub ball_width: Option<f64>,
    /// Width of the body along the bolt.
    pub body_width: Option<f64>,
    /// Diameter of the head.
    pub head_diameter: Option<f64>,
    /// From the ball's centre to the end of the shank.
    pub length: Option<f64>,
}

/// What the shear plane of a bolt cuts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShearPlane {
    /// The plain shank.
    Shank,
    /// The thread.
    Thread,
}

/// A bolt through a joint.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BoltSpec {
    /// Thread, such as `3/8-24`.
    pub thread: Option<String>,
    /// Grade.
    pub grade: Option<String>,
    /// Spacer between tab and ball: on each side in double shear.
    pub spacer: Option<f64>,
    /// What the shear plane cuts; the thread where it is left out.
    pub shear_plane: Option<ShearPlane>,
    /// Which way it stands at the design position. The bolts of the tie-rod joints stand as the axle's `joint_bolts` say.
    pub direction: Option<BoltAxis>,
}

/// One tab or two ears.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ears {
    /// The joint hangs on one tab: single shear.
    Single,
    /// The joint sits between two: double shear.
    Double,
}

/// How the sides of a tab go.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TabOutline {
    /// As wide as its foot, square at the end.
    Straight,
    /// Upright sides and a round end about the hole.
    Radiused,
    /// From a wider foot to a round end about the hole.
    Tapered,
}

/// How a bolt fits its hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HoleFit {
    /// Reamed to the bolt.
    Reamed,
    /// The standard's close class.
    Close,
    /// The standard's normal class.
    Normal,
    /// The standard's loose class.
    Loose,
}

/// The tabs of a joint.
#[derive(Clone, Debug, PartialEq)]
pub struct BracketSpec {
    /// One tab or two ears; two where it is left out.
    pub ears: Option<Ears>,
    /// Thickness of a tab.
    pub thickness: f64,
    /// Width of a tab.
    pub width: f64,
    /// From the face of what it stands on to the hole's centre.
    pub height: f64,
    /// How the sides go; radiused where it is left out.
    pub form: Option<TabOutline>,
    /// Diameter of the hole; by its fit where it is left out.
    pub hole: Option<f64>,
    /// How the bolt fits; close where it is left out.
    pub fit: Option<HoleFit>,
    /// From the hole's centre to the free end; half the width where it is left out.
    pub edge: Option<f64>,
    /// Between the ears, inside; ball and spacers where it is left out.
    pub gap: Option<f64>,
    /// Thickness of a boxing plate between the ears' edges; none where it is left out.
    pub boxing: Option<f64>,
    /// Leg of the fillet weld round the base.
    pub weld: Option<f64>,
    /// Tensile class of electrode or wire in ksi: 70 for E70.
    pub electrode: Option<f64>,
    /// Material of the tabs, by name.
    pub material: Option<String>,
    /// The frame tube that it stands on.
    pub tube: Option<FrameTube>,
    /// Direction from base to hole at the design position; from the frame tube's middle line to the hole where it is left out.
    pub stands: Option<Triple>,
}

impl BracketSpec {
    /// A pair of tabs of this bar, the hole this high over its foot; everything else is left out.
    #[must_use]
    pub fn new(thickness: f64, width: f64, height: f64) -> Self {
        Self {
            ears: None,
            thickness,
            width,
            height,
            form: None,
            hole: None,
            fit: None,
            edge: None,
            gap: None,
            boxing: None,
            weld: None,
            electrode: None,
            material: None,
            tube: None,
            stands: None,
        }
    }
}

/// A straight tube of the frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FrameTube {
    /// One end of its middle line, vehicle axes.
    pub from: Triple,
    /// The other end.
    pub to: Triple,
    /// Its section.
    pub section: Section,
}
