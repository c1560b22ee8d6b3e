//! Speed of the kernel, and of a general Newton solver of the same constraints as a yardstick.
#![allow(
    clippy::expect_used,
    clippy::print_stdout,
    missing_docs,
    reason = "the corner is sound; the table is printed; criterion's macros write undocumented functions"
)]

mod newton;

use std::{
    hint::black_box,
    time::{Duration, Instant},
};

use criterion::{Criterion, criterion_group, criterion_main};
use newton::{Body, General};
use trammel_geometry::{Linkage, Measures, Pose, Unreachable, Walk};
use trammel_specimens::kart;

/// Travels and rack positions evenly from -`end` to `end`.
fn evenly(end: f64, n: u32) -> impl Iterator<Item = f64> {
    (0..n).map(move |i| end * (2.0 * f64::from(i) / f64::from(n - 1) - 1.0))
}

const TRAVEL: f64 = 100.0;
const RACK: f64 = 45.0;
/// Runs of which the table gives the least, and how long a run has to be to be timed well.
const RUNS: u32 = 400;
const RUN: Duration = Duration::from_micros(200);

/// Something to time.
struct Case {
    name: &'static str,
    /// Poses solved in one go.
    poses: u32,
    run: Box<dyn FnMut()>,
}

impl Case {
    fn new(name: &'static str, poses: u32, run: impl FnMut() + 'static) -> Self {
        Self {
            name,
            poses,
            run: Box::new(run),
        }
    }

    /// The least time per go over many runs, ns: what other work on the machine adds is left out.
    fn least(&mut self) -> f64 {
        let start = Instant::now();
        let mut goes = 0;
        while start.elapsed() < RUN {
            (self.run)();
            goes += 1;
        }
        let time = |run: &mut dyn FnMut()| {
            let start = Instant::now();
            (0..goes).for_each(|_| run());
            start.elapsed().as_secs_f64() * 1e9 / f64::from(goes)
        };
        (0..RUNS).fold(f64::MAX, |least, _| least.min(time(&mut self.run)))
    }
}

fn sweep(linkage: &Linkage, rack: f64, n: u32, out: &mut Vec<Measures>) -> Result<(), Unreachable> {
    let mut walk = Walk::new(linkage, rack)?;
    for travel in evenly(TRAVEL, n) {
        out.push(linkage.measures(&walk.pose(travel)?));
    }
    Ok(())
}

fn grid(linkage: &Linkage, n: u32, out: &mut Vec<Measures>) -> Result<(), Unreachable> {
    evenly(RACK, n).try_for_each(|rack| sweep(linkage, rack, n, out))
}

fn one(linkage: &Linkage, travel: f64, rack: f64) -> Result<Measures, Unreachable> {
    let pose = linkage.pose(black_box(travel), black_box(rack))?;
    Ok(linkage.measures(&pose))
}

/// The general solver's sweep; `out` is left with its poses.
fn general_sweep(general: &General, out: &mut Vec<Body>) -> Option<()> {
    let mut body = general.walk_to(-TRAVEL)?;
    for travel in evenly(TRAVEL, 41) {
        body = general.solve(body, black_box(travel))?;
        out.push(body);
    }
    Some(())
}

/// Both solvers give the same joints.
fn check_yardstick(linkage: &Linkage, general: &General) {
    let mut bodies = Vec::new();
    general_sweep(general, &mut bodies).expect("within reach");
    for (body, travel) in bodies.iter().zip(evenly(TRAVEL, 41)) {
        let pose = linkage.pose(travel, 0.0).expect("within reach");
        let off = (general.tie_rod_outer(body) - pose.tie_rod_outer).norm();
        assert!(off < 1e-9, "the two solvers differ by {off} mm at {travel}");
    }
}

fn cases() -> Vec<Case> {
    let corner = kart();
    let linkage = Linkage::new(&corner).expect("a sound corner");
    let general = General::new(&corner);
    check_yardstick(&linkage, &general);
    let mut measures = Vec::with_capacity(10_000);
    let mut cells = Vec::with_capacity(10_000);
    let mut poses: Vec<Pose> = Vec::with_capacity(41);
    let mut bodies = Vec::with_capacity(41);
    vec![
        Case::new("sweep of 41 travels, every measure", 41, move || {
            measures.clear();
            sweep(black_box(&linkage), 0.0, 41, &mut measures).expect("within reach");
        }),
        Case::new(
            "grid of 100 x 100 travels and rack positions, every measure",
            10_000,
            move || {
                cells.clear();
                grid(black_box(&linkage), 100, &mut cells).expect("within reach");
            },
        ),
        Case::new(
            "sweep of 41 travels, joints and velocities only",
            41,
            move || {
                poses.clear();
                let mut walk = Walk::new(black_box(&linkage), 0.0).expect("within reach");
                poses.extend(evenly(TRAVEL, 41).filter_map(|t| walk.pose(t).ok()));
            },
        ),
        Case::new(
            "general Newton solver, sweep of 41 travels, joints only",
            41,
            move || {
                bodies.clear();
                general_sweep(black_box(&general), &mut bodies).expect("within reach");
            },
        ),
        Case::new(
            "one pose 60 mm up from the design position, every measure",
            1,
            move || {
                black_box(one(&linkage, 60.0, 0.0).is_ok());
            },
        ),
        Case::new(
            "one pose 60 mm up with the rack at 30 mm, every measure",
            1,
            move || {
                black_box(one(&linkage, 60.0, 30.0).is_ok());
            },
        ),
        Case::new("check of a corner", 1, move || {
            black_box(Linkage::new(black_box(&corner)).is_ok());
        }),
        Case::new("a travel out of reach", 1, move || {
            black_box(one(&linkage, 900.0, 0.0).is_err());
        }),
        Case::new("a rack travel out of reach", 1, move || {
            black_box(one(&linkage, 0.0, 300.0).is_err());
        }),
    ]
}

fn by_criterion(c: &mut Criterion) {
    for mut case in cases() {
        c.bench_function(case.name, |b| b.iter(|| (case.run)()));
    }
}

/// The table of `BENCHMARKS.md`: least of many runs.
fn table(_: &mut Criterion) {
    println!("| what | microseconds | per pose |\n|---|---|---|");
    for mut case in cases() {
        let us = case.least() / 1e3;
        let each = us / f64::from(case.poses);
        println!("| {} | {us:.2} | {each:.3} |", case.name);
    }
}

criterion_group! {
    name = benches;
    config = Criterion::default().without_plots();
    targets = table, by_criterion
}
criterion_main!(benches);
