//! Places that joints are kept out of, on the table.
//!
//! | where | what |
//! |---|---|
//! | [`KeepOutHand`], [`KeepOutEvent`], [`keep_out_name`] | the contract with the rest of the screen |
//! | `outline` | where a keep-out stands in a view, and what of it a hand takes |
//! | `drag` | a keep-out moved, resized or drawn by a pointer |
//! | `hand` | when that begins and how it goes on |
//! | `keys` | the same by keyboard |
//! | `ink` | how it looks |

pub(crate) mod drag;
pub(crate) mod hand;
pub(crate) mod ink;
pub(crate) mod keys;
mod outline;

use trammel_build::{Axis, Build, KeepOut, KeepOutCorners, PointName, PointRef};

use super::{DrawingInput, Projection};

pub(crate) use outline::{Grip, Part};

/// What a hand may do with keep-outs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct KeepOutHand {
    /// Whether they can be chosen, moved and resized.
    pub may_move: bool,
    /// Whether a drag draws a new one.
    pub draws: bool,
    /// The chosen one, by its place in the build.
    pub chosen: Option<usize>,
}

/// What was done with a keep-out. A drag ends as a point's does.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum KeepOutEvent {
    /// Chosen, or none chosen.
    Choose(Option<usize>),
    /// The keyboard has come to this one: its keys move it.
    Reached(usize),
    /// A drag began that moves this one.
    MoveBegan(usize),
    /// A drag began that resizes this one.
    ResizeBegan(usize),
    /// A drag began that draws a new one.
    DrawBegan,
    /// This one, or a new one after the last, should be here: the build's unit, snapped.
    Put(usize, KeepOutCorners),
    /// This one should go.
    Remove(usize),
    /// The drawing of new ones was given up.
    ToolDown,
}

/// What a keep-out is called in a view, such as `Keep-out engine, front view`.
#[must_use]
pub fn keep_out_name(keep_out: &KeepOut, projection: Projection) -> String {
    format!("Keep-out {}, {} view", keep_out.name, projection.word())
}

/// Half the extent, in the build's unit, of what a view doesn't show of a keep-out that is drawn in it: a frame tube's width.
fn half_depth(build: &Build) -> f64 {
    match build.unit {
        trammel_build::LengthUnit::Inch => 1.0,
        trammel_build::LengthUnit::Millimetre => 25.0,
    }
}

/// From and to, along the axis that a view doesn't show, of what is drawn in it: about the inner tie-rod joint, on whole steps.
pub(crate) fn depth(input: &DrawingInput<'_>, axis: Axis) -> [f64; 2] {
    let joint = PointRef::left(input.axle, PointName::TieRodInner);
    let here = input.build.point(joint).map_or(0.0, |p| p[axis.index()]);
    let half = half_depth(input.build);
    [-half, half].map(|off| super::drag::snapped(f64::INFINITY, here + off, input.snap))
}
