//! Which errors readings can and can't tell apart.

use nalgebra::DMatrix;
use trammel_geometry::greatest_first;
use trammel_tuning::{Coordinate, Tolerance};

/// Effects this nearly in proportion are one and the same to the readings.
const SAME: f64 = 0.97;
/// An error of its tolerance that moves the readings by less than this many of their standard deviations, taken together, is not seen.
const UNSEEN: f64 = 1.0;

/// What readings say about the errors, and what they can't.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Told {
    /// How many independent figures the readings fix better than the tolerances did.
    pub figures: usize,
    /// Coordinates that act alike on these readings, those that act most first; an error can be in any one of a group.
    pub alike: Vec<Vec<Coordinate>>,
    /// Coordinates whose likely errors these readings don't show.
    pub unseen: Vec<Coordinate>,
}

/// From the readings' slopes (in standard deviations of reading and coordinate) and the coordinates' covariance (in their tolerances).
#[must_use]
pub fn tell_apart(tolerances: &[Tolerance], slopes: &DMatrix<f64>, scaled: &DMatrix<f64>) -> Told {
    let column = |i: usize| slopes.column(i);
    let mut order: Vec<usize> = (0..tolerances.len()).collect();
    greatest_first(&mut order, |&at| column(at).norm());
    let mut groups: Vec<Vec<usize>> = Vec::new();
    let mut unseen = Vec::new();
    for i in order {
        let size = column(i).norm();
        if !(size > UNSEEN) {
            unseen.push(i);
            continue;
        }
        let same = |g: &&mut Vec<usize>| {
            let first = g
                .first()
                .map(|&f| column(f).dot(&column(i)) / (column(f).norm() * size));
            first.is_some_and(|cosine| cosine.abs() > SAME)
        };
        match groups.iter_mut().find(same) {
            Some(group) => group.push(i),
            None => groups.push(vec![i]),
        }
    }
    let named = |g: Vec<usize>| -> Vec<Coordinate> {
        g.into_iter()
            .filter_map(|i| tolerances.get(i))
            .map(|t| t.coordinate)
            .collect()
    };
    // In its own tolerances a coordinate starts with variance 1; a figure known to better than half of that was told.
    let figures = scaled
        .clone()
        .symmetric_eigen()
        .eigenvalues
        .iter()
        .filter(|v| **v < 0.5)
        .count();
    Told {
        figures,
        alike: groups.into_iter().map(named).collect(),
        unseen: named(unseen),
    }
}
