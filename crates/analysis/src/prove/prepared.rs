//! One corner ready to be proved.

use trammel_build::{AxleModel, AxleName, AxleSpec, Build, Side, defaults};
use trammel_geometry::Linkage;
use trammel_strength::{
    clearance::Clearances,
    loads::{Action, AxleEnd, LoadCase, Reach, Scene, Vehicle, VehicleSpec, WheelSize},
    proof::Part,
    statics::Steering,
};

use super::{Note, ProofPart, cases::kernel_cases, clearances, parts};
use crate::corner_view::{CornerView, HitForce};

/// A corner with everything that is put on it.
#[derive(Clone, Debug)]
pub(super) struct Prepared {
    pub linkage: Linkage,
    pub scene: Scene,
    pub reach: Reach,
    pub parts: Vec<(ProofPart, Part)>,
    pub cases: Vec<LoadCase>,
    pub clearances: Option<Clearances>,
    pub notes: Vec<Note>,
}

impl Prepared {
    /// A side of an axle. The fault is a note that says why nothing can be proved.
    pub(super) fn of(build: &Build, model: &AxleModel, side: Side) -> Result<Self, Note> {
        let mut notes = Vec::new();
        let spec = build
            .axle_spec(model.name)
            .ok_or_else(|| Note::left_out("axle", "The build has no such axle."))?;
        let scene = scene(build, model, spec, &mut notes)?;
        let view = CornerView::of(model, side, HitForce::of(build));
        let travel = model.travel;
        let reach = Reach::new(travel.bump.max(0.0), (-travel.droop).max(0.0), model.lock())
            .map_err(|e| Note::left_out("travel", e.to_string()))?;
        let parts = parts::of(build, spec, &view, &mut notes);
        let clearances = clearances::of(build, spec, &mut notes);
        Ok(Self {
            linkage: view.linkage,
            scene,
            reach,
            parts,
            cases: fitting_cases(build, model),
            clearances,
            notes,
        })
    }
}

/// The cases that can happen on the axle: none that steers one without a rack.
fn fitting_cases(build: &Build, model: &AxleModel) -> Vec<LoadCase> {
    let steers = |action: &Action| {
        matches!(
            action,
            Action::AgainstStop { .. } | Action::TurnedOnTheSpot { .. }
        )
    };
    let mut cases = kernel_cases(build);
    cases.retain(|case| model.rack.is_some() || !case.actions.iter().any(steers));
    cases
}

/// Vehicle, rim and steering.
pub(super) fn scene(
    build: &Build,
    model: &AxleModel,
    spec: &AxleSpec,
    notes: &mut Vec<Note>,
) -> Result<Scene, Note> {
    let bad = |e: trammel_strength::BadNumber| Note::left_out("vehicle", e.to_string());
    let wheel = &spec.parts.wheel;
    let mm = |typed: Option<f64>, default| typed.map_or(default, |v| v * build.unit.mm());
    Ok(Scene {
        vehicle: vehicle(build, notes)?,
        axle: match model.name {
            AxleName::Front => AxleEnd::Front,
            AxleName::Rear => AxleEnd::Rear,
        },
        wheel: WheelSize::new(
            mm(wheel.rim_diameter, defaults::RIM_DIAMETER_MM),
            mm(wheel.rim_width, defaults::RIM_WIDTH_MM),
        )
        .map_err(bad)?,
        steering: model
            .rack
            .map(|rack| {
                let diameter = build.steering.wheel_diameter;
                Steering::new(
                    rack.travel_per_turn,
                    mm(diameter, defaults::STEERING_WHEEL_DIAMETER_MM) / 2.0,
                )
            })
            .transpose()
            .map_err(bad)?,
    })
}

fn vehicle(build: &Build, notes: &mut Vec<Note>) -> Result<Vehicle, Note> {
    let v = &build.vehicle;
    let mut taken = |missing: bool, what: String| {
        if missing {
            notes.push(Note::taken(
                "vehicle",
                format!("{what} taken (common practice, no source)."),
            ));
        }
    };
    taken(
        v.mass.is_none(),
        format!("A mass of {} kg", defaults::MASS_KG),
    );
    taken(
        v.front_share.is_none(),
        format!("{} of the weight on the front axle", defaults::FRONT_SHARE),
    );
    taken(
        v.centre_of_gravity_height.is_none(),
        format!(
            "A centre of gravity {} mm up",
            defaults::CENTRE_OF_GRAVITY_HEIGHT_MM
        ),
    );
    taken(
        v.wheelbase.is_none(),
        format!("A wheelbase of {} mm", defaults::WHEELBASE_MM),
    );
    let front = track(build, AxleName::Front);
    let spec = VehicleSpec {
        mass: v.mass.map_or(defaults::MASS_KG, trammel_build::Mass::kg),
        front_share: v.front_share.unwrap_or(defaults::FRONT_SHARE),
        centre_of_gravity_height: v
            .centre_of_gravity_height
            .map_or(defaults::CENTRE_OF_GRAVITY_HEIGHT_MM, |h| {
                h * build.unit.mm()
            }),
        wheelbase: build.wheelbase_mm(),
        front_track: front.unwrap_or(0.0),
        rear_track: track(build, AxleName::Rear).or(front).unwrap_or(0.0),
    };
    Vehicle::new(spec).map_err(|e| Note::left_out("vehicle", e.to_string()))
}

/// Distance between an axle's contact points at the design position, mm.
fn track(build: &Build, axle: AxleName) -> Option<f64> {
    let model = build.axle(axle).ok()?;
    let out = |side| {
        model
            .linkage(side)
            .pose(0.0, 0.0)
            .ok()
            .map(|pose| pose.contact.y)
    };
    Some(out(Side::Left)? + out(Side::Right)?)
}
