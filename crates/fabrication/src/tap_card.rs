//! Drilling and tapping a rack end, step by step.

use trammel_strength::BadNumber;
use trammel_strength::engagement::LEAST_WALL;
use trammel_strength::source::{Limit, Source};
use trammel_strength::thread::{TapDrill, Thread};
use trammel_strength::units::INCH;

use crate::size::{not_negative, positive};

/// Depth of full thread in steel, in major diameters.
pub const FULL_THREAD: Limit = Limit {
    value: 1.5,
    unit: "diameters",
    source: Source::COMMON_PRACTICE,
};
/// How much deeper than the full thread the hole goes: a share of the thread's depth, up to 12 mm and above.
pub const DEEPER: [f64; 2] = [0.20, 0.15];
/// Where that comes from.
pub const DEEPER_SOURCE: Source = Source::from_memory(
    "BS 1936",
    "undercuts and runouts; as a share of the thread's depth",
);
/// How a bore is enlarged: from 1/32 in to 1/16 in at a time, so that the drill follows the hole.
pub const STEP: Source = Source::COMMON_PRACTICE;

/// One drill of the ladder.
#[derive(Clone, Debug, PartialEq)]
pub struct LadderDrill {
    /// What is stamped on it.
    pub name: String,
    /// Its diameter, mm.
    pub diameter: f64,
}

/// How a rack end is drilled and tapped.
#[derive(Clone, Debug, PartialEq)]
pub struct TapCard {
    /// The thread.
    pub thread: Thread,
    /// The last drill.
    pub tap_drill: TapDrill,
    /// How much of a full thread that drill leaves, as a fraction.
    pub fraction_of_thread: f64,
    /// All drills in order, the tap drill last; empty where the bore is already that size.
    pub ladder: Vec<LadderDrill>,
    /// Depth of full thread, mm.
    pub full_thread: f64,
    /// Depth of the hole, mm.
    pub hole_depth: f64,
    /// Turns of the tap over the full thread.
    pub turns: f64,
    /// Wall left around the thread on each side, mm.
    pub wall: f64,
    /// Wall that should be left, mm, by [`LEAST_WALL`].
    pub least_wall: f64,
}

/// The size of a step of the ladder.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LadderStep {
    /// 1/32 in at a time.
    ThirtySecond,
    /// 1/16 in at a time.
    Sixteenth,
}

/// Things to mind, in the order they come up.
pub const REMINDERS: [&str; 6] = [
    "Clamp the bar square to the drill. Drill each step to the full depth before the next.",
    "Slow the drill down as it grows. Cutting oil at every step.",
    "Start the tap square; check it with a square, then again 90 degrees round.",
    "Half to one turn in, half a turn back. Cutting oil on the tap.",
    "After about four turns take the tap out and clear the chips.",
    "A hard bar that a file skates off is not to be tapped; don't soften it with heat.",
];

impl TapCard {
    /// The card for a bar of this diameter with a bore that is there already (0 for none), mm.
    ///
    /// # Errors
    /// A diameter that is no number, a bore that is already larger than the tap drill, a bar no thicker than the thread, a depth not above zero.
    pub fn new(
        thread: Thread,
        bar: f64,
        bore: f64,
        full_thread: f64,
        step: LadderStep,
    ) -> Result<Self, BadNumber> {
        let drill = thread.tap_drill();
        let major = thread.major_diameter();
        not_negative("the present bore", bore)?;
        positive("the depth of full thread", full_thread)?;
        let fits = bore <= drill.diameter + BORE_TOLERANCE;
        BadNumber::unless(
            "the present bore",
            bore,
            fits,
            "no larger than the tap drill",
        )?;
        BadNumber::unless(
            "the bar's diameter",
            bar,
            bar.is_finite() && bar > major,
            "more than the thread's diameter",
        )?;
        let deeper = if major <= 12.0 { DEEPER[0] } else { DEEPER[1] };
        Ok(Self {
            thread,
            tap_drill: drill,
            fraction_of_thread: thread.fraction_of_thread(drill.diameter),
            ladder: ladder(bore, drill, step),
            full_thread,
            hole_depth: full_thread * (1.0 + deeper),
            turns: full_thread / thread.pitch(),
            wall: (bar - major) / 2.0,
            least_wall: LEAST_WALL.value * major,
        })
    }

    /// The depth of full thread that is asked for in steel, mm, by [`FULL_THREAD`].
    #[must_use]
    pub fn usual_depth(thread: Thread) -> f64 {
        FULL_THREAD.value * thread.major_diameter()
    }
}

/// A bore this close to the tap drill, mm, is it.
const BORE_TOLERANCE: f64 = 0.05;
/// First drill where there is no bore.
const PILOT: f64 = INCH / 8.0;

fn ladder(bore: f64, last: TapDrill, step: LadderStep) -> Vec<LadderDrill> {
    let parts = match step {
        LadderStep::ThirtySecond => 2.0,
        LadderStep::Sixteenth => 4.0,
    };
    let sixty_fourth = INCH / 64.0;
    let mut drills = Vec::new();
    let mut at = (bore / sixty_fourth).floor();
    if bore <= 0.0 {
        at = (PILOT / sixty_fourth).round() - parts;
    }
    loop {
        at += parts;
        let diameter = at * sixty_fourth;
        if diameter > last.diameter - sixty_fourth / 2.0 {
            break;
        }
        drills.push(LadderDrill {
            name: name_of(at),
            diameter,
        });
    }
    if bore < last.diameter - BORE_TOLERANCE {
        drills.push(LadderDrill {
            name: last.name.to_owned(),
            diameter: last.diameter,
        });
    }
    drills
}

/// A drill of so many sixty-fourths, in lowest terms.
fn name_of(sixty_fourths: f64) -> String {
    let (mut top, mut bottom) = (sixty_fourths, 64.0);
    while top % 2.0 == 0.0 && bottom > 1.0 {
        top /= 2.0;
        bottom /= 2.0;
    }
    match (top / bottom).floor() {
        whole if bottom == 1.0 => format!("{whole}"),
        0.0 => format!("{top}/{bottom}"),
        whole => format!("{whole} {}/{bottom}", top - whole * bottom),
    }
}
