//! Bolts, brackets and joints changed.

use trammel_build::{
    BoltAxis, BoltSpec, BracketSpec, Ears, Edit, JointBolts, JointParts, PartsEdit, PointName,
    ShearPlane, defaults,
};
use trammel_strength::{check::Check, thread::Thread};

use super::{Offer, Series, Shop, threads};
use crate::words::work_length;

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

    /// The bolt turned, for a joint that swivels too far.
    pub(super) fn joint(&self, point: PointName, check: Check) -> Vec<Series> {
        let Some(bolts) = self.build.axle_spec(self.axle).map(|s| s.joint_bolts) else {
            return Vec::new();
        };
        if check != Check::Misalignment {
            return Vec::new();
        }
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
}
