//! Everything worked out for one build, as at every move of the mouse: budget 2 ms on one core. Prints the table of the crate's documents first.

#![allow(
    missing_docs,
    clippy::expect_used,
    clippy::print_stdout,
    reason = "criterion's macros make undocumented items; a bench stops where it fails and prints what it measured"
)]

use std::{hint::black_box, time::Instant};

use criterion::{Criterion, criterion_group};
use trammel_analysis::{Depth, Findings, Study};
use trammel_build::{AxleName, Build, Edit, PointName};

/// Runs of which the least is printed.
const RUNS: usize = 400;

fn builds() -> Vec<(String, Build)> {
    let mut builds = Vec::new();
    for demo in trammel_persistence::demos() {
        let build = trammel_persistence::read(demo.text).expect("a demo reads");
        let apart = Edit::SeparateRight(AxleName::Front, PointName::TieRodInner);
        let apart = apart.apply(&build).expect("a side of its own");
        builds.push((demo.name.to_owned(), build));
        builds.push((format!("{}, sides of their own", demo.name), apart));
    }
    builds
}

fn least<T>(mut work: impl FnMut() -> T) -> f64 {
    let run = |_| {
        let start = Instant::now();
        black_box(work());
        start.elapsed().as_secs_f64() * 1e6
    };
    (0..RUNS).map(run).fold(f64::INFINITY, f64::min)
}

fn table() {
    println!(
        "| build | cautions | study | findings | together | findings / study | findings without remedies |\n|---|---|---|---|---|---|---|"
    );
    for (name, build) in builds() {
        let study = Study::of(&build).expect("a demo can be posed");
        let count = Findings::of(&build, &study).cautions.len();
        let (s, f) = (
            least(|| Study::of(&build)),
            least(|| Findings::of(&build, &study)),
        );
        let quick = least(|| Findings::to_depth(&build, &study, Depth::Quick));
        println!(
            "| {name} | {count} | {s:.0} | {f:.0} | {:.0} | {:.1} | {quick:.0} |",
            s + f,
            f / s
        );
    }
}

fn one_build(c: &mut Criterion) {
    for (name, build) in builds() {
        let study = Study::of(&build).expect("a demo can be posed");
        let mut group = c.benchmark_group(name);
        group.bench_function("study", |b| b.iter(|| Study::of(black_box(&build))));
        group.bench_function("findings", |b| {
            b.iter(|| Findings::of(black_box(&build), black_box(&study)));
        });
        group.finish();
    }
}

criterion_group!(benches, one_build);

fn main() {
    table();
    benches();
    Criterion::default().configure_from_args().final_summary();
}
