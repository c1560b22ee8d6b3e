//! A build at another ride height: the frame raised or lowered on the same arms.

use trammel_build::{
    AxleModel, AxleName, AxleSpec, Build, BuildFault, Edit, KeepOut, KeepOutCorners, LengthUnit,
    PointName, RideHeight, Side, Stop, TravelSpec, Triple, mirror,
};
use trammel_geometry::{Corner, Linkage, Point, Vector};
use trammel_tuning::{LiftFault, Lifted, Reset, lifted};

use crate::words::length;

/// Rounds of looking for the travel that raises the frame by so much; each takes two digits off or more.
const ROUNDS: usize = 40;
/// How exactly the frame is raised, mm.
const EXACT_MM: f64 = 1e-8;
/// Points nearer than this to the other side's mirror image are taken as that, mm.
const ALIKE_MM: f64 = 1e-6;
/// Most that the wheels' cambers may differ where one figure stands for both, rad.
const CAMBER_ALIKE: f64 = 1e-4;

/// What happens to the stops of the wheel's travel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stops {
    /// They stay where they are on frame and arms: a raised frame leaves more bump and less droop.
    Kept,
    /// As much travel each way as before, with a spring unit as much longer as its mounts are further apart.
    MovedAlong,
}

/// How a frame is raised.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Raise {
    /// By how much, mm, up positive.
    pub by: f64,
    /// What the adjusters put back.
    pub reset: Reset,
    /// What happens to the stops.
    pub stops: Stops,
}

/// Why a frame can't be raised so.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum RaiseFault {
    /// The build can't be posed as it is.
    #[error(transparent)]
    Build(#[from] BuildFault),
    /// A wheel does not get there, or can't be set there.
    #[error("{} {} wheel: {fault}", axle.word(), side.word())]
    Wheel {
        /// Axle.
        axle: AxleName,
        /// Side.
        side: Side,
        /// What is wrong.
        fault: LiftFault,
    },
    /// The new ride height is at or past a stop.
    #[error("the {} wheels would stand {} of {} travel away from where they stand now, and their stop is at {}; let the stops move along, or go less far", axle.word(), length(travel.abs(), *unit), if *travel < 0.0 { "droop" } else { "bump" }, length(stop.abs(), *unit))]
    PastStop {
        /// Axle.
        axle: AxleName,
        /// Wheel travel to the new ride height, mm.
        travel: f64,
        /// The stop, mm.
        stop: f64,
        /// Unit to speak in.
        unit: LengthUnit,
    },
    /// The two sides differ, and one camber can't stand for both.
    #[error("the two {} wheels would come to different cambers, and a build has one for both; let camber be put back", axle.word())]
    CamberApart {
        /// Axle.
        axle: AxleName,
    },
    /// No travel was found that raises the frame by just so much.
    #[error("no wheel travel raises the frame by {}", length(*by, *unit))]
    NotFound {
        /// Raise asked for, mm.
        by: f64,
        /// Unit to speak in.
        unit: LengthUnit,
    },
}

/// The edit that describes a build's parts with the frame raised: all points anew, static toe put back by the tie rods, the origin under the
/// front wheels on the new ground. The centre of gravity is raised with the frame.
///
/// # Errors
/// [`RaiseFault`] when a wheel does not get there.
pub fn raised(build: &Build, raise: &Raise) -> Result<Edit, RaiseFault> {
    let front = Raised::of(build, AxleName::Front, raise, None)?;
    let shift = front.shift;
    let rear = build
        .rear
        .as_ref()
        .map(|_| Raised::of(build, AxleName::Rear, raise, Some(shift.x)))
        .transpose()?;
    let unit = build.unit;
    let mut vehicle = build.vehicle;
    if let Some(height) = &mut vehicle.centre_of_gravity_height {
        *height = tidy(*height + unit.from_mm(raise.by));
    }
    if let (Some(rear), Some(wheelbase)) = (&rear, &mut vehicle.wheelbase) {
        *wheelbase = tidy(*wheelbase + unit.from_mm(rear.wheel_back));
    }
    let [x, _, z] = [shift.x, shift.y, shift.z].map(|v| unit.from_mm(v));
    Ok(Edit::SetRideHeight(Box::new(RideHeight {
        front: front.spec,
        rear: rear.map(|r| r.spec),
        vehicle,
        keep_outs: build
            .keep_outs
            .iter()
            .map(|k| shifted_keep_out(k, x, z))
            .collect(),
    })))
}

