//! The map against re-solving every cell; the best spot; build error.
#![allow(
    clippy::expect_used,
    missing_docs,
    reason = "a benchmark fails by panicking; its macros write undocumented items"
)]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use trammel_geometry::{Linkage, Vector};
use trammel_specimens::behind;
use trammel_tuning::{
    MapFrame, Movable, Plane, ScatterRequest, Score, Scoring, Search, Spread, Stations,
    TieRodJoint, ToeCurves, ToeMap, Ways, best_spot, default_tolerances, scatter,
};

fn map(c: &mut Criterion) {
    let corner = behind();
    let stations = Stations::even(-100.0, 125.0, 21, vec![0.0]).expect("usable");
    for (name, joint) in [("inner", TieRodJoint::Inner), ("outer", TieRodJoint::Outer)] {
        for size in [60.0, 160.0] {
            let frame = MapFrame::new(Plane::Front, joint.place(&corner), [size; 2], [96, 96])
                .expect("usable");
            let label = format!("map 96x96x21 {name} {size} mm");
            c.bench_function(&label, |b| {
                b.iter(|| {
                    let mut map =
                        ToeMap::new(black_box(&corner), joint, frame, &stations).expect("arms");
                    map.complete();
                    map
                });
            });
            c.bench_function(&format!("{label}, tables only"), |b| {
                b.iter(|| ToeMap::new(black_box(&corner), joint, frame, &stations).expect("arms"));
            });
        }
    }
}

fn map_plainly(c: &mut Criterion) {
    let corner = behind();
    let stations = Stations::even(-100.0, 125.0, 21, vec![0.0]).expect("usable");
    let joint = TieRodJoint::Inner;
    let frame =
        MapFrame::new(Plane::Front, joint.place(&corner), [60.0; 2], [96, 96]).expect("usable");
    let mut group = c.benchmark_group("plain");
    group.sample_size(10);
    group.bench_function("map 96x96x21 inner 60 mm by plain posing", |b| {
        b.iter(|| {
            let mut all: Vec<Option<Score>> = Vec::with_capacity(96 * 96);
            for row in 0..96 {
                for column in 0..96 {
                    let place = frame.place(f64::from(column), f64::from(row));
                    let moved = joint.moved_to(black_box(&corner), place);
                    let curves = Linkage::new(&moved)
                        .ok()
                        .and_then(|l| ToeCurves::of(&l, &stations).ok());
                    all.push(curves.map(|c| c.score()));
                }
            }
            all
        });
    });
}

fn best(c: &mut Criterion) {
    let mut corner = behind();
    corner.tie_rod.inner += Vector::new(0.0, 20.0, -15.0);
    let stations = Stations::even(-100.0, 125.0, 21, vec![0.0]).expect("usable");
    for scoring in [Scoring::Rms, Scoring::Largest] {
        let search = Search {
            movable: Movable::Inner,
            ways: Ways::FrontPlane,
            scoring,
            stations: stations.clone(),
            held: Vec::new(),
            reach: 100.0,
            step: None,
        };
        c.bench_function(
            &format!("best spot, inner, front plane, {scoring:?}"),
            |b| {
                b.iter(|| best_spot(black_box(&corner), &search).expect("found"));
            },
        );
    }
}

fn build_error(c: &mut Criterion) {
    for threads in [1, 2] {
        let request = ScatterRequest {
            corner: behind(),
            tolerances: default_tolerances(Spread::Normal(1.0)),
            stations: Stations::even(-100.0, 125.0, 21, vec![0.0]).expect("usable"),
            builds: 4000,
            seed: 1,
            limit: 0.005,
            threads,
        };
        c.bench_function(&format!("4000 builds x 21, {threads} threads"), |b| {
            b.iter(|| scatter(black_box(&request)).expect("swept"));
        });
    }
}

criterion_group!(benches, map, map_plainly, best, build_error);
criterion_main!(benches);
