//! The map as a picture: flat bands between level lines, hatching where the joint can't be, stripes where it should not.

use egui::{Color32, ColorImage};

use super::{clear::Clear, lattice::Lattice, ramp};
use crate::tokens::Tokens;

/// Size of the picture, pixels, and while the map is still coarse.
const SIZE: [usize; 2] = [288, 162];
const COARSE: [usize; 2] = [144, 81];

/// The lowest level, degrees (or degrees per inch or per 25 mm); each next is twice as much.
const LOWEST: f32 = 0.05;
/// Number of level lines.
const LEVELS: i32 = 8;

/// The levels of the bands.
pub(crate) fn levels() -> impl Iterator<Item = f32> {
    (0..LEVELS).map(|i| LOWEST * 2f32.powi(i))
}

/// A level as it is written on its line.
pub(crate) fn level_label(level: f32) -> String {
    let text = format!("{level:.2}");
    format!("{}°", text.trim_end_matches('0').trim_end_matches('.'))
}

/// Paints a lattice; row nought of the lattice is the lower edge.
pub(crate) fn paint(
    lattice: &Lattice,
    clear: Option<&Clear>,
    fine: bool,
    tokens: &Tokens,
) -> ColorImage {
    let size = if fine { SIZE } else { COARSE };
    let [width, height] = size;
    let bands: Vec<Color32> = (0..=LEVELS)
        .map(|i| ramp::colour(tokens.dark, i as f32 / LEVELS as f32))
        .collect();
    let mut pixels = Vec::with_capacity(width * height);
    for row in 0..height {
        let y = 1.0 - (row as f32 + 0.5) / height as f32;
        for column in 0..width {
            let x = (column as f32 + 0.5) / width as f32;
            let value = lattice.at([x, y]);
            let plain = if value.is_nan() {
                hatch(column, row, tokens)
            } else {
                bands.get(band(value)).copied().unwrap_or(tokens.table)
            };
            let pixel = SIZE[0] / width;
            let (across, up) = (column * pixel, (height - row) * pixel);
            pixels.push(match clear {
                Some(c) if c.keep_out([x, y]).is_some() => {
                    stripe(plain, across, up, tokens.ink_soft)
                }
                Some(c) if c.is_past([x, y]) => stripe(plain, across, up, tokens.danger),
                _ => plain,
            });
        }
    }
    ColorImage::new(size, pixels)
}

fn band(value: f32) -> usize {
    let doublings = (value / LOWEST).log2().floor() + 1.0;
    doublings.clamp(0.0, LEVELS as f32) as usize
}

/// Stripes the other way than the hatching, thin enough for the bands to show between.
fn stripe(plain: Color32, column: usize, row: usize, ink: Color32) -> Color32 {
    let strength = if (column + row) % 11 < 3 { 0.55 } else { 0.14 };
    plain.lerp_to_gamma(ink, strength)
}

fn hatch(column: usize, row: usize, tokens: &Tokens) -> Color32 {
    if (column + row) % 9 < 2 {
        tokens.ink_faint
    } else {
        tokens.panel_deep
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_band_lies_between_two_levels() {
        let all: Vec<f32> = levels().collect();
        assert_eq!(band(0.0), 0);
        for (i, pair) in all.windows(2).enumerate() {
            assert_eq!(band(1.01 * pair[0]), i + 1);
            assert_eq!(band(0.99 * pair[1]), i + 1);
        }
        assert_eq!(band(1e6), all.len());
    }

    #[test]
    fn labels_carry_no_needless_noughts() {
        assert_eq!(
            levels().map(level_label).take(3).collect::<Vec<_>>(),
            ["0.05°", "0.1°", "0.2°"]
        );
    }
}
