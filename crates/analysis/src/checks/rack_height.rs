//! The rack raised or lowered with its inner joint, so that the tie rod stands otherwise.

use trammel_build::Edit;
use trammel_build::defaults;
use trammel_geometry::Vector;

use super::{After, Case};
use crate::{
    AxleStudy,
    search::{Shift, shift_to, shop_step, step_down, step_up},
    words::{toe, work_length},
};

/// How far up or down the rack is looked at, mm (a judgement, no source: what a frame has room for).
const RACK_SHIFT_MM: f64 = 100.0;
/// Shop steps added where the poses between those of the coarse look are a little worse.
const TRIES: usize = 3;

/// A rack height that mends something.
pub(super) struct RackHeight {
    /// `Rack and inner joint down 1 3/8 in`, with what it does to the toe where that goes past its limit.
    pub what: String,
    pub edit: Edit,
    /// The measure on the edited build.
    pub then: f64,
}

/// The smallest change of rack height that brings a measure down to `target`, or the one that brings it lowest: looked for with `coarse`, in
/// whole shop steps, then measured with `exact` on the edited build. `None` where a lock or the linkage forbids it, and where poses are out of
/// reach: that is to be mended first.
pub(super) fn rack_height(
    case: &Case<'_>,
    target: f64,
    coarse: impl FnMut(f64) -> Option<f64>,
    exact: impl Fn(&After) -> Option<f64>,
) -> Option<RackHeight> {
    if !case.grid.ends.is_empty() {
        return None;
    }
    let step = shop_step(case.unit());
    let (mut up, reaches) = match shift_to(target, RACK_SHIFT_MM, coarse) {
        Shift::Reaches(up) => (step_up(up, step), true),
        Shift::Lowest(up) => (step_down(up, step), false),
    };
    for _ in 0..TRIES {
        if up == 0.0 {
            return None;
        }
        let edit = case.move_inner_joint(Vector::new(0.0, 0.0, up))?;
        let after = case.after(&edit)?;
        let then = exact(&after)?;
        if then <= target || !reaches {
            let what = words(case, up, &after);
            return Some(RackHeight { what, edit, then });
        }
        up += step.copysign(up);
    }
    None
}

fn words(case: &Case<'_>, up: f64, after: &After) -> String {
    let way = if up > 0.0 { "up" } else { "down" };
    let by = work_length(up.abs(), case.unit());
    let score = AxleStudy::travel_curve(&after.model, case.view.side).score;
    let limit = case.build.limits.toe_change_deg;
    let change = score.largest.to_degrees();
    let cost = if change > limit.unwrap_or(defaults::TOE_CHANGE_LIMIT_DEG) {
        format!(" (toe would change by {})", toe(change))
    } else {
        String::new()
    };
    format!("Rack and inner joint {way} {by}{cost}")
}
