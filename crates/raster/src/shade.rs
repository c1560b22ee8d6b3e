//! The colour of a triangle's pixels, and how it lands on what is there.

use egui::{Color32, TextureFilter};

use crate::guard::Corner;
use crate::texture::{TexelPoint, Texture};

/// A value that changes evenly over the triangle, from `value` at its first corner.
#[derive(Clone, Copy, Debug)]
struct Plane {
    value: f64,
    per_x: f64,
    per_y: f64,
}

/// The triangle's sides from its first corner, in pixels, and the determinant of the two.
#[derive(Clone, Copy, Debug)]
struct Frame {
    to_second: [f64; 2],
    to_third: [f64; 2],
    determinant: f64,
}

impl Frame {
    fn new([a, b, c]: [[f64; 2]; 3]) -> Self {
        let to_second = [b[0] - a[0], b[1] - a[1]];
        let to_third = [c[0] - a[0], c[1] - a[1]];
        Self {
            to_second,
            to_third,
            determinant: to_second[0] * to_third[1] - to_second[1] * to_third[0],
        }
    }

    /// The plane through the values at the three corners. Equal values give slopes of exactly zero.
    fn plane(&self, values: [f64; 3]) -> Plane {
        let (second, third) = (values[1] - values[0], values[2] - values[0]);
        let across = second * self.to_third[1] - third * self.to_second[1];
        let down = third * self.to_second[0] - second * self.to_third[0];
        Plane {
            value: values[0],
            per_x: across / self.determinant,
            per_y: down / self.determinant,
        }
    }
}

impl Plane {
    /// The value below or above the first corner.
    fn at_row(&self, dy: f64) -> f64 {
        self.value + self.per_y * dy
    }

    fn is_flat(&self) -> bool {
        self.per_x == 0.0 && self.per_y == 0.0
    }
}

/// How the pixels of one triangle get their colour.
pub(crate) struct Shade<'a> {
    first_corner: [f64; 2],
    colour: [Plane; 4],
    texel: [Plane; 2],
    texture: &'a Texture,
    filter: TextureFilter,
}

impl<'a> Shade<'a> {
    /// For a triangle with an area; `grid_px` are its corners' positions on the grid, in pixels.
    pub(crate) fn new(grid_px: [[f64; 2]; 3], corners: &[Corner; 3], texture: &'a Texture) -> Self {
        let frame = Frame::new(grid_px);
        let size = texture.size();
        let texel = [0, 1].map(|i| frame.plane([0, 1, 2].map(|k| corners[k].uv[i] * size[i])));
        let colour = [0, 1, 2, 3].map(|i| frame.plane([0, 1, 2].map(|k| corners[k].colour[i])));
        let [u, v] = texel;
        let across = u.per_x * u.per_x + v.per_x * v.per_x;
        let down = u.per_y * u.per_y + v.per_y * v.per_y;
        Self {
            first_corner: grid_px[0],
            colour,
            texel,
            texture,
            filter: texture.filter(across.max(down)),
        }
    }

    /// The colour of every pixel, if the triangle has but one.
    pub(crate) fn single_colour(&self) -> Option<[f32; 4]> {
        let is_flat = self.colour.iter().chain(&self.texel).all(Plane::is_flat);
        is_flat.then(|| {
            let [u, v] = self.texel;
            let texel = self.texture.read(
                TexelPoint {
                    x: u.value,
                    y: v.value,
                },
                self.filter,
            );
            tint(self.colour.map(|plane| plane.value), texel)
        })
    }

