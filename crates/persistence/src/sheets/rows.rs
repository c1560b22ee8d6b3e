//! The lines of a table of toe readings.

use trammel_build::{LengthUnit, ReadingRow, Side, ToeMethod, TravelMeasure};
use trammel_setup::{Raw, SpotWay, Way};

use super::{
    SheetFileFault, SheetFileFaultKind as Kind,
    cells::Line,
    readings::{place_column, side, way},
};

/// Where the columns are.
pub(super) struct Columns {
    width: usize,
    place: usize,
    travel_by: TravelMeasure,
    first: (usize, &'static str),
    second: Option<(usize, &'static str)>,
    side: Option<usize>,
    given_side: Option<Side>,
    run: Option<usize>,
    rack: Option<usize>,
    ride: Option<usize>,
    method: ToeMethod,
    unit: LengthUnit,
    why: &'static str,
}

impl Columns {
    pub(super) fn of(
        heading: &Line,
        method: ToeMethod,
        given_side: Option<Side>,
        unit: LengthUnit,
    ) -> Result<Self, SheetFileFault> {
        let find = |name: &str| heading.cells().position(|c| c.to_lowercase() == name);
        for name in heading.cells().filter(|c| !c.is_empty()) {
            let same = heading
                .cells()
                .filter(|c| c.eq_ignore_ascii_case(name))
                .count();
            if same > 1 {
                return Err(Kind::Twice(name.to_owned()).at(heading.number, None));
            }
        }
        let (first, second, why) = match method {
            ToeMethod::TwoDials(..) => (
                "front",
                Some("rear"),
                "two dials need a front and a rear number at every place",
            ),
            ToeMethod::Tape(_) => (
                "front",
                Some("rear"),
                "the tape needs a front and a rear reading at every place",
            ),
            ToeMethod::OneDial(..) => ("dial", None, "one dial needs its number at every place"),
            ToeMethod::Laser(..) => (
                "spot",
                Some("way"),
                "a laser needs how far the spot went, and the way: inboard or outboard",
            ),
            ToeMethod::Mirror(_) => (
                "spot",
                Some("way"),
                "a mirror needs how far the spot went, and the way: ahead or back",
            ),
            ToeMethod::Degrees => (
                "toe",
                Some("way"),
                "degrees need the way as a word: IN or OUT",
            ),
        };
        let need = |missing: &'static str| {
            find(missing).ok_or_else(|| Kind::NoColumn { missing, why }.at(heading.number, None))
        };
        let (place, travel_by) = place_column(heading).unwrap_or((0, TravelMeasure::Travel));
        let side = find("side");
        if side.is_none() && given_side.is_none() && !method.reads_both_wheels() {
            let kind = Kind::NoSetting {
                missing: "side",
                example: "side, left",
            };
            return Err(kind.at(heading.number, None));
        }
        Ok(Self {
            width: heading.cells().count(),
            place,
            travel_by,
            first: (need(first)?, first),
            second: second
                .map(|name| need(name).map(|at| (at, name)))
                .transpose()?,
            side,
            given_side,
            run: find("run"),
            rack: find("rack"),
            ride: find("ride"),
            method,
            unit,
            why,
        })
    }

    pub(super) fn travel_by(&self) -> TravelMeasure {
        self.travel_by
    }

    pub(super) fn row(&self, line: &Line) -> Result<ReadingRow, SheetFileFault> {
        if line.cells().skip(self.width).any(|c| !c.is_empty()) {
            let kind = Kind::TooManyCells {
                found: line.cells().count(),
                expected: self.width,
            };
            return Err(kind.at(line.number, None));
        }
        let given = |at: Option<usize>| at.filter(|at| !line.cell(*at).is_empty());
        let side = match (given(self.side), self.given_side) {
            (Some(at), _) => side(line, at)?,
            (None, Some(side)) => side,
            (None, None) if self.method.reads_both_wheels() => Side::Left,
            (None, None) => {
                return Err(line.fault(
                    "side",
                    Kind::EmptyCell {
                        why: "every line needs its wheel, left or right",
                    },
                ));
            }
        };
        let run = match given(self.run) {
            Some(at) => self.run(line, at)?,
            None => 1,
        };
        let ride = match given(self.ride).map(|at| line.cell(at).to_lowercase()) {
            None => false,
            Some(word) if matches!(word.as_str(), "yes" | "x" | "ride") => true,
            Some(word) if word == "no" => false,
            Some(found) => {
                return Err(line.fault(
                    "ride",
                    Kind::OddWord {
                        found,
                        expected: "`yes` at ride height, else nothing",
                    },
                ));
            }
        };
        Ok(ReadingRow {
            side,
            run,
            rack: given(self.rack).map_or(Ok(0.0), |at| line.length(at, "rack", self.unit))?,
            place: self.place(line)?,
            ride,
            shown: self.shown(line)?,
        })
    }

    fn run(&self, line: &Line, at: usize) -> Result<u32, SheetFileFault> {
        let found = line.cell(at);
        let run = found.parse::<u32>().ok().filter(|n| (1..=1000).contains(n));
        run.ok_or_else(|| {
            let kind = Kind::NoNumber {
                found: found.to_owned(),
                expected: "the run's number, from 1",
            };
            line.fault("run", kind)
        })
    }

    /// A length, or for travel a word before it: `up 25`, `down 25`.
    fn place(&self, line: &Line) -> Result<f64, SheetFileFault> {
        let column = "where the wheel was";
        let cell = line.cell(self.place);
        if cell.is_empty() {
            return Err(line.fault(
                column,
                Kind::EmptyCell {
                    why: "a reading counts only with the wheel's place",
                },
            ));
        }
        if self.travel_by != TravelMeasure::Travel {
            return line.length(self.place, column, self.unit);
        }
        let lower = cell.to_lowercase();
        let worded = [("up", 1.0), ("down", -1.0)]
            .into_iter()
            .find_map(|(word, sign)| {
                lower
                    .strip_prefix(word)
                    .map(|rest| (rest.trim().to_owned(), sign))
            });
        let Some((rest, sign)) = worded else {
            return line.length(self.place, column, self.unit);
        };
        if rest.starts_with(['-', '+', '\u{2212}']) {
            return Err(line.fault(
                column,
                Kind::Sign {
                    found: cell.to_owned(),
                    words: "the word `up` or `down`",
                },
            ));
        }
        let size = trammel_build::parse_length(&rest, self.unit);
        size.map(|v| sign * v)
            .map_err(|f| line.fault(column, f.into()))
    }

    fn shown(&self, line: &Line) -> Result<Raw, SheetFileFault> {
        for (at, name) in std::iter::once(self.first).chain(self.second) {
            // Nought degrees are neither in nor out.
            let needless = at != self.first.0 && self.is_nought_degrees(line);
            if line.cell(at).is_empty() && !needless {
                return Err(line.fault(name, Kind::EmptyCell { why: self.why }));
            }
        }
        let length = |(at, name)| line.length(at, name, self.unit);
        let second = self.second.unwrap_or(self.first);
        match self.method {
            ToeMethod::TwoDials(..) | ToeMethod::Tape(_) => Ok(Raw::Pair {
                front: length(self.first)?,
                rear: length(second)?,
            }),
            ToeMethod::OneDial(..) => Ok(Raw::Dial(length(self.first)?)),
            ToeMethod::Laser(..) | ToeMethod::Mirror(_) => {
                self.unsigned(line, "the way the spot went")?;
                Ok(Raw::Spot(length(self.first)?, self.spot_way(line, second)?))
            }
            ToeMethod::Degrees => {
                self.unsigned(line, "IN or OUT")?;
                let size = line.number(self.first.0, self.first.1, "degrees, such as 0.25")?;
                let way = if size == 0.0 {
                    Way::In
                } else {
                    way(line, second.0, second.1, "`IN` or `OUT`")?
                };
                Ok(Raw::Degrees(size, way))
            }
        }
    }

    fn is_nought_degrees(&self, line: &Line) -> bool {
        self.method == ToeMethod::Degrees && line.cell(self.first.0).parse::<f64>() == Ok(0.0)
    }

    fn unsigned(&self, line: &Line, words: &'static str) -> Result<(), SheetFileFault> {
        let found = line.cell(self.first.0);
        if found.starts_with(['-', '+', '\u{2212}']) {
            let kind = Kind::Sign {
                found: found.to_owned(),
                words,
            };
            return Err(line.fault(self.first.1, kind));
        }
        Ok(())
    }

    fn spot_way(
        &self,
        line: &Line,
        (at, name): (usize, &'static str),
    ) -> Result<SpotWay, SheetFileFault> {
        let word = line.cell(at).to_lowercase();
        match (self.method, word.as_str()) {
            (ToeMethod::Laser(..), "inboard" | "in") => Ok(SpotWay::Inboard),
            (ToeMethod::Laser(..), "outboard" | "out") => Ok(SpotWay::Outboard),
            (ToeMethod::Mirror(_), "ahead") => Ok(SpotWay::Ahead),
            (ToeMethod::Mirror(_), "back") => Ok(SpotWay::Back),
            _ => {
                let expected = match self.method {
                    ToeMethod::Laser(..) => "`inboard` or `outboard`",
                    _ => "`ahead` or `back`",
                };
                Err(line.fault(
                    name,
                    Kind::OddWord {
                        found: word,
                        expected,
                    },
                ))
            }
        }
    }
}
