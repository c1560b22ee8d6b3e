//! Rows of a proof as a person reads them.

use trammel_analysis::{NoteKind, Proof, ProofRow, USUAL_CAUTIONS, not_in_it};
use trammel_build::{Build, LengthUnit};

/// Every row, worst first, what is checked under its other loads below it; then what was taken, left out, and never looked at.
pub(crate) fn text(build: &Build, proof: &Proof) -> String {
    let mut lines = vec![build.title.clone(), String::new()];
    let mut said: Vec<&ProofRow> = Vec::new();
    for row in &proof.rows {
        if said.iter().any(|worse| same_check(worse, row)) {
            continue;
        }
        said.push(row);
        lines.extend(of(row, build.unit));
        let others = proof.rows.iter().filter(|r| same_check(r, row));
        let others: Vec<String> = others.skip(1).map(under).collect();
        if !others.is_empty() {
            lines.push(format!("  Under other loads: {}.", others.join("; ")));
        }
    }
    if let Some(s) = &proof.steering {
        let force =
            |f: Option<f64>| f.map_or_else(|| "not worked out".to_owned(), |f| format!("{f:.0} N"));
        lines.push(String::new());
        lines.push(format!(
            "Steering: {:.2} turns lock to lock; {} at the wheel's rim when parked; kick-back {}.",
            s.turns,
            force(s.parked_hand_force),
            force(s.kick_back)
        ));
    }
    for (kind, heading) in [
        (NoteKind::LeftOut, "Left out:"),
        (NoteKind::Taken, "Taken where the build says nothing:"),
    ] {
        let notes = proof.notes.iter().filter(|note| note.kind == kind);
        let notes: Vec<String> = notes
            .map(|n| format!("  {}: {}", n.about, n.text))
            .collect();
        if !notes.is_empty() {
            lines.extend([String::new(), heading.to_owned()]);
            lines.extend(notes);
        }
    }
    lines.extend([String::new(), "Not in any row:".into()]);
    lines.extend(not_in_it().iter().map(|line| format!("  {line}")));
    lines.push(String::new());
    lines.extend(USUAL_CAUTIONS.iter().map(|line| (*line).to_owned()));
    lines.join("\n") + "\n"
}

/// Whether two rows look at the same thing under two loads.
fn same_check(a: &ProofRow, b: &ProofRow) -> bool {
    let of = |row: &ProofRow| (row.axle, row.side, row.part, row.check);
    of(a) == of(b)
}

/// A row under another load than the worst: its grade where it has one, its load and factor.
fn under(row: &ProofRow) -> String {
    let grade = row
        .grade()
        .map_or_else(String::new, |g| format!("{}: ", g.word().to_uppercase()));
    let case = row.load_case.as_deref().unwrap_or("any load");
    let factor = row
        .factor
        .map_or_else(|| "no load".to_owned(), |f| format!("{f:.2}"));
    format!("{grade}{case} {factor}")
}

fn of(row: &ProofRow, unit: LengthUnit) -> Vec<String> {
    let grade = row
        .grade()
        .map_or_else(|| "kept".to_owned(), |g| g.word().to_uppercase());
    let side = row
        .side
        .map_or_else(String::new, |side| format!(" {}", side.word()));
    let shown = row.shown(unit);
    let case = row.load_case.as_deref().unwrap_or("any load");
    let pose = row.pose.map_or_else(String::new, |pose| {
        let [travel, rack] = [pose.travel, pose.rack].map(|mm| unit.from_mm(mm));
        format!(", travel {travel:.2}, rack {rack:.2} {}", unit.sign())
    });
    let factor = row.factor.map_or_else(
        || "no load".to_owned(),
        |f| format!("factor {f:.2}, wanted {:.2}", row.wanted),
    );
    let mut lines = vec![
        format!(
            "{grade}: {}{side} {}, {}: {factor}",
            row.axle.word(),
            row.part.label(),
            row.check
        ),
        format!(
            "  {} against {}; {case}{pose}. Limit: {}.",
            shown.with_unit(&digits(shown.value)),
            shown.with_unit(&digits(shown.limit)),
            row.source
        ),
    ];
    if row.grade().is_some() {
        lines.push(format!("  {}", row.reason));
        lines.extend(row.remark.iter().map(|remark| format!("  {remark}")));
    }
    if let Some(accepted) = &row.accepted {
        let since = if row.worse_than_accepted() {
            " It has worsened since."
        } else {
            ""
        };
        lines.push(format!(
            "  Accepted by the builder: {}{since}",
            accepted.reason
        ));
    }
    lines.extend(row.remedies.iter().map(|r| format!("  - {}", r.text)));
    lines
}

fn digits(value: f64) -> String {
    match value.abs() {
        v if v >= 100.0 => format!("{value:.0}"),
        v if v >= 10.0 => format!("{value:.1}"),
        _ => format!("{value:.3}"),
    }
}
