use super::*;
use approx::assert_relative_eq;
use proptest::prelude::*;

fn thread(typed: &str) -> Thread {
    Thread::find(typed).unwrap()
}

/// The printed digits are met when ours rounds to them: off by no more than half a unit of the last place, and a hair.
fn prints_as(ours: f64, printed: f64, last_place: f64) -> bool {
    (ours - printed).abs() <= 0.501 * last_place
}

/// Unified fine, inches, printed in a vendor's table after ASME B1.1: pitch diameter, internal minor diameter, tensile stress area to three or four
/// places (at 5/16-24 cut off, not rounded).
#[test]
fn unified_fine_as_printed() {
    let rows = [
        ("1/4-28", 0.2268, 0.2113, 0.0364, 1e-4),
        ("5/16-24", 0.2854, 0.2674, 0.0580, 1.6e-4),
        ("3/8-24", 0.3479, 0.3299, 0.0878, 1e-4),
        ("7/16-20", 0.4050, 0.3834, 0.1187, 1e-4),
        ("1/2-20", 0.4675, 0.4459, 0.1599, 1.1e-4),
        ("9/16-18", 0.5264, 0.5024, 0.2030, 1e-3),
        ("5/8-18", 0.5889, 0.5649, 0.2560, 1e-3),
        ("3/4-16", 0.7094, 0.6823, 0.3730, 1e-3),
    ];
    for (typed, pitch_diameter, minor, area, last) in rows {
        let found = thread(typed);
        assert_eq!(found.series(), Series::Fine);
        assert!(
            prints_as(found.pitch_diameter() / INCH, pitch_diameter, 1e-4),
            "{typed}"
        );
        assert!(
            prints_as(found.internal_minor_diameter() / INCH, minor, 1e-4),
            "{typed}"
        );
        assert!(
            prints_as(found.tensile_stress_area() / (INCH * INCH), area, last),
            "{typed}"
        );
    }
}

/// Unified coarse, inches, printed in an engineering table: minor diameter by D - 1.226869/n and tensile stress area. The sizes
/// 9/16-12 (0.182), 7/8-9 (0.462), 1-8 (0.606), 7/8-14 (0.509) and 1-12 (0.663) are ASME B1.1 areas from memory.
#[test]
fn unified_coarse_as_printed() {
    let rows = [
        ("1/4-20", 0.1887, 0.0318),
        ("5/16-18", 0.2443, 0.0524),
        ("3/8-16", 0.2983, 0.0775),
        ("7/16-14", 0.3499, 0.1063),
        ("1/2-13", 0.4056, 0.1419),
        ("5/8-11", 0.5135, 0.226),
        ("3/4-10", 0.6273, 0.334),
    ];
    for (typed, minor, area) in rows {
        let found = thread(typed);
        assert_eq!(found.series(), Series::Coarse);
        assert!(
            prints_as(found.minor_diameter() / INCH, minor, 1e-4),
            "{typed}"
        );
        let last = if area < 0.2 { 1e-4 } else { 1e-3 };
        assert!(
            prints_as(found.tensile_stress_area() / (INCH * INCH), area, last),
            "{typed}"
        );
    }
    for (typed, area) in [
        ("9/16-12", 0.182),
        ("7/8-9", 0.462),
        ("1-8", 0.606),
        ("7/8-14", 0.509),
        ("1-12", 0.663),
    ] {
        assert!(
            prints_as(
                thread(typed).tensile_stress_area() / (INCH * INCH),
                area,
                1e-3
            ),
            "{typed}"
        );
    }
}

/// ISO 898-1 tables of proof loads: stress area, mm^2, three digits (coarse), and a vendor's table (fine, two places).
#[test]
fn metric_stress_areas_as_printed() {
    let coarse = [
        ("M6", 20.1, 0.1),
        ("M8", 36.6, 0.1),
        ("M10", 58.0, 0.1),
        ("M12", 84.3, 0.1),
        ("M14", 115.0, 1.0),
        ("M16", 157.0, 1.0),
    ];
    let fine = [
        ("M12x1.5", 88.13, 0.01),
        ("M12x1.25", 92.07, 0.01),
        ("M14x1.5", 124.55, 0.01),
        ("M16x1.5", 167.25, 0.01),
        ("M8x1", 39.167, 0.001),
        ("M10x1", 64.494, 0.001),
        ("M10x1.25", 61.199, 0.001),
    ];
    for (typed, area, last) in coarse.into_iter().chain(fine) {
        assert!(
            prints_as(thread(typed).tensile_stress_area(), area, last),
            "{typed}"
        );
    }
    assert!(
        prints_as(thread("M20").tensile_stress_area(), 245.0, 1.0),
        "Shigley 9th ed., Table 8-1"
    );
}

