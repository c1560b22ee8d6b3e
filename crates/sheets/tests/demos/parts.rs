//! Parts are as large as their build says.

use super::*;

#[test]
fn what_the_defaults_give_keeps_its_own_least_measures() {
    let m = Metrics::new().unwrap();
    let mut build = good();
    build.front.parts = trammel_build::AxleParts::default();
    build.rear.as_mut().unwrap().parts = trammel_build::AxleParts::default();
    for sheet in Sheets::of(&build, Paper::A4, &m).sheets {
        let Some(part) = &sheet.part else { continue };
        for found in trammel_fabrication::minimums::check(part) {
            assert!(found.holds(), "{}: {found:?}", sheet.name);
        }
    }
}

#[test]
fn a_tab_has_the_sizes_that_its_bracket_says() {
    // 1 1/2 wide with a round end about the hole, 1 1/8 from foot to hole: 1 7/8 high; the hole 25/64.
    let part = flat_part_at(&good(), AxleName::Front, PointName::LowerRearPivot).unwrap();
    let bounds = part.bounds();
    assert!((bounds.width() - 1.5 * 25.4).abs() < 1e-9);
    assert!((bounds.height() - 1.875 * 25.4).abs() < 1e-9);
    assert!((part.holes[0].diameter - 0.390_625 * 25.4).abs() < 1e-9);
    assert!((part.holes[0].centre.y - bounds.min.y - 1.125 * 25.4).abs() < 1e-9);
    assert_eq!(part.quantity.total(), 4);
}

#[test]
fn ears_and_base_of_the_rack_end_come_from_one_bar() {
    let m = Metrics::new().unwrap();
    let (_, build) = demos().into_iter().find(|d| d.0 == "lifted").unwrap();
    let sheets = Sheets::of(&build, Paper::A4, &m);
    let list = sheets.sheet("cut-list").unwrap();
    let bar = |t: &&trammel_drawings::table::Table| {
        t.title.starts_with("flat bar 1 1/2 (1.500) x 1/4 (0.250)")
    };
    let table = list.tables.iter().find(bar).unwrap();
    let piece = |name: &str| table.rows().iter().find(|r| r[0] == name).unwrap();
    assert_eq!(piece("Rack-end bracket, ear")[2], "4");
    // The base is as long as the gap between the ears.
    let gap = build.front.parts.joints[&PointName::TieRodInner]
        .bracket
        .as_ref()
        .unwrap()
        .gap;
    let base = piece("Rack-end bracket, base");
    assert!(
        base[1].contains(&format!("({:.3})", gap.unwrap())),
        "{base:?} is not {gap:?}"
    );
}

#[test]
fn the_tie_rods_sum_is_what_is_left_of_the_distance_of_its_joints() {
    // Joints 15 3/16 in apart along y and 1/8 along x. Off it at each end: 2 7/16 to the shank's end less 7/8 engaged, and the 1/2 in adapter.
    let centres = (15.1875_f64.powi(2) + 0.125_f64.powi(2)).sqrt();
    let tube = centres - 2.0 * (2.4375 - 0.875) - 2.0 * 0.5;
    let m = Metrics::new().unwrap();
    let sheets = Sheets::of(&good(), Paper::A4, &m);
    let rod = sheets.sheet("front-tie-rod").unwrap();
    let last = rod.tables[0].rows().last().unwrap()[1].clone();
    assert!(
        last.contains(&format!("({tube:.3})")),
        "{last} is not {tube:.3}"
    );
}

/// The good demo's rack face stands 4 11/16 in from the middle and its hole is 1 7/16 in deep: it ends at 3 1/4 in.
#[test]
fn a_hole_that_reaches_the_hard_teeth_is_told() {
    let m = Metrics::new().unwrap();
    let mut build = good();
    let card = |build: &Build| {
        let sheets = Sheets::of(build, Paper::A4, &m);
        let sheet = sheets.sheet("rack-end-drill-and-tap").unwrap().clone();
        let words: Vec<String> = sheet
            .pages
            .iter()
            .flat_map(|p| texts(p, &m))
            .map(|(t, _)| t)
            .collect();
        (sheet.heed, words.join(" "))
    };
    let (heed, words) = card(&build);
    assert!(heed.is_empty(), "{heed:?}");
    assert!(words.contains("try with a file"), "{words}");
    build.front.rack_end.hard_to = Some(3.25);
    let (heed, words) = card(&build);
    assert!(heed.is_empty(), "{heed:?}");
    assert!(
        words.contains("hole to 3 1/4 (3.250), teeth to 3 1/4 (3.250)"),
        "{words}"
    );
    build.front.rack_end.hard_to = Some(3.3125);
    let (heed, words) = card(&build);
    assert!(
        heed.iter()
            .any(|h| h.starts_with("TOO DEEP: the hole ends 3 1/4")),
        "{heed:?}"
    );
    assert!(words.contains("TOO DEEP"), "{words}");
}
