//! What it takes to turn a wheel that stands still.

use crate::number::{BadNumber, finite, not_negative, positive};
use crate::source::Source;

/// Source of [`stationary_torque`].
pub const GOUGH: Source = Source::from_memory(
    "V. E. Gough, static steering torques",
    "M = mu/3 sqrt(W^3/p)",
);

/// Source of [`scrub_moment`].
pub const STATIONARY: Source = Source::seen(
    "Barton & Fieldhouse, Automotive Chassis Engineering (2018)",
    "example E2.1, p. 82",
);

/// Moment about the vertical, N mm, that turns a tyre on the spot: `friction / 3 x sqrt(load^3 / pressure)`, with the wheel's load in N and the
/// tyre's pressure in MPa. Source: [`GOUGH`]. A steering axis at some distance from the patch is not in it.
///
/// # Errors
/// Friction or load below zero, a pressure not above zero, a number that is not finite or overflows.
pub fn stationary_torque(friction: f64, load: f64, pressure: f64) -> Result<f64, BadNumber> {
    not_negative("the friction", friction)?;
    not_negative("the wheel load", load)?;
    positive("the tyre pressure", pressure)?;
    finite(
        "the torque that turns the tyre on the spot",
        friction / 3.0 * load * (load / pressure).sqrt(),
    )
}

/// Moment about the steering axis, N mm, that turns a tyre on the spot: `friction x load x sqrt(offset^2 + (patch/3)^2)`, with the steering
/// axis' offset from the contact point at the ground and the patch's length in mm. Source: [`STATIONARY`].
///
/// # Errors
/// A number below zero, not finite, or that overflows.
pub fn scrub_moment(
    friction: f64,
    load: f64,
    offset: f64,
    patch_length: f64,
) -> Result<f64, BadNumber> {
    not_negative("the friction", friction)?;
    not_negative("the wheel load", load)?;
    finite("the steering axis' offset at the ground", offset)?;
    not_negative("the length of the contact patch", patch_length)?;
    finite(
        "the moment that turns the tyre on the spot",
        friction * load * offset.hypot(patch_length / 3.0),
    )
}
