//! The clear area of the map: where the rack end keeps its factor, the joint its swivel, and no keep-out is in the way. Rack end and swivel are worked
//! out beside the window on a coarse lattice; keep-outs are looked at place by place.

use egui::Context;
use trammel_analysis::QuickLook;
use trammel_build::{
    AxleName, Build, KeepOut, KeepOutCorners, LengthUnit, PointName, Side, defaults,
};
use trammel_geometry::{Corner, Point};
use trammel_tuning::{Plane, TieRodJoint};

use super::{lattice::Lattice, plane, points, settings::point_of};
use crate::{background::Background, words::decimal};

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
    /// The map's plane, and its first and last place.
    pub plane: Plane,
    pub corners: [Point; 2],
}

/// What forbids the places of a map.
#[derive(Clone, Debug)]
pub(crate) struct Clear {
    /// Rack-end factor over the wanted one, on the unit square: below one the limit is passed.
    pub rack_end: Lattice,
    /// Swivel limit over the joint's swivel.
    pub swivel: Lattice,
    /// The wanted rack-end factor.
    wanted: f64,
    /// The swivel limit, degrees.
    limit: f64,
    plane: Plane,
    corners: [Point; 2],
    axle: AxleName,
    unit: LengthUnit,
    keep_outs: Vec<KeepOut>,
}

/// What forbids one place.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Blocks {
    /// Rack-end factor, and what is wanted.
    pub rack_end: Option<[f64; 2]>,
    /// Swivel of the joint and its limit, degrees.
    pub swivel: Option<[f64; 2]>,
    /// Name of the keep-out.
    pub keep_out: Option<String>,
}

/// The clear area with its worker.
#[derive(Default)]
pub(crate) struct ClearWork {
    worker: Option<Background<Ask, (Ask, Clear)>>,
    asked: Option<Ask>,
    shown: Option<(Ask, Clear)>,
    keep_outs: Vec<KeepOut>,
    edition: u64,
}

impl ClearWork {
    /// Asks for the clear area where it is not known yet, and takes what has come.
    pub(crate) fn go_on(&mut self, ctx: &Context, ask: Ask) {
        if self.worker.is_none() {
            self.worker = Background::start("clear area", ctx, |ask: Ask| {
                let clear = Clear::of(&ask);
                (ask, clear)
            });
        }
        let Some(worker) = &self.worker else { return };
        if let Some((ask, mut clear)) = worker.newest() {
            clear.keep_outs.clone_from(&self.keep_outs);
            self.shown = Some((ask, clear));
            self.edition += 1;
        }
        // The places do not depend on where the mapped joint is now.
        let known = self.asked.as_ref().is_some_and(|a| a.same_places(&ask));
        if !known {
            worker.hand_in(ask.clone());
            self.asked = Some(ask);
        }
    }

    /// Takes the keep-outs as they are now, while one is dragged too.
    pub(crate) fn keep_out_of(&mut self, keep_outs: &[KeepOut]) {
        if self.keep_outs != keep_outs {
            self.keep_outs = keep_outs.to_vec();
            self.edition += 1;
            if let Some((_, clear)) = &mut self.shown {
                clear.keep_outs.clone_from(&self.keep_outs);
            }
        }
    }

    /// Counts what has changed.
    pub(crate) fn edition(&self) -> u64 {
        self.edition
    }

    /// Whether what is shown is what was asked for last.
    pub(crate) fn is_current(&self) -> bool {
        let shown = self.shown.as_ref().map(|(ask, _)| ask);
        shown.is_some() && shown == self.asked.as_ref()
    }

    /// The clear area of the map that lies there, as far as it is known.
    pub(crate) fn shown(&self, plane: Plane, corners: [Point; 2]) -> Option<&Clear> {
        self.shown
            .as_ref()
            .filter(|(ask, _)| (ask.plane, ask.corners) == (plane, corners))
            .map(|(_, clear)| clear)
    }
}

