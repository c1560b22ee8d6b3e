//! Speed of the kernel, and of a general Newton solver of the same constraints as a yardstick.
#![allow(
    clippy::expect_used,
    missing_docs,
    reason = "the corner is sound; criterion's macros write undocumented functions"
)]

mod newton;

use std::hint::black_box;

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use newton::General;
use trammel_geometry::{
    Arm, ArmName, Corner, Linkage, Measures, Point, Spring, TieRod, Unreachable, Vector, Walk,
    Wheel,
};

/// A kart-like front corner of our own invention, mm, with a spring on its lower arm.
fn corner() -> Corner {
    let arm = |front: [f64; 3], rear: [f64; 3], ball: [f64; 3]| Arm {
        front_pivot: Point::from(front),
        rear_pivot: Point::from(rear),
        ball_joint: Point::from(ball),
    };
    Corner {
        upper_arm: arm(
            [90.0, 235.0, 352.0],
            [-130.0, 228.0, 340.0],
            [-18.0, 545.0, 385.0],
        ),
        lower_arm: arm(
            [110.0, 190.0, 205.0],
            [-140.0, 190.0, 198.0],
            [4.0, 575.0, 190.0],
        ),
        tie_rod: TieRod {
            inner: Point::new(-92.0, 215.0, 240.0),
            outer: Point::new(-105.0, 555.0, 238.0),
        },
        wheel: Wheel {
            centre: Point::new(0.0, 650.0, 280.0),
            loaded_radius: 280.0,
            toe: 0.002,
            camber: -0.017,
        },
        spring: Some(Spring {
            arm: ArmName::Lower,
            chassis_mount: Point::new(-5.0, 290.0, 560.0),
            arm_mount: Point::new(-2.0, 460.0, 205.0),
        }),
        rack_axis: Some(Vector::y()),
    }
}

/// Travels and rack positions evenly from -`end` to `end`.
fn evenly(end: f64, n: u32) -> impl Iterator<Item = f64> {
    (0..n).map(move |i| end * (2.0 * f64::from(i) / f64::from(n - 1) - 1.0))
}

const TRAVEL: f64 = 100.0;
const RACK: f64 = 45.0;

fn sweep(linkage: &Linkage, rack: f64, n: u32, out: &mut Vec<Measures>) -> Result<(), Unreachable> {
    let mut walk = Walk::new(linkage, rack)?;
    for travel in evenly(TRAVEL, n) {
        out.push(linkage.measures(&walk.pose(travel)?));
    }
    Ok(())
}

fn ours(c: &mut Criterion) {
    let linkage = Linkage::new(&corner()).expect("a sound corner");
    let mut out = Vec::with_capacity(10_000);
    c.bench_function("sweep of 41 travels, every measure", |b| {
        b.iter(|| {
            out.clear();
            sweep(black_box(&linkage), 0.0, 41, &mut out)
        });
    });
    assert_eq!(out.len(), 41);
    c.bench_function(
        "grid of 100 x 100 travels and rack positions, every measure",
        |b| {
            b.iter(|| {
                out.clear();
                evenly(RACK, 100)
                    .try_for_each(|rack| sweep(black_box(&linkage), rack, 100, &mut out))
            });
        },
    );
    assert_eq!(out.len(), 10_000);
    let mut cold = c.benchmark_group("one pose from the design position, every measure");
    for (travel, rack) in [(0.0, 0.0), (60.0, 0.0), (60.0, 30.0)] {
        cold.bench_function(
            BenchmarkId::from_parameter(format!("{travel}, {rack}")),
            |b| {
                b.iter(|| {
                    let pose = linkage.pose(black_box(travel), black_box(rack))?;
                    Ok::<_, Unreachable>(linkage.measures(&pose))
                });
            },
        );
    }
    cold.finish();
    c.bench_function("check of a corner", |b| {
        let corner = corner();
        b.iter(|| Linkage::new(black_box(&corner)));
    });
    c.bench_function("a travel out of reach", |b| {
        b.iter(|| linkage.pose(black_box(900.0), 0.0));
    });
    c.bench_function("a rack travel out of reach", |b| {
        b.iter(|| linkage.pose(0.0, black_box(300.0)));
    });
}

fn yardstick(c: &mut Criterion) {
    let corner = corner();
    let linkage = Linkage::new(&corner).expect("a sound corner");
    let general = General::new(&corner);
    let mut out = Vec::with_capacity(41);
    c.bench_function(
        "general Newton solver: sweep of 41 travels, joints only",
        |b| {
            b.iter(|| {
                out.clear();
                let mut body = general.walk_to(-TRAVEL)?;
                for travel in evenly(TRAVEL, 41) {
                    body = general.solve(body, black_box(travel))?;
                    out.push(body);
                }
                Some(())
            });
        },
    );
    for (body, travel) in out.iter().zip(evenly(TRAVEL, 41)) {
        let pose = linkage.pose(travel, 0.0).expect("within reach");
        let off = (general.tie_rod_outer(body) - pose.tie_rod_outer).norm();
        assert!(off < 1e-9, "the two solvers differ by {off} mm at {travel}");
    }
}

criterion_group! {
    name = benches;
    config = Criterion::default().without_plots();
    targets = ours, yardstick
}
criterion_main!(benches);
