//! Threads and grades side by side.

use egui::Role;
use egui_kittest::kittest::Queryable;
use trammel_screen::prove::settings::{EndFigure, ProvePage};

use crate::{
    common::{Screen, click},
    hand::{names, prove, settle, undo, use_it},
};

fn cell(screen: &Screen, begins: &str) -> String {
    let mut cells = names(screen, Role::Button).into_iter();
    cells.find(|n| n.starts_with(begins)).expect("such a cell")
}

#[test]
fn a_thread_is_looked_at_and_used_in_one_step() {
    let mut screen = prove("lifted", ProvePage::RackEnd);
    let before = screen.state().build().clone();
    let factor = |s: &Screen| {
        let proof = s.state().prove().proof().expect("proved");
        let mut rows = proof.rows.iter();
        let face = rows.find(|r| r.check == trammel_strength::check::Check::RackFaceYield);
        face.expect("a row of the rack end")
            .factor
            .expect("a factor")
    };
    let old = factor(&screen);
    let better = cell(&screen, "5/8-18 UNF SAE J429 grade 8:");
    use_it(&mut screen, Role::Button, &better);
    use_it(&mut screen, Role::Button, "Use it in the build");
    settle(&mut screen);
    assert!(factor(&screen) > 2.0 * old, "{old} {}", factor(&screen));
    let own = cell(&screen, "5/8-18 UNF SAE J429 grade 8:");
    assert!(own.ends_with(", your own"), "{own}");
    undo(&mut screen);
    assert_eq!(screen.state().build(), &before);
}

#[test]
fn the_table_shows_any_of_its_three_figures_in_either_system() {
    let mut screen = prove("lifted", ProvePage::RackEnd);
    let of = |s: &Screen| cell(s, "3/4-16 UNF SAE J429 grade 8:");
    let factor = of(&screen);
    click(&mut screen, "Show: tie-rod angle");
    assert_eq!(screen.state().view().prove.end_figure, EndFigure::RodAngle);
    let angle = of(&screen);
    click(&mut screen, "Show: free length");
    assert!(
        of(&screen).contains(" in") || of(&screen).contains("any"),
        "{}",
        of(&screen)
    );
    assert!(factor != angle);
    click(&mut screen, "Threads: metric");
    assert!(cell(&screen, "M12").contains(':'));
    assert!(
        screen
            .query_all_by_label_contains("UNF SAE")
            .next()
            .is_none()
    );
}

#[test]
fn the_rear_axle_has_no_rack_and_that_is_said() {
    let mut screen = prove("lifted", ProvePage::RackEnd);
    crate::common::press(&mut screen, egui::Modifiers::NONE, egui::Key::X);
    let said = "The rear axle has no rack. Press X for the front axle.";
    assert!(screen.query_by_label(said).is_some());
}
