//! Everything that is written has its place: nothing is cut off at the side, nothing stands on something else, on every page at every size.

use egui::{Rect, Vec2, pos2, vec2};
use egui_kittest::kittest::Queryable;
use trammel_build::{AxleName, Build, LengthUnit, PointName, PointRef, Side};
use trammel_screen::{Start, background::jobs_in_hand, view::Stage};

use crate::common::{Screen, TestHost, bench_on, odd, pages::Turn, seen, wait};
use crate::none;

const SIZES: [Vec2; 4] = [
    vec2(1024.0, 700.0),
    vec2(1280.0, 800.0),
    vec2(1920.0, 1080.0),
    vec2(900.0, 600.0),
];

fn screen_of(build: Build, size: Vec2) -> Screen {
    let mut screen = bench_on(TestHost::default(), Start::Build(Box::new(build)));
    screen.set_size(size);
    screen.run_steps(3);
    screen
}

/// Where words have fixed places: everywhere but on the drawing, whose labels move with it.
fn on_the_table(size: Vec2) -> Rect {
    let notebook = (0.335 * size.x).clamp(400.0, 560.0);
    let bar = if size.x - notebook < 788.0 {
        96.0
    } else {
        66.0
    };
    Rect::from_min_max(pos2(0.0, 44.0), pos2(size.x - notebook, size.y - bar))
}

/// What is wrong with the words of this frame.
fn faults(screen: &Screen, size: Vec2) -> Vec<String> {
    let table = on_the_table(size);
    let all: Vec<_> = (seen::words(screen).into_iter())
        .filter(|w| !table.contains(w.seen().center()))
        .collect();
    let mut faults = Vec::new();
    for w in &all {
        let over = (w.clip.left() - w.ink.left()).max(w.ink.right() - w.clip.right());
        // A long sentence in a field can be moved along; a number must be read at a glance.
        let sentence = w.text.chars().count() > 16 && w.clip.height() < 30.0;
        if over > 1.5 && !sentence {
            faults.push(format!("cut off by {over:.0}: “{}”", w.text));
        }
    }
    for (i, a) in all.iter().enumerate() {
        for b in all.get(i + 1..).unwrap_or_default() {
            let shared = a.seen().intersect(b.seen());
            if shared.width() > 2.0 && shared.height() > 2.0 {
                faults.push(format!("one on the other: “{}” and “{}”", a.text, b.text));
            }
        }
    }
    faults
}

fn hold(name: &str, build: &Build, turns: &[Turn]) {
    let mut found = Vec::new();
    for size in SIZES {
        let mut screen = screen_of(build.clone(), size);
        for turn in turns {
            turn.to(screen.state_mut());
            screen.run_steps(4);
            let mut look = |screen: &Screen| {
                let faults = faults(screen, size).into_iter();
                found.extend(
                    faults.map(|f| format!("{name}, {} x {}, {turn:?}: {f}", size.x, size.y)),
                );
            };
            // As the hand leaves it, in every frame while figures come in, and at rest.
            look(&screen);
            wait(&mut screen, |screen| {
                look(screen);
                jobs_in_hand(&screen.ctx) == 0
            });
            screen.run_steps(2);
            look(&screen);
        }
    }
    none(found);
}

#[test]
fn every_word_has_its_place() {
    hold("good", &odd::demo("good"), &Turn::all());
}

#[test]
fn every_word_has_its_place_in_mm() {
    let mm = trammel_build::Edit::ConvertUnit(LengthUnit::Millimetre)
        .apply(&odd::demo("measured"))
        .expect("it can be converted");
    hold("measured, mm", &mm, &Turn::all());
}

#[test]
fn long_names_have_their_place() {
    hold("long names", &odd::long_names(), &Turn::all());
}

#[test]
fn a_build_with_nothing_named_has_its_place() {
    hold("empty", &odd::empty(), &Turn::all());
}

#[test]
fn poses_out_of_reach_have_their_place() {
    hold("out of reach", &odd::out_of_reach(), &Turn::all());
}

/// The bar below shows the selected point's three numbers whole, also in the narrowest window.
#[test]
fn the_selected_point_has_its_place() {
    let mut found = Vec::new();
    for build in [odd::demo("good"), odd::empty()] {
        for size in SIZES {
            let mut screen = screen_of(build.clone(), size);
            for point in [
                PointName::UpperFrontPivot,
                PointName::TieRodInner,
                PointName::SpringChassisMount,
            ] {
                for side in [Side::Left, Side::Right] {
                    let at = PointRef {
                        axle: AxleName::Front,
                        side,
                        point,
                    };
                    screen.state_mut().view_mut().selected = Some(at);
                    screen.run_steps(2);
                    let faults = faults(&screen, size);
                    found.extend(
                        faults
                            .into_iter()
                            .map(|f| format!("{} x {}, {point:?}: {f}", size.x, size.y)),
                    );
                }
            }
        }
    }
    none(found);
}

#[test]
fn undo_and_the_rear_axle_do_not_stand_on_each_other() {
    for size in SIZES {
        let screen = screen_of(odd::long_names(), size);
        let rear = screen.get_by_label("Rear axle").rect();
        let undo = screen.get_by_label("Undo").rect();
        assert!(rear.right() < undo.left(), "{size}: {rear} {undo}");
        assert_eq!(screen.state().view().stage, Stage::LayOut);
    }
}
