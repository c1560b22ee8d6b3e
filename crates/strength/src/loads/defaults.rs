//! The load cases that a new build starts with. All are common practice without a source, to be changed by the builder.

use nalgebra::Vector3;

use super::case::{Action, Facing, ForceUnit, Frame, LoadCase, Patch, Place, WheelHold, Window};
use crate::source::Source;

/// Tyre pressure of the parked case, MPa: 7 lbf/in^2, usual on light off-road tyres.
const TYRE_PRESSURE: f64 = 0.048;
/// Hand force against the stop, N.
const HAND_FORCE: f64 = 250.0;
/// Friction of a dry hard surface.
const FRICTION: f64 = 0.8;

const ANY_LOCK: [f64; 2] = [0.0, 1.0];

fn force(at: Place, size: [f64; 3], unit: ForceUnit, frame: Frame) -> Action {
    Action::Force {
        at,
        size: Vector3::from(size),
        unit,
        frame,
    }
}

/// The wheel's own weight, at the contact point.
fn standing() -> Action {
    force(
        Place::Contact,
        [0.0, 0.0, 1.0],
        ForceUnit::StaticWheelLoad,
        Frame::Vehicle,
    )
}

fn case(
    name: &str,
    what: &str,
    hold: WheelHold,
    travel: [f64; 2],
    lock: [f64; 2],
    actions: Vec<Action>,
) -> LoadCase {
    LoadCase {
        name: name.to_owned(),
        what: what.to_owned(),
        actions,
        hold,
        braking: 0.0,
        cornering: 0.0,
        window: Window { travel, lock },
        source: Source::COMMON_PRACTICE,
    }
}

/// The cases of a new build.
#[must_use]
pub fn default_cases() -> Vec<LoadCase> {
    let mut cases = on_the_road();
    cases.extend(hits());
    cases.extend(standing_still());
    cases
}

fn on_the_road() -> Vec<LoadCase> {
    use {Frame::Wheel, WheelHold::Braked, WheelHold::Rolling};
    let rest = case(
        "at rest",
        "The vehicle stands, driver in, the steering anywhere.",
        Rolling,
        [0.0, 0.0],
        ANY_LOCK,
        vec![standing()],
    );
    let landing = case(
        "landing",
        "The wheel lands with four times its static load.",
        Rolling,
        [0.3, 1.0],
        ANY_LOCK,
        vec![force(
            Place::Contact,
            [0.0, 0.0, 4.0],
            ForceUnit::StaticWheelLoad,
            Wheel,
        )],
    );
    let braking = LoadCase {
        braking: 0.7,
        ..case(
            "braking",
            "Hard braking at 0.7 of gravity on this wheel's own brake.",
            Braked,
            [0.0, 0.8],
            [0.0, 0.5],
            vec![force(
                Place::Contact,
                [-0.7, 0.0, 1.0],
                ForceUnit::WheelLoad,
                Wheel,
            )],
        )
    };
    let cornering = LoadCase {
        cornering: 0.7,
        ..case(
            "cornering",
            "Outer wheel in a corner at 0.7 of gravity.",
            Rolling,
            [0.0, 0.8],
            ANY_LOCK,
            vec![force(
                Place::Contact,
                [0.0, -0.7, 1.0],
                ForceUnit::WheelLoad,
                Wheel,
            )],
        )
    };
    let pothole = case(
        "pothole",
        "Bump and brake together: three static wheel loads up and one and a half back.",
        Braked,
        [0.3, 1.0],
        [0.0, 0.5],
        vec![force(
            Place::Contact,
            [-1.5, 0.0, 3.0],
            ForceUnit::StaticWheelLoad,
            Wheel,
        )],
    );
    vec![rest, landing, braking, cornering, pothole]
}

fn hits() -> Vec<LoadCase> {
    let rim = |height| Place::Rim {
        facing: Facing::Front,
        height,
        outboard: 1.0,
    };
    let hit = |name, what, at, size| {
        let blow = force(at, size, ForceUnit::VehicleWeight, Frame::Vehicle);
        case(
            name,
            what,
            WheelHold::Rolling,
            [-0.5, 1.0],
            ANY_LOCK,
            vec![standing(), blow],
        )
    };
    vec![
        hit(
            "rock, rearward",
            "The front of the rim meets a rock: the vehicle's weight straight back at the height of the wheel centre, in the wheel's plane.",
            Place::WheelCentre,
            [-1.0, 0.0, 0.0],
        ),
        hit(
            "kerb, sideways",
            "The front of the rim slides into a kerb: half the vehicle's weight inboard, half a rim radius below the wheel centre.",
            rim(-0.5),
            [0.0, -0.5, 0.0],
        ),
        hit(
            "pushed by another vehicle",
            "Another vehicle leans on the wheel: half the vehicle's weight inboard at the wheel centre.",
            Place::WheelCentre,
            [0.0, -0.5, 0.0],
        ),
    ]
}

fn standing_still() -> Vec<LoadCase> {
    let turned = Action::TurnedOnTheSpot {
        friction: FRICTION,
        patch: Patch::Pressure(TYRE_PRESSURE),
    };
    let stop = Action::AgainstStop {
        hand_force: HAND_FORCE,
    };
    vec![
        case(
            "parked steering",
            "The wheel is turned on the spot on a dry hard surface.",
            WheelHold::Braked,
            [0.0, 0.0],
            ANY_LOCK,
            vec![standing(), turned],
        ),
        case(
            "against the steering stop",
            "The driver pulls with 250 N against a stop at the end of the lock.",
            WheelHold::Rolling,
            [-0.5, 1.0],
            [1.0, 1.0],
            vec![standing(), stop],
        ),
    ]
}
