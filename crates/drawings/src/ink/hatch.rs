//! Parallel lines inside a contour.

use trammel_fabrication::plane::{Contour, Edge, Point, Vector};

/// Nearest that lines may lie, mm: closer ones would print as a grey.
const CLOSEST: f64 = 0.3;

/// Every line inside, from edge to edge.
pub(super) fn lines(
    contour: &Contour,
    angle: f64,
    spacing: f64,
    mut put: impl FnMut(Point, Point),
) {
    if !(spacing.is_finite() && angle.is_finite()) {
        return;
    }
    let spacing = spacing.max(CLOSEST);
    let (along, across) = (
        Vector::new(angle.cos(), angle.sin()),
        Vector::new(-angle.sin(), angle.cos()),
    );
    let bounds = contour.bounds();
    let corners = [
        bounds.min,
        bounds.max,
        Point::new(bounds.min.x, bounds.max.y),
        Point::new(bounds.max.x, bounds.min.y),
    ];
    let heights = corners.map(|corner| corner.coords.dot(&across));
    let least = heights.iter().copied().fold(f64::INFINITY, f64::min);
    let most = heights.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let mut level = (least / spacing).floor() * spacing + spacing / 2.0;
    while level < most {
        let mut crossings: Vec<f64> = contour
            .edges()
            .flat_map(|edge| crossings(&edge, along, across, level))
            .collect();
        crossings.sort_by(f64::total_cmp);
        for pair in crossings.chunks_exact(2) {
            if let [from, to] = *pair {
                let on = |reach: f64| Point::from(along * reach + across * level);
                put(on(from), on(to));
            }
        }
        level += spacing;
    }
}

/// Where a line of this level meets an edge, measured along it. An end that lies on the line counts for the edge that goes on above it only.
fn crossings(edge: &Edge, along: Vector, across: Vector, level: f64) -> Vec<f64> {
    let height = |point: Point| point.coords.dot(&across) - level;
    match edge {
        Edge::Line { from, to } => {
            let (a, b) = (height(*from), height(*to));
            if (a > 0.0) == (b > 0.0) {
                return Vec::new();
            }
            let point = from + (to - from) * (a / (a - b));
            vec![point.coords.dot(&along)]
        }
        Edge::Arc(arc) => {
            let up = -height(arc.centre);
            if up.abs() >= arc.radius {
                return Vec::new();
            }
            let half = (arc.radius * arc.radius - up * up).sqrt();
            [-half, half]
                .into_iter()
                .filter(|reach| {
                    let out = across * up + along * *reach;
                    arc.covers(out.y.atan2(out.x))
                })
                .map(|reach| arc.centre.coords.dot(&along) + reach)
                .collect()
        }
    }
}
