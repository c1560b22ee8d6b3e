//! The search over cases, poses, parts and checks.

use trammel_geometry::{Linkage, Pose, least_first};

use super::part::{Part, Situation, Stand};
use super::row::{Omission, PoseAt, Row, Why};
use super::turned::Turned;
use crate::check::{Check, Finding, Keep};
use crate::clearance::{Clearances, GAPS, Pair};
use crate::loads::{Fineness, LoadCase, Reach, Region, Scene, Window, Worst, regions, worst};
use crate::source::{Limit, Source};
use crate::statics::{CornerForces, Equilibrium};

/// What is proved, and how finely.
#[derive(Clone, Copy, Debug)]
pub struct Setup<'a> {
    /// The corner: a left one, or a right one in the mirror.
    pub linkage: &'a Linkage,
    /// Vehicle, rim, steering.
    pub scene: Scene,
    /// How far wheel and rack go.
    pub reach: Reach,
    /// The grid that is looked at first.
    pub fineness: Fineness,
    /// Parts to check.
    pub parts: &'a [Part],
    /// Load cases to put on.
    pub cases: &'a [LoadCase],
    /// Gaps to look for over the whole reach; `None` to leave them out.
    pub clearances: Option<Clearances>,
    /// Factor wanted against yield, buckling and rupture.
    pub wanted_factor: f64,
}

/// The whole of travel and lock.
const EVERYWHERE: Window = Window {
    travel: [-1.0, 1.0],
    lock: [0.0, 1.0],
};
/// The checks that a pose changes and no load does.
const OF_STANCE: [Check; 3] = [Check::Misalignment, Check::BodyRoom, Check::EndHeadRoom];

/// All rows, worst first, and what is missing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Proof {
    /// Worst first: least factor over the wanted one; rows without a factor last.
    pub rows: Vec<Row>,
    /// What could not be checked.
    pub omissions: Vec<Omission>,
}

/// The worst that was seen of a check of a part under a case.
struct Candidate<'a> {
    part: &'a Part,
    finding: Finding,
    worst: Worst,
    sense: f64,
    region: Region,
}

/// Checks every part under every load case.
#[must_use]
pub fn prove(setup: &Setup<'_>) -> Proof {
    let mut proof = Proof::default();
    for part in setup.parts {
        let found = |finding: Finding| {
            proof.rows.push(setup.row(part, &finding, None, None));
        };
        if let Err(why) = part.kind.check_once(found) {
            proof.omit(None, Some(part), why.into());
        }
    }
    for case in setup.cases {
        setup.prove_case(case, &mut proof);
    }
    setup.prove_stances(&mut proof);
    setup.prove_gaps(&mut proof);
    least_first(&mut proof.rows, |row| {
        row.standing().unwrap_or(f64::INFINITY)
    });
    proof
}

/// Checks every part under one load case at one pose, the worse of its senses: for curves over travel or rack. What can't be checked there is left out.
#[must_use]
pub fn prove_at(setup: &Setup<'_>, case: &LoadCase, pose: &Pose) -> Vec<Row> {
    let Ok(stand) = setup.stand(pose) else {
        return Vec::new();
    };
    let mut worst: Vec<(&Part, Finding)> = Vec::new();
    for &sense in case.senses() {
        let Ok(forces) = setup.forces(case, pose, &stand, sense) else {
            continue;
        };
        let situation = setup.situation(pose, &stand, &forces);
        for part in setup.parts {
            // A part that can't be checked at a pose has no row there.
            let _ = part.kind.check(&situation, |finding| {
                keep_worse(&mut worst, part, finding);
            });
        }
    }
    let at = Some(PoseAt::of(pose));
    let rows = worst.iter();
    rows.map(|(part, finding)| setup.row(part, finding, Some(case), at))
        .collect()
}

/// What no load changes of every part at one pose: for curves over travel or rack.
#[must_use]
pub fn stance_at(setup: &Setup<'_>, pose: &Pose) -> Vec<Row> {
    let Ok(stand) = setup.stand(pose) else {
        return Vec::new();
    };
    let mut rows = Vec::new();
    let at = Some(PoseAt::of(pose));
    for part in setup.parts {
        let found = |finding: Finding| rows.push(setup.row(part, &finding, None, at));
        part.kind.check_stance(&stand, found);
    }
    rows
}

/// The least gap of a pair over the whole of travel and lock; `None` without clearances in the setup, and for a spring that isn't there.
#[must_use]
pub fn least_gap(setup: &Setup<'_>, pair: Pair) -> Option<Row> {
    let clearances = setup.clearances?;
    let corner = setup.linkage.corner();
    let gap = |pose: &Pose| clearances.gap(pair, corner, pose).map(|gap| -gap.distance);
    let found = worst(
        setup.linkage,
        &EVERYWHERE,
        &setup.reach,
        setup.fineness,
        gap,
    );
    let found = found.ok().flatten()?;
    let limit = Limit {
        value: clearances.wanted(),
        unit: "mm",
        source: Source::USER,
    };
    let finding = Finding::above(Check::Clearance, -found.severity, limit, GAPS);
    let pose = PoseAt::of(&found.pose);
    Some(Row::new(&pair.to_string(), &finding, None, Some(pose), 1.0))
}

