//! A survey: marks, points that are sought, and readings between them.

use trammel_geometry::{Point, Vector};

use super::{Reading, SurveyFault, What};

/// Greatest coordinate or length, mm.
const FARTHEST: f64 = 1e5;
/// Most points, and most readings of a survey.
const MOST: usize = 400;

/// A point of a survey.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PointId(pub(super) usize);

/// A reading of a survey.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ReadingId(pub(super) usize);

/// Which of two mirror-image places a point is in, as seen from the other one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Nearer the front.
    Ahead,
    /// Nearer the rear.
    Behind,
    /// Further left.
    Left,
    /// Further right.
    Right,
    /// Higher.
    Above,
    /// Lower.
    Below,
}

/// What is known of a sought point before it is measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Hint {
    /// Which of two places.
    Side(Side),
    /// About where, as drawn.
    Near(Point),
}

/// What is known of a point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Place {
    /// It is here, exactly.
    Given(Point),
    /// It was measured here before, with these standard deviations, mm.
    Measured(Point, Vector),
    /// It is sought.
    Sought(Option<Hint>),
}

/// Points and readings, each checked as it is added.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Survey {
    pub(super) points: Vec<(String, Place)>,
    pub(super) readings: Vec<Reading>,
}

impl Side {
    /// All of them.
    pub const ALL: [Self; 6] = [
        Self::Ahead,
        Self::Behind,
        Self::Left,
        Self::Right,
        Self::Above,
        Self::Below,
    ];

    /// The word for it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Ahead => "ahead",
            Self::Behind => "behind",
            Self::Left => "left",
            Self::Right => "right",
            Self::Above => "above",
            Self::Below => "below",
        }
    }

    pub(super) fn direction(self) -> Vector {
        match self {
            Self::Ahead => Vector::x(),
            Self::Behind => -Vector::x(),
            Self::Left => Vector::y(),
            Self::Right => -Vector::y(),
            Self::Above => Vector::z(),
            Self::Below => -Vector::z(),
        }
    }

    /// The side on which the end of a vector stands, by its longest part.
    pub(super) fn of(v: &Vector) -> Self {
        let along = |s: &Self| s.direction().dot(v);
        let longest = |a: &Self, b: &Self| along(a).total_cmp(&along(b));
        Self::ALL.into_iter().max_by(longest).unwrap_or(Self::Above)
    }
}

impl Survey {
    /// An empty one.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a mark or a sought point.
    ///
    /// # Errors
    /// [`SurveyFault`] when the name is taken or a coordinate is no number.
    pub fn add_point(&mut self, name: &str, place: Place) -> Result<PointId, SurveyFault> {
        if self.points.iter().any(|(n, _)| n == name) {
            return Err(SurveyFault::SameName(name.to_owned()));
        }
        let not_usable = |value: f64, expected| SurveyFault::NotUsable {
            what: format!("a coordinate of {name}"),
            value,
            expected,
        };
        let at = match place {
            Place::Given(p) | Place::Measured(p, _) | Place::Sought(Some(Hint::Near(p))) => p,
            Place::Sought(_) => Point::origin(),
        };
        if let Some(&bad) = at.iter().find(|v| !(v.abs() <= FARTHEST)) {
            return Err(not_usable(bad, "a number within 100 m"));
        }
        if let Place::Measured(_, s) = place
            && let Some(&bad) = s.iter().find(|v| !(**v > 0.0 && **v <= FARTHEST))
        {
            return Err(not_usable(bad, "an accuracy of more than nothing"));
        }
        if self.points.len() >= MOST {
            return Err(not_usable(self.points.len() as f64, "at most 400 points"));
        }
        self.points.push((name.to_owned(), place));
        Ok(PointId(self.points.len() - 1))
    }

