//! Spacers, misalignment sleeves, and the gap that a pair of tabs needs.

use std::f64::consts::PI;

use trammel_strength::BadNumber;

use crate::size::{not_negative, positive};

/// A turned ring or tube, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spacer {
    length: f64,
    bore: f64,
    outside: f64,
}

impl Spacer {
    /// A spacer.
    ///
    /// # Errors
    /// A size not above zero, a bore that leaves no wall.
    pub fn new(length: f64, bore: f64, outside: f64) -> Result<Self, BadNumber> {
        positive("the spacer's length", length)?;
        positive("the spacer's bore", bore)?;
        BadNumber::unless(
            "the spacer's outside diameter",
            outside,
            outside.is_finite() && outside > bore,
            "more than its bore",
        )?;
        Ok(Self {
            length,
            bore,
            outside,
        })
    }

    /// Length, bore and outside diameter, mm.
    #[must_use]
    pub fn sizes(&self) -> [f64; 3] {
        [self.length, self.bore, self.outside]
    }

    /// Mass, kg, for a density in kg/m3.
    #[must_use]
    pub fn mass(&self, density: f64) -> f64 {
        PI / 4.0 * (self.outside.powi(2) - self.bore.powi(2)) * self.length * density * 1e-9
    }
}

/// A sleeve that steps a joint's bore down to a smaller bolt, so that the joint may swivel farther.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sleeve {
    /// The part outside the ball.
    pub shoulder: Spacer,
    /// Diameter of the part that goes into the ball, mm.
    pub spigot: f64,
    /// Length of that part, mm: half of the ball's width at most.
    pub spigot_length: f64,
}

impl Sleeve {
    /// A sleeve for a ball of this bore and width.
    ///
    /// # Errors
    /// A size not above zero, a spigot that leaves no wall around the bolt's bore.
    pub fn new(shoulder: Spacer, ball_bore: f64, ball_width: f64) -> Result<Self, BadNumber> {
        positive("the ball's width", ball_width)?;
        let fits =
            ball_bore.is_finite() && ball_bore > shoulder.bore && ball_bore < shoulder.outside;
        BadNumber::unless(
            "the ball's bore",
            ball_bore,
            fits,
            "more than the sleeve's bore and less than its shoulder",
        )?;
        Ok(Self {
            shoulder,
            spigot: ball_bore,
            spigot_length: ball_width / 2.0,
        })
    }
}

/// The gap between a pair of tabs: the joint, what stands on each side of it, and the play that shims take up; and the bolt through it all.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PairGap {
    /// From tab to tab inside, mm.
    pub gap: f64,
    /// From under the bolt's head to the nut's face: gap, both tabs and washers, mm.
    pub grip: f64,
}

/// The gap for a joint of this width with spacers of this length on each side, and this play in all; tabs and washers under head and nut make the grip.
///
/// # Errors
/// A width or thickness not above zero, a spacer, play or washer below it.
pub fn pair_gap(
    joint_width: f64,
    spacer: f64,
    play: f64,
    tab: f64,
    washer: f64,
) -> Result<PairGap, BadNumber> {
    positive("the joint's width", joint_width)?;
    positive("the tab's thickness", tab)?;
    not_negative("the spacer's length", spacer)?;
    not_negative("the play", play)?;
    not_negative("the washer's thickness", washer)?;
    let gap = joint_width + 2.0 * spacer + play;
    Ok(PairGap {
        gap,
        grip: gap + 2.0 * (tab + washer),
    })
}
