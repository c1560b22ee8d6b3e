use approx::assert_relative_eq;
use trammel_fabrication::clearance_hole::{Fit, clearance_hole};
use trammel_fabrication::tap_card::{LadderStep, TapCard};
use trammel_strength::thread::Thread;

fn thread(name: &str) -> Thread {
    Thread::find(name).unwrap()
}

/// ASME B18.2.8 by Machinery's Handbook 31, page 1743: close, normal and loose holes in mm as printed for the drills' metric equivalents (9.9, 10.2, ...); the
/// loose row in inches as printed.
#[test]
fn inch_holes() {
    for (bolt, close, normal, loose) in [
        ("3/8-24", 9.9, 10.2, 0.422),
        ("7/16-20", 11.5, 11.8, 0.484),
        ("1/2-20", 13.5, 14.25, 0.609),
        ("5/8-18", 16.75, 17.5, 0.734),
        ("3/4-16", 20.0, 20.5, 0.906),
    ] {
        let hole = |fit| clearance_hole(thread(bolt), fit).unwrap().diameter;
        assert!(
            (hole(Fit::Close) - close).abs() < 0.2,
            "{bolt} {}",
            hole(Fit::Close)
        );
        assert!(
            (hole(Fit::Normal) - normal).abs() < 0.2,
            "{bolt} {}",
            hole(Fit::Normal)
        );
        assert_relative_eq!(hole(Fit::Loose), loose * 25.4, epsilon = 1e-9);
    }
}

/// ISO 273 as printed.
#[test]
fn metric_holes() {
    for (bolt, row) in [
        ("M8", [8.4, 9.0, 10.0]),
        ("M10", [10.5, 11.0, 12.0]),
        ("M12", [13.0, 13.5, 14.5]),
    ] {
        let found = [Fit::Close, Fit::Normal, Fit::Loose]
            .map(|fit| clearance_hole(thread(bolt), fit).unwrap().diameter);
        assert_eq!(found, row, "{bolt}");
    }
}

#[test]
fn every_class_is_larger_than_the_one_before_and_says_its_source() {
    for bolt in Thread::all() {
        let holes: Vec<_> = Fit::ALL
            .iter()
            .filter_map(|&fit| clearance_hole(*bolt, fit))
            .collect();
        assert!(
            holes
                .windows(2)
                .all(|pair| pair[0].diameter < pair[1].diameter),
            "{bolt}"
        );
        assert!(holes.iter().all(|hole| !hole.source.to_string().is_empty()));
    }
}

/// A half-inch 20-thread tap wants a 29/64 drill (workshop chart): 72 % thread.
#[test]
fn half_inch_fine() {
    let card = TapCard::new(
        thread("1/2-20"),
        22.0,
        25.4 * 5.0 / 16.0,
        19.05,
        LadderStep::ThirtySecond,
    )
    .unwrap();
    assert_eq!(card.tap_drill.name, "29/64");
    assert_relative_eq!(
        card.fraction_of_thread,
        0.0469 / 0.06495,
        max_relative = 1e-3
    );
    let names: Vec<&str> = card
        .ladder
        .iter()
        .map(|drill| drill.name.as_str())
        .collect();
    assert_eq!(names, ["11/32", "3/8", "13/32", "7/16", "29/64"]);
    assert_relative_eq!(card.turns, 15.0, epsilon = 1e-9);
    assert_relative_eq!(card.hole_depth, 19.05 * 1.15, epsilon = 1e-9);
    assert_relative_eq!(card.wall, (22.0 - 12.7) / 2.0);
    assert_relative_eq!(card.least_wall, 12.7 / 4.0);
    assert_relative_eq!(TapCard::usual_depth(thread("1/2-20")), 19.05);
}

#[test]
fn ladders_start_small_and_step_no_more_than_asked() {
    for (step, most) in [
        (LadderStep::ThirtySecond, 1.0 / 32.0),
        (LadderStep::Sixteenth, 1.0 / 16.0),
    ] {
        for &thread in Thread::all() {
            let bore = 4.0;
            let card = TapCard::new(thread, 50.0, bore, 20.0, step).unwrap();
            let mut before = bore;
            for drill in &card.ladder {
                let up = (drill.diameter - before) / 25.4;
                assert!(
                    up > 0.0 && up <= most + 1.0 / 64.0,
                    "{thread}: {} after {before}",
                    drill.name
                );
                before = drill.diameter;
            }
            assert_relative_eq!(before, thread.tap_drill().diameter);
        }
    }
}

#[test]
fn no_bore_starts_with_an_eighth() {
    let card = TapCard::new(thread("M10x1.25"), 20.0, 0.0, 15.0, LadderStep::Sixteenth).unwrap();
    let names: Vec<&str> = card
        .ladder
        .iter()
        .map(|drill| drill.name.as_str())
        .collect();
    assert_eq!(names, ["1/8", "3/16", "1/4", "5/16", "8.8 mm"]);
}

#[test]
fn a_bore_of_the_tap_drill_needs_no_ladder() {
    let card = TapCard::new(thread("M10x1.5"), 20.0, 8.5, 15.0, LadderStep::ThirtySecond).unwrap();
    assert!(card.ladder.is_empty());
    assert!(TapCard::new(thread("M10x1.5"), 20.0, 8.6, 15.0, LadderStep::ThirtySecond).is_err());
    assert!(TapCard::new(thread("M10x1.5"), 10.0, 8.5, 15.0, LadderStep::ThirtySecond).is_err());
}
