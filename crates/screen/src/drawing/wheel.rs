//! The wheel as its true projection.
//!
//! A build gives the tyre's loaded radius only; its width and shoulders here are a sketch (common practice, no source).

use egui::Pos2;
use trammel_geometry::{Point, Vector};

use super::{Projection, scene::Joints, sheet::Sheet};

/// Tyre width in radii.
const WIDTH: f64 = 0.4;
/// Roundness of the shoulders in radii.
const SHOULDER: f64 = 0.09;
/// Rim radius in tyre radii.
const RIM: f64 = 0.5;
/// Corners of an outline.
const CORNERS: usize = 96;

/// Width of the tyre as drawn, mm.
pub(crate) fn width(radius: f64) -> f64 {
    WIDTH * radius
}

/// Outline of the tyre in a view.
///
/// The tyre is taken as a disc, widened along the spin axis and rounded by a ball. The outline of such a sum of convex bodies in a view is found by
/// going round all directions of the view: in each the farthest point is the sum of the farthest points.
pub(crate) fn tyre(sheet: &Sheet, projection: Projection, wheel: &Joints) -> Vec<Pos2> {
    let shoulder = SHOULDER * wheel.radius;
    let half = 0.5 * width(wheel.radius) - shoulder;
    round(sheet, projection, |towards| {
        let across = wheel.spin.dot(&towards);
        wheel.centre
            + wheel.spin * (half * across.signum())
            + in_plane(wheel.spin, towards) * (wheel.radius - shoulder)
            + towards * shoulder
    })
}

/// Outline of the rim's outboard edge in a view.
pub(crate) fn rim(sheet: &Sheet, projection: Projection, wheel: &Joints) -> Vec<Pos2> {
    round(sheet, projection, |towards| {
        wheel.centre + in_plane(wheel.spin, towards) * (RIM * wheel.radius)
    })
}

/// The unit vector in the wheel plane nearest to `towards`; nought along the spin axis.
fn in_plane(spin: Vector, towards: Vector) -> Vector {
    (towards - spin * spin.dot(&towards))
        .try_normalize(1e-9)
        .unwrap_or_default()
}

fn round(sheet: &Sheet, projection: Projection, farthest: impl Fn(Vector) -> Point) -> Vec<Pos2> {
    let (right, down) = projection.frame();
    (0..CORNERS)
        .map(|n| {
            // Half a step off, so that no direction falls on the spin axis of a straight wheel.
            let angle = std::f64::consts::TAU * (n as f64 + 0.5) / CORNERS as f64;
            let (sin, cos) = angle.sin_cos();
            sheet.screen(projection, farthest(right * cos + down * sin))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::test_scene;
    use trammel_geometry::Wheel;

    fn extents(outline: &[Pos2]) -> (f64, f64) {
        let span = |of: fn(&Pos2) -> f32| {
            let (low, high) = outline
                .iter()
                .map(of)
                .fold((f32::INFINITY, f32::NEG_INFINITY), |(l, h), v| {
                    (l.min(v), h.max(v))
                });
            f64::from(high - low)
        };
        (span(|p| p.x), span(|p| p.y))
    }

    #[test]
    fn a_straight_wheel_is_as_wide_and_high_as_the_tyre_in_every_view() {
        let (sheet, mut wheel) = test_scene::wheel();
        wheel.spin = Vector::y();
        let (w, d) = (
            width(wheel.radius) * sheet.scale,
            2.0 * wheel.radius * sheet.scale,
        );
        // The polygon falls short of the round by 1 - cos(half a step).
        let short = 0.002 * d;
        for (projection, expected) in [
            (Projection::Front, (w, d)),
            (Projection::Plan, (w, d)),
            (Projection::Side, (d, d)),
        ] {
            let (across, high) = extents(&tyre(&sheet, projection, &wheel));
            assert!(
                (across - expected.0).abs() < short,
                "{projection:?} {across}"
            );
            assert!((high - expected.1).abs() < short, "{projection:?} {high}");
        }
    }

    #[test]
    fn a_steered_wheel_looks_wider_from_ahead_and_rims_are_ellipses() {
        let (sheet, mut wheel) = test_scene::wheel();
        let toe = 0.3_f64;
        wheel.spin = Wheel {
            centre: wheel.centre,
            loaded_radius: wheel.radius,
            toe,
            camber: 0.0,
        }
        .spin_axis();
        let (across, high) = extents(&rim(&sheet, Projection::Front, &wheel));
        let rim_diameter = 2.0 * RIM * wheel.radius * sheet.scale;
        assert!((across - rim_diameter * toe.sin()).abs() < 0.01 * rim_diameter);
        assert!((high - rim_diameter).abs() < 0.01 * rim_diameter);
        let straight = width(wheel.radius) * sheet.scale;
        assert!(extents(&tyre(&sheet, Projection::Front, &wheel)).0 > 1.5 * straight);
    }
}
