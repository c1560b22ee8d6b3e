//! Build error: thousands of builds made up and swept beside the window, fewer of them while something is dragged.

use egui::Context;
use trammel_geometry::Corner;
use trammel_tuning::{
    Hardpoint, Scatter, ScatterRequest, Spread, Stations, Tolerance, default_tolerances, scatter,
};

use super::{
    background::Background,
    settings::{Makings, Part},
};

/// Builds after a drag and during it.
const BUILDS: [usize; 2] = [4000, 250];
const SEED: u32 = 1;

type Made = (ScatterRequest, Result<Scatter, String>);

/// Scatter with the worker that makes it.
#[derive(Default)]
pub(crate) struct ScatterWork {
    worker: Option<Background<ScatterRequest, Made>>,
    asked: Option<ScatterRequest>,
    shown: Option<Made>,
}

impl ScatterWork {
    /// Asks for the scatter of a corner where it is not known yet, and takes what has come.
    pub(crate) fn go_on(
        &mut self,
        ctx: &Context,
        corner: &Corner,
        stations: Stations,
        makings: &Makings,
        limit: f64,
        held: bool,
    ) {
        if self.worker.is_none() {
            self.worker = Background::start("build error", ctx, |request: ScatterRequest| {
                let result = scatter(&request).map_err(|fault| fault.to_string());
                (request, result)
            });
        }
        let Some(worker) = &self.worker else { return };
        if let Some(came) = worker.newest() {
            self.shown = Some(came);
        }
        let [full, coarse] = BUILDS;
        let request = ScatterRequest {
            corner: *corner,
            tolerances: tolerances(makings),
            stations,
            builds: if held { coarse } else { full },
            seed: SEED,
            limit,
            threads: if held {
                1
            } else {
                std::thread::available_parallelism().map_or(1, |n| n.get().min(4))
            },
        };
        // While something is dragged the next is asked for when the last has come.
        let busy = held && self.asked.is_some() && !self.is_current();
        if !busy && self.asked.as_ref() != Some(&request) {
            worker.hand_in(request.clone());
            self.asked = Some(request);
        }
    }

    /// The newest scatter, and how many builds it has.
    pub(crate) fn shown(&self) -> Option<(usize, &Result<Scatter, String>)> {
        self.shown
            .as_ref()
            .map(|(request, result)| (request.builds, result))
    }

    /// Whether what is shown is of the build as it stands.
    pub(crate) fn is_current(&self) -> bool {
        self.shown
            .as_ref()
            .is_some_and(|(request, _)| self.asked.as_ref() == Some(request))
    }
}

/// Each coordinate evenly within what its part's way of making allows.
fn tolerances(makings: &Makings) -> Vec<Tolerance> {
    let mut all = default_tolerances(Spread::Even(0.0));
    for t in &mut all {
        t.spread = Spread::Even(makings.of(part(t.coordinate.point)).error());
    }
    all
}

fn part(point: Hardpoint) -> Part {
    match point {
        Hardpoint::UpperFrontPivot
        | Hardpoint::UpperRearPivot
        | Hardpoint::LowerFrontPivot
        | Hardpoint::LowerRearPivot => Part::Pivots,
        Hardpoint::TieRodInner => Part::Inner,
        Hardpoint::UpperBallJoint
        | Hardpoint::LowerBallJoint
        | Hardpoint::TieRodOuter
        | Hardpoint::WheelCentre => Part::Upright,
    }
}
