//! Build error: thousands of builds made up and swept beside the window, fewer of them while something is dragged.

use egui::Context;
use trammel_geometry::Corner;
use trammel_tuning::{Scatter, ScatterRequest, Stations, Tolerance, scatter};

use crate::background::Background;

/// Builds after a drag and during it.
const BUILDS: [usize; 2] = [4000, 250];
const SEED: u32 = 1;

type Swept = (ScatterRequest, Result<Scatter, String>);

/// What is built, and how exactly.
pub(crate) struct Made<'a> {
    pub corner: &'a Corner,
    pub tolerances: Vec<Tolerance>,
    /// Largest toe change that is allowed, rad.
    pub limit: f64,
}

/// Scatter with the worker that makes it.
#[derive(Default)]
pub(crate) struct ScatterWork {
    worker: Option<Background<ScatterRequest, Swept>>,
    asked: Option<ScatterRequest>,
    shown: Option<Swept>,
}

impl ScatterWork {
    /// Asks for the scatter of a corner where it is not known yet, and takes what has come.
    pub(crate) fn go_on(&mut self, ctx: &Context, made: Made<'_>, stations: Stations, held: bool) {
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
            corner: *made.corner,
            tolerances: made.tolerances,
            stations,
            builds: if held { coarse } else { full },
            seed: SEED,
            limit: made.limit,
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
