//! What a tie rod with one joint free asks of the upright: an expression that is straight in the free joint's place.
//!
//! With the tie rod's length set at the design position, `|outer - inner|^2` now less the same then must be nought.
//! The square of the free joint's own
//! place drops out of the difference, so at a given stance of the upright the rest is `constant + joint . (columns,
//! rows)`.

use trammel_geometry::{Corner, Point, Stance, Vector};

use super::frame::MapFrame;
use crate::TieRodJoint;

/// A value that is straight in a map's column and row, counted from its middle in halves of the map: -1 to 1.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Plane3 {
    pub constant: f64,
    pub across: f64,
    pub up: f64,
}

/// The free joint's grid with everything that the tie rod's length needs.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Rod {
    joint: TieRodJoint,
    inner: Point,
    outer: Point,
    rack_axis: Vector,
    /// Middle of the map from the joint's own place in the corner.
    middle: Vector,
    half_across: Vector,
    half_up: Vector,
}

impl Rod {
    pub(crate) fn new(corner: &Corner, joint: TieRodJoint, frame: &MapFrame) -> Self {
        let half = |n: usize| 0.5 * (n - 1) as f64;
        let (columns, rows) = (half(frame.columns()), half(frame.rows()));
        Self {
            joint,
            inner: corner.tie_rod.inner,
            outer: corner.tie_rod.outer,
            rack_axis: corner
                .rack_axis
                .and_then(|v| v.try_normalize(1e-9))
                .unwrap_or_else(Vector::zeros),
            middle: frame.place(columns, rows) - joint.place(corner),
            half_across: frame.across() * columns,
            half_up: frame.up() * rows,
        }
    }

    /// Inner and outer joint at the design position, the free one at `(a, b)`.
    pub(crate) fn joints(&self, a: f64, b: f64) -> (Point, Point) {
        let moved = self.middle + self.half_across * a + self.half_up * b;
        match self.joint {
            TieRodJoint::Inner => (self.inner + moved, self.outer),
            TieRodJoint::Outer => (self.inner, self.outer + moved),
        }
    }

    /// The tie rod's square now less its square at the design position, mm^2.
    pub(crate) fn excess(&self, stance: &Stance, rack: f64) -> Plane3 {
        let shift = self.rack_axis * rack;
        let moved = stance.place(self.outer) - self.outer - shift;
        let then = self.outer - self.inner;
        // |moved + then|^2 - |then|^2, so that nothing large is taken from something large.
        let constant = moved.dot(&(moved + then * 2.0));
        let slope = match self.joint {
            TieRodJoint::Inner => moved * -2.0,
            TieRodJoint::Outer => (stance.now_from_design.tr_mul(&(moved + then)) - then) * 2.0,
        };
        self.plane(constant, slope)
    }

    /// How [`Rod::excess`] grows per mm of travel with the upright's turn held, mm.
    pub(crate) fn excess_rate(&self, stance: &Stance, rack: f64) -> Plane3 {
        let base = stance.place(self.outer);
        let rod = base - self.inner - self.rack_axis * rack;
        let motion = &stance.per_travel;
        let velocity = motion.at(base, stance.lower_ball_joint);
        let slope = match self.joint {
            TieRodJoint::Inner => velocity * -2.0,
            TieRodJoint::Outer => {
                let turned = rod.cross(&motion.angular) + velocity;
                stance.now_from_design.tr_mul(&turned) * 2.0
            }
        };
        self.plane(2.0 * rod.dot(&velocity), slope)
    }

    /// Excess and its growth per radian of turn, at one place of the free joint.
    pub(crate) fn at(&self, stance: &Stance, rack: f64, a: f64, b: f64) -> (f64, f64) {
        let (inner, outer) = self.joints(a, b);
        let now = stance.place(outer);
        let rod = now - inner - self.rack_axis * rack;
        let velocity = stance.per_turn.at(now, stance.lower_ball_joint);
        (self.excess(stance, rack).at(a, b), 2.0 * rod.dot(&velocity))
    }

    /// Most that the outer joint moves, over the whole map, per mm of travel with the turn held.
    pub(crate) fn fastest_outer(&self, stance: &Stance) -> f64 {
        let motion = &stance.per_travel;
        let velocity = motion.at(stance.place(self.outer), stance.lower_ball_joint);
        let reach = match self.joint {
            TieRodJoint::Inner => 0.0,
            TieRodJoint::Outer => {
                self.middle.norm() + self.half_across.norm() + self.half_up.norm()
            }
        };
        velocity.norm() + motion.angular.norm() * reach
    }

    fn plane(&self, constant: f64, slope: Vector) -> Plane3 {
        Plane3 {
            constant: constant + slope.dot(&self.middle),
            across: slope.dot(&self.half_across),
            up: slope.dot(&self.half_up),
        }
    }
}

impl Plane3 {
    pub(crate) fn at(&self, a: f64, b: f64) -> f64 {
        self.constant + self.across * a + self.up * b
    }
}
