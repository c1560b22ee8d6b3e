//! A corner as the reference scripts read it.

use trammel_geometry::{Arm, Corner, Point};

fn point(p: Point) -> String {
    format!("[{:e}, {:e}, {:e}]", p.x, p.y, p.z)
}

fn arm(arm: &Arm) -> String {
    format!(
        r#"{{"front_pivot": {}, "rear_pivot": {}, "ball_joint": {}}}"#,
        point(arm.front_pivot),
        point(arm.rear_pivot),
        point(arm.ball_joint)
    )
}

/// The corner in the form of the geometries in `tests/reference`, mm and degrees; the spring is left out, a searched corner's travel is 125 up and 100 down.
#[must_use]
pub fn as_json(corner: &Corner) -> String {
    let wheel = &corner.wheel;
    format!(
        r#"{{"upper_arm": {}, "lower_arm": {}, "tie_rod": {{"inner": {}, "outer": {}}}, "wheel": {{"centre": {}, "loaded_radius": {:e}, "toe_deg": {:e}, "camber_deg": {:e}}}, "travel": {{"bump": 125.0, "droop": -100.0}}, "spring": null}}"#,
        arm(&corner.upper_arm),
        arm(&corner.lower_arm),
        point(corner.tie_rod.inner),
        point(corner.tie_rod.outer),
        point(wheel.centre),
        wheel.loaded_radius,
        wheel.toe.to_degrees(),
        wheel.camber.to_degrees()
    )
}
