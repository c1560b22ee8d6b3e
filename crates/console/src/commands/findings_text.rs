//! Cautions as a person reads them.

use trammel_analysis::{Caution, Findings, Grade};
use trammel_build::Build;

/// The cautions of a build, worst first, and what was looked at.
pub(crate) fn text(build: &Build, findings: &Findings) -> String {
    let mut lines = vec![build.title.clone()];
    for caution in &findings.cautions {
        lines.push(String::new());
        lines.extend(of(caution, build));
    }
    lines.push(String::new());
    lines.push(sum(findings));
    for end in &findings.rack_ends {
        lines.push(format!(
            "Rack end, {}: {} {}, factor {:.2} against {:.2} wanted.",
            end.side.word(),
            end.thread,
            end.grade,
            end.factor,
            end.wanted
        ));
    }
    lines.push(
        "Looked at, over the whole travel and lock: reach, lock-over, toggling arms, toe change, joint swivel, tie-rod angle, rack-end bending, thread in the rack; and the parts that the build describes (`trammel prove` lists every row and what was left out).".into(),
    );
    lines.push(
        "Geometry and nominal static stress only: no approval, and silent about fatigue, welds, bent parts and play.".into(),
    );
    lines.join("\n") + "\n"
}

fn of(caution: &Caution, build: &Build) -> Vec<String> {
    let mut lines = vec![
        format!(
            "{}: {}",
            caution.grade.word().to_uppercase(),
            caution.headline
        ),
        format!("  {}", caution.detail),
        format!("  {}", caution.reason),
        format!("  Limit: {}.", caution.source),
    ];
    lines.extend(caution.accepted(build).map(|accepted| {
        let since = if caution.worse_than_accepted(accepted) {
            " It has worsened since."
        } else {
            ""
        };
        format!("  Accepted by the builder: {}{since}", accepted.reason)
    }));
    lines.extend(caution.remedies.iter().map(|r| format!("  - {}", r.text)));
    lines
}

fn sum(findings: &Findings) -> String {
    let count = |grade: Grade, one: &str, many: &str| {
        let n = findings
            .cautions
            .iter()
            .filter(|c| c.grade == grade)
            .count();
        (n > 0).then(|| format!("{n} {}", if n == 1 { one } else { many }))
    };
    let counts: Vec<String> = [
        count(Grade::Danger, "danger", "dangers"),
        count(Grade::Caution, "caution", "cautions"),
        count(Grade::Note, "note", "notes"),
    ]
    .into_iter()
    .flatten()
    .collect();
    if counts.is_empty() {
        "Nothing was found past its limit.".into()
    } else {
        format!("{}.", counts.join(", "))
    }
}
