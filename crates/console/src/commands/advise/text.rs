//! Advice as plain text.

use trammel_analysis::{NextMoves, SideNext, advice_words as words};
use trammel_build::LengthUnit;

use super::Answer;

pub(super) fn told(answer: &Answer<'_>) -> String {
    let unit = answer.build.unit;
    let next = &answer.next;
    let mut lines = vec![
        answer.build.title.clone(),
        format!(
            "Limit: {:.2} degrees of toe change over the travel, rack at its centre.",
            next.limit.to_degrees()
        ),
    ];
    for ask in next.sides.iter().flat_map(|s| words::asks(s, unit)) {
        lines.push(format!("ASK: {ask}"));
    }
    let together = answer
        .build
        .set_up
        .sessions
        .iter()
        .find_map(words::read_together);
    lines.extend(together.map(|text| format!("HEED: {text}")));
    if next.adjusters_assumed {
        lines.push(
            "The build doesn't say what can be adjusted; a rack end, washers under the outer joint and shims under the rack are taken.".into(),
        );
    }
    lines.extend(words::shims(next).map(|text| format!("Both sides: {text}.")));
    for side in &next.sides {
        lines.push(String::new());
        lines.extend(side_lines(side, next, unit));
    }
    lines.push(String::new());
    lines.push(
        "Keep the rack centred and locked, turn both rod ends back tight, read again. Chances count build tolerances and reading accuracy, nothing else.".into(),
    );
    lines.extend(
        answer
            .out
            .as_ref()
            .map(|path| format!("The session is kept in {path}.")),
    );
    lines.join("\n") + "\n"
}

fn side_lines(side: &SideNext, next: &NextMoves, unit: LengthUnit) -> Vec<String> {
    let advice = &side.advice;
    let mut lines = vec![format!(
        "{} wheel",
        side.readings.side.word().to_uppercase()
    )];
    lines.extend(words::returns(&side.readings.latest));
    lines.extend(words::cause(side, unit));
    let now = if next.shims == 0 {
        "As it stands"
    } else {
        "With the shims moved"
    };
    lines.push(format!("{now}: {}.", words::expected(&advice.now)));
    lines.push(format!("DO: {}.", words::moves(&advice.best, &next.rod)));
    lines.push(format!("Then: {}.", words::expected(&advice.best)));
    lines.extend(words::reweld(side, unit));
    for plan in &advice.alternatives {
        lines.push(format!(
            "Or: {}: {}.",
            words::moves(plan, &next.rod),
            words::expected(plan)
        ));
    }
    lines.push("travel   toe read now    expected after the move (degrees)".into());
    for (read, then) in side.readings.latest.readings.points().zip(&side.next) {
        lines.push(format!(
            "{:>6.2}   {:<14} {:<10} +- {:.3}",
            unit.from_mm(read.travel),
            words::toe(read.change),
            words::toe(then.change),
            then.deviation.to_degrees()
        ));
    }
    lines
}
