//! How large words and controls are, in steps; never so large that the window holds less than its least content.

use egui::{Context, Vec2, vec2};

/// The least window in which everything has its place, points.
pub const LEAST_WINDOW: Vec2 = vec2(900.0, 600.0);

/// The usual scale, per cent.
pub(super) const USUAL: u16 = 100;
const STEP: u16 = 10;
/// Smaller is not legible; larger shows too little at once on any display.
const LEAST: u16 = 60;
const LARGEST: u16 = 250;

/// Width and height of the window, points of the usual scale.
pub(super) fn window(ctx: &Context) -> Vec2 {
    ctx.viewport_rect().size() * ctx.zoom_factor()
}

/// The largest scale at which a window holds everything, per cent; the usual one where none does.
pub(super) fn largest(window: Vec2) -> u16 {
    let holds = (window / LEAST_WINDOW).min_elem() * f32::from(USUAL);
    // A cast from float to integer keeps within the integer's range.
    (holds as u16 / STEP * STEP).clamp(USUAL, LARGEST)
}

/// A scale a step larger or smaller, per cent.
pub(super) fn stepped(scale: u16, larger: bool) -> u16 {
    let next = if larger {
        scale.saturating_add(STEP)
    } else {
        scale.saturating_sub(STEP)
    };
    next.clamp(LEAST, LARGEST)
}

/// What is shown of a wanted scale: as much as the window holds, per cent.
pub(super) fn shown(ctx: &Context, wanted: u16) -> u16 {
    wanted.max(LEAST).min(largest(window(ctx)))
}

/// Shows everything at a scale, as far as the window holds it.
pub(super) fn show(ctx: &Context, wanted: u16) {
    let factor = f32::from(shown(ctx, wanted)) / f32::from(USUAL);
    if (factor - ctx.zoom_factor()).abs() > 1e-3 {
        ctx.set_zoom_factor(factor);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_more_than_the_window_holds() {
        for (size, most) in [
            ([900.0, 600.0], 100),
            ([1280.0, 800.0], 130),
            ([1920.0, 1080.0], 180),
            ([3840.0, 2160.0], 250),
            ([500.0, 300.0], 100),
            ([f32::NAN, 0.0], 100),
        ] {
            assert_eq!(largest(Vec2::from(size)), most, "{size:?}");
        }
    }

    #[test]
    fn steps_end_where_nothing_is_legible() {
        assert_eq!([stepped(100, true), stepped(100, false)], [110, 90]);
        assert_eq!([stepped(60, false), stepped(250, true)], [60, 250]);
        assert_eq!([stepped(0, false), stepped(u16::MAX, true)], [60, 250]);
    }
}
