//! A tape survey as a table: a line for each mark, each sought point and each reading.

use trammel_build::LengthUnit;
use trammel_geometry::{Point, Vector};
use trammel_setup::{
    Correction, Edge, Hint, Place, PointId, Reach, Reading, Side, Survey, TapeClass, What,
    tape_deviation,
};
use trammel_tuning::Axis;

use super::{
    SheetFileFault, SheetFileFaultKind as Kind,
    cells::{Line, lines, unit},
};

/// A survey read from a table.
#[derive(Clone, Debug, PartialEq)]
pub struct SurveyFile {
    /// The survey, mm.
    pub survey: Survey,
    /// The unit that it was written in.
    pub unit: LengthUnit,
}

const WORDS: &str = "`unit`, `tape class`, `mark`, `point`, `tape`, `height`, `offset`, `station`, `rise`, `left`, `forward` and `angle`";
const SIDES: &str = "`above`, `below`, `left`, `right`, `ahead` or `behind`, or three numbers: about where it was drawn";
const EXTRAS: &str = "`accuracy 2`, `round` for a tape held round something, `starts 25.4` for a burned end, `from near 12`, `from far 12`, `to near 12` or `to far 12` for an edge of a hole of that diameter";
/// Standard deviation of a height or offset by square and plumb bob, mm, and of an angle gauge, degrees (common practice, no source).
const OFFSET_DEVIATION: f64 = 1.0;
const ANGLE_DEVIATION: f64 = 0.15;

/// The survey that a table holds; lengths in mm where no line `unit` says otherwise.
///
/// # Errors
/// The first [`SheetFileFault`]; then nothing of the table is used.
pub fn read_survey(text: &str) -> Result<SurveyFile, SheetFileFault> {
    let mut reader = Reader {
        survey: Survey::new(),
        unit: LengthUnit::Millimetre,
        class: TapeClass::Two,
    };
    for line in lines(text)? {
        reader.line(&line)?;
    }
    if reader.survey.readings().is_empty() {
        let expected = "expected lines such as `mark, A, 0, 0, 0`, `point, joint, above` and `tape, A, joint, 412`";
        return Err(Kind::Nothing { expected }.nowhere());
    }
    Ok(SurveyFile {
        survey: reader.survey,
        unit: reader.unit,
    })
}

struct Reader {
    survey: Survey,
    unit: LengthUnit,
    class: TapeClass,
}

/// What may stand behind a reading.
struct Extras {
    deviation: Option<f64>,
    reach: Reach,
    correction: Correction,
}

impl Reader {
    fn line(&mut self, line: &Line) -> Result<(), SheetFileFault> {
        match line.word().as_str() {
            "unit" => self.unit = unit(line)?,
            "tape class" => self.class = class(line)?,
            "mark" => self.mark(line)?,
            "point" => self.point(line)?,
            "tape" => self.reading(line, What::Distance)?,
            "height" => self.one(line, Axis::Z)?,
            "offset" => self.one(line, Axis::Y)?,
            "station" => self.one(line, Axis::X)?,
            "rise" => self.reading(line, |a, b| What::Difference(a, b, Axis::Z))?,
            "left" => self.reading(line, |a, b| What::Difference(a, b, Axis::Y))?,
            "forward" => self.reading(line, |a, b| What::Difference(a, b, Axis::X))?,
            "angle" => self.reading(line, What::Slope)?,
            _ => {
                let kind = Kind::UnknownWord {
                    found: line.cell(0).to_owned(),
                    known: WORDS,
                };
                return Err(kind.at(line.number, None));
            }
        }
        Ok(())
    }

    fn triple(&self, line: &Line, from: usize) -> Result<Point, SheetFileFault> {
        let mm = |at, axis| Ok(line.length(at, axis, self.unit)? * self.unit.mm());
        Ok(Point::new(
            mm(from, "x")?,
            mm(from + 1, "y")?,
            mm(from + 2, "z")?,
        ))
    }

    fn mark(&mut self, line: &Line) -> Result<(), SheetFileFault> {
        let at = self.triple(line, 2)?;
        let place = match line.cell(5) {
            "" => Place::Given(at),
            _ => {
                let known = line.length(5, "accuracy", self.unit)? * self.unit.mm();
                Place::Measured(at, Vector::new(known, known, known))
            }
        };
        self.add(line, place)
    }

    fn point(&mut self, line: &Line) -> Result<(), SheetFileFault> {
        let word = line.cell(2).to_lowercase();
        let side = Side::ALL.into_iter().find(|s| s.word() == word);
        let hint = match (word.as_str(), side) {
            ("", _) => None,
            (_, Some(side)) => Some(Hint::Side(side)),
            _ if line.cell(3).is_empty() => {
                return Err(line.fault(
                    "side",
                    Kind::OddWord {
                        found: word,
                        expected: SIDES,
                    },
                ));
            }
            _ => Some(Hint::Near(self.triple(line, 2)?)),
        };
        self.add(line, Place::Sought(hint))
    }

