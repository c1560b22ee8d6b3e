//! What the tests of the proof share: parts of every kind on one corner, and how it is proved.

mod of_a_part;
mod omissions;
mod rows;
mod stance;
mod worst;

use super::*;
use crate::arm_tubes::ArmTubes;
use crate::bolt::{Bolt, ShearPlaneAt, ShearPlanes};
use crate::bracket::{Bracket, BracketSize};
use crate::check::Check;
use crate::clearance::{Clearances, Pair, Thicknesses};
use crate::grade::Grade;
use crate::loads::tests::{linkage, scene};
use crate::loads::{Fineness, Reach, default_cases};
use crate::material::Material;
use crate::rack_end::{BoreMouth, RackEnd, RackEndGeometry, ThreadMaking};
use crate::rod_end::{Joint, ListedRodEnd};
use crate::section::Profile;
use crate::source::{Limit, Source};
use crate::statics::Equilibrium;
use crate::thread::Thread;
use crate::tie_rod::TieRodBar;
use crate::weld::Fillet;
use approx::assert_relative_eq;
use nalgebra::Vector3;
use trammel_geometry::{ArmName, Corner, Linkage};

fn named(name: &str, kind: PartKind) -> Part {
    Part {
        name: name.to_owned(),
        kind,
    }
}

fn rack_end(thread: &str) -> PartKind {
    let geometry = RackEndGeometry::on_axis(Vector3::new(0.02, 1.0, 0.0), 38.0)
        .unwrap()
        .with_bore_mouth(62.0)
        .unwrap();
    let grade = Grade::find("grade 5").unwrap();
    let thread = Thread::find(thread).unwrap();
    PartKind::RackEnd(RackEndPart {
        end: RackEnd::new(geometry, thread, &grade, &BoreMouth::ThreadThrough).unwrap(),
        making: ThreadMaking::Rolled,
        toe_limit: Limit {
            value: 0.1_f64.to_radians(),
            unit: "rad",
            source: Source::COMMON_PRACTICE,
        },
        engagement: Some(14.0),
        bar_diameter: Some(25.0),
    })
}

fn bracket() -> Bracket {
    let size = BracketSize {
        ears: ShearPlanes::Double,
        thickness: 5.0,
        width: 35.0,
        height: 40.0,
        bolt: 12.0,
        hole: 12.2,
        edge: 18.0,
        gap: 30.0,
        boxing: 0.0,
    };
    let strength = Material::find("A36").unwrap().strength(5.0).unwrap();
    Bracket::new(size, strength, Some(Fillet::new(4.0, 70.0).unwrap())).unwrap()
}

fn parts() -> Vec<Part> {
    let dom = Material::find("1020 dom stress relieved").unwrap();
    let strength = dom.strength(2.4).unwrap();
    let tube = Profile::round_tube(25.4, 2.413).unwrap();
    let grade = Grade::find("grade 8").unwrap();
    let bolt_strength = grade.strength(12.7).unwrap();
    let bolt = Bolt::new(
        ShearPlaneAt::Shank(12.7),
        bolt_strength,
        ShearPlanes::Single,
        [6.0, 16.0, 3.0],
    )
    .unwrap();
    let at_outer = Mounted::new(JointPlace::TieRodOuter, Body::Upright, Vector3::z()).unwrap();
    let pivot = Mounted::new(
        JointPlace::FrontPivot(ArmName::Lower),
        Body::Chassis,
        Vector3::x(),
    )
    .unwrap()
    .standing(Vector3::y())
    .unwrap();
    let rod_end = Joint::default()
        .with_rating(20_000.0)
        .unwrap()
        .with_misalignment(ListedRodEnd::all()[4].misalignment().unwrap())
        .unwrap();
    let rod = TieRodBar::new(tube, strength, 321.2, 1800.0).unwrap();
    let arm = ArmTubes::new(tube, strength, 2.0).unwrap();
    vec![
        named("rack end", rack_end("1/2-20")),
        named("tie rod", PartKind::TieRod(rod)),
        named("lower arm", PartKind::ArmTubes(ArmName::Lower, arm)),
        named("upper arm", PartKind::ArmTubes(ArmName::Upper, arm)),
        named("outer bolt", PartKind::Bolt(at_outer, bolt)),
        named("front lower ears", PartKind::Bracket(pivot, bracket())),
        named(
            "outer rod end",
            PartKind::Joint(JointPlace::TieRodOuter, Some(at_outer), rod_end),
        ),
    ]
}

fn setup_of<'a>(
    linkage: &'a Linkage,
    parts: &'a [Part],
    cases: &'a [crate::loads::LoadCase],
    fineness: Fineness,
) -> Setup<'a> {
    Setup {
        linkage,
        scene: scene(),
        reach: Reach::new(70.0, 70.0, 35.0).unwrap(),
        fineness,
        parts,
        cases,
        clearances: None,
        wanted_factor: 2.0,
    }
}

/// Nine wheel travels by seven of the rack, refined.
const FINE: Fineness = Fineness {
    travels: 9,
    racks: 7,
    refined: true,
};

fn proof_of(linkage: &Linkage, parts: &[Part]) -> Proof {
    prove(&setup_of(linkage, parts, &default_cases(), FINE))
}
