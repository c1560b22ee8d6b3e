//! Whatever comes in, what goes to the painter is finite, and nothing panics.

use egui::{Event, Key, Modifiers, MouseWheelSource, MouseWheelUnit, Pos2, TouchPhase, vec2};
use trammel_build::{Build, PointName};
use trammel_screen::drawing::Projection;

use crate::bench::{Bench, Hands, build, left, set_fonts, window, window_of};

/// Paints two frames and looks at every shape.
fn paints_finite(mut bench: Bench, size: [f32; 2]) {
    let context = egui::Context::default();
    set_fonts(&context);
    for _ in 0..2 {
        let input = egui::RawInput {
            screen_rect: Some(egui::Rect::from_min_size(Pos2::ZERO, size.into())),
            ..egui::RawInput::default()
        };
        let mut output = context.run_ui(input, |ui| bench.ui(ui));
        output.textures_delta.clear();
        for clipped in &output.shapes {
            let rect = clipped.shape.visual_bounding_rect();
            assert!(!rect.any_nan(), "{:?}", clipped.shape);
        }
        for primitive in context.tessellate(output.shapes, output.pixels_per_point) {
            if let egui::epaint::Primitive::Mesh(mesh) = primitive.primitive {
                assert!(mesh.vertices.iter().all(|v| v.pos.is_finite()));
            }
        }
    }
}

/// The bench with a build whose results could not be worked out: those of the last good build stay.
fn with(change: impl FnOnce(&mut Build)) -> Bench {
    let mut bench = Bench::new(build());
    bench.travel = 40.0;
    bench.instant_centres = true;
    bench.selected = Some(left(PointName::TieRodInner));
    change(&mut bench.build);
    bench
}

#[test]
fn odd_builds_paint_nothing_infinite() {
    let odd = [f64::NAN, f64::INFINITY, -1e300, 1e6, 0.0];
    for value in odd {
        paints_finite(with(|b| b.front.tie_rod.inner = [value; 3]), [860.0, 700.0]);
        paints_finite(with(|b| b.front.wheel.centre[2] = value), [860.0, 700.0]);
        paints_finite(
            with(|b| b.front.wheel.loaded_radius = value),
            [860.0, 700.0],
        );
        paints_finite(with(|b| b.front.wheel.camber_deg = value), [860.0, 700.0]);
        paints_finite(
            with(|b| b.front.rack.face = Some([value; 3])),
            [860.0, 700.0],
        );
    }
    paints_finite(
        with(|b| b.front.upper_arm.ball_joint = b.front.lower_arm.ball_joint),
        [860.0, 700.0],
    );
}

#[test]
fn odd_positions_and_snaps_paint_nothing_infinite() {
    for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e9, -1e9] {
        let mut bench = with(|_| {});
        bench.travel = value;
        bench.snap = value;
        paints_finite(bench, [860.0, 700.0]);
        let mut bench = with(|_| {});
        bench.rack = value;
        paints_finite(bench, [860.0, 700.0]);
    }
}

#[test]
fn no_table_is_too_small() {
    for size in [
        [0.0, 0.0],
        [1.0, 1.0],
        [30.0, 20.0],
        [500.0, 3.0],
        [6000.0, 4000.0],
    ] {
        paints_finite(with(|_| {}), size);
    }
}

#[test]
fn zooming_far_in_and_out_keeps_the_drawing_whole() {
    for way in [4000.0, -4000.0] {
        let mut window = window(with(|_| {}));
        window.hover_at(egui::pos2(400.0, 500.0));
        for _ in 0..60 {
            window.event(Event::MouseWheel {
                unit: MouseWheelUnit::Point,
                delta: vec2(0.0, way),
                phase: TouchPhase::Move,
                source: MouseWheelSource::Wheel,
                modifiers: Modifiers::NONE,
            });
            window.step();
        }
        let bench = window.into_state();
        paints_finite(bench, [860.0, 700.0]);
    }
}

/// A small generator of its own (the multiplier and increment of Knuth's MMIX, from memory), so that a failure can be repeated.
struct Dice(u64);

impl Dice {
    fn throw(&mut self, sides: u64) -> u64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % sides
    }

    fn place(&mut self) -> Pos2 {
        egui::pos2(self.throw(860) as f32, self.throw(700) as f32)
    }
}

#[test]
fn a_monkey_finds_no_way_to_break_it() {
    let mut window = window_of(with(|_| {}), vec2(860.0, 700.0));
    let mut dice = Dice(7);
    let mut at = Pos2::ZERO;
    for _ in 0..600 {
        match dice.throw(12) {
            0..=4 => {
                at = dice.place();
                window.hover_at(at);
            }
            5 => window.drag_at(at),
            6 => window.event(Event::PointerButton {
                pos: at,
                button: egui::PointerButton::Primary,
                pressed: false,
                modifiers: Modifiers::NONE,
            }),
            7 => {
                let points: Vec<PointName> = PointName::ALL.to_vec();
                let point = points[dice.throw(13) as usize];
                let projection = Projection::ALL[dice.throw(3) as usize];
                let name = trammel_screen::drawing::handle_name(left(point), projection);
                use egui_kittest::kittest::Queryable;
                if let Some(handle) = window.query_by_label(&name) {
                    at = handle.rect().center();
                    window.hover_at(at);
                }
            }
            8 => window.key_press(Key::Escape),
            9 => window.remove_cursor(),
            10 => {
                let way = dice.throw(3) as f32 - 1.0;
                window.event(Event::MouseWheel {
                    unit: MouseWheelUnit::Line,
                    delta: vec2(0.0, way),
                    phase: TouchPhase::Move,
                    source: MouseWheelSource::Wheel,
                    modifiers: Modifiers::NONE,
                });
            }
            _ => window.key_press(Key::Tab),
        }
        window.step();
    }
    window.release(egui::pos2(430.0, 350.0));
    assert!(!window.state().drawing.is_dragging());
    let bench = window.into_state();
    assert!(bench.build.faults().is_empty());
    paints_finite(bench, [860.0, 700.0]);
}
