//! How long the forces of a corner take.
#![allow(missing_docs, clippy::unwrap_used, reason = "a bench, not the product")]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use trammel_geometry::{ArmName, Linkage, Vector, Walk};
use trammel_specimens::askew;
use trammel_strength::arm_tubes::ArmTubes;
use trammel_strength::force::UprightLoad;
use trammel_strength::grade::Grade;
use trammel_strength::loads::{
    AxleEnd, Fineness, Reach, Scene, Vehicle, VehicleSpec, WheelSize, default_cases,
};
use trammel_strength::material::Material;
use trammel_strength::proof::{Part, PartKind, RackEndPart, Setup, prove};
use trammel_strength::rack_end::{BoreMouth, RackEnd, RackEndGeometry, ThreadMaking};
use trammel_strength::section::Profile;
use trammel_strength::source::{Limit, Source};
use trammel_strength::statics::{Equilibrium, Steering};
use trammel_strength::thread::Thread;
use trammel_strength::tie_rod::TieRodBar;

fn forces(criterion: &mut Criterion) {
    let linkage = Linkage::new(&askew()).unwrap();
    let pose = linkage.pose(40.0, 20.0).unwrap();
    let load = UprightLoad::force_at(pose.contact, Vector::new(-700.0, -650.0, 1500.0)).unwrap();
    let equilibrium = Equilibrium::at(&linkage, &pose).unwrap();
    let mut group = criterion.benchmark_group("corner");
    group.bench_function("one pose, one load", |bencher| {
        bencher.iter(|| {
            Equilibrium::at(black_box(&linkage), black_box(&pose))
                .and_then(|equilibrium| equilibrium.under(black_box(&load)))
        });
    });
    group.bench_function("one more load at the pose", |bencher| {
        bencher.iter(|| black_box(&equilibrium).under(black_box(&load)));
    });
    group.bench_function("travel of 21 poses, pose and forces", |bencher| {
        bencher.iter(|| {
            let mut walk = Walk::new(&linkage, 20.0).unwrap();
            let mut sum = 0.0;
            for step in -10..=10_i32 {
                let pose = walk.pose(f64::from(step) * 8.0).unwrap();
                let forces = Equilibrium::at(&linkage, &pose)
                    .and_then(|equilibrium| equilibrium.under(black_box(&load)));
                sum += forces.unwrap().tie_rod_tension;
            }
            sum
        });
    });
    group.finish();
}

fn parts() -> Vec<Part> {
    let dom = Material::find("1020 dom stress relieved").unwrap();
    let strength = dom.strength(2.4).unwrap();
    let tube = Profile::round_tube(25.4, 2.413).unwrap();
    let arm = ArmTubes::new(tube, strength, 2.0).unwrap();
    let geometry = RackEndGeometry::on_axis(Vector::y(), 38.0).unwrap();
    let thread = Thread::find("1/2-20").unwrap();
    let grade = Grade::find("grade 5").unwrap();
    let rack_end = RackEndPart {
        end: RackEnd::new(geometry, thread, &grade, &BoreMouth::LoadsOnly).unwrap(),
        making: ThreadMaking::Rolled,
        toe_limit: Limit {
            value: 2e-3,
            unit: "rad",
            source: Source::COMMON_PRACTICE,
        },
        engagement: Some(14.0),
        bar_diameter: None,
    };
    let rod = TieRodBar::new(tube, strength, 321.0, 1800.0).unwrap();
    [
        ("rack end", PartKind::RackEnd(rack_end)),
        ("tie rod", PartKind::TieRod(rod)),
        ("upper arm", PartKind::ArmTubes(ArmName::Upper, arm)),
        ("lower arm", PartKind::ArmTubes(ArmName::Lower, arm)),
    ]
    .map(|(name, kind)| Part {
        name: name.to_owned(),
        kind,
    })
    .to_vec()
}

fn proof(criterion: &mut Criterion) {
    let linkage = Linkage::new(&askew()).unwrap();
    let (parts, cases) = (parts(), default_cases());
    let vehicle = VehicleSpec {
        mass: 375.0,
        front_share: 0.45,
        centre_of_gravity_height: 480.0,
        wheelbase: 1600.0,
        front_track: 1200.0,
        rear_track: 1250.0,
    };
    let setup = Setup {
        linkage: &linkage,
        scene: Scene {
            vehicle: Vehicle::new(vehicle).unwrap(),
            axle: AxleEnd::Front,
            wheel: WheelSize::new(254.0, 180.0).unwrap(),
            steering: Some(Steering::new(50.8, 140.0).unwrap()),
        },
        reach: Reach::new(70.0, 70.0, 35.0).unwrap(),
        fineness: Fineness::default(),
        parts: &parts,
        cases: &cases,
        clearances: None,
        wanted_factor: 2.0,
    };
    criterion.bench_function("proof of four parts under every default case", |bencher| {
        bencher.iter(|| prove(black_box(&setup)));
    });
}

criterion_group!(benches, forces, proof);
criterion_main!(benches);
