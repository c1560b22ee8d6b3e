//! Bands of toe change and their colours.

use egui::Color32;

/// Upper ends of the bands, degrees, about evenly spaced in the logarithm; what is more has the last colour.
pub(super) const LEVELS: [f64; 9] = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0];

/// Colour of the least and of the most toe change. From dark blue to pale yellow: the pair that red-green colour blindness leaves apart, and
/// lightness alone gives the order.
const LEAST: [f64; 3] = [12.0, 44.0, 104.0];
const MIDDLE: [f64; 3] = [112.0, 142.0, 146.0];
const MOST: [f64; 3] = [250.0, 242.0, 196.0];

/// Number of the band of a value.
pub(super) fn band(value: f64) -> usize {
    LEVELS.partition_point(|&level| level < value)
}

/// Colour of a band.
pub(super) fn colour(band: usize) -> Color32 {
    let part = 2.0 * band as f64 / LEVELS.len() as f64;
    let (from, to, part) = if part < 1.0 {
        (LEAST, MIDDLE, part)
    } else {
        (MIDDLE, MOST, part - 1.0)
    };
    let mix = |i: usize| {
        let [a, b] = [from, to].map(|c| c.get(i).copied().unwrap_or(0.0));
        (a + (b - a) * part.min(1.0)).round() as u8
    };
    Color32::from_rgb(mix(0), mix(1), mix(2))
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
