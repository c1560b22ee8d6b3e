//! The Tune stage: where the tie rod's joints belong, how exactly it must be built, and what else would do.
//!
//! | where | what |
//! |---|---|
//! | [`settings`] | what is asked for |
//! | `map`, `lattice`, `picture`, [`ramp`] | the toe map, its level lines, its picture and its colours |
//! | `loupe`, `hint`, `table`, `overlay`, `rule_ink` | what is on the drawing table |
//! | `advice`, `reasons`, `moves` | the best spot, why toe changes, turns and washers |
//! | `scatter` | build error |
//! | `plane` | the planes of the map and the views that show them |
//! | `clear`, `inside`, `inside_exact` | where rack end and joint keep within their limits and no keep-out is in the way; the best place there |
//! | `keep_outs`, `bolts` | changes of keep-outs; what the joints' bolts see |
//! | [`auto`] | automatic tuning |
//! | [`lift`], [`what_if`] | ride height; rack height, lift and arm lengths tried out |
//! | `points` | from the kernel's corner back to a build's points |
//!
//! What is worked out here depends on the build and on what is asked for, and is never saved.

pub(crate) mod advice;
pub mod auto;
mod bolts;
pub(crate) mod clear;
pub(crate) mod hint;
mod inside;
mod inside_exact;
pub(crate) mod keep_outs;
mod lattice;
pub mod lift;
pub(crate) mod loupe;
pub(crate) mod map;
pub(crate) mod moves;
mod overlay;
mod picture;
pub(crate) mod plane;
pub(crate) mod points;
pub mod ramp;
mod reasons;
mod rule_ink;
mod scatter;
pub mod settings;
mod table;
pub mod what_if;

use egui::Context;
use trammel_analysis::{AxleStudy, rack_end_thread, rod_per_turn};
use trammel_build::{AxleName, Build, PointRef};
use trammel_tuning::Stations;

use crate::{tokens::Tokens, view::View};
use advice::{Advice, Adviser, Question};
use auto::SearchRun;
use bolts::BoltWork;
use clear::{Ask, Clear, ClearWork};
use inside::Inside;
use inside_exact::ExactWork;
use lift::LiftWork;
use map::{Asked, MapWork};
use scatter::ScatterWork;
use settings::{MapRack, TunePage};
use what_if::WhatIfWork;

pub(crate) use table::{Hand, OnTable, place_in_words};

/// Wheel travels at which a place is judged.
pub(crate) const TRAVELS: usize = 21;

/// Everything that the stage has worked out.
#[derive(Default)]
pub struct Tune {
    map: MapWork,
    adviser: Adviser,
    scatter: ScatterWork,
    clear: ClearWork,
    inside: ExactWork,
    bolts: BoltWork,
    search: Option<SearchRun>,
    lift: LiftWork,
    what_if: WhatIfWork,
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
        let corner = axle.model.linkage(view.side).corner();
        let settings = &view.tune;
        let question = Question {
            corner: *corner,
            joint: settings.joint,
            scoring: settings.scoring,
            ways: settings.ways.ways(settings.plane),
            blocks: trammel_analysis::blocks(build, view.axle),
            both: settings.both,
            locked: advice::locked(build, view.axle),
            stations: stations.clone(),
            unit: build.unit,
            // A thread that isn't known is said where it is typed; a millimetre stands for it.
            turns: [
                rack_end_thread(build).map(|t| t.pitch()),
                rod_per_turn(build),
            ]
            .map(|turn| turn.unwrap_or(1.0)),
        };
        let advice = self.adviser.ask(ctx, question, held);
        let best = advice.places(settings.joint).map(|(exact, _)| exact);
        self.clear.keep_out_of(&build.keep_outs);
        // A drag has the processor to itself, but for a coarse scatter.
        if settings.clear_area && !held && self.map.is_complete() {
            let ask = Ask {
                build: build.clone(),
                axle: view.axle,
                side: view.side,
                corner: *corner,
                joint: settings.joint,
                plane: self.map.plane(),
                corners: self.map.corners(),
            };
            self.clear.go_on(ctx, ask);
        }
        let asked = Asked {
            corner,
            joint: settings.joint,
            plane: settings.plane,
            stations: &stations,
            scoring: settings.scoring,
            factor: hint::factor(settings.scoring, build.unit),
            width: settings.map_width,
            clear: self
                .clear
                .shown(self.map.plane(), self.map.corners())
                .filter(|_| settings.clear_area),
            clear_edition: self.clear.edition(),
            best,
            held,
        };
        self.map.go_on(ctx, &asked, tokens);
        let limit = build
            .limits
            .toe_change_deg
            .unwrap_or(trammel_build::defaults::TOE_CHANGE_LIMIT_DEG);
        if let Some(centre) = stations_at(axle, vec![0.0]) {
            let made = scatter::Made {
                corner,
                tolerances: trammel_analysis::tolerances(build, view.axle, view.side),
                limit: limit.to_radians(),
            };
            self.scatter.go_on(ctx, made, centre, held);
        }
        if settings.page == TunePage::WhatIf {
            let ask = what_if::Ask {
                build: build.clone(),
                axle: view.axle,
                side: view.side,
                what: settings.what_if,
                along: settings.along,
                how: settings.raise,
            };
            self.what_if.go_on(ctx, ask);
        }
        if settings.page == TunePage::RideHeight && !held {
            let of = (view.axle, view.side);
            let threads = settings.lift_threads && view.axle == AxleName::Front;
            self.lift.go_on(ctx, build, of, (&settings.raise, threads));
        }
        if settings.page == settings::TunePage::InTheWay && !held {
            self.bolts.go_on(build, axle);
            self.look_inside(ctx, corner, &stations, settings);
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
        self.clear.shown(self.map.plane(), self.map.corners())
    }

