//! Ride height: what raising or lowering the frame does, worked out beside the window by the engine that `trammel lift` has too.

use egui::Context;
use trammel_analysis::{
    LiftVerdict, Raise, RideHeightRow, ThreadRow, ride_heights, thread_comparison_raised,
};
use trammel_build::{AxleName, Build, Side, TravelRange, defaults};

use crate::background::Background;
use crate::terms::{self, Term};

/// Heights looked at.
const HEIGHTS: usize = 17;
/// The study goes this far towards either stop.
const PART: f64 = 0.75;
/// A smaller lift is none, mm.
pub(crate) const LEAST: f64 = 0.1;

/// What the study shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LiftFigure {
    /// Largest toe change over the travel, degrees.
    Toe,
    /// Steepest tie rod against the rack, degrees.
    RodAngle,
    /// Rack end's factor at the worst pose.
    RackEnd,
    /// Worst swivel of the tie rod's joints, degrees.
    Swivel,
    /// Camber as it comes, before it is set again, degrees.
    Camber,
    /// From the centre plane to the contact point, mm.
    HalfTrack,
}

impl LiftFigure {
    /// In the order of the list.
    pub const ALL: [Self; 6] = [
        Self::Toe,
        Self::RackEnd,
        Self::RodAngle,
        Self::Swivel,
        Self::Camber,
        Self::HalfTrack,
    ];

    /// Its name on the screen.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Toe => "Largest toe change",
            Self::RodAngle => "Tie-rod angle",
            Self::RackEnd => "Rack-end factor",
            Self::Swivel => "Worst joint swivel",
            Self::Camber => "Camber as it comes",
            Self::HalfTrack => "Half-track",
        }
    }

    /// What it is.
    #[must_use]
    pub fn term(self) -> Term {
        match self {
            Self::Toe => terms::LARGEST_TOE_CHANGE,
            Self::RodAngle => terms::TIE_ROD_ANGLE,
            Self::RackEnd => terms::RACK_END_FACTOR,
            Self::Swivel => terms::JOINT_SWIVEL,
            Self::Camber => terms::CAMBER,
            Self::HalfTrack => terms::HALF_TRACK,
        }
    }

    /// What is particular about it here.
    #[must_use]
    pub fn here(self) -> &'static str {
        match self {
            Self::Toe => "Rack at centre, static toe set again.",
            Self::RodAngle => "The steepest over travel and lock.",
            Self::RackEnd => "Under the build's hit.",
            Self::Swivel => "The worse of the tie rod's joints.",
            Self::Camber => "As it comes at the new height, before it is set again.",
            Self::HalfTrack => "",
        }
    }

    /// The figure of a row: degrees, a factor, or mm.
    pub(crate) fn of(self, row: &RideHeightRow) -> Option<f64> {
        match self {
            Self::Toe => Some(row.toe_change.to_degrees()),
            Self::RodAngle => row.tie_rod_angle.map(f64::to_degrees),
            Self::RackEnd => row.rack_end_factor,
            Self::Swivel => Some(row.inner_swivel.max(row.outer_swivel).to_degrees()),
            Self::Camber => Some(row.camber.to_degrees()),
            Self::HalfTrack => Some(row.half_track),
        }
    }
}

/// What is asked: a build, a corner of it with its stops, and the lift looked at.
#[derive(Clone, Debug, PartialEq)]
struct Ask {
    build: Build,
    corner: (AxleName, Side),
    travel: TravelRange,
    raise: Raise,
    /// Whether threads are compared too.
    threads: bool,
}

impl Ask {
    /// Whether the range of lifts comes out the same.
    fn same_range(&self, other: &Self) -> bool {
        let how = |a: &Self| (a.raise.reset, a.raise.stops);
        how(self) == how(other)
            && (self.corner, self.travel) == (other.corner, other.travel)
            && self.build == other.build
    }
}

