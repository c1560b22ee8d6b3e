//! The one wrong reading: data snooping by standardised left-overs (W. Baarda, A testing procedure for use in geodetic
//! networks, 1968; from memory), then the survey once more without it.

use super::{ReadingId, Survey, Surveyed, adjust::Unknowns};
use nalgebra::DVector;
use trammel_geometry::least_first;

/// A standardised left-over beyond this is no chance: one reading in a thousand (normal distribution, two-sided).
const CHANCE: f64 = 3.29;
/// Others this close to the largest can't be told from it.
const ALIKE: f64 = 0.95;

/// A reading that contradicts the others.
#[derive(Clone, Debug, PartialEq)]
pub struct Blunder {
    /// Which.
    pub reading: ReadingId,
    /// By how much it is off, mm or rad: what was read less what the other readings say.
    pub off_by: f64,
    /// What it should have been, mm or rad.
    pub expected: f64,
    /// The left-over in its standard deviations.
    pub standardised: f64,
    /// Readings that fit as well as the wrong one: the others can't tell them apart.
    pub or: Vec<ReadingId>,
    /// A usual slip of that size.
    pub slip: Option<Slip>,
}

/// Usual slips with a tape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slip {
    /// An inch burned and not taken off, or taken off twice.
    BurnedInch,
    /// Ten centimetres burned, or the digit before misread.
    HundredMillimetres,
    /// One centimetre misread.
    TenMillimetres,
    /// A foot misread.
    Foot,
}

impl Slip {
    const ALL: [(Self, f64); 4] = [
        (Self::BurnedInch, 25.4),
        (Self::HundredMillimetres, 100.0),
        (Self::TenMillimetres, 10.0),
        (Self::Foot, 304.8),
    ];

    /// The usual slip nearest to an error, mm, if it is within `near` of it.
    #[must_use]
    pub fn of(off_by: f64, near: f64) -> Option<Self> {
        Self::ALL
            .into_iter()
            .map(|(slip, size)| (slip, (off_by.abs() - size).abs()))
            .filter(|(_, apart)| *apart <= near)
            .min_by(|a, b| a.1.total_cmp(&b.1))
            .map(|(slip, _)| slip)
    }

    /// What may have happened.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::BurnedInch => {
                "about an inch: was an inch burned and not taken off, or taken off twice?"
            }
            Self::HundredMillimetres => {
                "about 100 mm: was the tape started at 100, or a digit misread?"
            }
            Self::TenMillimetres => "about 10 mm: was a centimetre misread?",
            Self::Foot => "about a foot: was a foot misread?",
        }
    }
}

/// The reading with the largest standardised left-over, where that is beyond chance.
pub(super) fn find(survey: &Survey, result: &Surveyed) -> Option<Blunder> {
    let size = |c: &super::Checked| c.standardised.abs();
    let largest = result.readings.iter().map(size).fold(0.0, f64::max);
    if !(largest > CHANCE) {
        return None;
    }
    let suspects = result.readings.iter().filter(|c| size(c) > ALIKE * largest);
    let mut judged: Vec<(f64, ReadingId, f64)> =
        suspects.filter_map(|c| judge(survey, c.reading)).collect();
    least_first(&mut judged, |j| j.0);
    let &(least, reading, expected) = judged.first()?;
    let read = survey.reading(reading)?;
    let off_by = read.value - expected;
    let near = (3.0 * read.deviation).min(4.0);
    Some(Blunder {
        reading,
        off_by,
        expected,
        standardised: result.readings.get(reading.0)?.standardised,
        or: judged
            .iter()
            .skip(1)
            .filter(|j| j.0 < least + 4.0)
            .map(|j| j.1)
            .collect(),
        slip: if read.what.is_angle() {
            None
        } else {
            Slip::of(off_by, near)
        },
    })
}

/// The sum of squares without a reading, and what the others say it should have been.
fn judge(survey: &Survey, reading: ReadingId) -> Option<(f64, ReadingId, f64)> {
    let rest = survey.without(reading);
    let fit = rest.fit().ok()?;
    let unknowns = Unknowns::of(&rest);
    let coordinates: Vec<f64> = fit
        .points
        .iter()
        .flat_map(|p| p.at.coords.iter().copied().collect::<Vec<_>>())
        .collect();
    let x = DVector::from_vec(coordinates);
    let expected = survey
        .reading(reading)?
        .what
        .model(|p| unknowns.place(&rest, &x, p))?
        .value;
    let cost = unknowns.rows(&rest, &x)?.cost();
    Some((cost, reading, expected))
}
