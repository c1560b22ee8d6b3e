//! Where the joint belongs, why, and what turns and washers would do; made anew when what it depends on changes.

use egui::Context;
use trammel_build::{AxleName, Build, LengthUnit};
use trammel_geometry::{Corner, Linkage, Point, Vector};
use trammel_tuning::{
    Adjustment, Axis, BestSpot, Block, Cause, Coordinate, Dimension, Effect, Hardpoint, Movable,
    Score, Scoring, Search, SearchFault, Stations, TieRodJoint, ToeCurves, TwoLineRule, Ways,
    best_spot_clear_of, effect, two_line_rule,
};

use super::{reasons::Reasons, settings::shop_step};
use crate::{background::Background, words::runs_out};

/// How far the best spot is looked for, mm.
const REACH: f64 = 150.0;

/// What is judged, and how.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Question {
    pub corner: Corner,
    pub joint: TieRodJoint,
    pub scoring: Scoring,
    pub ways: Ways,
    /// Whether both joints may move.
    pub both: bool,
    /// Where no joint may be.
    pub blocks: Vec<Block>,
    /// Coordinates of the joints that the build locks.
    pub locked: Vec<Coordinate>,
    pub stations: Stations,
    pub unit: LengthUnit,
    /// What a turn of the rack end does, and one of the tie rod, mm.
    pub turns: [f64; 2],
}

/// One thing that can be turned or shimmed, with what it does.
#[derive(Clone, Debug)]
pub(crate) struct Remedy {
    pub what: Turn,
    pub effect: Effect,
}

/// What is turned or shimmed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(crate) enum Turn {
    /// The rack end, one turn out.
    RackEndOut,
    /// A washer under the outer joint that lifts it.
    OuterWasher,
    /// A shim under the rack.
    RackShim,
    /// The tie rod's own adjuster, one turn longer.
    RodLonger,
}

/// What is told about the joint.
#[derive(Clone, Debug)]
pub(crate) struct Advice {
    pub now: Option<Score>,
    pub best: Result<BestSpot, String>,
    /// Whether the best spot is still being looked for.
    pub waiting: bool,
    /// The joints that may move.
    pub moving: &'static [TieRodJoint],
    /// Toe change over travel with the joint at the exact best spot, mm and rad.
    pub best_curve: Vec<(f64, f64)>,
    pub cause: Option<Cause>,
    pub rule: Option<TwoLineRule>,
    pub remedies: Vec<Remedy>,
}

type Best = (Question, Result<BestSpot, String>);

/// Keeps the last answers.
#[derive(Default)]
pub(crate) struct Adviser {
    last: Option<Answer>,
    /// The search does not depend on where the joint is, as long as it may move freely in the plane.
    best: Option<Best>,
    /// Searches while something is dragged: a little late, but no frame waits for them.
    worker: Option<Background<Question, Best>>,
    asked: Option<Question>,
    reasons: Reasons,
}

/// An answer with its question.
struct Answer {
    question: Question,
    /// Made during a drag: the best spot may be a frame old and the remedies are those of before.
    rough: bool,
    /// The best spot is still to come from the worker.
    waiting: bool,
    advice: Advice,
}

impl Question {
    /// The same whatever the joint's place in the front view.
    fn without_the_place(&self) -> Self {
        if self.ways != Ways::FrontPlane || self.is_long() || !self.locked.is_empty() {
            return self.clone();
        }
        let x = self.joint.place(&self.corner).x;
        Self {
            corner: self.joint.moved_to(&self.corner, Point::new(x, 0.0, 0.0)),
            ..self.clone()
        }
    }
}

impl Question {
    /// Whether the search takes longer than a frame may.
    fn is_long(&self) -> bool {
        let fore_and_aft = [Ways::Free, Ways::SidePlane, Ways::PlanPlane];
        self.both || fore_and_aft.contains(&self.ways)
    }

