//! Thread and grade names in the build that no table knows.

use trammel_build::{AxleName, Build, Edit, PointName, PointRef, RackEndSpec, defaults};
use trammel_strength::{
    grade::{Grade as Steel, GradeError, short_name as short_grade},
    thread::{Thread, ThreadError},
};

use crate::{Caution, CautionKind, Grade, Remedy};

/// Names offered instead.
const OFFERED: usize = 3;

pub(super) fn check(build: &Build) -> Vec<Caution> {
    let spec = &build.front.rack_end;
    let thread = spec.thread.as_deref().map(Thread::find);
    let grade = spec.grade.as_deref().map(Steel::find);
    let mut found = Vec::new();
    if let (Some(typed), Some(Err(error))) = (&spec.thread, &thread) {
        found.push(unknown_thread(spec, typed, error));
    }
    if let (Some(typed), Some(Err(error))) = (&spec.grade, &grade) {
        found.push(unknown_grade(spec, typed, error));
    }
    if found.is_empty() {
        found.extend(uncovered_size(spec));
    }
    found
}

fn unknown_thread(spec: &RackEndSpec, typed: &str, error: &ThreadError) -> Caution {
    let known: Vec<&str> = match error {
        ThreadError::Unknown { nearby, .. } => nearby.clone(),
        ThreadError::Ambiguous { candidates, .. } => candidates.clone(),
        _ => nearest(typed, Thread::all().iter().map(Thread::designation)),
    };
    let offers = known.into_iter().take(OFFERED).filter_map(|name| {
        let name = Thread::find(name).map(|t| t.short_name()).ok()?.to_owned();
        let edit = Edit::SetRackEnd(RackEndSpec {
            thread: Some(name.clone()),
            ..spec.clone()
        });
        Some((name, edit))
    });
    caution("thread", typed, offers.collect())
}

fn unknown_grade(spec: &RackEndSpec, typed: &str, error: &GradeError) -> Caution {
    let known: Vec<&str> = match error {
        GradeError::Unknown { known, .. } => nearest(typed, known.iter().copied()),
        GradeError::Ambiguous { candidates, .. } => candidates.clone(),
        _ => Vec::new(),
    };
    let offers = known.into_iter().take(OFFERED).map(|name| {
        let name = short_grade(name).to_owned();
        let edit = Edit::SetRackEnd(RackEndSpec {
            grade: Some(name.clone()),
            ..spec.clone()
        });
        (name, edit)
    });
    caution("grade", typed, offers.collect())
}

fn caution(field: &str, typed: &str, offers: Vec<(String, Edit)>) -> Caution {
    let names: Vec<&str> = offers.iter().map(|(name, _)| name.as_str()).collect();
    let nearest = names.join(", ");
    Caution {
        headline: format!("No table has a {field} called \u{201c}{typed}\u{201d}"),
        detail: format!("front.rack_end.{field}; the nearest known: {nearest}."),
        remedies: offers
            .into_iter()
            .map(|(name, edit)| Remedy {
                text: format!("Call it {name}"),
                value: None,
                edit: Some(edit),
            })
            .collect(),
        ..unchecked()
    }
}

/// A thread and a grade that are known, but the grade's standard has no figure for that size.
fn uncovered_size(spec: &RackEndSpec) -> Option<Caution> {
    let thread = Thread::find(spec.thread.as_deref().unwrap_or(defaults::THREAD)).ok()?;
    let grade = Steel::find(spec.grade.as_deref().unwrap_or(defaults::GRADE)).ok()?;
    let error = grade.strength(thread.major_diameter()).err()?;
    Some(Caution {
        headline: format!(
            "{} has no strength for {}",
            short_grade(grade.name()),
            thread.short_name()
        ),
        detail: format!("front.rack_end.grade; {error}."),
        ..unchecked()
    })
}

fn unchecked() -> Caution {
    Caution {
        kind: CautionKind::UnknownName,
        grade: Grade::Caution,
        axle: AxleName::Front,
        side: None,
        headline: String::new(),
        detail: String::new(),
        figure: None,
        worst: None,
        reason: "Without it the rack end's strength is not checked at all.".into(),
        remedies: Vec::new(),
        point: Some(PointRef::left(AxleName::Front, PointName::RackFace)),
        source: "the program's tables of threads and grades".into(),
    }
}

/// The names most like what was typed, the most like first.
fn nearest<'a>(typed: &str, names: impl Iterator<Item = &'a str>) -> Vec<&'a str> {
    let typed = typed.to_lowercase();
    let mut ranked: Vec<(usize, &str)> = names
        .map(|name| {
            let full = distance(&typed, &name.to_lowercase());
            let short = distance(&typed, &short_grade(name).to_lowercase());
            (full.min(short), name)
        })
        .collect();
    ranked.sort_by_key(|(distance, _)| *distance);
    ranked.into_iter().map(|(_, name)| name).collect()
}

/// Letters to change, add or drop to get from one to the other (Levenshtein 1965, from memory), over the first letters of each.
fn distance(a: &str, b: &str) -> usize {
    const LONGEST: usize = 48;
    let b: Vec<char> = b.chars().take(LONGEST).collect();
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (i, letter) in a.chars().take(LONGEST).enumerate() {
        let mut before = i;
        let mut left = i + 1;
        for (cell, other) in row.iter_mut().skip(1).zip(&b) {
            let change = before + usize::from(letter != *other);
            before = *cell;
            left = change.min(before + 1).min(left + 1);
            *cell = left;
        }
        if let Some(first) = row.first_mut() {
            *first = i + 1;
        }
    }
    row.last().copied().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn distance_counts_letters() {
        assert_eq!(distance("kitten", "sitting"), 3);
        assert_eq!(distance("", "abc"), 3);
        assert_eq!(distance("abc", ""), 3);
        assert_eq!(distance("grade 8", "grade 8"), 0);
    }
}