    /// Blends the triangle over the pixels of a row, the first of which is in column `column`.
    pub(crate) fn blend_row(&self, pixels: &mut [Color32], column: i64, row: i64) {
        let dy = row as f64 + 0.5 - self.first_corner[1];
        let dx = |i: usize| (column + i as i64) as f64 + 0.5 - self.first_corner[0];
        let starts = self.colour.map(|plane| plane.at_row(dy));
        let slopes = self.colour.map(|plane| plane.per_x);
        let colour = |i: usize| {
            let dx = dx(i);
            std::array::from_fn(|k| starts[k] + slopes[k] * dx)
        };
        let [u, v] = self.texel.map(|plane| plane.at_row(dy));
        let [u_slope, v_slope] = self.texel.map(|plane| plane.per_x);
        let texel = |i: usize| {
            let dx = dx(i);
            let at = TexelPoint {
                x: u + u_slope * dx,
                y: v + v_slope * dx,
            };
            self.texture.read(at, self.filter)
        };
        if self.texel.iter().all(Plane::is_flat) {
            let texel = texel(0);
            blend_each(pixels, |i| tint(colour(i), texel));
        } else if self.colour.iter().all(Plane::is_flat) {
            blend_each(pixels, |i| tint(starts, texel(i)));
        } else {
            blend_each(pixels, |i| tint(colour(i), texel(i)));
        }
    }
}

/// A colour (0 to 255) times a texel (0 to 1).
#[inline]
fn tint(colour: [f64; 4], texel: [f32; 4]) -> [f32; 4] {
    std::array::from_fn(|i| colour[i] as f32 * texel[i])
}

#[inline]
fn blend_each(pixels: &mut [Color32], source: impl Fn(usize) -> [f32; 4]) {
    for (i, pixel) in pixels.iter_mut().enumerate() {
        let source = source(i);
        if source != [0.0; 4] {
            *pixel = over(source, *pixel);
        }
    }
}

/// Blends one colour over a run of pixels.
pub(crate) fn blend_single(pixels: &mut [Color32], source: [f32; 4]) {
    if source == [0.0; 4] {
        return;
    }
    if source[3] >= 255.0 {
        pixels.fill(over(source, Color32::TRANSPARENT));
        return;
    }
    for pixel in pixels {
        *pixel = over(source, *pixel);
    }
}

/// Premultiplied source over what is there, rounded to nearest; `as` keeps the result within 0 to 255.
#[inline]
fn over(source: [f32; 4], under: Color32) -> Color32 {
    let let_through = 1.0 - (source[3] / 255.0).min(1.0);
    let under = under.to_array();
    let [r, g, b, a] =
        std::array::from_fn(|i| (source[i] + f32::from(under[i]) * let_through + 0.5) as u8);
    Color32::from_rgba_premultiplied(r, g, b, a)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_plane_goes_through_its_corners() {
        let corners = [[2.0, 3.0], [10.0, 4.0], [1.0, 9.0]];
        let plane = Frame::new(corners).plane([5.0, 40.0, -7.0]);
        for (corner, expected) in corners.iter().zip([5.0, 40.0, -7.0]) {
            let value = plane.at_row(corner[1] - 3.0) + plane.per_x * (corner[0] - 2.0);
            assert!((value - expected).abs() < 1e-12);
        }
    }

    #[test]
    fn equal_values_make_a_flat_plane() {
        let plane = Frame::new([[0.1, 0.2], [7.3, 0.9], [3.3, 5.7]]).plane([0.3; 3]);
        assert!(plane.is_flat());
    }

    #[test]
    fn blending_follows_the_premultiplied_formula() {
        let under = Color32::from_rgba_premultiplied(100, 200, 0, 255);
        // 60 + 100 (1 - 0.4) = 120, 0 + 200 * 0.6 = 120, 102 + 0, 102 + 255 * 0.6 = 255.
        let blended = over([60.0, 0.0, 102.0, 102.0], under);
        assert_eq!(blended.to_array(), [120, 120, 102, 255]);
        // Light that adds stops at full.
        assert_eq!(
            over([200.0, 200.0, 3.0, 0.0], under).to_array(),
            [255, 255, 3, 255]
        );
    }

    #[test]
    fn the_quick_ways_give_the_same_bytes() {
        let sources = [
            [0.0; 4],
            [10.0, 20.0, 30.0, 255.0],
            [1.0, 0.0, 0.0, 0.0],
            [9.4, 3.7, 60.2, 99.9],
        ];
        let under: Vec<_> = (0..=255)
            .map(|v| Color32::from_rgba_premultiplied(v, 0, v / 2, v))
            .collect();
        for source in sources {
            let mut quick = under.clone();
            blend_single(&mut quick, source);
            let plain: Vec<_> = under.iter().map(|pixel| over(source, *pixel)).collect();
            assert_eq!(quick, plain);
        }
    }
}
