//! Which pixels a mesh covers, and with what.

mod common;

use common::{HALF_WHITE, clipped, paint, painter, rectangle, rows, triangles};
use egui::{Color32, Rect, pos2};
use trammel_raster::Picture;

const RED: Color32 = Color32::from_rgb(255, 0, 0);

#[test]
fn a_rectangle_on_pixel_edges_covers_exactly_its_pixels() {
    let picture = paint(6, 4, rectangle((1.0, 1.0), (4.0, 3.0), RED));
    assert_eq!(
        rows(&picture, RED),
        ["......", ".###..", ".###..", "......"]
    );
}

#[test]
fn centres_on_top_and_left_edges_belong_and_on_bottom_and_right_do_not() {
    let picture = paint(5, 5, rectangle((1.5, 1.5), (3.5, 3.5), RED));
    assert_eq!(
        rows(&picture, RED),
        [".....", ".##..", ".##..", ".....", "....."]
    );
}

#[test]
fn a_step_of_the_grid_beyond_a_centre_takes_it_in() {
    let step = 1.0 / 256.0;
    let picture = paint(5, 5, rectangle((1.5 + step, 1.5), (3.5 + step, 3.5), RED));
    assert_eq!(
        rows(&picture, RED),
        [".....", "..##.", "..##.", ".....", "....."]
    );
}

#[test]
fn a_right_triangle_covers_the_pixels_before_its_slope() {
    // The slope x + y = 4 runs through the centres with column + row = 3; it is a right edge, so they stay out.
    let picture = paint(5, 4, triangles(&[(0.0, 0.0), (4.0, 0.0), (0.0, 4.0)], RED));
    assert_eq!(rows(&picture, RED), ["###..", "##...", "#....", "....."]);
}

#[test]
fn the_other_half_takes_the_centres_on_the_shared_slope() {
    let picture = paint(5, 4, triangles(&[(4.0, 0.0), (4.0, 4.0), (0.0, 4.0)], RED));
    assert_eq!(rows(&picture, RED), ["...#.", "..##.", ".###.", "####."]);
}

#[test]
fn triangles_that_share_an_edge_leave_no_seam_and_blend_no_pixel_twice() {
    let picture = paint(8, 8, rectangle((0.0, 0.0), (8.0, 8.0), HALF_WHITE));
    assert_eq!(rows(&picture, HALF_WHITE), ["########"; 8]);
}

#[test]
fn a_fan_about_a_slanted_centre_blends_each_pixel_once() {
    let rim = [(0.0, 0.0), (9.0, 0.0), (9.0, 9.0), (0.0, 9.0), (0.0, 0.0)];
    let fan: Vec<_> = rim
        .windows(2)
        .flat_map(|pair| [pair[0], pair[1], (3.3, 5.7)])
        .collect();
    let picture = paint(9, 9, triangles(&fan, HALF_WHITE));
    assert_eq!(rows(&picture, HALF_WHITE), ["#########"; 9]);
}

#[test]
fn the_clip_rectangle_is_rounded_to_pixels_and_holds() {
    let mut picture = Picture::new(5, 4, Color32::TRANSPARENT).unwrap();
    let clip = Rect::from_min_max(pos2(0.6, 1.4), pos2(3.4, 2.6));
    let mesh = rectangle((-10.0, -10.0), (50.0, 50.0), RED);
    let skipped = painter().paint(&mut picture, 1.0, &[clipped(mesh, clip)]);
    assert!(skipped.is_nothing());
    assert_eq!(rows(&picture, RED), [".....", ".##..", ".##..", "....."]);
}

#[test]
fn clipping_changes_no_pixel_inside() {
    let mut mesh = triangles(&[(-7.3, -4.1), (31.9, 6.2), (5.5, 40.7)], HALF_WHITE);
    mesh.vertices[1].color = Color32::from_rgba_premultiplied(90, 10, 0, 120);
    let whole = paint(24, 24, mesh.clone());
    let mut part = Picture::new(24, 24, Color32::TRANSPARENT).unwrap();
    let clip = Rect::from_min_max(pos2(5.0, 3.0), pos2(14.0, 21.0));
    assert!(
        painter()
            .paint(&mut part, 1.0, &[clipped(mesh, clip)])
            .is_nothing()
    );
    for row in 0..24 {
        for column in 0..24 {
            let is_inside = (5..14).contains(&column) && (3..21).contains(&row);
            let expected = if is_inside {
                whole.pixel(column, row)
            } else {
                Some(Color32::TRANSPARENT)
            };
            assert_eq!(
                part.pixel(column, row),
                expected,
                "column {column}, row {row}"
            );
        }
    }
}

#[test]
fn points_are_scaled_to_pixels() {
    let mesh = rectangle((1.0, 0.5), (2.0, 1.5), RED);
    let mut picture = Picture::new(6, 4, Color32::TRANSPARENT).unwrap();
    let clip = Rect::from_min_max(pos2(0.0, 0.0), pos2(3.0, 1.0));
    let primitives = [clipped(mesh, clip)];
    assert!(painter().paint(&mut picture, 2.0, &primitives).is_nothing());
    assert_eq!(
        rows(&picture, RED),
        ["......", "..##..", "......", "......"]
    );
}

#[test]
fn colours_change_evenly_between_corners() {
    // From 0 at x = 0 to 240 at x = 8: the centre of column i lies at i + 0.5, that is 30 i + 15.
    let mut mesh = rectangle((0.0, 0.0), (8.0, 2.0), Color32::BLACK);
    for vertex in &mut mesh.vertices {
        let green = if vertex.pos.x > 4.0 { 240 } else { 0 };
        vertex.color = Color32::from_rgb(0, green, 0);
    }
    let picture = paint(8, 2, mesh);
    let greens: Vec<_> = (0..8)
        .filter_map(|column| picture.pixel(column, 1))
        .map(|pixel| pixel.g())
        .collect();
    assert_eq!(greens, [15, 45, 75, 105, 135, 165, 195, 225]);
}

#[test]
fn later_meshes_blend_over_earlier_ones() {
    let mut picture = Picture::new(1, 1, Color32::from_rgb(0, 0, 200)).unwrap();
    let over = rectangle(
        (0.0, 0.0),
        (1.0, 1.0),
        Color32::from_rgba_premultiplied(51, 0, 0, 51),
    );
    let primitives = [
        clipped(over.clone(), Rect::EVERYTHING),
        clipped(over, Rect::EVERYTHING),
    ];
    assert!(painter().paint(&mut picture, 1.0, &primitives).is_nothing());
    // Alpha 0.2 twice: red 51, then 51 + 51 * 0.8 = 91.8; blue 160, then 128.
    assert_eq!(picture.pixel(0, 0), Some(Color32::from_rgb(92, 0, 128)));
}

#[test]
fn a_triangle_that_reaches_far_outside_keeps_its_slope() {
    // The line y = x from far up left to far down right; centres on it belong to the part on its right.
    let far = 1.0e7;
    let right = triangles(&[(-far, -far), (far, -far), (far, far)], HALF_WHITE);
    assert_eq!(
        rows(&paint(4, 4, right), HALF_WHITE),
        ["####", ".###", "..##", "...#"]
    );
    let left = triangles(&[(-far, -far), (far, far), (-far, far)], HALF_WHITE);
    assert_eq!(
        rows(&paint(4, 4, left), HALF_WHITE),
        ["....", "#...", "##..", "###."]
    );
}
