//! Toe as an angle and as the difference over a rim or tyre.

/// Toe, rad, of a difference over a diameter, mm: `asin(difference / diameter)`. Of one wheel with its own difference (a straight edge or
/// string), of both together with the difference across the pair. `None` where the difference is no toe of that diameter.
#[must_use]
pub fn toe_of_difference(difference: f64, diameter: f64) -> Option<f64> {
    let sine = difference / diameter;
    (diameter > 0.0 && sine.abs() < 0.5).then(|| sine.asin())
}

/// The difference over a diameter, mm, that a toe makes.
#[must_use]
pub fn difference_of_toe(toe: f64, diameter: f64) -> f64 {
    diameter * toe.sin()
}
