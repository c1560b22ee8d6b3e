//! Room that parts take, for the gaps between them.

use trammel_build::{AxleSpec, Build, Tube, defaults};
use trammel_strength::clearance::{Clearances, Thicknesses};

use super::Note;

/// The thicknesses of an axle's parts; what the build does not give is taken and said.
pub(super) fn of(build: &Build, spec: &AxleSpec, notes: &mut Vec<Note>) -> Option<Clearances> {
    let mm = build.unit.mm();
    let parts = &spec.parts;
    let mut room = |typed: Option<f64>, default: f64, what: &str| {
        typed.map_or_else(
            || {
                let text = format!(
                    "{what} of {default:.0} mm taken for the gaps (common practice, no source)."
                );
                notes.push(Note::taken("clearances", text));
                default
            },
            |v| v * mm,
        )
    };
    let across = |tube: &Option<Tube>| tube.as_ref().map(|t| t.section.across());
    let wheel = &parts.wheel;
    let sizes = Thicknesses {
        tie_rod: room(
            across(&parts.tie_rod.tube),
            defaults::TIE_ROD_ROOM_MM,
            "A tie-rod diameter",
        ),
        upper_arm: room(
            across(&parts.upper_arm.tube),
            defaults::ARM_TUBE_ROOM_MM,
            "An upper-arm tube",
        ),
        lower_arm: room(
            across(&parts.lower_arm.tube),
            defaults::ARM_TUBE_ROOM_MM,
            "A lower-arm tube",
        ),
        spring: room(
            parts.spring_diameter,
            defaults::SPRING_DIAMETER_MM,
            "A spring-unit diameter",
        ),
        tyre_diameter: room(
            wheel.tyre_diameter,
            2.0 * spec.wheel.loaded_radius * mm * defaults::TYRE_GROWTH,
            "A tyre diameter",
        ),
        tyre_width: room(wheel.tyre_width, defaults::TYRE_WIDTH_MM, "A tyre width"),
        rim_diameter: room(
            wheel.rim_diameter,
            defaults::RIM_DIAMETER_MM,
            "A rim diameter",
        ),
        rim_width: room(wheel.rim_width, defaults::RIM_WIDTH_MM, "A rim width"),
        rim_thickness: wheel
            .rim_thickness
            .map_or(defaults::RIM_THICKNESS_MM, |v| v * mm),
    };
    let wanted = build
        .limits
        .clearance
        .map_or(defaults::CLEARANCE_MM, |v| v * mm);
    match Clearances::new(sizes, wanted) {
        Ok(clearances) => Some(clearances),
        Err(fault) => {
            notes.push(Note::left_out("clearances", fault.to_string()));
            None
        }
    }
}
