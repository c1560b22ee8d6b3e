//! The question of what to do now, and its answer.

use nalgebra::DMatrix;
use trammel_geometry::{Linkage, Point, Vector};
use trammel_tuning::{Cause, Score, Stations, TieRodJoint, ToeCurves, normal_quantile};

use super::{
    Adjuster, Move, Plan, RodThread,
    search::{Choice, Field, Response, VEHICLES},
};
use crate::{JointShift, LearnFault, Learned};

/// A plan that does with this chance needs no further adjuster.
const ENOUGH: f64 = 0.8;
/// A further adjuster is worth moving for so much more chance.
const WORTH: f64 = 0.05;
/// Most adjusters moved at once.
const MOST_MOVED: usize = 3;

/// What is to be done, and with what.
#[derive(Clone, Debug)]
pub struct Question<'a> {
    /// The vehicle as far as it is known.
    pub learned: &'a Learned,
    /// Where the adjusters have put the joints so far.
    pub now: JointShift,
    /// What can be adjusted, ranges counted from where it is now.
    pub adjusters: &'a [Adjuster],
    /// Where the curve is judged.
    pub stations: &'a Stations,
    /// Largest toe change allowed, rad.
    pub limit: f64,
    /// The tie rod's own thread.
    pub rod: RodThread,
}

/// Where the inner joint would have to be welded.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reweld {
    /// The inner joint's way from where it is now, mm, axes of the left corner.
    pub by: Vector,
    /// Where to, mm.
    pub to: Point,
    /// What is then to be expected.
    pub then: Score,
}

/// What to do now.
#[derive(Clone, Debug, PartialEq)]
pub struct Advice {
    /// The curve as it most likely is now, without moves.
    pub now: Plan,
    /// The fewest adjusters that bring the curve within the limit, likely enough; or the best there is.
    pub best: Plan,
    /// Each adjuster by itself, and the best pair, where they differ from the best plan.
    pub alternatives: Vec<Plan>,
    /// Whether the best plan is expected to be within the limit.
    pub cured: bool,
    /// Where to weld when no adjuster cures it.
    pub reweld: Option<Reweld>,
}

/// The smallest set of moves that brings the toe curve within the limit.
///
/// # Errors
/// A [`LearnFault`] when the likely corner can't be posed over the stations.
pub fn advise(question: &Question<'_>) -> Result<Advice, LearnFault> {
    let field = question.field()?;
    let by_subset: Vec<(usize, Choice)> = subsets(question.adjusters.len())
        .into_iter()
        .map(|s| (s.len(), field.best_of(&s)))
        .collect();
    let best = choose(&by_subset, question.limit);
    let best = question.plan(&field, &best)?;
    let now = question.plan(&field, &field.best_of(&[]))?;
    let singles = by_subset.iter().filter(|(n, _)| *n == 1);
    let pairs = by_subset.iter().filter(|(n, _)| *n == 2);
    let pair = pairs.max_by(|a, b| {
        a.1.chance
            .total_cmp(&b.1.chance)
            .then(b.1.largest.total_cmp(&a.1.largest))
    });
    let mut alternatives = Vec::new();
    for (_, choice) in singles.chain(pair) {
        let plan = question.plan(&field, choice)?;
        if plan.moves != best.moves && !plan.moves.is_empty() {
            alternatives.push(plan);
        }
    }
    let cured = best.largest <= question.limit;
    let reweld = if cured { None } else { question.reweld() };
    Ok(Advice {
        now,
        best,
        alternatives,
        cured,
        reweld,
    })
}

/// The fewest adjusters that are likely enough, or those whose gain is worth it.
fn choose(by_subset: &[(usize, Choice)], limit: f64) -> Choice {
    let mut chosen: Option<Choice> = None;
    for moved in 0..=MOST_MOVED {
        let of_size = by_subset
            .iter()
            .filter(|(n, _)| *n == moved)
            .map(|(_, c)| c);
        let best = of_size.max_by(|a, b| {
            a.chance
                .total_cmp(&b.chance)
                .then(b.largest.total_cmp(&a.largest))
        });
        let Some(best) = best else { continue };
        let improves = chosen.as_ref().is_none_or(|c| {
            let hopeless = c.chance == 0.0 && best.chance == 0.0;
            best.chance > c.chance + WORTH || (hopeless && best.largest < 0.95 * c.largest)
        });
        if improves {
            chosen = Some(best.clone());
        }
        if chosen
            .as_ref()
            .is_some_and(|c| c.chance >= ENOUGH && c.largest <= limit)
        {
            break;
        }
    }
    chosen.unwrap_or(Choice {
        steps: Vec::new(),
        largest: f64::INFINITY,
        chance: 0.0,
    })
}

