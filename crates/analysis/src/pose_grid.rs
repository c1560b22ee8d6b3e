//! The poses of a corner over travel and lock, and the worst of them by any measure.

use trammel_geometry::{Unreachable, Walk};

use crate::corner_view::{CornerView, Reading};

/// Travels in the grid.
const TRAVELS: usize = 21;
/// Rack positions in the grid of a steered axle.
const RACKS: usize = 11;

/// Readings over travel and lock, as far as the linkage goes.
#[derive(Clone, Debug)]
pub(crate) struct PoseGrid {
    columns: Vec<Column>,
    travel_step: f64,
    rack_step: f64,
    /// Every way to a pose that ended early.
    pub ends: Vec<Unreachable>,
}

/// One rack position.
#[derive(Clone, Debug)]
struct Column {
    /// In order of travel.
    readings: Vec<Reading>,
    /// Index of the first reading among the travels of the grid.
    first: usize,
}

/// The worst of a grid, refined between its poses.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Worst {
    /// The measure there: more is worse.
    pub badness: f64,
    /// The pose.
    pub reading: Reading,
}

impl PoseGrid {
    /// The full grid.
    pub(crate) fn of(view: &CornerView) -> Self {
        Self::sized(view, TRAVELS, RACKS)
    }

    /// A grid of so many travels and rack positions, the latter odd; without a rack there is one rack position.
    pub(crate) fn sized(view: &CornerView, travels: usize, racks: usize) -> Self {
        let (droop, bump) = (view.travel.droop, view.travel.bump);
        let racks = if view.lock > 0.0 { racks } else { 1 };
        let travels = if bump > droop { travels.max(2) } else { 1 };
        let spread = |from: f64, to: f64, n: usize| (to - from) / (n.max(2) - 1) as f64;
        let mut grid = Self {
            columns: Vec::with_capacity(racks),
            travel_step: spread(droop, bump, travels),
            rack_step: spread(-view.lock, view.lock, racks),
            ends: Vec::new(),
        };
        // From the centre outward: where the rack can't be moved, it can't be moved further either.
        let rack = |i: usize| {
            // Weighted ends, so that the stops themselves are met exactly and the middle is nought.
            let share = if racks == 1 {
                0.5
            } else {
                i as f64 / (racks - 1) as f64
            };
            view.lock * (2.0 * share - 1.0)
        };
        for i in (0..racks / 2).rev() {
            if grid.walk(view, rack(i), travels).is_none() {
                break;
            }
        }
        grid.columns.reverse();
        for i in racks / 2..racks {
            if grid.walk(view, rack(i), travels).is_none() {
                break;
            }
        }
        grid
    }

    /// The column of a rack position; `None` where the rack can't be moved there.
    fn walk(&mut self, view: &CornerView, rack: f64, travels: usize) -> Option<()> {
        let start = match Walk::new(&view.linkage, rack) {
            Ok(walk) => walk,
            Err(end) => {
                self.ends.push(end);
                return None;
            }
        };
        let (droop, bump) = (view.travel.droop, view.travel.bump);
        let travel = |i: usize| {
            let share = i as f64 / (travels.max(2) - 1) as f64;
            droop * (1.0 - share) + bump * share
        };
        let middle = (0..travels).find(|&i| travel(i) >= 0.0).unwrap_or(travels);
        let mut readings = Vec::with_capacity(travels);
        let mut walk = start;
        for i in (0..middle).rev() {
            match walk.pose(travel(i)) {
                Ok(pose) => readings.push(view.reading(&pose)),
                Err(end) => {
                    self.ends.push(end);
                    break;
                }
            }
        }
        let first = middle - readings.len();
        readings.reverse();
        let mut walk = start;
        for i in middle..travels {
            match walk.pose(travel(i)) {
                Ok(pose) => readings.push(view.reading(&pose)),
                Err(end) => {
                    self.ends.push(end);
                    break;
                }
            }
        }
        self.columns.push(Column { readings, first });
        Some(())
    }

    /// All readings.
    pub(crate) fn readings(&self) -> impl Iterator<Item = &Reading> {
        self.columns.iter().flat_map(|c| &c.readings)
    }

    /// The readings rack position by rack position, each in order of travel.
    pub(crate) fn columns(&self) -> impl Iterator<Item = &[Reading]> {
        self.columns.iter().map(|c| c.readings.as_slice())
    }

