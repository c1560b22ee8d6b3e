//! What every way of standing would make a tie-rod joint's bolt see.

use trammel_build::{AxleModel, BoltAxis, Build, JointBolts, Side};
use trammel_geometry::Vector;
use trammel_tuning::TieRodJoint;

use crate::{
    corner_view::{CornerView, HitForce, Reading},
    pose_grid::PoseGrid,
};

/// What a joint does over the whole of travel and lock. Angles in rad.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Swivel {
    /// The most that the rod is out of the plane square to the bolt; where no bolt is known, as its caution reckons it.
    pub most: f64,
    /// Wheel travel where it is that, mm.
    pub travel: f64,
    /// Rack travel where it is that, mm.
    pub rack: f64,
    /// From one end to the other, how far the rod turns about the bolt, where it is free; `None` where no bolt is known.
    pub turn: Option<f64>,
}

/// A joint's swivel as its bolt stands and as it would be on others.
#[derive(Clone, Debug, PartialEq)]
pub struct BoltStudy {
    /// Which joint.
    pub joint: TieRodJoint,
    /// How its bolt stands, if the build says so.
    pub bolt: Option<BoltAxis>,
    /// What it sees.
    pub present: Swivel,
    /// What each of [`BoltAxis::PLAIN`] would see, in that order.
    pub plain: Vec<(BoltAxis, Swivel)>,
}

impl BoltStudy {
    /// Both joints of the left corner of a build's axle, inner and outer; `None` where the corner can't be posed at all.
    #[must_use]
    pub fn of(build: &Build, model: &AxleModel) -> Option<[Self; 2]> {
        let view = CornerView::of(model, Side::Left, HitForce::of(build));
        let grid = PoseGrid::of(&view);
        let bolts = model.joint_bolts;
        let joint = |joint| Self::joint(&view, &grid, joint, bolts);
        Some([joint(TieRodJoint::Inner)?, joint(TieRodJoint::Outer)?])
    }

    fn joint(
        view: &CornerView,
        grid: &PoseGrid,
        joint: TieRodJoint,
        bolts: JointBolts,
    ) -> Option<Self> {
        let (bolt, seen): (_, fn(&Reading) -> f64) = match joint {
            TieRodJoint::Inner => (bolts.inner, |r| r.inner_swivel),
            TieRodJoint::Outer => (bolts.outer, |r| r.outer_swivel),
        };
        let turned = bolt.map(|b| turn(grid, joint, b));
        let plain = BoltAxis::PLAIN.into_iter().map(|axis| {
            let most = |r: &Reading| r.tilt_on(axis, joint);
            let turned = turn(grid, joint, axis);
            Some((axis, swivel(view, grid, most, Some(turned))?))
        });
        Some(Self {
            joint,
            bolt,
            present: swivel(view, grid, seen, turned)?,
            plain: plain.collect::<Option<_>>()?,
        })
    }
}

fn swivel(
    view: &CornerView,
    grid: &PoseGrid,
    seen: impl Fn(&Reading) -> f64,
    turn: Option<f64>,
) -> Option<Swivel> {
    let worst = grid.worst(view, |r| Some(seen(r)))?;
    Some(Swivel {
        most: worst.badness,
        travel: worst.reading.travel,
        rack: worst.reading.rack,
        turn,
    })
}

/// Between the ends of the rod's turning about a bolt, rad. A rod along its bolt has no direction about it and does not count.
fn turn(grid: &PoseGrid, joint: TieRodJoint, bolt: BoltAxis) -> f64 {
    let axis = bolt.direction();
    let about = |rod: Vector| (rod - axis * axis.dot(&rod)).try_normalize(1e-3);
    let rod = |r: &Reading| match joint {
        TieRodJoint::Inner => r.rod,
        TieRodJoint::Outer => r.rod_on_upright,
    };
    let mut directions = grid.readings().filter_map(|r| about(rod(r)));
    let Some(first) = directions.next() else {
        return 0.0;
    };
    let signed = |v: Vector| axis.dot(&first.cross(&v)).atan2(first.dot(&v));
    let (low, high) = directions
        .map(signed)
        .fold((0.0_f64, 0.0_f64), |(l, h), a| (l.min(a), h.max(a)));
    high - low
}
