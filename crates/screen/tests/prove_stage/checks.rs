//! The stage itself and the list of checks.

use egui::{Key, Modifiers, Role, vec2};
use egui_kittest::kittest::Queryable;
use trammel_analysis::ProofRow;
use trammel_screen::{
    drawing::Projection,
    prove::settings::{Plotted, ProvePage},
    view::Stage,
};

use crate::{
    common::{INNER, Screen, click, demo, drag_from, press, rest},
    hand::{names, prove, settle, undo, use_it},
};

fn row(screen: &Screen, of: impl Fn(&ProofRow) -> bool) -> ProofRow {
    let proof = screen.state().prove().proof().expect("proved");
    proof
        .rows
        .iter()
        .find(|r| of(r))
        .expect("such a row")
        .clone()
}

/// The name that a row goes by.
fn name(row: &ProofRow) -> String {
    let mut part = row.part.label();
    if row.axle == trammel_build::AxleName::Rear {
        part = format!("rear {part}");
    }
    let (first, rest) = part.split_at(1);
    let word = match (row.grade(), row.factor) {
        (Some(grade), _) => grade.word(),
        (None, Some(_)) => "kept",
        (None, None) => "no load",
    };
    let case = row.load_case.as_deref().unwrap_or("whatever the load");
    format!(
        "{}{rest}: {}, {case}, {word}",
        first.to_uppercase(),
        row.check
    )
}

fn listed(screen: &Screen) -> usize {
    let ends = ["kept", "note", "caution", "danger", "no load"];
    names(screen, Role::Button)
        .iter()
        .filter(|n| n.contains(": ") && ends.iter().any(|e| n.ends_with(&format!(", {e}"))))
        .count()
}

#[test]
fn the_stage_is_reached_by_its_name_and_by_key_and_left_again() {
    let mut screen = demo();
    press(&mut screen, Modifiers::NONE, Key::Num1);
    click(&mut screen, "Prove");
    assert_eq!(screen.state().view().stage, Stage::Prove);
    assert!(screen.query_by_label("Page: Checks").is_some());
    assert_eq!(
        screen.state_mut().drawing_mut().fill,
        Some(Projection::Front),
        "the drawing stays as it was looked at"
    );
    press(&mut screen, Modifiers::NONE, Key::F2);
    assert!(screen.query_by_label("Page: Checks").is_none());
    press(&mut screen, Modifiers::NONE, Key::F4);
    assert_eq!(screen.state().view().stage, Stage::Prove);
    for page in ProvePage::ALL {
        click(&mut screen, &format!("Page: {}", page.label()));
        assert_eq!(screen.state().view().prove.page, page);
    }
}

#[test]
fn a_row_goes_to_its_pose_marks_its_part_and_folds_again() {
    let mut screen = prove("lifted", ProvePage::Checks);
    let worst = row(&screen, |r| r.pose.is_some() && r.part.point().is_some());
    use_it(&mut screen, Role::Button, &name(&worst));
    let view = screen.state().view();
    let pose = worst.pose.expect("a pose");
    assert!((view.travel - pose.travel).abs() < 1e-6 && (view.rack - pose.rack).abs() < 1e-6);
    assert_eq!(view.selected.map(|p| p.point), worst.part.point());
    assert_eq!(view.prove.marked.map(|m| m.part), Some(worst.part));
    assert!(
        screen.query_by_label(worst.reason).is_some(),
        "why it matters"
    );
    use_it(&mut screen, Role::Button, &name(&worst));
    assert!(screen.query_by_label(worst.reason).is_none());
}