impl Ask {
    fn same_places(&self, other: &Self) -> bool {
        (self.plane, self.corners) == (other.plane, other.corners)
            && self.joint == other.joint
            && self.axle == other.axle
            && self.side == other.side
            && self.ground() == other.ground()
    }

    /// The build without what rack end and swivel do not depend on: words, locks, keep-outs, the other axle, and where the mapped joint is now, with
    /// the rack that goes along.
    fn ground(&self) -> Build {
        let mut build = self.build.unlocked();
        build.title.clear();
        build.notes.clear();
        build.keep_outs.clear();
        build.tolerances = trammel_build::Tolerances::default();
        build.limits.toe_change_deg = None;
        let spec = match self.axle {
            AxleName::Front => {
                build.rear = None;
                Some(&mut build.front)
            }
            AxleName::Rear => build.rear.as_mut(),
        };
        let Some(spec) = spec else { return build };
        let own = match self.side {
            Side::Left => None,
            Side::Right => spec.right.get_mut(&point_of(self.joint)),
        };
        let typed = match (own, self.joint) {
            (Some(own), _) => own,
            (None, TieRodJoint::Inner) => &mut spec.tie_rod.inner,
            (None, TieRodJoint::Outer) => &mut spec.tie_rod.outer,
        };
        let [x, _, height] = *typed;
        // What of the place does not lie in the map's plane stands in its corners.
        *typed = [0.0; 3];
        if self.joint == TieRodJoint::Inner {
            let left = [&mut spec.rack.face, &mut spec.rack.bore_mouth];
            let right = [PointName::RackFace, PointName::RackBoreMouth];
            let right = spec
                .right
                .iter_mut()
                .filter(|(name, _)| right.contains(name));
            let places = left
                .into_iter()
                .flatten()
                .chain(right.map(|(_, place)| place));
            for place in places {
                // As far from the joint as it stays; below this the sums of moves differ.
                for (n, of_joint) in [(0, x), (2, height)] {
                    place[n] = ((place[n] - of_joint) * 1e6).round() / 1e6;
                }
            }
        }
        build
    }
}

impl Clear {
    fn of(ask: &Ask) -> Self {
        let limits = &ask.build.limits;
        let wanted = limits.rack_end_factor.unwrap_or(defaults::RACK_END_FACTOR);
        let limit = limits
            .joint_angle_deg
            .unwrap_or(defaults::JOINT_ANGLE_LIMIT_DEG);
        let [columns, rows] = PLACES;
        let (mut rack_end, mut swivel) = (Vec::new(), Vec::new());
        for row in 0..rows {
            for column in 0..columns {
                let part = |i: usize, n: usize| i as f64 / (n - 1) as f64;
                let at = [part(column, columns), part(row, rows)];
                let look = look(ask, plane::place(ask.plane, ask.corners, at));
                let margin = |l: &QuickLook| {
                    l.rack_end_factor.map_or(f64::MAX, |f| f / wanted).min(1e3) as f32
                };
                let ratio =
                    |l: &QuickLook| (limit / swivel_deg(l, ask.joint).max(1e-6)).min(1e3) as f32;
                rack_end.push(look.as_ref().map_or(f32::NAN, margin));
                swivel.push(look.as_ref().map_or(f32::NAN, ratio));
            }
        }
        Self {
            rack_end: Lattice::from_values(columns, rows, rack_end),
            swivel: Lattice::from_values(columns, rows, swivel),
            wanted,
            limit,
            plane: ask.plane,
            corners: ask.corners,
            axle: ask.axle,
            unit: ask.build.unit,
            keep_outs: Vec::new(),
        }
    }

    /// Whether nothing that is known forbids a place of the unit square.
    pub(crate) fn keeps(&self, part: [f32; 2]) -> bool {
        !self.is_past(part) && self.keep_out(part).is_none()
    }

    /// Whether rack end or joint is past its limit there. What is not known does not forbid a place.
    pub(crate) fn is_past(&self, part: [f32; 2]) -> bool {
        let past = |lattice: &Lattice| lattice.at(part) < 1.0;
        past(&self.rack_end) || past(&self.swivel)
    }

