//! Many cells of a row at once, each in its own lane; plain loops over short arrays that the compiler turns into
//! vector instructions.

use super::{
    series::POINTS,
    table::{PlaneSeries, Table},
};
use crate::Score;

/// Cells worked side by side.
pub(crate) const LANES: usize = 8;
pub(crate) type Lanes = [f64; LANES];

/// Newton steps; a lane that needs more is left to the plain solver.
const STEPS: usize = 4;
/// After a step this short in s the next would be rounding.
const SETTLED: f64 = 1e-7;
/// Growth of the excess, per mm of tie rod and mm of steering arm, below which a lane is left to the plain solver:
/// twice the sine between the two.
const NEAR_DEAD_POINT: f64 = 0.2;

/// One rack position's tables; a missing one leaves every cell to the plain solver.
#[derive(Clone, Debug)]
pub(crate) struct RackTables {
    pub design: Table,
    pub travels: Vec<Station>,
}

#[derive(Clone, Debug)]
pub(crate) enum Station {
    /// The design height itself, where nothing changes.
    Design,
    Travel(Box<Table>),
}

/// Where a chunk of a row stands in the map, and its tie rods.
pub(crate) struct Chunk {
    pub across: Lanes,
    pub up: f64,
    pub rod_length: Lanes,
    /// Steering arm's length square to the steering axis, mm.
    pub arm_length: Lanes,
    /// Sign of the excess's growth at the design position.
    pub side: Lanes,
}

/// Scores of a chunk; where `sound` is not set the lane's figures mean nothing.
pub(crate) struct Scored {
    pub sound: [bool; LANES],
    pub score: [Score; LANES],
}

struct Solved {
    s: Lanes,
    sound: [bool; LANES],
}

/// Scores a chunk at all rack positions with the first `N` terms of each series.
pub(crate) fn score<const N: usize>(racks: &[RackTables], chunk: &Chunk) -> Scored {
    let mut all = Scored {
        sound: [true; LANES],
        score: [Score::NOTHING; LANES],
    };
    for rack in racks {
        let design = solve::<N>(&rack.design, chunk);
        let toe = horner::<N>(&rack.design.toe, &design.s);
        let slope = slope::<N>(&rack.design, chunk, &design);
        let mut sound = design.sound;
        let mut squares = [0.0; LANES];
        let mut largest = [0.0_f64; LANES];
        for station in &rack.travels {
            let Station::Travel(table) = station else {
                continue;
            };
            let solved = solve::<N>(table, chunk);
            let here = horner::<N>(&table.toe, &solved.s);
            for l in 0..LANES {
                let change = here[l] - toe[l];
                squares[l] += change * change;
                largest[l] = if change.abs() > largest[l] {
                    change.abs()
                } else {
                    largest[l]
                };
                sound[l] &= solved.sound[l];
            }
        }
        let count = rack.travels.len().max(1) as f64;
        for l in 0..LANES {
            all.sound[l] &= sound[l];
            all.score[l] = all.score[l].worse(Score {
                largest: largest[l],
                rms: (squares[l] / count).sqrt(),
                slope: slope[l],
            });
        }
    }
    all
}

/// The turn that each lane's tie rod asks for: the root of its excess.
fn solve<const N: usize>(table: &Table, chunk: &Chunk) -> Solved {
    let c = coefficients::<N>(&table.excess, chunk);
    let mut s = reverted(&c);
    let mut growth = [0.0; LANES];
    let mut step = [f64::NAN; LANES];
    for _ in 0..STEPS {
        let mut f = c[N - 1];
        let mut d = [0.0; LANES];
        for k in (0..N - 1).rev() {
            for l in 0..LANES {
                d[l] = d[l] * s[l] + f[l];
                f[l] = f[l] * s[l] + c[k][l];
            }
        }
        let mut longest = 0.0_f64;
        for l in 0..LANES {
            step[l] = f[l] / d[l];
            s[l] -= step[l];
            growth[l] = d[l];
            longest = longest.max(step[l].abs());
        }
        if longest < SETTLED {
            break;
        }
    }
    let mut sound = [false; LANES];
    for l in 0..LANES {
        let least = chunk.rod_length[l]
            * f64::max(table.least_growth, NEAR_DEAD_POINT * chunk.arm_length[l]);
        let per_turn = growth[l] * table.scale * chunk.side[l];
        // Written so that what is not a number is not sound.
        sound[l] = (step[l].abs() < SETTLED) & (s[l].abs() <= 1.0) & (per_turn > least);
    }
    Solved { s, sound }
}

/// Toe per mm of travel at the design height: with the turn held, and by the turn that keeps the tie rod's length.
fn slope<const N: usize>(table: &Table, chunk: &Chunk, solved: &Solved) -> Lanes {
    let Some((excess_rate, toe_rate)) = &table.rates else {
        return [f64::NAN; LANES];
    };
    let c = coefficients::<N>(excess_rate, chunk);
    // Newton's method knows the growth a step before the end only, which is too rough here.
    let growth = growth::<N>(&coefficients(&table.excess, chunk), &solved.s);
    let held = horner::<N>(toe_rate, &solved.s);
    let by_turn = derivative::<N>(&table.toe, &solved.s);
    let mut slope = [0.0; LANES];
    for l in 0..LANES {
        let mut rate = c[N - 1][l];
        for k in (0..N - 1).rev() {
            rate = rate * solved.s[l] + c[k][l];
        }
        slope[l] = held[l] - by_turn[l] * rate / growth[l];
    }
    slope
}

fn coefficients<const N: usize>(series: &PlaneSeries, chunk: &Chunk) -> [Lanes; N] {
    let mut c = [[0.0; LANES]; N];
    for (k, lanes) in c.iter_mut().enumerate() {
        let row = series.constant[k] + series.up[k] * chunk.up;
        let across = series.across[k];
        for (c, a) in lanes.iter_mut().zip(&chunk.across) {
            *c = row + across * a;
        }
    }
    c
}

fn growth<const N: usize>(c: &[Lanes; N], s: &Lanes) -> Lanes {
    let mut sum = [0.0; LANES];
    for k in (1..N).rev() {
        for l in 0..LANES {
            sum[l] = sum[l] * s[l] + c[k][l] * k as f64;
        }
    }
    sum
}

/// The root of the first four terms by reversion of the series, a start for Newton's method.
fn reverted<const N: usize>(c: &[Lanes; N]) -> Lanes {
    let mut s = [0.0; LANES];
    for l in 0..LANES {
        let inverse = 1.0 / c[1][l];
        let y = -c[0][l] * inverse;
        let (two, three) = (c[2][l] * inverse, c[3][l] * inverse);
        s[l] = y * (1.0 - y * (two - y * (2.0 * two * two - three)));
    }
    s
}

fn horner<const N: usize>(series: &[f64; POINTS], s: &Lanes) -> Lanes {
    let mut sum = [series[N - 1]; LANES];
    for k in (0..N - 1).rev() {
        for l in 0..LANES {
            sum[l] = sum[l] * s[l] + series[k];
        }
    }
    sum
}

fn derivative<const N: usize>(series: &[f64; POINTS], s: &Lanes) -> Lanes {
    let mut sum = [0.0; LANES];
    for k in (1..N).rev() {
        for l in 0..LANES {
            sum[l] = sum[l] * s[l] + series[k] * k as f64;
        }
    }
    sum
}
