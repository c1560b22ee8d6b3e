//! What the steering asks of the driver, and how far it is from going over centre.

use trammel_build::{AxleModel, AxleName, Build, Side, defaults};
use trammel_geometry::{Axle, Linkage};
use trammel_strength::{
    check::{Check, Keep},
    loads::{Action, ForceUnit, LoadCase, Reach, Scene, Window, worst},
    proof::{PoseAt, Sides, steering_effort, worst_steering_effort},
    source::Source,
    statics::SteeringEffort,
};

use super::{
    FactorRequest, Note, Proof, ProofDepth, ProofPart, ProofRow, cases::kernel_cases, parts::typed,
    prepared::scene, reasons::reason,
};
use crate::WorstPose;

/// Room wanted between the stop and over centre, mm of rack travel (common practice, no source: about 1/4 in).
const STOP_MARGIN_MM: f64 = 6.0;
/// How far past the stop over centre is looked for, mm, and in which steps.
const LOOK_PAST_MM: f64 = 40.0;
const LOOK_STEPS: u32 = 40;
/// Sine of the angle between tie rod and steering arm that counts as over centre.
const IN_LINE: f64 = 0.05;
/// Where hand forces and the wanted angle come from, and how they are found.
const EFFORT: Source = Source {
    document: "force on the rack times its travel per turn over the steering wheel's circumference; friction as the build gives it",
    clause: "",
    standing: trammel_strength::source::Standing::CommonPractice,
};
const MARGIN: Source = Source {
    document: "angle between tie rod and steering arm, seen along the steering axis, over travel and lock",
    clause: "",
    standing: trammel_strength::source::Standing::CommonPractice,
};
const R79: Source = Source::from_memory(
    "UN Regulation 79",
    "steering effort of cars: 150 N intact, 300 N with failed assistance",
);

/// Figures of the steering.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SteeringFigures {
    /// Turns of the steering wheel from lock to lock, the stops counted.
    pub turns: f64,
    /// Greatest force at the rim of the steering wheel when parked, N; `None` where no case says.
    pub parked_hand_force: Option<f64>,
    /// The same as torque at the pinion, N mm.
    pub parked_torque: Option<f64>,
    /// Greatest kick at the rim of the steering wheel from one wheel, N.
    pub kick_back: Option<f64>,
    /// The same as torque at the pinion, N mm.
    pub kick_back_torque: Option<f64>,
    /// Least angle between tie rod and steering arm, rad.
    pub over_centre: Option<f64>,
}

pub(super) struct Steered<'a> {
    build: &'a Build,
    axle: AxleName,
    pub(super) scene: Scene,
    reach: Reach,
    depth: ProofDepth,
    side: Option<Side>,
}

/// Adds the steering's rows and figures.
pub(super) fn prove(
    build: &Build,
    model: &AxleModel,
    depth: ProofDepth,
    alike: bool,
    proof: &mut Proof,
) {
    let Some(rack) = model.rack else {
        return;
    };
    notes(build, proof);
    let mut figures = SteeringFigures {
        turns: 2.0 * stop(build, model.lock()) / rack.travel_per_turn,
        parked_hand_force: None,
        parked_torque: None,
        kick_back: None,
        kick_back_torque: None,
        over_centre: None,
    };
    let sides: &[Option<Side>] = if alike {
        &[None]
    } else {
        &[Some(Side::Left), Some(Side::Right)]
    };
    for side in sides {
        // What is wrong was said where the corners were prepared.
        let Some((steered, axle)) = Steered::of(build, model, *side, depth) else {
            return;
        };
        steered.forces(&axle, &mut figures, proof);
        steered.margins(&axle.left, stop(build, model.lock()), &mut figures, proof);
    }
    proof.steering = Some(figures);
}

/// One row of the steering of a build anew.
pub(super) fn anew(build: &Build, like: &ProofRow) -> Option<ProofRow> {
    let model = build.axle(like.axle).ok()?;
    let (steered, axle) = Steered::of(build, &model, like.side, ProofDepth::Full)?;
    match like.check {
        Check::OverCentre => steered.over_centre(&axle.left),
        Check::StopMargin => Some(steered.stop_margin(&axle.left, stop(build, model.lock()))),
        _ => {
            let cases = kernel_cases(build);
            let mut same = cases
                .iter()
                .filter(|case| Some(&case.name) == like.load_case.as_ref());
            steered.force(&axle, same.next()?).map(|(row, _)| row)
        }
    }
}

