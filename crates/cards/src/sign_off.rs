//! What to look at before the vehicle is driven.

use trammel_build::{Build, defaults};
use trammel_drawings::table::Table;

/// A check: what to look at, and what it should show.
type Check = (&'static str, String);

/// The checks of a build (common practice, no source, where no figure of the build stands behind them).
#[must_use]
pub fn checks(build: &Build) -> Vec<Check> {
    let limit = build
        .limits
        .toe_change_deg
        .unwrap_or(defaults::TOE_CHANGE_LIMIT_DEG);
    let seen = |text: &str| text.to_owned();
    vec![
        (
            "Toe change over the travel, both wheels",
            format!("at most {limit} degrees, read on the vehicle"),
        ),
        (
            "Static toe and camber",
            seen("as on the card, wheels straight, rack centred"),
        ),
        (
            "Rack centred",
            seen("same bar out each side; steering wheel straight"),
        ),
        (
            "Rack-end jam nuts",
            seen("tight and marked; thread engaged at least its diameter in steel"),
        ),
        (
            "Tie-rod jam nuts",
            seen("tight and marked; witness hole covered, or threads counted"),
        ),
        (
            "Joint bolts",
            seen("double shear; locking nut or split pin; washer that holds the ball"),
        ),
        (
            "Steering stops",
            seen("positive stops meet before joint, rod or rack does, both ways"),
        ),
        (
            "Lock to lock at ride height, full bump and full droop",
            seen("nothing touches, no joint at the end of its swivel"),
        ),
        (
            "Tie rod and steering arm",
            seen("never near one line at full lock"),
        ),
        (
            "Springs in, bolts tight",
            seen("nothing binds over the travel"),
        ),
        (
            "Column, couplings, wheel",
            seen("bolts and splines locked; no play"),
        ),
        ("Brakes", seen("hoses clear at full lock and travel")),
        ("Wheel nuts and hub nuts", seen("tight, pinned")),
        (
            "Rack-end bending",
            seen("cautions of the build looked at, none left as danger"),
        ),
        ("First drive", seen("slow, then all of the above once more")),
    ]
}

pub(crate) fn tables(build: &Build) -> Vec<Table> {
    let mut table = Table::new(
        "Before it is driven",
        &["Look at", "It should be", "Found", "Initials", "Date"],
    );
    for (what, should) in checks(build) {
        table.row([what.to_owned(), should]);
    }
    vec![table]
}
