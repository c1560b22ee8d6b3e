//! Figures of parts, load cases, materials and steering that a build may not hold.

use super::{LengthKind, MaterialSpec, lengths::joint_path};
use crate::{
    AxleName, AxleParts, AxleSpec, BoltAxis, Build, BuildFault, LoadAction, LoadCaseSpec,
    LoadPlace, PointName, Triple, TyrePatch,
    check::{LARGEST, NOUGHT_OR_MORE, POSITIVE, check_place, figure, has_direction, is_positive},
};

/// Share of the force that friction may take.
const MOST_FRICTION: f64 = 0.9;
/// A load case may not ask for more of anything.
const LARGEST_MULTIPLE: f64 = 1e6;

impl Build {
    /// What is wrong with load cases, materials, steering and accepted cautions.
    pub(crate) fn check_proving(&self) -> Option<BuildFault> {
        self.check_steering()
            .or_else(|| self.check_materials())
            .or_else(|| self.check_load_cases())
            .or_else(|| self.check_accepted())
    }

    fn check_steering(&self) -> Option<BuildFault> {
        let s = &self.steering;
        let sizes = [("wheel_diameter", s.wheel_diameter), ("stop", s.stop)];
        for (name, value) in sizes {
            if let Some(found) = value.filter(|v| !is_positive(*v)) {
                return Some(figure(format!("steering.{name}"), found, POSITIVE));
            }
        }
        let friction = s.friction.filter(|v| !(0.0..=MOST_FRICTION).contains(v));
        friction.map(|found| {
            figure(
                "steering.friction".into(),
                found,
                "a share from 0 to 0.9, such as 0.1",
            )
        })
    }

    fn check_materials(&self) -> Option<BuildFault> {
        let mut seen: Vec<String> = Vec::new();
        self.materials
            .iter()
            .zip(1..)
            .find_map(|(material, number)| {
                let at = |what: &str| format!("materials.{number}.{what}");
                let name = material.name.trim().to_lowercase();
                if name.is_empty() {
                    return Some(text(
                        at("name"),
                        "empty",
                        "what it is called, such as \"tube, heat 1234\"",
                    ));
                }
                if seen.contains(&name) {
                    return Some(text(
                        at("name"),
                        &material.name,
                        "a name that no other material of the build has",
                    ));
                }
                seen.push(name);
                stresses(material).into_iter().find_map(|(what, v)| {
                    v.filter(|v| !is_positive(*v))
                        .map(|v| figure(at(what), v, POSITIVE))
                })
            })
    }

    fn check_load_cases(&self) -> Option<BuildFault> {
        let own = &self.load_cases.own;
        own.iter().zip(1..).find_map(|(case, number)| {
            let at = |what: &str| format!("load_cases.own.{number}.{what}");
            if case.name.trim().is_empty() {
                return Some(text(
                    at("name"),
                    "empty",
                    "what happens in a few words, such as \"landing\"",
                ));
            }
            if own.iter().filter(|other| other.name == case.name).count() > 1 {
                return Some(text(
                    at("name"),
                    &case.name,
                    "a name that no other load case of the build has",
                ));
            }
            check_case(case).map(|(what, found, expected)| text(at(&what), &found, expected))
        })
    }

    fn check_accepted(&self) -> Option<BuildFault> {
        self.accepted
            .iter()
            .zip(1..)
            .find_map(|(accepted, number)| {
                let empty = [("caution", &accepted.caution), ("reason", &accepted.reason)];
                let (what, _) = empty.into_iter().find(|(_, text)| text.trim().is_empty())?;
                let expected = if what == "reason" {
                    "a written reason why the caution may stay"
                } else {
                    "the caution's key, such as \"front/both/tie_rod_angle\""
                };
                Some(text(format!("accepted.{number}.{what}"), "empty", expected))
            })
    }
}

