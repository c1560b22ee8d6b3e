//! The normal distribution's quantile.

/// Rational approximations in three pieces by P. J. Acklam (2003, from memory): relative error below 1.2e-9, checked
/// in the tests below.
const CENTRE_TOP: [f64; 6] = [
    -3.969_683_028_665_376e1,
    2.209_460_984_245_205e2,
    -2.759_285_104_469_687e2,
    1.383_577_518_672_69e2,
    -3.066_479_806_614_716e1,
    2.506_628_277_459_239,
];
const CENTRE_BOTTOM: [f64; 6] = [
    -5.447_609_879_822_406e1,
    1.615_858_368_580_409e2,
    -1.556_989_798_598_866e2,
    6.680_131_188_771_972e1,
    -1.328_068_155_288_572e1,
    1.0,
];
const TAIL_TOP: [f64; 6] = [
    -7.784_894_002_430_293e-3,
    -3.223_964_580_411_365e-1,
    -2.400_758_277_161_838,
    -2.549_732_539_343_734,
    4.374_664_141_464_968,
    2.938_163_982_698_783,
];
const TAIL_BOTTOM: [f64; 5] = [
    7.784_695_709_041_462e-3,
    3.224_671_290_700_398e-1,
    2.445_134_137_142_996,
    3.754_408_661_907_416,
    1.0,
];
/// Where the tails begin.
const TAIL: f64 = 0.024_25;

/// How many standard deviations above the mean a share `p` of all values lies below. `p` is kept a hair away from 0
/// and 1.
#[must_use]
pub fn quantile(p: f64) -> f64 {
    let p = p.clamp(1e-12, 1.0 - 1e-12);
    if p < TAIL {
        tail(p)
    } else if p > 1.0 - TAIL {
        -tail(1.0 - p)
    } else {
        let q = p - 0.5;
        let r = q * q;
        q * polynomial(&CENTRE_TOP, r) / polynomial(&CENTRE_BOTTOM, r)
    }
}

fn tail(p: f64) -> f64 {
    let q = (-2.0 * p.ln()).sqrt();
    polynomial(&TAIL_TOP, q) / polynomial(&TAIL_BOTTOM, q)
}

fn polynomial(c: &[f64], x: f64) -> f64 {
    c.iter().fold(0.0, |sum, c| sum * x + c)
}

#[cfg(test)]
mod tests {
    use super::quantile;

    /// Percentage points of the normal distribution, from memory (any table).
    #[test]
    fn known_quantiles() {
        for (p, z) in [
            (0.5, 0.0),
            (0.75, 0.674_489_750_196),
            (0.9, 1.281_551_565_545),
            (0.95, 1.644_853_626_951),
            (0.975, 1.959_963_984_540),
            (0.99, 2.326_347_874_041),
            (0.995, 2.575_829_303_549),
            (0.999, 3.090_232_306_168),
            (0.999_9, 3.719_016_485_456),
        ] {
            assert!((quantile(p) - z).abs() < 5e-9, "{p}: {}", quantile(p));
            assert!((quantile(1.0 - p) + z).abs() < 5e-9, "{p}");
        }
    }

    /// The quantile undoes the integral of the density, by Simpson's rule.
    #[test]
    fn it_undoes_the_integral() {
        let density = |x: f64| (-0.5 * x * x).exp() / std::f64::consts::TAU.sqrt();
        for i in 1..40 {
            let z = f64::from(i) * 0.1;
            let n = 400;
            let h = z / f64::from(n);
            let sum: f64 = (0..=n)
                .map(|k| {
                    let w = if k == 0 || k == n {
                        1.0
                    } else if k % 2 == 1 {
                        4.0
                    } else {
                        2.0
                    };
                    w * density(f64::from(k) * h)
                })
                .sum();
            let p = 0.5 + sum * h / 3.0;
            assert!(
                (quantile(p) - z).abs() < 2e-8 * (1.0 + z.powi(4)),
                "{z}: {}",
                quantile(p)
            );
        }
    }
}
