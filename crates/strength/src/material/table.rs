//! The table of materials, each figure as its standard prints it.

use super::{ListedMaterial, WallBand};
use crate::grade::{Printed, StressUnit};
use crate::source::Source;
use crate::units::INCH;

/// Any wall that light vehicles are welded from.
const ANY_WALL: f64 = 25.4;
/// Seen in a vendor's copy of the standard's table.
const A513_RELIEVED: Source = Source::seen("ASTM A513", "type 5, stress relieved, least values");
const A513_AS_DRAWN: Source = Source::from_memory("ASTM A513", "type 5, as drawn, least values");
const A36: Source = Source::from_memory("ASTM A36", "tensile requirements");
const A500: Source = Source::from_memory("ASTM A500", "grade B");
const AMS_6360: Source = Source::from_memory("AMS 6360 (MIL-T-6736, condition N)", "");
const EN_10219: Source = Source::from_memory("EN 10219-1", "Table A.3, walls up to 16 mm");

const fn band(up_to: f64, unit: StressUnit, yields: f64, tensile: f64) -> WallBand {
    WallBand {
        up_to,
        yield_strength: Printed {
            value: yields,
            unit,
        },
        tensile: Printed {
            value: tensile,
            unit,
        },
    }
}

const fn ksi(up_to: f64, yields: f64, tensile: f64) -> WallBand {
    band(up_to, StressUnit::Ksi, yields, tensile)
}

const fn material(
    name: &'static str,
    bands: &'static [WallBand],
    source: Source,
) -> ListedMaterial {
    ListedMaterial {
        name,
        bands,
        source,
    }
}

pub(super) static MATERIALS: &[ListedMaterial] = &[
    material(
        "ASTM A36 plate and bar",
        &[ksi(8.0 * INCH, 36.0, 58.0)],
        A36,
    ),
    material(
        "ASTM A500 grade B round tube",
        &[ksi(ANY_WALL, 42.0, 58.0)],
        A500,
    ),
    material(
        "ASTM A500 grade B square tube",
        &[ksi(ANY_WALL, 46.0, 58.0)],
        A500,
    ),
    material(
        "1015 DOM tube, stress relieved",
        &[ksi(ANY_WALL, 50.0, 60.0)],
        A513_RELIEVED,
    ),
    material(
        "1020 DOM tube, stress relieved",
        &[ksi(ANY_WALL, 55.0, 65.0)],
        A513_RELIEVED,
    ),
    material(
        "1026 DOM tube, stress relieved",
        &[ksi(ANY_WALL, 65.0, 75.0)],
        A513_RELIEVED,
    ),
    material(
        "1020 DOM tube, as drawn",
        &[ksi(ANY_WALL, 60.0, 70.0)],
        A513_AS_DRAWN,
    ),
    material(
        "1026 DOM tube, as drawn",
        &[ksi(ANY_WALL, 70.0, 80.0)],
        A513_AS_DRAWN,
    ),
    material(
        "4130 tube, normalised",
        &[ksi(0.188 * INCH, 75.0, 95.0), ksi(ANY_WALL, 70.0, 90.0)],
        AMS_6360,
    ),
    material(
        "S235JRH tube",
        &[band(16.0, StressUnit::Mpa, 235.0, 360.0)],
        EN_10219,
    ),
    material(
        "S355J2H tube",
        &[band(16.0, StressUnit::Mpa, 355.0, 470.0)],
        EN_10219,
    ),
];
