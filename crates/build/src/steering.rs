//! From the rack to the driver's hands.

/// Steering wheel, friction and stops. Everything may be left out.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SteeringSpec {
    /// Diameter of the steering wheel, the build's unit.
    pub wheel_diameter: Option<f64>,
    /// Part of the force lost between rack and hands, 0 up to 0.9.
    pub friction: Option<f64>,
    /// Rack travel each way at which a positive stop on frame or upright holds the steering, the build's unit; without it the rack's own end stops it.
    pub stop: Option<f64>,
}
