//! Where the coordinates of one build land: an Owen-scrambled Sobol sequence (Burley, Journal of Computer Graphics
//! Techniques 9(4), 2020, by the crate
//! `sobol_burley`), one dimension for each tolerance.

use trammel_geometry::Corner;

use super::{
    normal::quantile,
    request::{Spread, Tolerance},
};

/// Errors of build `index`, mm, one for each tolerance.
pub(crate) fn errors(tolerances: &[Tolerance], index: u32, seed: u32, into: &mut [f64]) {
    for (d, (t, e)) in (0_u32..).zip(tolerances.iter().zip(into)) {
        // 24 bits; half a step up keeps the ends out.
        let share = f64::from(sobol_burley::sample(index, d, seed)) + 2.0_f64.powi(-25);
        *e = match t.spread {
            Spread::Normal(sigma) => sigma * quantile(share),
            Spread::Even(half) => half * (2.0 * share - 1.0),
        };
    }
}

/// The corner with its coordinates off by `errors`.
pub(crate) fn built(corner: &Corner, tolerances: &[Tolerance], errors: &[f64]) -> Corner {
    let mut built = *corner;
    for (t, e) in tolerances.iter().zip(errors) {
        *t.coordinate.of(&mut built) += e;
    }
    built
}
