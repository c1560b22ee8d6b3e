//! Nothing in a mesh makes the painter panic.
#![allow(clippy::unwrap_used, reason = "helpers of tests fail as tests do")]

mod common;

use common::{HALF_WHITE, clipped, painter, rectangle, rows, triangles};
use egui::epaint::{PaintCallback, Primitive, Vertex};
use egui::{ClippedPrimitive, Color32, Mesh, Pos2, Rect, TextureId, pos2};
use proptest::prelude::*;
use trammel_raster::{Picture, Skipped};

fn paint(mesh: Mesh) -> (Picture, Skipped) {
    let mut picture = Picture::new(4, 2, Color32::TRANSPARENT).unwrap();
    let skipped = painter().paint(&mut picture, 1.0, &[clipped(mesh, Rect::EVERYTHING)]);
    (picture, skipped)
}

#[test]
fn indices_without_a_vertex_are_left_out_and_counted() {
    let mut mesh = rectangle((0.0, 0.0), (4.0, 2.0), HALF_WHITE);
    mesh.indices.extend([0, 1, 6, u32::MAX, 0, 1, 0, 1]);
    let (picture, skipped) = paint(mesh);
    assert_eq!(skipped.broken_triangles, 3);
    assert_eq!(rows(&picture, HALF_WHITE), ["####"; 2]);
}

#[test]
fn positions_that_are_not_finite_are_left_out_and_counted() {
    for bad in [f32::NAN, f32::INFINITY, f32::NEG_INFINITY] {
        let mut mesh = rectangle((0.0, 0.0), (4.0, 2.0), HALF_WHITE);
        mesh.append(triangles(&[(0.0, 0.0), (bad, 1.0), (0.0, 2.0)], HALF_WHITE));
        let mut texture = triangles(&[(0.0, 0.0), (4.0, 0.0), (0.0, 2.0)], HALF_WHITE);
        texture.vertices[2].uv.y = bad;
        mesh.append(texture);
        let (picture, skipped) = paint(mesh);
        assert_eq!(skipped.not_finite_triangles, 2);
        assert_eq!(rows(&picture, HALF_WHITE), ["####"; 2]);
    }
}

#[test]
fn triangles_without_area_paint_nothing() {
    for points in [[(1.0, 1.0); 3], [(0.0, 0.0), (2.0, 1.0), (4.0, 2.0)]] {
        let (picture, skipped) = paint(triangles(&points, HALF_WHITE));
        assert!(skipped.is_nothing());
        assert_eq!(rows(&picture, HALF_WHITE), ["...."; 2]);
    }
}

#[test]
fn callbacks_are_counted() {
    let callback = ClippedPrimitive {
        clip_rect: Rect::EVERYTHING,
        primitive: Primitive::Callback(PaintCallback {
            rect: Rect::EVERYTHING,
            callback: std::sync::Arc::new(()),
        }),
    };
    let mut picture = Picture::new(1, 1, Color32::BLACK).unwrap();
    let skipped = painter().paint(&mut picture, 1.0, &[callback]);
    assert_eq!(skipped.callbacks, 1);
    assert_eq!(
        skipped.to_string(),
        "callbacks that need graphics hardware: 1"
    );
}

#[test]
fn odd_scales_and_clips_paint_nothing() {
    let mesh = rectangle((0.0, 0.0), (4.0, 2.0), HALF_WHITE);
    let blank = Picture::new(4, 2, Color32::TRANSPARENT).unwrap();
    for (scale, clip) in [
        (f32::NAN, Rect::EVERYTHING),
        (f32::INFINITY, Rect::EVERYTHING),
        (0.0, Rect::EVERYTHING),
        (1.0, Rect::NOTHING),
        (1.0, Rect::NAN),
        (1.0, Rect::from_min_max(pos2(3.0, 2.0), pos2(1.0, 0.0))),
    ] {
        let mut picture = blank.clone();
        let _ = painter().paint(&mut picture, scale, &[clipped(mesh.clone(), clip)]);
        assert_eq!(picture, blank, "scale {scale}, clip {clip:?}");
    }
}

fn any_vertex() -> impl Strategy<Value = Vertex> {
    let number = || {
        prop_oneof![
            any::<f32>(),
            -10.0_f32..10.0,
            Just(f32::MAX),
            Just(f32::MIN)
        ]
    };
    (number(), number(), number(), number(), any::<[u8; 4]>()).prop_map(
        |(x, y, u, v, [r, g, b, a])| Vertex {
            pos: pos2(x, y),
            uv: Pos2::new(u, v),
            color: Color32::from_rgba_premultiplied(r, g, b, a),
        },
    )
}

proptest! {
    #[test]
    fn any_mesh_is_painted_without_a_panic(
        vertices in prop::collection::vec(any_vertex(), 0..8),
        indices in prop::collection::vec(0_u32..9, 0..30),
        scale in prop_oneof![any::<f32>(), 0.5_f32..3.0],
        clip in any::<[f32; 4]>(),
    ) {
        let mesh = Mesh { indices, vertices, texture_id: TextureId::default() };
        let clip = Rect::from_min_max(pos2(clip[0], clip[1]), pos2(clip[2], clip[3]));
        let primitives = [clipped(mesh.clone(), clip), clipped(mesh, Rect::EVERYTHING)];
        let mut first = Picture::new(8, 8, Color32::TRANSPARENT).unwrap();
        let mut second = first.clone();
        prop_assert_eq!(
            painter().paint(&mut first, scale, &primitives),
            painter().paint(&mut second, scale, &primitives)
        );
        prop_assert_eq!(first, second);
    }
}
