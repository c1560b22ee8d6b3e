//! The demo builds show what they say they show.
#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests fail as tests do"
)]

use trammel_build::{AxleModel, AxleName, Build};
use trammel_geometry::Walk;
use trammel_persistence::{demos, read};

fn demo(name: &str) -> Build {
    let demo = demos().into_iter().find(|d| d.name == name).expect(name);
    read(demo.text).unwrap_or_else(|fault| panic!("{}: {fault}", demo.file_name))
}

/// Wheel travel or rack travel in even steps.
fn steps(from: f64, to: f64, count: u32) -> impl Iterator<Item = f64> {
    (0..=count).map(move |i| from + (to - from) * f64::from(i) / f64::from(count))
}

fn largest_toe_change_deg(model: &AxleModel) -> f64 {
    let linkage = &model.axle.left;
    let mut walk = Walk::new(linkage, 0.0).expect("design position");
    let design = linkage.corner().wheel.toe;
    steps(model.travel.droop, model.travel.bump, 40)
        .map(|travel| {
            let pose = walk.pose(travel).expect("within the stops");
            (linkage.measures(&pose).toe - design).abs().to_degrees()
        })
        .fold(0.0, f64::max)
}

fn steepest_tie_rod_deg(model: &AxleModel) -> f64 {
    let linkage = &model.axle.left;
    steps(model.travel.droop, model.travel.bump, 40)
        .map(|travel| {
            let pose = linkage.pose(travel, 0.0).expect("within the stops");
            linkage.measures(&pose).tie_rod_angle.to_degrees()
        })
        .fold(0.0, f64::max)
}

#[test]
fn every_demo_can_be_used_whole() {
    for demo in demos() {
        let build = read(demo.text).unwrap_or_else(|fault| panic!("{}: {fault}", demo.file_name));
        assert_eq!(build.faults(), [], "{}", demo.file_name);
        assert!(build.rear.is_some(), "{}", demo.file_name);
        assert!(!build.title.is_empty() && !build.notes.is_empty());
    }
}

#[test]
fn the_good_one_keeps_its_toe_and_its_tie_rods_low() {
    let build = demo("good");
    for axle in [AxleName::Front, AxleName::Rear] {
        let model = build.axle(axle).expect("axle");
        assert!(largest_toe_change_deg(&model) < 0.1, "{axle:?}");
        assert!(steepest_tie_rod_deg(&model) < 12.5, "{axle:?}");
    }
}

#[test]
fn the_lifted_one_has_steep_tie_rods_and_long_rack_ends_on_the_same_frame() {
    let (good, lifted) = (demo("good"), demo("lifted"));
    let model = lifted.axle(AxleName::Front).expect("front");
    assert!(steepest_tie_rod_deg(&model) > 18.0);
    assert!(model.rack.expect("rack").left.free_length() > 50.0);
    let lift = lifted.front.lower_arm.front_pivot[2] - good.front.lower_arm.front_pivot[2];
    assert_eq!(lift, 2.75);
    for (low, high) in [
        (
            good.front.upper_arm.front_pivot,
            lifted.front.upper_arm.front_pivot,
        ),
        (
            good.front.upper_arm.rear_pivot,
            lifted.front.upper_arm.rear_pivot,
        ),
        (
            good.front.lower_arm.rear_pivot,
            lifted.front.lower_arm.rear_pivot,
        ),
        (good.front.tie_rod.inner, lifted.front.tie_rod.inner),
    ] {
        assert_eq!([low[0], low[1], low[2] + lift], high);
    }
}

#[test]
fn the_badly_placed_rack_is_high_and_wide_and_mends_at_the_good_ones_place() {
    let (good, bad) = (demo("good"), demo("badly-placed-rack"));
    let model = bad.axle(AxleName::Front).expect("front");
    assert!(largest_toe_change_deg(&model) > 0.5);
    let [good_inner, bad_inner] = [good.front.tie_rod.inner, bad.front.tie_rod.inner];
    assert_eq!(
        bad_inner,
        [good_inner[0], good_inner[1] + 1.0, good_inner[2] + 0.75]
    );
    let mut mended = bad;
    mended.front.tie_rod.inner = good_inner;
    let model = mended.axle(AxleName::Front).expect("front");
    assert!(largest_toe_change_deg(&model) < 0.1);
}

#[test]
fn every_demo_reaches_all_of_travel_and_lock_far_from_lock_over() {
    for name in ["good", "lifted", "badly-placed-rack"] {
        let model = demo(name).axle(AxleName::Front).expect("front");
        let lock = model.lock();
        for travel in steps(model.travel.droop, model.travel.bump, 10) {
            for rack in steps(-lock, lock, 10) {
                let pose = model.axle.pose(travel, travel, rack).expect(name);
                for side in [&pose.left, &pose.right_mirrored] {
                    assert!(side.margins.steering > 35_f64.to_radians().sin(), "{name}");
                    assert!(side.margins.least() > 0.25, "{name}");
                }
            }
        }
    }
}

#[test]
fn every_demo_turns_as_such_a_vehicle_does() {
    for name in ["good", "lifted", "badly-placed-rack"] {
        let build = demo(name);
        let model = build.axle(AxleName::Front).expect("front");
        let pose = model.axle.pose(0.0, 0.0, model.lock()).expect(name);
        let ackermann = pose.ackermann(build.wheelbase_mm()).expect(name);
        let circle = pose.turning_circle(build.wheelbase_mm()).expect(name);
        assert!((10.0..100.0).contains(&ackermann), "{name}: {ackermann}");
        assert!((6000.0..9000.0).contains(&circle), "{name}: {circle}");
    }
}
