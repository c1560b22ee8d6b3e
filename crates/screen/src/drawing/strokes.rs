//! Many short straight strokes as one mesh: a drawing has some two thousand dashes, and as shapes of their own they cost more than all the rest.

use egui::{Color32, Mesh, Pos2, Stroke};

/// Adds a straight stroke with soft edges, one pixel (`pixel` points) wide as the rest of the screen has them.
pub(crate) fn add(mesh: &mut Mesh, a: Pos2, b: Pos2, stroke: Stroke, pixel: f32) {
    let length = (b - a).length();
    if length <= 0.0 || !length.is_finite() {
        return;
    }
    let side = (b - a).rot90() / length;
    let core = (0.5 * (stroke.width - pixel)).max(0.0);
    let edge = 0.5 * (stroke.width.max(pixel) + pixel);
    // Thinner than a pixel: as wide as one, and so much fainter.
    let colour = stroke.color.gamma_multiply((stroke.width / pixel).min(1.0));
    let across = [
        (-edge, Color32::TRANSPARENT),
        (-core, colour),
        (core, colour),
        (edge, Color32::TRANSPARENT),
    ];
    let Ok(first) = u32::try_from(mesh.vertices.len()) else {
        return;
    };
    for (off, colour) in across {
        mesh.colored_vertex(a + side * off, colour);
        mesh.colored_vertex(b + side * off, colour);
    }
    for strip in 0..3 {
        if strip == 1 && core == 0.0 {
            continue;
        }
        let n = first + 2 * strip;
        mesh.add_triangle(n, n + 1, n + 2);
        mesh.add_triangle(n + 1, n + 2, n + 3);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::pos2;

    fn stroke(width: f32) -> Mesh {
        let mut mesh = Mesh::default();
        let line = Stroke::new(width, Color32::WHITE);
        add(&mut mesh, pos2(10.0, 5.0), pos2(30.0, 5.0), line, 1.0);
        mesh
    }

    /// Ink on a section across the stroke: the integral of its opacity.
    fn ink(mesh: &Mesh) -> f32 {
        let section: Vec<(f32, f32)> = mesh
            .vertices
            .iter()
            .step_by(2)
            .map(|v| (v.pos.y, f32::from(v.color.a()) / 255.0))
            .collect();
        section
            .windows(2)
            .map(|w| (w[1].0 - w[0].0).abs() * 0.5 * (w[0].1 + w[1].1))
            .sum()
    }

    #[test]
    fn a_stroke_holds_as_much_ink_as_it_is_wide() {
        for width in [0.5, 0.8, 1.0, 1.2, 2.4] {
            let found = ink(&stroke(width));
            assert!((found - width).abs() < 0.01, "{width}: {found}");
        }
    }

    #[test]
    fn a_stroke_is_a_whole_mesh_and_one_of_no_length_is_none() {
        assert!(stroke(1.2).is_valid());
        let mut mesh = Mesh::default();
        let at = pos2(1.0, 1.0);
        add(&mut mesh, at, at, Stroke::new(1.0, Color32::WHITE), 1.0);
        assert!(mesh.is_empty());
    }
}
