//! Bolts, brackets and joints changed.

use trammel_build::{
    BoltAxis, BoltSpec, BracketSpec, Ears, Edit, JointBolts, JointEnd, JointParts, PartsEdit,
    PointName, ShearPlane, TieRodParts, defaults,
};
use trammel_strength::{check::Check, thread::Thread};

use super::{Offer, Series, Shop, threads};
use crate::{prove::end_bracket::height_left, words::work_length};

impl Shop<'_> {
    fn joint_parts(&self, point: PointName) -> Option<&JointParts> {
        self.build.axle_spec(self.axle)?.parts.joints.get(&point)
    }

    fn set_joint(&self, point: PointName, parts: JointParts) -> Edit {
        Edit::Parts(PartsEdit::Joint(self.axle, point, Box::new(parts)))
    }

    pub(super) fn bolt(&self, point: PointName) -> Vec<Series> {
        let Some((parts, bolt)) = self
            .joint_parts(point)
            .and_then(|p| Some((p, p.bolt.as_ref()?)))
        else {
            return Vec::new();
        };
        let edit = |bolt: BoltSpec| {
            self.set_joint(
                point,
                JointParts {
                    bolt: Some(bolt),
                    ..parts.clone()
                },
            )
        };
        let now = bolt.thread.as_deref().unwrap_or_default();
        let size = Thread::find(now).map_or(0.0, |t| t.major_diameter());
        let grade = bolt.grade.as_deref().unwrap_or(defaults::BOLT_GRADE);
        let mut series = vec![
            threads(now, |thread| {
                edit(BoltSpec {
                    thread: Some(thread),
                    ..bolt.clone()
                })
            }),
            self.grades(grade, size, |grade| {
                edit(BoltSpec {
                    grade: Some(grade),
                    ..bolt.clone()
                })
            }),
        ];
        if bolt.shear_plane != Some(ShearPlane::Shank) {
            series.push(vec![Offer {
                what: "The plain shank in the shear plane".into(),
                edit: edit(BoltSpec {
                    shear_plane: Some(ShearPlane::Shank),
                    ..bolt.clone()
                }),
            }]);
        }
        if bolt.spacer.is_some_and(|s| s > 0.0) {
            series.push(vec![Offer {
                what: "No spacer".into(),
                edit: edit(BoltSpec {
                    spacer: None,
                    ..bolt.clone()
                }),
            }]);
        }
        series.extend(self.double_shear(point, parts));
        series
    }

    fn double_shear(&self, point: PointName, parts: &JointParts) -> Option<Series> {
        let bracket = parts
            .bracket
            .as_ref()
            .filter(|b| b.ears == Some(Ears::Single))?;
        let doubled = BracketSpec {
            ears: Some(Ears::Double),
            ..bracket.clone()
        };
        Some(vec![Offer {
            what: "Double shear between two ears".into(),
            edit: self.set_joint(
                point,
                JointParts {
                    bracket: Some(doubled),
                    ..parts.clone()
                },
            ),
        }])
    }

    pub(super) fn bracket(&self, point: PointName, check: Check) -> Vec<Series> {
        let Some((parts, b)) = self
            .joint_parts(point)
            .and_then(|p| Some((p, p.bracket.as_ref()?)))
        else {
            return Vec::new();
        };
        let edit = |bracket: BracketSpec| {
            self.set_joint(
                point,
                JointParts {
                    bracket: Some(bracket),
                    ..parts.clone()
                },
            )
        };
        let unit = self.unit();
        let words = |v: f64| work_length(v * unit.mm(), unit);
        let grown = |what: &'static str, now: f64, change: &dyn Fn(f64) -> BracketSpec| -> Series {
            let steps = self.steps(8);
            steps
                .map(|(by, _)| Offer {
                    what: format!("{what} {} instead of {}", words(now + by), words(now)),
                    edit: edit(change(now + by)),
                })
                .collect()
        };
        let mut series = Vec::new();
        if check == Check::WeldThroat {
            let leg = b.weld.unwrap_or(defaults::WELD_LEG_SHARE * b.thickness);
            series.push(grown("Weld leg", leg, &|leg| BracketSpec {
                weld: Some(leg),
                ..b.clone()
            }));
        } else {
            series.push(grown("Plate", b.thickness, &|thickness| BracketSpec {
                thickness,
                ..b.clone()
            }));
            let now = b.material.as_deref().unwrap_or(defaults::PLATE_MATERIAL);
            series.push(self.steels(now, b.thickness, "plate", |m| {
                edit(BracketSpec {
                    material: Some(m),
                    ..b.clone()
                })
            }));
        }
        if matches!(check, Check::TabShearOut | Check::TabTearOut) {
            let edge = b.edge.unwrap_or(b.width / 2.0);
            series.push(grown("Edge distance", edge, &|edge| BracketSpec {
                edge: Some(edge),
                ..b.clone()
            }));
        }
        if matches!(
            check,
            Check::TabNetSection | Check::TabBending | Check::WeldThroat
        ) {
            series.push(grown("Width", b.width, &|width| BracketSpec {
                width,
                ..b.clone()
            }));
            let lower = self.steps(16).filter(|(by, _)| *by < 0.6 * b.height);
            series.push(
                lower
                    .map(|(by, _)| Offer {
                        what: format!(
                            "Hole {} over the base instead of {}",
                            words(b.height - by),
                            words(b.height)
                        ),
                        edit: edit(BracketSpec {
                            height: b.height - by,
                            ..b.clone()
                        }),
                    })
                    .collect(),
            );
            if b.boxing.is_none() && b.ears != Some(Ears::Single) {
                series.push(vec![Offer {
                    what: format!("A boxing plate of {} between the ears", words(b.thickness)),
                    edit: edit(BracketSpec {
                        boxing: Some(b.thickness),
                        ..b.clone()
                    }),
                }]);
            }
        }
        series.extend(self.double_shear(point, parts));
        series
    }

    /// What gives a joint room, or turns its bolt so that it swivels less.
    pub(super) fn joint(&self, point: PointName, check: Check) -> Vec<Series> {
        match check {
            Check::Misalignment => self.bolt_turned(point),
            Check::BodyRoom => {
                let mut series = self.bolt_turned(point);
                series.extend(self.spacers(point));
                series
            }
            Check::NutRoom => self.nut_room(point),
            Check::EndHeadRoom => self.taller(point, 1.0).into_iter().collect(),
            Check::EndNutRoom => {
                let mut series = vec![self.face_inboard()];
                series.extend(self.taller(point, -1.0));
                series
            }
            Check::StandOff => self.fitting(point).into_iter().collect(),
            _ => Vec::new(),
        }
    }

    fn bolt_turned(&self, point: PointName) -> Vec<Series> {
        let Some(bolts) = self.build.axle_spec(self.axle).map(|s| s.joint_bolts) else {
            return Vec::new();
        };
        let turned = BoltAxis::PLAIN.into_iter().filter_map(|axis| {
            let bolts = match point {
                PointName::TieRodInner => JointBolts {
                    inner: Some(axis),
                    ..bolts
                },
                PointName::TieRodOuter => JointBolts {
                    outer: Some(axis),
                    ..bolts
                },
                _ => return None,
            };
            Some(vec![Offer {
                what: format!("Its bolt {}", axis.words()),
                edit: Edit::SetJointBolts(self.axle, bolts),
            }])
        });
        turned.collect()
    }

    /// Spacers beside the ball, the ears as much further apart.
    fn spacers(&self, point: PointName) -> Option<Series> {
        let parts = self.joint_parts(point)?;
        let bolt = parts.bolt.as_ref()?;
        let (now, unit) = (bolt.spacer.unwrap_or(0.0), self.unit());
        let steps = self.steps(8).map(|(by, _)| {
            let wider = |b: &BracketSpec| BracketSpec {
                gap: b.gap.map(|gap| gap + 2.0 * by),
                ..b.clone()
            };
            let spaced = JointParts {
                bolt: Some(BoltSpec {
                    spacer: Some(now + by),
                    ..bolt.clone()
                }),
                bracket: parts.bracket.as_ref().map(wider),
                ..parts.clone()
            };
            Offer {
                what: format!(
                    "A spacer of {} on each side of its ball",
                    work_length((now + by) * unit.mm(), unit)
                ),
                edit: self.set_joint(point, spaced),
            }
        });
        Some(steps.collect())
    }

    /// A longer shank, or less of it in the adapter.
    fn nut_room(&self, point: PointName) -> Vec<Series> {
        let Some((parts, end)) = self
            .joint_parts(point)
            .and_then(|p| Some((p, p.end.as_ref()?)))
        else {
            return Vec::new();
        };
        let Some(spec) = self.build.axle_spec(self.axle) else {
            return Vec::new();
        };
        let rod = &spec.parts.tie_rod;
        let longer = end.length.into_iter().map(|now| {
            let steps = self.steps(16).map(|(by, words)| Offer {
                what: format!("A rod end with {words} more shank"),
                edit: self.set_joint(
                    point,
                    JointParts {
                        end: Some(JointEnd {
                            length: Some(now + by),
                            ..end.clone()
                        }),
                        ..parts.clone()
                    },
                ),
            });
            steps.collect()
        });
        let less = rod.engagement.into_iter().map(|now| {
            let steps = self.steps(8).filter(|(by, _)| 2.0 * by < now);
            let offer = |(by, words): (f64, String)| Offer {
                what: format!("{words} less thread in each adapter"),
                edit: Edit::Parts(PartsEdit::TieRod(
                    self.axle,
                    Box::new(TieRodParts {
                        engagement: Some(now - by),
                        ..rod.clone()
                    }),
                )),
            };
            steps.map(offer).collect()
        });
        longer.chain(less).collect()
    }

    /// The hole further from the base, or nearer to it.
    fn taller(&self, point: PointName, way: f64) -> Option<Series> {
        let parts = self.joint_parts(point)?;
        let bracket = parts.bracket.as_ref()?;
        let steps = self.steps(16).filter(|(by, _)| 2.0 * by < bracket.height);
        Some(
            steps
                .map(|(by, _)| self.with_height(point, parts, bracket, bracket.height + way * by))
                .collect(),
        )
    }

    /// The height that the rack end leaves.
    fn fitting(&self, point: PointName) -> Option<Series> {
        let parts = self.joint_parts(point)?;
        let bracket = parts.bracket.as_ref()?;
        let rack = self.build.axle(self.axle).ok()?.rack?;
        let height = height_left(self.build, rack.end(self.side).free_length())?;
        // To the nearest shop step: no bracket is marked out finer.
        let step = self.steps(1).next()?.0;
        let height = (height / step).round() * step;
        Some(vec![self.with_height(point, parts, bracket, height)])
    }

    fn with_height(
        &self,
        point: PointName,
        parts: &JointParts,
        bracket: &BracketSpec,
        height: f64,
    ) -> Offer {
        let unit = self.unit();
        let words = |v: f64| work_length(v * unit.mm(), unit);
        let changed = BracketSpec {
            height,
            ..bracket.clone()
        };
        Offer {
            what: format!(
                "Hole {} over the base instead of {}",
                words(height),
                words(bracket.height)
            ),
            edit: self.set_joint(
                point,
                JointParts {
                    bracket: Some(changed),
                    ..parts.clone()
                },
            ),
        }
    }
}
