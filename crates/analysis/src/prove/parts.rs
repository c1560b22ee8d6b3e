//! The parts of a corner in the strength crate's words.

use trammel_build::{AxleSpec, Build, Force, PointName, ThreadMaking, Tube, defaults};
use trammel_geometry::ArmName;
use trammel_strength::{
    arm_tubes::ArmTubes,
    material::MaterialStrength,
    proof::{Part, PartKind, RackEndPart},
    rack_end::{self, BoreMouth, RackEnd},
    section::Profile,
    source::{Limit, Source},
    stress::RoundSection,
    thread::Thread,
    tie_rod::TieRodBar,
};

use super::{Note, ProofPart, joints, materials, words};
use crate::{corner_view::CornerView, rack_end::geometry};

/// Every part that the build describes well enough; notes say what is left out, why, and what was taken.
pub(super) fn of(
    build: &Build,
    spec: &AxleSpec,
    view: &CornerView,
    notes: &mut Vec<Note>,
) -> Vec<(ProofPart, Part)> {
    let mut kinds: Vec<(ProofPart, PartKind)> = Vec::new();
    let mut add = |part: ProofPart,
                   kind: Result<Option<PartKind>, String>,
                   notes: &mut Vec<Note>| match kind {
        Ok(Some(kind)) => kinds.push((part, kind)),
        Ok(None) => {}
        Err(why) => notes.push(Note::left_out(part.label(), why)),
    };
    if view.rack_end.is_some() {
        let kind = rack_end(build, view, notes).map(|end| Some(PartKind::RackEnd(end)));
        add(ProofPart::RackEnd, kind, notes);
    }
    let kind = tie_rod(build, spec, view, notes).map(|rod| Some(PartKind::TieRod(rod)));
    add(ProofPart::TieRod, kind, notes);
    for arm in [ArmName::Upper, ArmName::Lower] {
        let part = ProofPart::ArmTubes(arm);
        let kind =
            arm_tubes(build, spec, arm, notes).map(|tubes| Some(PartKind::ArmTubes(arm, tubes)));
        add(part, kind, notes);
    }
    if spec.parts.joints.is_empty() {
        notes.push(Note::left_out(
            "joints",
            "No joints, bolts and brackets are given: they are not checked.",
        ));
    }
    for (&point, joint) in &spec.parts.joints {
        let corner = joints::Place {
            build,
            spec,
            view,
            point,
            parts: joint,
        };
        if !is_there(point, spec) {
            continue;
        }
        add(ProofPart::Joint(point), corner.joint(notes), notes);
        add(ProofPart::Bolt(point), corner.bolt(notes), notes);
        add(ProofPart::Bracket(point), corner.bracket(notes), notes);
    }
    let given = |point: &PointName| spec.parts.joints.contains_key(point);
    let joints = trammel_build::AxleParts::JOINTS.into_iter();
    for point in joints.filter(|p| is_there(*p, spec) && !given(p) && !spec.parts.joints.is_empty())
    {
        let text = "No joint, bolt and bracket are given: they are not checked.";
        notes.push(Note::left_out(words::point(point), text));
    }
    let named = |(part, kind): (ProofPart, PartKind)| {
        let name = part.label();
        (part, Part { name, kind })
    };
    kinds.into_iter().map(named).collect()
}

fn is_there(point: PointName, spec: &AxleSpec) -> bool {
    let spring = matches!(
        point,
        PointName::SpringChassisMount | PointName::SpringArmMount
    );
    !spring || spec.spring.is_some()
}

/// The thread and grade of the front's rack end, with notes on what was taken.
fn rack_end(
    build: &Build,
    view: &CornerView,
    notes: &mut Vec<Note>,
) -> Result<RackEndPart, String> {
    let spec = &build.front.rack_end;
    let place = view.rack_end.ok_or("There is no rack.")?;
    let mut taken = |text: String| notes.push(Note::taken("rack end", text));
    if spec.thread.is_none() {
        taken(format!("Thread {} taken.", defaults::THREAD));
    }
    if spec.grade.is_none() {
        taken(format!("{} taken.", defaults::GRADE));
    }
    if spec.making.is_none() {
        taken("A cut thread taken for the fatigue caution.".into());
    }
    if build.front.rack.face.is_none() {
        let text = format!(
            "The rack face taken {} mm inboard of the joint.",
            defaults::FREE_LENGTH_MM
        );
        taken(text);
    }
    let thread = Thread::find(spec.thread.as_deref().unwrap_or(defaults::THREAD))
        .map_err(|e| e.to_string())?;
    let grade = materials::grade(build, spec.grade.as_deref().unwrap_or(defaults::GRADE))?;
    let mm = build.unit.mm();
    let bar = spec.bar_diameter.map(|v| v * mm);
    let mouth = match bar {
        Some(diameter) => BoreMouth::Bar {
            section: RoundSection::solid(diameter).map_err(|e| e.to_string())?,
            grade: spec
                .bar_grade
                .as_deref()
                .map(|name| materials::grade(build, name))
                .transpose()?,
        },
        None => BoreMouth::LoadsOnly,
    };
    if bar.is_none() {
        notes.push(Note::left_out(
            "rack end",
            "The rack bar's diameter is not given: wall and bore mouth are not checked.",
        ));
    } else if spec.bar_grade.is_none() {
        notes.push(Note::left_out(
            "rack end",
            "The rack bar's steel is not given: its bending at the bore mouth is not checked.",
        ));
    }
    if spec.engagement.is_none() {
        notes.push(Note::left_out(
            "rack end",
            "The thread's engagement is not given and not checked.",
        ));
    }
    let end = RackEnd::new(
        geometry(&place).map_err(|e| e.to_string())?,
        thread,
        &grade,
        &mouth,
    )
    .map_err(|e| e.to_string())?;
    let toe = build.limits.rack_end_toe_deg;
    Ok(RackEndPart {
        end,
        making: match spec.making {
            Some(ThreadMaking::Rolled) => rack_end::ThreadMaking::Rolled,
            Some(ThreadMaking::Cut) | None => rack_end::ThreadMaking::Cut,
        },
        toe_limit: Limit {
            value: toe.unwrap_or(defaults::RACK_END_TOE_LIMIT_DEG).to_radians(),
            unit: "rad",
            source: typed(toe.is_some()),
        },
        // What is screwed in past the tapped depth is not in mesh.
        engagement: spec
            .engagement
            .map(|v| spec.bore_depth.map_or(v, |depth| v.min(depth)) * mm),
        bar_diameter: bar,
    })
}