/// Every choice of up to three adjusters.
fn subsets(count: usize) -> Vec<Vec<usize>> {
    let mut all: Vec<Vec<usize>> = vec![Vec::new()];
    for i in 0..count {
        let with: Vec<Vec<usize>> = all
            .iter()
            .filter(|s| s.len() < MOST_MOVED)
            .map(|s| s.iter().copied().chain([i]).collect())
            .collect();
        all.extend(with);
    }
    all
}

impl Question<'_> {
    fn field(&self) -> Result<Field, LearnFault> {
        let base = self.curves(&JointShift::NONE)?;
        let slopes = self.learned.slopes(&self.now, self.stations, &base)?;
        let factor = self.learned.lower_factor();
        let vehicles = slopes * factor * normals(self.learned.errors.len());
        let base: Vec<f64> = base.changes().collect();
        let adjusters = self
            .adjusters
            .iter()
            .map(|a| self.response(a, &base))
            .collect::<Result<_, _>>()?;
        Ok(Field {
            base,
            adjusters,
            vehicles,
            limit: self.limit,
        })
    }

    /// The curves with the joints moved further.
    fn curves(&self, further: &JointShift) -> Result<ToeCurves, LearnFault> {
        let corner = self.now.and(further).on(&self.learned.corner);
        Ok(ToeCurves::of(&Linkage::new(&corner)?, self.stations)?)
    }

    /// A parabola through nought and the ends of the range, or of as much of it as can be posed.
    fn response(&self, adjuster: &Adjuster, base: &[f64]) -> Result<Response, LearnFault> {
        let one = adjuster.one_step(&self.learned.corner);
        let range = adjuster.range();
        let most = (-*range.start()).max(*range.end()).max(1);
        let at = |n: i32| -> Result<Vec<f64>, LearnFault> {
            let moved = self.curves(&one.times(f64::from(n)))?;
            Ok(moved.changes().zip(base).map(|(a, b)| a - b).collect())
        };
        let (up, down, most) = match (at(most), at(-most)) {
            (Ok(up), Ok(down)) => (up, down, most),
            _ => (at(1)?, at(-1)?, 1),
        };
        let n = f64::from(most);
        let pairs = || up.iter().zip(&down);
        Ok(Response {
            range,
            linear: pairs().map(|(u, d)| 0.5 * (u - d) / n).collect(),
            square: pairs().map(|(u, d)| 0.5 * (u + d) / (n * n)).collect(),
        })
    }

    /// A choice posed exactly.
    fn plan(&self, field: &Field, choice: &Choice) -> Result<Plan, LearnFault> {
        let moved = choice
            .steps
            .iter()
            .zip(self.adjusters)
            .enumerate()
            .filter(|(_, (n, _))| **n != 0);
        let mut shift = self.now;
        let mut moves = Vec::new();
        for (adjuster, (&steps, a)) in moved {
            shift = shift.and(&a.one_step(&self.learned.corner).times(f64::from(steps)));
            let length = a.step() * f64::from(steps);
            moves.push(Move {
                kind: a.kind(),
                adjuster,
                steps,
                length,
            });
        }
        let prediction = self.learned.predict(&shift, self.stations)?;
        let changes: Vec<f64> = prediction.curves.changes().collect();
        let rod = |shift: &JointShift| {
            let rod = shift.on(&self.learned.corner).tie_rod;
            (rod.outer - rod.inner).norm()
        };
        let rod_longer = rod(&shift) - rod(&self.now);
        let within = |(shorter, longer): (f64, f64)| (-shorter..=longer).contains(&rod_longer);
        Ok(Plan {
            largest: changes.iter().fold(0.0, |m, v| m.max(v.abs())),
            confidence: field.chance(&changes),
            moves,
            shift,
            after: prediction.curves,
            deviations: prediction.deviations,
            rod_longer,
            rod_allows: self.rod.range.map(within),
        })
    }

    fn reweld(&self) -> Option<Reweld> {
        let corner = self.now.on(&self.learned.corner);
        let cause = Cause::of(&corner, TieRodJoint::Inner, self.stations)?;
        let by = cause.cure();
        Some(Reweld {
            by,
            to: corner.tie_rod.inner + by,
            then: cause.cured,
        })
    }
}

/// Standard normal numbers, one column for each likely vehicle; always the same ones.
fn normals(rows: usize) -> DMatrix<f64> {
    DMatrix::from_fn(rows, VEHICLES, |row, vehicle| {
        // Few rows and columns: both fit.
        let share = sobol_burley::sample(vehicle as u32, row as u32, 11);
        normal_quantile(f64::from(share) + 2.0_f64.powi(-25))
    })
}
