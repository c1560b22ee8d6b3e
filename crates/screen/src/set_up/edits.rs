//! The steps that this stage makes of a build.

use trammel_analysis::{NextMoves, SideNext};
use trammel_build::{
    Adjusted, AdjustedPart, AxleName, Build, Edit, PointName, PointRef, Session, SetUp, Side,
    ToeMethod, TravelMeasure, Triple,
};
use trammel_persistence::{read_readings, read_survey};
use trammel_setup::{AdjusterKind, Plan, Way};

use crate::{request::Request, tune::points};

/// One named step that changes the set-up.
pub(crate) fn change(build: &Build, name: &str, with: impl FnOnce(&mut SetUp)) -> Request {
    let mut set_up = build.set_up.clone();
    with(&mut set_up);
    Request::EditAs {
        name: name.to_owned(),
        edits: vec![Edit::SetSetUp(Box::new(set_up))],
    }
}

/// The same for the newest session.
pub(crate) fn change_session(
    build: &Build,
    name: &str,
    with: impl FnOnce(&mut Session),
) -> Request {
    change(build, name, |s| {
        if let Some(last) = s.sessions.last_mut() {
            with(last);
        }
    })
}

/// A session as the one before it was measured, with nothing read yet.
pub(crate) fn fresh_session(build: &Build) -> Session {
    let last = build.set_up.sessions.last();
    Session {
        date: String::new(),
        notes: String::new(),
        adjusted: Vec::new(),
        method: last.map_or(ToeMethod::Degrees, |s| s.method),
        accuracy: last.and_then(|s| s.accuracy),
        travel_by: last.map_or(TravelMeasure::Travel, |s| s.travel_by),
        travel_accuracy: last.and_then(|s| s.travel_accuracy),
        rows: Vec::new(),
    }
}

/// What a plan moves, as a session keeps it.
fn adjusted(plan: &Plan, side: Side, build: &Build) -> Vec<Adjusted> {
    let part = |kind| match kind {
        AdjusterKind::RackEnd { .. } => AdjustedPart::RackEnd,
        AdjusterKind::OuterWasher { .. } => AdjustedPart::Washers,
        AdjusterKind::RackShim => AdjustedPart::Shims,
    };
    let by = |mm: f64| (build.unit.from_mm(mm) * points::EXACT).round() / points::EXACT;
    plan.moves
        .iter()
        .map(|m| Adjusted {
            part: part(m.kind),
            side,
            by: by(m.length),
        })
        .collect()
}

/// The moves done, and the next session begun.
pub(crate) fn moves_done(build: &Build, next: &NextMoves) -> Request {
    let mut session = fresh_session(build);
    if let Some(shim) = next.shim.filter(|_| next.shims != 0) {
        session.adjusted.push(Adjusted {
            part: AdjustedPart::Shims,
            side: Side::Left,
            by: build.unit.from_mm(shim.0.step() * f64::from(next.shims)),
        });
    }
    for side in &next.sides {
        let best = &side.advice.best;
        session
            .adjusted
            .extend(adjusted(best, side.readings.side, build));
    }
    change(build, "Log the moves and start the next session", |s| {
        s.sessions.push(session);
    })
}

/// The likely geometry put into the build, as one step. Where only one wheel was read, or both sides are drawn alike and read apart, the right
/// side gets points of its own.
pub(crate) fn learned(build: &Build, next: &NextMoves) -> Option<Request> {
    let mut edits = Vec::new();
    for side in &next.sides {
        let places = places(build, side);
        if side.readings.side == Side::Right || next.sides.len() > 1 {
            let own = places
                .iter()
                .map(|(p, _)| p.point)
                .filter(|p| !build.has_own_right_point(AxleName::Front, *p));
            for point in own {
                let edit = Edit::SeparateRight(AxleName::Front, point);
                if !edits.contains(&edit) {
                    edits.push(edit);
                }
            }
        }
        edits.push(Edit::MovePoints(places));
    }
    // Right points stand on their own before any left one moves.
    edits.sort_by_key(|e| !matches!(e, Edit::SeparateRight(..)));
    (!edits.is_empty()).then(|| Request::EditAs {
        name: "Put the likely geometry into the build".to_owned(),
        edits,
    })
}

/// Less than this, mm, is no move.
const LEAST: f64 = 1e-3;

fn places(build: &Build, side: &SideNext) -> Vec<(PointRef, Triple)> {
    let mut all: Vec<(PointRef, Triple)> = Vec::new();
    for error in &side.learned.errors {
        if error.error.abs() < LEAST {
            continue;
        }
        let Some(point) = PointName::from_path(error.coordinate.point.name()) else {
            continue;
        };
        let at = PointRef {
            axle: AxleName::Front,
            side: side.readings.side,
            point,
        };
        let index = error.coordinate.axis.index();
        // The right corner is told in the mirror.
        let mirrored = side.readings.side == Side::Right && index == 1;
        let error = if mirrored { -error.error } else { error.error };
        let known = all.iter().position(|(p, _)| *p == at);
        let slot = match known {
            Some(i) => all.get_mut(i),
            None => {
                let Some(here) = build.point(at) else {
                    continue;
                };
                all.push((at, here));
                all.last_mut()
            }
        };
        if let Some(v) = slot.and_then(|(_, to)| to.get_mut(index)) {
            *v = ((*v + build.unit.from_mm(error)) * points::EXACT).round() / points::EXACT;
        }
    }
    all
}