#[test]
fn a_remedy_is_one_step_that_makes_the_factor_it_promised() {
    let mut screen = prove("lifted", ProvePage::Checks);
    let before = screen.state().build().clone();
    let sick = row(&screen, |r| {
        r.remedies
            .iter()
            .any(|m| m.edit.is_some() && m.value.is_some())
    });
    let remedy = sick
        .remedies
        .iter()
        .find(|m| m.edit.is_some() && m.value.is_some());
    let remedy = remedy.expect("one that can be done");
    use_it(&mut screen, Role::Button, &name(&sick));
    use_it(
        &mut screen,
        Role::Button,
        &format!("Do it: {}", remedy.text),
    );
    assert_ne!(screen.state().build(), &before);
    settle(&mut screen);
    let worst = row(&screen, |r| {
        (r.axle, r.side, r.part, r.check) == (sick.axle, sick.side, sick.part, sick.check)
    });
    assert!(
        worst.factor > sick.factor,
        "{:?} {:?}",
        worst.factor,
        sick.factor
    );
    undo(&mut screen);
    assert_eq!(screen.state().build(), &before);
}

fn unfold(screen: &mut Screen) {
    rest(screen);
    let title = "more keep their wanted factor";
    screen.get_by_label_contains(title).scroll_to_me();
    screen.run_steps(30);
    screen.get_by_label_contains(title).click();
    screen.run_steps(30);
}

#[test]
fn every_row_can_be_listed_and_those_that_miss_their_factor_always_are() {
    let mut screen = prove("lifted", ProvePage::Checks);
    let rows = screen.state().prove().proof().expect("proved").rows.clone();
    let missed = |r: &&ProofRow| r.grade().is_some();
    assert!(rows.iter().any(|r| missed(&r)));
    let folded = listed(&screen);
    unfold(&mut screen);
    let worst = listed(&screen);
    assert!(worst > folded && folded >= 8, "{worst} {folded}");
    use_it(&mut screen, Role::RadioButton, "List: every case");
    let shown = names(&screen, Role::Button);
    let missing: Vec<String> = rows
        .iter()
        .map(name)
        .filter(|n| !shown.contains(n))
        .collect();
    assert_eq!(missing, Vec::<String>::new());
    unfold(&mut screen);
    assert_eq!(listed(&screen), rows.iter().filter(missed).count().max(8));
}

#[test]
fn the_factor_of_a_row_is_plotted_on_demand() {
    let mut screen = prove("lifted", ProvePage::Checks);
    let end = row(&screen, |r| {
        r.check
            .to_string()
            .contains("yield of the thread at the rack face")
    });
    use_it(&mut screen, Role::Button, &name(&end));
    use_it(&mut screen, Role::Button, "Plot its factor");
    let view = screen.state().view();
    assert_eq!(view.prove.page, ProvePage::Forces);
    assert_eq!(view.prove.plotted, Plotted::Factor(end.part, end.check));
    assert_eq!(view.prove.case, end.load_case);
    assert!(screen.query_by_label("Force over the motion").is_some());
}

#[test]
fn what_was_not_checked_and_what_was_taken_can_be_read() {
    let mut screen = prove("good", ProvePage::Checks);
    let proof = screen.state().prove().proof().expect("proved").clone();
    let note = proof
        .notes
        .first()
        .expect("something was taken or left out");
    for kind in ["Not checked (", "Taken where the build says nothing ("] {
        rest(&mut screen);
        screen.get_by_label_contains(kind).scroll_to_me();
        screen.run_steps(30);
        screen.get_by_label_contains(kind).click();
        screen.run_steps(30);
    }
    screen.run_steps(30);
    let text = format!("{}: {}", note.about, note.text);
    assert!(screen.query_by_label(&text).is_some(), "{text}");
    for line in trammel_analysis::USUAL_CAUTIONS {
        assert!(
            screen.query_by_label(&format!("• {line}")).is_some(),
            "{line}"
        );
    }
}

#[test]
fn a_drag_proves_coarsely_and_letting_go_proves_it_whole() {
    let mut screen = prove("lifted", ProvePage::Checks);
    let to = drag_from(&mut screen, INNER, Projection::Front, vec2(0.0, 12.0));
    settle(&mut screen);
    let depth = |s: &Screen| s.state().prove().proof().expect("proved").depth;
    assert_eq!(depth(&screen), Some(trammel_analysis::ProofDepth::Quick));
    screen.drop_at(to);
    screen.run_steps(2);
    settle(&mut screen);
    assert_eq!(depth(&screen), Some(trammel_analysis::ProofDepth::Full));
}
