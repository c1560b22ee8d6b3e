//! Every part that is derived from a demo, and a tab on a tube that runs askew, as an outsider reads its files.

use std::path::Path;

use approx::assert_relative_eq;
use serde_json::Value;
use trammel_build::{Build, FrameTube, PointName, Section};
use trammel_drawings::metrics::Metrics;
use trammel_drawings::sheet::Paper;
use trammel_fabrication::flat_part::FlatPart;
use trammel_sheets::{Format, Sheets, Which, file_of, files_of};

use crate::cutter::ezdxf;
use crate::tools::{at_hand, python, script};

/// The demos, and the first with its lower front pivot on a round tube that runs askew.
fn builds() -> Vec<(String, Build)> {
    let read = |text: &str| trammel_persistence::read(text).expect("it reads");
    let mut builds: Vec<(String, Build)> = trammel_persistence::demos()
        .into_iter()
        .map(|d| (d.name.to_owned(), read(d.text)))
        .collect();
    let mut askew = builds[0].1.clone();
    let joint = askew
        .front
        .parts
        .joints
        .get_mut(&PointName::LowerFrontPivot);
    let bracket = joint.and_then(|j| j.bracket.as_mut()).expect("a bracket");
    bracket.tube = Some(FrameTube {
        from: [8.0, 5.25, 6.5],
        to: [-8.0, 3.75, 7.5],
        section: Section::Round(2.0, 0.12),
    });
    builds.push(("askew".to_owned(), askew));
    builds
}

/// Writes all files of a kind and reads them back, with each sheet's part and the number of parts on the plates.
fn read_back(
    build: &Build,
    format: Format,
    check: &str,
) -> (Value, Vec<(String, FlatPart)>, Sheets) {
    let metrics = Metrics::new().expect("metrics");
    let sheets = Sheets::of(build, Paper::A4, &metrics);
    let folder = tempfile::tempdir().expect("a folder");
    for name in files_of(&sheets, &[format], &Which::All).expect("names") {
        let file = file_of(&sheets, &name, &metrics).expect("a file");
        std::fs::write(folder.path().join(&file.name), file.bytes).expect("written");
    }
    let found = script(check, Path::new(folder.path()));
    let parts = sheets.sheets.iter().filter_map(|sheet| {
        let part = sheet.part.clone()?;
        Some((format!("{}.{format}", sheet.name), part))
    });
    let parts = parts.collect();
    (found, parts, sheets)
}

fn numbers(value: &Value) -> Vec<f64> {
    let list = value.as_array().expect("a list");
    list.iter().map(|n| n.as_f64().expect("mm")).collect()
}

#[test]
fn every_derived_part_is_a_clean_dxf_of_closed_contours_of_its_size() {
    if !ezdxf() {
        return;
    }
    for (name, build) in builds() {
        let (found, parts, _) = read_back(&build, Format::Dxf, "dxf_check.py");
        assert!(parts.len() >= 10, "{name}: {}", parts.len());
        for (file, part) in &parts {
            let one = &found[file];
            let what = format!("{name}, {file}: {one}");
            assert_eq!(one["errors"], serde_json::json!([]), "{what}");
            assert_eq!(one["repairs"], serde_json::json!([]), "{what}");
            assert_eq!(one["units"], 4, "millimetres, {what}");
            assert_eq!(one["open_contours"], 0, "{what}");
            let lengths = numbers(&one["contour_lengths"]);
            assert_eq!(lengths.len(), 1 + part.openings.len(), "{what}");
            let outline = lengths.last().expect("an outline");
            assert_relative_eq!(*outline, part.outline.length(), epsilon = 1e-3);
            let bounds = part.bounds();
            for (read, drawn) in numbers(&one["size"])
                .iter()
                .zip([bounds.width(), bounds.height()])
            {
                assert!((read - drawn).abs() < 0.02, "{drawn} mm wanted, {what}");
            }
            let circles = one["circles"].as_array().expect("circles");
            assert_eq!(circles.len(), part.holes.len(), "{what}");
            for (circle, hole) in circles.iter().zip(&part.holes) {
                let [x, y, r] = numbers(circle)[..] else {
                    panic!("{what}")
                };
                let drawn = [hole.centre.x, hole.centre.y, hole.diameter / 2.0];
                for (read, drawn) in [x, y, r].into_iter().zip(drawn) {
                    assert_relative_eq!(read, drawn, epsilon = 1e-5);
                }
            }
            let lettering = ["TEXT", "MTEXT", "DIMENSION"].map(Value::from);
            let kinds = one["kinds"].as_array().expect("kinds");
            assert!(kinds.iter().all(|k| !lettering.contains(k)), "{what}");
        }
        // Every piece of every part lies on some plate, closed.
        let wanted: u32 = parts.iter().map(|(_, p)| p.quantity.total()).sum();
        let plates = found.as_object().expect("files").iter();
        let plates: Vec<_> = plates
            .filter(|(file, _)| file.contains("-plate-") && parts.iter().all(|(f, _)| f != *file))
            .collect();
        let laid: usize = plates
            .iter()
            .map(|(file, plate)| {
                assert_eq!(plate["errors"], serde_json::json!([]), "{name}, {file}");
                assert_eq!(plate["repairs"], serde_json::json!([]), "{name}, {file}");
                assert_eq!(plate["open_contours"], 0, "{name}, {file}");
                plate["contour_lengths"].as_array().expect("a list").len()
            })
            .sum();
        assert_eq!(laid, wanted as usize, "{name}: pieces on plates");
    }
}

#[test]
fn every_derived_part_is_an_svg_of_closed_paths_of_its_size() {
    if !at_hand("Python", python().arg("--version")) {
        return;
    }
    for (name, build) in builds() {
        let (found, parts, _) = read_back(&build, Format::Svg, "svg_check.py");
        for (file, part) in &parts {
            let one = &found[file];
            let what = format!("{name}, {file}: {one}");
            assert_eq!(one["root"], true, "{what}");
            // Half a line's width hangs over, 0.35 mm are left free.
            let size = numbers(&one["size"]);
            assert_relative_eq!(size[0], part.bounds().width() + 0.7, epsilon = 1e-4);
            assert_relative_eq!(size[1], part.bounds().height() + 0.7, epsilon = 1e-4);
            assert_eq!(one["closed_paths"], 1 + part.openings.len(), "{what}");
            assert_eq!(one["open_paths"], part.bends.len(), "{what}");
            let radii = numbers(&one["circles"]);
            assert_eq!(radii.len(), part.holes.len(), "{what}");
            for (read, hole) in radii.iter().zip(&part.holes) {
                assert_relative_eq!(*read, hole.diameter / 2.0, epsilon = 1e-5);
            }
            assert_eq!(one["texts"], serde_json::json!([]), "{what}");
        }
    }
}

#[test]
fn the_askew_tab_of_these_files_has_ears_of_their_own() {
    let (_, build) = builds().pop().expect("the askew one");
    let sheets = Sheets::of(&build, Paper::A4, &Metrics::new().expect("metrics"));
    for ear in ["front-ear", "rear-ear"] {
        let name = format!("front-lower-arm-front-pivot-{ear}-tab");
        let part = sheets.sheet(&name).and_then(|s| s.part.clone());
        let part = part.unwrap_or_else(|| panic!("{name}: {:?}", sheets.not_made));
        assert_eq!((part.quantity.as_drawn, part.quantity.mirrored), (1, 1));
        assert!(
            part.notes.iter().any(|n| n.contains("off square")),
            "{:?}",
            part.notes
        );
    }
}