/// A pasted table as lines of the newest session, or as a session of its own where it says how it was measured.
pub(crate) fn pasted(build: &Build, text: &str, side: Side) -> Result<Request, String> {
    let own = text
        .lines()
        .any(|l| l.trim_start().to_lowercase().starts_with("method"));
    let (whole, added) = if own {
        (text.to_owned(), 0)
    } else {
        with_settings(build, text, side)?
    };
    let session = read_readings(&whole, build.unit).map_err(|mut fault| {
        // Lines are counted as they were pasted.
        fault.line = fault
            .line
            .and_then(|l| l.checked_sub(added))
            .filter(|l| *l > 0);
        fault.to_string()
    })?;
    let count = session.rows.len();
    let name = format!("Take {count} lines of readings");
    let empty = build
        .set_up
        .sessions
        .last()
        .is_some_and(|s| s.rows.is_empty());
    Ok(change(build, &name, |s| match s.sessions.last_mut() {
        Some(last) if !own => last.rows.extend(session.rows),
        Some(last) if empty => {
            let adjusted = std::mem::take(&mut last.adjusted);
            *last = session;
            last.adjusted.extend(adjusted);
        }
        _ => s.sessions.push(session),
    }))
}

/// Settings of the newest session above a bare table, and a heading where it has none; with how many lines were put above.
fn with_settings(build: &Build, text: &str, side: Side) -> Result<(String, u64), String> {
    let Some(session) = build.set_up.sessions.last() else {
        return Err(
            "Start a session first, or paste a table that says how it was measured.".to_owned(),
        );
    };
    let first = text
        .lines()
        .find(|l| !l.trim().is_empty() && !l.starts_with('#'))
        .unwrap_or_default();
    let mark = ['\t', ';']
        .into_iter()
        .find(|m| first.contains(*m))
        .unwrap_or(',');
    let way = |w: Way| if w == Way::In { "in" } else { "out" };
    let mut lines: Vec<String> = vec![format!("method{mark}{}", session.method.name())];
    let mut add = |word: &str, value: String| lines.push(format!("{word}{mark}{value}"));
    match session.method {
        ToeMethod::TwoDials(v, w) | ToeMethod::OneDial(v, w) => {
            add("spacing", v.to_string());
            add("grows", way(w).to_owned());
        }
        ToeMethod::Tape(v) => add("across", v.to_string()),
        ToeMethod::Laser(v, board) => {
            add("distance", v.to_string());
            let board = if board == trammel_setup::Board::Ahead {
                "ahead"
            } else {
                "behind"
            };
            add("board", board.to_owned());
        }
        ToeMethod::Mirror(v) => add("distance", v.to_string()),
        ToeMethod::Degrees => {}
    }
    if !session.method.reads_both_wheels() {
        add("side", side.word().to_owned());
    }
    let bare = !first.chars().next().is_some_and(char::is_alphabetic);
    if bare {
        lines.push(heading(session).join(&mark.to_string()));
    }
    let added = lines.len() as u64;
    lines.push(text.to_owned());
    Ok((lines.join("\n"), added))
}

/// A whole survey that reads, instead of the one that is there.
pub(crate) fn whole_survey(build: &Build, text: &str) -> Result<Request, String> {
    read_survey(text).map_err(|fault| fault.to_string())?;
    let lines = survey_lines(text);
    Ok(change(build, "Take a survey", |s| s.survey = lines))
}

/// A survey's lines with commas between their cells, as lines that are added have.
pub(crate) fn survey_lines(text: &str) -> Vec<String> {
    let lines = || text.lines().map(str::trim).filter(|l| !l.is_empty());
    let first = lines().find(|l| !l.starts_with('#')).unwrap_or_default();
    let mark = ['\t', ';'].into_iter().find(|m| first.contains(*m));
    lines()
        .map(|l| match mark {
            Some(mark) => l.split(mark).map(str::trim).collect::<Vec<_>>().join(", "),
            None => l.to_owned(),
        })
        .collect()
}

fn heading(session: &Session) -> Vec<&'static str> {
    let place = match session.travel_by {
        TravelMeasure::Travel => "travel",
        TravelMeasure::WheelHeight => "wheel height",
        TravelMeasure::ShockLength => "shock length",
        TravelMeasure::Blocks => "blocks",
    };
    let shown: &[&str] = match session.method {
        ToeMethod::TwoDials(..) | ToeMethod::Tape(_) => &["front", "rear"],
        ToeMethod::OneDial(..) => &["dial"],
        ToeMethod::Laser(..) | ToeMethod::Mirror(_) => &["spot", "way"],
        ToeMethod::Degrees => &["toe", "way"],
    };
    std::iter::once(place)
        .chain(shown.iter().copied())
        .collect()
}
