//! Bands of toe change and their colours.

use egui::Color32;
use trammel_screen::tune::ramp;

/// Upper ends of the bands, degrees, about evenly spaced in the logarithm; what is more has the last colour.
pub(super) const LEVELS: [f64; 9] = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0];

/// Number of the band of a value.
pub(super) fn band(value: f64) -> usize {
    LEVELS.partition_point(|&level| level < value)
}

/// Colour of a band: the screen's own, as on paper.
pub(super) fn colour(band: usize) -> Color32 {
    ramp::colour(false, band as f32 / LEVELS.len() as f32)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bands_begin_above_their_levels() {
        assert_eq!(
            [band(0.0), band(0.01), band(0.0101), band(9.0)],
            [0, 0, 1, 9]
        );
    }

    #[test]
    fn every_band_is_lighter_than_the_one_below() {
        // Luma of Rec. 601 (weights from memory).
        let luma = |c: Color32| {
            0.299 * f64::from(c.r()) + 0.587 * f64::from(c.g()) + 0.114 * f64::from(c.b())
        };
        for i in 0..LEVELS.len() {
            let [a, b] = [i, i + 1].map(|i| luma(colour(i)));
            assert!(b > a + 8.0, "{i}: {a} {b}");
        }
    }
}