/// The factor of one of the steering's checks pose by pose; `None` where the case asks nothing of the hands, and for the room behind the stop, which no pose changes.
pub(super) fn factor_at<'a>(
    build: &'a Build,
    model: &AxleModel,
    asked: &'a FactorRequest,
) -> Option<impl Fn(&WorstPose) -> Option<f64> + use<'a>> {
    let (steered, axle) = Steered::of(build, model, Some(asked.side), ProofDepth::Quick)?;
    let cases = kernel_cases(build);
    let case = cases.into_iter().find(|case| case.name == asked.load_case);
    let sides = case.as_ref().and_then(sides);
    let known = match asked.check {
        Check::OverCentre => true,
        Check::HandForce => sides == Some(Sides::Both),
        Check::KickBack => sides == Some(Sides::Left),
        _ => false,
    };
    known.then_some(move |place: &WorstPose| {
        let at = PoseAt {
            travel: place.travel,
            rack: place.rack,
        };
        let row = if asked.check == Check::OverCentre {
            let pose = axle.left.pose(place.travel, place.rack).ok()?;
            steered.margin(pose.margins.steering, at)
        } else {
            let (case, sides) = (case.as_ref()?, sides?);
            let effort =
                |sense: &f64| steering_effort(&axle, &steered.scene, case, sides, at, *sense).ok();
            let efforts = case.senses().iter().filter_map(effort);
            let most = efforts.max_by(|a, b| a.hand_force.abs().total_cmp(&b.hand_force.abs()))?;
            steered.effort(case, sides, at, most).0
        };
        row.factor
    })
}

fn notes(build: &Build, proof: &mut Proof) {
    let s = &build.steering;
    let about = ProofPart::Steering.label();
    let mut taken = |missing: bool, text: String| {
        if missing {
            proof.notes.push(Note::taken(about.clone(), text));
        }
    };
    let diameter = defaults::STEERING_WHEEL_DIAMETER_MM;
    taken(
        s.wheel_diameter.is_none(),
        format!("A steering wheel of {diameter:.0} mm taken (common practice, no source)."),
    );
    taken(
        s.friction.is_none(),
        "No friction taken between rack and hands.".into(),
    );
    taken(
        s.stop.is_none(),
        "The rack's own ends taken as stops.".into(),
    );
    let travel = build.front.rack.travel_per_turn;
    taken(
        travel.is_none(),
        format!(
            "{} mm of rack travel a turn taken.",
            defaults::RACK_TRAVEL_PER_TURN_MM
        ),
    );
}

/// Rack travel each way at which the steering is held, mm.
fn stop(build: &Build, rack: f64) -> f64 {
    build
        .steering
        .stop
        .map_or(rack, |v| (v * build.unit.mm()).min(rack))
}

/// A case that turns both wheels on the spot, one that hits a single wheel, or neither.
pub(super) fn sides(case: &LoadCase) -> Option<Sides> {
    let turned = |a: &Action| matches!(a, Action::TurnedOnTheSpot { .. });
    let hit = |a: &Action| {
        matches!(
            a,
            Action::Force {
                unit: ForceUnit::VehicleWeight | ForceUnit::Newtons,
                ..
            }
        )
    };
    if case.actions.iter().any(turned) {
        Some(Sides::Both)
    } else if case.actions.iter().any(hit) {
        Some(Sides::Left)
    } else {
        None
    }
}

impl<'a> Steered<'a> {
    /// The steering seen from a side, with its axle turned so that this side is the left; from the left where both are alike.
    pub(super) fn of(
        build: &'a Build,
        model: &AxleModel,
        side: Option<Side>,
        depth: ProofDepth,
    ) -> Option<(Self, Axle)> {
        let spec = build.axle_spec(model.name)?;
        let scene = scene(build, model, spec, &mut Vec::new()).ok()?;
        let (bump, droop) = (model.travel.bump.max(0.0), (-model.travel.droop).max(0.0));
        let reach = Reach::new(bump, droop, stop(build, model.lock())).ok()?;
        let axle = match side {
            Some(Side::Right) => Axle {
                left: model.axle.right_mirrored,
                right_mirrored: model.axle.left,
            },
            Some(Side::Left) | None => model.axle,
        };
        let steered = Self {
            build,
            axle: model.name,
            scene,
            reach,
            depth,
            side,
        };
        Some((steered, axle))
    }

    fn forces(&self, axle: &Axle, figures: &mut SteeringFigures, proof: &mut Proof) {
        for case in kernel_cases(self.build) {
            let Some((row, torque)) = self.force(axle, &case) else {
                continue;
            };
            let (most, at_pinion) = match row.check {
                Check::HandForce => (&mut figures.parked_hand_force, &mut figures.parked_torque),
                _ => (&mut figures.kick_back, &mut figures.kick_back_torque),
            };
            if most.is_none_or(|known| row.value > known) {
                *most = Some(row.value);
                *at_pinion = Some(torque);
            }
            proof.rows.push(row);
        }
    }

    /// What a case asks of the hands at its worst, with the torque at the pinion, N mm; `None` for a case that asks nothing of them.
    fn force(&self, axle: &Axle, case: &LoadCase) -> Option<(ProofRow, f64)> {
        let sides = sides(case)?;
        let found = worst_steering_effort(
            axle,
            &self.scene,
            case,
            sides,
            &self.reach,
            self.depth.fineness(),
        );
        let (at, effort) = found.ok()??;
        Some(self.effort(case, sides, at, effort))
    }

