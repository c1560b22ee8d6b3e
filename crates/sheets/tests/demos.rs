//! Every demo's complete set, and what a bad or a bare build gives.

#![allow(
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::print_stdout,
    reason = "a test stops where it fails"
)]

#[path = "demos/feet.rs"]
mod feet;
#[path = "demos/making.rs"]
mod making;
#[path = "demos/parts.rs"]
mod parts;
#[path = "demos/rounding.rs"]
mod rounding;

use std::collections::BTreeSet;

use trammel_build::{AxleName, Build, Edit, PartsEdit, PointName, ShopSpec, ShopStep};
use trammel_drawings::ink::{Ink, strokes};
use trammel_drawings::metrics::Metrics;
use trammel_drawings::sheet::{Page, Paper};
use trammel_fabrication::plane::{Bounds, Point};
use trammel_sheets::{Format, OutFile, Sheets, file_names, file_of, flat_part_at, rounding_costs};

fn demos() -> Vec<(&'static str, Build)> {
    let read = |d: trammel_persistence::Demo| (d.name, trammel_persistence::read(d.text).unwrap());
    trammel_persistence::demos().into_iter().map(read).collect()
}

fn good() -> Build {
    demos().remove(0).1
}

fn files(build: &Build, only: Option<&str>) -> Vec<OutFile> {
    let m = Metrics::new().unwrap();
    let sheets = Sheets::of(build, Paper::A4, &m);
    let names = file_names(&sheets, &Format::ALL, only).unwrap();
    let made = names.iter().map(|n| file_of(&sheets, n, &m).unwrap());
    made.collect()
}

/// Every text of a page with the room it takes on it.
fn texts(page: &Page, m: &Metrics) -> Vec<(String, Bounds)> {
    let mut found = Vec::new();
    for placed in &page.placed {
        for stroke in strokes(&placed.drawing, m) {
            let Ink::Text(text) = stroke.ink else {
                continue;
            };
            let room = m.bounds(&text);
            let room = Bounds {
                min: room.min + placed.shift,
                max: room.max + placed.shift,
            };
            // A tile shows a part of its drawing; what it cuts is whole on the next.
            let whole = placed
                .window
                .is_none_or(|w| w.contains(room.min) && w.contains(room.max));
            if whole && !text.content.is_empty() {
                found.push((text.content, room));
            }
        }
    }
    found
}

fn overlap(a: &Bounds, b: &Bounds) -> bool {
    a.min.x < b.max.x && b.min.x < a.max.x && a.min.y < b.max.y && b.min.y < a.max.y
}

