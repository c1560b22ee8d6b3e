//! Toe readings as a table: settings above, one line for each place of the wheel below.

use std::collections::BTreeMap;

use trammel_build::{
    Adjusted, AdjustedPart, LengthUnit, Session, Side, ToeMethod, TravelMeasure, convert_length,
};
use trammel_setup::{Board, Way};

use super::{
    SheetFileFault, SheetFileFaultKind as Kind,
    cells::{Line, lines, unit},
    rows::Columns,
};

const SETTINGS: &str = "`unit`, `date`, `notes`, `method`, `spacing`, `grows`, `across`, `distance`, `board`, `accuracy`, `travel accuracy`, \
                        `side`, `ride`, `adjusted`, or the table's heading with `travel`, `wheel height`, `shock length` or `blocks`";

const KEYS: [&str; 13] = [
    "unit",
    "date",
    "notes",
    "method",
    "spacing",
    "grows",
    "across",
    "distance",
    "board",
    "accuracy",
    "travel accuracy",
    "side",
    "ride",
];

/// Columns that say where the wheel was.
const PLACES: [(&str, TravelMeasure); 4] = [
    ("travel", TravelMeasure::Travel),
    ("wheel height", TravelMeasure::WheelHeight),
    ("shock length", TravelMeasure::ShockLength),
    ("blocks", TravelMeasure::Blocks),
];

/// The session that a sheet holds, lengths in `build_unit`. Lengths of the sheet are in the unit of its line `unit`, or in `build_unit`.
///
/// # Errors
/// The first [`SheetFileFault`]; then nothing of the sheet is used.
pub fn read_readings(text: &str, build_unit: LengthUnit) -> Result<Session, SheetFileFault> {
    let lines = lines(text)?;
    let (settings, rest) = Settings::of(&lines, build_unit)?;
    let Some((heading, rows)) = rest.split_first() else {
        let expected = "expected a heading such as `side, travel, front, rear` and a line for each place of the wheel";
        return Err(Kind::Nothing { expected }.nowhere());
    };
    let method = settings.method()?;
    let columns = Columns::of(heading, method, settings.side, settings.unit)?;
    let ride = settings.length("ride")?;
    let rows: Vec<_> = rows
        .iter()
        .map(|line| {
            let mut row = columns.row(line)?;
            row.ride |= ride.is_some_and(|r| (r - row.place).abs() < 1e-9);
            Ok(row)
        })
        .collect::<Result<_, SheetFileFault>>()?;
    if rows.is_empty() {
        return Err(Kind::Nothing {
            expected: "expected a line for each place of the wheel below the heading",
        }
        .nowhere());
    }
    let session = Session {
        date: settings.text("date"),
        notes: settings.text("notes"),
        adjusted: settings.adjusted.clone(),
        method,
        accuracy: settings.accuracy(method)?,
        travel_by: columns.travel_by(),
        travel_accuracy: settings.length("travel accuracy")?,
        rows,
    };
    Ok(in_unit(session, settings.unit, build_unit))
}

/// The same session in another unit.
fn in_unit(session: Session, from: LengthUnit, to: LengthUnit) -> Session {
    session.converted(|v| *v = convert_length(*v, from, to))
}

/// What kind of place column a heading has, and where.
pub(super) fn place_column(heading: &Line) -> Option<(usize, TravelMeasure)> {
    heading.cells().enumerate().find_map(|(at, cell)| {
        let name = cell.to_lowercase();
        PLACES.iter().find(|p| p.0 == name).map(|p| (at, p.1))
    })
}

struct Settings<'a> {
    lines: BTreeMap<&'static str, &'a Line>,
    unit: LengthUnit,
    side: Option<Side>,
    adjusted: Vec<Adjusted>,
}

impl<'a> Settings<'a> {
    /// The settings, and the lines from the heading on.
    fn of(all: &'a [Line], build_unit: LengthUnit) -> Result<(Self, &'a [Line]), SheetFileFault> {
        let heading = all
            .iter()
            .position(|l| place_column(l).is_some())
            .unwrap_or(all.len());
        let (above, rest) = all.split_at(heading);
        let mut found = Self {
            lines: BTreeMap::new(),
            unit: build_unit,
            side: None,
            adjusted: Vec::new(),
        };
        for line in above {
            let word = line.word();
            if word == "adjusted" {
                continue;
            }
            let Some(key) = KEYS.into_iter().find(|k| *k == word) else {
                let kind = Kind::UnknownWord {
                    found: line.cell(0).to_owned(),
                    known: SETTINGS,
                };
                return Err(kind.at(line.number, None));
            };
            if found.lines.insert(key, line).is_some() {
                return Err(Kind::Twice(key.to_owned()).at(line.number, None));
            }
        }
        if let Some(line) = found.lines.get("unit") {
            found.unit = unit(line)?;
        }
        if let Some(line) = found.lines.get("side") {
            found.side = Some(side(line, 1)?);
        }
        for line in above.iter().filter(|l| l.word() == "adjusted") {
            found.adjusted.push(adjusted(line, found.unit)?);
        }
        Ok((found, rest))
    }

