//! The table of grades, each figure as its standard prints it.

use super::{Family, ListedGrade, Printed, SizeBand, Strength, StressUnit};
use crate::source::Source;
use crate::units::INCH;

/// Seen in a university page after Shigley and in two vendors' copies.
const J429: Source = Source::seen(
    "SAE J429",
    "Table 1, mechanical requirements (table number from memory)",
);
/// Seen in three vendors' copies.
const ISO_898_1: Source = Source::seen(
    "ISO 898-1",
    "Table 3, mechanical and physical properties (table number from memory)",
);
/// Figures seen in two stockists' tables of estimated least values; the standard itself was not seen.
const J1397: Source = Source::seen(
    "SAE J1397",
    "estimated least values for bars of 3/4 to 1 1/4 in (standard's number from memory)",
);
/// Seen in a copy of the 2004 edition.
const A434_BC: Source = Source::seen("ASTM A434", "Table 1, class BC");
/// Seen in the same copy.
const A434_BB: Source = Source::seen("ASTM A434", "Table 1, class BB");
/// Annealed alloy bar.
const HANDBOOK: Source = Source::from_memory(
    "Metals Handbook, vol. 1",
    "properties of 4140 annealed at 815 C",
);

/// Smallest bolt of SAE J429, 1/4 in.
const QUARTER_INCH: f64 = 0.25 * INCH;
/// Smallest thread of ISO 898-1, M1.6.
const M1_6: f64 = 1.6;
/// Largest thread of ISO 898-1, M39.
const M39: f64 = 39.0;
/// Any bar that can be turned into a rack end.
const ANY_BAR: f64 = 1.0;
/// The J1397 figures hold to about this bar size.
const BAR_1_1_4: f64 = 1.25 * INCH;
/// Band limits of ASTM A434, and the largest bolt of SAE J429.
const INCH_1_1_2: f64 = 1.5 * INCH;
const INCH_2_1_2: f64 = 2.5 * INCH;

const fn printed(value: f64, unit: StressUnit) -> Printed {
    Printed { value, unit }
}

/// Proof, yield, tensile in one unit.
const fn bolt(up_to: f64, unit: StressUnit, stresses: [f64; 3], source: Source) -> SizeBand {
    let [proof, yields, tensile] = stresses;
    let strength = Strength {
        proof: Some(printed(proof, unit)),
        yield_strength: printed(yields, unit),
        tensile: Some(printed(tensile, unit)),
        source,
    };
    SizeBand { up_to, strength }
}

/// Yield, tensile in ksi.
const fn bar(up_to: f64, stresses_ksi: [f64; 2], source: Source) -> SizeBand {
    let [yields, tensile] = stresses_ksi;
    let strength = Strength {
        proof: None,
        yield_strength: printed(yields, StressUnit::Ksi),
        tensile: Some(printed(tensile, StressUnit::Ksi)),
        source,
    };
    SizeBand { up_to, strength }
}

const fn sae(name: &'static str, number: &'static str, bands: &'static [SizeBand]) -> ListedGrade {
    ListedGrade {
        name,
        family: Family::SaeJ429,
        number,
        conditions: &[],
        from: QUARTER_INCH,
        bands,
    }
}

const fn iso(name: &'static str, number: &'static str, bands: &'static [SizeBand]) -> ListedGrade {
    ListedGrade {
        name,
        family: Family::Iso898,
        number,
        conditions: &[],
        from: M1_6,
        bands,
    }
}

const fn steel(
    name: &'static str,
    number: &'static str,
    conditions: &'static [&'static str],
    bands: &'static [SizeBand],
) -> ListedGrade {
    ListedGrade {
        name,
        family: Family::BarSteel,
        number,
        conditions,
        from: ANY_BAR,
        bands,
    }
}

use StressUnit::{Ksi, Mpa};

const HOT_ROLLED: &[&str] = &["hot rolled", "hr"];
const COLD_DRAWN: &[&str] = &[
    "cold drawn",
    "cold rolled",
    "cold finished",
    "cd",
    "cf",
    "crs",
];
const ANNEALED: &[&str] = &["annealed", "ann"];
const CLASS_BB: &[&str] = &["a434 bb", "a434 class bb", "class bb", "bb"];
/// Bar sold as pre-hardened, 28 to 32 HRC, is held to this class (common practice): ask for the certificate.
const CLASS_BC: &[&str] = &[
    "pre hardened",
    "prehardened",
    "prehard",
    "pre hard",
    "ph",
    "ht",
    "a434 bc",
    "a434 class bc",
    "class bc",
    "bc",
];

pub(super) static GRADES: &[ListedGrade] = &[
    sae(
        "SAE J429 grade 2",
        "2",
        &[
            bolt(0.75 * INCH, Ksi, [55.0, 57.0, 74.0], J429),
            bolt(INCH_1_1_2, Ksi, [33.0, 36.0, 60.0], J429),
        ],
    ),
    sae(
        "SAE J429 grade 5",
        "5",
        &[
            bolt(INCH, Ksi, [85.0, 92.0, 120.0], J429),
            bolt(INCH_1_1_2, Ksi, [74.0, 81.0, 105.0], J429),
        ],
    ),
    sae(
        "SAE J429 grade 8",
        "8",
        &[bolt(INCH_1_1_2, Ksi, [120.0, 130.0, 150.0], J429)],
    ),
    iso(
        "ISO 898-1 class 8.8",
        "8.8",
        &[
            bolt(16.0, Mpa, [580.0, 640.0, 800.0], ISO_898_1),
            bolt(M39, Mpa, [600.0, 660.0, 830.0], ISO_898_1),
        ],
    ),
    iso(
        "ISO 898-1 class 10.9",
        "10.9",
        &[bolt(M39, Mpa, [830.0, 940.0, 1040.0], ISO_898_1)],
    ),
    iso(
        "ISO 898-1 class 12.9",
        "12.9",
        &[bolt(M39, Mpa, [970.0, 1100.0, 1220.0], ISO_898_1)],
    ),
    steel(
        "1018 hot rolled",
        "1018",
        HOT_ROLLED,
        &[bar(BAR_1_1_4, [32.0, 58.0], J1397)],
    ),
    steel(
        "1018 cold drawn",
        "1018",
        COLD_DRAWN,
        &[bar(BAR_1_1_4, [54.0, 64.0], J1397)],
    ),
    steel(
        "1045 hot rolled",
        "1045",
        HOT_ROLLED,
        &[bar(BAR_1_1_4, [45.0, 82.0], J1397)],
    ),
    steel(
        "1045 cold drawn",
        "1045",
        COLD_DRAWN,
        &[bar(BAR_1_1_4, [77.0, 91.0], J1397)],
    ),
    steel(
        "4140 annealed",
        "4140",
        ANNEALED,
        &[bar(INCH_2_1_2, [60.5, 95.0], HANDBOOK)],
    ),
    steel(
        "4140 hardened, ASTM A434 class BB",
        "4140",
        CLASS_BB,
        &[
            bar(INCH_1_1_2, [90.0, 110.0], A434_BB),
            bar(INCH_2_1_2, [80.0, 105.0], A434_BB),
        ],
    ),
    steel(
        "4140 pre-hardened, ASTM A434 class BC",
        "4140",
        CLASS_BC,
        &[
            bar(INCH_1_1_2, [110.0, 130.0], A434_BC),
            bar(INCH_2_1_2, [105.0, 125.0], A434_BC),
        ],
    ),
];
