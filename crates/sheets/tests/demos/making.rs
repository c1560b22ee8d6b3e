//! Which files are made, under which names.

use super::*;

#[test]
fn the_same_build_gives_the_same_bytes_under_names_of_their_own() {
    for (name, build) in demos() {
        let first = files(&build, None);
        assert_eq!(first, files(&build, None), "{name}");
        let names: BTreeSet<&str> = first.iter().map(|f| f.name.as_str()).collect();
        assert_eq!(names.len(), first.len(), "{name}");
        assert!(first.len() > 30, "{name}: {}", first.len());
    }
}

#[test]
fn one_sheet_alone_gives_its_own_files() {
    let names: Vec<String> = files(&good(), Some("front-lower-arm-rear-pivot-tab"))
        .into_iter()
        .map(|f| f.name)
        .collect();
    let stem = "front-lower-arm-rear-pivot-tab";
    assert_eq!(names, ["pdf", "dxf", "svg"].map(|e| format!("{stem}.{e}")));
}

#[test]
fn a_sheet_that_is_not_there_is_named_with_those_that_are() {
    let m = Metrics::new().unwrap();
    let sheets = Sheets::of(&good(), Paper::A4, &m);
    let fault = file_names(&sheets, &Format::ALL, Some("hat"))
        .unwrap_err()
        .to_string();
    assert!(
        fault.contains("\"hat\"") && fault.contains("front-tie-rod"),
        "{fault}"
    );
}

#[test]
fn some_groups_alone_give_their_pages_in_one_file_and_no_plate() {
    let sheets = Sheets::of(&good(), Paper::A4, &Metrics::new().unwrap());
    let which = trammel_sheets::Which::Groups(vec![trammel_sheets::Group::Rods]);
    let names = trammel_sheets::files_of(&sheets, &Format::ALL, &which).unwrap();
    let names: Vec<&str> = names.iter().map(|f| f.name.as_str()).collect();
    assert!(names.contains(&"sheets-tie-rods.pdf"), "{names:?}");
    assert!(
        names
            .iter()
            .all(|n| !n.contains("plate") && !n.contains("tab")),
        "{names:?}"
    );
}
