//! Textures: reading, partial updates, freeing, refused updates.
#![allow(clippy::unwrap_used, reason = "helpers of tests fail as tests do")]

mod common;

use common::{clipped, paint_with, painter, send, textured};
use egui::epaint::ImageDelta;
use egui::{Color32, ColorImage, Rect, TextureId, TextureOptions, TexturesDelta, pos2};
use trammel_raster::{Painter, Picture, TextureError};

const ID: TextureId = TextureId::Managed(7);

fn greys(size: [usize; 2], values: &[u8]) -> ColorImage {
    ColorImage::from_gray(size, values)
}

fn holding(image: ColorImage, options: TextureOptions) -> Painter {
    let mut painter = painter();
    send(&mut painter, ID, ImageDelta::full(image, options));
    painter
}

/// The whole texture on a picture of this size, as grey values.
fn shown(painter: &Painter, width: usize, height: usize) -> Vec<u8> {
    let rect = Rect::from_min_max(pos2(0.0, 0.0), pos2(width as f32, height as f32));
    let picture = paint_with(painter, width, height, textured(rect, ID));
    picture.pixels().iter().map(Color32::r).collect()
}

#[test]
fn a_texture_at_its_own_size_is_copied() {
    let values = [0, 50, 100, 150, 200, 250];
    let painter = holding(greys([3, 2], &values), TextureOptions::LINEAR);
    assert_eq!(shown(&painter, 3, 2), values);
}

#[test]
fn linear_reading_mixes_neighbours_and_clamps_at_the_rim() {
    // Two texels over eight pixels: texel centres at x = 2 and 6, so the mix grows by a quarter a pixel from 1/8.
    let painter = holding(greys([2, 1], &[0, 160]), TextureOptions::LINEAR);
    assert_eq!(shown(&painter, 8, 1), [0, 0, 20, 60, 100, 140, 160, 160]);
}

#[test]
fn linear_reading_mixes_in_both_directions() {
    // Corners 0, 64 / 128, 255 at four times the size; pixel (1, 1) and its like lie at 1/8 or 3/8 between them.
    let painter = holding(greys([2, 2], &[0, 64, 128, 255]), TextureOptions::LINEAR);
    let pixels = shown(&painter, 8, 8);
    let expected = |x: f64, y: f64| {
        let (upper, lower) = (64.0 * x, 128.0 + 127.0 * x);
        (upper + (lower - upper) * y).round() as u8
    };
    assert_eq!(pixels[2 * 8 + 2], expected(0.125, 0.125));
    assert_eq!(pixels[3 * 8 + 5], expected(0.875, 0.375));
    assert_eq!(pixels[0], 0);
    assert_eq!(pixels[63], 255);
}

#[test]
fn nearest_reading_repeats_texels() {
    let painter = holding(greys([2, 1], &[10, 200]), TextureOptions::NEAREST);
    assert_eq!(shown(&painter, 6, 1), [10, 10, 10, 200, 200, 200]);
}

#[test]
fn each_direction_of_scaling_has_its_own_filter() {
    let options = TextureOptions {
        minification: egui::TextureFilter::Nearest,
        ..TextureOptions::LINEAR
    };
    let painter = holding(greys([4, 1], &[0, 100, 200, 40]), options);
    // Shrunk to half: centres at 1 and 3 texels, the nearest texels there are 1 and 3.
    assert_eq!(shown(&painter, 2, 1), [100, 40]);
    // Enlarged twice: linear.
    assert_eq!(shown(&painter, 8, 1)[1], 25);
}

#[test]
fn wrap_modes_repeat_and_mirror() {
    let cases = [
        (TextureOptions::NEAREST_REPEAT, [10, 90, 10, 90]),
        (TextureOptions::NEAREST_MIRRORED_REPEAT, [10, 90, 90, 10]),
        (TextureOptions::NEAREST, [10, 90, 90, 90]),
    ];
    for (options, expected) in cases {
        let painter = holding(greys([2, 1], &[10, 90]), options);
        let mut mesh = textured(Rect::from_min_max(pos2(0.0, 0.0), pos2(4.0, 1.0)), ID);
        for vertex in &mut mesh.vertices {
            vertex.uv.x *= 2.0;
        }
        let picture = paint_with(&painter, 4, 1, mesh);
        let values: Vec<_> = picture.pixels().iter().map(Color32::r).collect();
        assert_eq!(values, expected);
    }
}

