//! Load cases between the build's words and the strength crate's.

use trammel_build::{
    Build, Force, Hold, LengthUnit, LoadAction, LoadAxes, LoadCaseSpec, LoadPlace, LoadUnit,
    Pressure, RimHalf, TyrePatch,
};
use trammel_geometry::Vector;
use trammel_strength::{
    loads::{
        self, Action, Facing, ForceUnit, Frame, LoadCase, Patch, Place, WheelHold, Window,
        default_cases,
    },
    source::Source,
};

/// kPa in 1 MPa.
const KPA_PER_MPA: f64 = 1000.0;

/// The usual load cases as a build would write them, lengths in this unit. All are common practice without a source.
#[must_use]
pub fn usual_load_cases(unit: LengthUnit) -> Vec<LoadCaseSpec> {
    default_cases()
        .iter()
        .map(|case| spec(case, unit))
        .collect()
}

/// The load cases of a build: the usual ones with its own in their places, then those it adds; `true` beside those that are put on.
#[must_use]
pub fn effective_load_cases(build: &Build) -> Vec<(LoadCaseSpec, bool)> {
    let mut cases = usual_load_cases(build.unit);
    for own in &build.load_cases.own {
        match cases.iter_mut().find(|case| case.name == own.name) {
            Some(usual) => usual.clone_from(own),
            None => cases.push(own.clone()),
        }
    }
    let on = |case: LoadCaseSpec| {
        let on = !build.load_cases.off.contains(&case.name);
        (case, on)
    };
    cases.into_iter().map(on).collect()
}

/// The cases that are put on, in the strength crate's words.
pub(super) fn kernel_cases(build: &Build) -> Vec<LoadCase> {
    let on = effective_load_cases(build)
        .into_iter()
        .filter(|(_, on)| *on);
    on.map(|(case, _)| kernel(&case, build)).collect()
}

fn kernel(case: &LoadCaseSpec, build: &Build) -> LoadCase {
    let usual = default_cases()
        .into_iter()
        .find(|usual| usual.name == case.name);
    let unchanged = usual.filter(|usual| spec(usual, build.unit) == *case);
    LoadCase {
        name: case.name.clone(),
        what: case.what.clone(),
        actions: case
            .actions
            .iter()
            .map(|a| kernel_action(*a, build.unit))
            .collect(),
        hold: match case.hold {
            Hold::Rolling => WheelHold::Rolling,
            Hold::Braked => WheelHold::Braked,
        },
        braking: case.braking,
        cornering: case.cornering,
        window: Window {
            travel: case.travel,
            lock: case.lock,
        },
        source: unchanged.map_or(Source::USER, |usual| usual.source),
    }
}

fn kernel_action(action: LoadAction, unit: LengthUnit) -> Action {
    match action {
        LoadAction::Force([x, y, z], multiples, at, axes) => Action::Force {
            at: match at {
                LoadPlace::Contact => Place::Contact,
                LoadPlace::WheelCentre => Place::WheelCentre,
                LoadPlace::Rim(half, height, outboard) => Place::Rim {
                    facing: match half {
                        RimHalf::Front => Facing::Front,
                        RimHalf::Rear => Facing::Rear,
                    },
                    height,
                    outboard,
                },
            },
            size: Vector::new(x, y, z),
            unit: match multiples {
                LoadUnit::Newtons => ForceUnit::Newtons,
                LoadUnit::StaticWheelLoad => ForceUnit::StaticWheelLoad,
                LoadUnit::WheelLoad => ForceUnit::WheelLoad,
                LoadUnit::VehicleWeight => ForceUnit::VehicleWeight,
            },
            frame: match axes {
                LoadAxes::Vehicle => Frame::Vehicle,
                LoadAxes::Wheel => Frame::Wheel,
            },
        },
        LoadAction::TurnedOnTheSpot(friction, patch) => Action::TurnedOnTheSpot {
            friction,
            patch: match patch {
                TyrePatch::Pressure(p) => Patch::Pressure(p.kpa() / KPA_PER_MPA),
                TyrePatch::Length(v) => Patch::Length(v * unit.mm()),
            },
        },
        LoadAction::AgainstStop(force) => Action::AgainstStop {
            hand_force: force.n(),
        },
    }
}

fn spec(case: &LoadCase, unit: LengthUnit) -> LoadCaseSpec {
    LoadCaseSpec {
        name: case.name.clone(),
        what: case.what.clone(),
        actions: case.actions.iter().map(|a| spec_action(a, unit)).collect(),
        hold: match case.hold {
            WheelHold::Rolling => Hold::Rolling,
            WheelHold::Braked => Hold::Braked,
        },
        braking: case.braking,
        cornering: case.cornering,
        travel: case.window.travel,
        lock: case.window.lock,
    }
}

fn spec_action(action: &Action, unit: LengthUnit) -> LoadAction {
    match *action {
        Action::Force {
            at,
            size,
            unit,
            frame,
        } => LoadAction::Force(
            [size.x, size.y, size.z],
            match unit {
                ForceUnit::Newtons => LoadUnit::Newtons,
                ForceUnit::StaticWheelLoad => LoadUnit::StaticWheelLoad,
                ForceUnit::WheelLoad => LoadUnit::WheelLoad,
                ForceUnit::VehicleWeight => LoadUnit::VehicleWeight,
            },
            match at {
                Place::Contact => LoadPlace::Contact,
                Place::WheelCentre => LoadPlace::WheelCentre,
                Place::Rim {
                    facing,
                    height,
                    outboard,
                } => LoadPlace::Rim(
                    match facing {
                        Facing::Front => RimHalf::Front,
                        Facing::Rear => RimHalf::Rear,
                    },
                    height,
                    outboard,
                ),
            },
            match frame {
                Frame::Vehicle => LoadAxes::Vehicle,
                Frame::Wheel => LoadAxes::Wheel,
            },
        ),
        Action::TurnedOnTheSpot { friction, patch } => LoadAction::TurnedOnTheSpot(
            friction,
            match patch {
                loads::Patch::Pressure(mpa) => {
                    TyrePatch::Pressure(Pressure::Kilopascals(mpa * KPA_PER_MPA))
                }
                loads::Patch::Length(mm) => TyrePatch::Length(unit.from_mm(mm)),
            },
        ),
        Action::AgainstStop { hand_force } => LoadAction::AgainstStop(Force::Newtons(hand_force)),
    }
}
