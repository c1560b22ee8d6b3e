//! What raising the frame does, over a range of heights.

use trammel_build::{AxleModel, AxleName, Build, Side};
use trammel_tuning::{Reset, lifted};

use crate::{
    AxleStudy, Raise, RaiseFault,
    candidate::factor_on,
    corner_view::{CornerView, HitForce, Reading},
    pose_grid::PoseGrid,
    rack_end::Fastening,
    ride_height::raised,
};

/// Figures of a corner at one ride height; angles in rad, lengths in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RideHeightRow {
    /// What the frame was raised by, mm.
    pub by: f64,
    /// Steepest tie rod against the rack over travel and lock; `None` without a rack.
    pub tie_rod_angle: Option<f64>,
    /// Most that the inner joint swivels, reckoned as in its caution.
    pub inner_swivel: f64,
    /// The same of the outer joint.
    pub outer_swivel: f64,
    /// Largest toe change over the travel, rack at centre.
    pub toe_change: f64,
    /// Yield strength over combined stress of the rack end at its worst pose.
    pub rack_end_factor: Option<f64>,
    /// Static camber as it comes, before an adjuster puts it back.
    pub camber: f64,
    /// From the centre plane to the contact point.
    pub half_track: f64,
}

/// A row of a corner's figures for each raise, mm, and where one can't be made, why.
#[must_use]
pub fn ride_heights(
    build: &Build,
    corner: (AxleName, Side),
    raises: &[f64],
    like: &Raise,
) -> Vec<Result<RideHeightRow, RaiseFault>> {
    raises
        .iter()
        .map(|&by| row(build, corner, &Raise { by, ..*like }))
        .collect()
}

/// What raises the frame, mm, when a wheel's travel (mm, droop negative) becomes the ride height.
///
/// # Errors
/// [`RaiseFault`] when the wheel does not get there, or can't be set there.
pub fn rise_at(
    build: &Build,
    (axle, side): (AxleName, Side),
    travel: f64,
    reset: Reset,
) -> Result<f64, RaiseFault> {
    let model = build.axle(axle)?;
    let there = lifted(model.linkage(side), travel, reset);
    there
        .map(|l| l.frame_shift.z)
        .map_err(|fault| RaiseFault::Wheel { axle, side, fault })
}

fn row(
    build: &Build,
    (axle, side): (AxleName, Side),
    raise: &Raise,
) -> Result<RideHeightRow, RaiseFault> {
    let at = |raise: &Raise| -> Result<(Build, AxleModel), RaiseFault> {
        let there = match raised(build, raise)?.apply(build) {
            Ok(there) => there,
            Err(trammel_build::EditFault::Unusable(fault)) => return Err(fault.into()),
            Err(_) => {
                return Err(RaiseFault::NotFound {
                    by: raise.by,
                    unit: build.unit,
                });
            }
        };
        let model = there.axle(axle)?;
        Ok((there, model))
    };
    let (there, model) = at(raise)?;
    let (_, as_it_comes) = at(&Raise {
        reset: Reset::Toe,
        ..*raise
    })?;
    let view = CornerView::of(&model, side, HitForce::of(&there));
    let grid = PoseGrid::of(&view);
    let most = |of: fn(&Reading) -> f64| {
        let worst = grid.worst(&view, |r| Some(of(r)));
        worst.map_or(0.0, |w| w.badness)
    };
    let linkage = model.linkage(side);
    let contact = linkage.pose(0.0, 0.0).map(|p| p.contact.y);
    let on_rack = view.rack_end.is_some();
    let fastening = Fastening::of(&there.front.rack_end).filter(|_| on_rack);
    Ok(RideHeightRow {
        by: raise.by,
        tie_rod_angle: view.rack_end.map(|_| most(|r| r.rod_angle)),
        inner_swivel: most(|r| r.inner_swivel),
        outer_swivel: most(|r| r.outer_swivel),
        toe_change: AxleStudy::travel_curve(&model, side).score.largest,
        rack_end_factor: fastening.and_then(|f| factor_on(&view, &grid, &f)),
        camber: as_it_comes.linkage(side).corner().wheel.camber,
        half_track: contact.unwrap_or(linkage.corner().wheel.centre.y),
    })
}
