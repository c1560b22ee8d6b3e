//! The page of figures: what is typed lands in the right place, in the right unit, and a default comes back when a field is emptied.

#![allow(clippy::expect_used, reason = "a test stops where it fails")]

mod common;

use common::{demo, fill};
use trammel_build::{Mass, SpringRate};
use trammel_screen::view::Page;

fn figures() -> common::Screen {
    let mut screen = demo();
    screen.state_mut().view_mut().page = Page::Figures;
    screen.run_steps(2);
    screen
}

#[test]
fn each_figure_lands_in_its_own_place() {
    let mut screen = figures();
    for (field, text) in [
        ("Loaded radius", "10 1/4"),
        ("Static toe", "0.1"),
        ("Static camber", "-0.75"),
        ("Bump", "2 3/4"),
        ("Open length", "15 1/4"),
        ("Closed length", "11 3/4"),
        ("Spring rate", "120"),
        ("Travel each way", "1 3/8"),
        ("Travel for one turn", "2 1/8"),
        ("Thread", "5/8-18"),
        ("Grade", "grade 8"),
        ("Thread engaged", "5/8"),
        ("Jam nut", "3/8"),
        ("Size", "1.25"),
        ("Wheelbase", "62"),
        ("All-up mass", "700"),
        ("Front share of weight", "0.48"),
        ("Centre-of-gravity height", "18 1/2"),
        ("Toe change", "0.2"),
        ("Tie-rod angle", "14"),
        ("Joint swivel", "13"),
        ("Rack-end factor", "2.5"),
        ("Lock-over margin", "26"),
    ] {
        fill(&mut screen, field, text);
    }
    let build = screen.state().build();
    let front = &build.front;
    let wheel = front.wheel;
    assert_eq!(
        (wheel.loaded_radius, wheel.toe_deg, wheel.camber_deg),
        (10.25, 0.1, -0.75)
    );
    let travel = front.travel.expect("travel");
    assert_eq!(
        (travel.bump, travel.droop),
        (2.75, 2.5),
        "the other way stays"
    );
    let spring = front.spring.expect("spring");
    assert_eq!(
        (spring.open_length, spring.closed_length),
        (Some(15.25), Some(11.75))
    );
    assert_eq!(spring.rate, Some(SpringRate::PoundsPerInch(120.0)));
    assert_eq!(
        (front.rack.travel, front.rack.travel_per_turn),
        (Some(1.375), Some(2.125))
    );
    let end = &front.rack_end;
    assert_eq!(
        (end.thread.as_deref(), end.grade.as_deref()),
        (Some("5/8-18"), Some("grade 8"))
    );
    assert_eq!((end.engagement, end.jam_nut), (Some(0.625), Some(0.375)));
    assert_eq!(build.hit.weights, Some(1.25));
    let vehicle = build.vehicle;
    assert_eq!(
        (vehicle.wheelbase, vehicle.mass),
        (Some(62.0), Some(Mass::Pounds(700.0)))
    );
    assert_eq!(
        (vehicle.front_share, vehicle.centre_of_gravity_height),
        (Some(0.48), Some(18.5))
    );
    let l = build.limits;
    assert_eq!(
        (l.toe_change_deg, l.tie_rod_angle_deg, l.joint_angle_deg),
        (Some(0.2), Some(14.0), Some(13.0))
    );
    assert_eq!(
        (l.rack_end_factor, l.lock_over_deg),
        (Some(2.5), Some(26.0))
    );
}

#[test]
fn an_emptied_figure_takes_its_default_and_a_needed_one_stays() {
    let mut screen = figures();
    fill(&mut screen, "Wheelbase", "62");
    fill(&mut screen, "Wheelbase", "");
    assert_eq!(screen.state().build().vehicle.wheelbase, None);
    let radius = screen.state().build().front.wheel.loaded_radius;
    fill(&mut screen, "Loaded radius", "");
    assert_eq!(screen.state().build().front.wheel.loaded_radius, radius);
    assert!(
        screen
            .state()
            .said()
            .is_some_and(|s| s.contains("can't be left empty"))
    );
    fill(&mut screen, "Bump", "");
    assert_eq!(
        screen.state().build().front.travel,
        None,
        "both ways are left to the spring unit"
    );
}

#[test]
fn a_figure_that_can_not_be_is_refused_with_the_reason() {
    let mut screen = figures();
    let before = screen.state().build().clone();
    fill(&mut screen, "Front share of weight", "1.4");
    assert_eq!(screen.state().build(), &before);
    let said = screen.state().said().expect("said").to_owned();
    assert!(
        said.contains("front_share") && said.contains("between 0 and 1"),
        "{said}"
    );
    fill(&mut screen, "Size", "a lot");
    assert_eq!(screen.state().build(), &before);
    assert!(screen.state().said().is_some_and(|s| s.contains("a lot")));
}
