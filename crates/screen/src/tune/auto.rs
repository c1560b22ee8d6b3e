//! Automatic tuning: a search on a thread of its own, with its progress and what it has found so far.

use std::sync::{
    Arc, Mutex, PoisonError,
    atomic::{AtomicBool, Ordering},
};

use egui::Context;
use trammel_analysis::{AxleStudy, QuickLook};
use trammel_build::{AxleName, Build, Coordinate, PointName, Side};
use trammel_geometry::{Corner, Vector};
use trammel_tuning::{
    Aim, Figure, Hardpoint, RackEndFactor, Solution, TuneRequest, Tuner, Variable, Wish,
};

use super::{clear::unlocked, points, settings::shop_step};

/// Candidates between two looks at the stop button.
const SLICE: usize = 25;
const TRAVELS: usize = 21;

/// A group of points that may move together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Move {
    /// Rack and inner joints up and down.
    RackHeight,
    /// Inner joints in and out, half on each side.
    RackWidth,
    /// Outer joint up and down.
    OuterHeight,
    /// Outer joint in and out.
    OuterWidth,
    /// Outer joint fore and aft: the steering arm's length.
    OuterSetBack,
    /// Both pivots of the upper arm up and down.
    UpperPivots,
    /// Both pivots of the lower arm up and down.
    LowerPivots,
}

impl Move {
    /// In the order of the list.
    pub const ALL: [Self; 7] = [
        Self::RackHeight,
        Self::RackWidth,
        Self::OuterHeight,
        Self::OuterWidth,
        Self::OuterSetBack,
        Self::UpperPivots,
        Self::LowerPivots,
    ];

    /// Its name on the screen.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::RackHeight => "Rack height",
            Self::RackWidth => "Rack width, each side",
            Self::OuterHeight => "Outer joint, height",
            Self::OuterWidth => "Outer joint, in and out",
            Self::OuterSetBack => "Outer joint, fore and aft",
            Self::UpperPivots => "Upper arm pivots, height",
            Self::LowerPivots => "Lower arm pivots, height",
        }
    }

    fn points(
        self,
    ) -> (
        &'static [Hardpoint],
        Vector,
        &'static [PointName],
        trammel_build::Axis,
    ) {
        use trammel_build::Axis;
        match self {
            Self::RackHeight => (
                &[Hardpoint::TieRodInner],
                Vector::z(),
                &[PointName::TieRodInner],
                Axis::Z,
            ),
            Self::RackWidth => (
                &[Hardpoint::TieRodInner],
                Vector::y(),
                &[PointName::TieRodInner],
                Axis::Y,
            ),
            Self::OuterHeight => (
                &[Hardpoint::TieRodOuter],
                Vector::z(),
                &[PointName::TieRodOuter],
                Axis::Z,
            ),
            Self::OuterWidth => (
                &[Hardpoint::TieRodOuter],
                Vector::y(),
                &[PointName::TieRodOuter],
                Axis::Y,
            ),
            Self::OuterSetBack => (
                &[Hardpoint::TieRodOuter],
                Vector::x(),
                &[PointName::TieRodOuter],
                Axis::X,
            ),
            Self::UpperPivots => (
                &[Hardpoint::UpperFrontPivot, Hardpoint::UpperRearPivot],
                Vector::z(),
                &[PointName::UpperFrontPivot, PointName::UpperRearPivot],
                Axis::Z,
            ),
            Self::LowerPivots => (
                &[Hardpoint::LowerFrontPivot, Hardpoint::LowerRearPivot],
                Vector::z(),
                &[PointName::LowerFrontPivot, PointName::LowerRearPivot],
                Axis::Z,
            ),
        }
    }

    /// Whether a lock of the build holds it.
    #[must_use]
    pub fn is_locked(self, build: &Build, axle: AxleName) -> bool {
        let (_, _, names, axis) = self.points();
        names
            .iter()
            .any(|&point| build.locked.contains(&Coordinate { axle, point, axis }))
    }

    fn variable(self, within: f64) -> Variable {
        let (points, along, _, _) = self.points();
        Variable::together(points, along, -within, within)
    }
}

/// What may be wanted besides a small toe change.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Want {
    /// Toe change at either lock, at most, degrees.
    ToeAtLock,
    /// Rack end's factor, at least.
    RackEnd,
    /// Tie-rod angle, at most, degrees.
    RodAngle,
    /// Ackermann percentage, near.
    Ackermann,
    /// Turning circle, at most, m.
    TurningCircle,
    /// Camber gain, near, degrees for 100 mm.
    CamberGain,
    /// Roll-centre height, near, mm.
    RollCentre,
}

impl Want {
    /// In the order of the list.
    pub const ALL: [Self; 7] = [
        Self::ToeAtLock,
        Self::RackEnd,
        Self::RodAngle,
        Self::Ackermann,
        Self::TurningCircle,
        Self::CamberGain,
        Self::RollCentre,
    ];