    /// Row and torque at the pinion, N mm, of an effort at a pose.
    fn effort(
        &self,
        case: &LoadCase,
        sides: Sides,
        at: PoseAt,
        effort: SteeringEffort,
    ) -> (ProofRow, f64) {
        let friction = self.build.steering.friction.unwrap_or(0.0);
        let SteeringEffort {
            hand_force,
            pinion_torque,
            ..
        } = effort;
        let (check, by) = match sides {
            Sides::Both => (Check::HandForce, 1.0 / (1.0 - friction)),
            Sides::Left => (Check::KickBack, 1.0 - friction),
        };
        let limit = self.hand_limit(check);
        let force = hand_force.abs() * by;
        let row = self.row(check, force, limit, "N", Some(&case.name), Some(at));
        (row, pinion_torque.abs() * by)
    }

    fn hand_limit(&self, check: Check) -> (f64, Source) {
        let limits = &self.build.limits;
        let (typed, default) = match check {
            Check::HandForce => (limits.hand_force, defaults::HAND_FORCE_N),
            _ => (limits.kick_back, defaults::KICK_BACK_N),
        };
        typed.map_or((default, R79), |f| (f.n(), Source::USER))
    }

    /// Margin before over centre within the stops, and room behind them.
    fn margins(
        &self,
        linkage: &Linkage,
        lock: f64,
        figures: &mut SteeringFigures,
        proof: &mut Proof,
    ) {
        let Some(row) = self.over_centre(linkage) else {
            return;
        };
        let angle = row.value;
        figures.over_centre = Some(figures.over_centre.map_or(angle, |known| known.min(angle)));
        proof.rows.push(row);
        if self.depth == ProofDepth::Full {
            proof.rows.push(self.stop_margin(linkage, lock));
        }
    }

    fn over_centre(&self, linkage: &Linkage) -> Option<ProofRow> {
        let everywhere = Window {
            travel: [-1.0, 1.0],
            lock: [0.0, 1.0],
        };
        let fineness = self.depth.fineness();
        let found = worst(linkage, &everywhere, &self.reach, fineness, |pose| {
            Some(-pose.margins.steering)
        });
        let pose = found.ok().flatten()?.pose;
        let at = PoseAt {
            travel: pose.travel,
            rack: pose.rack,
        };
        Some(self.margin(pose.margins.steering, at))
    }

    /// The row of a margin, the sine of the angle between rod and steering arm.
    fn margin(&self, sine: f64, at: PoseAt) -> ProofRow {
        let typed_deg = self.build.limits.lock_over_deg;
        let limit = typed_deg.unwrap_or(defaults::LOCK_OVER_LIMIT_DEG);
        self.row(
            Check::OverCentre,
            sine.clamp(0.0, 1.0).asin(),
            (limit.to_radians(), typed(typed_deg.is_some())),
            "rad",
            None,
            Some(at),
        )
    }

    fn stop_margin(&self, linkage: &Linkage, lock: f64) -> ProofRow {
        let (room, at) = self.room_past(linkage, lock);
        let limit = (STOP_MARGIN_MM, Source::COMMON_PRACTICE);
        self.row(Check::StopMargin, room, limit, "mm", None, at)
    }

    /// How far past the stop the rack gets before tie rod and steering arm come into line, mm, at most 40.
    fn room_past(&self, linkage: &Linkage, lock: f64) -> (f64, Option<PoseAt>) {
        let step = LOOK_PAST_MM / f64::from(LOOK_STEPS);
        let travels = [0.0, 0.5, 1.0, -0.5, -1.0].map(|part: f64| self.reach.at(part));
        for i in 0..=LOOK_STEPS {
            let past = f64::from(i) * step;
            for rack in [lock + past, -lock - past] {
                for travel in travels {
                    let over = linkage
                        .pose(travel, rack)
                        .map_or(true, |pose| pose.margins.steering < IN_LINE);
                    if over {
                        return (
                            past,
                            Some(PoseAt {
                                travel,
                                rack: rack.clamp(-lock, lock),
                            }),
                        );
                    }
                }
            }
        }
        (LOOK_PAST_MM, None)
    }

    fn row(
        &self,
        check: Check,
        value: f64,
        (limit, source): (f64, Source),
        unit: &'static str,
        case: Option<&str>,
        at: Option<PoseAt>,
    ) -> ProofRow {
        let (keep, factor, method) = match check {
            Check::HandForce | Check::KickBack => (Keep::Below, limit / value, EFFORT),
            _ => (Keep::Above, value / limit, MARGIN),
        };
        ProofRow {
            axle: self.axle,
            side: self.side,
            part: ProofPart::Steering,
            check,
            load_case: case.map(str::to_owned),
            pose: at.map(|at| WorstPose {
                travel: at.travel,
                rack: at.rack,
            }),
            value,
            limit,
            unit,
            keep,
            factor: Some(factor).filter(|f| f.is_finite()),
            wanted: 1.0,
            source,
            method,
            reason: reason(check),
            remark: None,
            remedies: Vec::new(),
            accepted: None,
        }
    }
}
