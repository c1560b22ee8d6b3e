//! Everything worked out for one build, as at every move of the mouse: budget 2 ms on one core.

#![allow(
    missing_docs,
    clippy::expect_used,
    reason = "criterion's macros make undocumented items; a bench stops where it fails"
)]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use trammel_analysis::{Depth, Findings, Study};

fn one_build(c: &mut Criterion) {
    for demo in trammel_persistence::demos() {
        let build = trammel_persistence::read(demo.text).expect("a demo reads");
        let study = Study::of(&build).expect("a demo can be posed");
        let mut group = c.benchmark_group(demo.name);
        group.bench_function("study", |b| b.iter(|| Study::of(black_box(&build))));
        group.bench_function("findings", |b| {
            b.iter(|| Findings::of(black_box(&build), black_box(&study)));
        });
        group.bench_function("findings of a drag's frame", |b| {
            b.iter(|| Findings::to_depth(black_box(&build), black_box(&study), Depth::Quick));
        });
        group.finish();
    }
}

criterion_group!(benches, one_build);
criterion_main!(benches);