fn keep_worse<'a>(worst: &mut Vec<(&'a Part, Finding)>, part: &'a Part, new: Finding) {
    let same = |(known, finding): &&mut (&Part, Finding)| {
        std::ptr::eq(*known, part) && finding.check == new.check
    };
    match worst.iter_mut().find(same) {
        Some((_, known)) if severity(&new) > severity(known) => *known = new,
        Some(_) => {}
        None => worst.push((part, new)),
    }
}

/// How bad a finding is: grows with it, whichever side of the limit is wanted.
fn severity(finding: &Finding) -> f64 {
    match finding.keep {
        Keep::Below => finding.value.abs() / finding.limit.value,
        Keep::Above => -finding.value / finding.limit.value,
    }
}

impl Setup<'_> {
    fn prove_case(&self, case: &LoadCase, proof: &mut Proof) {
        let boxes = match regions(self.linkage, &case.window, &self.reach) {
            Ok(boxes) => boxes,
            Err(why) => return proof.omit(Some(case), None, why.into()),
        };
        let mut candidates: Vec<Candidate<'_>> = Vec::new();
        let mut poses = 0_usize;
        for region in boxes.into_iter().flatten() {
            for pose in region.poses(self.linkage, self.fineness) {
                poses += 1;
                self.look(case, region, &pose, &mut candidates, proof);
            }
        }
        if poses == 0 {
            proof.omit(Some(case), None, Why::NoPose);
        }
        for candidate in candidates {
            proof.rows.push(self.refined(case, &candidate));
        }
    }

    /// Everything at one pose of the grid.
    fn look<'p>(
        &'p self,
        case: &LoadCase,
        region: Region,
        pose: &Pose,
        candidates: &mut Vec<Candidate<'p>>,
        proof: &mut Proof,
    ) {
        let stand = match self.stand(pose) {
            Ok(stand) => stand,
            Err(why) => return proof.omit(Some(case), None, why),
        };
        for &sense in case.senses() {
            let forces = match self.forces(case, pose, &stand, sense) {
                Ok(forces) => forces,
                Err(why) => {
                    proof.omit(Some(case), None, why);
                    continue;
                }
            };
            let situation = self.situation(pose, &stand, &forces);
            for part in self.parts {
                let checked = part.kind.check(&situation, |finding| {
                    let worst = Worst {
                        pose: *pose,
                        severity: severity(&finding),
                    };
                    let candidate = Candidate {
                        part,
                        finding,
                        worst,
                        sense,
                        region,
                    };
                    keep_worst(candidates, candidate);
                });
                if let Err(why) = checked {
                    proof.omit(Some(case), Some(part), why.into());
                }
            }
        }
    }

    fn stand(&self, pose: &Pose) -> Result<Stand, Why> {
        Ok(Stand {
            equilibrium: Equilibrium::at(self.linkage, pose)?,
            turned: Turned::at(self.linkage, pose),
        })
    }

    fn forces(
        &self,
        case: &LoadCase,
        pose: &Pose,
        stand: &Stand,
        sense: f64,
    ) -> Result<CornerForces, Why> {
        let load = self.scene.load(case, self.linkage, pose, sense)?;
        Ok(stand.equilibrium.under(&load)?)
    }

    fn situation<'s>(
        &'s self,
        pose: &'s Pose,
        stand: &'s Stand,
        forces: &'s CornerForces,
    ) -> Situation<'s> {
        Situation {
            linkage: self.linkage,
            pose,
            rod: stand.equilibrium.tie_rod(),
            forces,
            turned: &stand.turned,
        }
    }

    /// The finding of that check at a pose, the worst of them when a part has several.
    fn finding(&self, case: &LoadCase, pose: &Pose, candidate: &Candidate<'_>) -> Option<Finding> {
        let stand = self.stand(pose).ok()?;
        let forces = self.forces(case, pose, &stand, candidate.sense).ok()?;
        let situation = self.situation(pose, &stand, &forces);
        let mut worst: Option<Finding> = None;
        let found = |finding: Finding| {
            let worse = worst.is_none_or(|known| severity(&finding) > severity(&known));
            if finding.check == candidate.finding.check && worse {
                worst = Some(finding);
            }
        };
        candidate.part.kind.check(&situation, found).ok()?;
        worst
    }

    fn refined(&self, case: &LoadCase, candidate: &Candidate<'_>) -> Row {
        let worst = candidate
            .region
            .refine(self.linkage, self.fineness, candidate.worst, |pose| {
                self.finding(case, pose, candidate).map(|f| severity(&f))
            });
        let finding = self
            .finding(case, &worst.pose, candidate)
            .unwrap_or(candidate.finding);
        let pose = PoseAt::of(&worst.pose);
        self.row(candidate.part, &finding, Some(case), Some(pose))
    }

    fn row(
        &self,
        part: &Part,
        finding: &Finding,
        case: Option<&LoadCase>,
        pose: Option<PoseAt>,
    ) -> Row {
        let case = case.map(|case| case.name.as_str());
        Row::new(&part.name, finding, case, pose, self.wanted(finding.check))
    }

    /// Every check that no load changes, at its worst over the whole of travel and lock.
    fn prove_stances(&self, proof: &mut Proof) {
        for part in self.parts {
            for check in OF_STANCE {
                let at = |pose: &Pose| self.of_stance(part, check, pose);
                let found = worst(
                    self.linkage,
                    &EVERYWHERE,
                    &self.reach,
                    self.fineness,
                    |pose| at(pose).map(|finding| severity(&finding)),
                );
                if let Ok(Some(found)) = found
                    && let Some(finding) = at(&found.pose)
                {
                    let pose = PoseAt::of(&found.pose);
                    proof.rows.push(self.row(part, &finding, None, Some(pose)));
                }
            }
        }
    }

    fn of_stance(&self, part: &Part, check: Check, pose: &Pose) -> Option<Finding> {
        let stand = self.stand(pose).ok()?;
        let mut found = None;
        part.kind.check_stance(&stand, |finding| {
            if finding.check == check {
                found = Some(finding);
            }
        });
        found
    }

    /// The least gap of every pair over the whole of travel and lock.
    fn prove_gaps(&self, proof: &mut Proof) {
        let rows = Pair::ALL
            .into_iter()
            .filter_map(|pair| least_gap(self, pair));
        proof.rows.extend(rows);
    }

    /// Strength wants the user's factor; lengths, angles, ratings and allowed stresses hold their own margin.
    fn wanted(&self, check: Check) -> f64 {
        match check {
            Check::RackEndFatigue
            | Check::RackEndToe
            | Check::ThreadEngagement
            | Check::WallLeft
            | Check::JointRating
            | Check::Misalignment
            | Check::TabTearOut
            | Check::WeldThroat
            | Check::Clearance
            | Check::BodyRoom
            | Check::NutRoom
            | Check::EndHeadRoom
            | Check::EndNutRoom
            | Check::StandOff
            | Check::HandForce
            | Check::KickBack
            | Check::OverCentre
            | Check::StopMargin => 1.0,
            _ => self.wanted_factor,
        }
    }
}

