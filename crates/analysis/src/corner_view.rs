//! One corner with what the checks need, and what they read at a pose.

use trammel_build::{
    AxleModel, BoltAxis, Build, HitPoint, JointBolts, RackEndPlace, Side, TravelRange, defaults,
};
use trammel_geometry::{Linkage, Point, Pose, Vector, mirror_point, mirror_vector};
use trammel_strength::force::{TieRod, UprightLoad};
use trammel_tuning::{TieRodJoint, rod_seen};

/// A corner in the left-hand frame: a right one is seen in the mirror of the centre plane.
#[derive(Clone, Copy, Debug)]
pub(crate) struct CornerView {
    pub linkage: Linkage,
    pub side: Side,
    /// Travel between the stops, mm.
    pub travel: TravelRange,
    /// Rack travel each way, mm; nought without a rack.
    pub lock: f64,
    /// This side's rack end, in the same frame.
    pub rack_end: Option<RackEndPlace>,
    pub hit: HitForce,
    rod_at_design: Vector,
    /// Rack direction on the side where the tie rod stands.
    outward: Option<Vector>,
    outer_lift_at_design: f64,
    bolts: JointBolts,
}

/// The force that the rack end is checked against.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct HitForce {
    /// N, on the left wheel.
    pub force: Vector,
    pub at: HitPoint,
}

/// What the checks read at a pose. Angles in rad.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Reading {
    /// Wheel travel, mm.
    pub travel: f64,
    /// Rack travel, mm.
    pub rack: f64,
    /// Unit vector along the tie rod, inner to outer joint.
    pub rod: Vector,
    /// Tension in the tie rod under the hit, N; `None` where the rod can't hold the wheel.
    pub tension: Option<f64>,
    /// Between tie rod and rack.
    pub rod_angle: f64,
    /// The same as the upright sees it, standing as at the design position.
    pub rod_on_upright: Vector,
    /// Of the tie rod out of the plane square to the inner joint's bolt; where its direction is not known, from its design direction, seen from the
    /// chassis.
    pub inner_swivel: f64,
    /// Of the tie rod out of the plane square to the outer joint's bolt; where its direction is not known, out of the plane square to the steering
    /// axis, from its design lean, seen from the upright.
    pub outer_swivel: f64,
    /// Between tie rod and steering arm, seen along the steering axis.
    pub steering: f64,
    /// Between upper arm and upright, or between the lower ball joint's path and the ground: the smaller.
    pub toggle: f64,
}

impl HitForce {
    /// The build's hit, with the defaults of crate build.
    pub(crate) fn of(build: &Build) -> Self {
        let [x, y, z] = build.hit.direction.unwrap_or(defaults::HIT_DIRECTION);
        let direction = Vector::new(x, y, z)
            .try_normalize(0.0)
            .unwrap_or_else(Vector::zeros);
        let weights = build.hit.weights.unwrap_or(defaults::HIT_WEIGHTS);
        Self {
            force: direction * (weights * build.weight_n()),
            at: build.hit.at.unwrap_or(HitPoint::WheelCentre),
        }
    }

    /// Where it acts at a pose.
    pub(crate) fn point(&self, pose: &Pose) -> Point {
        match self.at {
            HitPoint::WheelCentre => pose.wheel_centre,
            HitPoint::Contact => pose.contact,
        }
    }
}

impl CornerView {
    /// A side of an axle.
    pub(crate) fn of(model: &AxleModel, side: Side, hit: HitForce) -> Self {
        let rack_end = model.rack.map(|rack| match side {
            Side::Left => rack.left,
            Side::Right => RackEndPlace {
                outward: mirror_vector(rack.right.outward),
                face: mirror_point(rack.right.face),
                bore_mouth: mirror_point(rack.right.bore_mouth),
                joint: mirror_point(rack.right.joint),
            },
        });
        Self::new(
            model.linkage(side),
            side,
            model.travel,
            model.lock(),
            rack_end,
            hit,
        )
        .with_bolts(model.joint_bolts)
    }

    /// The same corner with its joints' bolts standing otherwise.
    pub(crate) fn with_bolts(self, bolts: JointBolts) -> Self {
        Self { bolts, ..self }
    }

    fn new(
        linkage: &Linkage,
        side: Side,
        travel: TravelRange,
        lock: f64,
        rack_end: Option<RackEndPlace>,
        hit: HitForce,
    ) -> Self {
        let corner = linkage.corner();
        let rod = direction(corner.tie_rod.outer - corner.tie_rod.inner);
        let axis = direction(corner.upper_arm.ball_joint - corner.lower_arm.ball_joint);
        Self {
            linkage: *linkage,
            side,
            travel,
            lock,
            rack_end,
            hit,
            rod_at_design: rod,
            outward: corner
                .rack_axis
                .map(|axis| direction(axis) * 1.0_f64.copysign(axis.dot(&rod))),
            outer_lift_at_design: lean(rod, axis),
            bolts: JointBolts::default(),
        }
    }

