//! A search that is worked off bit by bit and can be dropped at any time.

use trammel_geometry::{Corner, Linkage, least_first};

use super::{
    evolution::{Evolution, distance},
    figures::{Figures, Judge},
    finish::{Candidate, Objective},
    request::{RackEndFactor, TuneFault, TuneRequest},
};
use crate::{Stations, ToeCurves};

/// Generations for each variable, and the least of them.
const GENERATIONS: [usize; 2] = [12, 60];
/// Solutions kept, and how far apart they are: share of the variables' ranges.
const MOST_SOLUTIONS: usize = 8;
const APART: f64 = 0.12;
const APART_AT_LAST: f64 = 0.02;
/// A solution this much worse than the best is left out: so many times its worth, and so many wishes off by one.
const WORSE: [f64; 2] = [9.0, 1.0];

/// A corner that the search came to, with what it is worth.
#[derive(Clone, Debug, PartialEq)]
pub struct Tuned {
    /// Value of every variable, mm.
    pub values: Vec<f64>,
    /// The corner.
    pub corner: Corner,
    /// Weighted sum of the squares of all that is missing; nought when every wish is fulfilled.
    pub worth: f64,
    /// Its figures.
    pub figures: Figures,
}

/// One of the distinct good solutions.
#[derive(Clone, Debug, PartialEq)]
pub struct Solution {
    /// At the bottom.
    pub exact: Tuned,
    /// In whole steps of the shop, where variables have steps.
    pub in_steps: Option<Tuned>,
}

/// How far a search has come.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Progress {
    /// 0 to 1.
    pub part: f64,
    /// Worth of the best so far, if any candidate could be built.
    pub best: Option<f64>,
    /// Whether the solutions are final.
    pub done: bool,
}

enum Phase {
    Global,
    Finish(Vec<Candidate>),
    Done,
}

/// A search under way.
pub struct Tuner {
    objective: Objective,
    evolution: Evolution,
    phase: Phase,
    evaluations: usize,
    planned: usize,
    solutions: Vec<Solution>,
}

impl Tuner {
    /// Prepares a search. `rack_end` gives the rack end's factor for a corner, where one is wanted.
    ///
    /// # Errors
    /// A [`TuneFault`] when the request makes no sense.
    pub fn new(request: &TuneRequest, rack_end: Option<RackEndFactor>) -> Result<Self, TuneFault> {
        request.check(rack_end.is_some())?;
        let stations = request.stations()?;
        let steered = request.lock > 0.0 && request.corner.rack_axis.is_some();
        let lock = if steered { request.lock } else { 0.0 };
        let at_lock = if steered {
            Some(Stations::new(request.travels.clone(), vec![-lock, lock])?)
        } else {
            None
        };
        let evolution = Evolution::new(request.variables.len(), request.seed);
        let [each, least] = GENERATIONS;
        let generations = match request.generations {
            0 => (each * request.variables.len()).max(least),
            n => n,
        };
        Ok(Self {
            planned: evolution.size() * (generations + 1),
            evolution,
            objective: Objective {
                corner: request.corner,
                variables: request.variables.clone(),
                wishes: request.wishes.clone(),
                weights: request.even_weights(),
                judge: Judge {
                    stations,
                    at_lock,
                    lock,
                    wheelbase: request.wheelbase,
                    rack_end,
                },
            },
            phase: Phase::Global,
            evaluations: 0,
            solutions: Vec::new(),
        })
    }

    /// Tries `candidates` more candidates, or finishes one solution once the global search is over (some hundred
    /// evaluations).
    pub fn step(&mut self, candidates: usize) -> Progress {
        match &mut self.phase {
            Phase::Global => {
                for _ in 0..candidates.min(self.planned - self.evaluations) {
                    self.evolution.step(&self.objective);
                    self.evaluations += 1;
                }
                if self.evaluations >= self.planned {
                    let mut queue = self.evolution.niches(APART, MOST_SOLUTIONS);
                    queue.reverse();
                    self.phase = Phase::Finish(queue);
                }
            }
            Phase::Finish(queue) => match queue.pop() {
                Some(next) => self.finish(&next),
                None => {
                    self.leave_out_the_poor();
                    self.phase = Phase::Done;
                }
            },
            Phase::Done => {}
        }
        self.progress()
    }

