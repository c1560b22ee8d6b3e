//! Putting a part into a build. The right side becomes the left's mirror image wherever the part decides.

use trammel_geometry::{Point, Vector};

use super::{JointPart, Part, PartKind, RackPart, SpindlePart, SpringPart, SteeringArm};
use crate::{
    Axis, AxleName, AxleSpec, Build, Coordinate, Force, LengthUnit, PointName, RackSpec,
    SpringRate, Triple, access::point_mm, convert_length,
};

/// Why a part can't be put into a build.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum PartFault {
    /// A figure of the part is not usable.
    #[error("{part}: {what} is {value}; expected {expected}")]
    Figure {
        /// The part's name.
        part: String,
        /// Which figure.
        what: &'static str,
        /// What it is.
        value: f64,
        /// What it can be.
        expected: &'static str,
    },
    /// There is no place for it.
    #[error("{part} has no place there: {why}")]
    NoPlace {
        /// The part's name.
        part: String,
        /// Why.
        why: &'static str,
    },
    /// A locked coordinate would move.
    #[error("{0} is locked")]
    Locked(Coordinate),
}

const POSITIVE: &str = "a number above nought, at most 100000";
const NUMBER: &str = "a number within 100000 either way";
const LARGEST: f64 = 1e5;

/// Puts a part on an axle.
pub(crate) fn put(build: &mut Build, axle: AxleName, part: &Part) -> Result<(), PartFault> {
    check(part)?;
    match &part.kind {
        PartKind::Spindle(s) => spindle(build, axle, part, s),
        PartKind::Rack(r) => rack(build, axle, part, r),
        PartKind::Spring(s) => spring(build, axle, part, s),
        PartKind::Joint(j) => joint(build, axle, part, j),
    }
}

fn check(part: &Part) -> Result<(), PartFault> {
    let figures: Vec<(&'static str, f64, &'static str)> = match &part.kind {
        PartKind::Spindle(s) => vec![
            ("the ball-joint spacing", s.ball_joint_spacing, POSITIVE),
            ("the inclination", s.inclination_deg, NUMBER),
            ("the spindle's height", s.spindle_height, NUMBER),
            ("the way out to the wheel", s.wheel_out, NUMBER),
            ("the steering arm's length", s.arm_length, POSITIVE),
            ("the height of the arm's hole", s.arm_height, NUMBER),
            ("the way out to the arm's hole", s.arm_out, NUMBER),
        ],
        PartKind::Rack(r) => vec![
            ("the way from joint to joint", r.joint_to_joint, POSITIVE),
            ("the travel", r.travel, POSITIVE),
            ("the travel for a turn", r.travel_per_turn, POSITIVE),
            (
                "the end of the hard teeth",
                r.hard_to.unwrap_or(1.0),
                POSITIVE,
            ),
        ],
        PartKind::Spring(s) => {
            vec![
                ("the open length", s.open, POSITIVE),
                ("the closed length", s.closed, POSITIVE),
                ("the rate", s.rate.map_or(1.0, rate), POSITIVE),
            ]
        }
        PartKind::Joint(j) => vec![
            ("the ball's width", j.ball_width, POSITIVE),
            ("the swivel angle", j.swivel_deg, POSITIVE),
            ("the rating", j.rating.unwrap_or(1.0), POSITIVE),
        ],
    };
    let usable = |(_, v, expected): &(&str, f64, &str)| {
        v.abs() <= LARGEST && (*expected != POSITIVE || *v > 0.0)
    };
    match figures.into_iter().find(|f| !usable(f)) {
        Some((what, value, expected)) => Err(PartFault::Figure {
            part: part.name.clone(),
            what,
            value,
            expected,
        }),
        None => Ok(()),
    }
}

fn rate(rate: SpringRate) -> f64 {
    match rate {
        SpringRate::NewtonsPerMillimetre(v) | SpringRate::PoundsPerInch(v) => v,
    }
}

/// The upright stands on its lower ball joint with the castor that the axis has now, the wheel at its toe and camber.
fn spindle(
    build: &mut Build,
    axle: AxleName,
    part: &Part,
    s: &SpindlePart,
) -> Result<(), PartFault> {
    let mm = part.unit.mm();
    let unit = build.unit;
    let spec = spec(build, axle, part)?;
    let lower = point_mm(spec.lower_arm.ball_joint, unit);
    let now = point_mm(spec.upper_arm.ball_joint, unit) - lower;
    let camber = spec.wheel.camber_deg;
    let inclination = (s.inclination_deg - camber).to_radians();
    let castor = if now.z > 0.0 { -now.x / now.z } else { 0.0 };
    let up = Vector::new(-castor, -inclination.tan(), 1.0).normalize();
    let (toe, lean) = (spec.wheel.toe_deg.to_radians(), camber.to_radians());
    let out = Vector::new(lean.cos() * toe.sin(), lean.cos() * toe.cos(), -lean.sin());
    // Square to the steering axis; the wheel's axle is never along it.
    let ahead = out.cross(&up).normalize();
    let arm = match s.arm {
        SteeringArm::Ahead => s.arm_length,
        SteeringArm::Behind => -s.arm_length,
    };
    let places = [
        (
            PointName::UpperBallJoint,
            lower + up * (s.ball_joint_spacing * mm),
        ),
        (
            PointName::WheelCentre,
            lower + up * (s.spindle_height * mm) + out * (s.wheel_out * mm),
        ),
        (
            PointName::TieRodOuter,
            lower
                + up * (s.arm_height * mm)
                + ahead * (arm * mm)
                + up.cross(&ahead) * (s.arm_out * mm),
        ),
    ];
    place(build, axle, part, &places)
}

