//! Picture tests through `egui_kittest` with this renderer.
#![cfg(feature = "harness")]

mod common;

use common::set_fonts;
use egui::{Color32, Pos2, pos2, vec2};
use egui_kittest::{Harness, SnapshotOptions};
use trammel_raster::HarnessRenderer;

fn harness(x: f32, pixels_per_point: f32) -> Harness<'static> {
    Harness::builder()
        .with_size(vec2(160.0, 60.0))
        .with_pixels_per_point(pixels_per_point)
        .with_render_cursor(false)
        .with_context_setup(set_fonts)
        .renderer(HarnessRenderer::new())
        .build_ui(move |ui| {
            ui.label("Tie rod 3/8-24");
            let centre: Pos2 = ui.max_rect().left_top() + vec2(x, 35.0);
            ui.painter().circle_filled(centre, 5.0, Color32::ORANGE);
        })
}

#[test]
fn the_picture_equals_the_kept_one_byte_for_byte() {
    harness(40.0, 1.0).snapshot_options("tie_rod", &SnapshotOptions::new().threshold(0.0));
}

#[test]
fn renders_repeat_and_notice_a_tenth_of_a_pixel() {
    let still = harness(40.0, 1.0).render().unwrap();
    assert_eq!(still, harness(40.0, 1.0).render().unwrap());
    assert_ne!(still, harness(40.1, 1.0).render().unwrap());
}

#[test]
fn the_scale_of_the_harness_is_used() {
    let coarse = harness(40.0, 1.0).render().unwrap();
    let fine = harness(40.0, 2.0).render().unwrap();
    assert_eq!(fine.dimensions(), (2 * coarse.width(), 2 * coarse.height()));
}

#[test]
fn textures_follow_across_steps() {
    let mut harness = Harness::builder()
        .with_size(vec2(120.0, 40.0))
        .with_render_cursor(false)
        .with_context_setup(set_fonts)
        .renderer(HarnessRenderer::new())
        .build_ui_state(
            |ui, text: &mut String| {
                ui.label(text.as_str());
            },
            "toe".to_owned(),
        );
    let before = harness.render().unwrap();
    // New letters arrive as partial updates of the font texture, after the first picture.
    *harness.state_mut() = "BUMP 7".to_owned();
    harness.run();
    let after = harness.render().unwrap();
    assert_ne!(before, after);
    *harness.state_mut() = "toe".to_owned();
    harness.run();
    assert_eq!(harness.render().unwrap(), before);
}

#[test]
fn a_picture_that_would_be_incomplete_fails() {
    let mut harness = Harness::builder()
        .with_context_setup(set_fonts)
        .renderer(HarnessRenderer::new())
        .build_ui(|ui| {
            let unsent = egui::TextureId::User(99);
            let rect = ui.max_rect();
            let uv = egui::Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0));
            ui.painter().image(unsent, rect, uv, Color32::WHITE);
        });
    let error = harness.render().unwrap_err();
    assert!(error.contains("User(99)"), "{error}");
}
