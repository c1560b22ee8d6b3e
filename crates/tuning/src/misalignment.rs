//! How far a tie-rod joint is tilted on its bolt. A joint turns freely about its bolt; what it has little of is tilt.

use trammel_geometry::{Linkage, Pose, Unreachable, Vector, Walk};

use crate::{Stations, TieRodJoint, curve::frame};

/// The direction of a joint's bolt at the design position. The inner joint's bolt keeps it, the outer joint's goes
/// with the upright.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BoltDirection {
    /// Along x.
    ForeAft,
    /// Along z.
    Vertical,
    /// Any; its length does not matter.
    Along(Vector),
}

/// The most that a joint is tilted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tilt {
    /// Angle of the tie rod out of the plane square to the bolt, rad.
    pub angle: f64,
    /// Wheel travel where it is that, mm.
    pub travel: f64,
    /// Rack position where it is that, mm.
    pub rack: f64,
}

impl BoltDirection {
    fn unit(self) -> Option<Vector> {
        match self {
            Self::ForeAft => Some(Vector::x()),
            Self::Vertical => Some(Vector::z()),
            Self::Along(v) => v.try_normalize(1e-9),
        }
    }
}

/// Tilt of a joint at a pose, rad: the angle of the tie rod out of the plane square to the joint's bolt. `None` when
/// the bolt has no direction.
#[must_use]
pub fn misalignment(
    linkage: &Linkage,
    pose: &Pose,
    joint: TieRodJoint,
    bolt: BoltDirection,
) -> Option<f64> {
    let bolt = bolt.unit()?;
    let along = bolt.dot(&rod_seen(linkage, pose, joint)).abs();
    along.is_finite().then(|| along.min(1.0).asin())
}

/// Unit vector along the tie rod at a pose, inner to outer joint, as the body that holds a joint's bolt sees it, that body standing as at the
/// design position: the chassis for the inner joint, the upright for the outer one. Its part along a bolt's unit vector is the sine of the
/// joint's tilt.
#[must_use]
pub fn rod_seen(linkage: &Linkage, pose: &Pose, joint: TieRodJoint) -> Vector {
    let rod = pose.tie_rod_outer - pose.tie_rod_inner;
    let rod = rod / rod.norm();
    match joint {
        TieRodJoint::Inner => rod,
        TieRodJoint::Outer => seen_from_upright(linkage, pose, rod),
    }
}

/// The most that a joint is tilted at any station. `None` when the bolt has no direction.
///
/// # Errors
/// [`Unreachable`] for the first station that can't be reached.
pub fn most_misalignment(
    linkage: &Linkage,
    stations: &Stations,
    joint: TieRodJoint,
    bolt: BoltDirection,
) -> Result<Option<Tilt>, Unreachable> {
    let mut most: Option<Tilt> = None;
    for &rack in stations.racks() {
        let mut walk = Walk::new(linkage, rack)?;
        for &travel in stations.travels() {
            let pose = walk.pose(travel)?;
            let Some(angle) = misalignment(linkage, &pose, joint, bolt) else {
                return Ok(None);
            };
            if most.is_none_or(|m| angle > m.angle) {
                most = Some(Tilt {
                    angle,
                    travel,
                    rack,
                });
            }
        }
    }
    Ok(most)
}

/// The direction for a joint's bolt that keeps its greatest tilt small: square to the middle of all the tie rod's
/// directions against the body that holds the bolt,
/// and to the way in which they spread most. By the axis of least spread through the directions (least squares), so
/// near the best but not exactly it.
///
/// # Errors
/// As [`most_misalignment`].
pub fn kindest_bolt(
    linkage: &Linkage,
    stations: &Stations,
    joint: TieRodJoint,
) -> Result<Vector, Unreachable> {
    let mut spread = nalgebra::Matrix3::zeros();
    for &rack in stations.racks() {
        let mut walk = Walk::new(linkage, rack)?;
        for &travel in stations.travels() {
            let pose = walk.pose(travel)?;
            let seen = rod_seen(linkage, &pose, joint);
            spread += seen * seen.transpose();
        }
    }
    let eigen = spread.symmetric_eigen();
    Ok(eigen
        .eigenvectors
        .column(eigen.eigenvalues.imin())
        .into_owned())
}

/// A direction at a pose, as the upright saw it at the design position.
fn seen_from_upright(linkage: &Linkage, pose: &Pose, v: Vector) -> Vector {
    let corner = linkage.corner();
    let lower = corner.lower_arm.ball_joint;
    let then = frame(
        corner.upper_arm.ball_joint - lower,
        corner.tie_rod.outer - lower,
    );
    let now = frame(
        pose.steering_axis,
        pose.tie_rod_outer - pose.lower_ball_joint,
    );
    then.iter()
        .zip(&now)
        .map(|(to, from)| to * from.dot(&v))
        .sum()
}
