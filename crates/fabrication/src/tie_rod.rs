//! The tie-rod tube's length, as a sum that can be printed.
//!
//! From joint centre to joint centre, less on each side: the joint from its centre to where its thread starts, the thread left showing for adjusting in, the jam nut, and
//! the adapter's flange outside the tube. What is over is tube. The joint's thread reaches into the adapter by what the jam nut and the showing thread leave of it.

use trammel_strength::BadNumber;
use trammel_strength::thread::Thread;

use crate::size::{not_negative, positive};

/// Which way a thread tightens.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hand {
    /// Right-hand.
    Right,
    /// Left-hand.
    Left,
}

impl Hand {
    /// As the sheet says it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Right => "right-hand",
            Self::Left => "left-hand",
        }
    }
}

/// One end of the rod, mm, at mid-adjustment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RodEnding {
    /// Thread of the joint's shank.
    pub thread: Thread,
    /// Its hand.
    pub hand: Hand,
    /// From the joint's centre to where its thread starts.
    pub centre_to_thread: f64,
    /// Length of the thread.
    pub thread_length: f64,
    /// Thread left showing between joint and jam nut: what the joint can be wound in.
    pub showing: f64,
    /// Thickness of the jam nut.
    pub jam_nut: f64,
    /// Flange of the adapter that stands outside the tube; 0 where the tube itself is tapped.
    pub flange: f64,
    /// Depth of full thread in the adapter, from its outer face.
    pub thread_depth: f64,
}

/// One line of the sum.
#[derive(Clone, Debug, PartialEq)]
pub struct SumLine {
    /// What is added or taken off.
    pub what: String,
    /// By how much, mm; what is taken off is negative.
    pub length: f64,
}

/// How far an end can be wound, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Adjustment {
    /// Thread in the adapter at mid-adjustment.
    pub engaged: f64,
    /// Inwards: until the joint meets the nut, or the thread its end.
    pub inwards: f64,
    /// Outwards: until no more than the least engagement is left.
    pub outwards: f64,
}

/// The tube of a tie rod.
#[derive(Clone, Debug, PartialEq)]
pub struct RodTube {
    /// The lines of the sum, first the distance of the joints.
    pub sum: Vec<SumLine>,
    /// Their total: length of the tube, mm.
    pub length: f64,
    /// What each end has left, in the order given.
    pub adjustment: [Adjustment; 2],
    /// What a whole turn of the tube changes in length, mm: nothing when both ends have the same hand and pitch.
    pub per_turn: f64,
}

/// The sum for joints this far apart, mm. `least_diameters` is the engagement that has to be left, in diameters.
///
/// # Errors
/// A length below zero or no number; a distance too short for any tube; thread too short to reach into the adapter.
pub fn rod_tube(
    centres: f64,
    ends: &[RodEnding; 2],
    least_diameters: f64,
) -> Result<RodTube, BadNumber> {
    positive("the distance of the joints", centres)?;
    positive("the least engagement", least_diameters)?;
    let mut sum = vec![SumLine {
        what: "joint centre to joint centre".to_owned(),
        length: centres,
    }];
    for (end, name) in ends.iter().zip(["first", "second"]) {
        check(end)?;
        sum.extend(lines(end, name));
    }
    let length: f64 = sum.iter().map(|line| line.length).sum();
    let [first, second] = ends;
    Ok(RodTube {
        length: positive("the tube's length", length)?,
        sum,
        adjustment: [
            adjustment(first, least_diameters)?,
            adjustment(second, least_diameters)?,
        ],
        per_turn: (signed_pitch(first) - signed_pitch(second)).abs(),
    })
}

/// Seen from its own joint an end of the same hand screws the other way.
fn signed_pitch(end: &RodEnding) -> f64 {
    match end.hand {
        Hand::Right => end.thread.pitch(),
        Hand::Left => -end.thread.pitch(),
    }
}

fn check(end: &RodEnding) -> Result<(), BadNumber> {
    positive("the joint's centre to its thread", end.centre_to_thread)?;
    positive("the joint's thread length", end.thread_length)?;
    positive("the depth of full thread", end.thread_depth)?;
    not_negative("the thread showing", end.showing)?;
    not_negative("the jam nut's thickness", end.jam_nut)?;
    not_negative("the adapter's flange", end.flange)?;
    Ok(())
}

fn lines(end: &RodEnding, name: &str) -> impl Iterator<Item = SumLine> {
    let thread = format!("{} {}", end.thread.designation(), end.hand.word());
    [
        (
            format!("{name} end: joint centre to its thread ({thread})"),
            end.centre_to_thread,
        ),
        (format!("{name} end: thread left showing"), end.showing),
        (format!("{name} end: jam nut"), end.jam_nut),
        (format!("{name} end: adapter's flange"), end.flange),
    ]
    .into_iter()
    .map(|(what, length)| SumLine {
        what,
        length: -length,
    })
}

fn adjustment(end: &RodEnding, least_diameters: f64) -> Result<Adjustment, BadNumber> {
    let engaged = end.thread_length - end.showing - end.jam_nut;
    positive("the thread that reaches into the adapter", engaged)?;
    let least = least_diameters * end.thread.major_diameter();
    Ok(Adjustment {
        engaged: engaged.min(end.thread_depth),
        inwards: end.showing.min(end.thread_depth - engaged),
        outwards: engaged.min(end.thread_depth) - least,
    })
}