    /// Whether a keep-out holds a joint's place, exactly or in whole steps.
    fn is_blocked(&self, best: &Result<BestSpot, String>) -> bool {
        let Ok(best) = best else { return false };
        let rods = [Some(best.exact), best.snapped].into_iter().flatten();
        let held = |rod: &trammel_geometry::TieRod| {
            let joints = self.moving().iter().map(|joint| match joint {
                TieRodJoint::Inner => rod.inner,
                TieRodJoint::Outer => rod.outer,
            });
            joints
                .into_iter()
                .any(|p| self.blocks.iter().any(|b| b.holds(p)))
        };
        rods.into_iter().any(|spot| held(&spot.tie_rod))
    }

    fn moving(&self) -> &'static [TieRodJoint] {
        match (self.both, self.joint) {
            (true, _) => &[TieRodJoint::Inner, TieRodJoint::Outer],
            (false, TieRodJoint::Inner) => &[TieRodJoint::Inner],
            (false, TieRodJoint::Outer) => &[TieRodJoint::Outer],
        }
    }
}

impl Adviser {
    /// The advice, worked out anew where the question has changed; roughly while something is dragged.
    pub(crate) fn ask(&mut self, ctx: &Context, question: Question, held: bool) -> &Advice {
        let came = self.worker.as_ref().and_then(Background::newest);
        if came.as_ref().map(|c| &c.0) == self.asked.as_ref() {
            self.asked = None;
        }
        let news = self.reasons.take() | came.is_some();
        self.best = came.or(self.best.take());
        let known = |a: &Answer| {
            a.question == question && (!a.rough || (held && !news)) && !(a.waiting && news)
        };
        let answer = match self.last.take() {
            Some(answer) if known(&answer) => answer,
            before => {
                let best = self.best_spot(ctx, &question, held);
                let waiting = best.is_none();
                let rough = before.filter(|_| held).map(|a| a.advice.remedies);
                let about = (question.corner, question.joint, question.stations.clone());
                let cause = self.reasons.of(ctx, about, held);
                let advice = Advice::of(&question, best, cause, rough);
                Answer {
                    question,
                    rough: held,
                    waiting,
                    advice,
                }
            }
        };
        &self.last.insert(answer).advice
    }

    /// The last advice.
    pub(crate) fn last(&self) -> Option<&Advice> {
        self.last.as_ref().map(|a| &a.advice)
    }

    /// The best spot; during a drag perhaps that of a frame ago, and none as long as a long search is under way.
    fn best_spot(
        &mut self,
        ctx: &Context,
        question: &Question,
        held: bool,
    ) -> Option<Result<BestSpot, String>> {
        let key = question.without_the_place();
        let old = match &self.best {
            Some((q, best)) if *q == key => return Some(best.clone()),
            Some((_, best)) if held => Some(best.clone()),
            _ if question.is_long() => None,
            _ => {
                let best = search(question, &[]);
                // Splitting it about a keep-out takes longer than a frame may.
                if !question.is_blocked(&best) {
                    self.best = Some((key, best.clone()));
                    return Some(best);
                }
                None
            }
        };
        if self.worker.is_none() {
            let work = |q: Question| {
                let best = search(&q, &q.blocks);
                (q.without_the_place(), best)
            };
            self.worker = Background::start("best spot", ctx, work);
        }
        if let Some(worker) = self
            .worker
            .as_ref()
            .filter(|_| self.asked.as_ref() != Some(&key))
        {
            worker.hand_in(question.clone());
            self.asked = Some(key);
        }
        old
    }
}

