//! The two-line rule of the trade, and how far off it is.
//!
//! Seen from the front, in the plane across the car through the wheel centre: the inner joint belongs on the line
//! through the arms' inner pivots, the outer joint on
//! the line through the ball joints, and the tie rod aims at the arms' instant centre. Common practice, no source; it
//! ignores everything that is not in that plane.

use trammel_geometry::{Arm, Corner, Point, Vector};

use crate::TieRodJoint;

/// A place in the front view, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FrontPoint {
    /// Outboard, mm.
    pub y: f64,
    /// Up, mm.
    pub z: f64,
}

/// The lines of the rule and the joint they give.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TwoLineRule {
    /// Where the plane cuts the upper and the lower arm's pivot axis.
    pub pivots: [FrontPoint; 2],
    /// Upper and lower ball joint.
    pub ball_joints: [FrontPoint; 2],
    /// Where the two arms' planes meet in the plane; `None` where they are parallel.
    pub instant_centre: Option<FrontPoint>,
    /// The rule's inner joint for the outer joint as it is: on the line through the pivots, seen from the outer joint
    /// towards the instant centre. Its x is the
    /// present inner joint's.
    pub inner: Point,
    /// The same with the tie rod as long in this view as the line through ball joints and the line through pivots are
    /// apart: differs where the outer joint is off
    /// the line through the ball joints.
    pub inner_by_length: Point,
    /// The rule's outer joint for the inner joint as it is: on the line through the ball joints, seen from the inner
    /// joint away from the instant centre or towards it. Its x is the present outer joint's.
    pub outer: Point,
    /// How far outboard of the line through the ball joints the outer joint stands, along the tie rod in this view, mm.
    pub outer_off_line: f64,
}

/// The rule for a corner. `None` when its lines don't meet.
#[must_use]
pub fn two_line_rule(corner: &Corner) -> Option<TwoLineRule> {
    let station = corner.wheel.centre.x;
    let arms = [&corner.upper_arm, &corner.lower_arm];
    let [upper_pivot, lower_pivot] = arms.map(|a| pivot_at(a, station));
    let pivots = [upper_pivot?, lower_pivot?];
    let ball_joints = arms.map(|a| front(a.ball_joint));
    let traces = arms.map(trace);
    let outer = front(corner.tie_rod.outer);
    let [upper, lower] = pivots;
    let centre = meet(upper, traces[0], lower, traces[1]);
    // Parallel arms have their centre endlessly far away in their own direction.
    let aim_from = |p: FrontPoint| match centre {
        Some(c) => [c.y - p.y, c.z - p.z],
        None => traces[1],
    };
    let aim = aim_from(outer);
    let on_pivots = meet(outer, aim, upper, between(upper, lower))?;
    let [upper_ball, lower_ball] = ball_joints;
    let on_balls = meet(outer, aim, upper_ball, between(upper_ball, lower_ball))?;
    let inner = front(corner.tie_rod.inner);
    let ball_line = between(upper_ball, lower_ball);
    let from_inner = meet(inner, aim_from(inner), upper_ball, ball_line)?;
    let at = |p: FrontPoint| Point::new(corner.tie_rod.inner.x, p.y, p.z);
    let off = [outer.y - on_balls.y, outer.z - on_balls.z];
    Some(TwoLineRule {
        pivots,
        ball_joints,
        instant_centre: centre,
        inner: at(on_pivots),
        inner_by_length: at(FrontPoint {
            y: on_pivots.y + off[0],
            z: on_pivots.z + off[1],
        }),
        outer: Point::new(corner.tie_rod.outer.x, from_inner.y, from_inner.z),
        outer_off_line: off[0].hypot(off[1]) * off[0].signum(),
    })
}

impl TwoLineRule {
    /// Where the rule puts a joint, the other one held.
    #[must_use]
    pub fn place(&self, joint: TieRodJoint) -> Point {
        match joint {
            TieRodJoint::Inner => self.inner,
            TieRodJoint::Outer => self.outer,
        }
    }
}

fn front(p: Point) -> FrontPoint {
    FrontPoint { y: p.y, z: p.z }
}

fn between(a: FrontPoint, b: FrontPoint) -> [f64; 2] {
    [b.y - a.y, b.z - a.z]
}

/// Where an arm's pivot axis goes through the plane across the car at a station.
fn pivot_at(arm: &Arm, station: f64) -> Option<FrontPoint> {
    let axis = arm.front_pivot - arm.rear_pivot;
    let part = (station - arm.rear_pivot.x) / axis.x;
    let p = arm.rear_pivot + axis * part;
    (axis.x.abs() > 1e-6 && p.coords.amax() < 1e6).then(|| front(p))
}

/// Direction in which the plane of an arm cuts a plane across the car.
fn trace(arm: &Arm) -> [f64; 2] {
    let normal: Vector =
        (arm.front_pivot - arm.rear_pivot).cross(&(arm.ball_joint - arm.rear_pivot));
    [normal.z, -normal.y]
}

/// Where two lines in the front view meet; `None` for parallel ones or a place beyond all sense.
fn meet(p: FrontPoint, u: [f64; 2], q: FrontPoint, v: [f64; 2]) -> Option<FrontPoint> {
    let cross = u[0] * v[1] - u[1] * v[0];
    if !(cross.abs() > 1e-9 * u[0].hypot(u[1]) * v[0].hypot(v[1])) {
        return None;
    }
    let part = ((q.y - p.y) * v[1] - (q.z - p.z) * v[0]) / cross;
    Some(FrontPoint {
        y: p.y + u[0] * part,
        z: p.z + u[1] * part,
    })
}
