//! Figures that a build may not hold.

use crate::{
    AxleName, AxleSpec, BoltAxis, Build, BuildFault, MadeBy, PointName, RackEndSpec, RackSpec,
    Side, Triple,
};

/// Figures beyond this are no vehicle's; the bound keeps what is computed from them far from overflow.
pub(crate) const LARGEST: f64 = 1e6;
pub(crate) const POSITIVE: &str = "a number above nought and at most a million";
pub(crate) const NOUGHT_OR_MORE: &str = "nought or more, and at most a million";

impl Build {
    /// Everything that is wrong with this build; empty when it can be used whole.
    #[must_use]
    pub fn faults(&self) -> Vec<BuildFault> {
        let mut faults: Vec<BuildFault> = self.check_vehicle().into_iter().collect();
        faults.extend(self.check_keep_outs());
        faults.extend(self.check_tolerances());
        faults.extend(crate::set_up::check(&self.set_up));
        faults.extend(self.check_proving());
        faults.extend(self.shop.check());
        faults.extend(self.axle(AxleName::Front).err());
        if self.rear.is_some() {
            faults.extend(self.axle(AxleName::Rear).err());
        }
        faults
    }

    fn check_vehicle(&self) -> Option<BuildFault> {
        let v = &self.vehicle;
        let l = &self.limits;
        let share = v.front_share.filter(|s| !(*s > 0.0 && *s < 1.0));
        if let Some(found) = share {
            return Some(figure(
                "vehicle.front_share".into(),
                found,
                "a share between 0 and 1, such as 0.45",
            ));
        }
        let positive = [
            ("vehicle.wheelbase", v.wheelbase),
            ("vehicle.mass", v.mass.map(crate::Mass::kg)),
            (
                "vehicle.centre_of_gravity_height",
                v.centre_of_gravity_height,
            ),
            ("hit.weights", self.hit.weights),
            ("limits.toe_change_deg", l.toe_change_deg),
            ("limits.tie_rod_angle_deg", l.tie_rod_angle_deg),
            ("limits.joint_angle_deg", l.joint_angle_deg),
            ("limits.rack_end_factor", l.rack_end_factor),
            ("limits.lock_over_deg", l.lock_over_deg),
            ("limits.strength_factor", l.strength_factor),
            ("limits.clearance", l.clearance),
            ("limits.rack_end_toe_deg", l.rack_end_toe_deg),
            ("limits.hand_force", l.hand_force.map(crate::Force::n)),
            ("limits.kick_back", l.kick_back.map(crate::Force::n)),
        ];
        for (path, value) in positive {
            if let Some(found) = value.filter(|v| !is_positive(*v)) {
                return Some(figure(path.into(), found, POSITIVE));
            }
        }
        let direction = self.hit.direction;
        if let Some(Err(far)) = direction.map(|d| check_place("hit.direction".into(), d)) {
            return Some(far);
        }
        if direction.is_some_and(|d| !has_direction(d)) {
            return Some(BuildFault::Figure {
                path: "hit.direction".into(),
                found: "no direction".into(),
                expected: "three numbers, not all nought",
            });
        }
        None
    }

    fn check_keep_outs(&self) -> Option<BuildFault> {
        let fault = |number: usize, what: &str, found: String, expected| BuildFault::Figure {
            path: format!("keep_outs.{number}.{what}"),
            found,
            expected,
        };
        self.keep_outs.iter().zip(1..).find_map(|(k, number)| {
            let corners = || format!("{:?}", k.numbers());
            if k.name.trim().is_empty() {
                Some(fault(
                    number,
                    "name",
                    "empty".into(),
                    "what is there, such as \"engine\"",
                ))
            } else if !k.numbers().iter().all(|v| v.abs() <= LARGEST) {
                Some(fault(
                    number,
                    "corners",
                    corners(),
                    "numbers of at most a million",
                ))
            } else if !k.extents().iter().all(|v| *v > 0.0) {
                let expected = "two opposite corners that differ in every coordinate";
                Some(fault(number, "corners", corners(), expected))
            } else {
                None
            }
        })
    }

    fn check_tolerances(&self) -> Option<BuildFault> {
        let t = &self.tolerances;
        let own = |made: Option<&MadeBy>| match made {
            Some(MadeBy::Deviation(v)) => Some(*v),
            _ => None,
        };
        let classes = [
            ("jig_drilled", t.jig_drilled),
            ("tape", t.tape),
            ("hand_held", t.hand_held),
            ("usual", own(t.usual.as_ref())),
        ];
        let points = t.points.values().chain(t.coordinates.values()).zip(1..);
        classes
            .into_iter()
            .map(|(name, v)| (name.to_owned(), v))
            .chain(points.map(|(made, n)| (format!("points.{n}.made"), own(Some(made)))))
            .find_map(|(path, v)| {
                let found = v.filter(|v| !(0.0..=LARGEST).contains(v))?;
                Some(figure(format!("tolerances.{path}"), found, NOUGHT_OR_MORE))
            })
    }

