//! Lines of readings as they are typed and shown.

use trammel_build::{
    AxleModel, Build, LengthUnit, ReadingRow, Session, Side, ToeMethod, TravelMeasure,
    format_length, parse_length,
};
use trammel_setup::{Raw, SpotWay, Way};

use super::settings::{Entry, SetUpView};

/// What the method's number, or first number, is called.
pub(crate) fn first_word(method: ToeMethod) -> &'static str {
    match method {
        ToeMethod::TwoDials(..) | ToeMethod::Tape(_) => "Front",
        ToeMethod::OneDial(..) => "Dial",
        ToeMethod::Laser(..) | ToeMethod::Mirror(_) => "Spot",
        ToeMethod::Degrees => "Toe",
    }
}

/// What the second number is called, where the method has two.
pub(crate) fn second_word(method: ToeMethod) -> Option<&'static str> {
    matches!(method, ToeMethod::TwoDials(..) | ToeMethod::Tape(_)).then_some("Rear")
}

/// What can be typed as the number.
pub(crate) fn first_hint(method: ToeMethod) -> &'static str {
    match method {
        ToeMethod::Laser(..) => "3 inboard",
        ToeMethod::Mirror(_) => "3 ahead",
        ToeMethod::Degrees => "0.2 in",
        ToeMethod::TwoDials(..) | ToeMethod::Tape(_) | ToeMethod::OneDial(..) => "",
    }
}

/// What places are called.
pub(crate) fn place_word(by: TravelMeasure) -> &'static str {
    match by {
        TravelMeasure::Travel => "Travel",
        TravelMeasure::WheelHeight => "Height",
        TravelMeasure::ShockLength => "Shock",
        TravelMeasure::Blocks => "Blocks",
    }
}

/// The first and second cell of a reading.
pub(crate) fn shown(raw: Raw, unit: LengthUnit) -> [String; 2] {
    let length = |v| format_length(v, unit);
    match raw {
        Raw::Pair { front, rear } => [length(front), length(rear)],
        Raw::Dial(v) => [length(v), String::new()],
        Raw::Spot(v, way) => {
            let word = match way {
                SpotWay::Inboard => "inboard",
                SpotWay::Outboard => "outboard",
                SpotWay::Ahead => "ahead",
                SpotWay::Back => "back",
            };
            [format!("{} {word}", length(v)), String::new()]
        }
        Raw::Degrees(0.0, _) => ["0".to_owned(), String::new()],
        Raw::Degrees(v, way) => [format!("{v} {way}"), String::new()],
    }
}

/// What was typed, read as the method wants it; or what was read and what is expected.
pub(crate) fn raw(
    method: ToeMethod,
    first: &str,
    second: &str,
    unit: LengthUnit,
) -> Result<Raw, String> {
    let length = |text: &str| parse_length(text.trim(), unit).map_err(|f| f.to_string());
    let read = match method {
        ToeMethod::TwoDials(..) | ToeMethod::Tape(_) => Raw::Pair {
            front: length(first)?,
            rear: length(second)?,
        },
        ToeMethod::OneDial(..) => Raw::Dial(length(first)?),
        ToeMethod::Laser(..) => {
            let ways = [
                ("inboard", SpotWay::Inboard),
                ("outboard", SpotWay::Outboard),
            ];
            let (number, way) = worded(first, &ways)?;
            Raw::Spot(length(number)?, way)
        }
        ToeMethod::Mirror(_) => {
            let ways = [("ahead", SpotWay::Ahead), ("back", SpotWay::Back)];
            let (number, way) = worded(first, &ways)?;
            Raw::Spot(length(number)?, way)
        }
        ToeMethod::Degrees => {
            let (number, way) = worded(first, &[("in", Way::In), ("out", Way::Out)])?;
            let degrees = number.trim_end_matches(['°', ' ']).parse::<f64>();
            let degrees = degrees.ok().filter(|v| v.is_finite()).ok_or_else(|| {
                format!("Read “{first}”, expected degrees and a word, such as 0.2 in.")
            })?;
            Raw::Degrees(degrees, way)
        }
    };
    method
        .kernel(unit)
        .toe(in_mm(read, unit))
        .map_err(|f| f.to_string())?;
    Ok(read)
}

fn in_mm(raw: Raw, unit: LengthUnit) -> Raw {
    let mm = unit.mm();
    match raw {
        Raw::Pair { front, rear } => Raw::Pair {
            front: front * mm,
            rear: rear * mm,
        },
        Raw::Dial(v) => Raw::Dial(v * mm),
        Raw::Spot(v, way) => Raw::Spot(v * mm, way),
        Raw::Degrees(..) => raw,
    }
}