fn keep_worst<'a>(candidates: &mut Vec<Candidate<'a>>, new: Candidate<'a>) {
    if new.worst.severity.is_nan() {
        return;
    }
    let same = |known: &&mut Candidate<'_>| {
        std::ptr::eq(known.part, new.part) && known.finding.check == new.finding.check
    };
    match candidates.iter_mut().find(same) {
        Some(known) if new.worst.severity > known.worst.severity => *known = new,
        Some(_) => {}
        None => candidates.push(new),
    }
}

impl Proof {
    /// Notes what is missing, once for each case, part and reason.
    fn omit(&mut self, case: Option<&LoadCase>, part: Option<&Part>, why: Why) {
        let load_case = case.map(|case| case.name.clone());
        let part = part.map(|part| part.name.clone());
        let kind = std::mem::discriminant(&why);
        let same = |known: &&mut Omission| {
            known.load_case == load_case
                && known.part == part
                && std::mem::discriminant(&known.why) == kind
        };
        match self.omissions.iter_mut().find(same) {
            Some(known) => known.poses += 1,
            None => self.omissions.push(Omission {
                load_case,
                part,
                why,
                poses: 1,
            }),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::severity;
    use crate::check::{Check, Finding};
    use crate::source::{Limit, Source};

    #[test]
    fn less_room_is_worse_and_so_is_more_stress_either_way() {
        let limit = Limit {
            value: 3.0,
            unit: "",
            source: Source::USER,
        };
        let room = |gap| severity(&Finding::above(Check::BodyRoom, gap, limit, Source::USER));
        let stress = |mpa| severity(&Finding::below(Check::BoltShear, mpa, limit, Source::USER));
        assert!(room(1.0) > room(2.0) && room(-1.0) > room(0.5));
        assert!(stress(2.0) > stress(1.0) && stress(-2.0) > stress(1.0));
        // The same against less that is borne, or more that is wanted, is worse.
        let of = |value: f64| Limit { value, ..limit };
        let bolt = |mpa| {
            severity(&Finding::below(
                Check::BoltShear,
                2.0,
                of(mpa),
                Source::USER,
            ))
        };
        let body = |mm| severity(&Finding::above(Check::BodyRoom, 2.0, of(mm), Source::USER));
        assert!(bolt(3.0) > bolt(4.0) && body(4.0) > body(3.0));
    }
}
