//! The clear area of the map: where the rack end keeps its factor and the joint its swivel, worked out beside the window on a coarse lattice.

use egui::Context;
use trammel_analysis::QuickLook;
use trammel_build::{AxleName, Build, Side, defaults};
use trammel_geometry::{Corner, Point};
use trammel_tuning::TieRodJoint;

use super::{background::Background, lattice::Lattice, points};

/// Places looked at, across and up.
const PLACES: [usize; 2] = [13, 9];

/// What is asked.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Ask {
    pub build: Build,
    pub axle: AxleName,
    pub side: Side,
    pub corner: Corner,
    pub joint: TieRodJoint,
    /// Lower inboard and upper outboard corner of the map.
    pub corners: [Point; 2],
}

/// Figures over their limits on the unit square of a map: below one the limit is passed.
#[derive(Clone, Debug)]
pub(crate) struct Clear {
    /// Rack-end factor over the wanted one.
    pub rack_end: Lattice,
    /// Swivel limit over the joint's swivel.
    pub swivel: Lattice,
}

/// The clear area with its worker.
#[derive(Default)]
pub(crate) struct ClearWork {
    worker: Option<Background<Ask, (Ask, Clear)>>,
    asked: Option<Ask>,
    shown: Option<(Ask, Clear)>,
}

impl ClearWork {
    /// Asks for the clear area where it is not known yet, and takes what has come; `true` when something has.
    pub(crate) fn go_on(&mut self, ctx: &Context, ask: Ask) -> bool {
        if self.worker.is_none() {
            self.worker = Background::start("clear area", ctx, |ask: Ask| {
                let clear = Clear::of(&ask);
                (ask, clear)
            });
        }
        let Some(worker) = &self.worker else {
            return false;
        };
        let came = worker.newest();
        let has = came.is_some();
        self.shown = came.or(self.shown.take());
        // The places do not depend on where the mapped joint is now.
        let known = self.asked.as_ref().is_some_and(|a| a.same_places(&ask));
        if !known {
            worker.hand_in(ask.clone());
            self.asked = Some(ask);
        }
        has
    }

    /// The clear area of the map that lies there, as far as it is known.
    pub(crate) fn shown(&self, corners: [Point; 2]) -> Option<&Clear> {
        self.shown
            .as_ref()
            .filter(|(ask, _)| ask.corners == corners)
            .map(|(_, clear)| clear)
    }
}

impl Ask {
    fn same_places(&self, other: &Self) -> bool {
        let place = self.corners[0];
        let rest = |ask: &Self| ask.joint.moved_to(&ask.corner, place);
        let same_build = |a: &Build, b: &Build| {
            a.limits == b.limits
                && a.hit == b.hit
                && a.vehicle == b.vehicle
                && a.front.rack_end == b.front.rack_end
        };
        self.corners == other.corners
            && self.joint == other.joint
            && self.axle == other.axle
            && self.side == other.side
            && rest(self) == rest(other)
            && same_build(&self.build, &other.build)
            && rack_height(self) == rack_height(other)
    }
}

/// Height of the rack's face above the inner joint: what stays when the rack moves with it.
fn rack_height(ask: &Ask) -> Option<[f64; 2]> {
    let face = ask.build.front.rack.face?;
    let off = face[2] - ask.build.unit.from_mm(ask.corner.tie_rod.inner.z);
    Some([face[1], (off * 1e6).round()])
}

impl Clear {
    fn of(ask: &Ask) -> Self {
        let limits = &ask.build.limits;
        let wanted = limits.rack_end_factor.unwrap_or(defaults::RACK_END_FACTOR);
        let swivel = limits
            .joint_angle_deg
            .unwrap_or(defaults::JOINT_ANGLE_LIMIT_DEG)
            .to_radians();
        let [columns, rows] = PLACES;
        let [low, high] = ask.corners;
        let (mut rack_end, mut joint) = (Vec::new(), Vec::new());
        for row in 0..rows {
            for column in 0..columns {
                let part = |i: usize, n: usize| i as f64 / (n - 1) as f64;
                let (u, v) = (part(column, columns), part(row, rows));
                let place = Point::new(
                    low.x,
                    low.y + u * (high.y - low.y),
                    low.z + v * (high.z - low.z),
                );
                let look = look(ask, place);
                let margin = |l: &QuickLook| {
                    l.rack_end_factor.map_or(f64::MAX, |f| f / wanted).min(1e3) as f32
                };
                let tilt = |l: &QuickLook| match ask.joint {
                    TieRodJoint::Inner => l.inner_swivel,
                    TieRodJoint::Outer => l.outer_swivel,
                };
                rack_end.push(look.as_ref().map_or(f32::NAN, margin));
                joint.push(
                    look.as_ref()
                        .map_or(f32::NAN, |l| (swivel / tilt(l).max(1e-6)).min(1e3) as f32),
                );
            }
        }
        Self {
            rack_end: Lattice::from_values(columns, rows, rack_end),
            swivel: Lattice::from_values(columns, rows, joint),
        }
    }

    /// Whether a place of the unit square keeps within every limit that is known there.
    pub(crate) fn keeps(&self, part: [f32; 2]) -> bool {
        // What is not known does not forbid a place.
        let past = |lattice: &Lattice| lattice.at(part) < 1.0;
        !past(&self.rack_end) && !past(&self.swivel)
    }
}

fn look(ask: &Ask, place: Point) -> Option<QuickLook> {
    let corner = ask.joint.moved_to(&ask.corner, place);
    let edit = points::edit(
        &ask.build,
        (ask.axle, ask.side),
        &ask.corner,
        &corner,
        points::EXACT,
    );
    let moved = edit.apply(&unlocked(&ask.build)).ok()?;
    let model = moved.axle(ask.axle).ok()?;
    Some(QuickLook::of(&moved, &model, ask.side))
}

/// Locks hold the user's hand, not a look at what would be.
pub(crate) fn unlocked(build: &Build) -> Build {
    Build {
        locked: std::collections::BTreeSet::new(),
        ..build.clone()
    }
}
