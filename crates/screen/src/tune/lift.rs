//! Ride height: what raising or lowering the frame does, and the edits that do it.

use egui::Context;
use trammel_analysis::{AxleStudy, QuickLook, Study};
use trammel_build::{AxleName, Build, Edit, TravelSpec};
use trammel_geometry::{Corner, Linkage, Vector, Walk};
use trammel_tuning::{Lifted, Reset, Stations, ToeCurves, lifted};

use super::{background::Background, clear::unlocked, points};

/// Heights looked at.
const HEIGHTS: usize = 17;
/// The study goes this far towards either stop.
const PART: f64 = 0.75;
const TRAVELS: usize = 21;
/// Rounds and tolerance of the search for the travel that gives a lift, mm.
const ROUNDS: usize = 30;
const CLOSE: f64 = 1e-9;

/// What the study shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LiftFigure {
    /// Largest toe change over the travel, degrees.
    Toe,
    /// Steepest tie rod in the front view over the travel, degrees.
    RodAngle,
    /// Rack end's factor at the worst pose.
    RackEnd,
    /// Worst swivel of the tie rod's inner joint, degrees.
    Swivel,
    /// Camber as it comes, before it is set again, degrees.
    Camber,
    /// Half-track change, mm.
    HalfTrack,
}

impl LiftFigure {
    /// In the order of the chips.
    pub const ALL: [Self; 6] = [
        Self::Toe,
        Self::RodAngle,
        Self::RackEnd,
        Self::Swivel,
        Self::Camber,
        Self::HalfTrack,
    ];

    /// Its name on the chip.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Toe => "Toe change",
            Self::RodAngle => "Rod angle",
            Self::RackEnd => "Rack end",
            Self::Swivel => "Swivel",
            Self::Camber => "Camber",
            Self::HalfTrack => "Half-track",
        }
    }

    /// What it is.
    #[must_use]
    pub fn meaning(self) -> &'static str {
        match self {
            Self::Toe => {
                "Largest toe change over the travel between the same stops, static toe set again."
            }
            Self::RodAngle => {
                "Steepest tie rod against the rack in the front view over the travel."
            }
            Self::RackEnd => {
                "Factor of the rack end against yield under the build's hit, at the worst of travel and lock."
            }
            Self::Swivel => {
                "Worst swivel of the tie rod's inner joint over travel and lock, from its direction at the new height."
            }
            Self::Camber => {
                "Camber as it comes at the new height, before it is set again. Negative: top leaning inboard."
            }
            Self::HalfTrack => "How far the tyre's contact point moves outboard.",
        }
    }
}

/// Figures of one height, kernel units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Height {
    /// How much the frame rises, mm.
    pub lift: f64,
    toe: f64,
    rod_angle: f64,
    rack_end: Option<f64>,
    swivel: f64,
    camber: f64,
    half_track: f64,
}

impl Height {
    /// One figure: degrees, a factor, or mm.
    pub(crate) fn get(&self, figure: LiftFigure) -> Option<f64> {
        match figure {
            LiftFigure::Toe => Some(self.toe.to_degrees()),
            LiftFigure::RodAngle => Some(self.rod_angle.to_degrees()),
            LiftFigure::RackEnd => self.rack_end,
            LiftFigure::Swivel => Some(self.swivel.to_degrees()),
            LiftFigure::Camber => Some(self.camber.to_degrees()),
            LiftFigure::HalfTrack => Some(self.half_track),
        }
    }
}

type Ask = (Build, AxleName);

/// The study with its worker.
#[derive(Default)]
pub(crate) struct LiftWork {
    worker: Option<Background<Ask, (Ask, Vec<Height>)>>,
    asked: Option<Ask>,
    shown: Option<(Ask, Vec<Height>)>,
}

impl LiftWork {
    /// Asks for the study of a build where it is not known yet, and takes what has come.
    pub(crate) fn go_on(&mut self, ctx: &Context, build: &Build, axle: AxleName) {
        if self.worker.is_none() {
            self.worker = Background::start("ride height", ctx, |ask: Ask| {
                let heights = study(&ask.0, ask.1);
                (ask, heights)
            });
        }
        let Some(worker) = &self.worker else { return };
        self.shown = worker.newest().or(self.shown.take());
        let known = self
            .asked
            .as_ref()
            .is_some_and(|(b, a)| b == build && *a == axle);
        if !known {
            let ask = (build.clone(), axle);
            worker.hand_in(ask.clone());
            self.asked = Some(ask);
        }
    }

    /// The newest study of this axle, lowest frame first.
    pub(crate) fn shown(&self, axle: AxleName) -> &[Height] {
        self.shown
            .as_ref()
            .filter(|((_, a), _)| *a == axle)
            .map_or(&[], |(_, heights)| heights)
    }

    /// Whether what is shown is of the build as it stands.
    pub(crate) fn is_current(&self) -> bool {
        self.shown
            .as_ref()
            .is_some_and(|(ask, _)| self.asked.as_ref() == Some(ask))
    }
}

