//! What would mend a row that no edit of the build mends, in plain words.

use trammel_build::LengthUnit;
use trammel_strength::check::Check;

use super::{ProofPart, ProofRow};
use crate::words::force;

/// One sentence, with the figure that is missing where there is one.
pub(super) fn cure(row: &ProofRow, unit: LengthUnit) -> String {
    let text = match row.check {
        Check::JointRating => {
            let needed = force(row.value * row.wanted, unit);
            return format!(
                "A joint whose maker rates it at {needed} or more; enter the rating of the one you buy."
            );
        }
        Check::Misalignment => {
            return format!(
                "A joint that swivels {:.0} degrees or more each way, such as one with a wider ball; enter the swivel of the one you buy.",
                (row.value.to_degrees() * row.wanted).ceil()
            );
        }
        Check::BodyRoom => {
            "A joint with a wider ball or a slimmer body, or its bolt turned so that the rod swings about it."
        }
        Check::NutRoom => "A rod end with a longer shank, or less of it in the adapter.",
        Check::EndHeadRoom => {
            "More room between the base and the joint: a taller bracket on a longer rack end, a flatter bolt head, or a smaller joint."
        }
        Check::EndNutRoom => {
            "The rack's face further inboard, a thinner base or jam nut, or the joint on its own shank without a bracket."
        }
        Check::StandOff => "The rack's face or the joint moved until a bracket fits between them.",
        Check::RackFaceYield | Check::RackEndFatigue | Check::RackEndToe => {
            "A shorter way from rack face to joint: a longer rack bar, or inner joints brought to the rack's line; a tie rod nearer level asks less of it too."
        }
        Check::BoreMouthYield => {
            "A thicker rack bar or one of better steel, or a housing that holds it nearer to the joint."
        }
        Check::WallLeft => {
            "A thicker rack bar, or a thinner thread if its own stress leaves room for it."
        }
        Check::ThreadEngagement => "A longer thread, in a bore that is deep enough for it.",
        Check::SideHit => {
            "A rod that is kept out of the way of rocks, above and behind the arm, or a guard before it."
        }
        Check::AxialYield | Check::Buckling => {
            "A shorter rod, or a load case with less on it if this one is not what the vehicle meets."
        }
        Check::ShankYield => "Rod ends with a thicker shank of a better steel.",
        Check::BoltShear | Check::BoltBending => {
            "A larger bolt in double shear, close between its ears."
        }
        Check::TabBearing | Check::TabNetSection | Check::TabShearOut | Check::TabTearOut => {
            "A thicker and wider tab, two of them instead of one, or a smaller hole."
        }
        Check::TabBending | Check::WeldThroat => {
            "A shorter tab with a wider foot, boxed in, so that the weld is pulled and not bent."
        }
        Check::StrutAndBeam | Check::ArmTubeYield => {
            "A stouter tube, a spring mount nearer the ball joint, or a gusset that shares the load between both tubes."
        }
        Check::Clearance => gap(row.part),
        Check::HandForce => {
            "A longer steering arm, less scrub radius, a larger steering wheel or a slower pinion; or less weight on the front wheels."
        }
        Check::KickBack => {
            "Less scrub radius, a longer steering arm, a larger steering wheel, or a damper on the rack, which is not in this figure."
        }
        Check::OverCentre => {
            "A longer steering arm, less rack travel, or the rack moved so that the rod stands more across the arm at full lock."
        }
        Check::StopMargin => "Positive stops that hold the steering earlier.",
    };
    text.to_owned()
}

fn gap(part: ProofPart) -> &'static str {
    use trammel_strength::clearance::Pair;
    match part {
        ProofPart::Gap(Pair::TieRodAndArm(_)) => {
            "Tie rod and arm further apart: the rod above or below the arm's tubes along all its length, or a bent arm tube."
        }
        ProofPart::Gap(Pair::TieRodAndTyre | Pair::TieRodAndRim) => {
            "A wheel with less inset or a smaller tyre, less lock, or a shorter steering arm."
        }
        ProofPart::Gap(Pair::ArmAndTyre(_) | Pair::ArmAndRim(_)) => {
            "A wheel with less inset or a smaller tyre, less lock, or arms that neck in towards the ball joint."
        }
        _ => "A slimmer spring unit, its mounts moved away, or a bent arm tube beside it.",
    }
}
