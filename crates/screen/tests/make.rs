//! The Make stage: sheets on the table, a bracket edited live, rounding, and files, by their controls.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod common;
#[path = "make/outline.rs"]
mod outline;

use common::{TestHost, bench, bench_on, click, fill, find_and_click, press, wait};
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use trammel_build::{HoleFit, PointName, ShopStep, TabOutline};
use trammel_drawings::sheet::Paper;
use trammel_screen::{Start, host::Pick, host::Picked, view::Stage};

fn settle(screen: &mut common::Screen) {
    wait(screen, |s| {
        s.state().make().sheets().is_some() && s.state().make().is_current()
    });
    screen.run_steps(3);
}

fn make() -> (common::Screen, TestHost) {
    let (mut screen, host) = bench(Start::NamedDemo("good".into()));
    click(&mut screen, "Make");
    settle(&mut screen);
    (screen, host)
}

fn bracket(screen: &common::Screen) -> trammel_build::BracketSpec {
    let joints = &screen.state().build().front.parts.joints;
    let parts = joints.get(&PointName::UpperFrontPivot);
    parts.and_then(|p| p.bracket.clone()).expect("a bracket")
}

#[test]
fn the_stage_is_reached_by_its_name_and_by_key_and_left_again() {
    let (mut screen, _) = make();
    assert_eq!(screen.state().view().stage, Stage::Make);
    assert!(screen.query_by_label("Sheet as it will print").is_some());
    press(&mut screen, Modifiers::NONE, Key::F2);
    assert!(screen.query_by_label("Sheet as it will print").is_none());
    press(&mut screen, Modifiers::NONE, Key::F5);
    assert_eq!(screen.state().view().stage, Stage::Make);
}

#[test]
fn a_sheet_is_chosen_and_its_pages_are_turned() {
    let (mut screen, _) = make();
    screen.state_mut().view_mut().make.sheet = "fixture-sheet".into();
    screen.run_steps(3);
    let pages = |s: &common::Screen| {
        let sheets = s.state().make().sheets().expect("sheets").clone();
        sheets
            .sheet("fixture-sheet")
            .expect("it is there")
            .pages
            .len()
    };
    assert!(pages(&screen) > 1);
    click(&mut screen, "Next page");
    assert_eq!(screen.state().view().make.page, 1);
    click(&mut screen, "Page back");
    assert_eq!(screen.state().view().make.page, 0);
    screen.state_mut().view_mut().make.sheet = String::new();
    screen.run_steps(3);
    find_and_click(&mut screen, "Sheet: Cautions");
    assert_eq!(screen.state().view().make.sheet, "cautions");
}

#[test]
fn the_page_comes_nearer_and_is_whole_again() {
    let (mut screen, _) = make();
    click(&mut screen, "Nearer");
    assert!(screen.state().view().make.zoom > 1.3);
    click(&mut screen, "Farther");
    assert!((screen.state().view().make.zoom - 1.0).abs() < 1e-3);
    let at = screen
        .get_by_label("Sheet as it will print")
        .rect()
        .center();
    screen.hover_at(at);
    screen.step();
    screen.drag_at(at);
    screen.step();
    screen.hover_at(at + egui::vec2(60.0, 20.0));
    screen.step();
    screen.drop_at(at + egui::vec2(60.0, 20.0));
    screen.run_steps(2);
    assert!(screen.state().view().make.pan.x > 30.0);
    click(&mut screen, "Whole page");
    assert_eq!(screen.state().view().make.pan, egui::Vec2::ZERO);
}

