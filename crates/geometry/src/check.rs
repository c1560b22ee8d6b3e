//! Whether hardpoints are numbers of a vehicle's size, and apart where they must be.

use crate::{Corner, CornerFault, Point};

/// Two joints closer than this, mm, count as one place.
pub(crate) const SAME_PLACE: f64 = 1e-3;
/// Coordinates beyond this, mm, are no vehicle's; the bound keeps every square far from overflow.
const FARTHEST: f64 = 1e6;

fn points(c: &Corner) -> [(&'static str, Point); 9] {
    [
        ("upper_arm.front_pivot", c.upper_arm.front_pivot),
        ("upper_arm.rear_pivot", c.upper_arm.rear_pivot),
        ("upper_arm.ball_joint", c.upper_arm.ball_joint),
        ("lower_arm.front_pivot", c.lower_arm.front_pivot),
        ("lower_arm.rear_pivot", c.lower_arm.rear_pivot),
        ("lower_arm.ball_joint", c.lower_arm.ball_joint),
        ("tie_rod.inner", c.tie_rod.inner),
        ("tie_rod.outer", c.tie_rod.outer),
        ("wheel.centre", c.wheel.centre),
    ]
}

/// Largest coordinate, mm.
pub(crate) fn size(c: &Corner) -> f64 {
    points(c)
        .iter()
        .fold(0.0, |size, (_, p)| p.coords.amax().max(size))
}

pub(crate) fn check_numbers(c: &Corner) -> Result<(), CornerFault> {
    let spring = c.spring.map_or([None, None], |s| {
        [
            Some(("spring.chassis_mount", s.chassis_mount)),
            Some(("spring.arm_mount", s.arm_mount)),
        ]
    });
    for (what, p) in points(c).into_iter().chain(spring.into_iter().flatten()) {
        if !p.iter().all(|v| v.abs() <= FARTHEST) {
            return Err(CornerFault::NotFinite { what });
        }
    }
    let right_angle = std::f64::consts::FRAC_PI_2;
    if !(c.wheel.toe.abs() < right_angle) {
        return Err(CornerFault::NotFinite {
            what: "wheel.toe_deg",
        });
    }
    if !(c.wheel.camber.abs() < right_angle) {
        return Err(CornerFault::NotFinite {
            what: "wheel.camber_deg",
        });
    }
    if !(c.wheel.loaded_radius <= FARTHEST) {
        return Err(CornerFault::NotFinite {
            what: "wheel.loaded_radius",
        });
    }
    if !(c.wheel.loaded_radius > 0.0) {
        return Err(CornerFault::NoRadius);
    }
    match c.rack_axis {
        Some(v) if !v.iter().all(|x| x.abs() <= FARTHEST) => {
            Err(CornerFault::NotFinite { what: "rack.axis" })
        }
        _ => Ok(()),
    }
}

pub(crate) fn check_distances(c: &Corner) -> Result<(), CornerFault> {
    check_arm_distances(c)?;
    let rod = &c.tie_rod;
    apart("tie_rod.inner", rod.inner, "tie_rod.outer", rod.outer)
}

/// As [`check_distances`], leaving the tie rod out.
pub(crate) fn check_arm_distances(c: &Corner) -> Result<(), CornerFault> {
    let (upper, lower) = (&c.upper_arm, &c.lower_arm);
    apart(
        "upper_arm.front_pivot",
        upper.front_pivot,
        "upper_arm.rear_pivot",
        upper.rear_pivot,
    )?;
    apart(
        "lower_arm.front_pivot",
        lower.front_pivot,
        "lower_arm.rear_pivot",
        lower.rear_pivot,
    )?;
    apart(
        "upper_arm.ball_joint",
        upper.ball_joint,
        "lower_arm.ball_joint",
        lower.ball_joint,
    )
}

fn apart(first: &'static str, p: Point, second: &'static str, q: Point) -> Result<(), CornerFault> {
    if (p - q).norm() < SAME_PLACE {
        return Err(CornerFault::Coincident { first, second });
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::size;
    use crate::square::square;

    #[test]
    fn a_corner_is_as_large_as_its_farthest_coordinate() {
        let mut corner = square();
        assert_eq!(size(&corner), 635.0);
        corner.tie_rod.inner.x = -1200.0;
        assert_eq!(size(&corner), 1200.0);
    }
}
