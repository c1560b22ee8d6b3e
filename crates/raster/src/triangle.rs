//! Which pixels a triangle covers: exact, in integers.

use std::ops::Range;

/// Grid steps in a pixel.
pub(crate) const STEPS_PER_PX: i64 = 256;
const HALF_PX: i64 = STEPS_PER_PX / 2;

/// A corner on the grid of 1/256 pixel, from the picture's top left.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct GridPoint {
    pub(crate) x: i64,
    pub(crate) y: i64,
}

impl GridPoint {
    /// The grid point nearest to a position in pixels; halves go up, so that a shift by whole steps changes nothing.
    pub(crate) fn nearest(x_px: f64, y_px: f64) -> Self {
        let steps = STEPS_PER_PX as f64;
        Self {
            x: floor(x_px * steps + 0.5),
            y: floor(y_px * steps + 0.5),
        }
    }

    /// The position in pixels.
    pub(crate) fn in_px(self) -> [f64; 2] {
        let steps = STEPS_PER_PX as f64;
        [self.x as f64 / steps, self.y as f64 / steps]
    }
}

/// The largest whole number not above `value`. Without a call into the maths library, which has no fixed speed.
pub(crate) fn floor(value: f64) -> i64 {
    let cut = value as i64;
    if cut as f64 > value {
        cut.saturating_sub(1)
    } else {
        cut
    }
}

/// Columns and rows of pixels, ends excluded.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct PixelRect {
    pub(crate) columns: Range<i64>,
    pub(crate) rows: Range<i64>,
}

/// `per_x * x + per_y * y + constant` is at least 0 for the grid points on the covered side of an edge.
#[derive(Clone, Copy, Debug)]
struct Edge {
    per_x: i64,
    per_y: i64,
    constant: i64,
}

impl Edge {
    /// The edge from `a` to `b` of a triangle that runs clockwise on the screen (y down).
    ///
    /// On the edge itself the value is 0 for a top or left edge and -1 for the others, so that a centre on a shared
    /// edge belongs to one triangle.
    fn new(a: GridPoint, b: GridPoint) -> Self {
        let (dx, dy) = (b.x - a.x, b.y - a.y);
        let is_top_or_left = dy < 0 || (dy == 0 && dx > 0);
        Self {
            per_x: -dy,
            per_y: dx,
            constant: dy * a.x - dx * a.y - i64::from(!is_top_or_left),
        }
    }

    /// Narrows the columns to those whose centres, in the row with its centre at `y`, lie on the covered side.
    fn narrow(&self, y: i64, columns: &mut Range<i64>) {
        let step = self.per_x * STEPS_PER_PX;
        let at_first_centre = self.per_x * HALF_PX + self.per_y * y + self.constant;
        if step > 0 {
            columns.start = columns.start.max(-at_first_centre.div_euclid(step));
        } else if step < 0 {
            columns.end = columns.end.min(at_first_centre.div_euclid(-step) + 1);
        } else if at_first_centre < 0 {
            columns.end = columns.start;
        }
    }
}

/// The pixels of one triangle.
#[derive(Clone, Debug)]
pub(crate) struct Coverage {
    edges: [Edge; 3],
    bounds: PixelRect,
}

impl Coverage {
    /// `None` if the triangle has no area. Coordinates are at most 2^28 steps, so that no product overflows.
    pub(crate) fn new([a, mut b, mut c]: [GridPoint; 3]) -> Option<Self> {
        let twice_area = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
        if twice_area == 0 {
            return None;
        }
        if twice_area < 0 {
            std::mem::swap(&mut b, &mut c);
        }
        Some(Self {
            edges: [Edge::new(a, b), Edge::new(b, c), Edge::new(c, a)],
            bounds: PixelRect {
                columns: touched([a.x, b.x, c.x]),
                rows: touched([a.y, b.y, c.y]),
            },
        })
    }

    /// The rows inside `clip` that the triangle may touch.
    pub(crate) fn rows(&self, clip: &PixelRect) -> Range<i64> {
        self.bounds.rows.start.max(clip.rows.start)..self.bounds.rows.end.min(clip.rows.end)
    }

    /// The covered columns of a row inside `clip`.
    pub(crate) fn columns(&self, row: i64, clip: &PixelRect) -> Range<i64> {
        let mut columns = self.bounds.columns.start.max(clip.columns.start)
            ..self.bounds.columns.end.min(clip.columns.end);
        for edge in &self.edges {
            edge.narrow(row * STEPS_PER_PX + HALF_PX, &mut columns);
        }
        columns
    }
}

