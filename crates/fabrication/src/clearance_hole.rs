//! Holes for bolts by class of fit.

use trammel_strength::source::Source;
use trammel_strength::thread::{System, Thread};
use trammel_strength::units::INCH;

/// How freely the bolt goes through.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Fit {
    /// Drilled under and reamed to the bolt's size: for joints that must not shift.
    Reamed,
    /// The standard's close (fine) class.
    Close,
    /// The standard's normal (medium) class.
    Normal,
    /// The standard's loose (coarse) class.
    Loose,
}

impl Fit {
    /// Every class, tightest first.
    pub const ALL: [Self; 4] = [Self::Reamed, Self::Close, Self::Normal, Self::Loose];

    /// As the sheet says it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Reamed => "reamed",
            Self::Close => "close",
            Self::Normal => "normal",
            Self::Loose => "loose",
        }
    }
}

/// A hole for a bolt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClearanceHole {
    /// Diameter, mm.
    pub diameter: f64,
    /// Where it comes from.
    pub source: Source,
}

/// Loose holes, least diameter.
const INCH_LOOSE: Source = Source::seen(
    "ASME B18.2.8",
    "loose class, least diameter (seen in Machinery's Handbook 31, page 1743)",
);
/// Normal drills up to 7/16.
const INCH_NORMAL: Source = Source::seen(
    "ASME B18.2.8",
    "normal class, drill (seen in Machinery's Handbook 31, page 1743)",
);
/// Close drills, and normal ones above 7/16.
const INCH_MEMORY: Source = Source::from_memory("ASME B18.2.8", "drill of the class");
/// Metric holes.
const METRIC: Source = Source::seen("ISO 273", "fine, medium and coarse series");
/// Holes reamed to size.
const REAMED: Source = Source {
    document: "reamed to the bolt's size, up to 0.2 mm over",
    clause: "",
    standing: trammel_strength::source::Standing::CommonPractice,
};

/// Sixteenths of the bolt; close and normal drills in sixty-fourths; loose in thousandths.
const INCH_HOLES: [(u8, u8, u8, u16); 7] = [
    (4, 17, 18, 297),
    (5, 21, 22, 359),
    (6, 25, 26, 422),
    (7, 29, 30, 484),
    (8, 34, 36, 609),
    (10, 42, 44, 734),
    (12, 50, 52, 906),
];

/// Bolt; fine, medium and coarse, mm.
const METRIC_HOLES: [(f64, [f64; 3]); 6] = [
    (6.0, [6.4, 6.6, 7.0]),
    (8.0, [8.4, 9.0, 10.0]),
    (10.0, [10.5, 11.0, 12.0]),
    (12.0, [13.0, 13.5, 14.5]),
    (14.0, [15.0, 15.5, 16.5]),
    (16.0, [17.0, 17.5, 18.5]),
];

/// The hole for a bolt with this thread; `None` for a size that the tables here don't hold.
#[must_use]
pub fn clearance_hole(bolt: Thread, fit: Fit) -> Option<ClearanceHole> {
    let major = bolt.major_diameter();
    match (fit, bolt.system()) {
        (Fit::Reamed, _) => Some(ClearanceHole {
            diameter: major,
            source: REAMED,
        }),
        (_, System::Unified) => inch_hole(major, fit),
        (_, System::Metric) => metric_hole(major, fit),
    }
}

fn inch_hole(major: f64, fit: Fit) -> Option<ClearanceHole> {
    let is_bolt = |size: u8| (f64::from(size) / 16.0 * INCH - major).abs() < 1e-6;
    let (bolt, close, normal, loose) = INCH_HOLES.into_iter().find(|row| is_bolt(row.0))?;
    let sixty_fourths = |count: u8| f64::from(count) / 64.0 * INCH;
    let (diameter, source) = match fit {
        Fit::Loose => (f64::from(loose) / 1000.0 * INCH, INCH_LOOSE),
        Fit::Normal if bolt <= 7 => (sixty_fourths(normal), INCH_NORMAL),
        Fit::Normal => (sixty_fourths(normal), INCH_MEMORY),
        _ => (sixty_fourths(close), INCH_MEMORY),
    };
    Some(ClearanceHole { diameter, source })
}

fn metric_hole(major: f64, fit: Fit) -> Option<ClearanceHole> {
    let (_, [fine, medium, coarse]) = METRIC_HOLES
        .into_iter()
        .find(|row| (row.0 - major).abs() < 1e-6)?;
    let diameter = match fit {
        Fit::Loose => coarse,
        Fit::Normal => medium,
        _ => fine,
    };
    Some(ClearanceHole {
        diameter,
        source: METRIC,
    })
}
