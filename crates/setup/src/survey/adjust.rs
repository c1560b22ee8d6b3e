//! The adjustment of the whole survey at once.

use nalgebra::{DMatrix, DVector, Matrix3};
use trammel_geometry::{Point, Vector};

use super::{
    Blunder, Ellipse, Place, PointId, ReadingId, Side, Survey, SurveyFault, View, Weak, blunder,
    start, weak,
};
use crate::least_squares::{Linear, descend};

/// A sought or re-measured point, found.
#[derive(Clone, Debug, PartialEq)]
pub struct Placed {
    /// Which point.
    pub point: PointId,
    /// Where it is, mm.
    pub at: Point,
    /// How well that is known: covariance, mm^2.
    pub covariance: Matrix3<f64>,
}

/// A reading after the adjustment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Checked {
    /// Which reading.
    pub reading: ReadingId,
    /// What was read less what the found places give, mm or rad.
    pub left_over: f64,
    /// How much of an error in this reading the others show: 0 nothing checks it, 1 it is fully checked.
    pub checked: f64,
    /// The left-over in its own standard deviations; 0 where nothing checks the reading.
    pub standardised: f64,
    /// The smallest slip that would show four times in five, mm or rad; `None` where nothing checks the reading.
    pub smallest_slip_shown: Option<f64>,
}

/// The coordinates that a survey gives.
#[derive(Clone, Debug, PartialEq)]
pub struct Surveyed {
    /// The points that were found, in the survey's order.
    pub points: Vec<Placed>,
    /// The readings in the survey's order.
    pub readings: Vec<Checked>,
    /// Readings beyond the fewest.
    pub spare: usize,
    /// Mean square left-over against the stated accuracies; near 1 when they are right. `None` without spare readings.
    pub variance_factor: Option<f64>,
    /// The reading that contradicts the others, if one does.
    pub blunder: Option<Blunder>,
    /// Points whose place is poorly fixed.
    pub weak: Vec<Weak>,
    /// Covariance of all found coordinates, mm^2: three for each of the points.
    pub covariance: DMatrix<f64>,
}

/// A shown slip: significance 0.001 and power 0.8 for one normal reading (Baarda's usual pair, from memory): 3.29 + 0.84.
const SHOWN: f64 = 4.13;
/// Readings checked less than this are not checked.
pub(super) const UNCHECKED: f64 = 1e-3;

/// The unknowns of a survey: which columns belong to which point.
pub(super) struct Unknowns {
    pub(super) points: Vec<PointId>,
}

impl Unknowns {
    pub(super) fn of(survey: &Survey) -> Self {
        let free = |p: &PointId| !matches!(survey.place(*p), Some(Place::Given(_)) | None);
        Self {
            points: survey.points().filter(free).collect(),
        }
    }

    pub(super) fn column(&self, point: PointId) -> Option<usize> {
        self.points.iter().position(|p| *p == point).map(|i| 3 * i)
    }

    pub(super) fn place(&self, survey: &Survey, x: &DVector<f64>, point: PointId) -> Option<Point> {
        match (self.column(point), survey.place(point)?) {
            (Some(c), _) => x.as_slice().get(c..c + 3).map(Point::from_slice),
            (None, Place::Given(at)) => Some(at),
            (None, _) => None,
        }
    }

    /// Readings first, then what was known of marks that were measured before.
    pub(super) fn rows(&self, survey: &Survey, x: &DVector<f64>) -> Option<Linear> {
        let known: Vec<(usize, Point, Vector)> = self
            .points
            .iter()
            .enumerate()
            .filter_map(|(i, p)| match survey.place(*p) {
                Some(Place::Measured(at, s)) => Some((3 * i, at, s)),
                _ => None,
            })
            .collect();
        let count = survey.readings().len();
        let mut residuals = DVector::zeros(count + 3 * known.len());
        let mut jacobian = DMatrix::zeros(residuals.len(), x.len());
        for (i, r) in survey.readings().iter().enumerate() {
            let model = r.what.model(|p| self.place(survey, x, p))?;
            residuals[i] = (model.value - r.value) / r.deviation;
            for (end, slope) in std::iter::once(model.from).chain(model.to) {
                if let Some(c) = self.column(end) {
                    jacobian
                        .fixed_view_mut::<1, 3>(i, c)
                        .copy_from(&(slope.transpose() / r.deviation));
                }
            }
        }
        for (n, (c, at, s)) in known.iter().enumerate() {
            for k in 0..3 {
                let row = count + 3 * n + k;
                residuals[row] = (x[c + k] - at[k]) / s[k];
                jacobian[(row, c + k)] = 1.0 / s[k];
            }
        }
        Some(Linear {
            residuals,
            jacobian,
        })
    }
}

