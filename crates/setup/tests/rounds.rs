//! Karts mis-built everywhere come within the limit in a few rounds.

mod common;

use common::kart::{self, Shop};
use trammel_specimens::{ahead, behind};

/// Dials of 0.02 mm on a 250 mm plate; a tape's height of wheel.
const DIALS: Shop = Shop {
    build: 0.8,
    reading: 0.02 * std::f64::consts::SQRT_2 / 250.0,
    travel: 1.0,
    moving: 0.05,
    limit: 0.15 * std::f64::consts::PI / 180.0,
};

/// A hundred karts with a fixed seed; a thousand are in the table of the documentation.
#[test]
fn mis_built_karts_converge_on_both_layouts() {
    for (name, drawn) in [("behind", behind()), ("ahead", ahead())] {
        let share = kart::shares(&drawn, &DIALS, 20);
        println!("{name} {share:?}");
        assert!(
            share[0] < 0.4,
            "{name}: the karts are not mis-built enough to prove anything: {share:?}"
        );
        assert!(share[1] >= 0.85, "{name}: {share:?}");
        assert!(share[2] >= 0.95, "{name}: {share:?}");
        assert!(share[3] >= 0.95, "{name}: {share:?}");
    }
}
