//! The wheel travels and rack positions at which a toe curve is judged.

/// Greatest magnitude of a travel or rack position, mm.
const FARTHEST: f64 = 1e4;
/// Most travels, and most rack positions.
const MOST: usize = 1000;

/// Wheel travels in rising order and rack positions, mm; never empty, all numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct Stations {
    travels: Vec<f64>,
    racks: Vec<f64>,
}

/// Why travels and rack positions can't be judged.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum StationFault {
    /// There are none, or too many.
    #[error("{count} {what} were asked for; between 1 and {MOST} can be judged")]
    Count {
        /// Travels or rack positions.
        what: &'static str,
        /// How many there were.
        count: usize,
    },
    /// One is not a number or is no vehicle's.
    #[error("{value} mm is not a usable {what}; expected a number within {FARTHEST} mm either way")]
    NotUsable {
        /// Wheel travel or rack position.
        what: &'static str,
        /// What was given.
        value: f64,
    },
}

impl Stations {
    /// Travels (put in rising order) and rack positions, mm.
    ///
    /// # Errors
    /// [`StationFault`] when there are none or too many, or one is not a usable number.
    pub fn new(mut travels: Vec<f64>, racks: Vec<f64>) -> Result<Self, StationFault> {
        check("travels", "wheel travel", &travels)?;
        check("rack positions", "rack position", &racks)?;
        travels.sort_by(f64::total_cmp);
        Ok(Self { travels, racks })
    }

    /// `count` travels in equal steps from `droop` (negative) to `bump`, mm.
    ///
    /// # Errors
    /// As [`Stations::new`].
    pub fn even(
        droop: f64,
        bump: f64,
        count: usize,
        racks: Vec<f64>,
    ) -> Result<Self, StationFault> {
        let steps = count.min(MOST + 1);
        let step = (bump - droop) / (steps.max(2) - 1) as f64;
        Self::new((0..steps).map(|i| droop + step * i as f64).collect(), racks)
    }

    /// Wheel travels, mm, rising.
    #[must_use]
    pub fn travels(&self) -> &[f64] {
        &self.travels
    }

    /// Rack positions, mm.
    #[must_use]
    pub fn racks(&self) -> &[f64] {
        &self.racks
    }
}

fn check(what: &'static str, one: &'static str, values: &[f64]) -> Result<(), StationFault> {
    if values.is_empty() || values.len() > MOST {
        return Err(StationFault::Count {
            what,
            count: values.len(),
        });
    }
    match values.iter().find(|v| !(v.abs() <= FARTHEST)) {
        Some(&value) => Err(StationFault::NotUsable { what: one, value }),
        None => Ok(()),
    }
}
