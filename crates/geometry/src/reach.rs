//! The slow, certain way: walk from the design position until the pose or the end of the reach.

use crate::{
    Linkage, Point,
    configuration::Configuration,
    fault::Member,
    solve::{Known, SAME_HEIGHT, Solved},
};

/// Longest and shortest arm step of the walk, rad. The shortest can't jump over the place where two members count as in line.
const LONGEST: f64 = 0.02;
const SHORTEST: f64 = 1e-6;
/// Steps of the longest walk: more than half a turn, farther than an arm swings.
const MOST_STEPS: usize = 12_000;
/// Arm angles this close, rad, are one.
const SAME_ANGLE: f64 = 1e-16;
/// Halvings that take any step to rounding.
const HALVINGS: usize = 50;
/// Part of the rack travel that the tie rod's dead point surely allows which is taken at once.
const RACK_PART: f64 = 0.8;
/// Rack step that is always tried, as a part of the steering arm's length.
const RACK_SHORTEST: f64 = 1e-4;
/// Rack step, as a part of the steering arm's length, at which the end of the reach counts as found.
const RACK_FINEST: f64 = 1e-10;
/// Rack steps of the longest walk.
const MOST_RACK_STEPS: usize = 2_000;
/// Nearest and farthest arm angle, rad, looked at when a moved rack has put the last one out of reach.
const NEAREST: f64 = 1e-9;
const FARTHEST: f64 = 0.06;

/// Where a walk ended.
pub(crate) struct Stop {
    pub member: Member,
    /// Wheel travel there, mm.
    pub travel: f64,
}

/// Why an arm angle is not on the way.
#[derive(Clone, Copy)]
pub(crate) enum Outside {
    /// This member doesn't reach.
    Apart(Member),
    /// All reach, but the wheel falls as the arm rises: this member has gone over its dead point.
    Turned(Member),
}

impl Outside {
    fn member(self) -> Member {
        match self {
            Self::Apart(m) | Self::Turned(m) => m,
        }
    }
}

/// Walks the lower arm from `start`, an angle within reach, until the wheel is at `travel`.
pub(crate) fn walk_to(
    linkage: &Linkage,
    travel: f64,
    inner: Point,
    start: f64,
) -> Result<Solved, Stop> {
    let mut here = linkage.at(start, inner).map_err(|outside| Stop {
        member: outside.member(),
        travel: 0.0,
    })?;
    if travel.is_nan() {
        return Err(stop(Member::LowerArm, &here));
    }
    let way = (travel - here.known.travel).signum();
    let mut stride = LONGEST;
    for _ in 0..MOST_STEPS {
        match linkage.at(here.known.angle + way * stride, inner) {
            Ok(next) if here.known.leads_to(&next.known) => {
                if (travel - next.known.travel) * way <= 0.0 {
                    return close_in(linkage, travel, inner, (here, next), HALVINGS);
                }
                here = next;
                stride = (2.0 * stride).min(LONGEST);
            }
            Err(_) if stride <= SHORTEST => {
                let start = linkage.at(here.known.angle, inner);
                let (end, member) = end_of_reach(linkage, inner, here, way * stride);
                return match start {
                    Ok(start) if (travel - end.known.travel) * way <= 0.0 => {
                        close_in(linkage, travel, inner, (start, end), HALVINGS)
                    }
                    _ => Err(stop(member, &end)),
                };
            }
            _ => stride *= 0.5,
        }
    }
    Err(stop(Member::LowerArm, &here))
}

fn stop(member: Member, at: &Solved) -> Stop {
    Stop {
        member,
        travel: at.known.travel,
    }
}

/// Halves a step that leaves the reach until its end is found to rounding.
fn end_of_reach(linkage: &Linkage, inner: Point, from: Solved, step: f64) -> (Solved, Member) {
    let start = from.known.angle;
    let (mut end, mut member) = (from, Member::LowerArm);
    let (mut good, mut bad) = (0.0, 1.0);
    while (bad - good) * step.abs() > SAME_ANGLE {
        let middle = 0.5 * (good + bad);
        match linkage.at(start + step * middle, inner) {
            Ok(s) => {
                end = s;
                good = middle;
            }
            Err(outside) => {
                member = outside.member();
                bad = middle;
            }
        }
    }
    (end, member)
}

/// Newton's method held between two places on either side of the wanted travel.
fn close_in(
    linkage: &Linkage,
    travel: f64,
    inner: Point,
    (from, to): (Solved, Solved),
    rounds: usize,
) -> Result<Solved, Stop> {
    let start = from.known.angle;
    let (mut low, mut high) = (start.min(to.known.angle), start.max(to.known.angle));
    let mut best = to;
    for _ in 0..rounds {
        let error = best.known.travel - travel;
        if error.abs() <= SAME_HEIGHT {
            break;
        }
        if error > 0.0 {
            high = best.known.angle;
        } else {
            low = best.known.angle;
        }
        let newton = best.known.angle - error / best.known.rise;
        let next = if newton > low && newton < high {
            newton
        } else {
            0.5 * (low + high)
        };
        best = match linkage.at(next, inner) {
            Ok(s) => s,
            // A gap between the two.
            Err(_) => {
                let (end, member) = end_of_reach(linkage, inner, from, next - start);
                return Err(stop(member, &end));
            }
        };
    }
    Ok(best)
}

