//! A build in the kernel's units, with defaults filled in and everything checked.

use trammel_geometry::{
    Arm, Axle, Corner, Linkage, Point, Spring, TieRod, Vector, Wheel, travel_for_spring_length,
};

use crate::{
    AxleName, AxleSpec, Build, BuildFault, JointBolts, PointName, PointRef, Side, access::point_mm,
    defaults,
};

/// An axle ready for the kernel: mm, rad, vehicle axes.
#[derive(Clone, Copy, Debug)]
pub struct AxleModel {
    /// Which axle.
    pub name: AxleName,
    /// Both corners, the right one in the mirror.
    pub axle: Axle,
    /// The rack of a steered axle.
    pub rack: Option<RackModel>,
    /// Travel between the stops.
    pub travel: TravelRange,
    /// Spring rate, N/mm, where it is known.
    pub spring_rate: Option<f64>,
    /// Which way the bolts of the tie-rod joints stand on the left; mirrored on the right.
    pub joint_bolts: JointBolts,
}

/// Wheel travel between the stops, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TravelRange {
    /// Lowest, negative or nought.
    pub droop: f64,
    /// Highest, positive or nought.
    pub bump: f64,
    /// What ends the travel in droop.
    pub droop_stop: Stop,
    /// What ends the travel in bump.
    pub bump_stop: Stop,
}

/// What ends the wheel's travel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stop {
    /// The travel that the build asks for.
    Wanted,
    /// The spring unit's open or closed length.
    Spring,
    /// The default, since the build says nothing.
    Default,
}

/// A rack in the kernel's units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RackModel {
    /// Unit direction, positive to the left.
    pub axis: Vector,
    /// Travel each way, mm.
    pub travel: f64,
    /// Rack travel for one pinion turn, mm.
    pub travel_per_turn: f64,
    /// Left and right ends.
    pub left: RackEndPlace,
    /// The right end, in vehicle axes.
    pub right: RackEndPlace,
}

/// Where one end of the rack is, vehicle axes, mm, the rack at centre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RackEndPlace {
    /// Unit direction along the rack pointing out of the housing.
    pub outward: Vector,
    /// Centre of the bar's end face.
    pub face: Point,
    /// Where the bar leaves the housing.
    pub bore_mouth: Point,
    /// Inner tie-rod joint.
    pub joint: Point,
}

impl RackEndPlace {
    /// Distance from the face to the joint along the rack, mm.
    #[must_use]
    pub fn free_length(&self) -> f64 {
        self.outward.dot(&(self.joint - self.face))
    }

    /// What the joint stands off the rack's own line, mm: drop and set-back of a bracket.
    #[must_use]
    pub fn bracket_offset(&self) -> Vector {
        (self.joint - self.face) - self.outward * self.free_length()
    }
}

impl RackModel {
    /// The end on a side.
    #[must_use]
    pub fn end(&self, side: Side) -> &RackEndPlace {
        match side {
            Side::Left => &self.left,
            Side::Right => &self.right,
        }
    }

    /// Turns of the steering wheel from lock to lock.
    #[must_use]
    pub fn turns_lock_to_lock(&self) -> f64 {
        2.0 * self.travel / self.travel_per_turn
    }
}

impl AxleModel {
    /// The linkage of a side; the right one is in the mirror.
    #[must_use]
    pub fn linkage(&self, side: Side) -> &Linkage {
        match side {
            Side::Left => &self.axle.left,
            Side::Right => &self.axle.right_mirrored,
        }
    }

    /// Rack travel each way, mm; nought where there is no rack.
    #[must_use]
    pub fn lock(&self) -> f64 {
        self.rack.map_or(0.0, |r| r.travel)
    }
}

impl Build {
    /// An axle in the kernel's units.
    ///
    /// # Errors
    /// The first [`BuildFault`] that keeps it from being one.
    pub fn axle(&self, name: AxleName) -> Result<AxleModel, BuildFault> {
        let spec = self
            .axle_spec(name)
            .ok_or(BuildFault::NoAxle { axle: name })?;
        self.check_axle(name, spec)?;
        let linkage = |side| {
            Linkage::new(&self.corner(name, spec, side)).map_err(|fault| BuildFault::Corner {
                axle: name,
                side,
                fault,
            })
        };
        let axle = Axle {
            left: linkage(Side::Left)?,
            right_mirrored: linkage(Side::Right)?,
        };
        Ok(AxleModel {
            name,
            axle,
            rack: (name == AxleName::Front).then(|| self.rack(spec)),
            travel: self.travel_range(spec, &axle.left),
            spring_rate: spec
                .spring
                .and_then(|s| s.rate)
                .map(crate::SpringRate::n_per_mm),
            joint_bolts: spec.joint_bolts,
        })
    }