    /// The worst reading of the grid itself.
    pub(crate) fn worst_node(&self, badness: impl Fn(&Reading) -> Option<f64>) -> Option<Worst> {
        self.worst_index(&badness).map(|(_, _, worst)| worst)
    }

    /// The worst reading, refined between the poses of the grid: a parabola through neighbours in each direction, then two closer rounds.
    pub(crate) fn worst(
        &self,
        view: &CornerView,
        badness: impl Fn(&Reading) -> Option<f64>,
    ) -> Option<Worst> {
        let (c, i, mut worst) = self.worst_index(&badness)?;
        let at = |c: Option<usize>, i: Option<usize>| {
            let reading = self.at(c?, i?)?;
            badness(reading)
        };
        let here = worst.badness;
        let by_travel = peak(here, |k| at(Some(c), i.checked_add_signed(k)));
        let by_rack = peak(here, |k| at(c.checked_add_signed(k), Some(i)));
        let inside = (by_travel != 0.0, by_rack != 0.0);
        if !(inside.0 || inside.1) {
            return Some(worst);
        }
        let offer = |worst: &mut Worst, travel: f64, rack: f64| {
            let travel = travel.clamp(view.travel.droop, view.travel.bump);
            let rack = rack.clamp(-view.lock, view.lock);
            let reading = view.reading_at(travel, rack)?;
            let found = badness(&reading)?;
            if found > worst.badness {
                *worst = Worst {
                    badness: found,
                    reading,
                };
            }
            Some(found)
        };
        let r = worst.reading;
        offer(
            &mut worst,
            r.travel + by_travel * self.travel_step,
            r.rack + by_rack * self.rack_step,
        );
        for share in [0.2, 0.05] {
            let r = worst.reading;
            if inside.0 {
                let step = share * self.travel_step;
                let here = worst.badness;
                let k = peak(here, |k| {
                    offer(&mut worst, r.travel + k as f64 * step, r.rack)
                });
                offer(&mut worst, r.travel + k * step, r.rack);
            }
            let r = worst.reading;
            if inside.1 {
                let step = share * self.rack_step;
                let here = worst.badness;
                let k = peak(here, |k| {
                    offer(&mut worst, r.travel, r.rack + k as f64 * step)
                });
                offer(&mut worst, r.travel, r.rack + k * step);
            }
        }
        Some(worst)
    }

    fn worst_index(
        &self,
        badness: &impl Fn(&Reading) -> Option<f64>,
    ) -> Option<(usize, usize, Worst)> {
        let mut found: Option<(usize, usize, Worst)> = None;
        for (c, column) in self.columns.iter().enumerate() {
            for (k, reading) in column.readings.iter().enumerate() {
                let Some(badness) = badness(reading) else {
                    continue;
                };
                if found.is_none_or(|(_, _, w)| badness > w.badness) {
                    let worst = Worst {
                        badness,
                        reading: *reading,
                    };
                    found = Some((c, column.first + k, worst));
                }
            }
        }
        found
    }

    fn at(&self, column: usize, travel: usize) -> Option<&Reading> {
        let column = self.columns.get(column)?;
        column.readings.get(travel.checked_sub(column.first)?)
    }
}

/// Where, in steps, a parabola through the value here and those at neighbouring steps peaks: nought when it is highest here.
fn peak(here: f64, mut at: impl FnMut(isize) -> Option<f64>) -> f64 {
    match (at(-1), at(1)) {
        (Some(low), Some(high)) => {
            let bend = low - 2.0 * here + high;
            if bend < 0.0 {
                (0.5 * (low - high) / bend).clamp(-1.0, 1.0)
            } else {
                0.0
            }
        }
        (None, Some(one)) => one_sided(here, one, at(2)),
        (Some(one), None) => -one_sided(here, one, at(-2)),
        (None, None) => 0.0,
    }
}

/// The same at an end, from the two steps inward.
fn one_sided(here: f64, one: f64, two: Option<f64>) -> f64 {
    let Some(two) = two else {
        return 0.0;
    };
    let slope = -1.5 * here + 2.0 * one - 0.5 * two;
    let bend = here - 2.0 * one + two;
    if slope > 0.0 && bend < 0.0 {
        (-slope / bend).clamp(0.0, 1.0)
    } else {
        0.0
    }
}