    /// Whether a keep-out holds a place, mm.
    pub(crate) fn holds(&self, place: Point) -> bool {
        let mut all = self.keep_outs.iter();
        all.any(|k| k.holds(self.axle, place, self.unit))
    }

    /// The keep-out that is in the way there.
    pub(crate) fn keep_out(&self, part: [f32; 2]) -> Option<&str> {
        let place = plane::place(self.plane, self.corners, part.map(f64::from));
        let held = |k: &&KeepOut| k.holds(self.axle, place, self.unit);
        self.keep_outs.iter().find(held).map(|k| k.name.as_str())
    }

    /// The keep-outs that count in the plane of the map.
    pub(crate) fn keep_outs(&self) -> impl Iterator<Item = &KeepOut> {
        let depth = plane::depth(self.plane);
        let at = self.unit.from_mm(self.corners[0][depth.index()]);
        let all = self.keep_outs.iter();
        all.filter(move |k| {
            let through = |corners: &KeepOutCorners| {
                let along = corners.along(depth);
                along.is_none_or(|[a, b]| (a.min(b)..=a.max(b)).contains(&at))
            };
            k.corners.counts_for(self.axle)
                && (through(&k.corners) || through(&k.corners.mirrored()))
        })
    }

    /// The unit of the keep-outs.
    pub(crate) fn unit(&self) -> LengthUnit {
        self.unit
    }

    /// Everything that forbids the place where the joint is, of a look at the build as it stands.
    pub(crate) fn blocks_here(&self, joint: TieRodJoint, place: Point, look: &QuickLook) -> Blocks {
        let factor = look.rack_end_factor.filter(|f| *f < self.wanted);
        let swivel = swivel_deg(look, joint);
        let held = |k: &&KeepOut| k.holds(self.axle, place, self.unit);
        Blocks {
            rack_end: factor.map(|f| [f, self.wanted]),
            swivel: (swivel > self.limit).then_some([swivel, self.limit]),
            keep_out: self.keep_outs.iter().find(held).map(|k| k.name.clone()),
        }
    }

    /// Everything that forbids a place.
    pub(crate) fn blocks(&self, part: [f32; 2]) -> Blocks {
        let factor = f64::from(self.rack_end.at(part));
        let spare = f64::from(self.swivel.at(part));
        Blocks {
            rack_end: (factor < 1.0).then_some([factor * self.wanted, self.wanted]),
            swivel: (spare < 1.0).then_some([self.limit / spare.max(1e-6), self.limit]),
            keep_out: self.keep_out(part).map(str::to_owned),
        }
    }
}

impl Blocks {
    /// In words, one for each; none where the place is clear.
    pub(crate) fn words(&self) -> Vec<String> {
        let rack_end = self.rack_end.map(|[is, wanted]| {
            // Rounded down: a factor is never shown better than it is.
            let is = (is * 10.0).floor() / 10.0;
            format!("rack end {}, wanted {}", decimal(is, 1), decimal(wanted, 1))
        });
        let swivel = self.swivel.map(|[is, limit]| {
            format!(
                "joint swivels {}°, limit {}°",
                decimal(is, 1),
                decimal(limit, 0)
            )
        });
        let keep_out = self
            .keep_out
            .as_ref()
            .map(|name| format!("keep-out {name}"));
        [rack_end, swivel, keep_out].into_iter().flatten().collect()
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
    let moved = edit.apply(&ask.build.unlocked()).ok()?;
    let model = moved.axle(ask.axle).ok()?;
    Some(QuickLook::of(&moved, &model, ask.side))
}

/// What the joint swivels at most, degrees.
fn swivel_deg(look: &QuickLook, joint: TieRodJoint) -> f64 {
    let swivel = match joint {
        TieRodJoint::Inner => look.inner_swivel,
        TieRodJoint::Outer => look.outer_swivel,
    };
    swivel.to_degrees()
}

#[cfg(test)]
mod tests;