    /// A corner in the kernel's frame: the right side seen in the mirror.
    fn corner(&self, name: AxleName, spec: &AxleSpec, side: Side) -> Corner {
        // Every point asked for here is in the file's required part, so the fallback never shows; it is refused by the kernel's checks.
        let at = |point| {
            let p = self
                .point_mm(PointRef {
                    axle: name,
                    side,
                    point,
                })
                .unwrap_or(Point::new(f64::NAN, f64::NAN, f64::NAN));
            side.place_in_vehicle(p)
        };
        let arm = |front, rear, ball| Arm {
            front_pivot: at(front),
            rear_pivot: at(rear),
            ball_joint: at(ball),
        };
        let axis = spec.rack.direction();
        Corner {
            upper_arm: arm(
                PointName::UpperFrontPivot,
                PointName::UpperRearPivot,
                PointName::UpperBallJoint,
            ),
            lower_arm: arm(
                PointName::LowerFrontPivot,
                PointName::LowerRearPivot,
                PointName::LowerBallJoint,
            ),
            tie_rod: TieRod {
                inner: at(PointName::TieRodInner),
                outer: at(PointName::TieRodOuter),
            },
            wheel: Wheel {
                centre: at(PointName::WheelCentre),
                loaded_radius: spec.wheel.loaded_radius * self.unit.mm(),
                toe: spec.wheel.toe_deg.to_radians(),
                camber: spec.wheel.camber_deg.to_radians(),
            },
            spring: spec.spring.map(|s| Spring {
                arm: s.arm,
                chassis_mount: at(PointName::SpringChassisMount),
                arm_mount: at(PointName::SpringArmMount),
            }),
            rack_axis: (name == AxleName::Front).then(|| side.way_in_vehicle(axis)),
        }
    }

    fn rack(&self, spec: &AxleSpec) -> RackModel {
        let axis = spec.rack.direction();
        let mm = |typed: Option<f64>, default| typed.map_or(default, |v| v * self.unit.mm());
        let end = |side, outward: Vector| {
            let at = |point| {
                let at = PointRef {
                    axle: AxleName::Front,
                    side,
                    point,
                };
                self.point_mm(at)
                    .unwrap_or_else(|| point_mm(spec.tie_rod.inner, self.unit))
            };
            RackEndPlace {
                outward,
                face: at(PointName::RackFace),
                bore_mouth: at(PointName::RackBoreMouth),
                joint: at(PointName::TieRodInner),
            }
        };
        RackModel {
            axis,
            travel: mm(spec.rack.travel, defaults::RACK_TRAVEL_MM),
            travel_per_turn: mm(spec.rack.travel_per_turn, defaults::RACK_TRAVEL_PER_TURN_MM),
            left: end(Side::Left, axis),
            right: end(Side::Right, -axis),
        }
    }

    /// The earliest stop each way: wanted travel, spring lengths, or the default where the build gives neither.
    fn travel_range(&self, spec: &AxleSpec, left: &Linkage) -> TravelRange {
        let mut ends: [Option<(f64, Stop)>; 2] = [None, None];
        let mut offer = |travel: f64, stop| {
            let end = &mut ends[usize::from(travel > 0.0)];
            if end.is_none_or(|(t, _)| travel.abs() < t.abs()) {
                *end = Some((travel, stop));
            }
        };
        if let Some(t) = spec.travel {
            offer(t.bump * self.unit.mm(), Stop::Wanted);
            offer(-t.droop * self.unit.mm(), Stop::Wanted);
        }
        let lengths = spec
            .spring
            .map_or([None, None], |s| [s.open_length, s.closed_length]);
        for length in lengths.into_iter().flatten() {
            // A member that runs out first is no stop: it is reported as out of reach where the travel is used.
            if let Ok(Some(travel)) = travel_for_spring_length(left, length * self.unit.mm()) {
                offer(travel, Stop::Spring);
            }
        }
        let [droop, bump] = ends;
        let (droop, droop_stop) = droop.unwrap_or((-defaults::TRAVEL_EACH_WAY_MM, Stop::Default));
        let (bump, bump_stop) = bump.unwrap_or((defaults::TRAVEL_EACH_WAY_MM, Stop::Default));
        TravelRange {
            droop,
            bump,
            droop_stop,
            bump_stop,
        }
    }

    /// Wheelbase, mm.
    #[must_use]
    pub fn wheelbase_mm(&self) -> f64 {
        self.vehicle
            .wheelbase
            .map_or(defaults::WHEELBASE_MM, |v| v * self.unit.mm())
    }

    /// Weight of the vehicle, N.
    #[must_use]
    pub fn weight_n(&self) -> f64 {
        self.vehicle.mass.map_or(defaults::MASS_KG, crate::Mass::kg)
            * defaults::STANDARD_GRAVITY_M_S2
    }
}