    fn add(&mut self, line: &Line, place: Place) -> Result<(), SheetFileFault> {
        let name = line.cell(1);
        if name.is_empty() {
            return Err(line.fault(
                "name",
                Kind::EmptyCell {
                    why: "every mark and point needs a name",
                },
            ));
        }
        let added = self.survey.add_point(name, place);
        added.map(|_| ()).map_err(|f| line.fault("name", f.into()))
    }

    fn named(&self, line: &Line, at: usize) -> Result<PointId, SheetFileFault> {
        let name = line.cell(at);
        if name.is_empty() {
            return Err(line.fault(
                "name",
                Kind::EmptyCell {
                    why: "a reading needs the points it is about",
                },
            ));
        }
        self.survey
            .point(name)
            .ok_or_else(|| line.fault("name", Kind::NoPoint(name.to_owned())))
    }

    fn one(&mut self, line: &Line, axis: Axis) -> Result<(), SheetFileFault> {
        let point = self.named(line, 1)?;
        self.take(line, 2, What::Offset(point, axis))
    }

    fn reading(
        &mut self,
        line: &Line,
        what: fn(PointId, PointId) -> What,
    ) -> Result<(), SheetFileFault> {
        let what = what(self.named(line, 1)?, self.named(line, 2)?);
        self.take(line, 3, what)
    }

    fn take(&mut self, line: &Line, at: usize, what: What) -> Result<(), SheetFileFault> {
        if line.cell(at).is_empty() {
            return Err(line.fault(
                "reading",
                Kind::EmptyCell {
                    why: "a reading needs its number",
                },
            ));
        }
        let extras = self.extras(line, at + 1)?;
        let (value, usual) = if what.is_angle() {
            (
                line.number(at, "reading", "degrees, such as 4.5")?
                    .to_radians(),
                ANGLE_DEVIATION,
            )
        } else {
            (
                line.length(at, "reading", self.unit)? * self.unit.mm(),
                OFFSET_DEVIATION,
            )
        };
        let scale = |v: f64| if what.is_angle() { v.to_radians() } else { v };
        let (value, usual) = match what {
            What::Distance(..) => {
                let distance = extras.correction.distance(value);
                (distance, tape_deviation(value, self.class, extras.reach))
            }
            _ => (value, scale(usual)),
        };
        let deviation = match extras.deviation {
            Some(v) if what.is_angle() => scale(v),
            Some(v) => v * self.unit.mm(),
            None => usual,
        };
        let reading = Reading {
            what,
            value,
            deviation,
        };
        let taken = self.survey.add_reading(reading);
        taken
            .map(|_| ())
            .map_err(|f| line.fault("reading", f.into()))
    }

    fn extras(&self, line: &Line, from: usize) -> Result<Extras, SheetFileFault> {
        let mut extras = Extras {
            deviation: None,
            reach: Reach::Open,
            correction: Correction::NONE,
        };
        for cell in line.cells().skip(from).filter(|c| !c.is_empty()) {
            let odd = || {
                line.fault(
                    "note",
                    Kind::OddWord {
                        found: cell.to_owned(),
                        expected: EXTRAS,
                    },
                )
            };
            let lower = cell.to_lowercase();
            let words: Vec<&str> = lower.split_whitespace().collect();
            let number = |text: &[&str]| {
                trammel_build::parse_length(&text.join(" "), self.unit)
                    .map_err(|f| line.fault("note", f.into()))
            };
            let mm = |text: &[&str]| number(text).map(|v| v * self.unit.mm());
            match words.as_slice() {
                ["accuracy", rest @ ..] => extras.deviation = Some(number(rest)?),
                ["round"] => extras.reach = Reach::RoundObstacle,
                ["starts", rest @ ..] => extras.correction.started_at = mm(rest)?,
                ["from", "near", rest @ ..] => extras.correction.from = Edge::Near(mm(rest)?),
                ["from", "far", rest @ ..] => extras.correction.from = Edge::Far(mm(rest)?),
                ["to", "near", rest @ ..] => extras.correction.to = Edge::Near(mm(rest)?),
                ["to", "far", rest @ ..] => extras.correction.to = Edge::Far(mm(rest)?),
                _ => return Err(odd()),
            }
        }
        Ok(extras)
    }
}

fn class(line: &Line) -> Result<TapeClass, SheetFileFault> {
    match line.cell(1).to_lowercase().as_str() {
        "1" | "i" => Ok(TapeClass::One),
        "2" | "ii" => Ok(TapeClass::Two),
        found => {
            let kind = Kind::OddWord {
                found: found.to_owned(),
                expected: "`1` or `2`",
            };
            Err(line.fault("tape class", kind))
        }
    }
}
