//! The Tune stage: where the tie rod's joints belong, how exactly it must be built, and what else would do.
//!
//! | where | what |
//! |---|---|
//! | [`settings`] | what is asked for |
//! | `map`, `lattice`, `picture`, `ramp` | the toe map, its level lines, its picture and its colours |
//! | `loupe`, `hint`, `table` | what is on the drawing table |
//! | `advice`, `moves` | the best spot, the reasons, turns and washers |
//! | `scatter` | build error |
//! | `clear` | where rack end and joint keep within their limits |
//! | [`auto`] | automatic tuning |
//! | [`lift`] | ride height |
//! | `points` | from the kernel's corner back to a build's points |
//! | `background` | threads for work that would hold a frame up |
//!
//! What is worked out here depends on the build and on what is asked for, and is never saved.

pub(crate) mod advice;
pub mod auto;
pub(crate) mod background;
pub(crate) mod clear;
pub(crate) mod hint;
mod lattice;
pub mod lift;
pub(crate) mod loupe;
pub(crate) mod map;
pub(crate) mod moves;
mod picture;
pub(crate) mod points;
mod ramp;
mod scatter;
pub mod settings;
mod table;

use egui::Context;
use trammel_analysis::AxleStudy;
use trammel_build::{Build, PointRef, Side};
use trammel_tuning::Stations;

use crate::{tokens::Tokens, view::View};
use advice::{Advice, Adviser, Question};
use auto::SearchRun;
use clear::{Ask, Clear, ClearWork};
use lift::LiftWork;
use map::{Asked, MapWork};
use scatter::ScatterWork;
use settings::MapRack;

pub(crate) use table::{Hand, OnTable};

/// Wheel travels at which a place is judged.
const TRAVELS: usize = 21;

/// Everything that the stage has worked out.
#[derive(Default)]
pub struct Tune {
    map: MapWork,
    adviser: Adviser,
    scatter: ScatterWork,
    clear: ClearWork,
    search: Option<SearchRun>,
    lift: LiftWork,
    clear_edition: u64,
    hand: Hand,
}

impl Tune {
    /// Goes on with whatever the stage shows, a few milliseconds of it.
    pub(crate) fn go_on(
        &mut self,
        ctx: &Context,
        build: &Build,
        axle: &AxleStudy,
        view: &View,
        tokens: &Tokens,
        held: bool,
    ) {
        let Some(stations) = stations(axle, view) else {
            return;
        };
        let corner = axle.model.axle.left.corner();
        let settings = &view.tune;
        let question = Question {
            corner: *corner,
            joint: settings.joint,
            scoring: settings.scoring,
            ways: settings.ways,
            stations: stations.clone(),
            unit: build.unit,
            pitch: advice::pitch(build),
        };
        let advice = self.adviser.ask(ctx, question, held);
        let best = advice.places(settings.joint).map(|(exact, _)| exact);
        // A drag has the processor to itself, but for a coarse scatter.
        if settings.clear_area && !held && self.map.is_complete() {
            let ask = Ask {
                build: build.clone(),
                axle: view.axle,
                corner: *corner,
                joint: settings.joint,
                corners: self.map.corners(),
            };
            if self.clear.go_on(ctx, ask) {
                self.clear_edition += 1;
            }
        }
        let asked = Asked {
            corner,
            joint: settings.joint,
            stations: &stations,
            scoring: settings.scoring,
            factor: hint::factor(settings.scoring, build.unit),
            width: settings.map_width,
            clear: self
                .clear
                .shown(self.map.corners())
                .filter(|_| settings.clear_area),
            clear_edition: self.clear_edition,
            best,
            held,
        };
        self.map.go_on(ctx, &asked, tokens);
        let limit = build
            .limits
            .toe_change_deg
            .unwrap_or(trammel_build::defaults::TOE_CHANGE_LIMIT_DEG);
        if let Some(centre) = stations_at(axle, vec![0.0]) {
            self.scatter.go_on(
                ctx,
                corner,
                centre,
                &settings.makings,
                limit.to_radians(),
                held,
            );
        }
        if settings.page == settings::TunePage::RideHeight && !held {
            self.lift.go_on(ctx, build, view.axle);
        }
    }

