//! The design position after an adjuster was turned: the wheel answers with a turn about its steering axis, its height
//! kept.

use trammel_geometry::{Arm, ArmName, Arms, Corner, Point, Spring, Stance, TieRod, Vector, Wheel};

/// Newton steps, the longest of them, and the one that ends it, rad.
const STEPS: usize = 30;
const LONGEST_STEP: f64 = 0.1;
const SHORT: f64 = 1e-14;

/// What the wheel's turn is found from.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Wanted {
    /// Tie rod of this length, mm.
    RodLength(f64),
    /// Toe more than at the corner's design position, rad.
    ToeChange(f64),
}

/// The corner at its design height with the upright turned until it has what is wanted. `None` when it can't.
pub(crate) fn turned(corner: &Corner, wanted: Wanted) -> Option<Corner> {
    let arms = Arms::new(corner).ok()?;
    let outer = corner.tie_rod.outer;
    let mut stance = arms.stance(0.0, 0.0, 0.0)?;
    for _ in 0..STEPS {
        let step = match wanted {
            Wanted::RodLength(length) => {
                let now = stance.place(outer);
                let rod = now - corner.tie_rod.inner;
                let velocity = stance.per_turn.at(now, stance.lower_ball_joint);
                (rod.norm_squared() - length * length) / (2.0 * rod.dot(&velocity))
            }
            Wanted::ToeChange(toe) => (stance.toe_change - toe) / stance.toe_rate(&stance.per_turn),
        };
        if !step.is_finite() {
            return None;
        }
        if step.abs() < SHORT {
            break;
        }
        let turn = stance.turn - step.clamp(-LONGEST_STEP, LONGEST_STEP);
        stance = arms.stance(0.0, turn, stance.arm_angle)?;
    }
    let met = match wanted {
        Wanted::RodLength(length) => {
            ((stance.place(outer) - corner.tie_rod.inner).norm() - length).abs() < 1e-9
        }
        Wanted::ToeChange(toe) => (stance.toe_change - toe).abs() < 1e-12,
    };
    met.then(|| at_stance(corner, &stance))
}

/// The corner with the upright, and what hangs on the arms, where a stance puts them; this becomes its design position.
fn at_stance(corner: &Corner, stance: &Stance) -> Corner {
    let lower = stance.lower_ball_joint;
    let upper = stance.place(corner.upper_arm.ball_joint);
    with_upright(
        corner,
        [upper, lower],
        stance.place(corner.tie_rod.outer),
        Wheel {
            centre: stance.place(corner.wheel.centre),
            toe: corner.wheel.toe + stance.toe_change,
            camber: -stance.spin_axis.z.clamp(-1.0, 1.0).asin(),
            ..corner.wheel
        },
    )
}

/// The corner with its upright elsewhere and the spring's arm mount carried along by its arm. `balls`: upper and lower
/// ball joint.
pub(crate) fn with_upright(
    corner: &Corner,
    balls: [Point; 2],
    outer: Point,
    wheel: Wheel,
) -> Corner {
    let [upper, lower] = balls;
    let carry = |s: Spring| {
        let (arm, to) = match s.arm {
            ArmName::Upper => (&corner.upper_arm, upper),
            ArmName::Lower => (&corner.lower_arm, lower),
        };
        Spring {
            arm_mount: carried(arm, to, s.arm_mount),
            ..s
        }
    };
    Corner {
        upper_arm: Arm {
            ball_joint: upper,
            ..corner.upper_arm
        },
        lower_arm: Arm {
            ball_joint: lower,
            ..corner.lower_arm
        },
        tie_rod: TieRod {
            outer,
            ..corner.tie_rod
        },
        wheel,
        spring: corner.spring.map(carry),
        rack_axis: corner.rack_axis,
    }
}

/// Where a point of an arm goes when the arm swings until its ball joint points towards `ball`.
fn carried(arm: &Arm, ball: Point, point: Point) -> Point {
    let pivot = arm.front_pivot;
    let Some(axis) = (arm.rear_pivot - pivot).try_normalize(1e-9) else {
        return point;
    };
    let square = |p: Point| {
        let v = p - pivot;
        v - axis * axis.dot(&v)
    };
    let (from, to): (Vector, Vector) = (square(arm.ball_joint), square(ball));
    let angle = axis.dot(&from.cross(&to)).atan2(from.dot(&to));
    let radius = square(point);
    let (sin, cos) = angle.sin_cos();
    point - radius + radius * cos + axis.cross(&radius) * sin
}