/// The best spot, no joint inside one of `blocks`.
fn search(question: &Question, blocks: &[Block]) -> Result<BestSpot, String> {
    let search = Search {
        movable: match (question.both, question.joint) {
            (true, _) => Movable::Both,
            (false, TieRodJoint::Inner) => Movable::Inner,
            (false, TieRodJoint::Outer) => Movable::Outer,
        },
        ways: question.ways,
        scoring: question.scoring,
        stations: question.stations.clone(),
        held: question.locked.clone(),
        reach: REACH,
        step: Some(shop_step(question.unit)),
    };
    best_spot_clear_of(&question.corner, &search, blocks).map_err(|fault| match fault {
        SearchFault::OutOfReach(end) => format!(
            "No place of the joint that was tried reaches the whole travel: the {}.",
            runs_out(&end, question.unit)
        ),
        other => other.to_string(),
    })
}

impl Advice {
    fn of(
        q: &Question,
        best: Option<Result<BestSpot, String>>,
        cause: Option<Cause>,
        known: Option<Vec<Remedy>>,
    ) -> Self {
        let waiting = best.is_none();
        let best = best.unwrap_or_else(|| Err("It is being looked for.".to_owned()));
        let curves = |corner: &Corner| ToeCurves::of(&Linkage::new(corner).ok()?, &q.stations).ok();
        let at_best = best.as_ref().ok().and_then(|b| {
            curves(&Corner {
                tie_rod: b.exact.tie_rod,
                ..q.corner
            })
        });
        let best_curve = at_best.and_then(|c| c.curves.into_iter().next());
        Self {
            now: curves(&q.corner).map(|c| c.score()),
            best_curve: best_curve
                .map(|c| {
                    q.stations
                        .travels()
                        .iter()
                        .copied()
                        .zip(c.changes)
                        .collect()
                })
                .unwrap_or_default(),
            best,
            waiting,
            moving: q.moving(),
            cause,
            rule: two_line_rule(&q.corner),
            remedies: known.unwrap_or_else(|| remedies(q)),
        }
    }

    /// Where the joint belongs: exactly, and in whole steps of the shop.
    pub(crate) fn places(&self, joint: TieRodJoint) -> Option<(Point, Option<Point>)> {
        let best = self.best.as_ref().ok()?;
        let of = |rod: &trammel_geometry::TieRod| match joint {
            TieRodJoint::Inner => rod.inner,
            TieRodJoint::Outer => rod.outer,
        };
        Some((
            of(&best.exact.tie_rod),
            best.snapped.as_ref().map(|s| of(&s.tie_rod)),
        ))
    }
}

/// A washer or shim, mm: a sixteenth of an inch or 1.5 mm.
pub(crate) fn washer(unit: LengthUnit) -> f64 {
    match unit {
        LengthUnit::Inch => 25.4 / 16.0,
        LengthUnit::Millimetre => 1.5,
    }
}

fn remedies(q: &Question) -> Vec<Remedy> {
    let washer = washer(q.unit);
    let [end_turn, rod_turn] = q.turns;
    let mut all = Vec::new();
    if q.corner.rack_axis.is_some() {
        all.push((Turn::RackEndOut, Adjustment::RackEnd(end_turn)));
    }
    all.push((
        Turn::OuterWasher,
        Adjustment::OuterWasher(washer, Vector::z()),
    ));
    if q.corner.rack_axis.is_some() {
        all.push((Turn::RackShim, Adjustment::RackShim(washer)));
    }
    all.push((Turn::RodLonger, Adjustment::RodLength(rod_turn)));
    all.into_iter()
        .filter_map(|(what, adjustment)| {
            Some(Remedy {
                what,
                effect: effect(&q.corner, adjustment, &q.stations).ok()?,
            })
        })
        .collect()
}

/// Coordinates of the tie rod's joints that a build locks.
pub(crate) fn locked(build: &Build, axle: AxleName) -> Vec<Coordinate> {
    let joints = [Hardpoint::TieRodInner, Hardpoint::TieRodOuter];
    let all = joints
        .into_iter()
        .flat_map(|point| [Axis::X, Axis::Y, Axis::Z].map(|axis| Coordinate { point, axis }));
    all.filter(|&c| super::auto::locked(Dimension::One(c), build, axle))
        .collect()
}