    /// Adds a reading.
    ///
    /// # Errors
    /// [`SurveyFault`] when it names no two points of this survey, or a figure is not usable.
    pub fn add_reading(&mut self, reading: Reading) -> Result<ReadingId, SurveyFault> {
        if reading.what.points().any(|p| p.0 >= self.points.len()) {
            return Err(SurveyFault::UnknownPoint);
        }
        let mut ends = reading.what.points();
        if let (Some(a), Some(b)) = (ends.next(), ends.next())
            && a == b
        {
            return Err(SurveyFault::ToItself(self.name(a).to_owned()));
        }
        let not_usable = |part, value, expected| SurveyFault::NotUsable {
            what: format!("{part} {}", self.describe(reading.what)),
            value,
            expected,
        };
        let usable = match reading.what {
            What::Distance(..) => reading.value > 0.0 && reading.value <= FARTHEST,
            What::Slope(..) => reading.value.abs() < std::f64::consts::FRAC_PI_2,
            What::Offset(..) | What::Difference(..) => reading.value.abs() <= FARTHEST,
        };
        if !usable {
            let expected = match reading.what {
                What::Distance(..) => "a length above nought",
                What::Slope(..) => "an angle between level and plumb",
                What::Offset(..) | What::Difference(..) => "a number within 100 m",
            };
            return Err(not_usable("the reading of", reading.value, expected));
        }
        if !(reading.deviation > 0.0 && reading.deviation <= FARTHEST) {
            return Err(not_usable(
                "the accuracy of",
                reading.deviation,
                "more than nothing",
            ));
        }
        if self.readings.len() >= MOST {
            return Err(not_usable(
                "the count of readings at",
                MOST as f64,
                "at most 400 readings",
            ));
        }
        self.readings.push(reading);
        Ok(ReadingId(self.readings.len() - 1))
    }

    /// The point of this name.
    #[must_use]
    pub fn point(&self, name: &str) -> Option<PointId> {
        self.points.iter().position(|(n, _)| n == name).map(PointId)
    }

    /// What a point is called.
    #[must_use]
    pub fn name(&self, point: PointId) -> &str {
        self.points.get(point.0).map_or("", |(n, _)| n)
    }

    /// What is known of a point.
    #[must_use]
    pub fn place(&self, point: PointId) -> Option<Place> {
        self.points.get(point.0).map(|(_, p)| *p)
    }

    /// All points.
    pub fn points(&self) -> impl Iterator<Item = PointId> + use<> {
        (0..self.points.len()).map(PointId)
    }

    /// All readings in the order they were added.
    #[must_use]
    pub fn readings(&self) -> &[Reading] {
        &self.readings
    }

    /// A reading.
    #[must_use]
    pub fn reading(&self, id: ReadingId) -> Option<&Reading> {
        self.readings.get(id.0)
    }

    /// What a reading is, in words: `the tape from A to outer joint`.
    #[must_use]
    pub fn describe(&self, what: What) -> String {
        let name = |p| self.name(p);
        match what {
            What::Distance(a, b) => format!("the tape from {} to {}", name(a), name(b)),
            What::Offset(p, trammel_geometry::Axis::X) => format!("the station of {}", name(p)),
            What::Offset(p, trammel_geometry::Axis::Y) => {
                format!("the offset of {} from the centre line", name(p))
            }
            What::Offset(p, trammel_geometry::Axis::Z) => format!("the height of {}", name(p)),
            What::Difference(a, b, axis) => {
                let way = match axis {
                    trammel_geometry::Axis::X => "forward",
                    trammel_geometry::Axis::Y => "to the left",
                    trammel_geometry::Axis::Z => "up",
                };
                format!("the way {way} from {} to {}", name(a), name(b))
            }
            What::Slope(a, b) => format!("the angle from {} to {}", name(a), name(b)),
        }
    }

    /// The same survey without one reading.
    pub(super) fn without(&self, reading: ReadingId) -> Self {
        let mut rest = self.clone();
        if reading.0 < rest.readings.len() {
            rest.readings.remove(reading.0);
        }
        rest
    }
}