fn stresses(material: &MaterialSpec) -> [(&'static str, Option<f64>); 3] {
    [
        ("yield_strength", Some(material.yield_strength.mpa())),
        ("tensile", material.tensile.map(super::Stress::mpa)),
        ("modulus", material.modulus.map(super::Stress::mpa)),
    ]
}

/// Field, what was found and what can stand there.
type Wrong = (String, String, &'static str);

fn check_case(case: &LoadCaseSpec) -> Option<Wrong> {
    let within = |v: f64, from: f64, to: f64| (from..=to).contains(&v);
    if case.actions.is_empty() {
        return Some((
            "actions".into(),
            "empty".into(),
            "at least one thing that acts on the wheel",
        ));
    }
    if !case.travel.iter().all(|v| within(*v, -1.0, 1.0)) {
        let expected = "two numbers from -1 (full droop) to 1 (full bump)";
        return Some(("travel".into(), format!("{:?}", case.travel), expected));
    }
    if !case.lock.iter().all(|v| within(*v, 0.0, 1.0)) {
        let expected = "two numbers from 0 (straight ahead) to 1 (full lock)";
        return Some(("lock".into(), format!("{:?}", case.lock), expected));
    }
    for (name, v) in [("braking", case.braking), ("cornering", case.cornering)] {
        if !within(v, -10.0, 10.0) {
            return Some((
                name.into(),
                v.to_string(),
                "a number from -10 to 10, in units of gravity",
            ));
        }
    }
    case.actions.iter().zip(1..).find_map(|(action, number)| {
        let (found, expected) = check_action(action)?;
        Some((format!("actions.{number}"), found, expected))
    })
}

fn check_action(action: &LoadAction) -> Option<(String, &'static str)> {
    match *action {
        LoadAction::Force(size, _, place, _) => {
            if !size.iter().all(|v| v.abs() <= LARGEST_MULTIPLE) {
                return Some((format!("{size:?}"), "three numbers of at most a million"));
            }
            match place {
                LoadPlace::Rim(_, height, outboard)
                    if height.is_nan()
                        || outboard.is_nan()
                        || height.abs() > 1.0
                        || outboard.abs() > 1.0 =>
                {
                    Some((
                        format!("{height}, {outboard}"),
                        "a height and a distance on the rim, each from -1 to 1",
                    ))
                }
                _ => None,
            }
        }
        LoadAction::TurnedOnTheSpot(friction, patch) => {
            let size = match patch {
                TyrePatch::Pressure(pressure) => pressure.kpa(),
                TyrePatch::Length(length) => length,
            };
            let wrong = [friction, size].into_iter().find(|v| !is_positive(*v));
            wrong.map(|v| (v.to_string(), POSITIVE))
        }
        LoadAction::AgainstStop(force) => {
            let found = Some(force.n()).filter(|v| !is_positive(*v));
            found.map(|v| (v.to_string(), POSITIVE))
        }
    }
}

/// The parts of an axle.
pub(crate) fn check_parts(name: AxleName, spec: &AxleSpec) -> Result<(), BuildFault> {
    let at = |path: &str| format!("{}.parts.{path}", name.word());
    check_lengths(&spec.parts, &at)?;
    check_walls(&spec.parts, &at)?;
    check_figures(&spec.parts, &at)?;
    for (point, joint) in &spec.parts.joints {
        let path = joint_path(*point);
        if !AxleParts::JOINTS.contains(point) {
            return Err(BuildFault::OutOfPlace {
                path: at(&path),
                reason: "no joint, bolt or bracket sits at this point",
            });
        }
        let bolt = joint.bolt.as_ref().and_then(|b| b.direction);
        let on_rod = matches!(point, PointName::TieRodInner | PointName::TieRodOuter);
        if bolt.is_some() && on_rod {
            return Err(BuildFault::OutOfPlace {
                path: at(&format!("{path}.bolt.direction")),
                reason: "the bolts of the tie-rod joints stand as joint_bolts says",
            });
        }
        if let Some(BoltAxis::Direction(direction)) = bolt {
            check_direction(at(&format!("{path}.bolt.direction")), direction)?;
        }
        if let Some(stands) = joint.bracket.as_ref().and_then(|b| b.stands) {
            check_direction(at(&format!("{path}.bracket.stands")), stands)?;
        }
    }
    Ok(())
}

fn check_lengths(parts: &AxleParts, at: &impl Fn(&str) -> String) -> Result<(), BuildFault> {
    let mut fault = None;
    let mut copy = parts.clone();
    copy.each_length(&mut |path, name, kind, v| {
        let expected = match kind {
            LengthKind::Size if !is_positive(*v) => POSITIVE,
            LengthKind::SizeOrNone if !(0.0..=LARGEST).contains(v) => NOUGHT_OR_MORE,
            LengthKind::Place if v.is_nan() || v.abs() > LARGEST => {
                "three numbers of at most a million"
            }
            _ => return,
        };
        let dot = if path.is_empty() { "" } else { "." };
        fault.get_or_insert_with(|| figure(at(&format!("{path}{dot}{name}")), *v, expected));
    });
    fault.map_or(Ok(()), Err)
}

fn check_walls(parts: &AxleParts, at: &impl Fn(&str) -> String) -> Result<(), BuildFault> {
    let tubes = [
        ("tie_rod.tube", &parts.tie_rod.tube),
        ("upper_arm.tube", &parts.upper_arm.tube),
        ("lower_arm.tube", &parts.lower_arm.tube),
    ];
    let tubes = tubes
        .into_iter()
        .filter_map(|(path, tube)| tube.as_ref().map(|t| (path.to_owned(), t.section)));
    let frame = parts.joints.iter().filter_map(|(point, joint)| {
        let tube = joint.bracket.as_ref()?.tube?;
        Some((format!("{}.bracket.tube", joint_path(*point)), tube.section))
    });
    for (path, section) in tubes.chain(frame) {
        let hollow = !matches!(section, super::Section::Bar(_));
        if hollow && section.wall() > section.across() / 2.0 {
            let expected = "a wall of at most half of what the tube is across";
            return Err(figure(
                at(&format!("{path}.section")),
                section.wall(),
                expected,
            ));
        }
    }
    Ok(())
}

fn check_figures(parts: &AxleParts, at: &impl Fn(&str) -> String) -> Result<(), BuildFault> {
    for (path, arm) in [
        ("upper_arm", &parts.upper_arm),
        ("lower_arm", &parts.lower_arm),
    ] {
        if let Some(found) = arm.spring_tubes.filter(|n| !(1..=2).contains(n)) {
            return Err(figure(
                at(&format!("{path}.spring_tubes")),
                f64::from(found),
                "1 or 2",
            ));
        }
    }
    if let Some(found) = parts
        .tie_rod
        .side_hit
        .map(super::Force::n)
        .filter(|v| !(0.0..=LARGEST).contains(v))
    {
        return Err(figure(at("tie_rod.side_hit"), found, NOUGHT_OR_MORE));
    }
    for (point, joint) in &parts.joints {
        let path = joint_path(*point);
        let (end, bracket) = (joint.end.as_ref(), joint.bracket.as_ref());
        let figures = [
            (
                "end.rating",
                end.and_then(|e| e.rating).map(super::Force::n),
            ),
            ("end.swivel_deg", end.and_then(|e| e.swivel_deg)),
            ("bracket.electrode", bracket.and_then(|b| b.electrode)),
        ];
        for (name, value) in figures {
            if let Some(found) = value.filter(|v| !is_positive(*v)) {
                return Err(figure(at(&format!("{path}.{name}")), found, POSITIVE));
            }
        }
    }
    Ok(())
}

fn check_direction(path: String, direction: Triple) -> Result<(), BuildFault> {
    check_place(path.clone(), direction)?;
    if has_direction(direction) {
        return Ok(());
    }
    Err(text(path, "no direction", "three numbers, not all nought"))
}

fn text(path: String, found: &str, expected: &'static str) -> BuildFault {
    BuildFault::Figure {
        path,
        found: found.to_owned(),
        expected,
    }
}
