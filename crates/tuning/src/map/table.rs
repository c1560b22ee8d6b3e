//! The upright's one-parameter family at a held wheel travel, as power series in its turn.

use trammel_geometry::{Arms, Stance};

use super::{
    rod::{Plane3, Rod},
    series::{Fit, POINTS, Series, left_out},
};

/// What a series may leave out, as toe, rad: a tenth of 1e-10 deg.
const ACCURACY: f64 = 2e-13;
/// Widest half-range of turn, rad.
const WIDEST: f64 = 0.5;
/// Least half-range, rad.
const NARROWEST: f64 = 1e-3;
/// Each try takes this part of the half-range when thirteen terms are too few.
const NARROWER: f64 = 0.7;
const TRIES: usize = 8;

/// A range of turn with the tie rod's excess and the toe over it; `s` runs from -1 to 1 over the range.
#[derive(Clone, Debug)]
pub(crate) struct Table {
    pub excess: PlaneSeries,
    pub toe: Series,
    /// Rates per mm of travel; only at the design height.
    pub rates: Option<(PlaneSeries, Series)>,
    /// s per rad of turn.
    pub scale: f64,
    /// Below this growth of the excess, per mm of tie rod and rad of turn, the joints may stand near a dead point.
    pub least_growth: f64,
    /// Coefficients that matter.
    pub terms: usize,
}

/// Series whose coefficients are straight in the map's column and row.
#[derive(Clone, Debug)]
pub(crate) struct PlaneSeries {
    pub constant: Series,
    pub across: Series,
    pub up: Series,
}

/// A travel and rack position with the range of turn that the map's tie rods ask for there.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Range {
    pub travel: f64,
    pub rack: f64,
    pub least: f64,
    pub most: f64,
    /// A lower-arm angle near it.
    pub near: f64,
}

impl Table {
    /// `None` when the arms don't reach some of the range, or no usable range is narrow enough for the series.
    pub(crate) fn new(
        arms: &Arms,
        rod: &Rod,
        fit: &Fit,
        range: &Range,
        with_rates: bool,
    ) -> Option<Self> {
        let middle = 0.5 * (range.least + range.most);
        let mut half = (0.5 * (range.most - range.least)).clamp(NARROWEST, WIDEST);
        for _ in 0..TRIES {
            let stances = stances(arms, fit, range, middle, half);
            let table = stances.and_then(|s| Self::fitted(rod, fit, range, &s, half, with_rates));
            if table.is_some() {
                return table;
            }
            half *= NARROWER;
        }
        None
    }

    fn fitted(
        rod: &Rod,
        fit: &Fit,
        range: &Range,
        stances: &[Stance; POINTS],
        half: f64,
        with_rates: bool,
    ) -> Option<Self> {
        let excess = PlaneSeries::chebyshev(fit, stances, |s| rod.excess(s, range.rack));
        let toe = fit.chebyshev(&stances.map(|s| s.toe_change));
        let rates = with_rates.then(|| {
            (
                PlaneSeries::chebyshev(fit, stances, |s| rod.excess_rate(s, range.rack)),
                fit.chebyshev(&stances.map(|s| s.toe_rate(&s.per_travel))),
            )
        });
        // A turn of `half` is worth about `growth` of excess, somewhat less towards one edge of the map, and `half` of
        // toe.
        let at_middle = excess.constant[1].abs();
        let growth = (at_middle - excess.across[1].abs() - excess.up[1].abs()).max(0.1 * at_middle);
        let excess_allowed = ACCURACY / half * growth;
        let terms = (3..=POINTS - 2)
            .find(|&n| excess.left_out(n) < excess_allowed && left_out(&toe, n) < ACCURACY)?;
        let terms = rates.as_ref().map_or(Some(terms), |(e, t)| {
            (terms..=POINTS - 2)
                .find(|&n| e.left_out(n) < 1e-12 * e.size() && left_out(t, n) < 1e-15)
        })?;
        Some(Self {
            excess: excess.powers(fit, terms),
            toe: fit.powers(&toe, terms),
            rates: rates.map(|(e, t)| (e.powers(fit, terms), fit.powers(&t, terms))),
            scale: 1.0 / half,
            least_growth: least_growth(rod, stances),
            terms,
        })
    }
}

/// The upright at the fit's points, worked outwards from the middle so that each starts near its neighbour.
fn stances(
    arms: &Arms,
    fit: &Fit,
    range: &Range,
    middle: f64,
    half: f64,
) -> Option<[Stance; POINTS]> {
    let centre = POINTS / 2;
    let start = arms.stance(range.travel, middle, range.near)?;
    let mut all = [start; POINTS];
    for side in [true, false] {
        let mut near = start.arm_angle;
        for step in 1..=centre {
            let j = if side { centre + step } else { centre - step };
            all[j] = arms.stance(range.travel, middle + half * fit.points[j], near)?;
            near = all[j].arm_angle;
        }
    }
    Some(all)
}

/// The excess grows by turn at a held height (what the map solves with) and by turn at a held arm angle (what the tie
/// rod's dead point is about). They differ by
/// the wheel's lift in steering times what the travel does; a cell is only taken as well away from both dead points if
/// its growth is more than that
/// difference and a part of the steering arm's length.
fn least_growth(rod: &Rod, stances: &[Stance; POINTS]) -> f64 {
    stances.iter().fold(0.0, |least, s| {
        let by_travel = rod.fastest_outer(s);
        let lift = s.lift_by_turn.abs();
        least.max(2.5 * by_travel * lift)
    })
}

impl PlaneSeries {
    fn chebyshev(fit: &Fit, stances: &[Stance; POINTS], of: impl Fn(&Stance) -> Plane3) -> Self {
        let planes: [Plane3; POINTS] = std::array::from_fn(|j| of(&stances[j]));
        Self {
            constant: fit.chebyshev(&planes.map(|p| p.constant)),
            across: fit.chebyshev(&planes.map(|p| p.across)),
            up: fit.chebyshev(&planes.map(|p| p.up)),
        }
    }

    fn powers(&self, fit: &Fit, terms: usize) -> Self {
        Self {
            constant: fit.powers(&self.constant, terms),
            across: fit.powers(&self.across, terms),
            up: fit.powers(&self.up, terms),
        }
    }

    fn left_out(&self, terms: usize) -> f64 {
        left_out(&self.constant, terms) + left_out(&self.across, terms) + left_out(&self.up, terms)
    }

    fn size(&self) -> f64 {
        left_out(&self.constant, 0) + left_out(&self.across, 0) + left_out(&self.up, 0)
    }
}
