//! What would mend a rack end that bends, each worked out.

use trammel_build::{Edit, PointName, RackEndSpec};
use trammel_geometry::{Vector, greatest_first, least_first};
use trammel_strength::{
    grade::{Family, Grade as Steel, ListedGrade, short_name as short_grade},
    thread::Thread,
};

use super::{After, moves::tidy, rack_end_bending::Bend, rack_height::rack_height};
use crate::{
    Remedy,
    pose_grid::PoseGrid,
    rack_end::{Fastening, RackEndCase},
    search::{shop_step, step_down},
    words::{factor, length, work_length},
};

/// A change that betters the factor by less than this share is no remedy.
const WORTH_IT: f64 = 1.05;
/// Larger threads offered at most.
const MOST_THREADS: usize = 3;

/// A remedy with the factor it comes to.
struct Mended {
    factor: f64,
    remedy: Remedy,
}

impl Bend<'_> {
    /// Everything that betters the factor: first what reaches the wanted one, then the better before the worse.
    pub(super) fn remedies(&self, spec: &RackEndSpec) -> Vec<Remedy> {
        let mut found: Vec<Mended> = self.shorter().into_iter().collect();
        let threads = self.larger_threads(spec);
        let grades = self.better_grades(spec);
        let single = threads.iter().chain(&grades);
        let alone = single.map(|m| m.factor).fold(0.0, f64::max);
        let both = (alone < self.study.wanted).then(|| self.thread_and_grade(spec));
        found.extend(threads);
        found.extend(grades);
        found.extend(both.flatten());
        found.extend(self.other_height());
        let wanted = self.study.wanted;
        greatest_first(&mut found, |m| m.factor.min(wanted));
        found.into_iter().map(|m| m.remedy).collect()
    }

    fn mended(&self, what: &str, factor_then: f64, edit: Option<Edit>) -> Mended {
        Mended {
            factor: factor_then,
            remedy: Remedy {
                text: format!(
                    "{what}: {} becomes {}",
                    factor(self.study.factor),
                    factor(factor_then)
                ),
                value: Some(factor_then),
                edit,
            },
        }
    }

    /// A shorter free length: the rack face nearer to the joint, which stays where it is.
    fn shorter(&self) -> Option<Mended> {
        let (case, now) = (self.case, self.study.free_length);
        let step = shop_step(case.unit());
        let greatest = self
            .rack_end
            .greatest_free_length(&case.grid, self.study.wanted)?;
        let mut free = step_down(greatest, step);
        // Between the poses of the grid the stress may be a little higher: one step less, then.
        for _ in 0..3 {
            if !(free > 0.0 && free < now) {
                return None;
            }
            let end = self.rack_end.with_free_length(free, &self.fastening)?;
            let then = 1.0 / end.worst(&case.view, &case.grid)?.badness;
            if then >= self.study.wanted {
                let what = format!(
                    "{} out instead of {}",
                    work_length(free, case.unit()),
                    length(now, case.unit())
                );
                return Some(self.mended(&what, then, self.face_out_by(now - free)));
            }
            free -= step;
        }
        None
    }

    fn face_out_by(&self, by: f64) -> Option<Edit> {
        let (point, to) = self
            .case
            .moved(PointName::RackFace, self.rack_end.place.outward * by)?;
        Some(Edit::MovePoint {
            point,
            to: to.map(tidy),
        })
    }

    fn with(
        &self,
        thread: Thread,
        grade: &Steel,
        spec: &RackEndSpec,
        what: &str,
    ) -> Option<Mended> {
        let fastening = Fastening {
            thread,
            grade: grade.clone(),
        };
        let end = RackEndCase::new(self.rack_end.place, &fastening).ok()?;
        let then = 1.0 / end.worst(&self.case.view, &self.case.grid)?.badness;
        let changed = |new: String, old: &Option<String>, same: bool| {
            if same { old.clone() } else { Some(new) }
        };
        let edit = Edit::SetRackEnd(RackEndSpec {
            thread: changed(
                thread.short_name().to_owned(),
                &spec.thread,
                thread == self.fastening.thread,
            ),
            grade: changed(
                short_grade(grade.name()).to_owned(),
                &spec.grade,
                *grade == self.fastening.grade,
            ),
            ..spec.clone()
        });
        Some(self.mended(what, then, Some(edit)))
    }

    fn larger_threads(&self, spec: &RackEndSpec) -> Vec<Mended> {
        let mut found = Vec::new();
        for thread in larger(self.fastening.thread) {
            let what = format!(
                "{} instead of {}",
                thread.short_name(),
                self.fastening.thread.short_name()
            );
            let Some(mended) = self.with(thread, &self.fastening.grade, spec, &what) else {
                continue;
            };
            let enough = mended.factor >= self.study.wanted;
            found.push(mended);
            if enough || found.len() == MOST_THREADS {
                break;
            }
        }
        found
    }

    fn better_grades(&self, spec: &RackEndSpec) -> Vec<Mended> {
        let mut found = Vec::new();
        for grade in self.better() {
            let what = format!(
                "{} instead of {}",
                short_grade(grade.name()),
                short_grade(self.fastening.grade.name())
            );
            let Some(mended) = self.with(self.fastening.thread, &grade, spec, &what) else {
                continue;
            };
            let enough = mended.factor >= self.study.wanted;
            found.push(mended);
            if enough {
                break;
            }
        }
        found
    }

    /// The first larger thread in the best grade that is enough.
    fn thread_and_grade(&self, spec: &RackEndSpec) -> Option<Mended> {
        let best = self.better().pop()?;
        larger(self.fastening.thread)
            .into_iter()
            .find_map(|thread| {
                let what = format!("{} in {}", thread.short_name(), short_grade(best.name()));
                self.with(thread, &best, spec, &what)
                    .filter(|m| m.factor >= self.study.wanted)
            })
    }

    /// Grades of the same family with a higher yield at this size, the weakest first.
    fn better(&self) -> Vec<Steel> {
        let Steel::Listed(listed) = &self.fastening.grade else {
            return Vec::new();
        };
        let family: Family = listed.family();
        let size = self.fastening.thread.major_diameter();
        let yields = |g: &Steel| g.strength(size).ok().map(|s| s.yield_strength.mpa());
        let now = self.fastening.strength().map(|s| s.yield_strength.mpa());
        let mut better: Vec<(f64, Steel)> = ListedGrade::all()
            .iter()
            .filter(|g| g.family() == family)
            .map(|g| Steel::Listed(*g))
            .filter_map(|g| Some((yields(&g)?, g)))
            .filter(|(y, _)| now.is_some_and(|now| *y > now))
            .collect();
        least_first(&mut better, |b| b.0);
        better.into_iter().map(|(_, g)| g).collect()
    }

    /// The rack with its joint higher or lower, so that the rod stands at a lower angle.
    fn other_height(&self) -> Option<Mended> {
        let case = self.case;
        let target = 1.0 / self.study.wanted;
        let coarse = |up: f64| {
            let view = case.view.with_rack_moved(Vector::new(0.0, 0.0, up))?;
            let grid = PoseGrid::sized(&view, 3, 3);
            let worst = grid.worst_node(|r| self.rack_end.use_of_yield(r));
            worst.map(|w| w.badness)
        };
        let exact = |after: &After| {
            let spec = &after.build.front.rack_end;
            let end = RackEndCase::new(after.view.rack_end?, &Fastening::of(spec)?).ok()?;
            let worst = end.worst(&after.view, &PoseGrid::of(&after.view))?;
            Some(worst.badness)
        };
        let found = rack_height(case, target, coarse, exact)?;
        let mended = self.mended(&found.what, 1.0 / found.then, Some(found.edit));
        (mended.factor >= WORTH_IT * self.study.factor).then_some(mended)
    }
}

/// Larger threads of the same system and series, smallest first; of those of one size the one with the thickest core.
fn larger(than: Thread) -> Vec<Thread> {
    let mut found: Vec<Thread> = Vec::new();
    let same = |t: &&Thread| {
        t.system() == than.system()
            && t.series() == than.series()
            && t.major_diameter() > than.major_diameter()
    };
    for thread in Thread::all().iter().filter(same) {
        match found
            .iter_mut()
            .find(|f| f.major_diameter() == thread.major_diameter())
        {
            Some(f) if f.minor_diameter() < thread.minor_diameter() => *f = *thread,
            Some(_) => {}
            None => found.push(*thread),
        }
    }
    least_first(&mut found, Thread::major_diameter);
    found
}
