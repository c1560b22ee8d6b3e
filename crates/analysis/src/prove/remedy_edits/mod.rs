//! The edits that may mend a row, in series from the smallest step to the largest.

mod at_joints;
mod gaps;
mod of_rack_end;
mod of_steering;

use trammel_build::{
    AxleName, Build, Edit, LengthUnit, PartsEdit, PointName, PointRef, Section, Side, Triple, Tube,
    defaults,
};
use trammel_geometry::{ArmName, least_first};
use trammel_strength::{
    check::Check,
    grade::{Grade, ListedGrade, short_name as short_grade},
    material::ListedMaterial,
    thread::Thread,
};

use super::{ProofPart, ProofRow, materials};
use crate::words::work_length;

/// A change with its words.
pub(super) struct Offer {
    pub what: String,
    pub edit: Edit,
}

type Series = Vec<Offer>;

/// Every series for a row.
pub(super) fn offers(build: &Build, axle: AxleName, side: Side, row: &ProofRow) -> Vec<Series> {
    let shop = Shop { build, axle, side };
    match row.part {
        ProofPart::RackEnd => shop.rack_end(row.check),
        ProofPart::TieRod => shop.tie_rod(row.check),
        ProofPart::ArmTubes(arm) => shop.arm(arm),
        ProofPart::Bolt(point) => shop.bolt(point),
        ProofPart::Bracket(point) => shop.bracket(point, row.check),
        ProofPart::Joint(point) => shop.joint(point, row.check),
        ProofPart::Gap(pair) => shop.gap(pair),
        ProofPart::Steering => shop.steering(row.check),
    }
}

struct Shop<'a> {
    build: &'a Build,
    axle: AxleName,
    side: Side,
}

