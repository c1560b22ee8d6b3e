//! The tape survey of the build, adjusted.

use trammel_analysis::surveyed;
use trammel_build::{AxleName, Build, LengthUnit, Side, format_length};
use trammel_persistence::{SurveyFile, read_survey};
use trammel_setup::{Moved, Placed, Surveyed, What, suggest};

use crate::request::Request;

/// What a further reading would be good for, mm (common practice, no source).
const FURTHER: f64 = 1.0;
/// Suggestions worth reading.
const SUGGESTIONS: usize = 3;

/// Where a survey stands.
pub(crate) struct SurveyAnswer {
    /// The survey as it reads; why not, where it doesn't.
    pub file: Result<SurveyFile, String>,
    /// Coordinates; why there are none yet.
    pub found: Result<Surveyed, String>,
    /// Which readings would help most, in words.
    pub further: Vec<String>,
    /// What stands elsewhere than it was drawn, by side.
    pub moved: Vec<(AxleName, Side, Moved)>,
}

/// A kind of line.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Kind {
    /// Its word.
    pub word: &'static str,
    /// Whether it names a second point.
    pub two: bool,
    /// An example of what is read.
    pub hint: &'static str,
    /// What it is for.
    pub about: &'static str,
}

const fn kind(word: &'static str, two: bool, hint: &'static str, about: &'static str) -> Kind {
    Kind {
        word,
        two,
        hint,
        about,
    }
}

/// Kinds of lines.
pub(crate) const KINDS: [Kind; 10] = [
    kind(
        "mark",
        false,
        "x, y, z",
        "A place on table or frame whose coordinates you know; a fourth number: how well, if it was measured itself.",
    ),
    kind(
        "point",
        false,
        "above",
        "A hardpoint to find. Above, below, left, right, ahead or behind tells which of two mirror places; or three numbers: about where.",
    ),
    kind(
        "tape",
        true,
        "412.5",
        "A tape from one point to another, centre to centre. Behind it: from near 12 or to far 12 for an edge of a hole of that diameter, starts 1 for a burned end, round if it went round something.",
    ),
    kind(
        "height",
        false,
        "263",
        "Height above the datum, by square or height gauge.",
    ),
    kind(
        "offset",
        false,
        "210",
        "By plumb bob: from the centre line, to the left positive.",
    ),
    kind(
        "station",
        false,
        "95",
        "By plumb bob: from the front axle's line, forward positive.",
    ),
    kind(
        "rise",
        true,
        "40",
        "How much higher the second point is than the first.",
    ),
    kind(
        "left",
        true,
        "40",
        "By plumb bobs from both: how much further left the second point is.",
    ),
    kind(
        "forward",
        true,
        "40",
        "By plumb bobs from both: how much further forward the second point is.",
    ),
    kind(
        "angle",
        true,
        "4.5",
        "By an angle gauge on a bar from the first to the second point: degrees, rising positive.",
    ),
];

/// The survey of a build.
pub(crate) fn answer(build: &Build) -> SurveyAnswer {
    let file = read_survey(&build.set_up.survey.join("\n")).map_err(|f| f.to_string());
    let found = match &file {
        Ok(file) => file.survey.adjust().map_err(|f| f.to_string()),
        Err(_) => Err(String::new()),
    };
    let further = file.as_ref().map_or_else(|_| Vec::new(), further);
    let moved = match (&file, &found) {
        (Ok(file), Ok(found)) => surveyed::as_built(build, &file.survey, found),
        _ => Vec::new(),
    };
    SurveyAnswer {
        file,
        found,
        further,
        moved,
    }
}

fn further(file: &SurveyFile) -> Vec<String> {
    suggest(&file.survey, FURTHER)
        .into_iter()
        .take(SUGGESTIONS)
        .map(|s| {
            let digits = if file.unit == LengthUnit::Inch { 3 } else { 1 };
            let [now, then] =
                [s.own_now, s.own_then].map(|v| format!("{:.digits$}", file.unit.from_mm(v)));
            format!(
                "{}, about {}: its place is then known to {then} {} instead of {now}",
                file.survey.describe(s.what),
                said(s.what, s.about, file.unit),
                file.unit.sign()
            )
        })
        .collect()
}

/// A reading's size in words.
pub(crate) fn said(what: What, value: f64, unit: LengthUnit) -> String {
    if what.is_angle() {
        format!("{:.2}°", value.to_degrees())
    } else {
        match unit {
            LengthUnit::Inch => format!("{:.3} in", unit.from_mm(value)),
            LengthUnit::Millimetre => format!("{value:.1} mm"),
        }
    }
}

/// The survey put into the build as one step; `None` when it holds no hardpoint.
pub(crate) fn take(build: &Build, file: &SurveyFile, found: &Surveyed) -> Option<Request> {
    let edits = surveyed::edits(build, &file.survey, found);
    (!edits.is_empty()).then(|| Request::EditAs {
        name: "Take the tape survey into the build".to_owned(),
        edits,
    })
}

/// A place in the survey's unit.
pub(crate) fn place_words(placed: &Placed, unit: LengthUnit) -> String {
    let at = [placed.at.x, placed.at.y, placed.at.z].map(|v| unit.from_mm(v));
    let round = |v: f64| match unit {
        LengthUnit::Inch => format_length((v * 1000.0).round() / 1000.0, unit),
        LengthUnit::Millimetre => format!("{v:.1}"),
    };
    at.map(round).join(", ")
}