    /// Its name on the screen, and the unit of its figure.
    #[must_use]
    pub fn label(self) -> (&'static str, &'static str) {
        match self {
            Self::ToeAtLock => ("Toe change at lock, at most", "°"),
            Self::RackEnd => ("Rack-end factor, at least", ""),
            Self::RodAngle => ("Tie-rod angle, at most", "°"),
            Self::Ackermann => ("Ackermann, near", "%"),
            Self::TurningCircle => ("Turning circle, at most", "m"),
            Self::CamberGain => ("Camber per 100 mm, near", "°"),
            Self::RollCentre => ("Roll centre, near", "mm"),
        }
    }

    /// Whether it needs a rack.
    #[must_use]
    pub fn needs_rack(self) -> bool {
        matches!(
            self,
            Self::ToeAtLock | Self::RackEnd | Self::Ackermann | Self::TurningCircle
        )
    }

    fn wish(self, value: f64) -> Wish {
        let degree = 1f64.to_radians();
        let (figure, aim, scale) = match self {
            Self::ToeAtLock => (
                Figure::ToeChangeAtLock,
                Aim::AtMost(value * degree),
                0.3 * degree,
            ),
            Self::RackEnd => (Figure::RackEndFactor, Aim::AtLeast(value), 0.2),
            Self::RodAngle => (
                Figure::TieRodAngle,
                Aim::AtMost(value * degree),
                2.0 * degree,
            ),
            Self::Ackermann => (Figure::Ackermann, Aim::Near(value), 10.0),
            Self::TurningCircle => (Figure::TurningCircle, Aim::AtMost(value * 1e3), 300.0),
            Self::CamberGain => (
                Figure::CamberGain,
                Aim::Near(value * degree / 100.0),
                0.5 * degree / 100.0,
            ),
            Self::RollCentre => (Figure::RollCentreHeight, Aim::Near(value), 15.0),
        };
        Wish {
            figure,
            aim,
            scale,
            weight: 1.0,
        }
    }
}

/// What the search is asked for.
#[derive(Clone, Debug, PartialEq)]
pub struct AutoSettings {
    /// What may move, and how far either way, mm.
    pub moves: Vec<(Move, bool, f64)>,
    /// What is wanted, in the units of [`Want::label`].
    pub wants: Vec<(Want, bool, f64)>,
}

impl Default for AutoSettings {
    fn default() -> Self {
        let first = |m: Move| matches!(m, Move::RackHeight | Move::RackWidth);
        let value = |w: Want| match w {
            Want::ToeAtLock => 1.0,
            Want::RackEnd => trammel_build::defaults::RACK_END_FACTOR,
            Want::RodAngle => 15.0,
            Want::Ackermann => 60.0,
            Want::TurningCircle => 6.0,
            Want::CamberGain => -1.5,
            Want::RollCentre => 80.0,
        };
        Self {
            moves: Move::ALL.map(|m| (m, first(m), 50.8)).to_vec(),
            wants: Want::ALL.map(|w| (w, false, value(w))).to_vec(),
        }
    }
}

/// What a search shows.
#[derive(Clone, Debug, Default)]
pub(crate) struct Shown {
    /// 0 to 1.
    pub part: f64,
    pub done: bool,
    pub solutions: Vec<Solution>,
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
        let request = request(build, axle, side, settings);
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
    loop {
        let progress = tuner.step(SLICE);
        let stopped = stop.load(Ordering::Relaxed);
        let over = progress.done || stopped;
        let solutions = tuner.solutions();
        let fault = tuner.fault().map(|f| f.to_string());
        show(&|s| {
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

fn request(build: &Build, axle: &AxleStudy, side: Side, settings: &AutoSettings) -> TuneRequest {
    let model = &axle.model;
    let lock = model.lock();
    let free = |m: Move| {
        !m.is_locked(build, model.name)
            && (lock > 0.0 || m != Move::RackHeight || model.rack.is_none())
    };
    let step = shop_step(build.unit);
    let variables = settings
        .moves
        .iter()
        .filter(|(m, on, within)| *on && *within > 0.0 && free(*m));
    let wants = settings
        .wants
        .iter()
        .filter(|(w, on, _)| *on && (lock > 0.0 || !w.needs_rack()));
    let toe = Wish {
        figure: Figure::ToeChange,
        aim: Aim::Near(0.0),
        scale: 0.1f64.to_radians(),
        weight: 1.0,
    };
    let travel = model.travel;
    let part = |i: usize| i as f64 / (TRAVELS - 1) as f64;
    TuneRequest {
        corner: *model.linkage(side).corner(),
        variables: variables
            .map(|(m, _, within)| m.variable(*within).in_steps(step))
            .collect(),
        wishes: std::iter::once(toe)
            .chain(wants.map(|(w, _, value)| w.wish(*value)))
            .collect(),
        travels: (0..TRAVELS)
            .map(|i| travel.droop + part(i) * (travel.bump - travel.droop))
            .collect(),
        lock,
        wheelbase: build.wheelbase_mm(),
        seed: 1,
        generations: 0,
    }
}

/// The rack end's factor of a candidate, the rack rising and falling with its joint.
fn rack_end_factor(build: &Build, axle: &AxleStudy, side: Side) -> Option<RackEndFactor> {
    axle.model.rack?;
    let (build, name, corner) = (
        unlocked(build),
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
