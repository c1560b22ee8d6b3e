//! The rack end of a corner with its joints elsewhere, for searches.

use trammel_build::{AxleModel, Build, RackEndPlace, Side};
use trammel_geometry::{Corner, Linkage};
use trammel_tuning::RackEndFactor;

use crate::{
    corner_view::{CornerView, HitForce},
    pose_grid::PoseGrid,
    rack_end::{Fastening, RackEndCase},
};

/// Travels and rack positions of a look at one of many candidates.
const GRID: [usize; 2] = [9, 5];

/// Works out the rack end's factor for corners that differ from a build's in their points, over travel and lock on a coarse grid. The rack goes
/// with its inner joint in every direction but its own. `None` without a rack, or where no table knows thread or grade.
#[must_use]
pub fn rack_end_factor(build: &Build, model: &AxleModel, side: Side) -> Option<RackEndFactor> {
    let view = CornerView::of(model, side, HitForce::of(build));
    let place = view.rack_end?;
    let fastening = Fastening::of(&build.axle_spec(model.name)?.rack_end)?;
    Some(Box::new(move |corner: &Corner| {
        let moved = corner.tie_rod.inner - place.joint;
        let across = moved - place.outward * place.outward.dot(&moved);
        let place = RackEndPlace {
            face: place.face + across,
            bore_mouth: place.bore_mouth + across,
            joint: corner.tie_rod.inner,
            ..place
        };
        let view = view.with_linkage(&Linkage::new(corner).ok()?, Some(place));
        let [travels, racks] = GRID;
        factor_on(&view, &PoseGrid::sized(&view, travels, racks), &fastening)
    }))
}

/// Yield strength over the greatest combined stress on a grid.
pub(crate) fn factor_on(view: &CornerView, grid: &PoseGrid, fastening: &Fastening) -> Option<f64> {
    let case = RackEndCase::new(view.rack_end?, fastening).ok()?;
    let worst = case.worst(view, grid)?;
    (worst.badness > 0.0).then(|| 1.0 / worst.badness)
}
