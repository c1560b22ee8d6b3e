//! Castor from camber readings with the wheel turned each way.
//!
//! Turned by an angle `a`, read on the ground, a wheel whose steering axis leans back by the castor `c` changes its camber by `tan c sin a`
//! (to the first power of the lean; the axis' inclination cancels between the two sides), so `tan c` is the difference of camber over
//! `2 sin a`. The trade's factors, 1.55 at 20 degrees, 2 at 15 and 2.92 at 10 (seen in a workshop page), are `1 / sin 2a`: they read
//! `1 / cos a` too much, 6 % at 20 degrees. Both are given.

use std::f64::consts::FRAC_PI_2;

/// Camber of one wheel, rad, top outboard positive, steered by the same angle each way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CastorSweep {
    /// Steered so that the wheel's front points outward.
    pub camber_toed_out: f64,
    /// Steered so that its front points inward.
    pub camber_toed_in: f64,
    /// How far it was steered each way from straight ahead, read on the ground, rad.
    pub steered: f64,
    /// Standard deviation of one camber reading, rad.
    pub deviation: f64,
}

/// Why a sweep gives no castor.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum CastorFault {
    /// Steered too little, or round.
    #[error("the wheel was steered {0:.1} degrees each way; expected 5 to 45")]
    Steered(f64),
    /// A camber is no number, or is out of a gauge's range.
    #[error("a camber of {0:.1} degrees is no usable reading; expected at most 30 either way")]
    Camber(f64),
}

/// What the trade multiplies the difference of camber by: 1 / sin 2a, for a wheel steered by `a` (rad) each way.
#[must_use]
pub fn castor_factor(steered: f64) -> f64 {
    1.0 / (2.0 * steered).sin()
}

impl CastorSweep {
    /// Castor by the geometry, rad, top leaning back positive.
    ///
    /// # Errors
    /// [`CastorFault`].
    pub fn castor(&self) -> Result<f64, CastorFault> {
        self.check()?;
        let rise = self.camber_toed_out.sin() - self.camber_toed_in.sin();
        Ok((rise / (2.0 * self.steered.sin())).atan())
    }

    /// Castor by the trade's factor, rad.
    ///
    /// # Errors
    /// [`CastorFault`].
    pub fn by_factor(&self) -> Result<f64, CastorFault> {
        self.check()?;
        Ok((self.camber_toed_out - self.camber_toed_in) * castor_factor(self.steered))
    }

    /// Standard deviation of the castor, rad.
    #[must_use]
    pub fn castor_deviation(&self) -> f64 {
        self.deviation / (std::f64::consts::SQRT_2 * self.steered.sin())
    }

    fn check(&self) -> Result<(), CastorFault> {
        let degrees = self.steered.to_degrees();
        if !((5.0 - 1e-9..=45.0 + 1e-9).contains(&degrees) && self.steered < FRAC_PI_2) {
            return Err(CastorFault::Steered(degrees));
        }
        let odd = |v: &f64| !(v.abs() <= 30.0_f64.to_radians());
        match [self.camber_toed_in, self.camber_toed_out]
            .into_iter()
            .find(odd)
        {
            Some(camber) => Err(CastorFault::Camber(camber.to_degrees())),
            None => Ok(()),
        }
    }
}
