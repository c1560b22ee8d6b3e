//! Changes of parts, load cases, materials and accepted cautions, each with a name.

use trammel_geometry::ArmName;

use crate::{
    AcceptedCaution, ArmParts, AxleName, AxleParts, Build, EditFault, JointParts, LoadCaseSpec,
    MaterialSpec, PointName, RackMount, ShopSpec, SteeringSpec, TieRodParts, WheelParts,
};

/// A change of what a build is made of, or of what it is proved against.
#[derive(Clone, Debug, PartialEq)]
pub enum PartsEdit {
    /// The tie rod's parts.
    TieRod(AxleName, Box<TieRodParts>),
    /// The tubes of an arm.
    Arm(AxleName, ArmName, Box<ArmParts>),
    /// Rim and tyre.
    Wheel(AxleName, WheelParts),
    /// Diameter of the spring unit.
    SpringDiameter(AxleName, Option<f64>),
    /// Joint, bolt and bracket at a point; one that says nothing takes the entry away.
    Joint(AxleName, PointName, Box<JointParts>),
    /// All parts of an axle at once, as when they are taken over from another.
    Axle(AxleName, Box<AxleParts>),
    /// The plate under the rack, or the usual one.
    RackMount(Option<Box<RackMount>>),
    /// How the shop prints and saws.
    Shop(Box<ShopSpec>),
    /// Steering wheel, friction, stops.
    Steering(SteeringSpec),
    /// The build's own materials.
    Materials(Vec<MaterialSpec>),
    /// A load case added, or put in the place of the one of its name.
    LoadCase(Box<LoadCaseSpec>),
    /// The build's own load case of this name taken away; a usual case of that name comes back.
    DropLoadCase(String),
    /// A load case switched on or off.
    SwitchLoadCase(String, bool),
    /// A caution accepted with its reason, or the reason changed.
    Accept(AcceptedCaution),
    /// A caution no longer accepted.
    Withdraw(String),
}

impl PartsEdit {
    /// What an undo list calls it.
    pub(crate) fn name(&self) -> String {
        match self {
            Self::TieRod(..) => "Change tie-rod tube and ends".into(),
            Self::Arm(_, ArmName::Upper, _) => "Change upper arm's tubes".into(),
            Self::Arm(_, ArmName::Lower, _) => "Change lower arm's tubes".into(),
            Self::Wheel(..) => "Change rim and tyre".into(),
            Self::SpringDiameter(..) => "Change spring diameter".into(),
            Self::Joint(_, point, _) => format!("Change parts at {}", point.path()),
            Self::Axle(axle, _) => format!("Change parts of the {} axle", axle.word()),
            Self::RackMount(_) => "Change rack mount plate".into(),
            Self::Shop(_) => "Change how sheets are printed".into(),
            Self::Steering(_) => "Change steering".into(),
            Self::Materials(_) => "Change materials".into(),
            Self::LoadCase(case) => format!("Change load case {}", case.name),
            Self::DropLoadCase(name) => format!("Take load case {name} away"),
            Self::SwitchLoadCase(name, true) => format!("Switch load case {name} on"),
            Self::SwitchLoadCase(name, false) => format!("Switch load case {name} off"),
            Self::Accept(_) => "Accept a caution".into(),
            Self::Withdraw(_) => "Withdraw an acceptance".into(),
        }
    }

    pub(crate) fn apply(&self, build: &mut Build) -> Result<(), EditFault> {
        match self {
            Self::TieRod(axle, parts) => parts_mut(build, *axle)?.tie_rod.clone_from(parts),
            Self::Arm(axle, arm, parts) => parts_mut(build, *axle)?.arm_mut(*arm).clone_from(parts),
            Self::Wheel(axle, wheel) => parts_mut(build, *axle)?.wheel = *wheel,
            Self::SpringDiameter(axle, v) => parts_mut(build, *axle)?.spring_diameter = *v,
            Self::Joint(axle, point, joint) => {
                let joints = &mut parts_mut(build, *axle)?.joints;
                if joint.is_empty() {
                    joints.remove(point);
                } else {
                    joints.insert(*point, joint.as_ref().clone());
                }
            }
            Self::Axle(axle, parts) => parts_mut(build, *axle)?.clone_from(parts),
            Self::RackMount(mount) => build.front.parts.rack_mount = mount.as_deref().cloned(),
            Self::Shop(shop) => build.shop.clone_from(shop),
            Self::Steering(steering) => build.steering = *steering,
            Self::Materials(materials) => build.materials.clone_from(materials),
            Self::LoadCase(case) => set_load_case(build, case),
            Self::DropLoadCase(name) => build.load_cases.own.retain(|case| case.name != *name),
            Self::SwitchLoadCase(name, on) => {
                let off = &mut build.load_cases.off;
                if *on {
                    off.remove(name);
                } else {
                    off.insert(name.clone());
                }
            }
            Self::Accept(accepted) => accept(build, accepted),
            Self::Withdraw(key) => build.accepted.retain(|a| a.caution != *key),
        }
        Ok(())
    }
}

fn parts_mut(build: &mut Build, axle: AxleName) -> Result<&mut AxleParts, EditFault> {
    let spec = build.axle_spec_mut(axle);
    spec.map(|s| &mut s.parts)
        .ok_or_else(|| EditFault::Missing(format!("{} axle", axle.word())))
}

fn set_load_case(build: &mut Build, case: &LoadCaseSpec) {
    let own = &mut build.load_cases.own;
    match own.iter_mut().find(|known| known.name == case.name) {
        Some(known) => known.clone_from(case),
        None => own.push(case.clone()),
    }
}

fn accept(build: &mut Build, accepted: &AcceptedCaution) {
    let known = build
        .accepted
        .iter_mut()
        .find(|a| a.caution == accepted.caution);
    match known {
        Some(known) => known.clone_from(accepted),
        None => build.accepted.push(accepted.clone()),
    }
}
