//! What the steering asks of the driver, and how far it is from going over centre.

use trammel_build::{AxleModel, AxleName, AxleSpec, Build, Side, defaults};
use trammel_geometry::{Axle, Linkage};
use trammel_strength::{
    check::{Check, Keep},
    loads::{Action, ForceUnit, LoadCase, Reach, Scene, Window, worst},
    proof::{PoseAt, Sides, worst_steering_effort},
    source::Source,
    statics::SteeringEffort,
};

use super::{
    Note, Proof, ProofDepth, ProofPart, ProofRow, cases::kernel_cases, parts::typed,
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

struct Steered<'a> {
    build: &'a Build,
    axle: AxleName,
    scene: Scene,
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
    let (Some(spec), Some(rack)) = (build.axle_spec(model.name), model.rack) else {
        return;
    };
    notes(build, proof);
    let lock = stop(build, model.lock());
    let travel = model.travel;
    let reach = Reach::new(travel.bump.max(0.0), (-travel.droop).max(0.0), lock);
    // What is wrong with either was said where the corners were prepared.
    let (Ok(reach), Ok(scene)) = (reach, scene_of(build, model, spec)) else {
        return;
    };
    let mut figures = SteeringFigures {
        turns: 2.0 * lock / rack.travel_per_turn,
        parked_hand_force: None,
        parked_torque: None,
        kick_back: None,
        kick_back_torque: None,
        over_centre: None,
    };
    let swapped = Axle {
        left: model.axle.right_mirrored,
        right_mirrored: model.axle.left,
    };
    let both = [(Side::Left, model.axle), (Side::Right, swapped)];
    for (side, axle) in both.into_iter().take(if alike { 1 } else { 2 }) {
        let steered = Steered {
            build,
            axle: model.name,
            scene,
            reach,
            depth,
            side: (!alike).then_some(side),
        };
        steered.forces(&axle, &mut figures, proof);
        steered.margins(&axle.left, lock, &mut figures, proof);
    }
    proof.steering = Some(figures);
}

fn scene_of(build: &Build, model: &AxleModel, spec: &AxleSpec) -> Result<Scene, Note> {
    scene(build, model, spec, &mut Vec::new())
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
fn sides(case: &LoadCase) -> Option<Sides> {
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

impl Steered<'_> {
    fn forces(&self, axle: &Axle, figures: &mut SteeringFigures, proof: &mut Proof) {
        let friction = self.build.steering.friction.unwrap_or(0.0);
        for case in kernel_cases(self.build) {
            let Some(sides) = sides(&case) else { continue };
            let found = worst_steering_effort(
                axle,
                &self.scene,
                &case,
                sides,
                &self.reach,
                self.depth.fineness(),
            );
            let Ok(Some((at, effort))) = found else {
                continue;
            };
            let SteeringEffort {
                hand_force,
                pinion_torque,
                ..
            } = effort;
            let (check, by) = match sides {
                Sides::Both => (Check::HandForce, 1.0 / (1.0 - friction)),
                Sides::Left => (Check::KickBack, 1.0 - friction),
            };
            let force = hand_force.abs() * by;
            let (most, torque) = match sides {
                Sides::Both => (&mut figures.parked_hand_force, &mut figures.parked_torque),
                Sides::Left => (&mut figures.kick_back, &mut figures.kick_back_torque),
            };
            if most.is_none_or(|known| force > known) {
                *most = Some(force);
                *torque = Some(pinion_torque.abs() * by);
            }
            proof.rows.push(self.row(
                check,
                force,
                self.hand_limit(check),
                "N",
                Some(&case.name),
                Some(at),
            ));
        }
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
        let everywhere = Window {
            travel: [-1.0, 1.0],
            lock: [0.0, 1.0],
        };
        let found = worst(
            linkage,
            &everywhere,
            &self.reach,
            self.depth.fineness(),
            |pose| Some(-pose.margins.steering),
        );
        let Ok(Some(found)) = found else { return };
        let angle = found.pose.margins.steering.clamp(0.0, 1.0).asin();
        let least = figures.over_centre.map_or(angle, |known| known.min(angle));
        figures.over_centre = Some(least);
        let typed_deg = self.build.limits.lock_over_deg;
        let limit = typed_deg
            .unwrap_or(defaults::LOCK_OVER_LIMIT_DEG)
            .to_radians();
        let at = PoseAt {
            travel: found.pose.travel,
            rack: found.pose.rack,
        };
        let row = self.row(
            Check::OverCentre,
            angle,
            (limit, typed(typed_deg.is_some())),
            "rad",
            None,
            Some(at),
        );
        proof.rows.push(row);
        if self.depth == ProofDepth::Full {
            let (room, at) = self.room_past(linkage, lock);
            let limit = (STOP_MARGIN_MM, Source::COMMON_PRACTICE);
            proof
                .rows
                .push(self.row(Check::StopMargin, room, limit, "mm", None, at));
        }
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
            remedies: Vec::new(),
            accepted: None,
        }
    }
}