impl Shop<'_> {
    fn unit(&self) -> LengthUnit {
        self.build.unit
    }

    /// Shop steps in the build's unit, with what they are called.
    fn steps(&self, count: u32) -> impl Iterator<Item = (f64, String)> + use<> {
        let unit = self.unit();
        let step = match unit {
            LengthUnit::Inch => 1.0 / 16.0,
            LengthUnit::Millimetre => 1.5,
        };
        (1..=count).map(move |n| {
            let by = f64::from(n) * step;
            (by, work_length(by * unit.mm(), unit))
        })
    }

    /// Only each `nth` of them, the `nth` first.
    fn every(&self, nth: usize, count: u32) -> impl Iterator<Item = (f64, String)> + use<> {
        self.steps(count).skip(nth - 1).step_by(nth)
    }

    fn at(&self, point: PointName) -> PointRef {
        PointRef {
            axle: self.axle,
            side: self.side,
            point,
        }
    }

    fn tie_rod(&self, check: Check) -> Vec<Series> {
        let Some(spec) = self.build.axle_spec(self.axle) else {
            return Vec::new();
        };
        let parts = &spec.parts.tie_rod;
        let edit = |parts| Edit::Parts(PartsEdit::TieRod(self.axle, Box::new(parts)));
        if check == Check::ShankYield {
            let now = parts.thread.as_deref().unwrap_or(defaults::THREAD);
            let size = Thread::find(now).map_or(0.0, |t| t.major_diameter());
            let grade = parts.grade.as_deref().unwrap_or(defaults::BOLT_GRADE);
            return vec![
                threads(now, |thread| {
                    edit(trammel_build::TieRodParts {
                        thread: Some(thread),
                        ..parts.clone()
                    })
                }),
                self.grades(grade, size, |grade| {
                    edit(trammel_build::TieRodParts {
                        grade: Some(grade),
                        ..parts.clone()
                    })
                }),
            ];
        }
        if check == Check::ThreadEngagement {
            let now = parts.engagement.unwrap_or(0.0);
            let steps = self.steps(16).map(|(by, words)| Offer {
                what: format!("{words} more thread in each adapter"),
                edit: edit(trammel_build::TieRodParts {
                    engagement: Some(now + by),
                    ..parts.clone()
                }),
            });
            return vec![steps.collect()];
        }
        let Some(tube) = &parts.tube else {
            return Vec::new();
        };
        self.tubes(tube, |tube| {
            edit(trammel_build::TieRodParts {
                tube: Some(tube),
                ..parts.clone()
            })
        })
    }

    fn arm(&self, arm: ArmName) -> Vec<Series> {
        let Some(spec) = self.build.axle_spec(self.axle) else {
            return Vec::new();
        };
        let parts = spec.parts.arm(arm);
        let edit = |parts| Edit::Parts(PartsEdit::Arm(self.axle, arm, Box::new(parts)));
        let Some(tube) = &parts.tube else {
            return Vec::new();
        };
        let mut series = self.tubes(tube, |tube| {
            edit(trammel_build::ArmParts {
                tube: Some(tube),
                ..parts.clone()
            })
        });
        if spec.spring.is_some_and(|s| s.arm == arm) && parts.spring_tubes != Some(2) {
            series.push(vec![Offer {
                what: "The spring's mount carried by both tubes".into(),
                edit: edit(trammel_build::ArmParts {
                    spring_tubes: Some(2),
                    ..parts.clone()
                }),
            }]);
        }
        series
    }

    /// Larger, thicker, and of a better steel.
    fn tubes(&self, tube: &Tube, edit: impl Fn(Tube) -> Edit) -> Vec<Series> {
        let (across, wall) = (tube.section.across(), tube.section.wall());
        let sized = |section: Section, words: String| Offer {
            what: words,
            edit: edit(Tube {
                section,
                ..tube.clone()
            }),
        };
        let remade = |across: f64, wall: f64| match tube.section {
            Section::Round(..) => Section::Round(across, wall),
            Section::Square(..) => Section::Square(across, wall),
            Section::Bar(_) => Section::Bar(across),
        };
        let unit = self.unit();
        let (wider, thicker) = match unit {
            LengthUnit::Inch => (0.125, [0.065, 0.083, 0.095, 0.12, 0.156, 0.188]),
            LengthUnit::Millimetre => (3.0, [1.5, 2.0, 2.5, 3.0, 4.0, 5.0]),
        };
        let larger = (1..=8).map(|n| across + f64::from(n) * wider);
        let larger = larger.map(|a| {
            let named = work_length(a * unit.mm(), unit);
            sized(
                remade(a, wall),
                format!(
                    "{named} across instead of {}",
                    work_length(across * unit.mm(), unit)
                ),
            )
        });
        let mut series = vec![larger.collect()];
        if !matches!(tube.section, Section::Bar(_)) {
            let walls = thicker
                .into_iter()
                .filter(|w| *w > wall && *w <= across / 2.0);
            series.push(
                walls
                    .map(|w| {
                        sized(
                            remade(across, w),
                            format!("Wall {w} {0} instead of {wall} {0}", unit.sign()),
                        )
                    })
                    .collect(),
            );
        }
        let now = tube.material.as_deref().unwrap_or(defaults::TUBE_MATERIAL);
        series.push(self.steels(now, wall, "tube", |material| {
            edit(Tube {
                material: Some(material),
                ..tube.clone()
            })
        }));
        series
    }

    /// Listed materials of a kind with a higher yield strength, the weakest first.
    fn steels(&self, now: &str, wall: f64, kind: &str, edit: impl Fn(String) -> Edit) -> Series {
        let mm = wall * self.unit().mm();
        let yields = |name: &str| {
            materials::strength(self.build, name, mm)
                .ok()
                .map(|s| s.yield_mpa())
        };
        let Some(least) = yields(now) else {
            return Vec::new();
        };
        let names = ListedMaterial::all().iter().map(ListedMaterial::name);
        let mut better: Vec<(f64, &str)> = names
            .filter(|name| name.contains(kind))
            .filter_map(|name| Some((yields(name)?, name)))
            .filter(|(y, _)| *y > least)
            .collect();
        least_first(&mut better, |b| b.0);
        let offer = |(_, name): (f64, &str)| Offer {
            what: format!("{name} instead of {now}"),
            edit: edit(name.to_owned()),
        };
        better.into_iter().map(offer).collect()
    }

    /// Listed grades of the same family with a higher yield strength at this size, mm.
    fn grades(&self, now: &str, size: f64, edit: impl Fn(String) -> Edit) -> Series {
        let Ok(Grade::Listed(listed)) = materials::grade(self.build, now) else {
            return Vec::new();
        };
        let yields = |g: &ListedGrade| {
            Grade::Listed(*g)
                .strength(size)
                .ok()
                .map(|s| s.yield_strength.mpa())
        };
        let Some(least) = yields(&listed) else {
            return Vec::new();
        };
        let mut better: Vec<(f64, &ListedGrade)> = ListedGrade::all()
            .iter()
            .filter(|g| g.family() == listed.family())
            .filter_map(|g| Some((yields(g)?, g)))
            .filter(|(y, _)| *y > least)
            .collect();
        least_first(&mut better, |b| b.0);
        let offer = |(_, g): (f64, &ListedGrade)| Offer {
            what: format!("{} instead of {now}", short_grade(g.name())),
            edit: edit(short_grade(g.name()).to_owned()),
        };
        better.into_iter().map(offer).collect()
    }
}

/// Larger threads of the same system and series, smallest first.
fn threads(now: &str, edit: impl Fn(String) -> Edit) -> Series {
    let Ok(thread) = Thread::find(now) else {
        return Vec::new();
    };
    let same = |t: &&Thread| {
        t.system() == thread.system()
            && t.series() == thread.series()
            && t.major_diameter() > thread.major_diameter()
    };
    let mut larger: Vec<&Thread> = Thread::all().iter().filter(same).collect();
    least_first(&mut larger, |t| t.major_diameter());
    let offer = |t: &Thread| {
        let name = t.short_name().to_owned();
        Offer {
            what: format!("{name} instead of {}", thread.short_name()),
            edit: edit(name),
        }
    };
    larger.into_iter().map(offer).collect()
}

fn moved(from: Triple, direction: Triple, by: f64) -> Triple {
    let tidy = |v: f64| (v * 1e7).round() / 1e7;
    let [x, y, z] = [0, 1, 2].map(|i| {
        from.get(i).copied().unwrap_or(0.0) + direction.get(i).copied().unwrap_or(0.0) * by
    });
    [x, y, z].map(tidy)
}
