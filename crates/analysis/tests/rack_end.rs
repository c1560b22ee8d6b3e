//! The rack end's factor against hand reckoning, and the edges of its caution.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod common;

use approx::assert_relative_eq;
use common::{demo, findings, of_kind, plumb};
use trammel_analysis::{CautionKind, Grade};
use trammel_build::{HitPoint, Side};
use trammel_strength::thread::Thread;

/// By hand. A force F straight back at the wheel centre has the lever 100 mm about the plumb axis, the rod 100 mm: the rod carries F / cos a
/// with tan a = fall / 300, pushed. So F goes along the rack and F tan a across it. At the face, free length out: bending
/// F tan a x length, with W = pi d^3 / 32 at the minor diameter, axial F on the tensile area, shear F tan a over pi d^2 / 4.
#[test]
fn a_plumb_corner_by_hand() {
    let (fall, free) = (75.0, 40.0);
    let found = findings(&plumb(fall, free));
    let end = found
        .rack_ends
        .iter()
        .find(|e| e.side == Side::Left)
        .expect("a left end");
    let force = 300.0 * 9.806_65;
    let slope = fall / 300.0;
    let thread = Thread::find("1/2-20").expect("known");
    let d: f64 = 12.7 - 1.226_869 * 1.27;
    let bending = force * slope * free / (std::f64::consts::PI * d.powi(3) / 32.0);
    let axial = force / thread.tensile_stress_area();
    let shear = force * slope / (std::f64::consts::PI * d * d / 4.0);
    let combined = ((bending + axial).powi(2) + 3.0 * shear * shear).sqrt();
    // SAE J429 grade 8: 130 ksi.
    let factor = 130.0 * 6.894_757 / combined;
    // The stops are a thousandth of a millimetre from the design pose.
    let near = 2e-4;
    assert_relative_eq!(
        end.tie_rod_tension,
        -force * slope.hypot(1.0),
        max_relative = near
    );
    assert_relative_eq!(
        end.rack_face.loads.bending,
        force * slope * free,
        max_relative = near
    );
    assert_relative_eq!(end.rack_face.loads.axial, -force, max_relative = near);
    assert_relative_eq!(end.factor, factor, max_relative = near);
    let mouth = end.bore_mouth.expect("a bore mouth");
    assert_relative_eq!(
        mouth.bending,
        force * slope * (free + 50.0),
        max_relative = near
    );
}

/// The same with the hit where the tyre meets the ground: a plumb axis gives it the same lever, so the same rod force.
#[test]
fn a_braked_wheel_on_a_plumb_axis_pushes_as_hard() {
    let mut build = plumb(60.0, 40.0);
    let through_centre = findings(&build).rack_ends[0].factor;
    build.hit.at = Some(HitPoint::Contact);
    assert_relative_eq!(
        findings(&build).rack_ends[0].factor,
        through_centre,
        max_relative = 1e-6
    );
    // Twice the weights, half the factor.
    build.hit.weights = Some(2.0);
    assert_relative_eq!(
        findings(&build).rack_ends[0].factor,
        0.5 * through_centre,
        max_relative = 1e-9
    );
}

#[test]
fn the_caution_comes_and_goes_at_the_wanted_factor() {
    let mut build = plumb(75.0, 40.0);
    let factor = findings(&build).rack_ends[0].factor;
    for (wanted, there) in [(factor * 1.000_01, true), (factor * 0.999_99, false)] {
        build.limits.rack_end_factor = Some(wanted);
        let found = findings(&build);
        assert_eq!(
            !of_kind(&found, CautionKind::RackEndBending).is_empty(),
            there,
            "{wanted}"
        );
        assert_eq!(found.rack_ends[0].wanted, wanted);
    }
}

#[test]
fn below_yield_it_is_a_danger() {
    let mut build = plumb(75.0, 40.0);
    let factor = findings(&build).rack_ends[0].factor;
    build.limits.rack_end_factor = Some(100.0);
    for (weights, grade) in [
        (0.999 * factor, Grade::Caution),
        (1.001 * factor, Grade::Danger),
    ] {
        build.hit.weights = Some(weights);
        assert_eq!(
            of_kind(&findings(&build), CautionKind::RackEndBending)[0].grade,
            grade
        );
    }
}

/// A bracket that holds the joint as far inboard of the face has the same lever as one that holds it outboard.
#[test]
fn a_joint_inboard_of_the_face_bends_it_as_well() {
    let (outboard, inboard) = (findings(&plumb(75.0, 40.0)), findings(&plumb(75.0, -40.0)));
    let (outboard, inboard) = (&outboard.rack_ends[0], &inboard.rack_ends[0]);
    assert_relative_eq!(outboard.factor, inboard.factor, max_relative = 1e-9);
    assert_eq!(inboard.free_length, -40.0);
}

#[test]
fn both_ends_are_there_and_alike_on_a_symmetric_build() {
    let found = findings(&demo("lifted"));
    let [left, right] = found.rack_ends.as_slice() else {
        panic!("two ends")
    };
    assert_eq!((left.side, right.side), (Side::Left, Side::Right));
    assert_eq!(left.factor, right.factor);
    assert_eq!(left.worst.rack, -right.worst.rack);
    assert_eq!(left.force_on_joint.y, -right.force_on_joint.y);
    assert_eq!(left.hit, right.hit, "straight back on either side");
}

/// What the drawing of the good demo was made for.
#[test]
fn the_lifted_demo_is_in_trouble_and_the_good_one_is_not() {
    assert!(findings(&demo("lifted")).rack_ends[0].factor < 1.0);
    assert!(findings(&demo("good")).cautions.is_empty());
}
