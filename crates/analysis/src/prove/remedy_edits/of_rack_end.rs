//! The rack end changed, and the rack with it.

use trammel_build::{Axis, Coordinate, Edit, PointName, RackEndSpec, defaults};
use trammel_strength::{check::Check, thread::Thread};

use super::{Offer, Series, Shop, moved, threads};
use crate::words::work_length;

impl Shop<'_> {
    pub(super) fn rack_end(&self, check: Check) -> Vec<Series> {
        let spec = &self.build.front.rack_end;
        let edit = |spec| Edit::SetRackEnd(spec);
        match check {
            Check::ThreadEngagement => return self.deeper().into_iter().collect(),
            Check::WallLeft => return self.thicker_bar().into_iter().collect(),
            _ => {}
        }
        let mut series = Vec::new();
        if check == Check::BoreMouthYield {
            series.extend(self.thicker_bar());
        } else {
            let now = spec.thread.as_deref().unwrap_or(defaults::THREAD);
            series.push(threads(now, |thread| {
                edit(RackEndSpec {
                    thread: Some(thread),
                    ..spec.clone()
                })
            }));
            let size = Thread::find(now).map_or(0.0, |t| t.major_diameter());
            let grade = spec.grade.as_deref().unwrap_or(defaults::GRADE);
            series.push(self.grades(grade, size, |grade| {
                edit(RackEndSpec {
                    grade: Some(grade),
                    ..spec.clone()
                })
            }));
            series.push(self.shorter());
        }
        series.extend([1.0, -1.0].map(|way| self.rack_height(way)));
        series
    }

    /// More thread in the bar, in a bore that is deep enough for it.
    fn deeper(&self) -> Option<Series> {
        let spec = &self.build.front.rack_end;
        let given = spec.engagement?;
        let now = spec.bore_depth.map_or(given, |depth| depth.min(given));
        let steps = self.steps(16).map(|(by, words)| {
            let (engaged, bore) = (now + by, spec.bore_depth);
            let deeper = bore.filter(|depth| *depth < engaged);
            let what = match deeper {
                Some(_) => format!("{words} more thread engaged, in a bore as deep"),
                None => format!("{words} more thread engaged"),
            };
            Offer {
                what,
                edit: Edit::SetRackEnd(RackEndSpec {
                    engagement: Some(engaged),
                    bore_depth: deeper.map(|_| engaged).or(bore),
                    ..spec.clone()
                }),
            }
        });
        Some(steps.collect())
    }

    /// Another rack with a thicker bar.
    fn thicker_bar(&self) -> Option<Series> {
        let spec = &self.build.front.rack_end;
        let now = spec.bar_diameter?;
        let words = |v: f64| work_length(v * self.unit().mm(), self.unit());
        let steps = self.steps(16).map(|(by, _)| Offer {
            what: format!(
                "A rack bar {} across instead of {}",
                words(now + by),
                words(now)
            ),
            edit: Edit::SetRackEnd(RackEndSpec {
                bar_diameter: Some(now + by),
                ..spec.clone()
            }),
        });
        Some(steps.collect())
    }

    /// The rack face nearer to the joint.
    fn shorter(&self) -> Series {
        self.face_moved(24, 1.0, |left, _| {
            format!("{left} of thread out of the rack")
        })
    }

    /// The rack's face further inboard: more room on the rack end.
    pub(super) fn face_inboard(&self) -> Series {
        self.face_moved(16, -1.0, |_, by| {
            format!("The rack's face {by} further inboard, with a longer rack end")
        })
    }

    /// The rack face outboard or inboard step by step, in words of what thread is then out of the rack and of the step.
    fn face_moved(&self, count: u32, way: f64, what: impl Fn(String, String) -> String) -> Series {
        let at = self.at(PointName::RackFace);
        let (Some(face), Ok(model)) = (self.build.point(at), self.build.axle(self.axle)) else {
            return Vec::new();
        };
        let Some(rack) = model.rack else {
            return Vec::new();
        };
        let end = rack.end(self.side);
        let outward = [end.outward.x, end.outward.y, end.outward.z];
        let free = self.unit().from_mm(end.free_length());
        self.steps(count)
            .filter(|(by, _)| way * by < free)
            .map(|(by, words)| {
                let left = work_length((free - way * by) * self.unit().mm(), self.unit());
                Offer {
                    what: what(left, words),
                    edit: Edit::MovePoint {
                        point: at,
                        to: moved(face, outward, way * by),
                    },
                }
            })
            .collect()
    }

    /// The rack with its joint higher or lower.
    fn rack_height(&self, way: f64) -> Series {
        let at = self.at(PointName::TieRodInner);
        let locked = Coordinate {
            axle: self.axle,
            point: PointName::TieRodInner,
            axis: Axis::Z,
        };
        let Some(joint) = self
            .build
            .point(at)
            .filter(|_| !self.build.locked.contains(&locked))
        else {
            return Vec::new();
        };
        let word = if way > 0.0 { "higher" } else { "lower" };
        self.every(4, 16)
            .map(|(by, words)| Offer {
                what: format!("Rack and inner joint {words} {word}"),
                edit: Edit::MoveRack {
                    point: at,
                    to: moved(joint, [0.0, 0.0, 1.0], way * by),
                },
            })
            .collect()
    }
}
