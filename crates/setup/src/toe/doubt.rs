//! Readings whose sign looks wrong: asked about, never changed.

use super::{Curve, Shape};

/// A reading that would fit its neighbours with the other sign.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SignDoubt {
    /// Rack position, mm.
    pub rack: f64,
    /// Wheel travel, mm.
    pub travel: f64,
    /// What was read, rad, toe-in positive.
    pub read: f64,
    /// What the others say, rad.
    pub expected: f64,
}

/// Off by this many standard deviations as read, and within this many with the other sign.
const OFF: f64 = 5.0;
const FITS: f64 = 3.0;
/// Fewest readings of a curve that can judge one of them.
const FEWEST: usize = 5;

/// Readings of a curve that stand off the others and would not with IN for OUT, or OUT for IN.
#[must_use]
pub fn sign_doubts(curve: &Curve) -> Vec<SignDoubt> {
    if curve.points.len() < FEWEST {
        return Vec::new();
    }
    let doubt = |i: usize| {
        let p = curve.points.get(i)?;
        let mut others = curve.clone();
        others.points.remove(i);
        let shape = Shape::of(&others)?;
        let z = p.travel / shape.reach;
        let expected = shape.at(p.travel);
        let spread = (shape.slope.deviation * p.travel).hypot(shape.bowl.deviation * z * z);
        let scale = p.deviation.hypot(spread).hypot(curve.zero_deviation);
        let off = (p.change - expected).abs();
        let turned = (-p.change - expected).abs();
        (off > OFF * scale && turned < FITS * scale && turned < 0.5 * off).then_some(SignDoubt {
            rack: p.rack,
            travel: p.travel,
            read: p.change,
            expected,
        })
    };
    (0..curve.points.len()).filter_map(doubt).collect()
}
