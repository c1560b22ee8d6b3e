//! A new ride height: a wheel travel becomes the design position.

use trammel_geometry::{Corner, CornerFault, Linkage, Point, Unreachable, Vector, Wheel};

use crate::rod_length::{Wanted, turned, with_upright};

/// Rounds of setting camber and toe in turn; each takes some digits off both.
const ROUNDS: usize = 40;
/// What is left then, rad.
const SET: f64 = 1e-12;

/// What the adjusters put back at the new ride height.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reset {
    /// Static toe, by the tie rod's length. Camber stays as it comes.
    Toe,
    /// Static toe, and static camber by the upper arm's: its ball joint is moved so that the upright leans as before.
    ToeAndCamber,
}

/// A corner at its new ride height.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lifted {
    /// The corner in vehicle axes with the origin on the new ground.
    pub corner: Corner,
    /// What was added to every chassis point, mm: the frame rises by z. A second axle's points take the same shift.
    pub frame_shift: Vector,
    /// Wheel travel to take off every travel counted from the old ride height, stops among them, mm; lengths of the
    /// spring unit stay what they were.
    pub travel_shift: f64,
}

/// Why a travel can't become the ride height.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum LiftFault {
    /// The wheel does not get there.
    #[error(transparent)]
    OutOfReach(#[from] Unreachable),
    /// Toe or camber can't be put back there.
    #[error("toe or camber can't be put back at a ride height {travel:.1} mm of wheel travel away")]
    NotReset {
        /// The travel asked for, mm.
        travel: f64,
    },
    /// What comes out is no linkage.
    #[error(transparent)]
    NotBuilt(#[from] CornerFault),
}

/// Makes the wheel travel `travel` (mm, bump positive: the frame is lowered; droop raises it) the design position.
///
/// Frame and joints keep their places on their parts; the origin moves with the wheel along x and with the ground
/// along z.
///
/// # Errors
/// A [`LiftFault`] when the wheel does not get there, or can't be set there.
pub fn lifted(linkage: &Linkage, travel: f64, reset: Reset) -> Result<Lifted, LiftFault> {
    let old = linkage.corner();
    let pose = linkage.pose(travel, 0.0)?;
    let measures = linkage.measures(&pose);
    let there = with_upright(
        old,
        [pose.upper_ball_joint, pose.lower_ball_joint],
        pose.tie_rod_outer,
        Wheel {
            centre: pose.wheel_centre,
            toe: measures.toe,
            camber: measures.camber,
            ..old.wheel
        },
    );
    let set = set(&there, &old.wheel, reset).ok_or(LiftFault::NotReset { travel })?;
    let at_new = Linkage::new(&set)?.pose(0.0, 0.0)?.contact;
    let at_old = linkage.pose(0.0, 0.0)?.contact;
    let frame_shift = Vector::new(
        old.wheel.centre.x - set.wheel.centre.x,
        0.0,
        at_old.z - at_new.z,
    );
    Ok(Lifted {
        corner: set.map(|p| p + frame_shift, |v| v),
        frame_shift,
        travel_shift: set.wheel.centre.z - old.wheel.centre.z,
    })
}

fn set(corner: &Corner, wanted: &Wheel, reset: Reset) -> Option<Corner> {
    let mut set = *corner;
    for _ in 0..ROUNDS {
        if reset == Reset::ToeAndCamber {
            set = leant(&set, wanted.camber);
        }
        set = turned(&set, Wanted::ToeChange(wanted.toe - set.wheel.toe))?;
        if reset == Reset::Toe || (set.wheel.camber - wanted.camber).abs() < SET {
            return Some(set);
        }
    }
    None
}

/// The corner with its upright rolled about the fore-and-aft line through the lower ball joint until it has this
/// camber.
fn leant(corner: &Corner, camber: f64) -> Corner {
    let spin = corner.wheel.spin_axis();
    // Rolling about x carries (y, z) of the spin axis round; z is to be -sin(camber).
    let length = spin.y.hypot(spin.z);
    let wanted = (-camber.sin() / length).clamp(-1.0, 1.0).asin();
    let angle = wanted - (spin.z / length).clamp(-1.0, 1.0).asin();
    let roll = nalgebra::Rotation3::from_axis_angle(&Vector::x_axis(), angle);
    let pivot = corner.lower_arm.ball_joint;
    let at = |p: Point| pivot + roll * (p - pivot);
    let spin = roll * spin;
    with_upright(
        corner,
        [at(corner.upper_arm.ball_joint), pivot],
        at(corner.tie_rod.outer),
        Wheel {
            centre: at(corner.wheel.centre),
            toe: spin.x.atan2(spin.y),
            camber,
            ..corner.wheel
        },
    )
}