#[test]
fn a_bracket_is_edited_live_and_its_minimums_follow() {
    let (mut screen, _) = make();
    let small = |s: &common::Screen| s.query_all_by_label_contains("TOO SMALL").count();
    assert_eq!(small(&screen), 0);
    fill(&mut screen, "Edge distance", "5/16");
    assert_eq!(bracket(&screen).edge, Some(0.3125));
    assert!(small(&screen) > 0);
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(bracket(&screen).edge, None);
    find_and_click(&mut screen, "Outline: straight");
    assert_eq!(bracket(&screen).form, Some(TabOutline::Straight));
    find_and_click(&mut screen, "Fit: loose");
    assert_eq!(bracket(&screen).fit, Some(HoleFit::Loose));
    assert_eq!(bracket(&screen).hole, None);
    fill(&mut screen, "Tab height", "2");
    fill(&mut screen, "Tab width", "1 3/4");
    fill(&mut screen, "Tab thickness", "1/4");
    fill(&mut screen, "Gap of the pair", "1 5/16");
    let b = bracket(&screen);
    assert_eq!((b.height, b.width, b.thickness), (2.0, 1.75, 0.25));
    assert_eq!(b.gap, Some(1.3125));
    // The sheet follows: 2 in from foot to hole and 7/8 to the end.
    settle(&mut screen);
    let sheets = screen.state().make().sheets().expect("sheets").clone();
    let sheet = sheets
        .sheet("front-upper-arm-front-pivot-tab")
        .expect("it is there");
    let bounds = sheet.part.as_ref().expect("flat").bounds();
    assert!((bounds.height() - 2.875 * 25.4).abs() < 1e-9);
}

#[test]
fn a_width_that_is_none_is_refused_and_the_old_one_stands() {
    let (mut screen, _) = make();
    fill(&mut screen, "Tab width", "wide");
    assert_eq!(bracket(&screen).width, 1.5);
    let said = screen.state().said().expect("why not");
    assert!(said.contains("wide"), "{said}");
}

#[test]
fn paper_and_step_are_chosen_and_rounding_is_told() {
    let (mut screen, _) = make();
    let count = |s: &common::Screen, words: &str| s.query_all_by_label_contains(words).count();
    assert_eq!(count(&screen, "nothing. Every coordinate"), 2);
    click(&mut screen, "Paper: A3");
    settle(&mut screen);
    assert_eq!(
        screen.state().make().sheets().expect("sheets").paper,
        Paper::A3
    );
    click(&mut screen, "Step: 1 mm");
    settle(&mut screen);
    assert_eq!(screen.state().build().shop.step, Some(ShopStep::WholeMm));
    assert_eq!(count(&screen, "becomes"), 2);
}

#[test]
fn one_sheet_is_written_where_it_is_wanted_and_looked_at() {
    let folder = tempfile::tempdir().expect("a folder");
    let (mut screen, host) = make();
    click(&mut screen, "Export this sheet…");
    click(&mut screen, "Browse…");
    assert_eq!(host.0.borrow().asked, [Pick::SheetsFolder]);
    host.0.borrow_mut().answer = Some(Picked::Path(folder.path().join("out")));
    screen.run_steps(2);
    wait(&mut screen, |s| {
        s.state().said().is_some_and(|t| t.contains("written"))
    });
    let stem = folder
        .path()
        .join("out")
        .join("front-upper-arm-front-pivot-tab");
    for extension in ["pdf", "dxf", "svg"] {
        assert!(stem.with_extension(extension).is_file(), "{extension}");
    }
    click(&mut screen, "Open in viewer");
    assert_eq!(host.0.borrow().opened, [stem.with_extension("pdf")]);
}

#[test]
fn the_folder_is_remembered_from_one_day_to_the_next() {
    let state = tempfile::tempdir().expect("a folder");
    let host = TestHost::default();
    host.0.borrow_mut().folder = Some(state.path().to_owned());
    let out = state.path().join("to the cutter");
    let mut screen = bench_on(host.clone(), Start::NamedDemo("good".into()));
    click(&mut screen, "Make");
    settle(&mut screen);
    click(&mut screen, "Export…");
    click(&mut screen, "Browse…");
    host.0.borrow_mut().answer = Some(Picked::Path(out.clone()));
    screen.run_steps(2);
    wait(&mut screen, |s| {
        s.state()
            .said()
            .is_some_and(|t| t.contains("files written"))
    });
    assert!(out.join("sheets.pdf").is_file() && out.join("cut-list.csv").is_file());
    drop(screen);
    let mut screen = bench_on(host, Start::NamedDemo("good".into()));
    click(&mut screen, "Make");
    settle(&mut screen);
    click(&mut screen, "Export…");
    let shown = out.display().to_string();
    assert!(screen.query_all_by_value(&shown).next().is_some());
}

#[test]
fn a_folder_that_can_not_be_made_is_said() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("a file");
    std::fs::write(&file, "here").expect("written");
    let (mut screen, host) = make();
    click(&mut screen, "Export…");
    click(&mut screen, "Browse…");
    host.0.borrow_mut().answer = Some(Picked::Path(file.clone()));
    screen.run_steps(2);
    wait(&mut screen, |s| {
        s.state()
            .said()
            .is_some_and(|t| t.contains("Nothing was written"))
    });
    assert_eq!(std::fs::read_to_string(&file).expect("still there"), "here");
}

