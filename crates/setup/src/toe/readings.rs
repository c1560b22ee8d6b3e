//! Toe changes read at one setting of the vehicle, in order, ready to be compared with a linkage.

use trammel_geometry::{Linkage, Unreachable, in_order};
use trammel_tuning::{StationFault, Stations, ToeCurves};

/// One reading of toe change.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ToePoint {
    /// Rack position, mm, to the left positive.
    pub rack: f64,
    /// Wheel travel, mm, up positive.
    pub travel: f64,
    /// Toe less toe at ride height with the rack there, rad, toe-in positive.
    pub change: f64,
    /// Its standard deviation, rad.
    pub deviation: f64,
}

/// Readings at one rack position, in order of travel.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// The readings; none at ride height itself.
    pub points: Vec<ToePoint>,
    /// Standard deviation of the reading at ride height, rad, which all of them share.
    pub zero_deviation: f64,
    stations: Stations,
}

/// All readings of one corner at one setting. Never empty, all numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct ToeReadings {
    curves: Vec<Curve>,
}

/// Why numbers are no readings.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum ReadingsFault {
    /// There are none away from ride height.
    #[error(
        "there are no readings away from ride height; take at least one in bump and one in droop"
    )]
    None,
    /// A number is none, or an accuracy is not above nought.
    #[error("{what} is {value}, no usable number")]
    NotUsable {
        /// Which.
        what: &'static str,
        /// What was given.
        value: f64,
    },
    /// Travels or rack positions can't be judged.
    #[error(transparent)]
    Stations(#[from] StationFault),
}

/// Readings within this of ride height, mm, are the zero.
pub(super) const AT_RIDE: f64 = 0.5;

impl ToeReadings {
    /// Of readings in any order; those at ride height fall out, since the others are counted from there. `zero_deviation` is that of the
    /// reading at ride height, rad.
    ///
    /// # Errors
    /// [`ReadingsFault`].
    pub fn new(mut points: Vec<ToePoint>, zero_deviation: f64) -> Result<Self, ReadingsFault> {
        if !(0.0..1.0).contains(&zero_deviation) {
            return Err(ReadingsFault::NotUsable {
                what: "the accuracy",
                value: zero_deviation,
            });
        }
        for p in &points {
            let checks = [
                ("a toe change", p.change, p.change.abs() < 1.0),
                (
                    "an accuracy",
                    p.deviation,
                    p.deviation > 0.0 && p.deviation < 1.0,
                ),
                ("a wheel travel", p.travel, p.travel.abs() <= 1e4),
                ("a rack position", p.rack, p.rack.abs() <= 1e4),
            ];
            if let Some(&(what, value, _)) = checks.iter().find(|c| !c.2) {
                return Err(ReadingsFault::NotUsable { what, value });
            }
        }
        points.retain(|p| p.travel.abs() > AT_RIDE);
        in_order(&mut points, |p| [p.rack, p.travel]);
        let curves = points
            .chunk_by(|a, b| a.rack == b.rack)
            .map(|points| {
                let rack = points.first().map_or(0.0, |p| p.rack);
                let travels = points.iter().map(|p| p.travel).collect();
                let stations = Stations::new(travels, vec![rack])?;
                Ok(Curve {
                    points: points.to_vec(),
                    zero_deviation,
                    stations,
                })
            })
            .collect::<Result<Vec<_>, StationFault>>()?;
        if curves.is_empty() {
            return Err(ReadingsFault::None);
        }
        Ok(Self { curves })
    }

    /// One for each rack position.
    #[must_use]
    pub fn curves(&self) -> &[Curve] {
        &self.curves
    }

    /// Every reading, in order of rack position and travel.
    pub fn points(&self) -> impl Iterator<Item = &ToePoint> {
        self.curves.iter().flat_map(|c| &c.points)
    }

    /// How many there are.
    #[must_use]
    pub fn count(&self) -> usize {
        self.points().count()
    }

    /// The readings nearest to rack centre.
    #[must_use]
    pub fn central(&self) -> Option<&Curve> {
        let off = |c: &&Curve| c.points.first().map_or(f64::INFINITY, |p| p.rack.abs());
        self.curves.iter().min_by(|a, b| off(a).total_cmp(&off(b)))
    }

    /// What a linkage gives where these were read, in their order.
    ///
    /// # Errors
    /// [`Unreachable`] for the first that can't be reached.
    pub fn predicted(&self, linkage: &Linkage) -> Result<Vec<f64>, Unreachable> {
        let mut all = Vec::with_capacity(self.count());
        for curve in &self.curves {
            all.extend(ToeCurves::of(linkage, &curve.stations)?.changes());
        }
        Ok(all)
    }

    /// The largest toe change read, rad.
    #[must_use]
    pub fn largest(&self) -> f64 {
        self.points().fold(0.0, |m, p| m.max(p.change.abs()))
    }

    /// The same readings with each toe change and travel put through a map, for asking what if.
    pub(crate) fn map(&self, map: impl Fn(&ToePoint) -> ToePoint) -> Option<Self> {
        let zero = self.curves.first()?.zero_deviation;
        Self::new(self.points().map(map).collect(), zero).ok()
    }
}
