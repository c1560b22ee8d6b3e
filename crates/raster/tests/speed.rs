//! How long a busy screen takes: `cargo test -p trammel-raster --test speed -- --ignored --nocapture`.

mod common;

use std::time::Instant;

use common::set_fonts;
use egui::{Color32, Context, Grid, Panel, Rect, ScrollArea, Stroke, Ui, pos2, vec2};
use trammel_raster::{Painter, Picture, View, render};

const SIZE: [usize; 2] = [1280, 800];

/// Text to the rim on the left; on the right a drawing of curves, circles and filled shapes.
fn busy(ui: &mut Ui) {
    Panel::left("table").exact_size(480.0).show(ui, |ui| {
        ScrollArea::vertical().show(ui, |ui| {
            Grid::new("points")
                .striped(true)
                .num_columns(4)
                .show(ui, |ui| {
                    for row in 0..40 {
                        ui.label(format!("front upper pivot {row}"));
                        for axis in 0..3 {
                            let _ = ui.button(format!(
                                "{}.{:03}",
                                row * 7 + axis,
                                (row * 37 + axis * 11) % 1000
                            ));
                        }
                        ui.end_row();
                    }
                });
        });
    });
    egui::CentralPanel::default().show(ui, |ui| {
        let (rect, painter) = (ui.max_rect(), ui.painter());
        for plot in 0..4 {
            let base = rect.top() + 180.0 * plot as f32;
            let frame = Rect::from_min_size(pos2(rect.left(), base), vec2(rect.width(), 170.0));
            painter.rect_filled(frame, 6.0, Color32::from_rgba_unmultiplied(40, 60, 90, 160));
            for curve in 0..5 {
                let point = |i: usize| {
                    let x = i as f32 / 199.0;
                    let y = (x * 9.0 + curve as f32 * 0.7).sin() * (60.0 - 8.0 * curve as f32);
                    pos2(frame.left() + x * frame.width(), frame.center().y + y)
                };
                let stroke = Stroke::new(1.5, Color32::from_rgb(230, 40 * curve, 80));
                painter.line((0..200).map(point).collect(), stroke);
            }
            for mark in 0..60 {
                let centre = pos2(frame.left() + 12.0 * mark as f32, frame.center().y);
                painter.circle(
                    centre,
                    5.0,
                    Color32::DARK_BLUE,
                    Stroke::new(1.0, Color32::WHITE),
                );
            }
        }
    });
}

#[test]
#[ignore = "measures time"]
fn a_busy_screen() {
    let context = Context::default();
    set_fonts(&context);
    let mut painter = Painter::new();
    let screen = vec2(SIZE[0] as f32, SIZE[1] as f32);
    let mut shapes = Vec::new();
    for frame in 0..3 {
        let input = egui::RawInput {
            screen_rect: Some(Rect::from_min_size(pos2(0.0, 0.0), screen)),
            time: Some(f64::from(frame) * 0.25),
            ..Default::default()
        };
        let mut output = context.run_ui(input, busy);
        painter.update_textures(&mut output.textures_delta).unwrap();
        shapes = output.shapes;
    }
    let primitives = context.tessellate(shapes, 1.0);
    let mut picture = Picture::new(SIZE[0], SIZE[1], Color32::BLACK).unwrap();
    let mut times_ms: Vec<_> = (0..21)
        .map(|_| {
            let start = Instant::now();
            assert!(painter.paint(&mut picture, 1.0, &primitives).is_nothing());
            start.elapsed().as_secs_f64() * 1e3
        })
        .collect();
    times_ms.sort_by(f64::total_cmp);
    println!(
        "painting 1280 x 800: median {:.1} ms, least {:.1} ms",
        times_ms[10], times_ms[0]
    );

    let start = Instant::now();
    let view = View {
        size_points: screen,
        pixels_per_point: 1.0,
        settle_frames: 3,
    };
    let shown = render(&view, set_fonts, busy).unwrap();
    println!(
        "headless from nothing, four frames: {:.1} ms",
        start.elapsed().as_secs_f64() * 1e3
    );
    let start = Instant::now();
    println!(
        "PNG: {} bytes, {:.1} ms",
        shown.to_png().unwrap().len(),
        start.elapsed().as_secs_f64() * 1e3
    );
    if let Some(path) = std::env::var_os("RASTER_PICTURE") {
        shown.write_png(path).unwrap();
    }
}