/// Pitch, internal minor and external minor diameter, mm: ISO 724 for the first two.
#[test]
fn metric_diameters_as_printed() {
    let rows = [
        ("M8", 7.188, 6.647, 6.466),
        ("M8x1", 7.350, 6.917, 6.773),
        ("M10", 9.026, 8.376, 8.160),
        ("M10x1.25", 9.188, 8.647, 8.466),
        ("M12", 10.863, 10.106, 9.853),
        ("M12x1.25", 11.188, 10.647, 10.466),
        ("M12x1.5", 11.026, 10.376, 10.160),
        ("M14x1.5", 13.026, 12.376, 12.160),
        ("M16", 14.701, 13.835, 13.546),
        ("M16x1.5", 15.026, 14.376, 14.160),
    ];
    for (typed, pitch_diameter, internal, external) in rows {
        let found = thread(typed);
        assert!(
            prints_as(found.pitch_diameter(), pitch_diameter, 1e-3),
            "{typed}"
        );
        assert!(
            prints_as(found.internal_minor_diameter(), internal, 1e-3),
            "{typed}"
        );
        assert!(prints_as(found.minor_diameter(), external, 1e-3), "{typed}");
    }
}

/// The printed factors are those of the 60-degree triangle, H = sqrt(3)/2 P.
#[test]
fn factors_follow_from_the_triangle() {
    let h = 3.0_f64.sqrt() / 2.0;
    for (printed, exact) in [
        (PITCH_DIAMETER_DEPTH, 0.75 * h),
        (INTERNAL_MINOR_DEPTH, 1.25 * h),
        (EXTERNAL_MINOR_DEPTH, (1.25 + 1.0 / 6.0) * h),
        (
            METRIC_STRESS_AREA_DEPTH,
            (0.75 + 1.25 + 1.0 / 6.0) / 2.0 * h,
        ),
        (UNIFIED_STRESS_AREA_DEPTH, 9.0 / 8.0 * h),
        (FULL_THREAD_DEPTH, 1.5 * h),
    ] {
        assert!((printed - exact).abs() <= 6e-7, "{printed} {exact}");
    }
}

/// The workshop rule, percent of thread = (D - drill) n / 0.01299 in inches: 3/8-24 with drill Q gives 79.4 %.
#[test]
fn tap_drill_leaves_the_printed_share_of_thread() {
    let found = thread("3/8-24");
    let drill = found.tap_drill();
    assert_eq!(drill.name, "Q");
    assert!((found.fraction_of_thread(drill.diameter) * 100.0 - 79.4).abs() < 0.05);
}

#[test]
fn every_tap_drill_leaves_a_usable_thread() {
    for thread in Thread::all() {
        let share = thread.fraction_of_thread(thread.tap_drill().diameter);
        assert!((0.64..0.85).contains(&share), "{thread} {share}");
    }
}

#[test]
fn found_as_people_write_it() {
    let rows = [
        ("3/8-24", "3/8-24 UNF"),
        (" 3/8 - 24 ", "3/8-24 UNF"),
        ("3/8\t-\u{a0}24", "3/8-24 UNF"),
        ("3/8\"-24 unf-2A LH", "3/8-24 UNF"),
        ("3/8 x 24", "3/8-24 UNF"),
        ("3/8\u{2013}24UNF", "3/8-24 UNF"),
        ("\u{215c} fine", "3/8-24 UNF"),
        ("0.375-24", "3/8-24 UNF"),
        (".438-20", "7/16-20 UNF"),
        ("1/2-20 UNF", "1/2-20 UNF"),
        ("1/2 UNC", "1/2-13 UNC"),
        ("1-8", "1-8 UNC"),
        ("1 in - 12", "1-12 UNF"),
        ("M12x1.75", "M12x1.75"),
        ("M12", "M12x1.75"),
        ("m 12", "M12x1.75"),
        ("M12 coarse", "M12x1.75"),
        ("M8 fine", "M8x1"),
        ("MF10x1,25", "M10x1.25"),
        ("M10X1.25", "M10x1.25"),
        ("M10 \u{d7} 1.25 6g", "M10x1.25"),
        ("m10*1.0", "M10x1"),
        ("M10-1.5", "M10x1.5"),
    ];
    for (typed, designation) in rows {
        assert_eq!(
            Thread::find(typed).map(|found| found.designation()),
            Ok(designation),
            "{typed}"
        );
    }
}

