//! Materials and grades by the name that a build gives.

use trammel_build::{Build, MaterialSpec, Section, Stress};
use trammel_strength::{
    grade::{Grade, OwnGrade},
    material::{Material, MaterialStrength, STEEL_MODULUS},
    section::Profile,
    stress::RoundSection,
};

/// The strength of a material at a wall, mm: the build's own material of that name, or the table's.
pub(super) fn strength(build: &Build, name: &str, wall: f64) -> Result<MaterialStrength, String> {
    let material = match own(build, name) {
        Some(own) => Material::own(
            own.name.clone(),
            own.yield_strength.mpa(),
            own.tensile.map(Stress::mpa),
            own.modulus.map_or(STEEL_MODULUS, Stress::mpa),
        )
        .map_err(|e| e.to_string())?,
        None => Material::find(name).map_err(|e| e.to_string())?,
    };
    material.strength(wall).map_err(|e| e.to_string())
}

/// A grade of that name: the build's own material, or the table's.
pub(super) fn grade(build: &Build, name: &str) -> Result<Grade, String> {
    match own(build, name) {
        Some(own) => OwnGrade::new(own.name.clone(), own.yield_strength.mpa())
            .map(Grade::Own)
            .map_err(|e| e.to_string()),
        None => Grade::find(name).map_err(|e| e.to_string()),
    }
}

fn own<'a>(build: &'a Build, name: &str) -> Option<&'a MaterialSpec> {
    let wanted = name.trim().to_lowercase();
    let mut all = build.materials.iter();
    all.find(|m| m.name.trim().to_lowercase() == wanted)
}

/// A section of the build in the strength crate's words.
pub(super) fn profile(build: &Build, section: Section) -> Result<Profile, String> {
    let mm = build.unit.mm();
    match section {
        Section::Round(across, wall) => Profile::round_tube(across * mm, wall * mm),
        Section::Square(side, wall) => Profile::square_tube(side * mm, wall * mm),
        Section::Bar(diameter) => RoundSection::solid(diameter * mm).map(Profile::round),
    }
    .map_err(|e| e.to_string())
}
