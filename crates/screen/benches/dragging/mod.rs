//! A screen with a joint in hand, and the table of what its frames cost: for the bench of frames, and for `tests/measure`.

use std::time::Instant;

use egui::{Context, Event, Modifiers, PointerButton, Pos2, RawInput, Rect, pos2, vec2};
use trammel_analysis::Depth;
use trammel_build::{AxleName, PointName, PointRef};
use trammel_screen::{Bench, Start, fonts, host::Nobody, results::Results, view::Stage};

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

/// Where a left-hand joint is in the front view of the demo at 1280 x 800.
fn joint(bench: &mut Bench, frames: &mut Frames, point: PointName) -> Pos2 {
    let wanted = PointRef::left(AxleName::Front, point);
    for y in (80..720).rev().step_by(6) {
        for x in (10..850).step_by(6) {
            let at = pos2(x as f32, y as f32);
            frames.run(vec![Event::PointerMoved(at)], |ui| bench.ui(ui));
            if bench.view().hovered == Some(wanted) {
                return at;
            }
        }
    }
    panic!("the joint is not on the screen");
}

/// Runs of which the least is printed: what the work takes when nothing else holds the machine up.
const RUNS: usize = 600;

/// Least time and the one that 95 of 100 keep below, microseconds.
fn times(mut work: impl FnMut()) -> [f64; 2] {
    let run = |_| {
        let start = Instant::now();
        work();
        start.elapsed().as_secs_f64() * 1e6
    };
    let mut all: Vec<f64> = (0..RUNS).map(run).collect();
    all.sort_by(f64::total_cmp);
    [all[0], all[RUNS * 95 / 100]]
}

/// A screen with a joint in hand.
pub(crate) struct Dragging {
    bench: Bench,
    frames: Frames,
    at: Pos2,
    there: bool,
}

impl Dragging {
    /// The left-hand joint of the front axle, pressed.
    pub(crate) fn new(stage: Stage, point: PointName) -> Self {
        let mut bench = Bench::new(Box::new(Nobody), Start::NamedDemo("lifted".into()));
        bench.go(stage);
        let mut frames = Frames::new();
        let at = joint(&mut bench, &mut frames, point);
        frames.run(vec![Event::PointerMoved(at)], |ui| bench.ui(ui));
        frames.run(vec![press(at, true)], |ui| bench.ui(ui));
        Self {
            bench,
            frames,
            at,
            there: false,
        }
    }

    /// A frame in which the joint goes a few steps up or down.
    pub(crate) fn frame(&mut self) -> egui::FullOutput {
        self.there = !self.there;
        let to = self.at
            + if self.there {
                vec2(0.0, -9.0)
            } else {
                vec2(0.0, -18.0)
            };
        self.frames
            .run(vec![Event::PointerMoved(to)], |ui| self.bench.ui(ui))
    }

    /// A frame in which nothing happens.
    pub(crate) fn standing_frame(&mut self) -> egui::FullOutput {
        self.frames.run(Vec::new(), |ui| self.bench.ui(ui))
    }
}

/// Prints the table.
pub(crate) fn table() {
    let mut empty = Frames::new();
    println!("| what | microseconds, least | 95 of 100 below |\n|---|---|---|");
    let row = |what: &str, [least, most]: [f64; 2]| println!("| {what} | {least:.0} | {most:.0} |");
    row(
        "egui, empty frame",
        times(|| drop(empty.run(Vec::new(), |_| {}))),
    );
    let mut dragging = Dragging::new(Stage::LayOut, PointName::TieRodInner);
    row(
        "the screen standing still",
        times(|| drop(dragging.standing_frame())),
    );
    row("the screen in a drag", times(|| drop(dragging.frame())));
    assert!(dragging.bench.has_unsaved_work(), "the joint was dragged");
    let build = dragging.bench.build().clone();
    row(
        "of that: the build worked out anew",
        times(|| drop(Results::of(&build, Depth::Quick))),
    );
    row(
        "the build worked out with remedies, when the drag ends",
        times(|| drop(Results::of(&build, Depth::Full))),
    );
    tune_rows(row);
    prove_rows(row);
    set_up_rows(row);
}

/// The Set-up stage: the readings are learned from behind the frame. (Make has no joint to drag.)
fn set_up_rows(row: impl Fn(&str, [f64; 2])) {
    let mut dragging = Dragging::new(Stage::SetUp, PointName::TieRodInner);
    row(
        "Set up, the inner tie-rod joint in a drag",
        times(|| drop(dragging.frame())),
    );
    assert!(dragging.bench.has_unsaved_work(), "the joint was dragged");
}

/// The Prove stage: forces of the chosen load case and its arrows follow in the frame, the proof behind it.
fn prove_rows(row: impl Fn(&str, [f64; 2])) {
    let mut dragging = Dragging::new(Stage::Prove, PointName::TieRodInner);
    row(
        "Prove, the inner tie-rod joint in a drag",
        times(|| drop(dragging.frame())),
    );
    assert!(dragging.bench.has_unsaved_work(), "the joint was dragged");
}

/// The Tune stage: the map is worked out anew when another joint than the mapped one moves.
fn tune_rows(row: impl Fn(&str, [f64; 2])) {
    let mut mapped = Dragging::new(Stage::Tune, PointName::TieRodInner);
    row(
        "Tune, the mapped joint in a drag",
        times(|| drop(mapped.frame())),
    );
    let mut other = Dragging::new(Stage::Tune, PointName::LowerBallJoint);
    row(
        "Tune, the lower ball joint in a drag, the map made anew each frame",
        times(|| drop(other.frame())),
    );
    assert!(other.bench.has_unsaved_work(), "the joint was dragged");
}