#[test]
fn no_text_of_any_demo_overlaps_another_or_leaves_the_frame() {
    let m = Metrics::new().unwrap();
    let mut wrong = Vec::new();
    for (name, build) in demos() {
        for paper in Paper::ALL {
            let [width, height] = paper.size();
            let frame = Bounds {
                min: Point::new(20.0, 10.0),
                max: Point::new(width - 10.0, height - 10.0),
            };
            for sheet in Sheets::of(&build, paper, &m).sheets {
                assert!(!sheet.pages.is_empty(), "{name}: {}", sheet.name);
                for page in &sheet.pages {
                    let texts = texts(page, &m);
                    for (index, (text, room)) in texts.iter().enumerate() {
                        if !(frame.contains(room.min) && frame.contains(room.max)) {
                            wrong.push(format!(
                                "{name}, {paper}, {}: {text:?} leaves the frame",
                                sheet.name
                            ));
                        }
                        for (other, taken) in texts.iter().skip(index + 1) {
                            if overlap(room, taken) {
                                wrong.push(format!(
                                    "{name}, {paper}, {}: {text:?} on {other:?}",
                                    sheet.name
                                ));
                            }
                        }
                    }
                }
            }
        }
    }
    wrong.dedup();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn the_font_has_every_letter_of_every_sheet() {
    let m = Metrics::new().unwrap();
    for (name, build) in demos() {
        for sheet in Sheets::of(&build, Paper::A4, &m).sheets {
            for page in &sheet.pages {
                for (text, _) in texts(page, &m) {
                    assert!(m.has(&text), "{name}, {}: {text:?}", sheet.name);
                }
            }
        }
    }
}

#[test]
fn the_demo_that_is_shown_first_is_made_whole_without_a_word_that_something_does_not_go() {
    let m = Metrics::new().unwrap();
    let sheets = Sheets::of(&good(), Paper::Letter, &m);
    assert_eq!(sheets.not_made, Vec::<String>::new());
    for sheet in &sheets.sheets {
        for page in &sheet.pages {
            for (text, _) in texts(page, &m) {
                let wrong = ["TOO SMALL", "DOES NOT GO", "is given"]
                    .iter()
                    .any(|w| text.contains(w));
                assert!(!wrong, "{}: {text}", sheet.name);
            }
        }
    }
}

/// What is printed of a build's state is what the whole proof finds, and what does not go is told besides.
#[test]
fn printed_cautions_are_those_of_the_whole_proof_and_what_does_not_go_is_told() {
    use trammel_analysis::{Findings, Grade, ProofDepth, Study, prove};
    let m = Metrics::new().unwrap();
    for (name, build) in demos() {
        let study = Study::of(&build).unwrap();
        let proof = prove(&build, ProofDepth::Full, &|| false).unwrap();
        let findings = Findings::of(&build, &study).with_proof(&build, &study, &proof);
        let count = |grade| {
            let of = findings.cautions.iter().filter(|c| c.grade == grade);
            of.filter(|c| c.accepted(&build).is_none()).count()
        };
        let (dangers, cautions) = (count(Grade::Danger), count(Grade::Caution));
        let sheets = Sheets::of(&build, Paper::Letter, &m);
        let said = format!("dangers {dangers}, cautions {cautions};");
        for sheet in &sheets.sheets {
            let all: Vec<String> = sheet
                .pages
                .iter()
                .flat_map(|p| texts(p, &m))
                .map(|t| t.0)
                .collect();
            let all = all.join(" ");
            assert!(all.contains(&said), "{name} {}: {said}", sheet.name);
            assert_eq!(
                all.contains("DOES NOT GO"),
                sheet.heed.iter().any(|h| h.contains("DOES NOT GO")),
                "{name} {}",
                sheet.name
            );
        }
        let heeded = sheets.sheets.iter().any(|s| !s.heed.is_empty());
        assert_eq!(heeded, !matches!(name, "good" | "measured"), "{name}");
    }
}

#[test]
fn a_list_of_several_pages_counts_its_sheets_and_speaks_the_shops_unit() {
    let m = Metrics::new().unwrap();
    let sheets = Sheets::of(&good(), Paper::Letter, &m);
    let fixture = sheets.sheet("fixture-sheet").unwrap();
    let count = fixture.pages.len();
    assert!(count > 1);
    for (index, page) in fixture.pages.iter().enumerate() {
        let texts = texts(page, &m);
        let sheet = format!("{} / {count}", index + 1);
        assert!(texts.iter().any(|t| t.0 == sheet), "{sheet}");
        let within: Vec<&str> = texts
            .iter()
            .map(|t| t.0.as_str())
            .filter(|t| t.contains('\u{b1}'))
            .collect();
        assert!(within.iter().all(|t| t.ends_with(" in")), "{within:?}");
        assert!(
            index != 1 || !within.is_empty(),
            "distances stand on the second page"
        );
    }
}

#[test]
fn a_name_that_no_table_knows_leaves_out_that_part_and_says_so() {
    let m = Metrics::new().unwrap();
    let whole = Sheets::of(&good(), Paper::A4, &m);
    let mut build = good();
    let joint = build
        .front
        .parts
        .joints
        .get_mut(&PointName::UpperFrontPivot)
        .unwrap();
    joint.bolt.as_mut().unwrap().thread = Some("left-over bolt".to_owned());
    let sheets = Sheets::of(&build, Paper::A4, &m);
    assert!(sheets.sheet("front-upper-arm-front-pivot-tab").is_none());
    assert_eq!(sheets.sheets.len() + 1, whole.sheets.len());
    let said = sheets
        .not_made
        .iter()
        .find(|s| s.starts_with("Front upper arm, front pivot"));
    assert!(said.unwrap().contains("left-over bolt"), "{said:?}");
}

#[test]
fn a_build_without_any_part_is_made_of_defaults_and_says_so() {
    let m = Metrics::new().unwrap();
    let mut build = good();
    build.front.parts = trammel_build::AxleParts::default();
    let sheets = Sheets::of(&build, Paper::A4, &m);
    let tab = sheets.sheet("front-upper-arm-front-pivot-tab").unwrap();
    let said: Vec<String> = texts(&tab.pages[0], &m).into_iter().map(|t| t.0).collect();
    assert!(said.join(" ").contains("No bracket is given"), "{said:?}");
}

#[test]
fn an_accepted_caution_is_printed_with_its_reason() {
    let m = Metrics::new().unwrap();
    let (_, build) = demos().into_iter().find(|d| d.0 == "lifted").unwrap();
    let study = trammel_analysis::Study::of(&build).unwrap();
    let caution = trammel_analysis::cautions(&build, &study).remove(0);
    let accepted = trammel_build::AcceptedCaution {
        caution: caution.key(),
        reason: "Only driven on grass.".to_owned(),
        figure: None,
    };
    let build = Edit::Parts(PartsEdit::Accept(accepted))
        .apply(&build)
        .unwrap();
    let sheets = Sheets::of(&build, Paper::A4, &m);
    let rows = sheets.sheet("cautions").unwrap().tables[1].rows().to_vec();
    assert_eq!(rows.len(), 1);
    assert!(rows[0][2].contains("Only driven on grass."));
    let all = sheets.sheet("cautions").unwrap();
    let printed: Vec<String> = all
        .pages
        .iter()
        .flat_map(|page| texts(page, &m))
        .map(|t| t.0)
        .collect();
    let printed = printed.join(" ");
    assert!(printed.contains("Only driven on grass."));
    for words in [
        "Whatever the figures say",
        "Positive stops",
        "Not in any figure",
    ] {
        assert!(printed.contains(words), "{words}: {printed}");
    }
}

#[test]
#[ignore = "writes PDF files to look at, and measures nothing"]
fn sheets_to_look_at() {
    let m = Metrics::new().unwrap();
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("demos");
    std::fs::create_dir_all(&folder).unwrap();
    for (name, build) in demos() {
        for paper in [Paper::Letter, Paper::A3] {
            let sheets = Sheets::of(&build, paper, &m);
            let names = file_names(&sheets, &[Format::Pdf], None).unwrap();
            let file = file_of(&sheets, &names[0], &m).unwrap();
            let path = folder.join(format!("{name}-{paper}.pdf"));
            std::fs::write(&path, file.bytes).unwrap();
            println!("{} {:?}", path.display(), sheets.not_made);
        }
    }
}

#[test]
fn every_page_says_what_worked_it_out_and_in_which_version() {
    let m = Metrics::new().unwrap();
    let version = concat!("Trammel ", env!("CARGO_PKG_VERSION"));
    for sheet in Sheets::of(&good(), Paper::Letter, &m).sheets {
        for page in &sheet.pages {
            assert!(
                texts(page, &m).iter().any(|t| t.0 == version),
                "{}",
                sheet.name
            );
        }
    }
}

/// A name in letters that the font lacks is told once, on paper and beside it; one in letters that it has is not.
#[test]
fn letters_that_print_as_boxes_are_told_of() {
    let m = Metrics::new().unwrap();
    let named = |title: &str| {
        let build = Edit::SetTitle(title.to_owned()).apply(&good()).unwrap();
        Sheets::of(&build, Paper::A4, &m)
    };
    let told = |sheets: &Sheets| -> Vec<(usize, String)> {
        let all = sheets.sheets.iter().enumerate();
        all.flat_map(|(i, s)| s.heed.iter().map(move |h| (i, h.clone())))
            .filter(|(_, heed)| heed.contains("boxes"))
            .collect()
    };
    for whole in ["Förster’s Kart №1", "Багги", "Αμαξίδιο"] {
        assert_eq!(told(&named(whole)), [], "{whole}");
    }
    let sheets = named("越野车");
    let told = told(&sheets);
    assert_eq!(told.len(), 1, "{told:?}");
    let (index, heed) = &told[0];
    assert_eq!(*index, 0);
    assert!(heed.contains("越野车"), "{heed}");
    let printed: String = (sheets.sheets[0].pages.iter())
        .flat_map(|page| texts(page, &m))
        .map(|(text, _)| text)
        .collect();
    assert!(printed.contains("empty boxes stand"), "{printed}");
}