    /// Runs to the end.
    ///
    /// # Errors
    /// A [`TuneFault`] when no candidate could be built, with what is wrong with the corner as it is.
    pub fn run(&mut self) -> Result<&[Solution], TuneFault> {
        while !self.step(usize::MAX).done {}
        match self.fault() {
            Some(fault) => Err(fault),
            None => Ok(&self.solutions),
        }
    }

    /// How far it has come.
    #[must_use]
    pub fn progress(&self) -> Progress {
        let global = self.evaluations as f64 / self.planned as f64;
        let part = match &self.phase {
            Phase::Global => 0.9 * global,
            Phase::Finish(queue) => 1.0 - 0.1 * queue.len() as f64 / MOST_SOLUTIONS as f64,
            Phase::Done => 1.0,
        };
        Progress {
            part,
            best: self.best().map(|c| c.worth),
            done: matches!(self.phase, Phase::Done),
        }
    }

    /// The distinct good solutions found so far, best first: while the global search is on, its best so far.
    #[must_use]
    pub fn solutions(&self) -> Vec<Solution> {
        if self.solutions.is_empty() {
            let best = self.best().map(|c| Solution {
                exact: self.tuned(c),
                in_steps: None,
            });
            return best.into_iter().collect();
        }
        self.solutions.clone()
    }

    /// Figures of everything in the population with its worth, for a picture of what trades against what.
    pub fn explored(&self) -> impl Iterator<Item = (f64, &Figures)> {
        self.evolution
            .members
            .iter()
            .filter_map(|m| m.candidate.as_ref().map(|c| (c.worth, &c.judged.figures)))
    }

    /// Figures of a corner, judged as the candidates are; `None` when it can't be built or doesn't reach travel and lock.
    #[must_use]
    pub fn figures(&self, corner: &Corner) -> Option<Figures> {
        self.objective.judge.judge(corner).map(|j| j.figures)
    }

    /// Why there is no solution once the search is done.
    #[must_use]
    pub fn fault(&self) -> Option<TuneFault> {
        if !matches!(self.phase, Phase::Done) || !self.solutions.is_empty() {
            return None;
        }
        let linkage = match Linkage::new(&self.objective.corner) {
            Ok(linkage) => linkage,
            Err(fault) => return Some(TuneFault::NotBuilt(fault)),
        };
        let judge = &self.objective.judge;
        let all = [Some(&judge.stations), judge.at_lock.as_ref()];
        let end = all
            .into_iter()
            .flatten()
            .find_map(|s| ToeCurves::of(&linkage, s).err());
        Some(end.map_or(TuneFault::NoFigure, TuneFault::OutOfReach))
    }

    fn best(&self) -> Option<&Candidate> {
        let members = self.evolution.members.iter();
        members
            .filter_map(|m| m.candidate.as_ref())
            .min_by(|a, b| a.worth.total_cmp(&b.worth))
    }

    fn tuned(&self, c: &Candidate) -> Tuned {
        Tuned {
            values: c.values.clone(),
            corner: self.objective.moved(&c.values),
            worth: c.worth,
            figures: c.judged.figures.clone(),
        }
    }

    fn finish(&mut self, start: &Candidate) {
        let exact = self.objective.finished(start);
        let place = |values: &[f64]| -> Vec<f64> {
            let variables = self.objective.variables.iter();
            variables
                .zip(values)
                .map(|(v, x)| (x - v.low) / (v.high - v.low))
                .collect()
        };
        let here = place(&exact.values);
        let known = self
            .solutions
            .iter()
            .position(|s| distance(&place(&s.exact.values), &here) < APART_AT_LAST);
        let solution = Solution {
            in_steps: self.objective.in_steps(&exact).map(|c| self.tuned(&c)),
            exact: self.tuned(&exact),
        };
        match known.and_then(|i| self.solutions.get_mut(i)) {
            Some(same) if solution.exact.worth < same.exact.worth => *same = solution,
            Some(_) => {}
            None => self.solutions.push(solution),
        }
    }

    fn leave_out_the_poor(&mut self) {
        least_first(&mut self.solutions, |s| s.exact.worth);
        let [times, wishes] = WORSE;
        if let Some(limit) = self
            .solutions
            .first()
            .map(|s| times * s.exact.worth + wishes)
        {
            self.solutions.retain(|s| s.exact.worth <= limit);
        }
    }
}
