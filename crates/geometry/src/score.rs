//! One figure for a whole toe curve.

/// Scores of toe change (toe minus toe at the design height, same rack position) over a range of travel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ToeScore {
    /// Greatest magnitude of toe change, rad.
    pub largest: f64,
    /// The travel at which it occurs, mm.
    pub largest_at: f64,
    /// Root of the mean square toe change, rad.
    pub rms: f64,
    /// Slope at the design height, rad/mm, toe-in in bump positive. A height error of a tie-rod joint shows here.
    pub slope: f64,
    /// Mean of the toe changes at the largest bump and droop that the curve reaches equally, rad: what is left of the curve when the slope
    /// is taken out. A length error of the tie rod shows here.
    pub bowl: f64,
}

impl ToeScore {
    /// The scores of a curve given as `(travel in mm, toe change in rad)` in order of travel, and its slope at design in rad/mm. A
    /// curve without points scores nothing.
    #[must_use]
    pub fn of(curve: &[(f64, f64)], slope: f64) -> Self {
        let mut score = Self {
            largest: 0.0,
            largest_at: 0.0,
            rms: 0.0,
            slope,
            bowl: 0.0,
        };
        let mut squares = 0.0;
        for &(travel, change) in curve {
            squares += change * change;
            if change.abs() > score.largest {
                score.largest = change.abs();
                score.largest_at = travel;
            }
        }
        if let (Some(first), Some(last)) = (curve.first(), curve.last()) {
            score.rms = (squares / curve.len() as f64).sqrt();
            let reach = (-first.0).min(last.0);
            if reach > 0.0 {
                score.bowl = 0.5 * (change_at(curve, reach) + change_at(curve, -reach));
            }
        }
        score
    }
}

/// Toe change at a travel by straight lines between the points.
fn change_at(curve: &[(f64, f64)], travel: f64) -> f64 {
    let after = curve.partition_point(|p| p.0 < travel);
    match (
        after.checked_sub(1).and_then(|i| curve.get(i)),
        curve.get(after),
    ) {
        (Some(a), Some(b)) => a.1 + (b.1 - a.1) * (travel - a.0) / (b.0 - a.0),
        (Some(only), None) | (None, Some(only)) => only.1,
        (None, None) => 0.0,
    }
}
