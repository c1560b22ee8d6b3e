//! Cards of the demo builds.

#![allow(clippy::expect_used, reason = "a test stops where it fails")]

use trammel_build::measuring_guide as guide;
use trammel_build::{AxleName, Build, ReadingRow, Session, Side, ToeMethod, TravelMeasure};
use trammel_cards::{Card, checks, measuring_pdf, measuring_tables, pdf, stations};
use trammel_drawings::ink::{Ink, strokes};
use trammel_drawings::metrics::Metrics;
use trammel_drawings::model::{Dimension, Shape};
use trammel_drawings::sheet::Paper;
use trammel_setup::{Raw, Way};

fn demo(n: usize) -> Build {
    trammel_persistence::read(trammel_persistence::demos()[n].text).expect("a demo")
}

fn read() -> Build {
    let mut build = demo(0);
    let row = |place: f64, toe: f64| ReadingRow {
        side: Side::Left,
        run: 1,
        rack: 0.0,
        place,
        ride: place == 0.0,
        shown: Raw::Degrees(toe.abs(), if toe < 0.0 { Way::Out } else { Way::In }),
    };
    build.set_up.sessions.push(Session {
        date: "3 May".into(),
        notes: String::new(),
        adjusted: Vec::new(),
        method: ToeMethod::Degrees,
        accuracy: None,
        travel_by: TravelMeasure::Travel,
        travel_accuracy: None,
        rows: [
            (0.0, 0.0),
            (1.0, 0.2),
            (2.0, 0.4),
            (0.0, 0.0),
            (-1.0, -0.2),
            (-2.0, -0.4),
            (0.0, 0.0),
        ]
        .map(|(z, t)| row(z, t))
        .to_vec(),
    });
    build
}

#[test]
fn stations_stand_on_whole_inches_within_the_travel_and_return_to_ride_height() {
    let build = demo(0);
    let axle = build.axle(AxleName::Front).expect("posed");
    let all = stations(&axle, Side::Left, build.unit).expect("reached");
    let inches: Vec<f64> = all
        .iter()
        .map(|s| (s.travel / 25.4 * 1e9).round() / 1e9)
        .collect();
    assert_eq!(inches, [0.0, 1.0, 2.0, 3.0, 0.0, -1.0, -2.0, 0.0]);
    assert!(
        all.iter()
            .all(|s| (s.wheel_height - s.travel - 254.0).abs() < 1e-9)
    );
    // Between the mounts as they were typed.
    let mounts = (6.5_f64.powi(2) + 11.75_f64.powi(2)).sqrt() * 25.4;
    let ride = all[0].shock_length.expect("a spring");
    assert!((ride - mounts).abs() < 1e-6, "{ride} {mounts}");
    assert!(
        all[3].shock_length < all[0].shock_length,
        "it shortens in bump"
    );
}

#[test]
fn a_build_without_readings_has_no_card_of_moves() {
    assert!(Card::After.tables(&demo(0)).expect("a card").is_empty());
    assert!(!Card::After.tables(&read()).expect("a card").is_empty());
}

#[test]
fn the_turns_table_goes_by_the_rods_own_thread() {
    let mut build = demo(0);
    let rows = |b: &Build| Card::Turns.tables(b).expect("a card")[1].rows().to_vec();
    let coarse = rows(&build);
    assert_eq!(coarse.len(), 12);
    build.set_up.adjusters.rod = Some(trammel_build::RodRange {
        per_turn: 0.1,
        shorter: 0.5,
        longer: 0.5,
    });
    let toe = |rows: &[Vec<String>], n: usize| rows[n][2].parse::<f64>().expect("degrees");
    // Twice the 1/20 in of a 1/2-20 thread, twice the toe.
    let ratio = toe(&rows(&build), 5) / toe(&coarse, 5);
    assert!((ratio - 2.0).abs() < 0.01, "{ratio}");
}

#[test]
fn the_same_build_gives_the_same_bytes_on_every_paper() {
    for paper in Paper::ALL {
        for build in [demo(0), demo(1), demo(2), read()] {
            let bytes = pdf(&build, paper).expect("a PDF");
            assert!(bytes.starts_with(b"%PDF"));
            assert_eq!(bytes, pdf(&build, paper).expect("a PDF"));
        }
    }
}

#[test]
fn no_check_says_safe() {
    for (what, should) in checks(&demo(0)) {
        assert!(!format!("{what} {should}").to_lowercase().contains("safe"));
    }
}

#[test]
fn the_measuring_sheet_says_from_where_to_where_for_every_kind_of_part() {
    use trammel_build::LengthUnit::{Inch, Millimetre};
    let tables = measuring_tables(Inch);
    let rows: Vec<usize> = tables.iter().map(|t| t.rows().len()).collect();
    assert_eq!(rows, [5, 8, 5, 3, 3]);
    let all = format!("{tables:?}");
    for word in [
        "ball centres",
        "lbf",
        "lb/in",
        "hardened teeth",
        "maker's sheet",
    ] {
        assert!(all.contains(word), "{word}");
    }
    let metric = format!("{:?}", measuring_tables(Millimetre));
    assert!(!metric.contains("lb/in") && metric.contains("N/mm"));
    for (unit, paper) in [(Inch, Paper::Letter), (Millimetre, Paper::A4)] {
        let bytes = measuring_pdf(unit, paper).expect("written");
        assert!(bytes.starts_with(b"%PDF"));
        assert_eq!(bytes, measuring_pdf(unit, paper).expect("written again"));
    }
}

/// A name in each place where a figure is taken by ruler or gauge; a mark, a rate or a rating has none.
#[test]
fn the_sketches_name_every_figure_that_is_measured() {
    let pdf = measuring_pdf(trammel_build::LengthUnit::Inch, Paper::A4).unwrap();
    assert!(pdf.starts_with(b"%PDF"));
    let drawing = trammel_cards::measuring_sketches();
    let mut named: Vec<String> = Vec::new();
    for item in &drawing.items {
        match &item.shape {
            Shape::Dimension(Dimension::Linear { text, .. } | Dimension::Leader { text, .. }) => {
                named.push(text.clone());
            }
            Shape::Text(text) => named.push(text.content.clone()),
            _ => {}
        }
    }
    let named = named.join("; ").to_lowercase();
    let measured = guide::SPINDLE
        .iter()
        .chain(&guide::RACK)
        .chain(&guide::SPRING[..2])
        .chain(&guide::JOINT[..2])
        .filter(|m| m.what != "Travel a turn");
    for measure in measured {
        assert!(
            named.contains(&measure.what.to_lowercase()),
            "{}",
            measure.what
        );
    }
    let metrics = Metrics::new().unwrap();
    let rooms: Vec<_> = strokes(&drawing, &metrics)
        .into_iter()
        .filter_map(|stroke| match stroke.ink {
            Ink::Text(text) => Some((text.content.clone(), metrics.bounds(&text))),
            _ => None,
        })
        .collect();
    assert!(rooms.len() > 15);
    for (index, (text, a)) in rooms.iter().enumerate() {
        for (other, b) in rooms.iter().skip(index + 1) {
            let apart =
                a.max.x < b.min.x || b.max.x < a.min.x || a.max.y < b.min.y || b.max.y < a.min.y;
            assert!(apart, "{text} on {other}");
        }
    }
}

#[test]
#[ignore = "writes a PDF to look at"]
fn the_measuring_sheet_to_look_at() {
    let pdf = measuring_pdf(trammel_build::LengthUnit::Inch, Paper::A4).unwrap();
    std::fs::write(std::env::temp_dir().join("measuring-sheet.pdf"), pdf).unwrap();
}
