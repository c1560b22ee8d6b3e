//! Every build file that was ever released opens, and saving it unedited changes no byte. A new release adds a folder; this test walks them.
#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests fail as tests do"
)]

use std::{
    fs,
    path::{Path, PathBuf},
};

use trammel_build::{AxleName, Edit, HitPoint, LengthUnit, Mass, SpringRate};
use trammel_persistence::{
    BuildFile, IfChanged, Separator, read, read_points, write, write_points,
};

fn sorted(folder: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).expect("a folder");
    let mut paths: Vec<PathBuf> = entries.map(|e| e.expect("an entry").path()).collect();
    paths.sort();
    paths
}

fn releases() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/released");
    let found = sorted(&folder);
    assert!(
        !found.is_empty(),
        "no release is kept in {}",
        folder.display()
    );
    found
}

fn builds(release: &Path) -> Vec<PathBuf> {
    let is_build = |p: &PathBuf| p.extension().is_some_and(|end| end == "ron");
    let found: Vec<_> = sorted(release).into_iter().filter(is_build).collect();
    let everything = release.join("everything.ron");
    assert!(
        found.contains(&everything),
        "{} is missing",
        everything.display()
    );
    assert!(found.len() > 1, "{} has no demos", release.display());
    found
}

#[test]
fn each_opens_can_be_posed_and_is_saved_to_the_byte() {
    for path in releases().iter().flat_map(|r| builds(r)) {
        let name = path.display();
        let text = fs::read_to_string(&path).expect("text");
        let folder = tempfile::tempdir().expect("a folder");
        let copy = folder.path().join("build.ron");
        fs::write(&copy, &text).expect("written");
        let mut file = BuildFile::open(&copy).unwrap_or_else(|fault| panic!("{name}: {fault}"));
        let build = file.build().clone();
        assert_eq!(build.faults(), [], "{name}");
        for axle in [
            Some(AxleName::Front),
            build.rear.as_ref().map(|_| AxleName::Rear),
        ] {
            let Some(axle) = axle else { continue };
            let model = build.axle(axle).unwrap_or_else(|f| panic!("{name}: {f}"));
            assert!(model.axle.left.pose(0.0, 0.0).is_ok(), "{name}");
        }
        file.save(&build, IfChanged::Refuse).expect("saved");
        assert_eq!(fs::read(&copy).expect("there"), text.as_bytes(), "{name}");
        let renamed = Edit::SetTitle("Renamed".into())
            .apply(&build)
            .expect("an edit");
        file.save(&renamed, IfChanged::Refuse).expect("saved");
        let again = fs::read_to_string(&copy).expect("there");
        assert_eq!(read(&again).as_ref(), Ok(&renamed), "{name}");
        let (differs, lines) = (changed_lines(&text, &again), text.lines().count());
        assert_eq!(differs, 1, "{name}: {differs} of {lines} lines");
        assert_eq!(
            read(&write(&build)).as_ref(),
            Ok(&build),
            "{name}: as today's file"
        );
    }
}

fn changed_lines(old: &str, new: &str) -> usize {
    old.lines().zip(new.lines()).filter(|(a, b)| a != b).count()
        + old.lines().count().abs_diff(new.lines().count())
}

/// Beside each build lies the table of its points as that release exported it.
#[test]
fn each_has_the_points_that_it_had_when_it_was_released() {
    for path in releases().iter().flat_map(|r| builds(r)) {
        let (name, table) = (path.display(), path.with_extension("csv"));
        let build = read(&fs::read_to_string(&path).expect("text")).expect("a build");
        let kept =
            fs::read_to_string(&table).unwrap_or_else(|f| panic!("{}: {f}", table.display()));
        let points = read_points(&kept, build.unit).unwrap_or_else(|f| panic!("{name}: {f}"));
        assert!(points.len() >= 9, "{name}: {} points", points.len());
        for (at, place) in points {
            assert_eq!(build.point(at), Some(place), "{name}: {at:?}");
        }
        assert_eq!(
            build.title,
            title_in(&fs::read_to_string(&path).expect("text")),
            "{name}"
        );
    }
}

fn title_in(text: &str) -> String {
    let line = text
        .lines()
        .find_map(|l| l.trim().strip_prefix("title: \""));
    let title = line.and_then(|l| l.strip_suffix("\","));
    title.expect("a title without quotes in it").to_owned()
}

/// What `everything.ron` says beside its points; every release keeps the same vehicle and adds its new fields.
#[test]
fn the_file_of_every_field_means_what_it_meant() {
    for release in releases() {
        let text = fs::read_to_string(release.join("everything.ron")).expect("text");
        let build = read(&text).expect("a build");
        let name = release.display();
        assert_eq!(build.unit, LengthUnit::Millimetre, "{name}");
        assert_eq!(build.vehicle.mass, Some(Mass::Kilograms(374.0)), "{name}");
        assert_eq!(build.hit.at, Some(HitPoint::Contact), "{name}");
        assert_eq!(build.front.rack.travel, Some(38.0), "{name}");
        assert_eq!(
            build.front.rack_end.bar_grade.as_deref(),
            Some("1045 hot rolled"),
            "{name}"
        );
        let rates = [
            build.front.spring,
            build.rear.as_ref().and_then(|r| r.spring),
        ]
        .map(|s| s.and_then(|s| s.rate));
        let expected = [
            SpringRate::NewtonsPerMillimetre(20.0),
            SpringRate::PoundsPerInch(120.0),
        ];
        assert_eq!(rates, expected.map(Some), "{name}");
        assert_eq!(build.limits.lock_over_deg, Some(25.0), "{name}");
        assert_eq!(build.keep_outs.len(), 2, "{name}");
        assert_eq!(build.locked.len(), 4, "{name}");
        assert_eq!(build.shop.stock_length, Some(6000.0), "{name}");
        assert_eq!(build.materials.len(), 1, "{name}");
        let rows: Vec<_> = build.set_up.sessions.iter().map(|s| s.rows.len()).collect();
        assert_eq!(rows, [3, 2, 1, 1], "{name}");
        assert_eq!(build.set_up.survey.len(), 2, "{name}");
        assert_eq!(build.set_up.statics.wanted_toe_deg, Some(0.2), "{name}");
        assert_eq!(
            build.notes, "First line \"quoted\".\nSecond line: 5\u{2033}.",
            "{name}"
        );
    }
}

/// Run by hand for a new release: writes the table of points beside each build that has none.
#[test]
#[ignore = "writes into the sources; for a new release"]
fn write_tables() {
    for path in releases().iter().flat_map(|r| builds(r)) {
        let table = path.with_extension("csv");
        if !table.exists() {
            let build = read(&fs::read_to_string(&path).expect("text")).expect("a build");
            fs::write(&table, write_points(&build, Separator::Comma)).expect("written");
        }
    }
}