/// One axle on the raised frame.
struct Raised {
    spec: AxleSpec,
    /// What was added to every point of the frame, mm.
    shift: Vector,
    /// How far the left wheel centre has gone back against the origin, mm.
    wheel_back: f64,
}

impl Raised {
    /// `x` is the shift of the origin along x where another axle has settled it already.
    fn of(
        build: &Build,
        name: AxleName,
        raise: &Raise,
        x: Option<f64>,
    ) -> Result<Self, RaiseFault> {
        let model = build.axle(name)?;
        let spec = build
            .axle_spec(name)
            .ok_or(BuildFault::NoAxle { axle: name })?;
        let side = |side| {
            let linkage = model.linkage(side);
            raised_corner(linkage, raise)
                .map_err(|fault| fault.of(name, side, raise.by, build.unit))
        };
        let left = side(Side::Left)?;
        let x = x.unwrap_or(left.frame_shift.x);
        let right = if spec.right.is_empty() {
            None
        } else {
            Some(side(Side::Right)?)
        };
        let corner = along_x(&left, x);
        let right = right.map(|r| along_x(&r, x));
        let apart = |r: &Corner| (r.wheel.camber - corner.wheel.camber).abs() > CAMBER_ALIKE;
        if right.as_ref().is_some_and(apart) {
            return Err(RaiseFault::CamberApart { axle: name });
        }
        let shift = Vector::new(x, 0.0, left.frame_shift.z);
        let mut next = spec.clone();
        place_left(&mut next, build, &corner, shift, raise.reset);
        if let Some(right) = &right {
            place_right(&mut next, build, [&corner, right], shift);
        }
        move_frame_tubes(&mut next, build, shift);
        move_stops(&mut next, build, &model, &left, raise.stops, name)?;
        let old = model.axle.left.corner().wheel.centre.x;
        Ok(Self {
            spec: next,
            shift,
            wheel_back: old - corner.wheel.centre.x,
        })
    }
}

enum CornerFault {
    Lift(LiftFault),
    NotFound,
}

impl CornerFault {
    fn of(self, axle: AxleName, side: Side, by: f64, unit: LengthUnit) -> RaiseFault {
        match self {
            Self::Lift(fault) => RaiseFault::Wheel { axle, side, fault },
            Self::NotFound => RaiseFault::NotFound { by, unit },
        }
    }
}

/// The corner whose frame is raised by just so much: the travel is looked for, since toe and camber put back move the ground a little.
fn raised_corner(linkage: &Linkage, raise: &Raise) -> Result<Lifted, CornerFault> {
    let mut travel = -raise.by;
    for _ in 0..ROUNDS {
        let found = lifted(linkage, travel, raise.reset).map_err(CornerFault::Lift)?;
        let missing = raise.by - found.frame_shift.z;
        if missing.abs() < EXACT_MM {
            return Ok(found);
        }
        travel -= missing;
    }
    Err(CornerFault::NotFound)
}

/// The corner with its origin shifted by `x` along x instead of by its own.
fn along_x(lifted: &Lifted, x: f64) -> Corner {
    let by = Vector::new(x - lifted.frame_shift.x, 0.0, 0.0);
    lifted.corner.map(|p| p + by, |v| v)
}

fn place_left(spec: &mut AxleSpec, build: &Build, corner: &Corner, shift: Vector, reset: Reset) {
    let typed = |p: Point| [p.x, p.y, p.z].map(|v| tidy(build.unit.from_mm(v)));
    for (arm, now) in [
        (&mut spec.upper_arm, &corner.upper_arm),
        (&mut spec.lower_arm, &corner.lower_arm),
    ] {
        arm.front_pivot = typed(now.front_pivot);
        arm.rear_pivot = typed(now.rear_pivot);
        arm.ball_joint = typed(now.ball_joint);
    }
    spec.tie_rod.inner = typed(corner.tie_rod.inner);
    spec.tie_rod.outer = typed(corner.tie_rod.outer);
    spec.wheel.centre = typed(corner.wheel.centre);
    if reset == Reset::Toe {
        spec.wheel.camber_deg = tidy(corner.wheel.camber.to_degrees());
    }
    if let (Some(spring), Some(now)) = (&mut spec.spring, &corner.spring) {
        spring.chassis_mount = typed(now.chassis_mount);
        spring.arm_mount = typed(now.arm_mount);
    }
    for point in [&mut spec.rack.face, &mut spec.rack.bore_mouth]
        .into_iter()
        .flatten()
    {
        *point = shifted(*point, shift, build);
    }
}

