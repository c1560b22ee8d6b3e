//! The colours of the map, on the screen and in its picture file: from little toe change, which stands out, to much, which fades into the table.
//!
//! The stops are our own, in the Oklab space (B. Ottosson, 2020; its matrices from memory), whose lightness is even to the eye. Along the ramp lightness
//! falls in equal steps and hue goes from yellow to blue, the pair that red-green colour blindness leaves apart, so that the order can be read from
//! lightness alone.

use egui::Color32;

/// Lightness and the two hue axes of Oklab.
type Lab = [f32; 3];

/// Least to most toe change on the dark table.
const DARK: [Lab; 3] = [
    [0.90, -0.02, 0.13],
    [0.615, -0.05, -0.01],
    [0.33, -0.005, -0.085],
];
/// The same on paper: the best is the darkest.
const LIGHT: [Lab; 3] = [
    [0.40, -0.02, -0.125],
    [0.665, -0.05, -0.02],
    [0.93, 0.0, 0.045],
];

/// The colour at `part` of the ramp, nought being the best.
#[must_use]
pub fn colour(dark: bool, part: f32) -> Color32 {
    srgb(lab(dark, part))
}

/// Black or white, whichever reads better on a colour of the ramp: the contrast is never under 4.5.
#[must_use]
pub fn ink_on(under: Color32) -> Color32 {
    // Where (1 + 0.05) / (y + 0.05) = (y + 0.05) / 0.05, the contrasts of WCAG 2.2 with white and with black.
    let even = (1.05_f32 * 0.05).sqrt() - 0.05;
    if luminance(under) > even {
        Color32::BLACK
    } else {
        Color32::WHITE
    }
}

/// Relative luminance of sRGB (IEC 61966-2-1; weights from memory).
fn luminance(c: Color32) -> f32 {
    let linear = |v: u8| {
        let v = f32::from(v) / 255.0;
        if v <= 0.040_45 {
            v / 12.92
        } else {
            ((v + 0.055) / 1.055).powf(2.4)
        }
    };
    0.2126 * linear(c.r()) + 0.7152 * linear(c.g()) + 0.0722 * linear(c.b())
}

fn lab(dark: bool, part: f32) -> Lab {
    let [best, middle, worst] = if dark { DARK } else { LIGHT };
    let part = part.clamp(0.0, 1.0) * 2.0;
    let (a, b, t) = if part < 1.0 {
        (best, middle, part)
    } else {
        (middle, worst, part - 1.0)
    };
    [
        a[0] + (b[0] - a[0]) * t,
        a[1] + (b[1] - a[1]) * t,
        a[2] + (b[2] - a[2]) * t,
    ]
}

fn srgb([l, a, b]: Lab) -> Color32 {
    let cone = |x: f32, y: f32| (l + x * a + y * b).powi(3);
    let (l, m, s) = (
        cone(0.396_337_78, 0.215_803_76),
        cone(-0.105_561_346, -0.063_854_17),
        cone(-0.089_484_18, -1.291_485_5),
    );
    let byte = |v: f32| {
        let v = v.clamp(0.0, 1.0);
        let v = if v <= 0.003_130_8 {
            12.92 * v
        } else {
            1.055 * v.powf(1.0 / 2.4) - 0.055
        };
        (255.0 * v).round() as u8
    };
    Color32::from_rgb(
        byte(4.076_741_7 * l - 3.307_711_6 * m + 0.230_969_94 * s),
        byte(-1.268_438 * l + 2.609_757_4 * m - 0.341_319_38 * s),
        byte(-0.004_196_086 * l - 0.703_418_6 * m + 1.707_614_7 * s),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lightness_goes_one_way_in_even_steps() {
        for dark in [true, false] {
            let all: Vec<f32> = (0..=8)
                .map(|i| luminance(colour(dark, i as f32 / 8.0)).cbrt())
                .collect();
            let steps: Vec<f32> = all.windows(2).map(|w| w[1] - w[0]).collect();
            let mean = (all[8] - all[0]) / 8.0;
            assert!(mean.abs() > 0.05, "{all:?}");
            for step in steps {
                assert!((step / mean - 1.0).abs() < 0.45, "{dark}: {step} of {mean}");
            }
        }
    }

    #[test]
    fn grey_of_oklab_is_grey() {
        let c = srgb([0.6, 0.0, 0.0]);
        assert!(
            c.r().abs_diff(c.g()) <= 1 && c.g().abs_diff(c.b()) <= 1,
            "{c:?}"
        );
        assert_eq!(srgb([1.0, 0.0, 0.0]), Color32::WHITE);
    }
}
