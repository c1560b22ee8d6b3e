//! Threads and grades side by side for the rack end's own load.

use trammel_build::{AxleName, Build, Side, defaults};
use trammel_strength::{
    grade::{Family, Grade, ListedGrade},
    loads::LoadCase,
    proof::{self, Part, PartKind, Setup},
    rack_end::{Allowance, Outcome, compare},
    statics::Equilibrium,
    thread::{System, Thread},
};

use super::{ProofDepth, ProofPart, prepared::Prepared, rows::setup};
use crate::{Raise, RaiseFault, WorstPose, raised};

/// Thread sizes that a rack end is made with, mm.
const SIZES_MM: std::ops::RangeInclusive<f64> = 9.0..=20.0;

/// A thread in a grade under the load that is worst for the rack end as it is.
#[derive(Clone, Debug, PartialEq)]
pub struct ThreadRow {
    /// Thread.
    pub thread: Thread,
    /// Grade.
    pub grade: Grade,
    /// Factor against yield at the rack face; `None` where the grade does not cover the size.
    pub factor: Option<f64>,
    /// Greatest angle between tie rod and rack that keeps the wanted factor, rad, the rod's force held.
    pub rod_angle: Option<Allowance>,
    /// Greatest free length that keeps it, mm.
    pub free_length: Option<Allowance>,
    /// Whether it is the build's own.
    pub own: bool,
    /// The load case.
    pub load_case: String,
    /// The pose.
    pub pose: WorstPose,
}

/// Every thread of a rack end's size in every bolt grade of its system, and the build's own pair; for the load case and pose that are worst for the rack
/// end of a side as it is. Empty where the front has no spring, no rack, or an unknown name.
#[must_use]
pub fn thread_comparison(build: &Build, side: Side) -> Vec<ThreadRow> {
    worst_rack_end(build, side).map_or_else(Vec::new, |worst| worst.rows(build))
}

/// The same with the frame raised on the same arms: how the thread's factor falls as the rods steepen.
///
/// # Errors
/// [`RaiseFault`] when a wheel does not get there.
pub fn thread_comparison_raised(
    build: &Build,
    raise: &Raise,
    side: Side,
) -> Result<Vec<ThreadRow>, RaiseFault> {
    let edit = raised(build, raise)?;
    // An edit that the build does not take leaves nothing to compare.
    let after = edit.apply(build).ok();
    Ok(after.map_or_else(Vec::new, |build| thread_comparison(&build, side)))
}

/// The rack end at its worst.
struct WorstEnd {
    prepared: Prepared,
    case: LoadCase,
    pose: WorstPose,
}

fn worst_rack_end(build: &Build, side: Side) -> Option<WorstEnd> {
    let model = build.axle(AxleName::Front).ok()?;
    let prepared = Prepared::of(build, &model, side).ok()?;
    let end = prepared
        .parts
        .iter()
        .find(|(id, _)| *id == ProofPart::RackEnd)?;
    let parts: [Part; 1] = [end.1.clone()];
    let found = proof::prove(&Setup {
        cases: &prepared.cases,
        ..setup(build, &prepared, &parts, &[], ProofDepth::Full)
    });
    let row = found
        .rows
        .into_iter()
        .find(|row| row.check == trammel_strength::check::Check::RackFaceYield)?;
    let case = prepared
        .cases
        .iter()
        .find(|c| Some(&c.name) == row.load_case.as_ref())?
        .clone();
    let pose = row.pose?;
    Some(WorstEnd {
        prepared,
        case,
        pose: WorstPose {
            travel: pose.travel,
            rack: pose.rack,
        },
    })
}

impl WorstEnd {
    fn rows(&self, build: &Build) -> Vec<ThreadRow> {
        let part = self
            .prepared
            .parts
            .iter()
            .find_map(|(_, part)| match &part.kind {
                PartKind::RackEnd(end) => Some(*end),
                _ => None,
            });
        let (Some(part), Some(force)) = (part, self.force()) else {
            return Vec::new();
        };
        let own_thread = part.end.thread();
        let name = build
            .front
            .rack_end
            .grade
            .as_deref()
            .unwrap_or(defaults::GRADE);
        let Ok(own_grade) = super::materials::grade(build, name) else {
            return Vec::new();
        };
        let wanted = build
            .limits
            .rack_end_factor
            .unwrap_or(defaults::RACK_END_FACTOR);
        let mut rows = Vec::new();
        for system in [System::Unified, System::Metric] {
            let threads = threads(system, own_thread);
            let mut grades = grades(system);
            if !grades.contains(&own_grade) && system == own_thread.system() {
                grades.push(own_grade.clone());
            }
            let found = compare(*part.end.geometry(), &threads, &grades, force, wanted);
            rows.extend(found.into_iter().map(|c| {
                let outcome: Option<Outcome> = c.outcome.ok();
                ThreadRow {
                    own: c.thread == own_thread && c.grade == own_grade,
                    thread: c.thread,
                    grade: c.grade,
                    factor: outcome.and_then(|o| o.rack_face.factor()),
                    rod_angle: outcome.map(|o| o.rod_angle),
                    free_length: outcome.map(|o| o.free_length),
                    load_case: self.case.name.clone(),
                    pose: self.pose,
                }
            }));
        }
        rows
    }

    /// The force on the inner joint, in the frame of the corner; of a case with two senses the greater.
    fn force(&self) -> Option<trammel_geometry::Vector> {
        let linkage = &self.prepared.linkage;
        let pose = linkage.pose(self.pose.travel, self.pose.rack).ok()?;
        let equilibrium = Equilibrium::at(linkage, &pose).ok()?;
        let under = |sense: &f64| {
            let load = self
                .prepared
                .scene
                .load(&self.case, linkage, &pose, *sense)
                .ok()?;
            Some(equilibrium.under(&load).ok()?.force_on_inner_joint)
        };
        let forces = self.case.senses().iter().filter_map(under);
        forces.max_by(|a, b| a.norm().total_cmp(&b.norm()))
    }
}

fn threads(system: System, own: Thread) -> Vec<Thread> {
    let all = Thread::all().iter().copied();
    all.filter(|t| t.system() == system && (SIZES_MM.contains(&t.major_diameter()) || *t == own))
        .collect()
}

fn grades(system: System) -> Vec<Grade> {
    let family = match system {
        System::Unified => Family::SaeJ429,
        System::Metric => Family::Iso898,
    };
    let all = ListedGrade::all().iter().filter(|g| g.family() == family);
    all.map(|g| Grade::Listed(*g)).collect()
}
