//! Why each check matters, and which checks hold their own margin.

use trammel_strength::check::Check;

/// One sentence that a welder would say.
pub(super) fn reason(check: Check) -> &'static str {
    match check {
        Check::RackFaceYield => {
            "A rack end that bends or snaps at the rack's face leaves the wheel unsteered."
        }
        Check::BoreMouthYield => {
            "The bar bends where it leaves the housing; a bent bar jams in its bore."
        }
        Check::RackEndFatigue => {
            "Every bump bends the thread both ways; a thread loaded past its endurance limit cracks at its root sooner or later, without warning."
        }
        Check::RackEndToe => "A rack end that gives changes toe under load.",
        Check::ThreadEngagement => "Too few threads in mesh strip before the rod breaks.",
        Check::WallLeft => "A thin wall round the thread bursts or cracks in the rack bar.",
        Check::AxialYield => {
            "A tube loaded past its yield strength stays longer or shorter, and the wheel out of line."
        }
        Check::Buckling => {
            "A rod that is pushed too hard folds in the middle at once, and the wheel steers by itself."
        }
        Check::SideHit => {
            "A rock across the middle bends the rod, which shortens it and turns the wheel."
        }
        Check::ShankYield => "The rod end's thread is the thinnest place of the rod.",
        Check::JointRating => "A joint past its rating pulls its ball out of the body.",
        Check::Misalignment => "A ball turned to its end levers its body open or bends its bolt.",
        Check::BoltShear => "A bolt sheared off lets the joint go.",
        Check::BoltBending => {
            "A bolt that stands out bends, works loose and breaks under its head."
        }
        Check::TabBearing => "The hole is pulled oval, and the joint gets slack.",
        Check::TabNetSection => "The tab tears across its hole.",
        Check::TabShearOut => "The bolt tears out through the end of the tab.",
        Check::TabTearOut => "The bolt tears out of the tab or crushes its hole.",
        Check::TabBending => "A long tab bends at its weld and cracks there.",
        Check::WeldThroat => "The weld round the tab tears off its tube.",
        Check::StrutAndBeam => {
            "A tube that is pushed and bent together folds far below its straight strength."
        }
        Check::ArmTubeYield => "A bent arm sets camber, castor and toe wrong at once.",
        Check::Clearance => {
            "Parts that touch wear through, jam the steering or knock a joint loose."
        }
        Check::BodyRoom => "A rod end's body that meets its ear or washer is levered open.",
        Check::NutRoom => {
            "A jam nut against the ears stops the joint from swivelling and bends its shank."
        }
        Check::EndHeadRoom => {
            "A bolt head against the joint's body stops the rod from swinging, and bends or breaks the rack end."
        }
        Check::EndNutRoom => {
            "Without room for its jam nut the rack end can't be wound in, or is left unlocked."
        }
        Check::StandOff => {
            "The bracket that is proved is not the one that fits between rack and joint, which the sheets make."
        }
        Check::HandForce => {
            "Steering that needs more than a driver's hands can give is not steered."
        }
        Check::KickBack => {
            "The wheel is torn out of the driver's hands; a thumb inside the spokes breaks."
        }
        Check::OverCentre => {
            "Past the line of tie rod and steering arm the wheel goes over to the wrong lock and stays there."
        }
        Check::StopMargin => {
            "Without a stop ahead of it the driver can force the steering over centre."
        }
    }
}
