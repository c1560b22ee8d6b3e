//! What a row has to say beside its figures: the shape that was assumed, the adjustment at which it is worst, where the jam nut sits.

use trammel_build::{AxleName, Build, JamNutAt, PointName};
use trammel_geometry::ArmName;
use trammel_strength::{check::Check, clearance::Pair};

use super::{ProofPart, end_bracket::jam_nut_words};
use crate::{RackEndStack, words::work_length};

/// Whole sentences; `None` where figures and sources say all.
pub(super) fn remark(
    build: &Build,
    axle: AxleName,
    part: ProofPart,
    check: Check,
) -> Option<String> {
    let unit = build.unit;
    let length = |mm: f64| work_length(mm, unit);
    match (part, check) {
        (ProofPart::Gap(pair), _) => Some(shapes(pair)),
        (_, Check::BodyRoom) => Some(
            "Assumed: the joint's body a disc as wide as its head, ears or washers planes at the ball's faces.".into(),
        ),
        (_, Check::NutRoom) => {
            let adjustment = build.axle_spec(axle)?.parts.tie_rod.adjustment.unwrap_or(0.0);
            Some(format!(
                "With the rod end screwed in by {}, its whole adjustment, at every pose. Assumed: ears, bolt head and joint head a disc round the ball.",
                length(adjustment * unit.mm())
            ))
        }
        (_, Check::EndHeadRoom) => {
            let stack = RackEndStack::of(build).ok()?;
            Some(format!(
                "The head goes with the bracket: the same over the whole adjustment. Assumed: a head {} high as a plane across the rack, the joint's body a disc that leans with the rod.",
                length(stack.bolt_head)
            ))
        }
        (_, Check::EndNutRoom) => {
            let stack = RackEndStack::of(build).ok()?;
            Some(format!(
                "With the bracket wound in by {}, at every pose; a jam nut {} thick, {}.",
                length(stack.winding),
                length(stack.jam_nut),
                jam_nut_words(build.front.rack_end.jam_nut_at)
            ))
        }
        (_, Check::StandOff) => {
            let bracket = build.front.parts.joints.get(&PointName::TieRodInner)?;
            let height = bracket.bracket.as_ref()?.height * unit.mm();
            Some(format!(
                "The bracket is proved with its hole {} over its base; the sheet of the rack-end bracket takes what jam nut, adjustment of {} and base leave.",
                length(height),
                length(RackEndStack::of(build).ok()?.winding)
            ))
        }
        (ProofPart::RackEnd, Check::RackFaceYield | Check::RackEndFatigue | Check::RackEndToe) => {
            Some(cantilever(build.front.rack_end.jam_nut_at).into())
        }
        (ProofPart::Bolt(point) | ProofPart::Bracket(point) | ProofPart::Joint(point), _)
            if is_pivot(point) =>
        {
            Some("Of the force along the pivots' line half is given to each pivot; statics can't tell.".into())
        }
        _ => None,
    }
}

/// Where the cantilever begins, whatever holds the jam nut.
fn cantilever(at: Option<JamNutAt>) -> &'static str {
    match at {
        Some(JamNutAt::Rack) => {
            "The lever is taken from the rack's face; what the jam nut tightened there clamps and supports is not counted."
        }
        Some(JamNutAt::Joint) => {
            "The lever is the whole way from the rack's face: with the jam nut at the joint nothing clamps the thread there, and only the rod keeps it from turning in the bar."
        }
        None => {
            "The lever is taken from the rack's face; where the jam nut is tightened is not said and changes nothing in it."
        }
    }
}

fn is_pivot(point: PointName) -> bool {
    matches!(
        point,
        PointName::UpperFrontPivot
            | PointName::UpperRearPivot
            | PointName::LowerFrontPivot
            | PointName::LowerRearPivot
    )
}

/// What each member of a pair was taken for.
fn shapes(pair: Pair) -> String {
    const BAR: &str = "a round bar from joint to joint";
    const TYRE: &str = "the tyre a ring with rounded edges";
    const RIM: &str = "the rim a thin barrel open at both ends";
    let arm = |name: ArmName| match name {
        ArmName::Upper => "each upper arm tube",
        ArmName::Lower => "each lower arm tube",
    };
    let said = match pair {
        Pair::TieRodAndArm(name) => format!("tie rod and {} {BAR}", arm(name)),
        Pair::TieRodAndTyre => format!("the tie rod {BAR}, {TYRE}"),
        Pair::TieRodAndRim => format!("the tie rod {BAR}, {RIM}"),
        Pair::ArmAndTyre(name) => format!("{} {BAR}, {TYRE}", arm(name)),
        Pair::ArmAndRim(name) => format!("{} {BAR}, {RIM}", arm(name)),
        Pair::SpringAndOtherArm => format!("spring unit and each arm tube {BAR}"),
        Pair::SpringAndTieRod => format!("spring unit and tie rod {BAR}"),
        Pair::SpringAndTyre => format!("the spring unit {BAR}, {TYRE}"),
    };
    format!("Assumed: {said}; over the whole of travel and lock, nothing bent.")
}
