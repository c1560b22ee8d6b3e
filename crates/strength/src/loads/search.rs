//! Looking for the worst pose of a load case.

use trammel_geometry::{Limit, Linkage, Pose, Unreachable, Walk};

use super::case::Window;
use crate::number::{BadNumber, finite, not_negative};

/// Smallest step of the refinement, mm.
const LAST_STEP: f64 = 0.05;
/// Most steps of the refinement: enough for a step that is halved from metres.
const MOST_STEPS: usize = 200;

/// How far wheel and rack go, mm, all above or at zero.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reach {
    bump: f64,
    droop: f64,
    rack: f64,
}

impl Reach {
    /// Travel up and down from design, and rack travel each way (zero for an axle that is not steered), mm.
    ///
    /// # Errors
    /// A length that is not finite or below zero.
    pub fn new(bump: f64, droop: f64, rack: f64) -> Result<Self, BadNumber> {
        Ok(Self {
            bump: not_negative("the bump travel", bump)?,
            droop: not_negative("the droop travel", droop)?,
            rack: not_negative("the rack travel", rack)?,
        })
    }

    /// Wheel travel for a part, mm: -1 full droop, 1 full bump.
    #[must_use]
    pub fn at(&self, part: f64) -> f64 {
        part * if part > 0.0 { self.bump } else { self.droop }
    }
}

/// How many poses are looked at before refining.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fineness {
    /// Wheel travels.
    pub travels: u32,
    /// Rack travels of a region.
    pub racks: u32,
    /// Whether the worst pose of the grid is refined.
    pub refined: bool,
}

impl Default for Fineness {
    /// 15 travels by 11 rack travels: the refinement finds the rest of smooth curves.
    fn default() -> Self {
        Self {
            travels: 15,
            racks: 11,
            refined: true,
        }
    }
}

/// A box of wheel and rack travels, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Region {
    /// From and to.
    pub travel: [f64; 2],
    /// From and to.
    pub rack: [f64; 2],
}

/// The worst pose that was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Worst {
    /// The pose.
    pub pose: Pose,
    /// How bad it is there.
    pub severity: f64,
}

/// The regions of a window: one about straight ahead, or one at each lock where straight ahead is left out. Rack travels that the linkage doesn't reach
/// are cut off, for every pose beyond them would be walked to in vain.
///
/// # Errors
/// A part that is not finite.
pub fn regions(
    linkage: &Linkage,
    window: &Window,
    reach: &Reach,
) -> Result<[Option<Region>; 2], BadNumber> {
    for part in window.travel.into_iter().chain(window.lock) {
        finite("a part of the travel in a load case's window", part)?;
    }
    let [a, b] = window.travel.map(|part| reach.at(part));
    let travel = [a.min(b), a.max(b)];
    let [a, b] = window.lock.map(|part| part.abs() * reach.rack);
    let (near, far) = (a.min(b), a.max(b));
    let region = |from: f64, to: f64| {
        let rack = reached(linkage, [from, to]);
        Some(Region { travel, rack })
    };
    Ok(if near > 0.0 {
        [region(near, far), region(-far, -near)]
    } else {
        [region(-far, far), None]
    })
}

/// The part of a range of rack travels that the linkage reaches, which is one piece about the centre; the range itself where it reaches none of it.
fn reached(linkage: &Linkage, [from, to]: [f64; 2]) -> [f64; 2] {
    let stop = |rack: f64| match linkage.pose(0.0, rack) {
        Err(Unreachable {
            limit: Limit::Rack(at),
            ..
        }) => at,
        _ => rack,
    };
    let [first, last] = [stop(from).max(from), stop(to).min(to)];
    if first <= last {
        [first, last]
    } else {
        [from, to]
    }
}

/// `count` numbers from the first to the last; one when both are the same.
fn spread([from, to]: [f64; 2], count: u32) -> impl Iterator<Item = f64> {
    let count = if from == to { 1 } else { count.max(2) };
    let step = (to - from) / f64::from((count - 1).max(1));
    (0..count).map(move |i| {
        if i + 1 == count {
            to
        } else {
            from + f64::from(i) * step
        }
    })
}