pub(super) fn typed(by_the_user: bool) -> Source {
    if by_the_user {
        Source::USER
    } else {
        Source::COMMON_PRACTICE
    }
}

/// Section and strength of a tube.
fn tube(
    build: &Build,
    tube: &Tube,
    about: &str,
    notes: &mut Vec<Note>,
) -> Result<(Profile, MaterialStrength), String> {
    let profile = materials::profile(build, tube.section)?;
    let name = tube.material.as_deref().unwrap_or_else(|| {
        notes.push(Note::taken(
            about,
            format!(
                "Material {} taken, the weakest of its kind.",
                defaults::TUBE_MATERIAL
            ),
        ));
        defaults::TUBE_MATERIAL
    });
    Ok((profile, materials::strength(build, name, profile.wall())?))
}

fn tie_rod(
    build: &Build,
    spec: &AxleSpec,
    view: &CornerView,
    notes: &mut Vec<Note>,
) -> Result<TieRodBar, String> {
    let about = ProofPart::TieRod.label();
    let parts = &spec.parts.tie_rod;
    let stock = parts
        .tube
        .as_ref()
        .ok_or("No tube is given: axial stress, buckling and a side hit are not checked.")?;
    let (profile, strength) = tube(build, stock, &about, notes)?;
    let rod = view.linkage.corner().tie_rod;
    let side_hit = parts.side_hit.map_or_else(
        || {
            let text = format!(
                "A side hit of {:.0} N taken (a judgement, no source).",
                defaults::SIDE_HIT_N
            );
            notes.push(Note::taken(about.clone(), text));
            defaults::SIDE_HIT_N
        },
        Force::n,
    );
    let bar = TieRodBar::new(profile, strength, (rod.outer - rod.inner).norm(), side_hit)
        .map_err(|e| e.to_string())?;
    let Some(thread) = parts.thread.as_deref() else {
        notes.push(Note::left_out(
            about,
            "No thread of adapters and rod ends is given: the shanks are not checked.",
        ));
        return Ok(bar);
    };
    let thread = Thread::find(thread).map_err(|e| e.to_string())?;
    let name = parts.grade.as_deref().unwrap_or_else(|| {
        notes.push(Note::taken(
            about,
            format!("Rod-end shanks of {} taken.", defaults::BOLT_GRADE),
        ));
        defaults::BOLT_GRADE
    });
    let strength = materials::grade(build, name)?
        .strength(thread.major_diameter())
        .map_err(|e| e.to_string())?;
    let bar = bar.with_shank(thread, strength);
    let Some(engaged) = parts.engagement else {
        notes.push(Note::left_out(
            ProofPart::TieRod.label(),
            "The thread in the adapters is not given and not checked.",
        ));
        return Ok(bar);
    };
    let least = (engaged - parts.adjustment.unwrap_or(0.0)).max(0.0) * build.unit.mm();
    bar.with_engagement(least).map_err(|e| e.to_string())
}

fn arm_tubes(
    build: &Build,
    spec: &AxleSpec,
    arm: ArmName,
    notes: &mut Vec<Note>,
) -> Result<ArmTubes, String> {
    let about = ProofPart::ArmTubes(arm).label();
    let parts = spec.parts.arm(arm);
    let stock = parts
        .tube
        .as_ref()
        .ok_or("No tube is given: the tubes are not checked.")?;
    let (profile, strength) = tube(build, stock, &about, notes)?;
    let sprung = spec.spring.is_some_and(|s| s.arm == arm);
    let carrying = parts.spring_tubes.unwrap_or(1);
    if sprung && parts.spring_tubes.is_none() {
        notes.push(Note::taken(
            about,
            "One tube taken to carry the spring's mount alone.",
        ));
    }
    ArmTubes::new(profile, strength, f64::from(carrying)).map_err(|e| e.to_string())
}
