//! Changes of a build's keep-outs, as edits with names.

use trammel_build::{AxleName, Build, Edit, KeepOut, KeepOutCorners, LengthUnit, PointRef};

use super::settings::whole_steps;
use crate::request::Request;

/// Side of a new keep-out and its distance from the joint, mm: a frame tube's width.
fn tube(unit: LengthUnit) -> f64 {
    match unit {
        LengthUnit::Inch => 25.4,
        LengthUnit::Millimetre => 25.0,
    }
}

/// The build's keep-outs with one in another place, or with a new one where there is none of that number.
pub(crate) fn put(build: &Build, index: usize, corners: KeepOutCorners) -> Edit {
    let mut all = build.keep_outs.clone();
    match all.get_mut(index) {
        Some(keep_out) => keep_out.corners = corners,
        None => all.push(KeepOut {
            name: fresh_name(build),
            corners,
        }),
    }
    Edit::SetKeepOuts(all)
}

/// A request that does something with one keep-out as one step.
pub(crate) fn step(build: &Build, index: usize, deed: &str, edit: Edit) -> Request {
    Request::EditAs {
        name: step_name(build, index, deed),
        edits: vec![edit],
    }
}

/// What an undo list calls something done with one keep-out.
pub(crate) fn step_name(build: &Build, index: usize, deed: &str) -> String {
    match build.keep_outs.get(index) {
        Some(keep_out) => format!("{deed} keep-out {}", keep_out.name),
        None => format!("{deed} keep-out"),
    }
}

/// The build's keep-outs without one of them.
pub(crate) fn without(build: &Build, index: usize) -> Edit {
    let mut all = build.keep_outs.clone();
    if index < all.len() {
        all.remove(index);
    }
    Edit::SetKeepOuts(all)
}

/// The build's keep-outs with one called something else.
pub(crate) fn renamed(build: &Build, index: usize, name: &str) -> Edit {
    let mut all = build.keep_outs.clone();
    if let Some(keep_out) = all.get_mut(index) {
        name.clone_into(&mut keep_out.name);
    }
    Edit::SetKeepOuts(all)
}

/// A name that no keep-out of the build has yet.
fn fresh_name(build: &Build) -> String {
    let taken = |name: &String| build.keep_outs.iter().any(|k| k.name == *name);
    (1..)
        .map(|n| format!("Tube {n}"))
        .find(|name| !taken(name))
        .unwrap_or_default()
}

/// A square above a joint, clear of it: for the front axle counting at every x, for the rear one a box about the joint.
pub(crate) fn beside(build: &Build, joint: PointRef) -> Option<KeepOutCorners> {
    let unit = build.unit;
    let side = tube(unit);
    let place = build.point_mm(joint)?;
    let steps = |mm: f64| whole_steps(mm, unit);
    let y = [place.y - 0.5 * side, place.y + 0.5 * side].map(steps);
    let z = [place.z + side, place.z + 2.0 * side].map(steps);
    let flat = KeepOutCorners::Front([y[0], z[0]], [y[1], z[1]]);
    Some(match joint.axle {
        AxleName::Front => flat,
        AxleName::Rear => flat.between(about(build, joint)),
    })
}

/// From and to along x, about a joint.
pub(crate) fn about(build: &Build, joint: PointRef) -> [f64; 2] {
    let unit = build.unit;
    let x = build.point_mm(joint).map_or(0.0, |p| p.x);
    [-1.0, 1.0].map(|way| whole_steps(x + way * tube(unit), unit))
}
