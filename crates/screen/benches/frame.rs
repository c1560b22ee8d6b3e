//! A frame of a drag: everything but the painting. Budget: 2 ms on one core, drawing apart.
//!
//! `frame of a drag` runs the whole screen through egui as the window does, a joint being dragged back and forth by a step each frame; `standing frame`
//! is the same screen at rest; `empty frame` is egui alone. `the build worked out` is what a drag adds.

#![allow(
    missing_docs,
    clippy::expect_used,
    clippy::panic,
    reason = "criterion's macros make undocumented items; a bench stops where it fails"
)]

use std::path::{Path, PathBuf};

use criterion::{Criterion, criterion_group, criterion_main};
use egui::{Context, Event, Modifiers, PointerButton, Pos2, RawInput, Rect, pos2, vec2};
use trammel_analysis::Depth;
use trammel_screen::{
    Bench, Start, fonts,
    host::{Host, Pick, Picked},
    results::Results,
};

struct Nobody;

impl Host for Nobody {
    fn ask_for_file(&mut self, _pick: &Pick, _start: Option<&Path>) {}
    fn answer(&mut self) -> Option<Picked> {
        None
    }
    fn state_folder(&self) -> Option<PathBuf> {
        None
    }
    fn quit(&mut self) {}
}

/// Frames at sixty a second.
struct Frames {
    ctx: Context,
    time: f64,
}

impl Frames {
    fn new() -> Self {
        let ctx = Context::default();
        ctx.set_fonts(fonts::definitions());
        Self { ctx, time: 0.0 }
    }

    fn run(&mut self, events: Vec<Event>, ui: impl FnMut(&mut egui::Ui)) -> egui::FullOutput {
        self.time += 1.0 / 60.0;
        let input = RawInput {
            screen_rect: Some(Rect::from_min_size(Pos2::ZERO, vec2(1280.0, 800.0))),
            time: Some(self.time),
            events,
            ..RawInput::default()
        };
        let mut output = self.ctx.run_ui(input, ui);
        // Painting is not measured here; what it would upload is dropped.
        output.textures_delta.clear();
        output
    }
}

fn press(at: Pos2, pressed: bool) -> Event {
    Event::PointerButton {
        pos: at,
        button: PointerButton::Primary,
        pressed,
        modifiers: Modifiers::NONE,
    }
}

/// Where the left inner tie-rod joint is in the front view of the demo at 1280 x 800.
fn joint(bench: &mut Bench, frames: &mut Frames) -> Pos2 {
    for y in (400..700).step_by(4) {
        for x in (310..560).step_by(4) {
            let at = pos2(x as f32, y as f32);
            frames.run(vec![Event::PointerMoved(at)], |ui| bench.ui(ui));
            let inner = trammel_build::PointName::TieRodInner;
            if bench.view().hovered.is_some_and(|p| p.point == inner) {
                return at;
            }
        }
    }
    panic!("the joint is not on the screen");
}

fn frames(c: &mut Criterion) {
    let mut bench = Bench::new(Box::new(Nobody), Start::NamedDemo("lifted".into()));
    let mut frames = Frames::new();
    c.bench_function("empty frame", |b| b.iter(|| frames.run(Vec::new(), |_| {})));
    c.bench_function("standing frame", |b| {
        b.iter(|| frames.run(Vec::new(), |ui| bench.ui(ui)));
    });
    let at = joint(&mut bench, &mut frames);
    frames.run(vec![Event::PointerMoved(at)], |ui| bench.ui(ui));
    frames.run(vec![press(at, true)], |ui| bench.ui(ui));
    let mut there = false;
    c.bench_function("frame of a drag", |b| {
        b.iter(|| {
            there = !there;
            let to = at
                + if there {
                    vec2(0.0, -9.0)
                } else {
                    vec2(0.0, -18.0)
                };
            frames.run(vec![Event::PointerMoved(to)], |ui| bench.ui(ui))
        });
    });
    assert!(bench.has_unsaved_work(), "the joint was dragged");
    let build = bench.build().clone();
    c.bench_function("the build worked out", |b| {
        b.iter(|| Results::of(&build, Depth::Quick));
    });
}

criterion_group!(benches, frames);
criterion_main!(benches);