    fn text(&self, key: &str) -> String {
        self.lines
            .get(key)
            .map_or_else(String::new, |l| l.cell(1).to_owned())
    }

    fn length(&self, key: &str) -> Result<Option<f64>, SheetFileFault> {
        self.lines
            .get(key)
            .map(|l| l.length(1, key, self.unit))
            .transpose()
    }

    fn needed(
        &self,
        missing: &'static str,
        example: &'static str,
    ) -> Result<&'a Line, SheetFileFault> {
        self.lines
            .get(missing)
            .copied()
            .ok_or_else(|| Kind::NoSetting { missing, example }.nowhere())
    }

    fn needed_length(
        &self,
        key: &'static str,
        example: &'static str,
    ) -> Result<f64, SheetFileFault> {
        self.needed(key, example)?.length(1, key, self.unit)
    }

    fn grows(&self) -> Result<Way, SheetFileFault> {
        let line = self.needed("grows", "grows, in")?;
        way(
            line,
            1,
            "grows",
            "`in` or `out`: which way the plate goes at a dial whose number grows",
        )
    }

    fn method(&self) -> Result<ToeMethod, SheetFileFault> {
        let line = self.needed("method", "method, two dials")?;
        Ok(match line.cell(1).to_lowercase().as_str() {
            "two dials" => ToeMethod::TwoDials(
                self.needed_length("spacing", "spacing, 250")?,
                self.grows()?,
            ),
            "one dial" => ToeMethod::OneDial(
                self.needed_length("spacing", "spacing, 250")?,
                self.grows()?,
            ),
            "tape" => ToeMethod::Tape(self.needed_length("across", "across, 530")?),
            "laser" => {
                let distance = self.needed_length("distance", "distance, 3000")?;
                let line = self.needed("board", "board, ahead")?;
                let board = match line.cell(1).to_lowercase().as_str() {
                    "ahead" => Board::Ahead,
                    "behind" => Board::Behind,
                    found => {
                        let kind = Kind::OddWord {
                            found: found.to_owned(),
                            expected: "`ahead` or `behind`",
                        };
                        return Err(line.fault("board", kind));
                    }
                };
                ToeMethod::Laser(distance, board)
            }
            "mirror" => ToeMethod::Mirror(self.needed_length("distance", "distance, 3000")?),
            "degrees" => ToeMethod::Degrees,
            found => {
                let expected = "`two dials`, `one dial`, `tape`, `laser`, `mirror` or `degrees`";
                return Err(line.fault(
                    "method",
                    Kind::OddWord {
                        found: found.to_owned(),
                        expected,
                    },
                ));
            }
        })
    }

    fn accuracy(&self, method: ToeMethod) -> Result<Option<f64>, SheetFileFault> {
        match (method, self.lines.get("accuracy")) {
            (ToeMethod::Degrees, Some(line)) => line
                .number(1, "accuracy", "degrees, such as 0.05")
                .map(Some),
            _ => self.length("accuracy"),
        }
    }
}

/// `adjusted, left, rack_end, 2.5`.
fn adjusted(line: &Line, unit: LengthUnit) -> Result<Adjusted, SheetFileFault> {
    let part = match line.cell(2).to_lowercase().replace(' ', "_").as_str() {
        "rack_end" => AdjustedPart::RackEnd,
        "washers" => AdjustedPart::Washers,
        "shims" => AdjustedPart::Shims,
        found => {
            let expected =
                "`rack_end`, `washers` or `shims`, as in `adjusted, left, rack_end, 2.5`";
            return Err(line.fault(
                "adjusted",
                Kind::OddWord {
                    found: found.to_owned(),
                    expected,
                },
            ));
        }
    };
    Ok(Adjusted {
        part,
        side: side(line, 1)?,
        by: line.length(3, "adjusted", unit)?,
    })
}

pub(super) fn side(line: &Line, at: usize) -> Result<Side, SheetFileFault> {
    match line.cell(at).to_lowercase().as_str() {
        "left" | "l" => Ok(Side::Left),
        "right" | "r" => Ok(Side::Right),
        found => {
            let kind = Kind::OddWord {
                found: found.to_owned(),
                expected: "`left` or `right`",
            };
            Err(line.fault("side", kind))
        }
    }
}

pub(super) fn way(
    line: &Line,
    at: usize,
    column: &str,
    expected: &'static str,
) -> Result<Way, SheetFileFault> {
    match line.cell(at).to_lowercase().as_str() {
        "in" => Ok(Way::In),
        "out" => Ok(Way::Out),
        found => Err(line.fault(
            column,
            Kind::OddWord {
                found: found.to_owned(),
                expected,
            },
        )),
    }
}
