//! Changing the unit of a whole build, on purpose.

use crate::{AxleSpec, Build, KeepOut, LengthUnit, MadeBy, Tolerances, Triple, convert_length};

/// The same vehicle with every length in `unit`.
pub(crate) fn to_unit(build: &Build, unit: LengthUnit) -> Build {
    let mut next = build.clone();
    if unit == build.unit {
        return next;
    }
    let length = |v: &mut f64| *v = convert_length(*v, build.unit, unit);
    next.unit = unit;
    axle(&mut next.front, &length);
    if let Some(rear) = &mut next.rear {
        axle(rear, &length);
    }
    for v in [
        &mut next.vehicle.wheelbase,
        &mut next.vehicle.centre_of_gravity_height,
        &mut next.limits.clearance,
        &mut next.steering.wheel_diameter,
        &mut next.steering.stop,
    ]
    .into_iter()
    .flatten()
    {
        length(v);
    }
    let keep_outs = next.keep_outs.iter_mut();
    keep_outs.flat_map(KeepOut::numbers_mut).for_each(&length);
    tolerances(&mut next.tolerances, &length);
    let ratio = build.unit.mm() / unit.mm();
    crate::set_up::convert(&mut next.set_up, &length, |v| *v *= ratio * ratio);
    next.load_cases.each_length(&length);
    next.shop.each_length(&length);
    next
}

fn tolerances(t: &mut Tolerances, length: &impl Fn(&mut f64)) {
    [&mut t.jig_drilled, &mut t.tape, &mut t.hand_held]
        .into_iter()
        .flatten()
        .for_each(length);
    let points = t.points.values_mut().chain(t.coordinates.values_mut());
    for made in t.usual.iter_mut().chain(points) {
        if let MadeBy::Deviation(v) = made {
            length(v);
        }
    }
}

fn axle(spec: &mut AxleSpec, length: &impl Fn(&mut f64)) {
    let triple = |t: &mut Triple| t.iter_mut().for_each(length);
    for arm in [&mut spec.upper_arm, &mut spec.lower_arm] {
        triple(&mut arm.front_pivot);
        triple(&mut arm.rear_pivot);
        triple(&mut arm.ball_joint);
    }
    triple(&mut spec.tie_rod.inner);
    triple(&mut spec.tie_rod.outer);
    triple(&mut spec.wheel.centre);
    length(&mut spec.wheel.loaded_radius);
    if let Some(s) = &mut spec.spring {
        triple(&mut s.chassis_mount);
        triple(&mut s.arm_mount);
        [&mut s.open_length, &mut s.closed_length]
            .into_iter()
            .flatten()
            .for_each(length);
    }
    if let Some(t) = &mut spec.travel {
        length(&mut t.bump);
        length(&mut t.droop);
    }
    let rack = &mut spec.rack;
    [&mut rack.travel, &mut rack.travel_per_turn]
        .into_iter()
        .flatten()
        .for_each(length);
    [&mut rack.face, &mut rack.bore_mouth]
        .into_iter()
        .flatten()
        .for_each(triple);
    let end = &mut spec.rack_end;
    [
        &mut end.engagement,
        &mut end.jam_nut,
        &mut end.bar_diameter,
        &mut end.bore_depth,
        &mut end.hard_to,
    ]
    .into_iter()
    .flatten()
    .for_each(length);
    spec.parts.each_length(&mut |_, _, _, v| length(v));
    spec.right.values_mut().for_each(triple);
}
