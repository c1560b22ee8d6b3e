//! The tape survey of the build, adjusted.

use trammel_build::{
    AxleName, Build, Edit, LengthUnit, PointName, PointRef, Side, SurveyedPoint, Triple,
    format_length,
};
use trammel_persistence::{SurveyFile, read_survey};
use trammel_setup::{Moved, Placed, Surveyed, What, moved, suggest};
use trammel_tuning::Stations;

use crate::{request::Request, tune::points::EXACT};

/// What a further reading would be good for, mm (common practice, no source).
const FURTHER: f64 = 1.0;
/// Suggestions worth reading.
const SUGGESTIONS: usize = 3;
/// Less than this, mm, has not moved.
pub(crate) const LEAST: f64 = 0.05;
/// Travels at which toe is judged.
pub(crate) const STATIONS: usize = 13;

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
        (Ok(file), Ok(found)) => as_built(build, file, found),
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

/// The hardpoint of a surveyed name: `tie_rod.inner` is the left front one, `front.right.tie_rod.inner` says it all.
pub(crate) fn hardpoint(name: &str) -> Option<PointRef> {
    let mut rest = name.trim();
    let mut at = (AxleName::Front, Side::Left);
    for axle in [AxleName::Front, AxleName::Rear] {
        if let Some(r) = rest
            .strip_prefix(axle.word())
            .and_then(|r| r.strip_prefix('.'))
        {
            (rest, at.0) = (r, axle);
        }
    }
    for side in [Side::Left, Side::Right] {
        if let Some(r) = rest
            .strip_prefix(side.word())
            .and_then(|r| r.strip_prefix('.'))
        {
            (rest, at.1) = (r, side);
        }
    }
    let point = PointName::from_path(rest)?;
    Some(PointRef {
        axle: at.0,
        side: at.1,
        point,
    })
}

/// The surveyed points that are hardpoints of the build.
pub(crate) fn hardpoints<'a>(
    build: &'a Build,
    file: &'a SurveyFile,
    found: &'a Surveyed,
) -> impl Iterator<Item = (PointRef, &'a Placed)> {
    found.points.iter().filter_map(move |p| {
        let at = hardpoint(file.survey.name(p.point))?;
        build.point(at).map(|_| (at, p))
    })
}

/// The edits that put the survey into the build.
pub(crate) fn edits(build: &Build, file: &SurveyFile, found: &Surveyed) -> Vec<Edit> {
    let unit = build.unit;
    let tidy = |mm: f64| (unit.from_mm(mm) * EXACT).round() / EXACT;
    let square = unit.mm() * unit.mm();
    let mut edits = Vec::new();
    let mut taken: Vec<(PointRef, Triple, SurveyedPoint)> = Vec::new();
    for (at, placed) in hardpoints(build, file, found) {
        if at.side == Side::Right && !build.has_own_right_point(at.axle, at.point) {
            edits.push(Edit::SeparateRight(at.axle, at.point));
        }
        let c = placed.covariance / square;
        let known = SurveyedPoint {
            variances: [c.m11, c.m22, c.m33],
            covariances: [c.m12, c.m13, c.m23],
        };
        let to = [tidy(placed.at.x), tidy(placed.at.y), tidy(placed.at.z)];
        taken.push((at, to, known));
    }
    if !taken.is_empty() {
        edits.push(Edit::TakeSurvey(taken));
    }
    edits
}

/// The survey put into the build as one step; `None` when it holds no hardpoint.
pub(crate) fn take(build: &Build, file: &SurveyFile, found: &Surveyed) -> Option<Request> {
    let edits = edits(build, file, found);
    (!edits.is_empty()).then(|| Request::EditAs {
        name: "Take the tape survey into the build".to_owned(),
        edits,
    })
}

/// What stands elsewhere than it was drawn, axle by axle, and what it does to toe.
fn as_built(build: &Build, file: &SurveyFile, found: &Surveyed) -> Vec<(AxleName, Side, Moved)> {
    let built = edits(build, file, found)
        .iter()
        .try_fold(build.clone(), |b, e| e.apply(&b).ok());
    let Some(built) = built else {
        return Vec::new();
    };
    [AxleName::Front, AxleName::Rear]
        .into_iter()
        .flat_map(|axle| {
            let of = move |(side, moved)| (axle, side, moved);
            moved_axle(build, &built, axle).into_iter().map(of)
        })
        .collect()
}

/// The same of one axle; nothing where either build has none that can be posed.
fn moved_axle(drawn: &Build, built: &Build, axle: AxleName) -> Vec<(Side, Moved)> {
    let (Ok(before), Ok(after)) = (drawn.axle(axle), built.axle(axle)) else {
        return Vec::new();
    };
    let range = before.travel;
    let Ok(stations) = Stations::even(range.droop, range.bump, STATIONS, vec![0.0]) else {
        return Vec::new();
    };
    [Side::Left, Side::Right]
        .into_iter()
        .flat_map(|side| {
            let [before, after] = [&before, &after].map(|model| *model.linkage(side).corner());
            let list = moved(&before, &after, &stations, LEAST);
            list.into_iter().map(move |m| (side, m))
        })
        .collect()
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_of_hardpoints_may_say_axle_and_side() {
        let right = hardpoint("front.right.tie_rod.inner");
        assert_eq!(right.map(|p| p.side), Some(Side::Right));
        assert_eq!(hardpoint("tie_rod.inner").map(|p| p.side), Some(Side::Left));
        assert_eq!(hardpoint("jig corner"), None);
    }

    /// 1/8 in more height, 1/4 in more offset, 0.1 in further back at the rear toe link's inner joint; the front is not in the survey.
    #[test]
    fn the_rear_axle_is_compared_with_its_drawing_too() {
        let demo = trammel_persistence::demos().into_iter().next();
        let mut build = trammel_persistence::read(demo.unwrap().text).unwrap();
        build.set_up.survey = [
            "unit, inch",
            "mark, A, 0, 0, 0",
            "point, rear.tie_rod.inner",
            "height, rear.tie_rod.inner, 9.4375",
            "offset, rear.tie_rod.inner, 7.8125",
            "station, rear.tie_rod.inner, -62.85",
        ]
        .map(str::to_owned)
        .to_vec();
        let moved = answer(&build).moved;
        let [(axle, side, one), (_, Side::Right, _)] = moved.as_slice() else {
            unreachable!("both sides, mirror images, and nothing else: {moved:?}");
        };
        assert_eq!((*axle, *side), (AxleName::Rear, Side::Left));
        let by = [one.by.x, one.by.y, one.by.z].map(|v| v / 25.4);
        for (found, wanted) in by.into_iter().zip([-0.1, 0.25, 0.125]) {
            assert!((found - wanted).abs() < 1e-9, "{by:?}");
        }
        assert!(one.toe_change.is_some_and(|t| t.abs() > 1e-4));
    }
}
