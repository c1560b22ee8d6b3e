//! Toe curves by the plain pose solver, with what moving a tie-rod joint does to them.

use trammel_geometry::{Linkage, Pose, Unreachable, Vector, Walk};

use crate::{Score, Stations};

/// Toe change at every station of one rack position, and the slope at the design height.
#[derive(Clone, Debug, PartialEq)]
pub struct RackCurve {
    /// Rack position, mm.
    pub rack: f64,
    /// Toe less toe at the design height with the same rack position, rad, one for each travel.
    pub changes: Vec<f64>,
    /// Toe per travel at the design height, rad/mm.
    pub slope: f64,
}

/// The toe curves of all rack positions judged.
#[derive(Clone, Debug, PartialEq)]
pub struct ToeCurves {
    /// One for each rack position.
    pub curves: Vec<RackCurve>,
}

/// What moving a joint does to toe with the tie rod's length reset, rad/mm for each direction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sensitivity {
    /// For the inner joint.
    pub inner: Vector,
    /// For the outer joint.
    pub outer: Vector,
}

impl ToeCurves {
    /// The curves of a linkage.
    ///
    /// # Errors
    /// [`Unreachable`] for the first station that can't be reached.
    pub fn of(linkage: &Linkage, stations: &Stations) -> Result<Self, Unreachable> {
        let of_rack = |&rack: &f64| {
            let mut changes = Vec::with_capacity(stations.travels().len());
            let slope = follow(linkage, stations, rack, |toe, design, _| {
                changes.push(toe - design.toe);
            })?;
            Ok(RackCurve {
                rack,
                changes,
                slope,
            })
        };
        let curves = stations
            .racks()
            .iter()
            .map(of_rack)
            .collect::<Result<_, _>>()?;
        Ok(Self { curves })
    }

    /// The worst of the rack positions.
    #[must_use]
    pub fn score(&self) -> Score {
        self.curves.iter().fold(Score::NOTHING, |worst, c| {
            worst.worse(Score::of(&c.changes, c.slope))
        })
    }

    /// All toe changes, rack position by rack position.
    pub fn changes(&self) -> impl Iterator<Item = f64> + '_ {
        self.curves.iter().flat_map(|c| c.changes.iter().copied())
    }
}

/// The toe curves, and for every toe change in the order of [`ToeCurves::changes`] how it moves with the joints.
///
/// # Errors
/// As [`ToeCurves::of`].
pub fn curves_with_sensitivity(
    linkage: &Linkage,
    stations: &Stations,
) -> Result<(ToeCurves, Vec<Sensitivity>), Unreachable> {
    let mut rows = Vec::with_capacity(stations.racks().len() * stations.travels().len());
    let mut curves = Vec::with_capacity(stations.racks().len());
    for &rack in stations.racks() {
        let mut changes = Vec::with_capacity(stations.travels().len());
        let mut at_design = None;
        let slope = follow(linkage, stations, rack, |toe, design, pose| {
            let base = *at_design.get_or_insert_with(|| Sensitivity::of(linkage, &design.pose));
            let here = Sensitivity::of(linkage, pose);
            changes.push(toe - design.toe);
            rows.push(Sensitivity {
                inner: here.inner - base.inner,
                outer: here.outer - base.outer,
            });
        })?;
        curves.push(RackCurve {
            rack,
            changes,
            slope,
        });
    }
    Ok((ToeCurves { curves }, rows))
}

struct AtDesign {
    pose: Pose,
    toe: f64,
}

/// Poses of one rack position, from the design height outwards so that each starts from its neighbour, given out in
/// order of travel; the slope at
/// the design height.
fn follow(
    linkage: &Linkage,
    stations: &Stations,
    rack: f64,
    mut visit: impl FnMut(f64, &AtDesign, &Pose),
) -> Result<f64, Unreachable> {
    let mut walk = Walk::new(linkage, rack)?;
    let pose = walk.pose(0.0)?;
    let design = AtDesign {
        pose,
        toe: toe(&pose),
    };
    let mut down = walk;
    let below = stations.travels().partition_point(|&t| t < 0.0);
    let mut droop = Vec::with_capacity(below);
    for &travel in stations.travels().iter().take(below).rev() {
        droop.push(down.pose(travel)?);
    }
    for pose in droop.iter().rev() {
        visit(toe(pose), &design, pose);
    }
    for &travel in stations.travels().iter().skip(below) {
        let pose = walk.pose(travel)?;
        visit(toe(&pose), &design, &pose);
    }
    Ok(toe_rate(&pose, &pose.rates.upright))
}

fn toe(pose: &Pose) -> f64 {
    pose.spin_axis.x.atan2(pose.spin_axis.y)
}

/// Toe per unit of an angular velocity.
fn toe_rate(pose: &Pose, angular: &Vector) -> f64 {
    let n = pose.spin_axis;
    let rate = angular.cross(&n);
    (rate.x * n.y - rate.y * n.x) / (n.x * n.x + n.y * n.y).max(1e-24)
}

impl Sensitivity {
    /// Of the toe at a pose, wheel travel and rack position held.
    ///
    /// Moving a joint with the rod cut anew changes what the rod asks for at this pose; the upright answers with a
    /// turn about its steering axis
    /// and, to stay at its height, a travel of the arms.
    #[must_use]
    pub fn of(linkage: &Linkage, pose: &Pose) -> Self {
        let corner = linkage.corner();
        let rod = pose.tie_rod_outer - pose.tie_rod_inner;
        let rod_at_design = corner.tie_rod.outer - corner.tie_rod.inner;
        let axis = pose.steering_axis;
        let arm = pose.tie_rod_outer - pose.lower_ball_joint;
        let lift = axis.cross(&(pose.wheel_centre - pose.lower_ball_joint)).z;
        // Half of what a turn does to the rod's square, and what it does to toe at a held height.
        let pull = rod.dot(&axis.cross(&arm));
        let toe_per_turn = toe_rate(pose, &axis) - lift * toe_rate(pose, &pose.rates.upright);
        let gain = -toe_per_turn / pull;
        let design_axis = corner.upper_arm.ball_joint - corner.lower_arm.ball_joint;
        let design_arm = corner.tie_rod.outer - corner.lower_arm.ball_joint;
        let now = frame(axis, arm);
        let then = frame(design_axis, design_arm);
        let rod_in_design: Vector = then
            .iter()
            .zip(&now)
            .map(|(to, from)| to * from.dot(&rod))
            .sum();
        Self {
            inner: (rod_at_design - rod) * gain,
            outer: (rod_in_design - rod_at_design) * gain,
        }
    }
}

/// Three unit vectors: along the axis, towards the arm square to it, and their normal.
pub(crate) fn frame(axis: Vector, arm: Vector) -> [Vector; 3] {
    let along = axis / axis.norm();
    let across = arm - along * along.dot(&arm);
    let across = across / across.norm();
    [along, across, along.cross(&across)]
}
