//! Whether what the trade says of a lift holds for a car: it changes the toe curve little and multiplies the bending in the rack end.

use trammel_build::LengthUnit;

use crate::{
    RideHeightRow,
    words::{factor, length, toe},
};

/// Growth of the largest toe change that still counts as little, as a part of the toe limit (a judgement, no source).
const LITTLE: f64 = 1.0 / 3.0;
/// Growth of the rack end's stress that counts as multiplied (a judgement, no source).
const MULTIPLIED: f64 = 1.5;
/// Less growth than this part is none worth a word (a judgement, no source).
const NO_GROWTH: f64 = 0.05;

/// Two ride heights held against each other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiftVerdict {
    /// What lies between the two heights, mm, up positive.
    pub by: f64,
    /// Largest toe change before and after, rad.
    pub toe_change: [f64; 2],
    /// Rack end's factor before and after; `None` without a rack end that can be reckoned.
    pub rack_end_factor: Option<[f64; 2]>,
    /// Whether the toe curve changes little.
    pub toe_little: bool,
}

impl LiftVerdict {
    /// From one height to another; `toe_limit` is the most toe change that the build allows, rad.
    #[must_use]
    pub fn of(before: &RideHeightRow, after: &RideHeightRow, toe_limit: f64) -> Self {
        let toe_change = [before.toe_change, after.toe_change];
        Self {
            by: after.by - before.by,
            toe_change,
            rack_end_factor: before
                .rack_end_factor
                .zip(after.rack_end_factor)
                .map(|(a, b)| [a, b]),
            toe_little: (toe_change[1] - toe_change[0]).abs() <= LITTLE * toe_limit,
        }
    }

    /// How many times as much stress the rack end has afterwards.
    #[must_use]
    pub fn stress_times(&self) -> Option<f64> {
        self.rack_end_factor
            .filter(|[_, after]| *after > 0.0)
            .map(|[before, after]| before / after)
    }

    /// Whether the rack end's stress is multiplied.
    #[must_use]
    pub fn is_multiplied(&self) -> bool {
        self.stress_times().is_some_and(|t| t >= MULTIPLIED)
    }

    /// Whether what the trade says of a lift holds between these two heights.
    #[must_use]
    pub fn trade_is_right(&self) -> bool {
        self.toe_little && self.is_multiplied()
    }

    /// The answer in plain sentences.
    #[must_use]
    pub fn in_words(&self, unit: LengthUnit) -> String {
        let way = if self.by < 0.0 { "Lowered" } else { "Raised" };
        let [a, b] = self.toe_change.map(|t| toe(t.to_degrees()));
        let much = if self.toe_little { "little" } else { "much" };
        format!(
            "{way} by {}, this car's toe curve changes {much}: largest toe change {a} before, {b} after. {}{}",
            length(self.by.abs(), unit),
            self.rack_end_in_words(),
            self.rule_in_words()
        )
    }

    fn rack_end_in_words(&self) -> String {
        let (Some([a, b]), Some(times)) = (self.rack_end_factor, self.stress_times()) else {
            return "There is no rack end whose bending could be reckoned.".to_owned();
        };
        let factors = format!("factor {} before, {} after", factor(a), factor(b));
        if (times - 1.0).abs() < NO_GROWTH {
            format!("The stress in the rack end stays about the same ({factors}).")
        } else if times < 1.0 {
            format!("The stress in the rack end falls to {times:.2} of what it was ({factors}).")
        } else {
            format!("The stress in the rack end becomes {times:.1} times as much ({factors}).")
        }
    }

    /// The trade speaks of raising only.
    fn rule_in_words(&self) -> &'static str {
        match (self.by > 0.0, self.rack_end_factor) {
            (false, _) | (_, None) => "",
            _ if self.trade_is_right() => {
                " The trade's saying holds here: a lift shows in the rack end, not in the toe curve."
            }
            _ => {
                " The trade's saying, that a lift changes the toe curve little and multiplies the rack end's bending, does not hold here."
            }
        }
    }
}