/// Points of the right side: its own ones, and those that are no longer the left's mirror image.
fn place_right(spec: &mut AxleSpec, build: &Build, [left, right]: [&Corner; 2], shift: Vector) {
    for point in PointName::ALL {
        let own = spec.right.get(&point).copied();
        let places = corner_point(left, point).zip(corner_point(right, point));
        let place = match (places, own) {
            (Some((l, r)), own) if own.is_some() || (l - r).norm() > ALIKE_MM => {
                let typed = [r.x, r.y, r.z].map(|v| tidy(build.unit.from_mm(v)));
                mirror(typed)
            }
            (None, Some(own)) => shifted(own, shift, build),
            _ => continue,
        };
        spec.right.insert(point, place);
    }
}

fn corner_point(c: &Corner, point: PointName) -> Option<Point> {
    Some(match point {
        PointName::UpperFrontPivot => c.upper_arm.front_pivot,
        PointName::UpperRearPivot => c.upper_arm.rear_pivot,
        PointName::UpperBallJoint => c.upper_arm.ball_joint,
        PointName::LowerFrontPivot => c.lower_arm.front_pivot,
        PointName::LowerRearPivot => c.lower_arm.rear_pivot,
        PointName::LowerBallJoint => c.lower_arm.ball_joint,
        PointName::TieRodInner => c.tie_rod.inner,
        PointName::TieRodOuter => c.tie_rod.outer,
        PointName::WheelCentre => c.wheel.centre,
        PointName::SpringChassisMount => c.spring?.chassis_mount,
        PointName::SpringArmMount => c.spring?.arm_mount,
        PointName::RackFace | PointName::RackBoreMouth => return None,
    })
}

fn move_stops(
    spec: &mut AxleSpec,
    build: &Build,
    model: &AxleModel,
    lifted: &Lifted,
    stops: Stops,
    axle: AxleName,
) -> Result<(), RaiseFault> {
    let travel = lifted.travel_shift;
    match stops {
        Stops::MovedAlong => {
            let old = model.axle.left.corner().spring;
            if let (Some(spring), Some(old), Some(new)) =
                (&mut spec.spring, old, lifted.corner.spring)
            {
                let between = |s: trammel_geometry::Spring| (s.arm_mount - s.chassis_mount).norm();
                let longer = build.unit.from_mm(between(new) - between(old));
                for typed in [&mut spring.open_length, &mut spring.closed_length]
                    .into_iter()
                    .flatten()
                {
                    *typed = tidy(*typed + longer);
                }
            }
        }
        Stops::Kept => {
            let range = model.travel;
            let ends = [
                (range.droop, range.droop_stop),
                (range.bump, range.bump_stop),
            ];
            for (stop, kind) in ends {
                let past = if stop < 0.0 {
                    travel <= stop
                } else {
                    travel >= stop
                };
                if past && kind != Stop::Default {
                    return Err(RaiseFault::PastStop {
                        axle,
                        travel,
                        stop,
                        unit: build.unit,
                    });
                }
            }
            spec.travel = spec.travel.map(|t| TravelSpec {
                bump: tidy(t.bump - build.unit.from_mm(travel)),
                droop: tidy(t.droop + build.unit.from_mm(travel)),
            });
        }
    }
    Ok(())
}

/// Tubes that brackets stand on go with the frame.
fn move_frame_tubes(spec: &mut AxleSpec, build: &Build, shift: Vector) {
    let brackets = spec
        .parts
        .joints
        .values_mut()
        .filter_map(|joint| joint.bracket.as_mut());
    for tube in brackets.filter_map(|bracket| bracket.tube.as_mut()) {
        tube.from = shifted(tube.from, shift, build);
        tube.to = shifted(tube.to, shift, build);
    }
}

fn shifted([x, y, z]: Triple, by: Vector, build: &Build) -> Triple {
    let [dx, dz] = [by.x, by.z].map(|v| build.unit.from_mm(v));
    [tidy(x + dx), y, tidy(z + dz)]
}

fn shifted_keep_out(keep_out: &KeepOut, x: f64, z: f64) -> KeepOut {
    let front = |[y, h]: [f64; 2]| [y, tidy(h + z)];
    let full = |[a, y, h]: Triple| [tidy(a + x), y, tidy(h + z)];
    KeepOut {
        name: keep_out.name.clone(),
        corners: match keep_out.corners {
            KeepOutCorners::Front(a, b) => KeepOutCorners::Front(front(a), front(b)),
            KeepOutCorners::Box(a, b) => KeepOutCorners::Box(full(a), full(b)),
        },
    }
}

/// Without float dust, far below anything a shop can measure.
fn tidy(value: f64) -> f64 {
    (value * 1e7).round() / 1e7
}