    /// Whether the clear area is that of the build and the map as they stand.
    #[must_use]
    pub fn clear_is_current(&self) -> bool {
        self.clear.is_current() && self.clear().is_some()
    }

    /// What forbids a place of the map, one line each; `None` until it is known.
    #[must_use]
    pub fn blocks_at(&self, place: trammel_geometry::Point) -> Option<Vec<String>> {
        let part = self.map.part_of(place);
        Some(self.clear()?.blocks(part).words())
    }

    /// What forbids the place where the mapped joint is, one line each; `None` until the clear area is known.
    #[must_use]
    pub fn blocks_here(
        &self,
        joint: trammel_tuning::TieRodJoint,
        place: trammel_geometry::Point,
        look: &trammel_analysis::QuickLook,
    ) -> Option<Vec<String>> {
        Some(self.clear()?.blocks_here(joint, place, look).words())
    }

    /// The best place inside the clear area; `None` where no place is clear or that is not known.
    pub(crate) fn inside(&self, unit: trammel_build::LengthUnit) -> Option<Inside> {
        Inside::of(&self.map, self.clear()?, unit)
    }

    /// Goes on with the exact place inside the clear area, once that area is known.
    fn look_inside(
        &mut self,
        ctx: &Context,
        corner: &trammel_geometry::Corner,
        stations: &Stations,
        settings: &settings::TuneView,
    ) {
        if !self.clear_is_current() {
            return;
        }
        let Some(clear) = self.clear().cloned() else {
            return;
        };
        let ask = inside_exact::Ask {
            corner: *corner,
            joint: settings.joint,
            scoring: settings.scoring,
            stations: stations.clone(),
            plane: self.map.plane(),
            corners: self.map.corners(),
            clear,
            edition: self.clear.edition(),
        };
        self.inside.go_on(ctx, ask);
    }

    /// Whether the exact best place inside the clear area is that of the map as it stands.
    #[must_use]
    pub fn inside_is_current(&self) -> bool {
        self.clear_is_current() && self.inside.is_current()
    }

    /// The exact best place inside the clear area, corner's own frame, mm, with its score in the kernel's unit.
    pub(crate) fn inside_exactly(&self) -> Option<inside_exact::Found> {
        self.inside.shown()
    }

    /// What the joints' bolts see.
    pub(crate) fn bolts(&self) -> Option<&[trammel_analysis::BoltStudy; 2]> {
        self.bolts.shown()
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

    /// What would be, as the sliders have it.
    pub(crate) fn what_if(&self) -> Option<&what_if::Looked> {
        self.what_if.shown()
    }

    /// Whether what the sliders try out is worked out.
    #[must_use]
    pub fn what_if_is_current(&self) -> bool {
        self.what_if.is_current()
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
            self.search = Some(SearchRun::start(
                ctx,
                build,
                axle,
                view.side,
                &view.tune.auto,
            )?);
        } else if let Some(search) = &self.search {
            search.stop();
        }
        Ok(())
    }

    /// The layout that is to be shown on the drawing.
    pub(crate) fn previewed(&self, view: &View) -> Option<trammel_geometry::Corner> {
        match view.tune.page {
            TunePage::Automatic => {
                let search = self
                    .search
                    .as_ref()
                    .filter(|s| (s.axle, s.side) == (view.axle, view.side))?;
                let wanted = view.tune.preview?;
                let shown = search.shown();
                let layout = shown.solutions.get(wanted)?;
                Some(*view.tune.form.corner(layout))
            }
            TunePage::WhatIf if !view.tune.what_if.is_nothing() => {
                let (corner, _) = self.what_if()?.now.as_ref().ok()?;
                Some(*corner)
            }
            _ => None,
        }
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

/// Whether the two sides of an axle are mirror images of each other.
pub(crate) fn sides_are_alike(build: &Build, axle: AxleName) -> bool {
    build.axle_spec(axle).is_none_or(|a| a.right.is_empty())
}

/// The mapped joint.
pub(crate) fn mapped_point(view: &View) -> PointRef {
    PointRef {
        axle: view.axle,
        side: view.side,
        point: settings::point_of(view.tune.joint),
    }
}