/// The study over a range of lifts.
#[derive(Clone, Debug, Default)]
pub(crate) struct LiftStudy {
    /// Lowest frame first; lifts that can't be made are left out.
    pub rows: Vec<RideHeightRow>,
    /// The build as it stands.
    pub now: Option<RideHeightRow>,
    /// With the lift looked at, or why it can't be made.
    pub then: Option<Result<RideHeightRow, String>>,
    /// Threads side by side for the corner's rack end with that lift, where they were asked for, under the load that is worst for it there; none where it can't be made or there is nothing to compare.
    pub threads: Vec<ThreadRow>,
}

impl LiftStudy {
    fn of(ask: &Ask, before: Option<&(Ask, Self)>) -> Self {
        let row = |by: f64| ride_heights(&ask.build, ask.corner, &[by], &ask.raise).pop();
        let then = row(ask.raise.by).map(|r| r.map_err(|fault| fault.to_string()));
        // Why a lift can't be made is said with its figures.
        let compared =
            || thread_comparison_raised(&ask.build, &ask.raise, ask.corner.1).unwrap_or_default();
        let threads = if ask.threads { compared() } else { Vec::new() };
        if let Some((_, old)) = before.filter(|(old, _)| old.same_range(ask)) {
            return Self {
                then,
                threads,
                ..old.clone()
            };
        }
        let [low, high] = [-PART * ask.travel.bump, -PART * ask.travel.droop];
        let lift = |i: usize| low + (high - low) * i as f64 / (HEIGHTS - 1) as f64;
        let lifts: Vec<f64> = (0..HEIGHTS).map(lift).collect();
        Self {
            rows: ride_heights(&ask.build, ask.corner, &lifts, &ask.raise)
                .into_iter()
                .flatten()
                .collect(),
            now: row(0.0).and_then(Result::ok),
            then,
            threads,
        }
    }

    /// The lift looked at, or the highest one where none is, held against the build as it stands.
    pub(crate) fn verdict(&self, build: &Build) -> Option<LiftVerdict> {
        let limit = build.limits.toe_change_deg;
        let limit = limit.unwrap_or(defaults::TOE_CHANGE_LIMIT_DEG).to_radians();
        let chosen = self.then.as_ref().and_then(|r| r.as_ref().ok());
        let after = chosen.filter(|r| r.by.abs() > LEAST).or(self.rows.last())?;
        Some(LiftVerdict::of(self.now.as_ref()?, after, limit))
    }
}

/// The study with its worker.
#[derive(Default)]
pub(crate) struct LiftWork {
    worker: Option<Background<Ask, (Ask, LiftStudy)>>,
    asked: Option<Ask>,
    shown: Option<(Ask, LiftStudy)>,
}

impl LiftWork {
    /// Asks for the study of a build where it is not known yet, and takes what has come.
    pub(crate) fn go_on(
        &mut self,
        ctx: &Context,
        build: &Build,
        corner: (AxleName, Side),
        (raise, threads): (&Raise, bool),
    ) {
        if self.worker.is_none() {
            let mut before: Option<(Ask, LiftStudy)> = None;
            self.worker = Background::start("ride height", ctx, move |ask: Ask| {
                let study = LiftStudy::of(&ask, before.as_ref());
                before.insert((ask, study)).clone()
            });
        }
        let Some(worker) = &self.worker else { return };
        self.shown = worker.newest().or(self.shown.take());
        let known = self.asked.as_ref().is_some_and(|a| {
            a.build == *build && (a.corner, a.raise, a.threads) == (corner, *raise, threads)
        });
        let model = (!known).then(|| build.axle(corner.0).ok()).flatten();
        if let Some(model) = model {
            let ask = Ask {
                build: build.clone(),
                corner,
                travel: model.travel,
                raise: *raise,
                threads,
            };
            worker.hand_in(ask.clone());
            self.asked = Some(ask);
        }
    }

    /// The newest study.
    pub(crate) fn shown(&self) -> Option<&LiftStudy> {
        self.shown.as_ref().map(|(_, study)| study)
    }

    /// Whether what is shown is of the build as it stands.
    pub(crate) fn is_current(&self) -> bool {
        self.shown
            .as_ref()
            .is_some_and(|(ask, _)| self.asked.as_ref() == Some(ask))
    }
}
