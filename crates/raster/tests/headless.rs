//! A user interface turned into a picture without a window.
#![allow(clippy::unwrap_used, reason = "helpers of tests fail as tests do")]

mod common;

use common::set_fonts;
use egui::{Align2, CentralPanel, Color32, FontId, Sense, Stroke, Ui, Vec2, pos2, vec2};
use trammel_raster::{Picture, RenderError, View, render};

fn view(pixels_per_point: f32) -> View {
    View {
        size_points: vec2(200.0, 120.0),
        pixels_per_point,
        settle_frames: 3,
    }
}

/// Text, a button, a frame, a slanted line and a circle at `x`.
fn screen(ui: &mut Ui, x: f32) {
    CentralPanel::default().show(ui, |ui| {
        ui.heading("Rack end 1/2-20");
        let _ = ui.button("Measure");
        let (_, painter) = ui.allocate_painter(vec2(150.0, 40.0), Sense::hover());
        let origin = painter.clip_rect().min.to_vec2();
        painter.line_segment(
            [pos2(5.0, 5.0) + origin, pos2(140.0, 33.0) + origin],
            Stroke::new(1.5, Color32::LIGHT_BLUE),
        );
        painter.circle_filled(pos2(x, 20.0) + origin, 6.0, Color32::ORANGE);
    });
}

fn picture(pixels_per_point: f32, x: f32) -> Picture {
    render(&view(pixels_per_point), set_fonts, |ui| screen(ui, x)).unwrap()
}

#[test]
fn repeated_runs_give_the_same_bytes() {
    let first = picture(1.0, 50.0);
    assert_eq!((first.width(), first.height()), (200, 120));
    for _ in 0..3 {
        assert_eq!(
            picture(1.0, 50.0).to_png().unwrap(),
            first.to_png().unwrap()
        );
    }
}

#[test]
fn a_point_moved_by_a_tenth_of_a_pixel_changes_the_picture() {
    let (still, moved) = (picture(1.0, 50.0), picture(1.0, 50.1));
    let changed = still
        .pixels()
        .iter()
        .zip(moved.pixels())
        .filter(|(a, b)| a != b)
        .count();
    // Only the rim of a circle of 6 points radius can change: about 2 pi 6 by 3 pixels at most.
    assert!((1..120).contains(&changed), "{changed} pixels changed");
}

#[test]
fn two_pixels_a_point_give_twice_the_picture() {
    let (fine, coarse) = (picture(2.0, 50.0), picture(1.0, 50.0));
    assert_eq!((fine.width(), fine.height()), (400, 240));
    // Averaged back over two by two pixels, it is close to the coarse one: text is hinted anew, so not equal.
    let mut total = 0_u64;
    for row in 0..120 {
        for column in 0..200 {
            let at = |x: usize, y: usize| {
                u64::from(fine.pixel(2 * column + x, 2 * row + y).unwrap().g())
            };
            let mean = (at(0, 0) + at(1, 0) + at(0, 1) + at(1, 1)) / 4;
            total += mean.abs_diff(u64::from(coarse.pixel(column, row).unwrap().g()));
        }
    }
    assert!(total / (200 * 120) < 4, "summed difference {total}");
}

#[test]
fn text_is_painted_in_its_colour() {
    let picture = render(&view(1.0), set_fonts, |ui| {
        ui.painter().rect_filled(ui.max_rect(), 0.0, Color32::BLACK);
        let font = FontId::proportional(60.0);
        ui.painter().text(
            pos2(100.0, 60.0),
            Align2::CENTER_CENTER,
            "I",
            font,
            Color32::RED,
        );
    })
    .unwrap();
    // The stem of an I of 60 points is several pixels wide: full red inside, black at the rim, nothing green.
    assert_eq!(picture.pixel(100, 60), Some(Color32::RED));
    assert_eq!(picture.pixel(70, 60), Some(Color32::BLACK));
    assert!(picture.pixels().iter().all(|pixel| pixel.g() == 0));
}

#[test]
fn where_nothing_is_painted_the_panel_colour_shows() {
    let mut expected = Color32::PLACEHOLDER;
    let picture = render(&view(1.0), set_fonts, |ui| {
        expected = ui.ctx().global_style().visuals.panel_fill;
    })
    .unwrap();
    assert!(picture.pixels().iter().all(|pixel| *pixel == expected));
}

#[test]
fn a_zoom_set_by_the_user_keeps_the_size() {
    let mut seen = Vec2::ZERO;
    let setup = |context: &egui::Context| {
        set_fonts(context);
        context.set_zoom_factor(2.0);
    };
    let picture = render(&view(1.0), setup, |ui| {
        seen = ui.ctx().content_rect().size();
    })
    .unwrap();
    assert_eq!((picture.width(), picture.height()), (200, 120));
    assert_eq!(seen, vec2(100.0, 60.0));
}

#[test]
fn textures_made_and_dropped_on_the_way_are_followed() {
    let mut frame = 0;
    let picture = render(&view(1.0), set_fonts, |ui| {
        frame += 1;
        let image = egui::ColorImage::filled([2, 2], Color32::from_rgb(frame * 40, 0, 0));
        // Dropped at the end of the frame that shows it.
        let texture = ui
            .ctx()
            .load_texture("patch", image, egui::TextureOptions::LINEAR);
        let uv = egui::Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0));
        ui.painter()
            .image(texture.id(), ui.max_rect(), uv, Color32::WHITE);
    })
    .unwrap();
    assert_eq!(frame, 4);
    assert_eq!(picture.pixel(100, 60), Some(Color32::from_rgb(160, 0, 0)));
}

#[test]
fn sizes_and_scales_that_make_no_picture_are_refused() {
    for scale in [0.0, -1.0, f32::NAN, f32::INFINITY] {
        let refused = render(&view(scale), set_fonts, |_| {});
        assert!(
            matches!(refused, Err(RenderError::Scale(_))),
            "scale {scale}"
        );
    }
    for size in [0.0, -5.0, f32::NAN, 1.0e9] {
        let odd = View {
            size_points: vec2(size, 10.0),
            ..view(1.0)
        };
        assert!(
            matches!(
                render(&odd, set_fonts, |_| {}),
                Err(RenderError::Picture(_))
            ),
            "size {size}"
        );
    }
}

#[test]
fn what_needs_graphics_hardware_is_an_error() {
    let refused = render(&view(1.0), set_fonts, |ui| {
        ui.painter().add(egui::epaint::PaintCallback {
            rect: ui.max_rect(),
            callback: std::sync::Arc::new(()),
        });
    });
    let error = refused.unwrap_err().to_string();
    assert!(
        error.contains("callbacks that need graphics hardware"),
        "{error}"
    );
}
