//! The global search: differential evolution in which a trial takes the place of its nearest neighbour only, so that
//! several good regions live on side by side.

use super::{
    finish::{Candidate, Objective},
    random::Random,
};
use trammel_geometry::least_first;

/// Members for each variable, and the least and most of them.
const MEMBERS: [usize; 3] = [12, 36, 160];
/// Chance that a variable comes from the mutant.
const CROSSOVER: f64 = 0.85;
/// Least and most of the difference that is added.
const REACH: [f64; 2] = [0.35, 0.9];

/// A member of the population: a candidate, or a place that can't be built.
pub(crate) struct Member {
    pub place: Vec<f64>,
    pub candidate: Option<Candidate>,
}

/// The population. Places are shares of each variable's range, 0 to 1.
pub(crate) struct Evolution {
    pub members: Vec<Member>,
    size: usize,
    random: Random,
    turn: usize,
    seed: u32,
}

impl Evolution {
    pub(crate) fn new(variables: usize, seed: u64) -> Self {
        let [each, least, most] = MEMBERS;
        Self {
            members: Vec::new(),
            size: (each * variables).clamp(least, most),
            random: Random::new(seed),
            turn: 0,
            seed: (seed ^ (seed >> 32)) as u32,
        }
    }

    pub(crate) fn size(&self) -> usize {
        self.size
    }

    /// One evaluation: the present place first, then places spread evenly, then the evolution's trials.
    pub(crate) fn step(&mut self, objective: &Objective) {
        if self.members.len() < self.size {
            let place = self.first_place(objective, self.members.len());
            let candidate = candidate(objective, &place);
            self.members.push(Member { place, candidate });
            return;
        }
        let place = self.trial(objective.variables.len());
        let trial = candidate(objective, &place);
        let Some(nearest) = self
            .members
            .iter_mut()
            .min_by(|a, b| distance(&a.place, &place).total_cmp(&distance(&b.place, &place)))
        else {
            return;
        };
        if worth(trial.as_ref()) <= worth(nearest.candidate.as_ref()) {
            *nearest = Member {
                place,
                candidate: trial,
            };
        }
        self.turn = (self.turn + 1) % self.size;
    }

    fn first_place(&self, objective: &Objective, index: usize) -> Vec<f64> {
        (0_u32..)
            .zip(&objective.variables)
            .map(|(d, v)| {
                if index == 0 {
                    (-v.low / (v.high - v.low)).clamp(0.0, 1.0)
                } else {
                    f64::from(sobol_burley::sample(index as u32, d, self.seed))
                }
            })
            .collect()
    }

    fn trial(&mut self, count: usize) -> Vec<f64> {
        let mut pick = || self.random.below(self.size);
        let (a, b, c) = (pick(), pick(), pick());
        let forced = self.random.below(count);
        let [least, most] = REACH;
        let reach = least + (most - least) * self.random.share();
        let of = |members: &[Member], m: usize, i: usize| {
            members
                .get(m)
                .and_then(|m| m.place.get(i))
                .copied()
                .unwrap_or(0.5)
        };
        (0..count)
            .map(|i| {
                let own = of(&self.members, self.turn, i);
                if i != forced && self.random.share() > CROSSOVER {
                    return own;
                }
                let [a, b, c] = [a, b, c].map(|m| of(&self.members, m, i));
                reflected(a + reach * (b - c))
            })
            .collect()
    }

    /// The best members at least `apart` from each other, best first.
    pub(crate) fn niches(&self, apart: f64, most: usize) -> Vec<Candidate> {
        let mut good: Vec<(&Vec<f64>, &Candidate)> = self
            .members
            .iter()
            .filter_map(|m| m.candidate.as_ref().map(|c| (&m.place, c)))
            .collect();
        least_first(&mut good, |g| g.1.worth);
        let mut kept: Vec<(&Vec<f64>, &Candidate)> = Vec::new();
        for one in good {
            if kept.len() < most && kept.iter().all(|k| distance(k.0, one.0) >= apart) {
                kept.push(one);
            }
        }
        kept.into_iter().map(|k| k.1.clone()).collect()
    }
}

fn candidate(objective: &Objective, place: &[f64]) -> Option<Candidate> {
    let values: Vec<f64> = objective
        .variables
        .iter()
        .zip(place)
        .map(|(v, s)| v.low + (v.high - v.low) * s)
        .collect();
    objective.candidate(&values)
}

fn worth(candidate: Option<&Candidate>) -> f64 {
    candidate.map_or(f64::INFINITY, |c| c.worth)
}

/// Root mean square of the differences.
pub(crate) fn distance(a: &[f64], b: &[f64]) -> f64 {
    let squares: f64 = a.iter().zip(b).map(|(a, b)| (a - b) * (a - b)).sum();
    (squares / a.len().max(1) as f64).sqrt()
}

/// A share that left 0 to 1, thrown back from the wall.
fn reflected(share: f64) -> f64 {
    let folded = share.rem_euclid(2.0);
    if folded > 1.0 { 2.0 - folded } else { folded }
}
