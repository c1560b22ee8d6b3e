//! Rack end and joints of a corner without remedies: quick enough to be asked for at hundreds of places.

use trammel_build::{AxleModel, Build, Side};

use crate::{
    corner_view::{CornerView, HitForce},
    pose_grid::PoseGrid,
    rack_end::{Fastening, RackEndCase},
};

/// Travels and rack positions looked at; the cautions look closer.
const GRID: [usize; 2] = [7, 5];

/// Figures of a corner at the worst pose of a coarse grid over travel and lock.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct QuickLook {
    /// Yield strength over combined stress of the rack end; `None` where there is no rack or no load.
    pub rack_end_factor: Option<f64>,
    /// Swivel of the inner joint, rad, reckoned as in its caution.
    pub inner_swivel: f64,
    /// Swivel of the outer joint, rad.
    pub outer_swivel: f64,
}

impl QuickLook {
    /// Of a side of a build's axle.
    #[must_use]
    pub fn of(build: &Build, model: &AxleModel, side: Side) -> Self {
        let view = CornerView::of(model, side, HitForce::of(build));
        let [travels, racks] = GRID;
        let grid = PoseGrid::sized(&view, travels, racks);
        let most = |of: fn(&crate::corner_view::Reading) -> f64| {
            grid.readings().map(of).fold(0.0, f64::max)
        };
        let rack_end = view.rack_end.and_then(|place| {
            let fastening = Fastening::of(&build.front.rack_end)?;
            let case = RackEndCase::new(place, &fastening).ok()?;
            let worst = grid.worst_node(|r| case.use_of_yield(r))?;
            (worst.badness > 0.0).then(|| 1.0 / worst.badness)
        });
        Self {
            rack_end_factor: rack_end,
            inner_swivel: most(|r| r.inner_swivel),
            outer_swivel: most(|r| r.outer_swivel),
        }
    }
}
