//! Reading a table of points.

use std::collections::BTreeMap;

use csv::{ReaderBuilder, StringRecord, Trim};
use trammel_build::{LengthUnit, PointRef, Triple, convert_length, parse_length};

use super::{TableFault, TableFaultKind, names};
use crate::{LARGEST_FILE, ron_text::shown};

const AXES: [&str; 3] = ["x", "y", "z"];

/// Where the columns are, and what they hold.
struct Columns<'a> {
    text: &'a str,
    point: usize,
    axes: [usize; 3],
    headings: Vec<String>,
    unit: LengthUnit,
}

/// The points of a table, in `unit`, for [`trammel_build::Edit::MovePoints`].
///
/// The heading names the columns `point`, `x`, `y` and `z`, in any order, the last three with their unit: `x (in)` or `x (mm)`; other columns are passed over.
/// Commas, semicolons or tabs part the cells. Cells may hold anything that [`parse_length`] reads, fractions among them. Names may leave out the axle
/// (then the front) and the side (then the left).
///
/// # Errors
/// The first [`TableFault`], with its row and column; then nothing of the table is used.
pub fn read_points(text: &str, unit: LengthUnit) -> Result<Vec<(PointRef, Triple)>, TableFault> {
    let text = text.trim_start_matches('\u{feff}');
    if text.len() as u64 > LARGEST_FILE {
        let kind = TableFaultKind::TooLarge { bytes: text.len() };
        return Err(nowhere(kind));
    }
    let mut reader = ReaderBuilder::new()
        .delimiter(separator(text))
        .has_headers(false)
        .flexible(true)
        .trim(Trim::All)
        .from_reader(text.as_bytes());
    let mut records = reader.records();
    let heading = match records.next() {
        Some(record) => record.map_err(|fault| other(&fault))?,
        None => return Err(nowhere(TableFaultKind::NoPoints)),
    };
    let columns = Columns::of(text, &heading)?;
    let mut points = Vec::new();
    let mut seen: BTreeMap<PointRef, u64> = BTreeMap::new();
    for record in records {
        let record = record.map_err(|fault| other(&fault))?;
        if record.iter().all(str::is_empty) {
            continue;
        }
        let (at, triple) = columns.row(&record, unit)?;
        if let Some(first) = seen.insert(at, row(text, &record)) {
            let name = names::name(at);
            let kind = TableFaultKind::PointTwice { name, first };
            return Err(columns.fault(&record, columns.point, kind));
        }
        points.push((at, triple));
    }
    if points.is_empty() {
        return Err(nowhere(TableFaultKind::NoPoints));
    }
    Ok(points)
}

/// Judged by the heading, which holds none of them otherwise.
fn separator(text: &str) -> u8 {
    let heading = text.trim_start().lines().next().unwrap_or_default();
    [b'\t', b';']
        .into_iter()
        .find(|mark| heading.as_bytes().contains(mark))
        .unwrap_or(b',')
}