#[test]
fn every_designation_finds_its_own_thread() {
    for thread in Thread::all() {
        assert_eq!(Thread::find(thread.designation()), Ok(*thread));
    }
    assert_eq!(Thread::all().len(), 40);
}

#[test]
fn an_inch_size_without_its_pitch_is_asked_back() {
    let error = Thread::find("3/8").unwrap_err();
    assert_eq!(
        error,
        ThreadError::Ambiguous {
            typed: "3/8".into(),
            candidates: vec!["3/8-16 UNC", "3/8-24 UNF"]
        }
    );
    assert!(matches!(
        Thread::find("M12 fine"),
        Err(ThreadError::Ambiguous { .. })
    ));
}

#[test]
fn what_is_not_in_the_table_names_its_neighbours() {
    let Err(ThreadError::Unknown { nearby, .. }) = Thread::find("M12x1") else {
        panic!("M12x1 isn't in the table")
    };
    assert_eq!(nearby[..3], ["M12x1.75", "M12x1.5", "M12x1.25"]);
    let error = Thread::find("3/8-20").unwrap_err();
    assert!(
        error.to_string().contains("3/8-16 UNC, 3/8-24 UNF"),
        "{error}"
    );
    // Misprints of a vendor's table.
    assert!(Thread::find("7/16-24").is_err());
    assert!(Thread::find("5/8-14").is_err());
    assert!(matches!(
        Thread::find("3/8-24 UNC"),
        Err(ThreadError::Unknown { .. })
    ));
}

#[test]
fn nonsense_is_refused() {
    for typed in [
        "",
        " ",
        "bolt",
        "M",
        "3/0-24",
        "-",
        "x",
        "1/2/3-20",
        "M12x1.75x30",
        "3/8-24 UNC UNF",
        "M12 UNF",
        "M-12x0",
        "12 M",
        "12m",
        "10 mf",
        "1/2-0",
        "..",
        "M1e400",
        "\u{221e}",
        "NaN",
        "3/8-24; rm",
        "99999999999/2-3",
    ] {
        assert!(
            matches!(
                Thread::find(typed),
                Err(ThreadError::NotADesignation { .. })
            ),
            "{typed}"
        );
    }
}

#[test]
fn dimensions_are_in_order() {
    for thread in Thread::all() {
        let sizes = [
            thread.minor_diameter(),
            thread.internal_minor_diameter(),
            thread.pitch_diameter(),
            thread.major_diameter(),
        ];
        assert!(sizes.is_sorted(), "{thread}");
        let area = thread.tensile_stress_area();
        assert!(
            area > PI / 4.0 * thread.minor_diameter().powi(2)
                && area < PI / 4.0 * thread.pitch_diameter().powi(2)
        );
        assert!(!thread.source().document.is_empty());
    }
    assert_relative_eq!(thread("3/8-24").major_diameter(), 9.525);
    assert_relative_eq!(thread("3/8-24").pitch(), 25.4 / 24.0);
}

proptest! {
    #[test]
    fn any_text_gets_an_answer(typed in "\\PC{0,24}") {
        let _ = Thread::find(&typed);
    }

    #[test]
    fn any_text_like_a_thread_gets_an_answer(typed in "[mM0-9/x .\\-unfUNC\"]{0,16}") {
        if let Ok(found) = Thread::find(&typed) {
            prop_assert!(Thread::all().contains(&found));
        }
    }
}

/// What is nearest in size comes first, and nothing nearer is left out.
#[test]
fn neighbours_are_named_by_their_distance() {
    for (typed, size) in [
        ("M11", 11.0),
        ("M3", 3.0),
        ("M99", 99.0),
        ("2/3-10", INCH * 2.0 / 3.0),
    ] {
        let Err(ThreadError::Unknown { nearby, .. }) = Thread::find(typed) else {
            panic!("{typed} isn't in the table")
        };
        let off = |thread: &Thread| (thread.major_diameter() - size).abs();
        let named: Vec<f64> = nearby.iter().map(|name| off(&thread(name))).collect();
        assert!(named.is_sorted(), "{nearby:?}");
        let system = thread(nearby[0]).system();
        let nearer = Thread::all()
            .iter()
            .filter(|thread| thread.system() == system && off(thread) < named[named.len() - 1]);
        assert!(nearer.count() < named.len(), "{nearby:?}");
    }
}

#[test]
fn threads_are_shown_as_their_standard_writes_them() {
    let shown = |typed| (thread(typed).to_string(), thread(typed).short_name());
    assert_eq!(shown("1/2-20"), ("1/2-20 UNF".to_owned(), "1/2-20"));
    assert_eq!(shown("M12"), ("M12x1.75".to_owned(), "M12x1.75"));
}
