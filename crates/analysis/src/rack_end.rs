//! The rack end under the build's hit, at the pose where it is worst.

use trammel_build::{Build, HitPoint, RackEndPlace, RackEndSpec, Side, defaults};
use trammel_geometry::{Vector, mirror_vector};
use trammel_strength::{
    grade::{Grade, Strength},
    rack_end::{BoreMouth, RackEnd, RackEndError, RackEndGeometry, SectionCheck},
    stress::SectionLoads,
    thread::Thread,
};

use crate::{
    WorstPose,
    corner_view::{CornerView, Reading},
    pose_grid::{PoseGrid, Worst},
};

/// Figures of one rack end at its worst pose, for the screen. Vehicle axes of the side itself; N, N mm, MPa, mm.
#[derive(Clone, Debug, PartialEq)]
pub struct RackEndStudy {
    /// Side.
    pub side: Side,
    /// Thread, the build's or the default one.
    pub thread: Thread,
    /// Grade, the build's or the default one.
    pub grade: Grade,
    /// Thread standing free from the rack face to the joint's centre, mm.
    pub free_length: f64,
    /// What the joint stands off the rack's own line, mm.
    pub bracket_offset: Vector,
    /// The pose with the greatest stress over travel and lock.
    pub worst: WorstPose,
    /// The hit on the wheel, N.
    pub hit: Vector,
    /// Where it acts.
    pub hit_at: HitPoint,
    /// Force in the tie rod, N, tension positive.
    pub tie_rod_tension: f64,
    /// Force of the tie rod on the inner joint, N.
    pub force_on_joint: Vector,
    /// Loads, stresses and strength where the thread leaves the rack bar.
    pub rack_face: SectionCheck,
    /// Loads where the bar leaves its housing, at the same pose.
    pub bore_mouth: Option<SectionLoads>,
    /// Yield strength over combined stress at the rack face.
    pub factor: f64,
    /// The factor that the build wants.
    pub wanted: f64,
}

impl RackEndStudy {
    /// The same on the other side of a build whose sides are alike.
    pub(crate) fn mirrored(&self) -> Self {
        Self {
            side: match self.side {
                Side::Left => Side::Right,
                Side::Right => Side::Left,
            },
            worst: WorstPose {
                rack: -self.worst.rack,
                ..self.worst
            },
            bracket_offset: mirror_vector(self.bracket_offset),
            hit: mirror_vector(self.hit),
            force_on_joint: mirror_vector(self.force_on_joint),
            ..self.clone()
        }
    }
}

/// Thread and grade of a build's rack end.
#[derive(Clone, Debug)]
pub(crate) struct Fastening {
    pub thread: Thread,
    pub grade: Grade,
}

impl Fastening {
    /// As the build names them, the defaults where it doesn't; `None` where no table knows a name.
    pub(crate) fn of(spec: &RackEndSpec) -> Option<Self> {
        Some(Self {
            thread: Thread::find(spec.thread.as_deref().unwrap_or(defaults::THREAD)).ok()?,
            grade: Grade::find(spec.grade.as_deref().unwrap_or(defaults::GRADE)).ok()?,
        })
    }

    pub(crate) fn strength(&self) -> Option<Strength> {
        self.grade.strength(self.thread.major_diameter()).ok()
    }
}

/// A rack end of one side, ready to be looked at in any pose; in the frame of its [`CornerView`].
#[derive(Clone, Copy, Debug)]
pub(crate) struct RackEndCase {
    end: RackEnd,
    pub place: RackEndPlace,
    pub thread: Thread,
    yield_strength: f64,
}

impl RackEndCase {
    pub(crate) fn new(place: RackEndPlace, fastening: &Fastening) -> Result<Self, RackEndError> {
        let end = RackEnd::new(
            geometry(&place)?,
            fastening.thread,
            &fastening.grade,
            &BoreMouth::LoadsOnly,
        )?;
        Ok(Self {
            end,
            place,
            thread: fastening.thread,
            yield_strength: end.strength().yield_strength.mpa(),
        })
    }

    /// The same with another free length, mm.
    pub(crate) fn with_free_length(&self, free: f64, fastening: &Fastening) -> Option<Self> {
        let face = self.place.face + self.place.outward * (self.place.free_length() - free);
        Self::new(RackEndPlace { face, ..self.place }, fastening).ok()
    }

    /// Combined stress at the rack face over yield: the inverse of the factor.
    pub(crate) fn use_of_yield(&self, reading: &Reading) -> Option<f64> {
        let force = reading.force_on_joint()?;
        let stress = self.end.under(force, 0.0).ok()?;
        Some(stress.rack_face.von_mises() / self.yield_strength)
    }

    /// The worst pose of a grid.
    pub(crate) fn worst(&self, view: &CornerView, grid: &PoseGrid) -> Option<Worst> {
        grid.worst(view, |r| self.use_of_yield(r))
    }

    /// The greatest free length, mm, at which every pose of the grid keeps the factor; `None` where even none at all would not.
    pub(crate) fn greatest_free_length(&self, grid: &PoseGrid, wanted: f64) -> Option<f64> {
        use trammel_strength::rack_end::Allowance;
        let mut least = f64::INFINITY;
        for reading in grid.readings() {
            let Some(force) = reading.force_on_joint() else {
                continue;
            };
            match self.end.greatest_free_length(force, wanted).ok()? {
                Allowance::Never => return None,
                Allowance::UpTo(length) => least = least.min(length),
                Allowance::Always => {}
            }
        }
        Some(least)
    }

    /// All figures at a reading, turned into vehicle axes.
    pub(crate) fn study(
        &self,
        build: &Build,
        view: &CornerView,
        grade: &Grade,
        reading: &Reading,
        wanted: f64,
    ) -> Option<RackEndStudy> {
        let force = reading.force_on_joint()?;
        let stress = self.end.under(force, view.outboard(reading.rack)).ok()?;
        let vehicle = |v: Vector| view.side.way_in_vehicle(v);
        Some(RackEndStudy {
            side: view.side,
            thread: self.thread,
            grade: grade.clone(),
            free_length: self.place.free_length(),
            bracket_offset: vehicle(self.place.bracket_offset()),
            worst: WorstPose {
                travel: reading.travel,
                rack: reading.rack,
            },
            hit: vehicle(view.hit.force),
            hit_at: build.hit.at.unwrap_or(HitPoint::WheelCentre),
            tie_rod_tension: reading.tension?,
            force_on_joint: vehicle(force),
            rack_face: stress.rack_face,
            bore_mouth: stress.bore_mouth.map(|b| b.loads()),
            factor: stress.rack_face.factor()?,
            wanted,
        })
    }
}

/// The strength crate's geometry of a place. A joint that a bracket holds inboard of the rack face loads the same section by the same lever, seen
/// from the other side; where the bore mouth is then does not matter.
pub(crate) fn geometry(place: &RackEndPlace) -> Result<RackEndGeometry, RackEndError> {
    let free = place.free_length();
    let outboard = place.outward * 1.0_f64.copysign(free);
    let end =
        RackEndGeometry::on_axis(outboard, free.abs())?.with_offset(place.bracket_offset())?;
    let reach = place.outward.dot(&(place.joint - place.bore_mouth));
    Ok(if free >= 0.0 {
        end.with_bore_mouth(reach)?
    } else {
        end
    })
}
