//! Every change to a build, as a value with a name.

use std::collections::BTreeSet;

use trammel_geometry::{Vector, mirror_vector};

use crate::{
    Axis, AxleName, AxleSpec, Build, BuildFault, Coordinate, Hit, JointBolts, KeepOut, LengthUnit,
    Limits, Part, PartFault, PartsEdit, PointName, PointRef, RackEndSpec, RackSpec, SetUp, Side,
    SpringSpec, SurveyedPoint, Tolerances, TravelSpec, Triple, Vehicle, WheelSpec, access::mirror,
};

/// A change to a build. [`Edit::apply`] makes a new build; nothing else changes one.
#[derive(Clone, Debug, PartialEq)]
pub enum Edit {
    /// Put one point in a place, vehicle axes, the build's unit. A right-hand point without a place of its own moves its left twin.
    MovePoint {
        /// Which point.
        point: PointRef,
        /// Where to.
        to: Triple,
    },
    /// Put the inner tie-rod joint in a place and take the rack with it, in every direction but its own: along the rack the joint only
    /// stands further out or in.
    MoveRack {
        /// The inner joint, left or right.
        point: PointRef,
        /// Where to.
        to: Triple,
    },
    /// Put many points in their places at once, as from a table.
    MovePoints(Vec<(PointRef, Triple)>),
    /// Give the right side its own place for a point.
    SeparateRight(AxleName, PointName),
    /// Make the right side's point the left's mirror image again.
    MirrorLeft(AxleName, PointName),
    /// Make the whole right side the left's mirror image.
    MirrorAll(AxleName),
    /// Wheel figures; its centre included.
    SetWheel(AxleName, WheelSpec),
    /// Wanted travel, or none.
    SetTravel(AxleName, Option<TravelSpec>),
    /// Spring unit, or none.
    SetSpring(AxleName, Option<SpringSpec>),
    /// Rack figures.
    SetRack(RackSpec),
    /// Rack end.
    SetRackEnd(RackEndSpec),
    /// Which way the bolts of an axle's tie-rod joints stand.
    SetJointBolts(AxleName, JointBolts),
    /// Vehicle figures.
    SetVehicle(Vehicle),
    /// The hit that the rack end is checked against.
    SetHit(Hit),
    /// Where cautions begin.
    SetLimits(Limits),
    /// Places that tie-rod joints are kept out of.
    SetKeepOuts(Vec<KeepOut>),
    /// How exactly points are made.
    SetTolerances(Tolerances),
    /// What can be adjusted, and the log of readings.
    SetSetUp(Box<SetUp>),
    /// Put a measured part on an axle; where it decides, the right side is the left's mirror image.
    PutPart(AxleName, Box<Part>),
    /// Put surveyed points in their places, and keep how well they are known.
    TakeSurvey(Vec<(PointRef, Triple, SurveyedPoint)>),
    /// A change of parts, load cases, materials or accepted cautions.
    Parts(PartsEdit),
    /// Describe the same parts at another ride height. Locks do not hold it: every joint keeps its place on its part.
    SetRideHeight(Box<RideHeight>),
    /// Lock or free one coordinate.
    SetLock(Coordinate, bool),
    /// Lock or free a whole point.
    SetPointLock(AxleName, PointName, bool),
    /// Title.
    SetTitle(String),
    /// Notes.
    SetNotes(String),
    /// Convert every length to another unit.
    ConvertUnit(LengthUnit),
    /// Add a rear axle, or take it off.
    SetRear(Option<Box<AxleSpec>>),
}

/// What of a build is another at another ride height, or with the origin elsewhere.
#[derive(Clone, Debug, PartialEq)]
pub struct RideHeight {
    /// Front axle.
    pub front: AxleSpec,
    /// Rear axle.
    pub rear: Option<AxleSpec>,
    /// Vehicle figures.
    pub vehicle: Vehicle,
    /// Places to keep clear of, which go with the frame.
    pub keep_outs: Vec<KeepOut>,
}