/// A number with a word behind it; the word may be short. Nought needs none. A sign is refused: the word alone says which way.
fn worded<'a, W: Copy>(text: &'a str, words: &[(&str, W)]) -> Result<(&'a str, W), String> {
    let text = text.trim();
    let names: Vec<&str> = words.iter().map(|(w, _)| *w).collect();
    let expected = names.join(" or ");
    if text.starts_with(['-', '+', '−']) {
        return Err(format!(
            "“{text}” has a sign; write the size alone and {expected} behind it."
        ));
    }
    let letters = text
        .char_indices()
        .rev()
        .take_while(|(_, c)| c.is_alphabetic())
        .last();
    let at = letters.map_or(text.len(), |(at, _)| at);
    let (number, word) = text.split_at_checked(at).unwrap_or((text, ""));
    let word = word.to_lowercase();
    let fits = |w: &&(&str, W)| !word.is_empty() && w.0.starts_with(&word);
    if let Some((_, way)) = words.iter().find(fits) {
        return Ok((number.trim(), *way));
    }
    let nought = text.parse::<f64>().is_ok_and(|v| v == 0.0);
    match words.first().filter(|_| nought) {
        Some((_, way)) => Ok((text, *way)),
        None => Err(format!(
            "Read “{text}”, expected a size with {expected} behind it, such as 0.2 {}.",
            names.first().unwrap_or(&"")
        )),
    }
}

/// The lines of a session that belong to what is looked at, with their places in it.
pub(crate) fn looked_at<'a>(
    session: &'a Session,
    view: &SetUpView,
) -> impl Iterator<Item = (usize, &'a ReadingRow)> {
    let both = session.method.reads_both_wheels();
    let side = view.side;
    session
        .rows
        .iter()
        .enumerate()
        .filter(move |(_, r)| both || r.side == side)
}

/// The lines of the run that is being read.
fn of_run<'a>(session: &'a Session, view: &'a SetUpView) -> impl Iterator<Item = &'a ReadingRow> {
    looked_at(session, view)
        .map(|(_, r)| r)
        .filter(|r| r.run == view.run && r.rack == view.rack)
}

/// The place that the next line is most likely read at, in the build's unit as a tape shows it.
pub(crate) fn next_place(
    session: &Session,
    view: &SetUpView,
    build: &Build,
    model: &AxleModel,
) -> Option<f64> {
    let stations = trammel_cards::stations(model, view.side, build.unit).ok()?;
    let station = stations.get(of_run(session, view).count())?;
    let mm = match session.travel_by {
        TravelMeasure::Travel => station.travel,
        TravelMeasure::WheelHeight => station.wheel_height,
        TravelMeasure::ShockLength => station.shock_length?,
        TravelMeasure::Blocks => return None,
    };
    let step = match build.unit {
        LengthUnit::Inch => 1.0 / 32.0,
        LengthUnit::Millimetre => 0.5,
    };
    Some((build.unit.from_mm(mm) / step).round() * step)
}

/// The line that was typed. The first line of a run, and those at the same place, are ride height.
pub(crate) fn entered(
    entry: &Entry,
    session: &Session,
    view: &SetUpView,
    unit: LengthUnit,
    next: Option<f64>,
) -> Result<ReadingRow, String> {
    let place = match (entry.place.trim(), next) {
        ("", Some(next)) => next,
        ("", None) => return Err("The place is empty; type where the wheel is.".to_owned()),
        (typed, _) => parse_length(typed, unit).map_err(|f| f.to_string())?,
    };
    let ride = if session.travel_by == TravelMeasure::Travel {
        place == 0.0
    } else {
        of_run(session, view)
            .find(|r| r.ride)
            .is_none_or(|r| (r.place - place).abs() < 1e-9)
    };
    let side = if session.method.reads_both_wheels() {
        Side::Left
    } else {
        view.side
    };
    Ok(ReadingRow {
        side,
        run: view.run,
        rack: view.rack,
        place,
        ride,
        shown: raw(session.method, &entry.first, &entry.second, unit)?,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test stops where it fails")]
    use super::*;

    #[test]
    fn degrees_want_a_word_and_refuse_a_sign() {
        let read = |text| raw(ToeMethod::Degrees, text, "", LengthUnit::Inch);
        assert_eq!(read("0.2 in").unwrap(), Raw::Degrees(0.2, Way::In));
        assert_eq!(read("0.35o").unwrap(), Raw::Degrees(0.35, Way::Out));
        assert_eq!(read("0").unwrap(), Raw::Degrees(0.0, Way::In));
        assert!(read("-0.2").unwrap_err().contains("sign"));
        assert!(read("0.2").unwrap_err().contains("in or out"));
        assert!(read("in").is_err());
    }

    #[test]
    fn a_spot_is_a_length_with_a_word() {
        let laser = ToeMethod::Laser(120.0, trammel_setup::Board::Ahead);
        let read = |text| raw(laser, text, "", LengthUnit::Inch);
        assert_eq!(
            read("3/8 out").unwrap(),
            Raw::Spot(0.375, SpotWay::Outboard)
        );
        assert!(read("3/8").is_err());
        assert!(read("1/2 ahead").is_err());
    }

    #[test]
    fn two_dials_want_both() {
        let dials = ToeMethod::TwoDials(10.0, Way::In);
        assert!(raw(dials, "0.1", "", LengthUnit::Inch).is_err());
        let pair = raw(dials, "0.1", "-0.2", LengthUnit::Inch).unwrap();
        assert_eq!(
            pair,
            Raw::Pair {
                front: 0.1,
                rear: -0.2
            }
        );
    }
}
