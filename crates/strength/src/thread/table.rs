//! The table of threads. Sizes are kept as the standards define them (sixteenths and threads per inch, or mm).

use super::{Series, Size, TapDrill, Thread};
use crate::source::Source;
use crate::units::INCH;

/// Series UNC: 1/4-20 to 1-8 (the table number is from memory, the sizes were seen in copies of it).
pub(super) const UNC: Source = Source::seen(
    "ASME B1.1",
    "Table 1, UNC column (table number from memory)",
);

/// Series UNF: 1/4-28 to 1-12. 1-14 is a special (UNS) and not of the series.
pub(super) const UNF: Source = Source::seen(
    "ASME B1.1",
    "Table 1, UNF column (table number from memory)",
);

/// Diameters and pitches, coarse and fine; ISO 262 selects from ISO 261 (M6x0.75 is in ISO 261 only), ISO 724 gives the basic dimensions.
pub(super) const ISO_METRIC: Source = Source::seen(
    "ISO 261 / ISO 262",
    "table of diameters and pitches; dimensions by ISO 724 clause 4 (clause from memory)",
);

/// Inch tap drills seen in a workshop chart.
const CHART: Source = Source::seen("workshop tap-drill chart", "about 75 % thread");
/// Inch tap drills not in that chart.
const MEMORY: Source = Source::from_memory("workshop tap-drill chart", "about 75 % thread");
/// Metric tap drills: major diameter less pitch, rounded to a stock drill.
const ISO_2306: Source = Source::from_memory("ISO 2306", "drills for tapping, D - P");

const fn unified(
    designation: &'static str,
    series: Series,
    sixteenths: u8,
    threads_per_inch: u8,
    tap_drill: TapDrill,
) -> Thread {
    Thread {
        designation,
        series,
        size: Size::Unified {
            sixteenths,
            threads_per_inch,
        },
        tap_drill,
    }
}

const fn metric(
    designation: &'static str,
    series: Series,
    major: f64,
    pitch: f64,
    tap_drill: TapDrill,
) -> Thread {
    Thread {
        designation,
        series,
        size: Size::Metric { major, pitch },
        tap_drill,
    }
}

const fn inch_drill(name: &'static str, diameter_in: f64, source: Source) -> TapDrill {
    TapDrill {
        name,
        diameter: diameter_in * INCH,
        source,
    }
}

const fn mm_drill(name: &'static str, diameter: f64) -> TapDrill {
    TapDrill {
        name,
        diameter,
        source: ISO_2306,
    }
}

use Series::{Coarse, Fine};

pub(super) static THREADS: &[Thread] = &[
    unified("1/4-20 UNC", Coarse, 4, 20, inch_drill("#7", 0.201, CHART)),
    unified("5/16-18 UNC", Coarse, 5, 18, inch_drill("F", 0.257, CHART)),
    unified(
        "3/8-16 UNC",
        Coarse,
        6,
        16,
        inch_drill("5/16", 0.312, CHART),
    ),
    unified("7/16-14 UNC", Coarse, 7, 14, inch_drill("U", 0.368, CHART)),
    unified(
        "1/2-13 UNC",
        Coarse,
        8,
        13,
        inch_drill("27/64", 27.0 / 64.0, CHART),
    ),
    unified(
        "9/16-12 UNC",
        Coarse,
        9,
        12,
        inch_drill("31/64", 31.0 / 64.0, MEMORY),
    ),
    unified(
        "5/8-11 UNC",
        Coarse,
        10,
        11,
        inch_drill("17/32", 17.0 / 32.0, CHART),
    ),
    unified(
        "3/4-10 UNC",
        Coarse,
        12,
        10,
        inch_drill("21/32", 21.0 / 32.0, CHART),
    ),
    unified(
        "7/8-9 UNC",
        Coarse,
        14,
        9,
        inch_drill("49/64", 49.0 / 64.0, MEMORY),
    ),
    unified(
        "1-8 UNC",
        Coarse,
        16,
        8,
        inch_drill("7/8", 7.0 / 8.0, MEMORY),
    ),
    unified("1/4-28 UNF", Fine, 4, 28, inch_drill("#3", 0.213, CHART)),
    unified("5/16-24 UNF", Fine, 5, 24, inch_drill("I", 0.272, CHART)),
    unified("3/8-24 UNF", Fine, 6, 24, inch_drill("Q", 0.332, CHART)),
    unified(
        "7/16-20 UNF",
        Fine,
        7,
        20,
        inch_drill("25/64", 25.0 / 64.0, CHART),
    ),
    unified(
        "1/2-20 UNF",
        Fine,
        8,
        20,
        inch_drill("29/64", 29.0 / 64.0, CHART),
    ),
    unified(
        "9/16-18 UNF",
        Fine,
        9,
        18,
        inch_drill("33/64", 33.0 / 64.0, CHART),
    ),
    unified(
        "5/8-18 UNF",
        Fine,
        10,
        18,
        inch_drill("37/64", 37.0 / 64.0, CHART),
    ),
    unified(
        "3/4-16 UNF",
        Fine,
        12,
        16,
        inch_drill("11/16", 11.0 / 16.0, CHART),
    ),
    unified(
        "7/8-14 UNF",
        Fine,
        14,
        14,
        inch_drill("13/16", 13.0 / 16.0, MEMORY),
    ),
    unified(
        "1-12 UNF",
        Fine,
        16,
        12,
        inch_drill("59/64", 59.0 / 64.0, MEMORY),
    ),
    metric("M6x1", Coarse, 6.0, 1.0, mm_drill("5 mm", 5.0)),
    metric("M8x1.25", Coarse, 8.0, 1.25, mm_drill("6.8 mm", 6.8)),
    metric("M10x1.5", Coarse, 10.0, 1.5, mm_drill("8.5 mm", 8.5)),
    metric("M12x1.75", Coarse, 12.0, 1.75, mm_drill("10.2 mm", 10.2)),
    metric("M14x2", Coarse, 14.0, 2.0, mm_drill("12 mm", 12.0)),
    metric("M16x2", Coarse, 16.0, 2.0, mm_drill("14 mm", 14.0)),
    metric("M18x2.5", Coarse, 18.0, 2.5, mm_drill("15.5 mm", 15.5)),
    metric("M20x2.5", Coarse, 20.0, 2.5, mm_drill("17.5 mm", 17.5)),
    metric("M6x0.75", Fine, 6.0, 0.75, mm_drill("5.25 mm", 5.25)),
    metric("M8x1", Fine, 8.0, 1.0, mm_drill("7 mm", 7.0)),
    metric("M10x1.25", Fine, 10.0, 1.25, mm_drill("8.8 mm", 8.8)),
    metric("M10x1", Fine, 10.0, 1.0, mm_drill("9 mm", 9.0)),
    metric("M12x1.5", Fine, 12.0, 1.5, mm_drill("10.5 mm", 10.5)),
    metric("M12x1.25", Fine, 12.0, 1.25, mm_drill("10.8 mm", 10.8)),
    metric("M14x1.5", Fine, 14.0, 1.5, mm_drill("12.5 mm", 12.5)),
    metric("M16x1.5", Fine, 16.0, 1.5, mm_drill("14.5 mm", 14.5)),
    metric("M18x2", Fine, 18.0, 2.0, mm_drill("16 mm", 16.0)),
    metric("M18x1.5", Fine, 18.0, 1.5, mm_drill("16.5 mm", 16.5)),
    metric("M20x2", Fine, 20.0, 2.0, mm_drill("18 mm", 18.0)),
    metric("M20x1.5", Fine, 20.0, 1.5, mm_drill("18.5 mm", 18.5)),
];