/// Why an edit was not made. The build stays as it was.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum EditFault {
    /// A locked coordinate would move.
    #[error("{0} is locked")]
    Locked(Coordinate),
    /// The build has no such point or axle.
    #[error("this build has no {0}")]
    Missing(String),
    /// A part has no place in it.
    #[error(transparent)]
    Part(#[from] PartFault),
    /// The build that would come of it could not be used.
    #[error("{0}")]
    Unusable(#[from] BuildFault),
}

impl Edit {
    /// What an undo list calls it, such as `Move tie rod, inner joint`.
    #[must_use]
    pub fn name(&self) -> String {
        match self {
            Self::MovePoint { point, .. } => format!(
                "Move {}{}",
                lower_first(point.point.label()),
                on_axle(*point)
            ),
            Self::MoveRack { point, .. } => format!("Move rack and inner joint{}", on_axle(*point)),
            Self::MovePoints(points) => format!("Place {} points", points.len()),
            Self::SeparateRight(_, p) => {
                format!("Give the right side its own {}", lower_first(p.label()))
            }
            Self::MirrorLeft(_, p) => format!("Mirror {}", lower_first(p.label())),
            Self::MirrorAll(axle) => format!("Mirror the {} left side", axle.word()),
            Self::SetWheel(..) => "Change wheel".into(),
            Self::SetTravel(..) => "Change travel".into(),
            Self::SetSpring(_, Some(_)) => "Change spring unit".into(),
            Self::SetSpring(_, None) => "Take the spring unit off".into(),
            Self::SetRack(_) => "Change rack".into(),
            Self::SetRackEnd(_) => "Change rack end".into(),
            Self::SetJointBolts(..) => "Turn joint bolts".into(),
            Self::SetVehicle(_) => "Change vehicle".into(),
            Self::SetHit(_) => "Change hit".into(),
            Self::SetLimits(_) => "Change limits".into(),
            Self::SetKeepOuts(_) => "Change keep-outs".into(),
            Self::SetTolerances(_) => "Change tolerances".into(),
            Self::SetSetUp(_) => "Change set-up".into(),
            Self::PutPart(_, part) => format!("Put in {}", part.name),
            Self::TakeSurvey(points) => format!("Place {} surveyed points", points.len()),
            Self::Parts(edit) => edit.name(),
            Self::SetRideHeight(_) => "Change ride height".into(),
            Self::SetLock(c, true) => format!("Lock {c}"),
            Self::SetLock(c, false) => format!("Free {c}"),
            Self::SetPointLock(_, p, true) => format!("Lock {}", lower_first(p.label())),
            Self::SetPointLock(_, p, false) => format!("Free {}", lower_first(p.label())),
            Self::SetTitle(_) => "Change title".into(),
            Self::SetNotes(_) => "Change notes".into(),
            Self::ConvertUnit(LengthUnit::Inch) => "Convert to inches".into(),
            Self::ConvertUnit(LengthUnit::Millimetre) => "Convert to millimetres".into(),
            Self::SetRear(Some(_)) => "Add a rear axle".into(),
            Self::SetRear(None) => "Take the rear axle off".into(),
        }
    }

    /// The build with this change made.
    ///
    /// # Errors
    /// [`EditFault`] when the change can't be made or its result could not be used; an edit never makes a usable build unusable.
    pub fn apply(&self, build: &Build) -> Result<Build, EditFault> {
        let mut next = build.clone();
        match self {
            Self::MovePoint { point, to } => move_point(&mut next, *point, *to)?,
            Self::MoveRack { point, to } => move_rack(&mut next, *point, *to)?,
            Self::MovePoints(points) => {
                for (point, to) in points {
                    move_point(&mut next, *point, *to)?;
                }
            }
            Self::SeparateRight(axle, point) => {
                let at = PointRef {
                    axle: *axle,
                    side: Side::Right,
                    point: *point,
                };
                let here = next.point(at).ok_or_else(|| missing(at))?;
                axle_mut(&mut next, *axle)?.right.insert(*point, here);
            }
            Self::MirrorLeft(axle, point) => {
                axle_mut(&mut next, *axle)?.right.remove(point);
            }
            Self::MirrorAll(axle) => axle_mut(&mut next, *axle)?.right.clear(),
            Self::SetWheel(axle, wheel) => axle_mut(&mut next, *axle)?.wheel = *wheel,
            Self::SetTravel(axle, travel) => axle_mut(&mut next, *axle)?.travel = *travel,
            Self::SetSpring(axle, spring) => set_spring(axle_mut(&mut next, *axle)?, *spring),
            Self::SetRack(rack) => next.front.rack = *rack,
            Self::SetRackEnd(end) => next.front.rack_end = end.clone(),
            Self::SetJointBolts(axle, bolts) => axle_mut(&mut next, *axle)?.joint_bolts = *bolts,
            Self::SetVehicle(vehicle) => next.vehicle = *vehicle,
            Self::SetHit(hit) => next.hit = *hit,
            Self::SetLimits(limits) => next.limits = *limits,
            Self::SetKeepOuts(keep_outs) => next.keep_outs.clone_from(keep_outs),
            Self::SetTolerances(tolerances) => next.tolerances.clone_from(tolerances),
            Self::SetSetUp(set_up) => next.set_up.clone_from(set_up),
            Self::PutPart(axle, part) => crate::measured::put(&mut next, *axle, part)?,
            Self::TakeSurvey(points) => {
                for (point, to, known) in points {
                    move_point(&mut next, *point, *to)?;
                    next.set_up.surveyed.insert(*point, *known);
                }
            }
            Self::Parts(edit) => edit.apply(&mut next)?,
            Self::SetRideHeight(height) => set_ride_height(&mut next, height),
            Self::SetLock(coordinate, locked) => set_lock(&mut next.locked, *coordinate, *locked),
            Self::SetPointLock(axle, point, locked) => {
                for axis in Axis::ALL {
                    set_lock(
                        &mut next.locked,
                        Coordinate {
                            axle: *axle,
                            point: *point,
                            axis,
                        },
                        *locked,
                    );
                }
            }
            Self::SetTitle(title) => next.title.clone_from(title),
            Self::SetNotes(notes) => next.notes.clone_from(notes),
            Self::ConvertUnit(unit) => next = crate::convert::to_unit(build, *unit),
            Self::SetRear(rear) => next.rear = rear.as_deref().cloned(),
        }
        match next.faults().into_iter().next() {
            Some(fault) if build.faults().is_empty() => Err(fault.into()),
            _ => Ok(next),
        }
    }
}

fn move_point(build: &mut Build, at: PointRef, to: Triple) -> Result<(), EditFault> {
    let here = build.point(at).ok_or_else(|| missing(at))?;
    for axis in Axis::ALL {
        let coordinate = Coordinate {
            axle: at.axle,
            point: at.point,
            axis,
        };
        if here[axis.index()] != to[axis.index()] && build.locked.contains(&coordinate) {
            return Err(EditFault::Locked(coordinate));
        }
    }
    // A point that is moved is no longer where it was surveyed.
    build.set_up.surveyed.remove(&at);
    let own = build.has_own_right_point(at.axle, at.point);
    if at.side == Side::Right && !own {
        let twin = PointRef::left(at.axle, at.point);
        build.set_up.surveyed.remove(&twin);
    }
    let spec = axle_mut(build, at.axle)?;
    if at.side == Side::Right
        && let Some(own) = spec.right.get_mut(&at.point)
    {
        *own = to;
        return Ok(());
    }
    let left = if at.side == Side::Right {
        mirror(to)
    } else {
        to
    };
    if spec.set_left_point(at.point, left) {
        Ok(())
    } else {
        Err(missing(at))
    }
}

fn set_ride_height(build: &mut Build, height: &RideHeight) {
    build.front.clone_from(&height.front);
    build.rear.clone_from(&height.rear);
    build.vehicle = height.vehicle;
    build.keep_outs.clone_from(&height.keep_outs);
}

/// Moves the inner joint, and the rack's own points by what of that lies across the rack. Points that were left out follow the joint by
/// themselves.
fn move_rack(build: &mut Build, at: PointRef, to: Triple) -> Result<(), EditFault> {
    let here = build.point(at).ok_or_else(|| missing(at))?;
    move_point(build, at, to)?;
    let spec = build.axle_spec(at.axle).ok_or_else(|| missing(at))?;
    let direction = spec.rack.direction();
    let moved = Vector::new(to[0] - here[0], to[1] - here[1], to[2] - here[2]);
    // What is less than a billionth of a unit is rounding.
    let across =
        (moved - direction * direction.dot(&moved)).map(|v| if v.abs() < 1e-9 { 0.0 } else { v });
    let typed = [
        (PointName::RackFace, spec.rack.face),
        (PointName::RackBoreMouth, spec.rack.bore_mouth),
    ];
    for (point, place) in typed {
        // Sums are rounded far below what a shop can measure, so that no float dust shows.
        let tidy = |v: f64| (v * 1e7).round() / 1e7;
        let shifted = |[x, y, z]: Triple, v: Vector| [tidy(x + v.x), tidy(y + v.y), tidy(z + v.z)];
        if let Some(place) = place {
            let v = at.side.way_in_vehicle(across);
            move_point(
                build,
                PointRef {
                    point,
                    side: Side::Left,
                    ..at
                },
                shifted(place, v),
            )?;
        }
        let own = build
            .axle_spec(at.axle)
            .and_then(|s| s.right.get(&point).copied());
        if let Some(place) = own {
            let v = if at.side == Side::Left {
                mirror_vector(across)
            } else {
                across
            };
            move_point(
                build,
                PointRef {
                    point,
                    side: Side::Right,
                    ..at
                },
                shifted(place, v),
            )?;
        }
    }
    Ok(())
}

fn set_spring(spec: &mut AxleSpec, spring: Option<SpringSpec>) {
    if spring.is_none() {
        spec.right.remove(&PointName::SpringChassisMount);
        spec.right.remove(&PointName::SpringArmMount);
    }
    spec.spring = spring;
}

fn set_lock(locks: &mut BTreeSet<Coordinate>, coordinate: Coordinate, locked: bool) {
    if locked {
        locks.insert(coordinate);
    } else {
        locks.remove(&coordinate);
    }
}

fn axle_mut(build: &mut Build, axle: AxleName) -> Result<&mut AxleSpec, EditFault> {
    build
        .axle_spec_mut(axle)
        .ok_or_else(|| EditFault::Missing(format!("{} axle", axle.word())))
}

fn missing(at: PointRef) -> EditFault {
    EditFault::Missing(format!("{}.{}", at.axle.word(), at.point.path()))
}

fn on_axle(at: PointRef) -> String {
    let side = if at.side == Side::Right {
        ", right"
    } else {
        ""
    };
    let axle = if at.axle == AxleName::Rear {
        ", rear"
    } else {
        ""
    };
    format!("{axle}{side}")
}

fn lower_first(label: &str) -> String {
    let mut letters = label.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_lowercase().chain(letters).collect()
    })
}
