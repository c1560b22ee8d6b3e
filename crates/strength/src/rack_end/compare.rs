//! The same load on a list of threads and grades, side by side.

use nalgebra::Vector3;

use super::{Allowance, BoreMouth, RackEnd, RackEndError, RackEndGeometry, SectionCheck};
use crate::grade::Grade;
use crate::thread::Thread;

/// What a thread of a grade would do under the load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outcome {
    /// Loads, stresses and factor at the rack face.
    pub rack_face: SectionCheck,
    /// Greatest free length, mm, that keeps the wanted factor.
    pub free_length: Allowance,
    /// Greatest angle, radians, between rod and rack axis that keeps it, rod force held.
    pub rod_angle: Allowance,
}

/// One row of a comparison.
#[derive(Clone, Debug, PartialEq)]
pub struct Comparison {
    /// The thread.
    pub thread: Thread,
    /// The grade.
    pub grade: Grade,
    /// The figures, or why there are none (a size that the grade doesn't cover).
    pub outcome: Result<Outcome, RackEndError>,
}

/// Every thread with every grade under one force on the joint (N); rows in the order of the lists, grades within threads.
pub fn compare(
    geometry: RackEndGeometry,
    threads: &[Thread],
    grades: &[Grade],
    force_on_joint: Vector3<f64>,
    wanted_factor: f64,
) -> Vec<Comparison> {
    let pairs = threads
        .iter()
        .flat_map(|&thread| grades.iter().map(move |grade| (thread, grade)));
    let row = |(thread, grade): (Thread, &Grade)| Comparison {
        thread,
        grade: grade.clone(),
        outcome: outcome(geometry, thread, grade, force_on_joint, wanted_factor),
    };
    pairs.map(row).collect()
}

fn outcome(
    geometry: RackEndGeometry,
    thread: Thread,
    grade: &Grade,
    force: Vector3<f64>,
    wanted_factor: f64,
) -> Result<Outcome, RackEndError> {
    let rack_end = RackEnd::new(geometry, thread, grade, &BoreMouth::LoadsOnly)?;
    Ok(Outcome {
        rack_face: rack_end.under(force, 0.0)?.rack_face,
        free_length: rack_end.greatest_free_length(force, wanted_factor)?,
        rod_angle: rack_end.greatest_rod_angle(force, wanted_factor)?,
    })
}