/// Figures, thread, and both inner joints half the spacing from the centre plane.
fn rack(build: &mut Build, axle: AxleName, part: &Part, r: &RackPart) -> Result<(), PartFault> {
    if axle == AxleName::Rear {
        let why = "the rear tie rod ends on the chassis, not on a rack";
        return Err(PartFault::NoPlace {
            part: part.name.clone(),
            why,
        });
    }
    let length = |v| convert_length(v, part.unit, build.unit);
    let inner = point_mm(build.front.tie_rod.inner, build.unit);
    let half = 0.5 * r.joint_to_joint * part.unit.mm();
    let direction = build.front.rack.direction();
    let along = if direction.y.abs() > 1e-6 {
        (half - inner.y) / direction.y
    } else {
        0.0
    };
    build.front.rack = RackSpec {
        travel: Some(length(r.travel)),
        travel_per_turn: Some(length(r.travel_per_turn)),
        ..build.front.rack
    };
    build.front.rack_end.thread = Some(r.end_thread.clone());
    build.front.rack_end.hard_to = r.hard_to.map(length);
    place(
        build,
        axle,
        part,
        &[(PointName::TieRodInner, inner + direction * along)],
    )
}

fn spring(build: &mut Build, axle: AxleName, part: &Part, s: &SpringPart) -> Result<(), PartFault> {
    let unit = build.unit;
    let length = |v| Some(convert_length(v, part.unit, unit));
    let why = "this axle has no spring unit yet; give its two mounts first";
    let no_place = PartFault::NoPlace {
        part: part.name.clone(),
        why,
    };
    let spec = match axle {
        AxleName::Front => Some(&mut build.front),
        AxleName::Rear => build.rear.as_mut(),
    };
    let spring = spec.and_then(|s| s.spring.as_mut()).ok_or(no_place)?;
    spring.open_length = length(s.open);
    spring.closed_length = length(s.closed);
    spring.rate = s.rate.or(spring.rate);
    Ok(())
}

/// Swivel, ball and rating of both tie-rod joints; what else is known of them stays, and a size of the standard's table goes.
fn joint(build: &mut Build, axle: AxleName, part: &Part, j: &JointPart) -> Result<(), PartFault> {
    let ball = convert_length(j.ball_width, part.unit, build.unit);
    spec(build, axle, part)?;
    build.limits.joint_angle_deg = Some(j.swivel_deg);
    let Some(spec) = build.axle_spec_mut(axle) else {
        return Ok(());
    };
    for point in [PointName::TieRodInner, PointName::TieRodOuter] {
        let joint = spec.parts.joints.entry(point).or_default();
        let end = joint.end.get_or_insert_default();
        end.listed = None;
        end.swivel_deg = Some(j.swivel_deg);
        end.ball_width = Some(ball);
        end.rating = j.rating.map(Force::Newtons).or(end.rating);
    }
    Ok(())
}

fn spec<'a>(build: &'a Build, axle: AxleName, part: &Part) -> Result<&'a AxleSpec, PartFault> {
    let why = "the build has no such axle";
    build.axle_spec(axle).ok_or_else(|| PartFault::NoPlace {
        part: part.name.clone(),
        why,
    })
}

/// Puts left points in their places and lets the right side mirror them.
fn place(
    build: &mut Build,
    axle: AxleName,
    part: &Part,
    places: &[(PointName, Point)],
) -> Result<(), PartFault> {
    let unit = build.unit;
    for (point, to) in places {
        let to = triple(*to, unit);
        let now = spec(build, axle, part)?.typed_point(*point).unwrap_or(to);
        for axis in Axis::ALL {
            let coordinate = Coordinate {
                axle,
                point: *point,
                axis,
            };
            if now[axis.index()] != to[axis.index()] && build.locked.contains(&coordinate) {
                return Err(PartFault::Locked(coordinate));
            }
        }
        build
            .set_up
            .surveyed
            .retain(|at, _| at.axle != axle || at.point != *point);
        if let Some(spec) = build.axle_spec_mut(axle) {
            spec.set_left_point(*point, to);
            spec.right.remove(point);
        }
    }
    Ok(())
}

/// Rounded far below what a shop can measure, so that no float dust shows.
fn triple(p: Point, unit: LengthUnit) -> Triple {
    [p.x, p.y, p.z].map(|v| (unit.from_mm(v) * 1e5).round() / 1e5)
}
