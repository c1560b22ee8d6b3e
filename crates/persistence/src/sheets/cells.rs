//! A sheet taken apart into lines of cells.

use csv::{ReaderBuilder, Trim};
use trammel_build::{LengthUnit, parse_length};

use super::{SheetFileFault, SheetFileFaultKind as Kind};
use crate::LARGEST_FILE;

/// A line that is neither empty nor a remark.
pub(super) struct Line {
    pub number: u64,
    cells: Vec<String>,
}

impl Line {
    /// A cell, empty where the line ends before it.
    pub(super) fn cell(&self, at: usize) -> &str {
        self.cells.get(at).map_or("", String::as_str)
    }

    pub(super) fn cells(&self) -> impl Iterator<Item = &str> {
        self.cells.iter().map(String::as_str)
    }

    /// The first cell as a key word.
    pub(super) fn word(&self) -> String {
        self.cell(0).to_lowercase()
    }

    pub(super) fn fault(&self, column: &str, kind: Kind) -> SheetFileFault {
        kind.at(self.number, Some(column))
    }

    /// A length in a cell.
    pub(super) fn length(
        &self,
        at: usize,
        column: &str,
        unit: LengthUnit,
    ) -> Result<f64, SheetFileFault> {
        parse_length(self.cell(at), unit).map_err(|f| self.fault(column, f.into()))
    }

    /// A plain number in a cell.
    pub(super) fn number(
        &self,
        at: usize,
        column: &str,
        expected: &'static str,
    ) -> Result<f64, SheetFileFault> {
        let found = self.cell(at);
        let number = found
            .replace('\u{2212}', "-")
            .parse::<f64>()
            .ok()
            .filter(|v| v.is_finite());
        number.ok_or_else(|| {
            self.fault(
                column,
                Kind::NoNumber {
                    found: found.to_owned(),
                    expected,
                },
            )
        })
    }
}

/// The lines of a text. Commas, semicolons or tabs part the cells, as in its first line; `#` starts a remark.
pub(super) fn lines(text: &str) -> Result<Vec<Line>, SheetFileFault> {
    let text = text.trim_start_matches('\u{feff}');
    if text.len() as u64 > LARGEST_FILE {
        return Err(Kind::TooLarge { bytes: text.len() }.nowhere());
    }
    let first = text
        .lines()
        .find(|l| !l.trim().is_empty() && !l.starts_with('#'))
        .unwrap_or_default();
    let separator = [b'\t', b';']
        .into_iter()
        .find(|m| first.as_bytes().contains(m))
        .unwrap_or(b',');
    let mut reader = ReaderBuilder::new()
        .delimiter(separator)
        .has_headers(false)
        .flexible(true)
        .comment(Some(b'#'))
        .trim(Trim::All)
        .from_reader(text.as_bytes());
    let mut lines = Vec::new();
    for record in reader.records() {
        let record = record.map_err(|e| Kind::NotTable(e.to_string()).nowhere())?;
        if record.iter().all(str::is_empty) {
            continue;
        }
        let number = record.position().map_or(0, csv::Position::line);
        lines.push(Line {
            number,
            cells: record.iter().map(str::to_owned).collect(),
        });
    }
    Ok(lines)
}

/// The unit that a line `unit, mm` gives.
pub(super) fn unit(line: &Line) -> Result<LengthUnit, SheetFileFault> {
    match line.cell(1).to_lowercase().as_str() {
        "mm" => Ok(LengthUnit::Millimetre),
        "in" | "inch" => Ok(LengthUnit::Inch),
        found => Err(line.fault(
            "unit",
            Kind::OddWord {
                found: found.to_owned(),
                expected: "`mm` or `in`",
            },
        )),
    }
}
