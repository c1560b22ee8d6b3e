//! From the fields of the file to parts, materials and load cases, by hand.

use std::collections::BTreeMap;

use trammel_build::{
    AcceptedCaution, ArmParts, AxleParts, BoltSpec, BracketSpec, Ears, FrameTube, Hold, HoleFit,
    JointEnd, JointParts, LoadAction, LoadAxes, LoadCaseSpec, LoadCases, LoadPlace, LoadUnit,
    MaterialSpec, PointName, Pressure, RackMount, RimHalf, Section, ShearPlane, ShopSpec, ShopStep,
    SteeringSpec, Stress, TabOutline, TieRodParts, Tube, TyrePatch, WheelParts,
};

use crate::{
    convert_pieces::{OddName, bolt, force},
    format1_parts as file,
};

/// The parts of an axle; `axle` is its word.
pub(crate) fn parts(f: file::Parts, axle: &str) -> Result<AxleParts, OddName> {
    Ok(AxleParts {
        tie_rod: tie_rod(f.tie_rod),
        upper_arm: arm(f.upper_arm),
        lower_arm: arm(f.lower_arm),
        wheel: WheelParts {
            rim_diameter: f.wheel.rim_diameter,
            rim_width: f.wheel.rim_width,
            rim_thickness: f.wheel.rim_thickness,
            tyre_diameter: f.wheel.tyre_diameter,
            tyre_width: f.wheel.tyre_width,
        },
        spring_diameter: f.spring_diameter,
        rack_mount: f.rack_mount.map(rack_mount),
        joints: joints(f.joints, axle)?,
    })
}

fn joints(
    f: Vec<file::JointParts>,
    axle: &str,
) -> Result<BTreeMap<PointName, JointParts>, OddName> {
    let mut joints = BTreeMap::new();
    for (joint, number) in f.into_iter().zip(1..) {
        let odd = |expected| OddName {
            at: format!("{axle}.parts.joints.{number}.at"),
            path: format!("{axle}.parts.joints.{number}.at"),
            found: joint.at.clone(),
            expected,
        };
        let point = PointName::from_path(&joint.at)
            .filter(|point| AxleParts::JOINTS.contains(point))
            .ok_or_else(|| odd("a joint of the linkage, such as \"tie_rod.inner\""))?;
        let fault = odd("every joint once");
        let parts = JointParts {
            end: joint.end.map(end),
            bolt: joint.bolt.map(joint_bolt),
            bracket: joint.bracket.map(bracket),
        };
        if joints.insert(point, parts).is_some() {
            return Err(fault);
        }
    }
    Ok(joints)
}

fn tie_rod(f: file::TieRodParts) -> TieRodParts {
    TieRodParts {
        tube: f.tube.map(tube),
        thread: f.thread,
        grade: f.grade,
        adapter_material: f.adapter_material,
        adapter_length: f.adapter_length,
        engagement: f.engagement,
        adjustment: f.adjustment,
        jam_nut: f.jam_nut,
        side_hit: f.side_hit.map(force),
    }
}

fn arm(f: file::ArmParts) -> ArmParts {
    ArmParts {
        tube: f.tube.map(tube),
        spring_tubes: f.spring_tubes,
    }
}

fn tube(f: file::Tube) -> Tube {
    Tube {
        section: section(f.section),
        material: f.material,
    }
}

fn section(f: file::Section) -> Section {
    match f {
        file::Section::Round(across, wall) => Section::Round(across, wall),
        file::Section::Square(side, wall) => Section::Square(side, wall),
        file::Section::Bar(diameter) => Section::Bar(diameter),
    }
}

fn stress(f: file::Stress) -> Stress {
    match f {
        file::Stress::Mpa(v) => Stress::Megapascals(v),
        file::Stress::Ksi(v) => Stress::Ksi(v),
    }
}

fn end(f: file::JointEnd) -> JointEnd {
    JointEnd {
        listed: f.listed,
        rating: f.rating.map(force),
        swivel_deg: f.swivel_deg,
        ball_width: f.ball_width,
        body_width: f.body_width,
        head_diameter: f.head_diameter,
        length: f.length,
    }
}

fn joint_bolt(f: file::Bolt) -> BoltSpec {
    BoltSpec {
        thread: f.thread,
        grade: f.grade,
        spacer: f.spacer,
        shear_plane: f.shear_plane.map(|plane| match plane {
            file::ShearPlane::Shank => ShearPlane::Shank,
            file::ShearPlane::Thread => ShearPlane::Thread,
        }),
        direction: f.direction.map(bolt),
    }
}

fn bracket(f: file::Bracket) -> BracketSpec {
    BracketSpec {
        ears: f.ears.map(|ears| match ears {
            file::Ears::Single => Ears::Single,
            file::Ears::Double => Ears::Double,
        }),
        thickness: f.thickness,
        width: f.width,
        height: f.height,
        form: f.form.map(outline),
        hole: f.hole,
        fit: f.fit.map(fit),
        edge: f.edge,
        gap: f.gap,
        boxing: f.boxing,
        weld: f.weld,
        electrode: f.electrode,
        material: f.material,
        tube: f.tube.map(|tube| FrameTube {
            from: tube.from,
            to: tube.to,
            section: section(tube.section),
        }),
        stands: f.stands,
    }
}

