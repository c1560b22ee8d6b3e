//! After measuring: readings, cause, moves with what to expect, initials.

use trammel_analysis::{NextMoves, SideNext, advice_words as words, next_moves};
use trammel_build::{Build, LengthUnit, Session};
use trammel_drawings::table::Table;

use crate::{CardFault, before::length};

pub(crate) fn tables(build: &Build) -> Result<Vec<Table>, CardFault> {
    let Some(session) = build.set_up.sessions.last() else {
        return Ok(Vec::new());
    };
    if build.set_up.sessions.iter().all(|s| s.rows.is_empty()) {
        return Ok(Vec::new());
    }
    let next = next_moves(build)?;
    let mut all = vec![about(session, &next)];
    all.push(moves(&next, build.unit));
    for side in &next.sides {
        all.push(readings(side, build.unit));
    }
    all.push(result());
    Ok(all)
}

fn about(session: &Session, next: &NextMoves) -> Table {
    let mut table = Table::new("Session", &["What", "As it was"]);
    let date = if session.date.is_empty() {
        "not written down"
    } else {
        &session.date
    };
    for (what, text) in [
        ("Date", date.to_owned()),
        ("Measured by", session.method.name().to_owned()),
        (
            "Limit",
            format!(
                "{:.2} degrees of toe change over the travel, rack at its centre",
                next.limit.to_degrees()
            ),
        ),
        ("Notes", session.notes.clone()),
    ] {
        table.row([what.to_owned(), text]);
    }
    if let Some(text) = words::read_together(session) {
        table.row(["Heed".to_owned(), text.to_owned()]);
    }
    table
}

fn moves(next: &NextMoves, unit: LengthUnit) -> Table {
    let mut table = Table::new(
        "What to move",
        &["Wheel", "Move", "Expected", "Done, initials"],
    );
    if let Some(text) = words::shims(next) {
        table.row(["both".to_owned(), text]);
    }
    for side in &next.sides {
        let best = &side.advice.best;
        table.row([
            side.readings.side.word().to_owned(),
            words::moves(best, &next.rod),
            words::expected(best),
        ]);
        if let Some(text) = words::reweld(side, unit) {
            table.row([side.readings.side.word().to_owned(), text]);
        }
    }
    table
}

fn readings(side: &SideNext, unit: LengthUnit) -> Table {
    let title = format!("Readings, {} wheel", side.readings.side.word());
    let mut table = Table::new(
        title,
        &[
            "#Travel",
            "#Toe read",
            "#Toe expected after the move",
            "#Good to, degrees",
            "Toe read then",
        ],
    );
    for (read, then) in side.readings.latest.readings.points().zip(&side.next) {
        table.row([
            length(read.travel, unit),
            words::toe(read.change),
            words::toe(then.change),
            format!("{:.3}", then.deviation.to_degrees()),
        ]);
    }
    table
}

fn result() -> Table {
    let mut table = Table::new("Result", &["What", "Result", "Initials", "Date"]);
    for what in [
        "Rack centred, static toe set, jam nuts tight",
        "Read again: largest toe change",
    ] {
        table.row([what.to_owned()]);
    }
    table
}
