//! The threaded rack end: a cantilever that carries the inner tie-rod joint.
//!
//! Two sections are looked at ([`Section`]):
//! - the **rack face**, where the threaded end leaves the bar: the free length stands out of it, the thread's minor diameter carries it;
//! - the **bore mouth**, where the rack leaves its housing or outer bush: it moves along the bar as the rack travels. What is cut there
//!   depends on the build, so it is said in [`BoreMouth`]: the plain bar, the thread right through, or not known (loads only). While
//!   the rack stands so far in that the mouth is outboard of the face, it cuts the thread, whatever the bar is.
//!
//! With F the force on the inner joint, e the rack axis pointing outboard and r the lever from the section to the joint,
//! `M = r x F`: torsion `M . e`, bending `|M - (M . e) e|`, axial `F . e` (pull outwards positive), shear `|F - (F . e) e|`.
//! The stresses are those of [`crate::stress`]: nominal, static, without the notch factor of the thread.
//!
//! ```
//! use nalgebra::Vector3;
//! use trammel_strength::grade::Grade;
//! use trammel_strength::rack_end::{BoreMouth, RackEnd, RackEndGeometry};
//! use trammel_strength::thread::Thread;
//!
//! // Left side: outboard is +y. 40 mm of 1/2-20 stand out of the rack; a rod pulls with 2 kN, 10 degrees upwards.
//! let geometry = RackEndGeometry::on_axis(Vector3::y(), 40.0)?.with_bore_mouth(75.0)?;
//! let end = RackEnd::new(geometry, Thread::find("1/2-20")?, &Grade::find("grade 8")?, &BoreMouth::LoadsOnly)?;
//! let force = Vector3::new(0.0, 1969.6, 347.3);
//! let stress = end.under(force, 0.0)?;
//! assert!((stress.rack_face.factor().unwrap() - 7.37).abs() < 0.01);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod allowance;
mod check;
mod compare;
mod deflection;
mod fatigue;
mod geometry;

pub use allowance::Allowance;
pub use check::{BoreMouthCheck, RackEndStress, Section, SectionCheck};
pub use compare::{Comparison, Outcome, compare};
pub use fatigue::{ENDURANCE, THREAD_NOTCH, ThreadMaking, endurance_limit};
pub use geometry::RackEndGeometry;

use nalgebra::Vector3;

use crate::grade::{Grade, GradeError, Strength};
use crate::number::{BadNumber, finite, finite_vector};
use crate::stress::{RoundSection, SectionLoads};
use crate::thread::Thread;

/// Why a rack end can't be built or looked at.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum RackEndError {
    /// A number that can't be computed with.
    #[error(transparent)]
    BadNumber(#[from] BadNumber),
    /// The grade has no strength at that size.
    #[error(transparent)]
    Grade(#[from] GradeError),
}

/// What is cut at the bore mouth.
#[derive(Clone, Debug, PartialEq)]
pub enum BoreMouth {
    /// Not known: only the loads are given there.
    LoadsOnly,
    /// The plain rack bar (a tube where it is bored for a long stud), of a material that may be unknown.
    Bar {
        /// The bar's section.
        section: RoundSection,
        /// What it is made of; without it there is a stress and no factor.
        grade: Option<Grade>,
    },
    /// The threaded rod itself reaches into the housing: same section and grade as at the rack face.
    ThreadThrough,
}

/// What is cut at the bore mouth, looked up once.
#[derive(Clone, Copy, Debug, PartialEq)]
enum BoreMouthMember {
    LoadsOnly,
    Section(RoundSection),
    Checked(RoundSection, Strength),
}

/// A rack end ready to be loaded; [`under`](Self::under) allocates nothing and may run at every pose of a sweep.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RackEnd {
    geometry: RackEndGeometry,
    thread: Thread,
    strength: Strength,
    bore_mouth: BoreMouthMember,
}

impl RackEnd {
    /// A rack end of this geometry, thread and grade.
    ///
    /// # Errors
    /// The grade has no strength at the thread's size, or the bar's grade none at the bar's.
    pub fn new(
        geometry: RackEndGeometry,
        thread: Thread,
        grade: &Grade,
        bore_mouth: &BoreMouth,
    ) -> Result<Self, RackEndError> {
        let strength = grade.strength(thread.major_diameter())?;
        let bore_mouth = match bore_mouth {
            BoreMouth::LoadsOnly => BoreMouthMember::LoadsOnly,
            BoreMouth::ThreadThrough => {
                BoreMouthMember::Checked(RoundSection::through_thread(thread), strength)
            }
            BoreMouth::Bar {
                section,
                grade: None,
            } => BoreMouthMember::Section(*section),
            BoreMouth::Bar {
                section,
                grade: Some(grade),
            } => BoreMouthMember::Checked(*section, grade.strength(section.outer_diameter())?),
        };
        Ok(Self {
            geometry,
            thread,
            strength,
            bore_mouth,
        })
    }

    /// Where joint, face and bore mouth are.
    pub fn geometry(&self) -> &RackEndGeometry {
        &self.geometry
    }

    /// The thread of the rack end.
    pub fn thread(&self) -> Thread {
        self.thread
    }

    /// The strength of the threaded end, with its source.
    pub fn strength(&self) -> Strength {
        self.strength
    }

    /// Loads, stresses and factors at both sections under a force on the inner joint (N, the frame of the geometry), with the rack
    /// moved this far outboard from its centre (mm, inboard negative).
    ///
    /// # Errors
    /// A number that is not finite, or so large that the stress is not.
    pub fn under(
        &self,
        force_on_joint: Vector3<f64>,
        rack_outboard: f64,
    ) -> Result<RackEndStress, BadNumber> {
        finite_vector("the force on the inner tie-rod joint", force_on_joint)?;
        finite("the rack travel", rack_outboard)?;
        let face = self
            .geometry
            .loads(self.geometry.rack_face_lever(), force_on_joint);
        let section = RoundSection::through_thread(self.thread);
        let rack_face = SectionCheck::of(section, face, self.strength);
        finite(
            "the combined stress at the rack face",
            rack_face.von_mises(),
        )?;
        let bore_mouth = match self.geometry.bore_mouth_lever(rack_outboard) {
            None => None,
            Some(lever) => {
                let loads = self.geometry.loads(lever, force_on_joint);
                finite("the bending moment at the bore mouth", loads.bending)?;
                Some(self.bore_mouth_under(loads, rack_outboard))
            }
        };
        Ok(RackEndStress {
            rack_face,
            bore_mouth,
        })
    }

    fn bore_mouth_under(&self, loads: SectionLoads, rack_outboard: f64) -> BoreMouthCheck {
        let threaded =
            BoreMouthMember::Checked(RoundSection::through_thread(self.thread), self.strength);
        let member = if self.geometry.mouth_is_on_the_thread(rack_outboard) {
            threaded
        } else {
            self.bore_mouth
        };
        match member {
            BoreMouthMember::LoadsOnly => BoreMouthCheck::LoadsOnly(loads),
            BoreMouthMember::Section(section) => {
                BoreMouthCheck::Stress(loads, section.stress_under(&loads))
            }
            BoreMouthMember::Checked(section, strength) => {
                BoreMouthCheck::Checked(SectionCheck::of(section, loads, strength))
            }
        }
    }
}

#[cfg(test)]
mod tests;