    pub(crate) fn check_axle(&self, name: AxleName, spec: &AxleSpec) -> Result<(), BuildFault> {
        let axle = name.word();
        let spring = spec.spring.as_ref();
        let positive = [
            ("travel.bump", spec.travel.map(|t| t.bump)),
            ("travel.droop", spec.travel.map(|t| t.droop)),
            ("rack.travel", spec.rack.travel),
            ("rack.travel_per_turn", spec.rack.travel_per_turn),
            ("rack_end.engagement", spec.rack_end.engagement),
            ("rack_end.bar_diameter", spec.rack_end.bar_diameter),
            ("rack_end.bore_depth", spec.rack_end.bore_depth),
            ("rack_end.hard_to", spec.rack_end.hard_to),
            ("spring.open_length", spring.and_then(|s| s.open_length)),
            ("spring.closed_length", spring.and_then(|s| s.closed_length)),
            (
                "spring.rate",
                spring.and_then(|s| s.rate).map(crate::SpringRate::n_per_mm),
            ),
        ];
        for (path, value) in positive {
            if let Some(found) = value.filter(|v| !is_positive(*v)) {
                return Err(figure(format!("{axle}.{path}"), found, POSITIVE));
            }
        }
        if let Some(found) = spec
            .rack_end
            .jam_nut
            .filter(|v| !(0.0..=LARGEST).contains(v))
        {
            return Err(figure(
                format!("{axle}.rack_end.jam_nut"),
                found,
                NOUGHT_OR_MORE,
            ));
        }
        let lengths = spring.and_then(|s| s.open_length.zip(s.closed_length));
        if let Some((_, closed)) = lengths.filter(|(open, closed)| closed >= open) {
            return Err(figure(
                format!("{axle}.spring.closed_length"),
                closed,
                "less than spring.open_length",
            ));
        }
        crate::parts::check_parts(name, spec)?;
        check_bolts(name, spec)?;
        check_rack(name, spec)?;
        check_right(name, spec)
    }
}

fn check_bolts(name: AxleName, spec: &AxleSpec) -> Result<(), BuildFault> {
    let bolts = [
        ("inner", spec.joint_bolts.inner),
        ("outer", spec.joint_bolts.outer),
    ];
    for (joint, bolt) in bolts {
        let path = || format!("{}.joint_bolts.{joint}", name.word());
        if let Some(BoltAxis::Direction(direction)) = bolt {
            check_place(path(), direction)?;
            if !has_direction(direction) {
                return Err(BuildFault::Figure {
                    path: path(),
                    found: "no direction".into(),
                    expected: "three numbers, not all nought",
                });
            }
        }
    }
    Ok(())
}

fn check_rack(name: AxleName, spec: &AxleSpec) -> Result<(), BuildFault> {
    if name == AxleName::Rear {
        let given = [
            ("rack", spec.rack != RackSpec::default()),
            ("rack_end", spec.rack_end != RackEndSpec::default()),
        ];
        return match given.into_iter().find(|(_, given)| *given) {
            Some((what, _)) => Err(BuildFault::OutOfPlace {
                path: format!("rear.{what}"),
                reason: "the rear tie rod ends on the chassis, not on a rack",
            }),
            None => Ok(()),
        };
    }
    for (path, triple) in [
        ("rack.face", spec.rack.face),
        ("rack.bore_mouth", spec.rack.bore_mouth),
    ] {
        if let Some(found) = triple {
            check_place(format!("front.{path}"), found)?;
        }
    }
    if spec.rack.axis.is_some_and(|axis| !has_direction(axis)) {
        return Err(BuildFault::Corner {
            axle: name,
            side: Side::Left,
            fault: trammel_geometry::CornerFault::NoRackAxis,
        });
    }
    Ok(())
}

/// Points that stand out at the wheel can't be on the wrong side of the vehicle.
fn check_right(name: AxleName, spec: &AxleSpec) -> Result<(), BuildFault> {
    let outboard = [
        PointName::UpperBallJoint,
        PointName::LowerBallJoint,
        PointName::TieRodOuter,
        PointName::WheelCentre,
    ];
    for (point, at) in &spec.right {
        check_place(format!("{}.right.{point}", name.word()), *at)?;
    }
    for point in outboard {
        if let Some([_, y, _]) = spec.right.get(&point).filter(|t| t[1] > 0.0) {
            return Err(BuildFault::Figure {
                path: format!("{}.right.{}", name.word(), point.path()),
                found: format!("at y = {y}"),
                expected: "a negative y: y is positive to the left, and this is a right-hand point",
            });
        }
    }
    Ok(())
}

pub(crate) fn check_place(path: String, at: Triple) -> Result<(), BuildFault> {
    if at.iter().all(|v| v.abs() <= LARGEST) {
        return Ok(());
    }
    Err(BuildFault::Figure {
        path,
        found: format!("{at:?}"),
        expected: "three numbers of at most a million",
    })
}

pub(crate) fn has_direction(triple: Triple) -> bool {
    let square: f64 = triple.iter().map(|v| v * v).sum();
    square > 1e-18
}

pub(crate) fn is_positive(v: f64) -> bool {
    v > 0.0 && v <= LARGEST
}

pub(crate) fn figure(path: String, found: f64, expected: &'static str) -> BuildFault {
    BuildFault::Figure {
        path,
        found: found.to_string(),
        expected,
    }
}