    /// What is told about the joint, once asked.
    pub(crate) fn advice(&self) -> Option<&Advice> {
        self.adviser.last()
    }

    /// Whether the map is worked out to its last cell.
    #[must_use]
    pub fn map_is_complete(&self) -> bool {
        self.map.is_complete()
    }

    /// Where the rack end and the joint keep within their limits, once known for the map that is shown.
    pub(crate) fn clear(&self) -> Option<&Clear> {
        self.clear.shown(self.map.corners())
    }

    /// What build error does.
    pub(crate) fn scatter(&self) -> &ScatterWork {
        &self.scatter
    }

    /// The study over ride heights.
    pub(crate) fn lift(&self) -> &LiftWork {
        &self.lift
    }

    /// Whether the study over ride heights is that of the build as it stands.
    #[must_use]
    pub fn lift_is_current(&self) -> bool {
        self.lift.is_current()
    }

    /// The search for layouts, under way or done.
    pub(crate) fn search(&self) -> Option<&SearchRun> {
        self.search.as_ref()
    }

    /// Starts a search, or stops the one under way.
    ///
    /// # Errors
    /// In words, why it can't be started.
    pub(crate) fn set_searching(
        &mut self,
        on: bool,
        ctx: &Context,
        build: &Build,
        axle: &AxleStudy,
        view: &View,
    ) -> Result<(), String> {
        if on {
            self.search = Some(SearchRun::start(ctx, build, axle, &view.tune.auto)?);
        } else if let Some(search) = &self.search {
            search.stop();
        }
        Ok(())
    }

    /// The layout that is to be shown on the drawing.
    pub(crate) fn previewed(&self, view: &View) -> Option<trammel_geometry::Corner> {
        let search = self.search.as_ref().filter(|s| s.axle == view.axle)?;
        let wanted = view
            .tune
            .preview
            .filter(|_| view.tune.page == settings::TunePage::Automatic)?;
        search.shown().solutions.get(wanted).map(|s| s.exact.corner)
    }

    /// Whether a search is done, and how many layouts it has found so far.
    #[must_use]
    pub fn found(&self) -> Option<(bool, usize)> {
        let shown = self.search.as_ref()?.shown();
        Some((shown.done, shown.solutions.len()))
    }

    /// Whether the build-error figures are those of the build as it stands.
    #[must_use]
    pub fn scatter_is_current(&self) -> bool {
        self.scatter.is_current()
    }

    /// Share of builds within the limit, 0 to 1, once known.
    #[must_use]
    pub fn share_within_limit(&self) -> Option<f64> {
        let (_, result) = self.scatter.shown()?;
        result.as_ref().ok().map(|s| s.within_limit)
    }

    /// The map for the drawing.
    pub(crate) fn map(&self) -> &MapWork {
        &self.map
    }
}

/// Toe change over the travel of another corner of this axle, mm and rad; empty where it does not reach it.
pub(crate) fn preview_curve(
    corner: &trammel_geometry::Corner,
    axle: &AxleStudy,
) -> Vec<(f64, f64)> {
    let curves = stations_at(axle, vec![0.0]).and_then(|s| {
        let linkage = trammel_geometry::Linkage::new(corner).ok()?;
        let curve = trammel_tuning::ToeCurves::of(&linkage, &s)
            .ok()?
            .curves
            .into_iter()
            .next()?;
        Some(s.travels().iter().copied().zip(curve.changes).collect())
    });
    curves.unwrap_or_default()
}

/// The poses at which places are judged.
pub(crate) fn stations(axle: &AxleStudy, view: &View) -> Option<Stations> {
    let lock = axle.model.lock();
    let racks = match view.tune.racks {
        MapRack::Worst if lock > 0.0 => vec![0.0, -lock, lock],
        MapRack::Here if lock > 0.0 => vec![view.rack],
        _ => vec![0.0],
    };
    stations_at(axle, racks)
}

fn stations_at(axle: &AxleStudy, racks: Vec<f64>) -> Option<Stations> {
    let travel = axle.model.travel;
    Stations::even(travel.droop, travel.bump, TRAVELS, racks).ok()
}

/// The mapped joint.
pub(crate) fn mapped_point(view: &View) -> PointRef {
    PointRef {
        axle: view.axle,
        side: Side::Left,
        point: settings::point_of(view.tune.joint),
    }
}