impl Survey {
    /// The coordinates that the readings give, with how well they are known.
    ///
    /// # Errors
    /// A [`SurveyFault`] when readings are missing, a side has to be told, or nothing fits.
    pub fn adjust(&self) -> Result<Surveyed, SurveyFault> {
        let mut result = self.fit()?;
        result.blunder = blunder::find(self, &result);
        Ok(result)
    }

    /// The adjustment without the search for a wrong reading.
    pub(super) fn fit(&self) -> Result<Surveyed, SurveyFault> {
        let unknowns = Unknowns::of(self);
        if unknowns.points.is_empty() {
            return Err(SurveyFault::NothingSought);
        }
        let first = start::first_places(self)?;
        let coordinates = unknowns.points.iter().filter_map(|p| first.get(p.0));
        let x = DVector::from_iterator(
            3 * unknowns.points.len(),
            coordinates.flat_map(|p| p.iter().copied().collect::<Vec<_>>()),
        );
        let least = descend(|x| unknowns.rows(self, x), x).ok_or(SurveyFault::NoFit)?;
        check_open(self, &unknowns, &least.linear.jacobian)?;
        let covariance = least.linear.covariance().ok_or(SurveyFault::NoFit)?;
        if !least.settled {
            return Err(SurveyFault::NoFit);
        }
        let points: Vec<Placed> = unknowns
            .points
            .iter()
            .enumerate()
            .filter_map(|(i, &point)| {
                Some(Placed {
                    point,
                    at: unknowns.place(self, &least.at, point)?,
                    covariance: covariance.fixed_view::<3, 3>(3 * i, 3 * i).into_owned(),
                })
            })
            .collect();
        let spare = least.linear.residuals.len().saturating_sub(least.at.len());
        Ok(Surveyed {
            weak: weak::weak_points(self, &points),
            readings: check_readings(self, &least.linear, &covariance),
            variance_factor: (spare > 0).then(|| least.linear.cost() / spare as f64),
            points,
            spare,
            blunder: None,
            covariance,
        })
    }
}

/// Left-overs and how far each reading is checked by the others.
fn check_readings(survey: &Survey, linear: &Linear, covariance: &DMatrix<f64>) -> Vec<Checked> {
    let of_row = |(i, r): (usize, &super::Reading)| {
        let row = linear.jacobian.row(i);
        let used = (row * covariance * row.transpose()).x;
        let checked = (1.0 - used).clamp(0.0, 1.0);
        let scaled = -linear.residuals.get(i).copied().unwrap_or(0.0);
        let is_checked = checked > UNCHECKED;
        Checked {
            reading: ReadingId(i),
            left_over: scaled * r.deviation,
            checked,
            standardised: if is_checked {
                scaled / checked.sqrt()
            } else {
                0.0
            },
            smallest_slip_shown: is_checked.then(|| SHOWN * r.deviation / checked.sqrt()),
        }
    };
    survey.readings().iter().enumerate().map(of_row).collect()
}

/// Names the points, and the ways, that can still move without any reading changing.
fn check_open(
    survey: &Survey,
    unknowns: &Unknowns,
    jacobian: &DMatrix<f64>,
) -> Result<(), SurveyFault> {
    let curvature = jacobian.tr_mul(jacobian).symmetric_eigen();
    let top = curvature.eigenvalues.amax();
    let loose: Vec<usize> = (0..curvature.eigenvalues.len())
        .filter(|&i| !(curvature.eigenvalues[i] > top * start::OPEN * start::OPEN))
        .collect();
    let mut points: Vec<String> = Vec::new();
    for &i in &loose {
        let motion = curvature.eigenvectors.column(i);
        for (n, &point) in unknowns.points.iter().enumerate() {
            let way: Vector = motion.fixed_rows::<3>(3 * n).into_owned();
            if way.norm() > 0.1 {
                let said = format!("{} ({})", survey.name(point), both_ways(&way));
                if !points.contains(&said) {
                    points.push(said);
                }
            }
        }
    }
    if loose.is_empty() {
        Ok(())
    } else {
        Err(SurveyFault::Open {
            points,
            more: loose.len(),
        })
    }
}

/// A direction in words that fit both ways along it.
pub(super) fn both_ways(way: &Vector) -> &'static str {
    match Side::of(way) {
        Side::Ahead | Side::Behind => "fore and aft",
        Side::Left | Side::Right => "sideways",
        Side::Above | Side::Below => "up and down",
    }
}

impl Placed {
    /// Its error ellipse in a view, one standard deviation.
    #[must_use]
    pub fn ellipse(&self, view: View) -> Ellipse {
        Ellipse::seen(&self.covariance, view)
    }

    /// Standard deviations of x, y and z, mm.
    #[must_use]
    pub fn deviations(&self) -> Vector {
        self.covariance.diagonal().map(|v| v.max(0.0).sqrt())
    }
}

impl Surveyed {
    /// A point that was found.
    #[must_use]
    pub fn placed(&self, point: PointId) -> Option<&Placed> {
        self.points.iter().find(|p| p.point == point)
    }
}