fn outline(f: file::TabOutline) -> TabOutline {
    match f {
        file::TabOutline::Straight => TabOutline::Straight,
        file::TabOutline::Radiused => TabOutline::Radiused,
        file::TabOutline::Tapered => TabOutline::Tapered,
    }
}

fn fit(f: file::HoleFit) -> HoleFit {
    match f {
        file::HoleFit::Reamed => HoleFit::Reamed,
        file::HoleFit::Close => HoleFit::Close,
        file::HoleFit::Normal => HoleFit::Normal,
        file::HoleFit::Loose => HoleFit::Loose,
    }
}

fn rack_mount(f: file::RackMount) -> RackMount {
    RackMount {
        width: f.width,
        height: f.height,
        thickness: f.thickness,
        along: f.along,
        across: f.across,
        thread: f.thread,
    }
}

pub(crate) fn shop(f: file::Shop) -> ShopSpec {
    ShopSpec {
        owner: f.owner,
        revision: f.revision,
        issued: f.issued,
        step: f.step.map(|step| match step {
            file::ShopStep::Sixteenth => ShopStep::Sixteenth,
            file::ShopStep::ThirtySecond => ShopStep::ThirtySecond,
            file::ShopStep::SixtyFourth => ShopStep::SixtyFourth,
            file::ShopStep::TenthMm => ShopStep::TenthMm,
            file::ShopStep::HalfMm => ShopStep::HalfMm,
            file::ShopStep::WholeMm => ShopStep::WholeMm,
        }),
        both_units: f.both_units,
        datum: f.datum,
        stock_length: f.stock_length,
        kerf: f.kerf,
        plate: f.plate,
    }
}

pub(crate) fn steering(f: &file::Steering) -> SteeringSpec {
    SteeringSpec {
        wheel_diameter: f.wheel_diameter,
        friction: f.friction,
        stop: f.stop,
    }
}

pub(crate) fn material(f: file::Material) -> MaterialSpec {
    MaterialSpec {
        name: f.name,
        yield_strength: stress(f.yield_strength),
        tensile: f.tensile.map(stress),
        modulus: f.modulus.map(stress),
        source: f.source,
    }
}

pub(crate) fn accepted(f: file::Accepted) -> AcceptedCaution {
    AcceptedCaution {
        caution: f.caution,
        reason: f.reason,
        figure: f.figure,
    }
}

pub(crate) fn load_cases(f: file::LoadCases) -> LoadCases {
    LoadCases {
        own: f.own.into_iter().map(load_case).collect(),
        off: f.off.into_iter().collect(),
    }
}

fn load_case(f: file::LoadCase) -> LoadCaseSpec {
    LoadCaseSpec {
        name: f.name,
        what: f.what,
        actions: f.actions.into_iter().map(action).collect(),
        hold: match f.hold {
            file::Hold::Rolling => Hold::Rolling,
            file::Hold::Braked => Hold::Braked,
        },
        braking: f.braking,
        cornering: f.cornering,
        travel: f.travel,
        lock: f.lock,
    }
}

fn action(f: file::Action) -> LoadAction {
    match f {
        file::Action::Force(size, unit, at, axes) => {
            let unit = match unit {
                file::LoadUnit::Newtons => LoadUnit::Newtons,
                file::LoadUnit::StaticWheelLoad => LoadUnit::StaticWheelLoad,
                file::LoadUnit::WheelLoad => LoadUnit::WheelLoad,
                file::LoadUnit::VehicleWeight => LoadUnit::VehicleWeight,
            };
            let axes = match axes {
                file::LoadAxes::Vehicle => LoadAxes::Vehicle,
                file::LoadAxes::Wheel => LoadAxes::Wheel,
            };
            LoadAction::Force(size, unit, place(at), axes)
        }
        file::Action::TurnedOnTheSpot(friction, patch) => LoadAction::TurnedOnTheSpot(
            friction,
            match patch {
                file::TyrePatch::Kpa(v) => TyrePatch::Pressure(Pressure::Kilopascals(v)),
                file::TyrePatch::Psi(v) => TyrePatch::Pressure(Pressure::Psi(v)),
                file::TyrePatch::Length(v) => TyrePatch::Length(v),
            },
        ),
        file::Action::AgainstStop(f) => LoadAction::AgainstStop(force(f)),
    }
}

fn place(f: file::LoadPlace) -> LoadPlace {
    match f {
        file::LoadPlace::Contact => LoadPlace::Contact,
        file::LoadPlace::WheelCentre => LoadPlace::WheelCentre,
        file::LoadPlace::Rim(half, height, outboard) => {
            let half = match half {
                file::RimHalf::Front => RimHalf::Front,
                file::RimHalf::Rear => RimHalf::Rear,
            };
            LoadPlace::Rim(half, height, outboard)
        }
    }
}
