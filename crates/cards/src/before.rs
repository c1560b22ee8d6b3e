//! Before measuring: order of work, what to lock and check, stations with columns to write in.

use trammel_build::{AxleName, Build, LengthUnit, Side, format_length};
use trammel_drawings::table::Table;

use crate::{CardFault, Station, stations};

/// The order of work (common practice, no source).
const ORDER: [&str; 9] = [
    "Frame on stands, level both ways; springs out, or off their load; wheels or plates on the hubs.",
    "Play first: ball joints, tie-rod joints, wheel bearings, rack in its housing. Mend play before measuring.",
    "Centre the rack: half its travel from stop to stop, the same length of bar out of the housing each side. Lock it there.",
    "Rack-end jam nuts and tie-rod jam nuts tight; write down how many threads are in.",
    "Put the wheel at ride height (the first station below) and set the instruments to nought, or write down what they show.",
    "Go up through the stations, come back to ride height, go down, come back. Read at every one, ride height three times.",
    "Write IN when the front of the wheel goes towards the vehicle, OUT when it goes away; never a bare sign.",
    "If ride height doesn't read the same again, look for play or a plate that slipped, and read the run again.",
    "Then the other wheel. Then once more each at about half lock, the rack locked there.",
];

pub(crate) fn tables(build: &Build) -> Result<Vec<Table>, CardFault> {
    let axle = build.axle(AxleName::Front)?;
    let mut all = vec![order()];
    let sides = if build.front.right.is_empty() {
        vec![(Side::Left, "Stations, both wheels")]
    } else {
        vec![
            (Side::Left, "Stations, left wheel"),
            (Side::Right, "Stations, right wheel"),
        ]
    };
    for (side, title) in sides {
        all.push(blank(
            title,
            &stations(&axle, side, build.unit)?,
            build.unit,
        ));
    }
    Ok(all)
}

fn order() -> Table {
    let mut table = Table::new("Order of work", &["#", "What to do", "Done"]);
    for (text, n) in ORDER.iter().zip(1..) {
        table.row([n.to_string(), (*text).to_owned(), String::new()]);
    }
    table
}

fn blank(title: &str, stations: &[Station], unit: LengthUnit) -> Table {
    let heads = [
        "#Travel",
        "#Wheel centre height",
        "#Shock length",
        "Left, run 1",
        "Left, run 2",
        "Right, run 1",
        "Right, run 2",
    ];
    let mut table = Table::new(title, &heads);
    for s in stations {
        let travel = if s.travel == 0.0 {
            "ride".to_owned()
        } else {
            length(s.travel, unit)
        };
        let shock = s
            .shock_length
            .map_or_else(|| "-".to_owned(), |v| length(v, unit));
        let mut row = vec![travel, length(s.wheel_height, unit), shock];
        row.resize(heads.len(), String::new());
        table.row(row);
    }
    table
}

/// As a tape shows it: to 1/32 in or half a millimetre.
pub(crate) fn length(mm: f64, unit: LengthUnit) -> String {
    match unit {
        LengthUnit::Inch => format_length((unit.from_mm(mm) * 32.0).round() / 32.0, unit),
        LengthUnit::Millimetre => format!("{:.1}", (mm * 2.0).round() / 2.0),
    }
}
