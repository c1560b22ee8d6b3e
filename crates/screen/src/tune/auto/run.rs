//! A search on a thread of its own, with its progress and what it has found so far.

use std::sync::{
    Arc, Mutex, PoisonError,
    atomic::{AtomicBool, Ordering},
};

use egui::Context;
use trammel_analysis::{AxleStudy, QuickLook};
use trammel_build::{AxleName, Build, Side};
use trammel_geometry::Corner;
use trammel_tuning::{
    Dimension, Figures, RackEndFactor, Solution, Stations, TuneRequest, Tuner, Wish,
};

use super::{AutoSettings, Row, locked};
use crate::tune::{TRAVELS, points, settings::shop_step};

/// Candidates between two looks at the stop button.
const SLICE: usize = 25;

/// What a search shows.
#[derive(Clone, Debug, Default)]
pub(crate) struct Shown {
    /// 0 to 1.
    pub part: f64,
    pub done: bool,
    pub solutions: Vec<Solution>,
    /// Figures of the corner it began with, where it has any.
    pub start: Option<Figures>,
    /// Figures of other places tried, for the picture.
    pub explored: Vec<Figures>,
    pub fault: Option<String>,
}

/// A search under way or done. Dropping it stops it.
pub(crate) struct SearchRun {
    stop: Arc<AtomicBool>,
    shown: Arc<Mutex<Shown>>,
    /// The corner it began with, where it is.
    pub corner: Corner,
    pub axle: AxleName,
    pub side: Side,
}

impl SearchRun {
    /// Starts a search for a corner of an axle. Locked moves are left out.
    ///
    /// # Errors
    /// In words, why it can't be started.
    pub(crate) fn start(
        ctx: &Context,
        build: &Build,
        axle: &AxleStudy,
        side: Side,
        settings: &AutoSettings,
    ) -> Result<Self, String> {
        let request = request(build, axle, side, settings)?;
        if request.variables.is_empty() {
            return Err(
                "Nothing may move: tick at least one thing that may and is not locked.".to_owned(),
            );
        }
        let run = Self {
            stop: Arc::default(),
            shown: Arc::default(),
            corner: request.corner,
            axle: axle.model.name,
            side,
        };
        let (stop, shown, ctx) = (run.stop.clone(), run.shown.clone(), ctx.clone());
        let factor = rack_end_factor(build, axle, side);
        std::thread::Builder::new()
            .name("automatic tuning".to_owned())
            .spawn(move || search(&request, factor, &stop, &shown, &ctx))
            .map_err(|e| format!("The search could not be started: {e}."))?;
        Ok(run)
    }

    /// Asks it to stop; what it has found stays.
    pub(crate) fn stop(&self) {
        self.stop.store(true, Ordering::Relaxed);
    }

    /// How far it has come.
    pub(crate) fn shown(&self) -> Shown {
        self.shown
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .clone()
    }
}

impl Drop for SearchRun {
    fn drop(&mut self) {
        self.stop();
    }
}

fn search(
    request: &TuneRequest,
    factor: Option<RackEndFactor>,
    stop: &AtomicBool,
    shown: &Mutex<Shown>,
    ctx: &Context,
) {
    let show = |update: &dyn Fn(&mut Shown)| {
        update(&mut shown.lock().unwrap_or_else(PoisonError::into_inner));
        ctx.request_repaint();
    };
    let mut tuner = match Tuner::new(request, factor) {
        Ok(tuner) => tuner,
        Err(fault) => {
            show(&|s| (s.done, s.fault) = (true, Some(fault.to_string())));
            return;
        }
    };
    let start = tuner.figures(&request.corner);
    show(&|s| s.start.clone_from(&start));
    loop {
        let progress = tuner.step(SLICE);
        let stopped = stop.load(Ordering::Relaxed);
        let over = progress.done || stopped;
        let solutions = tuner.solutions();
        let fault = tuner.fault().map(|f| f.to_string());
        let explored: Vec<Figures> = tuner.explored().map(|(_, f)| f.clone()).collect();
        show(&|s| {
            s.explored.clone_from(&explored);
            s.part = progress.part;
            s.done = over;
            s.solutions.clone_from(&solutions);
            s.fault.clone_from(&fault);
        });
        if over {
            return;
        }
    }
}

/// # Errors
/// In words, why it makes no sense.
fn request(
    build: &Build,
    axle: &AxleStudy,
    side: Side,
    settings: &AutoSettings,
) -> Result<TuneRequest, String> {
    let model = &axle.model;
    let lock = model.lock();
    let free = |row: &Row| {
        !locked(row.dimension, build, model.name)
            && (lock > 0.0 || row.dimension != Dimension::RackHeight || model.rack.is_none())
    };
    let step = shop_step(build.unit);
    let moves = settings.moves.iter().filter(|row| row.on && free(row));
    let wants = settings
        .wants
        .iter()
        .filter(|w| w.on && (lock > 0.0 || !w.figure.needs_rack()));
    let little_toe_change = Wish::little_toe_change().weighed(settings.toe_weight);
    let travel = model.travel;
    let travels = Stations::even(travel.droop, travel.bump, TRAVELS, vec![0.0])
        .map_err(|fault| fault.to_string())?;
    let travels = travels.travels().to_vec();
    Ok(TuneRequest {
        corner: *model.linkage(side).corner(),
        variables: moves.map(|row| row.variable(step)).collect(),
        wishes: std::iter::once(little_toe_change)
            .chain(wants.flat_map(super::Want::wishes))
            .collect(),
        weights: settings.emphasis.weights(&travels),
        travels,
        lock,
        wheelbase: build.wheelbase_mm(),
        seed: 1,
        generations: 0,
    })
}

/// The rack end's factor of a candidate, the rack rising and falling with its joint.
fn rack_end_factor(build: &Build, axle: &AxleStudy, side: Side) -> Option<RackEndFactor> {
    axle.model.rack?;
    let (build, name, corner) = (
        build.unlocked(),
        axle.model.name,
        *axle.model.linkage(side).corner(),
    );
    Some(Box::new(move |candidate: &Corner| {
        let moved = points::edit(&build, (name, side), &corner, candidate, points::EXACT)
            .apply(&build)
            .ok()?;
        QuickLook::of(&moved, &moved.axle(name).ok()?, side).rack_end_factor
    }))
}
