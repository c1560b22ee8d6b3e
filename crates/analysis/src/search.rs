//! Small searches for remedies: by how much to move something.

use trammel_build::LengthUnit;

/// The shop's step: a sixteenth of an inch, or a millimetre.
pub(crate) fn shop_step(unit: LengthUnit) -> f64 {
    match unit {
        LengthUnit::Inch => unit.mm() / 16.0,
        LengthUnit::Millimetre => 1.0,
    }
}

/// Steps that a careful shop can still work to, coarsest first, mm.
pub(crate) fn fine_steps(unit: LengthUnit) -> [f64; 3] {
    match unit {
        LengthUnit::Inch => [16.0, 32.0, 64.0].map(|parts| unit.mm() / parts),
        LengthUnit::Millimetre => [1.0, 0.5, 0.1],
    }
}

/// Rounded towards nought to a whole number of steps; what is a whole number already, but for rounding, stays.
pub(crate) fn step_down(length: f64, step: f64) -> f64 {
    (length.abs() / step + 1e-6).floor() * step * length.signum()
}

/// Rounded away from nought to a whole number of steps.
pub(crate) fn step_up(length: f64, step: f64) -> f64 {
    (length.abs() / step - 1e-6).ceil() * step * length.signum()
}

/// A shift that was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Shift {
    /// The smallest that brings the measure down to the target.
    Reaches(f64),
    /// The target is out of reach; this brings the measure lowest.
    Lowest(f64),
}

/// Looks either way of the first scan across the span.
const LOOKS: i32 = 4;
/// Golden-section rounds: the bracket shrinks to 0.618^8, a fiftieth, about a shop step.
const GOLDEN_ROUNDS: usize = 8;
/// Halvings between a shift that is not enough and one that is: well below a shop step.
const HALVINGS: usize = 8;

/// The shift within `span` either way that brings `measure` down to `target`, or as low as it goes. `measure` has one valley within the span;
/// `None` stands for a shift that can't be made.
pub(crate) fn shift_to(
    target: f64,
    span: f64,
    mut measure: impl FnMut(f64) -> Option<f64>,
) -> Shift {
    let mut value = |shift: f64| measure(shift).unwrap_or(f64::INFINITY);
    let stride = span / f64::from(LOOKS);
    let mut best = (0.0, value(0.0));
    for i in (-LOOKS..=LOOKS).filter(|i| *i != 0) {
        let shift = f64::from(i) * stride;
        let found = value(shift);
        if found < best.1 {
            best = (shift, found);
        }
    }
    if best.1 > target {
        best = lowest(best, stride, &mut value);
    }
    if best.1 > target {
        return Shift::Lowest(best.0);
    }
    let (mut short, mut enough) = (0.0, best.0);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (short + enough);
        if value(middle) <= target {
            enough = middle;
        } else {
            short = middle;
        }
    }
    Shift::Reaches(enough)
}

/// Golden section a stride to either side of `best` (shift, value).
fn lowest(best: (f64, f64), stride: f64, value: &mut impl FnMut(f64) -> f64) -> (f64, f64) {
    let ratio = 0.5 * (5.0_f64.sqrt() - 1.0);
    let (mut low, mut high) = (best.0 - stride, best.0 + stride);
    let inner = |low: f64, high: f64| (high - ratio * (high - low), low + ratio * (high - low));
    let (a, b) = inner(low, high);
    let (mut near, mut far) = ((a, value(a)), (b, value(b)));
    for _ in 0..GOLDEN_ROUNDS {
        // One of the two inner points of the smaller bracket is already known.
        if near.1 < far.1 {
            (high, far) = (far.0, near);
            let a = inner(low, high).0;
            near = (a, value(a));
        } else {
            (low, near) = (near.0, far);
            let b = inner(low, high).1;
            far = (b, value(b));
        }
    }
    let found = if near.1 < far.1 { near } else { far };
    if found.1 < best.1 { found } else { best }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_the_smallest_shift_that_is_enough() {
        // |x - 30| + 1 comes down to 11 at x = 20.
        let Shift::Reaches(x) = shift_to(11.0, 100.0, |x| Some((x - 30.0).abs() + 1.0)) else {
            panic!("reached")
        };
        // On the side that is enough, within the last halving.
        assert!((20.0..20.2).contains(&x), "{x}");
    }

    #[test]
    fn goes_as_low_as_it_can() {
        let Shift::Lowest(x) = shift_to(0.5, 100.0, |x| Some((x + 41.0).powi(2) + 1.0)) else {
            panic!("not reached")
        };
        assert!((x + 41.0).abs() < 1.0, "{x}");
    }

    #[test]
    fn what_can_not_be_made_is_avoided() {
        let Shift::Lowest(x) = shift_to(0.0, 60.0, |x| (x.abs() < 25.0).then_some(100.0 - x))
        else {
            panic!("not reached")
        };
        assert!(x > 23.0 && x < 25.0, "{x}");
    }

    #[test]
    fn steps_round_the_way_they_are_told() {
        assert_eq!(step_down(-4.9, 1.0), -4.0);
        assert_eq!(step_down(5.0 - 1e-9, 1.0), 5.0);
        assert_eq!(step_up(4.1, 1.0), 5.0);
        assert_eq!(step_up(-5.0 - 1e-9, 1.0), -5.0);
    }
}
