//! Random events over every stage and page, on the demos and on random builds: nothing panics, nothing unusable is left, no text shows a number that
//! is none, every state saves and reads back equal, and undo leads back to the start exactly. Starts are fixed, so a fault can be had again.
//!
//! `TRAMMEL_MONKEY_EVENTS=100000 cargo test -p trammel-screen --test monkey -- --ignored` does as many as are asked for.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]
#![allow(clippy::print_stdout, reason = "the long test tells what was slow")]

#[path = "../common/mod.rs"]
mod common;

mod builds;
mod hand;
mod watch;

use std::{
    sync::{Mutex, PoisonError},
    time::{Duration, Instant},
};

use trammel_screen::Start;

use common::{TestHost, bench_on};
use hand::{Dice, Hand};
use watch::Watch;

/// Events of one run on one build: fewer than steps are kept for undo.
const RUN: usize = 400;
/// A longer event is told by the long test.
const LONG: Duration = Duration::from_millis(1500);
/// Events between two looks at everything.
const BURST: usize = 10;

/// The folder that relative paths end in belongs to the whole process, so runs go one at a time.
static ONE_AT_A_TIME: Mutex<()> = Mutex::new(());

/// What the run of this number plays with: the demos in turn, every other run a random build.
fn start(run: usize) -> (String, Start) {
    let demos = trammel_persistence::demos();
    if run.is_multiple_of(2) {
        let demo = &demos[run / 2 % demos.len()];
        return (demo.name.into(), Start::NamedDemo(demo.name.into()));
    }
    let mut dice = Dice(0xB01D + run as u64);
    let build = builds::random(&mut dice, 40);
    ("random build".into(), Start::Build(Box::new(build)))
}

/// Plays a run; the events that took long.
fn play(run: usize, events: usize) -> Vec<String> {
    let _turn = ONE_AT_A_TIME.lock().unwrap_or_else(PoisonError::into_inner);
    let folder = tempfile::tempdir().expect("a temporary folder");
    std::env::set_current_dir(folder.path()).expect("what is saved goes there");
    let host = TestHost::default();
    host.0.borrow_mut().folder = Some(folder.path().join("state"));
    let (name, start) = start(run);
    let mut screen = bench_on(host.clone(), start);
    // Typed and pasted letters that no font has are shown as boxes, as in the window.
    (screen.ctx).set_missing_glyph_policy(egui::MissingGlyphPolicy::Tofu);
    let mut hand = Hand::new(run as u64, host, folder.path());
    let mut watch = Watch::new(&screen);
    let mut slow = Vec::new();
    for event in 0..events {
        let begun = Instant::now();
        hand.act(&mut screen);
        let took = begun.elapsed();
        if took > LONG {
            slow.push(format!("event {event}: {} ms", took.as_millis()));
        }
        watch.after_event(&screen);
        if event % BURST == BURST - 1 {
            watch.after_burst(&screen, &format!("run {run} on {name}, event {event}"));
        }
    }
    watch.back_and_forth(&mut screen, &mut hand, &format!("run {run} on {name}"));
    slow
}

#[test]
fn random_events_break_nothing() {
    for run in 0..3 {
        play(run, RUN);
    }
}

/// One run, asked for by the test below.
#[test]
#[ignore = "a part of the long test"]
fn one_run_breaks_nothing() {
    let run = std::env::var("TRAMMEL_MONKEY_RUN").expect("the number of a run");
    let slow = play(run.parse().expect("a number"), RUN);
    if !slow.is_empty() {
        println!("slow at {}", slow.join(", "));
    }
}

/// Each run in a process of its own: a panic within a frame ends a process, and the next run is wanted all the same.
#[test]
#[ignore = "takes long: run it before a release"]
fn many_random_events_break_nothing() {
    let asked = |name, usual| {
        let asked = std::env::var(name).ok().and_then(|t| t.parse().ok());
        asked.unwrap_or(usual)
    };
    let events: usize = asked("TRAMMEL_MONKEY_EVENTS", 100_000);
    let first = asked("TRAMMEL_MONKEY_FIRST", 0);
    let program = std::env::current_exe().expect("this test's program");
    let mut broken = Vec::new();
    for run in first..first + events.div_ceil(RUN) {
        let told = std::process::Command::new(&program)
            .args([
                "--exact",
                "one_run_breaks_nothing",
                "--ignored",
                "--nocapture",
            ])
            .env("TRAMMEL_MONKEY_RUN", run.to_string())
            .output()
            .expect("it can be started");
        let said = String::from_utf8_lossy(&told.stdout);
        let slow = said.lines().find(|l| l.starts_with("slow at"));
        if told.status.success() {
            println!("run {run}: fine {}", slow.unwrap_or_default());
        } else {
            println!(
                "run {run}: BROKEN\n{}",
                String::from_utf8_lossy(&told.stderr)
            );
            broken.push(run);
        }
    }
    assert!(
        broken.is_empty(),
        "of {events} events these runs of {RUN} broke: {broken:?}"
    );
}
