//! Cautions of the proof in the panel, and accepting one.

use egui::Role;
use egui_kittest::kittest::Queryable;
use trammel_analysis::{Caution, CautionKind};
use trammel_screen::{Bench, Start, prove::settings::ProvePage, view::Stage};

use crate::{
    common::{Screen, TestHost, bench, screen_of, wait},
    hand::{prove, settle, undo, use_it},
};

fn of_proof(screen: &Screen) -> Caution {
    let cautions = &screen.state().results().cautions;
    let mut found = cautions.iter();
    found
        .find(|c| matches!(c.kind, CautionKind::Proof(..)))
        .expect("a caution of the proof")
        .clone()
}

fn open(screen: &mut Screen, caution: &Caution) {
    let name = format!("{}: {}", caution.grade.word(), caution.headline);
    use_it(screen, Role::Button, &name);
}

fn reason(screen: &mut Screen, text: &str) {
    use_it(screen, Role::TextInput, "Reason for accepting");
    let field = screen.get_by_role_and_label(Role::TextInput, "Reason for accepting");
    field.type_text(text);
    screen.run_steps(2);
}

#[test]
fn cautions_of_the_proof_stand_in_every_stage() {
    let (mut screen, _) = bench(Start::NamedDemo("lifted".into()));
    let caution = of_proof(&screen);
    for stage in Stage::ALL {
        screen.state_mut().go(stage);
        screen.run_steps(3);
        let name = format!("{}: {}", caution.grade.word(), caution.headline);
        assert!(screen.query_by_label(&name).is_some(), "{stage:?}");
    }
}

#[test]
fn accepting_needs_a_reason_which_is_kept_and_can_be_taken_back() {
    let mut screen = prove("lifted", ProvePage::Checks);
    let caution = of_proof(&screen);
    open(&mut screen, &caution);
    use_it(&mut screen, Role::Button, "Accept with this reason");
    assert_eq!(
        screen.state().build().accepted,
        [],
        "no reason, no acceptance"
    );
    reason(&mut screen, "Only driven on the lawn");
    use_it(&mut screen, Role::Button, "Accept with this reason");
    let accepted = &screen.state().build().accepted;
    assert_eq!(accepted.len(), 1);
    assert_eq!(accepted[0].caution, caution.key());
    assert_eq!(accepted[0].reason, "Only driven on the lawn");
    assert_eq!(accepted[0].figure, caution.figure.map(|f| f.value));
    settle(&mut screen);
    let line = "Accepted: Only driven on the lawn";
    assert!(
        screen.query_all_by_label(line).next().is_some(),
        "it stays in the list"
    );
    let text = trammel_persistence::write(screen.state().build());
    assert_eq!(
        trammel_persistence::read(&text).as_ref(),
        Ok(screen.state().build())
    );
    use_it(&mut screen, Role::Button, "No longer accept it");
    assert_eq!(screen.state().build().accepted, []);
    undo(&mut screen);
    assert_eq!(screen.state().build().accepted.len(), 1);
    undo(&mut screen);
    assert_eq!(screen.state().build().accepted, []);
}

#[test]
fn a_reason_half_written_waits_while_something_else_is_looked_at() {
    let mut screen = prove("lifted", ProvePage::Checks);
    let caution = of_proof(&screen);
    open(&mut screen, &caution);
    reason(&mut screen, "Half a");
    open(&mut screen, &caution);
    assert!(screen.query_by_label("Reason for accepting").is_none());
    open(&mut screen, &caution);
    reason(&mut screen, " thought");
    use_it(&mut screen, Role::Button, "Accept with this reason");
    assert_eq!(screen.state().build().accepted[0].reason, "Half a thought");
}

#[test]
fn a_window_is_seen_before_its_build_is_proved_and_says_so() {
    let start = Start::NamedDemo("good".into());
    let mut screen = screen_of(Bench::at_once(Box::new(TestHost::default()), start));
    assert!(screen.state().prove().proof().is_none());
    assert!(screen.query_by_label("being proved").is_some());
    wait(&mut screen, |s| s.state().prove().is_current());
    screen.run_steps(2);
    assert!(screen.query_by_label("being proved").is_none());
    let (proved, _) = bench(Start::NamedDemo("good".into()));
    let [late, early] = [&screen, &proved].map(|s| &s.state().results().cautions);
    assert_eq!(late, early, "the same cautions as of a build proved first");
    let both = [&screen, &proved].map(|s| s.state().prove().proof().cloned());
    assert!(both[0].is_some());
    assert_eq!(
        both[0], both[1],
        "the same proof as of a build proved first"
    );
}
