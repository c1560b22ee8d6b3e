//! Corners far outside the picture, brought within reach of the integers.

/// The furthest coordinate from the picture's top left, in pixels: 2^20, or 2^28 grid steps.
const GUARD_PX: f64 = 1_048_576.0;

/// A corner of a triangle: position in pixels, texture position, premultiplied colour (0 to 255).
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Corner {
    pub(crate) px: [f64; 2],
    pub(crate) uv: [f64; 2],
    pub(crate) colour: [f64; 4],
}

impl Corner {
    fn between(self, other: Self, share: f64) -> Self {
        let mix = |from: f64, to: f64| from + (to - from) * share;
        Self {
            px: [0, 1].map(|i| mix(self.px[i], other.px[i])),
            uv: [0, 1].map(|i| mix(self.uv[i], other.uv[i])),
            colour: [0, 1, 2, 3].map(|i| mix(self.colour[i], other.colour[i])),
        }
    }
}

/// Calls `paint` with the triangle, or with the triangles that its part within [`GUARD_PX`] is made of.
pub(crate) fn within_guard(corners: [Corner; 3], mut paint: impl FnMut([Corner; 3])) {
    let is_near = |corner: &Corner| corner.px.iter().all(|px| px.abs() <= GUARD_PX);
    if corners.iter().all(is_near) {
        return paint(corners);
    }
    let mut polygon = corners.to_vec();
    for (axis, sign) in [(0, 1.0), (0, -1.0), (1, 1.0), (1, -1.0)] {
        polygon = cut(&polygon, axis, sign);
    }
    if let [first, rest @ ..] = polygon.as_slice() {
        for pair in rest.windows(2) {
            paint([*first, pair[0], pair[1]]);
        }
    }
}

/// The part of a convex polygon where `sign * px[axis]` is at most [`GUARD_PX`].
fn cut(polygon: &[Corner], axis: usize, sign: f64) -> Vec<Corner> {
    let outside = |corner: &Corner| sign * corner.px[axis] - GUARD_PX;
    let mut kept = Vec::with_capacity(polygon.len() + 1);
    for (i, corner) in polygon.iter().enumerate() {
        let next = &polygon[(i + 1) % polygon.len()];
        let (here, there) = (outside(corner), outside(next));
        if here <= 0.0 {
            kept.push(*corner);
        }
        // Always from the inner corner outwards: two triangles that share the edge get the same new corner.
        if here <= 0.0 && there > 0.0 {
            kept.push(onto_guard(
                corner.between(*next, here / (here - there)),
                axis,
                sign,
            ));
        } else if here > 0.0 && there <= 0.0 {
            kept.push(onto_guard(
                next.between(*corner, there / (there - here)),
                axis,
                sign,
            ));
        }
    }
    kept
}

/// Takes out the rounding error in the coordinate that the cut fixes.
fn onto_guard(mut corner: Corner, axis: usize, sign: f64) -> Corner {
    corner.px[axis] = sign * GUARD_PX;
    corner
}

#[cfg(test)]
mod tests {
    use super::*;

    fn corner(x: f64, y: f64) -> Corner {
        Corner {
            px: [x, y],
            uv: [x, y],
            colour: [x; 4],
        }
    }

    fn parts(corners: [Corner; 3]) -> Vec<[Corner; 3]> {
        let mut parts = Vec::new();
        within_guard(corners, |part| parts.push(part));
        parts
    }

    fn area(parts: &[[Corner; 3]]) -> f64 {
        let twice = |[a, b, c]: &[Corner; 3]| {
            (b.px[0] - a.px[0]) * (c.px[1] - a.px[1]) - (b.px[1] - a.px[1]) * (c.px[0] - a.px[0])
        };
        parts.iter().map(|part| twice(part) / 2.0).sum()
    }

    #[test]
    fn a_near_triangle_passes_unchanged() {
        let near = [corner(0.0, 0.0), corner(10.0, 0.0), corner(0.0, 10.0)];
        assert_eq!(parts(near), vec![near]);
    }

    #[test]
    fn a_triangle_outside_leaves_nothing() {
        let far = [corner(2e6, 0.0), corner(3e6, 0.0), corner(2e6, 10.0)];
        assert_eq!(area(&parts(far)), 0.0);
    }

    #[test]
    fn a_far_triangle_keeps_the_part_within_the_guard() {
        // Right angle at the origin, legs of twice the guard: the part within it is the unit square of the guard.
        let far = [
            corner(0.0, 0.0),
            corner(2.0 * GUARD_PX, 0.0),
            corner(0.0, 2.0 * GUARD_PX),
        ];
        let parts = parts(far);
        assert_eq!(area(&parts), GUARD_PX * GUARD_PX);
        for corner in parts.iter().flatten() {
            assert!(corner.px.iter().all(|px| (0.0..=GUARD_PX).contains(px)));
            assert_eq!(corner.px, corner.uv);
        }
    }
}