#[test]
fn nothing_to_look_at_is_said() {
    let (mut screen, _) = make();
    click(&mut screen, "Open in viewer");
    assert!(
        screen
            .state()
            .said()
            .expect("said")
            .contains("Nothing was written yet")
    );
}

fn tick(screen: &mut common::Screen, word: &str) {
    let role = egui::Role::CheckBox;
    screen.get_by_role_and_label(role, word).click();
    screen.run_steps(2);
}

#[test]
fn kinds_of_file_and_sheets_are_chosen_in_the_dialog_and_stay_so() {
    let folder = tempfile::tempdir().expect("a folder");
    let (mut screen, host) = make();
    click(&mut screen, "Export…");
    for word in ["DXF", "CSV", "Tabs", "Rack", "Arms", "Lists"] {
        tick(&mut screen, word);
    }
    click(&mut screen, "Browse…");
    host.0.borrow_mut().answer = Some(Picked::Path(folder.path().to_owned()));
    screen.run_steps(2);
    wait(&mut screen, |s| {
        s.state().said().is_some_and(|t| t.contains("ritten"))
    });
    let found = std::fs::read_dir(folder.path()).expect("a folder");
    let names: Vec<String> = found
        .map(|f| {
            f.expect("a file")
                .file_name()
                .to_string_lossy()
                .into_owned()
        })
        .collect();
    assert_eq!(
        names,
        ["sheets-tie-rods.pdf"],
        "a rod has nothing for the cutter"
    );
    click(&mut screen, "Export…");
    for word in ["PDF", "SVG", "Tie rods"] {
        tick(&mut screen, word);
    }
    let write = screen.get_by_label("Write");
    use egui_kittest::kittest::NodeT;
    assert!(write.accesskit_node().is_disabled(), "nothing is chosen");
}

#[test]
fn everything_of_the_shop_is_typed_in_the_window() {
    let (mut screen, _) = make();
    click(&mut screen, "Page: Shop");
    click(&mut screen, "Units: both");
    for (name, text) in [
        ("Owner", "Shed 4"),
        ("Revision", "B"),
        ("Date of issue", "3 May"),
        ("Datum ahead", "-10"),
        ("Datum to the left", "1/2"),
        ("Datum above ground", "2"),
        ("Bars as bought", "10'"),
        ("Saw cut", "1/8"),
        ("Plate, length", "36"),
        ("Plate, width", "24"),
        ("Holes along the rack", "3 1/4"),
        ("Mount bolts", "3/8-24"),
    ] {
        fill(&mut screen, name, text);
    }
    let build = screen.state().build();
    let shop = &build.shop;
    assert_eq!(shop.both_units, Some(true));
    assert_eq!(shop.owner.as_deref(), Some("Shed 4"));
    assert_eq!(shop.revision.as_deref(), Some("B"));
    assert_eq!(shop.issued.as_deref(), Some("3 May"));
    assert_eq!(shop.datum, Some([-10.0, 0.5, 2.0]));
    assert_eq!((shop.stock_length, shop.kerf), (Some(120.0), Some(0.125)));
    assert_eq!(shop.plate, Some([36.0, 24.0]));
    let mount = build.front.parts.rack_mount.as_ref().expect("typed");
    assert_eq!((mount.width, mount.along, mount.across), (4.25, 3.25, 2.0));
    assert_eq!(mount.thread.as_deref(), Some("3/8-24"));
    fill(&mut screen, "Saw cut", "thin");
    assert_eq!(screen.state().build().shop.kerf, Some(0.125));
    fill(&mut screen, "Datum to the left", " ");
    assert_eq!(screen.state().build().shop.datum, Some([-10.0, 0.0, 2.0]));
}

#[test]
fn the_other_parts_of_a_joint_are_one_click_away() {
    let (mut screen, _) = make();
    find_and_click(&mut screen, "All parts of this joint…");
    let view = screen.state().view();
    assert_eq!(view.stage, Stage::Prove);
    assert_eq!(view.prove.joint, PointName::UpperFrontPivot);
}