/// The pixels whose centres lie between the least and the greatest of three coordinates.
fn touched(coordinates: [i64; 3]) -> Range<i64> {
    let least = coordinates.into_iter().fold(i64::MAX, i64::min);
    let greatest = coordinates.into_iter().fold(i64::MIN, i64::max);
    let first = (least - HALF_PX + STEPS_PER_PX - 1).div_euclid(STEPS_PER_PX);
    let last = (greatest - HALF_PX).div_euclid(STEPS_PER_PX);
    first..last + 1
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    const CANVAS: PixelRect = PixelRect {
        columns: 0..12,
        rows: 0..12,
    };

    fn pixels(corners: [GridPoint; 3]) -> Vec<(i64, i64)> {
        let Some(coverage) = Coverage::new(corners) else {
            return Vec::new();
        };
        coverage
            .rows(&CANVAS)
            .flat_map(|row| {
                coverage
                    .columns(row, &CANVAS)
                    .map(move |column| (row, column))
            })
            .collect()
    }

    fn grid_point() -> impl Strategy<Value = GridPoint> {
        // Half of the points lie on pixel centres or corners, where ties are decided.
        let any = (-300_i64..3400, -300_i64..3400);
        let tie = (-2_i64..26, -2_i64..26).prop_map(|(x, y)| (x * HALF_PX, y * HALF_PX));
        prop_oneof![any, tie].prop_map(|(x, y)| GridPoint { x, y })
    }

    /// Twice the signed area, from the textbook's formula; positive clockwise on the screen.
    fn signed(a: GridPoint, b: GridPoint, p: GridPoint) -> i64 {
        (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)
    }

    #[test]
    fn floor_rounds_down_on_both_sides_of_zero() {
        let cases = [(1.5, 1), (-1.5, -2), (-2.0, -2), (0.0, 0), (-0.25, -1)];
        for (value, expected) in cases {
            assert_eq!(floor(value), expected);
        }
        assert_eq!(floor(f64::NEG_INFINITY), i64::MIN);
        assert_eq!(floor(f64::NAN), 0);
    }

    #[test]
    fn positions_go_to_the_nearest_grid_point_and_halves_go_up() {
        let cases = [
            (0.4, 0),
            (0.6, 1),
            (0.5, 1),
            (-0.5, 0),
            (-0.6, -1),
            (256.0, 256),
        ];
        for (steps, expected) in cases {
            let point = GridPoint::nearest(steps / 256.0, steps / 256.0);
            assert_eq!(
                point,
                GridPoint {
                    x: expected,
                    y: expected
                }
            );
        }
    }

    proptest! {
        /// A triangle cut into three at a point inside it covers the same pixels, each once.
        #[test]
        fn parts_of_a_triangle_cover_it_once(
            [a, b, c] in [grid_point(), grid_point(), grid_point()],
            weights in (1_i64..100, 1_i64..100, 1_i64..100),
        ) {
            let (u, v, w) = weights;
            let total = u + v + w;
            let p = GridPoint {
                x: (u * a.x + v * b.x + w * c.x).div_euclid(total),
                y: (u * a.y + v * b.y + w * c.y).div_euclid(total),
            };
            let way = signed(a, b, c).signum();
            prop_assume!(way != 0);
            let inside = [(a, b), (b, c), (c, a)].iter().all(|&(s, e)| signed(s, e, p).signum() == way);
            prop_assume!(inside);
            let mut parts: Vec<_> = [[a, b, p], [b, c, p], [c, a, p]].into_iter().flat_map(pixels).collect();
            parts.sort_unstable();
            prop_assert_eq!(parts, pixels([a, b, c]));
        }

        /// The span of a row agrees with asking every pixel centre on its own.
        #[test]
        fn spans_agree_with_a_test_of_every_centre([a, b, c] in [grid_point(), grid_point(), grid_point()]) {
            let way = signed(a, b, c).signum();
            let covered = pixels([a, b, c]);
            for row in CANVAS.rows {
                for column in CANVAS.columns.clone() {
                    let centre = GridPoint { x: column * 256 + 128, y: row * 256 + 128 };
                    let sides = [(a, b), (b, c), (c, a)].map(|(s, e)| signed(s, e, centre) * way);
                    let is_covered = covered.contains(&(row, column));
                    if way != 0 && sides.iter().all(|&side| side > 0) {
                        prop_assert!(is_covered);
                    }
                    if way == 0 || sides.iter().any(|&side| side < 0) {
                        prop_assert!(!is_covered);
                    }
                }
            }
        }

        /// Winding makes no difference.
        #[test]
        fn winding_makes_no_difference([a, b, c] in [grid_point(), grid_point(), grid_point()]) {
            prop_assert_eq!(pixels([a, b, c]), pixels([a, c, b]));
            prop_assert_eq!(pixels([a, b, c]), pixels([b, c, a]));
        }
    }
}