#[test]
fn the_vertex_colour_tints_the_texture() {
    let painter = holding(greys([1, 1], &[128]), TextureOptions::LINEAR);
    let mut mesh = textured(Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0)), ID);
    for vertex in &mut mesh.vertices {
        vertex.color = Color32::from_rgb(255, 100, 0);
    }
    let picture = paint_with(&painter, 1, 1, mesh);
    // 100 * 128 / 255 = 50.2.
    assert_eq!(picture.pixel(0, 0), Some(Color32::from_rgb(128, 50, 0)));
}

#[test]
fn a_partial_update_changes_its_part_only() {
    let mut painter = holding(greys([4, 3], &[9; 12]), TextureOptions::LINEAR);
    let part = greys([2, 2], &[1, 2, 3, 4]);
    send(
        &mut painter,
        ID,
        ImageDelta::partial([1, 1], part, TextureOptions::LINEAR),
    );
    assert_eq!(shown(&painter, 4, 3), [9, 9, 9, 9, 9, 1, 2, 9, 9, 3, 4, 9]);
}

#[test]
fn a_full_update_may_change_the_size() {
    let mut painter = holding(greys([4, 3], &[9; 12]), TextureOptions::LINEAR);
    send(
        &mut painter,
        ID,
        ImageDelta::full(greys([2, 1], &[5, 6]), TextureOptions::LINEAR),
    );
    assert_eq!(shown(&painter, 2, 1), [5, 6]);
}

#[test]
fn a_freed_texture_still_shows_in_the_frame_that_frees_it() {
    let mut painter = holding(greys([1, 1], &[77]), TextureOptions::LINEAR);
    let mut delta = TexturesDelta::default();
    delta.free(ID);
    painter.update_textures(&mut delta).unwrap();
    assert!(delta.is_empty());
    assert_eq!(shown(&painter, 1, 1), [77]);

    painter
        .update_textures(&mut TexturesDelta::default())
        .unwrap();
    let mut picture = Picture::new(1, 1, Color32::BLACK).unwrap();
    let mesh = textured(Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0)), ID);
    let skipped = painter.paint(&mut picture, 1.0, &[clipped(mesh, Rect::EVERYTHING)]);
    assert_eq!(skipped.meshes_without_texture, 1);
    assert_eq!(skipped.missing_texture, Some(ID));
    assert_eq!(picture.pixel(0, 0), Some(Color32::BLACK));
}

fn refused(painter: &mut Painter, change: ImageDelta) -> TextureError {
    let mut delta = TexturesDelta::default();
    delta.push(ID, change);
    let error = painter.update_textures(&mut delta).unwrap_err();
    assert!(delta.is_empty(), "what is refused must not be sent again");
    error
}

#[test]
fn updates_that_do_not_fit_are_refused_and_change_nothing() {
    let mut painter = holding(greys([2, 2], &[1, 2, 3, 4]), TextureOptions::LINEAR);
    for at in [[1, 0], [0, 2], [usize::MAX, 0]] {
        let part = ImageDelta::partial(at, greys([2, 1], &[8, 8]), TextureOptions::LINEAR);
        assert!(matches!(
            refused(&mut painter, part),
            TextureError::Outside { .. }
        ));
    }
    let mut short = greys([2, 2], &[7; 4]);
    short.pixels.pop();
    let full = ImageDelta::full(short, TextureOptions::LINEAR);
    assert!(matches!(
        refused(&mut painter, full),
        TextureError::Image { pixels: 3, .. }
    ));
    let empty = ImageDelta::full(greys([0, 0], &[]), TextureOptions::LINEAR);
    assert!(matches!(
        refused(&mut painter, empty),
        TextureError::Image { .. }
    ));
    assert_eq!(shown(&painter, 2, 2), [1, 2, 3, 4]);
}

#[test]
fn a_part_of_an_unknown_texture_is_refused() {
    let part = ImageDelta::partial([0, 0], greys([1, 1], &[8]), TextureOptions::LINEAR);
    assert_eq!(
        refused(&mut painter(), part),
        TextureError::Unknown { id: ID }
    );
}
