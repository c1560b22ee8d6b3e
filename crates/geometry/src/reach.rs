//! The slow, certain way: walk from the design position until the pose or the end of the reach.

use crate::{Linkage, Point, configuration::Configuration, fault::Member, solve::Solved};

/// Arm step of the walk, rad.
const STRIDE: f64 = 0.01;
/// The walk ends after half a turn: no arm swings further.
const MOST_STRIDES: usize = 320;
/// Halvings to find the end of a reach: from a stride to rounding.
const HALVINGS: usize = 60;
/// Rack step of the walk along the rack, as a part of the steering arm's length.
const RACK_STRIDE: f64 = 0.1;
/// Longest rack walk, strides.
const MOST_RACK_STRIDES: f64 = 2000.0;

/// Where a walk ended.
pub(crate) struct Stop {
    pub member: Member,
    /// Wheel travel there, mm.
    pub travel: f64,
}

struct Step {
    angle: f64,
    configuration: Configuration,
}

fn step(linkage: &Linkage, angle: f64, inner: Point) -> Result<Step, Member> {
    let (sin, cos) = angle.sin_cos();
    let configuration = linkage.configuration(sin, cos, inner)?;
    if configuration.centre_velocity.z > 0.0 {
        Ok(Step {
            angle,
            configuration,
        })
    } else {
        Err(Member::LowerArm)
    }
}

/// Walks the lower arm from `start`, an angle within reach, until the wheel centre is at height `target`.
pub(crate) fn walk_to(
    linkage: &Linkage,
    target: f64,
    inner: Point,
    start: f64,
) -> Result<Solved, Stop> {
    let design_height = linkage.corner().wheel.centre.z;
    let mut here = step(linkage, start, inner).map_err(|member| Stop {
        member,
        travel: 0.0,
    })?;
    let travel = |s: &Step| s.configuration.centre.z - design_height;
    let way = (target - here.configuration.centre.z).signum();
    // A target that is not a number is never passed, so the walk ends where the reach does.
    for _ in 0..MOST_STRIDES {
        match step(linkage, here.angle + way * STRIDE, inner) {
            Ok(next) if (target - next.configuration.centre.z) * way <= 0.0 => {
                return Ok(close_in(linkage, target, inner, here, next));
            }
            Ok(next) => here = next,
            Err(member) => {
                let from = here.angle;
                let (end, member) = end_of_reach(linkage, inner, here, way, member);
                if (target - end.configuration.centre.z) * way > 0.0 {
                    return Err(Stop {
                        member,
                        travel: travel(&end),
                    });
                }
                return match step(linkage, from, inner) {
                    Ok(from) => Ok(close_in(linkage, target, inner, from, end)),
                    Err(member) => Err(Stop {
                        member,
                        travel: travel(&end),
                    }),
                };
            }
        }
    }
    Err(Stop {
        member: Member::LowerArm,
        travel: travel(&here),
    })
}

/// Halves the last stride until the end of the reach is found to rounding.
fn end_of_reach(
    linkage: &Linkage,
    inner: Point,
    from: Step,
    way: f64,
    member: Member,
) -> (Step, Member) {
    let start = from.angle;
    let (mut end, mut member) = (from, member);
    let (mut good, mut bad) = (0.0, STRIDE);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (good + bad);
        match step(linkage, start + way * middle, inner) {
            Ok(s) => {
                end = s;
                good = middle;
            }
            Err(m) => {
                member = m;
                bad = middle;
            }
        }
    }
    (end, member)
}

/// Bracketed Newton between two steps on either side of the target.
fn close_in(linkage: &Linkage, target: f64, inner: Point, from: Step, to: Step) -> Solved {
    let (mut low, mut high) = if from.angle < to.angle {
        (from.angle, to.angle)
    } else {
        (to.angle, from.angle)
    };
    let mut best = to;
    for _ in 0..HALVINGS {
        let error = best.configuration.centre.z - target;
        if error.abs() < 1e-11 {
            break;
        }
        if error > 0.0 {
            high = best.angle
        } else {
            low = best.angle
        }
        let newton = best.angle - error / best.configuration.centre_velocity.z;
        let next = if newton > low && newton < high {
            newton
        } else {
            0.5 * (low + high)
        };
        match step(linkage, next, inner) {
            Ok(s) => best = s,
            Err(_) => break,
        }
    }
    let (sin, cos) = best.angle.sin_cos();
    Solved {
        angle: best.angle,
        sin,
        cos,
        configuration: best.configuration,
    }
}

/// Walks the rack from its centre to `rack` with the wheel at its design height: the arm angle there, or the member that runs out and
/// the rack travel at which it does.
pub(crate) fn walk_rack(linkage: &Linkage, rack: f64) -> Result<f64, (Member, f64)> {
    if !rack.is_finite() {
        return Err((Member::TieRod, 0.0));
    }
    let strides = (rack.abs() / (RACK_STRIDE * linkage.outer_radius))
        .ceil()
        .clamp(1.0, MOST_RACK_STRIDES);
    let (mut angle, mut good, mut n) = (0.0, 0.0, 1.0);
    while n <= strides {
        let at = rack * (n / strides);
        match linkage.at_design_height(linkage.inner_joint(at), angle) {
            Some(a) => {
                angle = a;
                good = at;
            }
            None => return Err(last_rack(linkage, angle, good, at)),
        }
        n += 1.0;
    }
    Ok(angle)
}

fn last_rack(linkage: &Linkage, angle: f64, good: f64, bad: f64) -> (Member, f64) {
    let (mut angle, mut good, mut bad) = (angle, good, bad);
    let mut member = Member::TieRod;
    for _ in 0..HALVINGS {
        let middle = 0.5 * (good + bad);
        let inner = linkage.inner_joint(middle);
        match linkage.at_design_height(inner, angle) {
            Some(a) => {
                angle = a;
                good = middle;
            }
            None => {
                bad = middle;
                let (sin, cos) = angle.sin_cos();
                member = linkage
                    .configuration(sin, cos, inner)
                    .err()
                    .unwrap_or(Member::TieRod);
            }
        }
    }
    (member, good)
}