impl Region {
    /// Every pose of a grid that the linkage reaches.
    pub fn poses(self, linkage: &Linkage, fineness: Fineness) -> impl Iterator<Item = Pose> + '_ {
        spread(self.rack, fineness.racks)
            .filter_map(move |rack| Walk::new(linkage, rack).ok())
            .flat_map(move |mut walk| {
                spread(self.travel, fineness.travels)
                    .filter_map(move |travel| walk.pose(travel).ok())
            })
    }

    /// Steps from a pose of the grid to a worse one, with steps that are halved until they are below 0.05 mm.
    pub fn refine(
        &self,
        linkage: &Linkage,
        fineness: Fineness,
        start: Worst,
        mut severity: impl FnMut(&Pose) -> Option<f64>,
    ) -> Worst {
        let spacing = |[from, to]: [f64; 2], count: u32| (to - from) / f64::from(count.max(2) - 1);
        let mut steps = [
            spacing(self.travel, fineness.travels) / 2.0,
            spacing(self.rack, fineness.racks) / 2.0,
        ];
        let mut best = start;
        let most = if fineness.refined { MOST_STEPS } else { 0 };
        for _ in 0..most {
            if steps.iter().all(|&step| step < LAST_STEP) {
                break;
            }
            let found = self
                .neighbours(&best.pose, steps)
                .filter_map(|[travel, rack]| {
                    let pose = linkage.pose(travel, rack).ok()?;
                    let severity = severity(&pose)?;
                    Some(Worst { pose, severity })
                })
                .filter(|found| found.severity > best.severity)
                .max_by(|a, b| a.severity.total_cmp(&b.severity));
            match found {
                Some(worse) => best = worse,
                None => steps = steps.map(|step| step / 2.0),
            }
        }
        best
    }

    fn neighbours(self, pose: &Pose, steps: [f64; 2]) -> impl Iterator<Item = [f64; 2]> {
        let (travel, rack) = (pose.travel, pose.rack);
        let ways = [-1.0, 0.0, 1.0];
        ways.into_iter()
            .flat_map(move |i| ways.into_iter().map(move |j| [i, j]))
            .map(move |[i, j]| {
                [
                    within(travel + i * steps[0], self.travel),
                    within(rack + j * steps[1], self.rack),
                ]
            })
            .filter(move |&[t, r]| t != travel || r != rack)
    }
}

fn within(value: f64, [from, to]: [f64; 2]) -> f64 {
    value.max(from).min(to)
}

/// The pose of the window at which `severity` is largest: a grid, then a refinement about its worst pose. Poses out of reach, and those
/// for which there is no severity, are left out; `None` when none is left.
///
/// # Errors
/// A window with a part that is not finite.
pub fn worst(
    linkage: &Linkage,
    window: &Window,
    reach: &Reach,
    fineness: Fineness,
    mut severity: impl FnMut(&Pose) -> Option<f64>,
) -> Result<Option<Worst>, BadNumber> {
    let mut worst: Option<Worst> = None;
    for region in regions(linkage, window, reach)?.into_iter().flatten() {
        let start = region
            .poses(linkage, fineness)
            .filter_map(|pose| severity(&pose).map(|severity| Worst { pose, severity }))
            .filter(|found| !found.severity.is_nan())
            .max_by(|a, b| a.severity.total_cmp(&b.severity));
        let Some(start) = start else { continue };
        let found = region.refine(linkage, fineness, start, &mut severity);
        if worst.is_none_or(|known| found.severity > known.severity) {
            worst = Some(found);
        }
    }
    Ok(worst)
}

#[cfg(test)]
mod tests {
    use super::{Region, spread};
    use crate::loads::tests::linkage;

    #[test]
    fn a_spread_is_even_and_keeps_both_ends() {
        let all = |ends, count| spread(ends, count).collect::<Vec<f64>>();
        assert_eq!(all([-10.0, 10.0], 5), [-10.0, -5.0, 0.0, 5.0, 10.0]);
        assert_eq!(all([0.0, 3.0], 4), [0.0, 1.0, 2.0, 3.0]);
        assert_eq!(all([3.0, 4.0], 1), [3.0, 4.0]);
        assert_eq!(all([3.0, 3.0], 7), [3.0]);
    }

    /// In the middle eight places all round, in a corner the three inside.
    #[test]
    fn neighbours_are_a_step_away_all_round() {
        let region = Region {
            travel: [-10.0, 10.0],
            rack: [-5.0, 5.0],
        };
        let around = |travel, rack| {
            let pose = linkage().pose(travel, rack).unwrap();
            let mut all: Vec<[f64; 2]> = region.neighbours(&pose, [4.0, 2.0]).collect();
            all.sort_by(|a, b| a.partial_cmp(b).unwrap());
            all.dedup();
            all
        };
        assert_eq!(
            around(1.0, 0.0),
            [
                [-3.0, -2.0],
                [-3.0, 0.0],
                [-3.0, 2.0],
                [1.0, -2.0],
                [1.0, 2.0],
                [5.0, -2.0],
                [5.0, 0.0],
                [5.0, 2.0],
            ]
        );
        assert_eq!(around(10.0, -5.0), [[6.0, -5.0], [6.0, -3.0], [10.0, -3.0]]);
    }
}