impl<'a> Columns<'a> {
    fn of(text: &'a str, heading: &StringRecord) -> Result<Self, TableFault> {
        let headings: Vec<String> = heading.iter().map(str::to_owned).collect();
        let fault = |column: Option<usize>, kind| TableFault {
            row: Some(row(text, heading)),
            column: column.and_then(|at| headings.get(at).cloned()),
            kind,
        };
        let place = |name: &'static str| -> Result<usize, TableFault> {
            let mut places = (0..headings.len())
                .filter(|at| headings.get(*at).is_some_and(|h| split(h).0 == name));
            match (places.next(), places.next()) {
                (Some(at), None) => Ok(at),
                (Some(_), second) => Err(fault(second, TableFaultKind::ColumnTwice)),
                (None, _) if name == "point" => {
                    let found = shown(&headings.join(", "));
                    Err(fault(None, TableFaultKind::NoHeading { found }))
                }
                (None, _) => Err(fault(None, TableFaultKind::NoColumn { missing: name })),
            }
        };
        let point = place("point")?;
        let axes = [place("x")?, place("y")?, place("z")?];
        let mut unit = None;
        for (axis, at) in AXES.into_iter().zip(axes) {
            let text = headings.get(at).map(|h| split(h).1).unwrap_or_default();
            let here = match text.as_str() {
                "" => return Err(fault(Some(at), TableFaultKind::NoUnit { axis })),
                "in" | "inch" | "inches" | "\"" => LengthUnit::Inch,
                "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => {
                    LengthUnit::Millimetre
                }
                _ => {
                    let found = shown(&text);
                    return Err(fault(Some(at), TableFaultKind::OddUnit { found }));
                }
            };
            if *unit.get_or_insert(here) != here {
                return Err(fault(Some(at), TableFaultKind::MixedUnits));
            }
        }
        Ok(Self {
            text,
            point,
            axes,
            unit: unit.unwrap_or(LengthUnit::Millimetre),
            headings,
        })
    }

    fn row(
        &self,
        record: &StringRecord,
        unit: LengthUnit,
    ) -> Result<(PointRef, Triple), TableFault> {
        let needed = self.axes.iter().fold(self.point, |a, b| a.max(*b)) + 1;
        if record.len() < needed {
            let kind = TableFaultKind::ShortRow {
                found: record.len(),
                expected: needed,
            };
            return Err(TableFault {
                column: None,
                ..self.fault(record, self.point, kind)
            });
        }
        let cell = |at: usize| record.get(at).unwrap_or_default();
        let name = cell(self.point);
        let at = names::point(name).map_err(|nearest| {
            let name = shown(name);
            let kind = TableFaultKind::UnknownPoint { name, nearest };
            self.fault(record, self.point, kind)
        })?;
        let mut triple = [0.0; 3];
        for (value, column) in triple.iter_mut().zip(self.axes) {
            *value = self
                .length(cell(column), unit)
                .map_err(|fault| self.fault(record, column, fault.into()))?;
        }
        Ok((at, triple))
    }

    fn length(&self, cell: &str, unit: LengthUnit) -> Result<f64, trammel_build::LengthFault> {
        // Spreadsheets write plain numbers of any length, powers of ten among them; what people type is read as such.
        let plain = cell.parse::<f64>().ok().filter(|v| v.is_finite());
        let value = match plain {
            Some(v) => v,
            None => parse_length(cell, self.unit)?,
        };
        Ok(convert_length(value, self.unit, unit))
    }

    fn fault(&self, record: &StringRecord, column: usize, kind: TableFaultKind) -> TableFault {
        TableFault {
            row: Some(row(self.text, record)),
            column: self.headings.get(column).cloned(),
            kind,
        }
    }
}

/// A heading in small letters: the name, and the unit behind it in brackets or after a space.
fn split(heading: &str) -> (String, String) {
    let heading = heading.to_lowercase();
    let end = heading
        .find(|c: char| !c.is_alphanumeric())
        .unwrap_or(heading.len());
    let (name, unit) = heading.split_at_checked(end).unwrap_or_default();
    let around =
        |c: char| c.is_whitespace() || matches!(c, '(' | ')' | '[' | ']' | '_' | '/' | '.');
    (name.to_owned(), unit.trim_matches(around).to_owned())
}

/// The row of a record; the reader's own count is that of the first of the empty rows before it.
fn row(text: &str, record: &StringRecord) -> u64 {
    let Some(position) = record.position() else {
        return 1;
    };
    let rest = usize::try_from(position.byte())
        .ok()
        .and_then(|at| text.get(at..))
        .unwrap_or_default();
    let empty = rest
        .chars()
        .take_while(|c| matches!(c, '\r' | '\n'))
        .filter(|c| *c == '\n');
    position.line() + empty.count() as u64
}

fn nowhere(kind: TableFaultKind) -> TableFault {
    TableFault {
        row: None,
        column: None,
        kind,
    }
}

fn other(fault: &csv::Error) -> TableFault {
    TableFault {
        row: fault.position().map(csv::Position::line),
        column: None,
        kind: TableFaultKind::Other(fault.to_string()),
    }
}