/// Moves the rack from its centre to `rack` with the wheel at its design height: the place there, or the member that runs out and
/// the rack travel at which it does. Steps are short against what the tie rod has left, so no dead point is jumped.
pub(crate) fn walk_rack(linkage: &Linkage, rack: f64) -> Result<Known, (Member, f64)> {
    if rack.is_nan() || !linkage.has_rack() {
        return Err((Member::TieRod, 0.0));
    }
    let shortest = RACK_SHORTEST * linkage.outer_radius;
    let finest = RACK_FINEST * linkage.outer_radius;
    let (way, goal) = (rack.signum(), rack.abs());
    let (mut here, mut at) = (linkage.design, 0.0);
    let mut stride = linkage.design_rack_stride;
    for _ in 0..MOST_RACK_STEPS {
        let next = if stride >= goal - at {
            goal
        } else {
            at + stride
        };
        match hold(linkage, linkage.inner_joint(way * next), here.angle) {
            Ok(solved) if next == goal => return Ok(solved.known),
            Ok(solved) => {
                here = solved.known;
                at = next;
                let sure = linkage.rack_stride(&solved.configuration);
                stride = (2.0 * stride).min(sure.max(shortest));
            }
            Err(member) => {
                stride = 0.5 * (next - at);
                if stride < finest {
                    return Err((member, way * at));
                }
            }
        }
    }
    Err((Member::TieRod, way * at))
}

/// The place at the design height with the inner joint at `inner`, looked for from the arm angle that it had with the inner joint a little
/// elsewhere.
fn hold(linkage: &Linkage, inner: Point, angle: f64) -> Result<Solved, Member> {
    let start = nearest(linkage, inner, angle)?.known;
    let guess = start.angle - start.travel / start.rise;
    match linkage.newton(0.0, inner, guess, start) {
        Some(solved) => Ok(solved),
        None => walk_to(linkage, 0.0, inner, start.angle).map_err(|stop| stop.member),
    }
}

/// The nearest arm angle within reach.
fn nearest(linkage: &Linkage, inner: Point, angle: f64) -> Result<Solved, Member> {
    let outside = match linkage.at(angle, inner) {
        Ok(s) => return Ok(s),
        Err(outside) => outside.member(),
    };
    let mut away = NEAREST;
    while away < FARTHEST {
        for signed in [away, -away] {
            if let Ok(s) = linkage.at(angle + signed, inner) {
                return Ok(s);
            }
        }
        away *= 4.0;
    }
    Err(outside)
}

impl Linkage {
    /// A rack travel, mm, over which the tie rod can't come in line with the steering arm, the lower arm held.
    ///
    /// With the steering arm's radius r, the inner joint's distance h from the steering axis and its height e against the outer joint, the angle between
    /// them has the cosine c = (e^2 + r^2 + h^2 - rod^2) / (2 h r). As neither e nor h changes faster than the rack moves, c changes
    /// per rack travel by at most (1 + |e|/h) / r + |c|/h.
    pub(crate) fn rack_stride(&self, c: &Configuration) -> f64 {
        let to_inner = c.inner - c.lower_ball;
        let along = to_inner.dot(&c.steering_axis);
        let h = to_inner.cross(&c.steering_axis).norm();
        let cosine = (1.0 - c.steering_margin_sq).max(0.0).sqrt();
        let fastest =
            (1.0 + (self.outer_height - along).abs() / h) / self.outer_radius + cosine / h;
        RACK_PART * (1.0 - cosine) / fastest
    }
}

#[cfg(test)]
mod tests {
    use super::close_in;
    use crate::{
        Point,
        square::{linkage, square},
    };

    /// The arm's sine is travel over length.
    #[test]
    fn newtons_method_takes_few_rounds_between_two_places() {
        let corner = square();
        let linkage = linkage(&corner);
        let inner = corner.tie_rod.inner;
        for (travel, from, to) in [(30.0, 0.05, 0.4), (-140.0, 0.0, -0.5), (0.7, 0.0, 0.02)] {
            let ends = linkage.at(from, inner).ok().zip(linkage.at(to, inner).ok());
            let found = ends.and_then(|ends| close_in(&linkage, travel, inner, ends, 4).ok());
            let angle = found.map(|f| f.known.angle);
            let off = angle.map(|a| (a - f64::asin(travel / 360.0)).abs());
            assert!(off.is_some_and(|off| off < 1e-12), "{travel}: {angle:?}");
        }
    }

    /// By hand, for an inner joint h from the steering axis, e above or below the outer joint and at an angle from the steering arm r whose cosine is c:
    /// 0.8 (1 - c) / ((1 + e/h) / r + c/h).
    #[test]
    fn a_rack_stride_is_a_part_of_what_the_tie_rod_has_left() {
        let sixty_degrees = [-200.0, 560.0 - 400.0 * 0.75_f64.sqrt()];
        for (inner, height, stride) in [
            ([0.0, 160.0], 240.0, 0.8 / 0.01),
            ([0.0, 160.0], 640.0, 0.8 / 0.02),
            ([0.0, 160.0], 40.0, 0.8 / 0.015),
            (sixty_degrees, 240.0, 0.4 / (0.01 + 0.5 / 400.0)),
            (sixty_degrees, 340.0, 0.4 / (0.0125 + 0.5 / 400.0)),
        ] {
            let mut corner = square();
            corner.tie_rod.inner = Point::new(inner[0], inner[1], height);
            let found = linkage(&corner).design_rack_stride;
            assert!((found - stride).abs() < 1e-9, "{found} for {stride}");
        }
    }
}
