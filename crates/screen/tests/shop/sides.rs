//! Builds whose right side has points of its own: each side is tuned by itself.

use super::*;

/// The good demo with a right inner joint an inch higher than the left one.
pub fn lopsided() -> Screen {
    let text = trammel_persistence::demos()
        .into_iter()
        .find(|d| d.name == "good")
        .expect("a demo")
        .text;
    let mut build = trammel_persistence::read(text).expect("it reads");
    for point in [PointName::TieRodInner, PointName::RackFace] {
        let at = PointRef {
            axle: AxleName::Front,
            side: Side::Right,
            point,
        };
        let mut there = build.point(at).expect("a point");
        there[2] += 1.0;
        build.front.right.insert(point, there);
    }
    let (mut screen, _) = bench(Start::Build(Box::new(build)));
    click(&mut screen, "Tune");
    screen.run_steps(4);
    screen
}

#[test]
fn each_side_with_points_of_its_own_is_tuned_by_itself() {
    let mut screen = lopsided();
    let before = screen.state().build().clone();
    let left = swept(&mut screen);
    click(&mut screen, "Side: right");
    assert_eq!(screen.state().view().side, Side::Right);
    screen.run_steps(4);
    assert!(screen.state().tune().map_is_complete());
    assert!(
        swept(&mut screen) < left,
        "the worse side has fewer good builds"
    );
    click(&mut screen, "Move it there");
    let after = screen.state().build();
    assert_eq!(after.front.tie_rod, before.front.tie_rod, "the left stays");
    let study = screen.state().results().study.as_ref().expect("studied");
    let right = study.front.right.score.largest.to_degrees();
    assert!(right < 0.1, "{right}");
    let inner = after.front.right.get(&PointName::TieRodInner).copied();
    let inner = inner.expect("its own");
    assert!(inner[1] < 0.0, "on the right: {inner:?}");
    // The rack end of that side goes along with its joint.
    let face = |b: &Build| b.front.right.get(&PointName::RackFace).expect("own")[2];
    let joint = |b: &Build| b.front.right.get(&PointName::TieRodInner).expect("own")[2];
    let [a, b] = [&before, after].map(|b| joint(b) - face(b));
    assert!((a - b).abs() < 1e-6, "{a} {b}");
    undo(&mut screen);
    assert_eq!(screen.state().build(), &before);
}

#[test]
fn a_click_in_the_loupe_of_the_right_side_moves_the_right_joint() {
    let mut screen = lopsided();
    click(&mut screen, "Side: right");
    screen.run_steps(4);
    let before = screen.state().build().clone();
    let loupe = screen.get_by_label("Loupe of the toe map").rect();
    let table = screen.get_by_label("Drawing table").rect();
    assert!(
        loupe.center().x > table.center().x,
        "inboard is to the right"
    );
    let at = loupe.center() + egui::vec2(60.0, 40.0);
    screen.hover_at(at);
    screen.step();
    screen.drag_at(at);
    screen.step();
    screen.drop_at(at);
    screen.run_steps(3);
    let inner = |b: &Build| {
        let own = b.front.right.get(&PointName::TieRodInner).copied();
        own.expect("its own")
    };
    let (a, b) = (inner(&before), inner(screen.state().build()));
    assert!(
        b[1] > a[1] && b[2] < a[2],
        "right in the loupe is in, down is down: {a:?} {b:?}"
    );
    assert_eq!(screen.state().build().front.tie_rod, before.front.tie_rod);
}

#[test]
fn mirror_images_have_no_choice_of_side() {
    let screen = tune("good");
    assert!(screen.query_by_label("Side: right").is_none());
    assert!(screen.query_by_label("each front wheel,").is_some());
}

/// Stops that are no whole steps of the slider apart once shoved the moved linkage off its design height.
#[test]
fn the_travel_slider_leaves_the_design_height_alone_between_odd_stops() {
    let mut screen = tune("good");
    let mut build = screen.state().build().clone();
    let travel = build.front.travel.get_or_insert(trammel_build::TravelSpec {
        bump: 3.0,
        droop: 3.0,
    });
    travel.droop = 2.0137;
    build.front.spring = None;
    screen = bench(Start::Build(Box::new(build))).0;
    screen.run_steps(6);
    assert_eq!(screen.state().view().travel, 0.0);
}

#[test]
fn a_joint_that_goes_along_on_the_other_side_is_said_and_goes() {
    let mut screen = lopsided();
    click(&mut screen, "Joint: outer");
    screen.run_steps(3);
    let told = |s: &Screen, text: &str| s.query_by_label_contains(text).is_some();
    assert!(told(
        &screen,
        "The right joint is its mirror image and goes along."
    ));
    click(&mut screen, "Joint: inner");
    screen.run_steps(3);
    assert!(
        !told(&screen, "mirror image"),
        "each side has its own inner joint"
    );
    click(&mut screen, "Side: right");
    click(&mut screen, "Joint: outer");
    screen.run_steps(3);
    assert!(told(
        &screen,
        "It is the left joint's mirror image: both move."
    ));
    let outer = |s: &Screen| {
        [Side::Left, Side::Right].map(|side| {
            let at = PointRef {
                axle: AxleName::Front,
                side,
                point: PointName::TieRodOuter,
            };
            s.state().build().point(at).expect("a point")
        })
    };
    let before = outer(&screen);
    click(&mut screen, "Exactly");
    let [left, right] = outer(&screen);
    assert_ne!(right, before[1]);
    assert_eq!([left[0], -left[1], left[2]], right, "its mirror image");
    undo(&mut screen);
    assert_eq!(outer(&screen), before);
}

#[test]
fn the_study_of_ride_heights_follows_the_side_that_is_looked_at() {
    let mut screen = lopsided();
    click(&mut screen, "Ride height");
    wait(&mut screen, |s| s.state().tune().lift_is_current());
    screen.run_steps(3);
    let told = |s: &Screen, text: &str| s.query_by_label_contains(text).is_some();
    assert!(told(&screen, "The left front wheel."));
    click(&mut screen, "Side: right");
    screen.run_steps(2);
    wait(&mut screen, |s| s.state().tune().lift_is_current());
    screen.run_steps(3);
    assert!(told(&screen, "The right front wheel."));
}
