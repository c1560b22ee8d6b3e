//! The exact best place inside the clear area, by maps that close in on it; worked out beside the window.

use egui::Context;
use trammel_geometry::{Corner, Point, least_first};
use trammel_tuning::{Cell, MapFrame, Plane, Scoring, Stations, TieRodJoint, ToeMap};

use super::{clear::Clear, plane};
use crate::background::Background;

/// Cells each way of every map.
const CELLS: usize = 97;
/// Maps, each a quarter as wide and high as the one before: the last one's cells are some ten-thousandths of a millimetre.
const ROUNDS: usize = 8;
const CLOSER: f64 = 0.25;
/// How far the clear area goes on about the place, mm: a place is written to a few thousandths.
const ROOM: f64 = 0.01;

/// What is asked.
#[derive(Clone, Debug)]
pub(super) struct Ask {
    pub corner: Corner,
    pub joint: TieRodJoint,
    pub scoring: Scoring,
    pub stations: Stations,
    pub plane: Plane,
    /// First and last place of the map.
    pub corners: [Point; 2],
    pub clear: Clear,
    /// Counts what has become of the clear area.
    pub edition: u64,
}

/// The exact place with its score in the kernel's unit.
pub(crate) type Found = (Point, f64);

impl Ask {
    fn same(&self, other: &Self) -> bool {
        // The joint is put everywhere on the map: where it is now does not count.
        let about = |a: &Self| a.joint.moved_to(&a.corner, a.corners[0]);
        about(self) == about(other)
            && (self.joint, self.scoring) == (other.joint, other.scoring)
            && (self.plane, self.corners) == (other.plane, other.corners)
            && self.edition == other.edition
            && self.stations == other.stations
    }

    fn part(&self, place: Point) -> [f32; 2] {
        let [low, high] = self.corners;
        let size = plane::parts(self.plane, high - low);
        let at = plane::parts(self.plane, place - low);
        [(at[0] / size[0]) as f32, (at[1] / size[1]) as f32]
    }

    /// Whether a place of the map and what is about it are clear.
    fn keeps(&self, place: Point) -> bool {
        let inside = |p: Point| {
            let part = self.part(p);
            part.iter().all(|v| (0.0..=1.0).contains(v)) && !self.clear.is_past(part)
        };
        let corners = [[-1.0, -1.0], [-1.0, 1.0], [1.0, -1.0], [1.0, 1.0]];
        let about = |by: [f64; 2]| place + plane::way(self.plane, by.map(|v| ROOM * v));
        inside(place) && corners.into_iter().all(|by| !self.clear.holds(about(by)))
    }

    /// The best clear place; `None` where no cell of a map is.
    fn find(&self) -> Option<Found> {
        let [low, high] = self.corners;
        let mut size = plane::parts(self.plane, high - low);
        let mut best: Found = (low + (high - low) * 0.5, f64::INFINITY);
        for _ in 0..ROUNDS {
            let frame = MapFrame::new(self.plane, best.0, size, [CELLS; 2]).ok()?;
            let mut map = ToeMap::new(&self.corner, self.joint, frame, &self.stations).ok()?;
            map.complete();
            let cells = (0..CELLS * CELLS).map(|i| (i % CELLS, i / CELLS));
            let scored = cells.filter_map(|(column, row)| match map.cell(column, row) {
                Cell::Scored(score) => {
                    let place = frame.place(column as f64, row as f64);
                    Some((place, score.by(self.scoring)))
                }
                _ => None,
            });
            let mut all: Vec<Found> = scored.collect();
            least_first(&mut all, |a| a.1);
            best = all.into_iter().find(|(place, _)| self.keeps(*place))?;
            size = size.map(|v| CLOSER * v);
        }
        Some(best)
    }
}

/// The search with its worker.
#[derive(Default)]
pub(super) struct ExactWork {
    worker: Option<Background<Ask, (Ask, Option<Found>)>>,
    asked: Option<Ask>,
    shown: Option<(Ask, Option<Found>)>,
}

impl ExactWork {
    /// Asks for the place where it is not known yet, and takes what has come.
    pub(super) fn go_on(&mut self, ctx: &Context, ask: Ask) {
        if self.worker.is_none() {
            self.worker = Background::start("clear place", ctx, |ask: Ask| {
                let found = ask.find();
                (ask, found)
            });
        }
        let Some(worker) = &self.worker else { return };
        self.shown = worker.newest().or(self.shown.take());
        if !self.asked.as_ref().is_some_and(|a| a.same(&ask)) {
            worker.hand_in(ask.clone());
            self.asked = Some(ask);
        }
    }

    /// Whether what was asked last is answered.
    pub(super) fn is_current(&self) -> bool {
        let both = self.shown.as_ref().zip(self.asked.as_ref());
        both.is_some_and(|((ask, _), asked)| ask.same(asked))
    }

    /// The place for what was asked last; `None` while it is not known, or where there is none.
    pub(super) fn shown(&self) -> Option<Found> {
        let (ask, found) = self.shown.as_ref()?;
        let asked = self.asked.as_ref()?;
        found.filter(|_| ask.same(asked))
    }
}