fn study(build: &Build, name: AxleName) -> Vec<Height> {
    let Ok(model) = build.axle(name) else {
        return Vec::new();
    };
    let (low, high) = (PART * model.travel.droop, PART * model.travel.bump);
    let build = unlocked(build);
    let travel = |i: usize| high + (low - high) * i as f64 / (HEIGHTS - 1) as f64;
    (0..HEIGHTS)
        .filter_map(|i| height(&build, name, &model.axle.left, travel(i), model.travel))
        .collect()
}

fn height(
    build: &Build,
    name: AxleName,
    linkage: &Linkage,
    travel: f64,
    range: trammel_build::TravelRange,
) -> Option<Height> {
    let up = lifted(linkage, travel, Reset::ToeAndCamber).ok()?;
    let there = Linkage::new(&up.corner).ok()?;
    let (droop, bump) = (range.droop - up.travel_shift, range.bump - up.travel_shift);
    let stations = Stations::even(droop, bump, TRAVELS, vec![0.0]).ok()?;
    let curves = ToeCurves::of(&there, &stations).ok()?;
    let mut walk = Walk::new(&there, 0.0).ok()?;
    let mut rod_angle = 0.0_f64;
    for t in stations.travels() {
        rod_angle = rod_angle.max(
            there
                .measures(&walk.pose(*t).ok()?)
                .tie_rod_angle_front
                .abs(),
        );
    }
    let pose = linkage.pose(travel, 0.0).ok()?;
    let before = linkage.pose(0.0, 0.0).ok()?;
    let look = edits_of(build, name, linkage.corner(), &up)
        .iter()
        .try_fold(build.clone(), |b, edit| edit.apply(&b).ok())
        .and_then(|b| Some(QuickLook::of(&b, &b.axle(name).ok()?)));
    Some(Height {
        lift: up.frame_shift.z,
        toe: curves.score().largest,
        rod_angle,
        rack_end: look.and_then(|l| l.rack_end_factor),
        swivel: look?.inner_swivel,
        camber: linkage.measures(&pose).camber,
        half_track: pose.contact.y - before.contact.y,
    })
}

/// The edits that put an axle at its new height: points, and the travel where the build says it.
fn edits_of(build: &Build, name: AxleName, before: &Corner, up: &Lifted) -> Vec<Edit> {
    let mut edits = vec![points::edit(build, name, before, &up.corner, points::EXACT)];
    let spec = build.axle_spec(name);
    if let Some(travel) = spec.and_then(|s| s.travel) {
        let shift = build.unit.from_mm(up.travel_shift);
        let round = |v: f64| (v * points::EXACT).round() / points::EXACT;
        let travel = TravelSpec {
            bump: round(travel.bump - shift),
            droop: round(travel.droop + shift),
        };
        edits.push(Edit::SetTravel(name, Some(travel)));
    }
    edits
}

/// The edits that raise the frame by `lift` mm on all axles, static toe and camber set again, the stops where they were.
///
/// # Errors
/// In words, why it can't be done.
pub(crate) fn edits(build: &Build, study: &Study, lift: f64) -> Result<Vec<Edit>, String> {
    let axles = [Some(&study.front), study.rear.as_ref()];
    let own = |a: &&AxleStudy| {
        build
            .axle_spec(a.model.name)
            .is_some_and(|s| !s.right.is_empty())
    };
    if axles.into_iter().flatten().any(|a| own(&a)) {
        return Err("The right side has points of its own, which a new ride height would not move: mirror them first.".to_owned());
    }
    let mut edits = Vec::new();
    let mut along = None;
    for axle in axles.into_iter().flatten() {
        let linkage = &axle.model.axle.left;
        let mut up = raised(linkage, lift)?;
        // One frame: what the front wheels' path shifts it by along x counts for all axles.
        let by = Vector::new(
            *along.get_or_insert(up.frame_shift.x) - up.frame_shift.x,
            0.0,
            0.0,
        );
        up.corner = up.corner.map(|p| p + by, |v| v);
        edits.extend(edits_of(build, axle.model.name, linkage.corner(), &up));
    }
    Ok(edits)
}

/// The corner with its frame higher by `lift` mm: the wheel travel for it is found by secants.
fn raised(linkage: &Linkage, lift: f64) -> Result<Lifted, String> {
    let at = |travel: f64| {
        lifted(linkage, travel, Reset::ToeAndCamber).map_err(|fault| fault.to_string())
    };
    let (mut t0, mut f0) = (0.0, -lift);
    let mut t1 = -lift;
    for _ in 0..ROUNDS {
        let up = at(t1)?;
        let f1 = up.frame_shift.z - lift;
        if f1.abs() < CLOSE || t1 == t0 {
            return Ok(up);
        }
        let next = t1 - f1 * (t1 - t0) / (f1 - f0);
        (t0, f0, t1) = (t1, f1, next);
        if !t1.is_finite() {
            break;
        }
    }
    Err(format!(
        "No wheel travel was found that raises the frame by {lift:.1} mm."
    ))
}
