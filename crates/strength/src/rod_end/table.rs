//! Dimensions of male rod ends in inches, as the standard's sheets print them.

use super::ListedRodEnd;
use crate::source::Source;

/// The angle's column has no heading on the sheet seen; sheet 4 calls the like an angle of misalignment.
const WIDE: Source = Source::seen("SAE AS81935/1A", "dimensions of male rod ends, wide");
const NARROW: Source = Source::seen("SAE AS81935/4B", "dimensions of male rod ends, narrow");

const fn wide(
    name: &'static str,
    thread: &'static str,
    [bore, head_diameter, ball_width, body_width]: [f64; 4],
    misalignment_deg: f64,
) -> ListedRodEnd {
    ListedRodEnd {
        misalignment_deg: Some(misalignment_deg),
        source: WIDE,
        ..narrow(name, thread, [bore, head_diameter, ball_width, body_width])
    }
}

/// The sheet's angle was seen for the smallest sizes only, so none is given; bores go by the dash number, in sixteenths.
const fn narrow(
    name: &'static str,
    thread: &'static str,
    [bore, head_diameter, ball_width, body_width]: [f64; 4],
) -> ListedRodEnd {
    ListedRodEnd {
        name,
        bore,
        head_diameter,
        thread,
        ball_width,
        body_width,
        misalignment_deg: None,
        source: NARROW,
    }
}

pub(super) static ROD_ENDS: &[ListedRodEnd] = &[
    wide(
        "AS81935/1-04",
        "5/16-24",
        [0.2500, 0.806, 0.437, 0.337],
        15.0,
    ),
    wide(
        "AS81935/1-05",
        "5/16-24",
        [0.3125, 0.900, 0.437, 0.327],
        14.0,
    ),
    wide("AS81935/1-06", "3/8-24", [0.3750, 1.025, 0.500, 0.416], 8.0),
    wide(
        "AS81935/1-07",
        "7/16-20",
        [0.4375, 1.150, 0.562, 0.452],
        10.0,
    ),
    wide("AS81935/1-08", "1/2-20", [0.5000, 1.337, 0.625, 0.515], 9.0),
    wide(
        "AS81935/1-10",
        "5/8-18",
        [0.6250, 1.525, 0.750, 0.577],
        12.0,
    ),
    wide(
        "AS81935/1-12",
        "3/4-16",
        [0.7500, 1.775, 0.875, 0.640],
        13.0,
    ),
    narrow("AS81935/4-04", "1/4-28", [0.2500, 0.827, 0.343, 0.260]),
    narrow("AS81935/4-05", "5/16-24", [0.3125, 0.984, 0.375, 0.291]),
    narrow("AS81935/4-06", "3/8-24", [0.3750, 1.131, 0.406, 0.322]),
    narrow("AS81935/4-08", "1/2-20", [0.5000, 1.459, 0.500, 0.400]),
    narrow("AS81935/4-10", "5/8-18", [0.6250, 1.763, 0.625, 0.510]),
    narrow("AS81935/4-12", "3/4-16", [0.7500, 2.140, 0.750, 0.603]),
];
