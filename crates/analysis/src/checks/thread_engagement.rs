//! How much of the rack end's thread is screwed into the rack.

use trammel_build::{AxleName, Build, Edit, PointName, PointRef, RackEndSpec};
use trammel_strength::engagement;

use super::moves::tidy;
use crate::{
    Bound, Caution, CautionKind, Figure, FigureUnit, Grade, Remedy,
    rack_end::Fastening,
    search::{shop_step, step_up},
    words::{length, work_length},
};

pub(super) fn check(build: &Build) -> Option<Caution> {
    let spec = &build.front.rack_end;
    let typed = spec.engagement?;
    let thread = Fastening::of(spec)?.thread;
    let (found, wanted) = (typed * build.unit.mm(), engagement::length_in_steel(thread));
    let least = engagement::length_of_least_threads(thread);
    // A half-inch that was typed as 12.7 mm is a half-inch.
    if found >= wanted - 1e-6 {
        return None;
    }
    let count = engagement::threads_in(thread, found);
    let few = found < least - 1e-6;
    Some(Caution {
        kind: CautionKind::ThreadEngagement,
        grade: if few { Grade::Danger } else { Grade::Caution },
        axle: AxleName::Front,
        side: None,
        headline: format!(
            "Thread in the rack {}, wanted {}",
            length(found, build.unit),
            length(wanted, build.unit)
        ),
        detail: format!(
            "{}: {count:.1} threads; about one diameter in steel is wanted, and {} the trade's three threads.",
            thread.short_name(),
            if few { "this is below" } else { "this is above" }
        ),
        figure: Some(Figure {
            value: typed,
            limit: build.unit.from_mm(wanted),
            bound: Bound::AtLeast,
            unit: FigureUnit::BuildLength,
        }),
        worst: None,
        reason: "With too little thread in mesh it strips before the rod breaks, and the rack end pulls out."
            .into(),
        remedies: vec![deeper(build, spec, wanted)],
        point: Some(PointRef::left(AxleName::Front, PointName::RackFace)),
        source: format!(
            "one diameter in steel and three threads: {}",
            engagement::DIAMETERS_IN_STEEL.source
        ),
    })
}

fn deeper(build: &Build, spec: &RackEndSpec, wanted: f64) -> Remedy {
    let to = step_up(wanted, shop_step(build.unit));
    let value = tidy(build.unit.from_mm(to));
    Remedy {
        text: format!("Screw it {} into the rack", work_length(to, build.unit)),
        value: Some(value),
        edit: Some(Edit::SetRackEnd(RackEndSpec {
            engagement: Some(value),
            ..spec.clone()
        })),
    }
}
