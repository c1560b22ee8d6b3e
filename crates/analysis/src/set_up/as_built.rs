//! A tape survey against the build: which surveyed names are hardpoints, what stands elsewhere than it was drawn, and the edits that take the survey in.

use trammel_build::{
    AxleName, Build, Edit, LengthUnit, PointName, PointRef, Side, SurveyedPoint, Triple, signed,
};
use trammel_setup::{Moved, Placed, Survey, Surveyed, moved};
use trammel_tuning::Stations;

/// Less than this, mm, has not moved.
pub const LEAST_MOVED: f64 = 0.05;
/// Travels at which toe is judged.
pub const TOE_STATIONS: usize = 13;
/// A coordinate is taken to this part of the build's unit.
const STEPS_PER_UNIT: f64 = 1e4;

/// The hardpoint of a surveyed name: `tie_rod.inner` is the left front one, `front.right.tie_rod.inner` says it all.
pub fn hardpoint(name: &str) -> Option<PointRef> {
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
pub fn hardpoints<'a>(
    build: &'a Build,
    survey: &'a Survey,
    found: &'a Surveyed,
) -> impl Iterator<Item = (PointRef, &'a Placed)> {
    found.points.iter().filter_map(move |p| {
        let at = hardpoint(survey.name(p.point))?;
        build.point(at).map(|_| (at, p))
    })
}

/// The edits that put the survey into the build; none when it holds no hardpoint.
pub fn edits(build: &Build, survey: &Survey, found: &Surveyed) -> Vec<Edit> {
    let unit = build.unit;
    let tidy = |mm: f64| (unit.from_mm(mm) * STEPS_PER_UNIT).round() / STEPS_PER_UNIT;
    let square = unit.mm() * unit.mm();
    let mut edits = Vec::new();
    let mut taken: Vec<(PointRef, Triple, SurveyedPoint)> = Vec::new();
    for (at, placed) in hardpoints(build, survey, found) {
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

/// What stands elsewhere than it was drawn, axle by axle, and what it does to toe. Nothing where the surveyed build can't be posed.
pub fn as_built(build: &Build, survey: &Survey, found: &Surveyed) -> Vec<(AxleName, Side, Moved)> {
    let built = edits(build, survey, found)
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

/// Which point of what (`front left`), by how much forward, outboard and up, and what it alone does to toe.
pub fn words(of: &str, unit: LengthUnit, moved: &Moved) -> String {
    let digits = match unit {
        LengthUnit::Inch => 3,
        LengthUnit::Millimetre => 1,
    };
    let by = [moved.by.x, moved.by.y, moved.by.z]
        .map(|v| signed(unit.from_mm(v), digits))
        .join(", ");
    let name = moved.point.name();
    let label = PointName::from_path(name).map_or(name, |p| p.label());
    let toe = moved.toe_change.map_or_else(String::new, |t| {
        format!("; {}° of toe change", signed(t.to_degrees(), 2))
    });
    format!("{of}: {label}: {by} {}{toe}", unit.sign())
}

/// The same of one axle; nothing where either build has none that can be posed.
fn moved_axle(drawn: &Build, built: &Build, axle: AxleName) -> Vec<(Side, Moved)> {
    let (Ok(before), Ok(after)) = (drawn.axle(axle), built.axle(axle)) else {
        return Vec::new();
    };
    let range = before.travel;
    let Ok(stations) = Stations::even(range.droop, range.bump, TOE_STATIONS, vec![0.0]) else {
        return Vec::new();
    };
    [Side::Left, Side::Right]
        .into_iter()
        .flat_map(|side| {
            let [before, after] = [&before, &after].map(|model| *model.linkage(side).corner());
            let list = moved(&before, &after, &stations, LEAST_MOVED);
            list.into_iter().map(move |m| (side, m))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test stops where it fails")]

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
        let build = trammel_persistence::read(demo.unwrap().text).unwrap();
        let file = trammel_persistence::read_survey(
            "unit, inch\nmark, A, 0, 0, 0\npoint, rear.tie_rod.inner\nheight, rear.tie_rod.inner, 9.4375\n\
             offset, rear.tie_rod.inner, 7.8125\nstation, rear.tie_rod.inner, -62.85",
        )
        .unwrap();
        let found = file.survey.adjust().unwrap();
        let moved = as_built(&build, &file.survey, &found);
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