    /// The same with another linkage and rack end.
    pub(crate) fn with_linkage(&self, linkage: &Linkage, rack_end: Option<RackEndPlace>) -> Self {
        Self::new(
            linkage,
            self.side,
            self.travel,
            self.lock,
            rack_end,
            self.hit,
        )
        .with_bolts(self.bolts)
    }

    /// The same corner with the rack, its end and the inner joint moved by `by` mm; `None` where that makes no linkage.
    pub(crate) fn with_rack_moved(&self, by: Vector) -> Option<Self> {
        let mut corner = *self.linkage.corner();
        corner.tie_rod.inner += by;
        let linkage = Linkage::new(&corner).ok()?;
        let rack_end = self.rack_end.map(|end| RackEndPlace {
            face: end.face + by,
            bore_mouth: end.bore_mouth + by,
            joint: end.joint + by,
            ..end
        });
        Some(self.with_linkage(&linkage, rack_end))
    }

    /// What the checks read at a pose; `None` out of reach.
    pub(crate) fn reading_at(&self, travel: f64, rack: f64) -> Option<Reading> {
        self.linkage
            .pose(travel, rack)
            .ok()
            .map(|pose| self.reading(&pose))
    }

    pub(crate) fn reading(&self, pose: &Pose) -> Reading {
        let rod = direction(pose.tie_rod_outer - pose.tie_rod_inner);
        let on_upright = rod_seen(&self.linkage, pose, TieRodJoint::Outer);
        let toggle = pose.margins.upper_arm.min(pose.margins.lift);
        Reading {
            travel: pose.travel,
            rack: pose.rack,
            rod,
            tension: self.rack_end.and_then(|_| self.tension(pose)),
            rod_angle: self.outward.map_or(0.0, |axis| between(axis, rod)),
            rod_on_upright: on_upright,
            inner_swivel: match self.bolts.inner {
                Some(bolt) => tilt(bolt, rod),
                None => between(self.rod_at_design, rod),
            },
            outer_swivel: match self.bolts.outer {
                Some(bolt) => tilt(bolt, on_upright),
                None => (lean(rod, pose.steering_axis) - self.outer_lift_at_design).abs(),
            },
            steering: pose.margins.steering.clamp(0.0, 1.0).asin(),
            toggle: toggle.clamp(0.0, 1.0).asin(),
        }
    }

    fn tension(&self, pose: &Pose) -> Option<f64> {
        let rod = TieRod::new(
            pose.lower_ball_joint,
            pose.upper_ball_joint,
            pose.tie_rod_inner,
            pose.tie_rod_outer,
        )
        .ok()?;
        let load = UprightLoad::force_at(self.hit.point(pose), self.hit.force).ok()?;
        Some(rod.tension_under(&load)).filter(|t| t.is_finite())
    }

    /// Rack travel outboard on this side, mm, at a rack travel to the vehicle's left.
    pub(crate) fn outboard(&self, rack: f64) -> f64 {
        match self.side {
            Side::Left => rack,
            Side::Right => -rack,
        }
    }
}

impl Reading {
    /// Force of the tie rod on the inner joint under the hit, N.
    pub(crate) fn force_on_joint(&self) -> Option<Vector> {
        self.tension.map(|tension| self.rod * tension)
    }

    /// Tilt that a bolt standing so would see in a joint, rad: the rod's angle out of the plane square to it.
    pub(crate) fn tilt_on(&self, bolt: BoltAxis, joint: TieRodJoint) -> f64 {
        match joint {
            TieRodJoint::Inner => tilt(bolt, self.rod),
            TieRodJoint::Outer => tilt(bolt, self.rod_on_upright),
        }
    }
}

fn direction(v: Vector) -> Vector {
    v.try_normalize(0.0).unwrap_or_else(Vector::zeros)
}

/// Angle between two directions, rad.
fn between(a: Vector, b: Vector) -> f64 {
    a.cross(&b).norm().atan2(a.dot(&b))
}

fn tilt(bolt: BoltAxis, rod: Vector) -> f64 {
    lean(rod, bolt.direction()).abs()
}

/// Angle of a unit vector out of the plane square to a unit axis, rad.
fn lean(v: Vector, axis: Vector) -> f64 {
    v.dot(&axis).clamp(-1.0, 1.0).asin()
}
