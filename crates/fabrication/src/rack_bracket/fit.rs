//! Whether joint, bolt head, jam nut and thread find room, over the whole adjustment.

use trammel_strength::BadNumber;

use super::RackBracket;
use crate::size::{not_negative, positive};

/// The joint between the ears, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joint {
    /// Width of the ball.
    pub ball_width: f64,
    /// Diameter of the head.
    pub head_diameter: f64,
    /// Thickness of the washer or spacer on each side of the ball.
    pub washer: f64,
}

/// The bolt that holds the bracket to the rack end, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EndBolt {
    /// Height of its head, with the washer under it.
    pub head_height: f64,
    /// Width of its head across flats.
    pub head_width: f64,
    /// Thickness of the jam nut, with the washer under it.
    pub jam_nut: f64,
    /// Thread screwed into the rack end at mid-adjustment.
    pub engagement: f64,
    /// Thread showing between jam nut and rack end at mid-adjustment.
    pub exposed: f64,
    /// How far the bracket is to be wound out or in from there.
    pub adjustment: f64,
    /// Depth of full thread in the rack end.
    pub thread_depth: f64,
}

/// What is left, mm. A negative figure says that it doesn't go.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BracketFit {
    /// Gap between the ears less ball and washers: the play that is left for shims.
    pub play: f64,
    /// Between the joint's head and the bolt's head, whichever way the joint points. The bolt's head moves with the bracket, so it stays over the whole adjustment.
    pub joint_to_bolt_head: f64,
    /// Between the bolt's head, its flats along them, and the ears: both sides together.
    pub head_between_ears: f64,
    /// Between jam nut and rack end, wound fully in.
    pub nut_to_rack: f64,
    /// Thread engaged, wound fully out.
    pub least_engagement: f64,
    /// Between the bolt's end and the end of the full thread, wound fully in.
    pub bolt_end_to_thread_end: f64,
    /// Thread showing outside the jam nut, wound fully out: the lever that bends the bolt.
    pub most_exposed: f64,
    /// Length under the bolt's head.
    pub bolt_length: f64,
}

/// What is left around joint, nut and thread.
///
/// # Errors
/// A length that is not finite and above zero (washer, exposed thread and adjustment may be zero).
pub fn fit(bracket: &RackBracket, joint: &Joint, bolt: &EndBolt) -> Result<BracketFit, BadNumber> {
    for (what, value) in [
        ("the joint's ball width", joint.ball_width),
        ("the joint's head diameter", joint.head_diameter),
        ("the bolt head's height", bolt.head_height),
        ("the bolt head's width", bolt.head_width),
        ("the jam nut's thickness", bolt.jam_nut),
        ("the thread engaged", bolt.engagement),
        ("the depth of full thread", bolt.thread_depth),
    ] {
        positive(what, value)?;
    }
    not_negative("the joint's washer", joint.washer)?;
    not_negative("the exposed thread", bolt.exposed)?;
    not_negative("the adjustment", bolt.adjustment)?;
    let fits = bolt.engagement <= bolt.thread_depth;
    BadNumber::unless(
        "the thread engaged",
        bolt.engagement,
        fits,
        "no more than the depth of full thread",
    )?;
    let size = bracket.size();
    Ok(BracketFit {
        play: size.gap - joint.ball_width - 2.0 * joint.washer,
        joint_to_bolt_head: size.stand_off - joint.head_diameter / 2.0 - bolt.head_height,
        head_between_ears: size.gap - bolt.head_width,
        nut_to_rack: bolt.exposed - bolt.adjustment,
        least_engagement: bolt.engagement - bolt.adjustment,
        bolt_end_to_thread_end: bolt.thread_depth - bolt.engagement - bolt.adjustment,
        most_exposed: bolt.exposed + bolt.adjustment,
        bolt_length: size.thickness + bolt.jam_nut + bolt.exposed + bolt.engagement,
    })
}
