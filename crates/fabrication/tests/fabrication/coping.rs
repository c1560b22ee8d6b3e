use std::f64::consts::{FRAC_PI_2, PI};

use approx::assert_relative_eq;
use proptest::prelude::*;
use trammel_fabrication::coping::Cope;
use trammel_fabrication::end_cut::EndCut;
use trammel_fabrication::mitre::Mitre;

/// Equal tubes, square: the cut follows r |cos f|.
#[test]
fn equal_tubes_at_a_right_angle() {
    let cope = Cope::new(38.1, 38.1, FRAC_PI_2, 0.0).unwrap();
    for step in 0..12 {
        let f = f64::from(step) * PI / 6.0;
        assert_relative_eq!(cope.cut_at(f), 19.05 * f.cos().abs(), epsilon = 1e-9);
    }
    let [least, most] = cope.range();
    assert_relative_eq!(least, 0.0, epsilon = 1e-6);
    assert_relative_eq!(most, 19.05, epsilon = 1e-9);
}

/// The usual shop formula for a square notch: depth R - sqrt(R^2 - r^2).
#[test]
fn depth_of_a_square_notch() {
    let cope = Cope::new(25.4, 50.8, FRAC_PI_2, 0.0).unwrap();
    let [least, most] = cope.range();
    assert_relative_eq!(
        most - least,
        25.4 - (25.4_f64.powi(2) - 12.7 * 12.7).sqrt(),
        epsilon = 1e-9
    );
}

#[test]
fn a_slanting_tube_is_longest_on_the_far_side() {
    let cope = Cope::new(25.4, 38.1, PI / 3.0, 0.0).unwrap();
    // By hand at f = 0: (19.05 + 12.7 x 0.5) / sin 60; at f = 180: (19.05 - 6.35) / sin 60.
    assert_relative_eq!(cope.cut_at(0.0), 25.4 / (PI / 3.0).sin(), epsilon = 1e-9);
    assert_relative_eq!(cope.cut_at(PI), 12.7 / (PI / 3.0).sin(), epsilon = 1e-9);
}

#[test]
fn the_template_wraps_the_tube_and_starts_at_nought() {
    let cope = Cope::new(25.4, 38.1, PI / 3.0, 2.0).unwrap();
    let template = cope.template(0.1).unwrap();
    assert_relative_eq!(
        template.last().unwrap().x,
        2.0 * PI * (12.7 + 0.05),
        epsilon = 1e-9
    );
    assert_relative_eq!(
        template.first().unwrap().y,
        template.last().unwrap().y,
        epsilon = 1e-9
    );
    let least = template.iter().map(|p| p.y).fold(f64::INFINITY, f64::min);
    assert_relative_eq!(least, 0.0, epsilon = 1e-12);
}

/// 1 in of tube on 2 in, square: by hand the ears stand out at the sides, by 25.4 - sqrt(25.4^2 - 12.7^2) = 3.403 mm over the bottom, which is inside and outside.
#[test]
fn the_ears_of_a_fish_mouth_stand_at_the_sides() {
    let cope = Cope::new(25.4, 50.8, FRAC_PI_2, 0.0).unwrap();
    let template = cope.template(0.0).unwrap();
    for (degree, stands_out) in [(0, 0.0), (90, 3.403), (180, 0.0), (270, 3.403)] {
        assert_relative_eq!(template[degree].y, stands_out, epsilon = 1e-3);
    }
}

/// 1 in tubes that meet at 60 degrees in a housing of 1 1/2 in, by hand: inside they meet each other 12.7 / tan 30 = 21.997 mm from the crossing, at the sides they stop at the
/// housing's 19.05, outside at sqrt(19.05^2 - 12.7^2) = 14.199.
#[test]
fn a_mitre_by_hand() {
    let mitre = Mitre::new(25.4, 38.1, PI / 3.0).unwrap();
    for (around, cut) in [(0.0, 21.997), (FRAC_PI_2, 19.05), (PI, 14.199)] {
        assert_relative_eq!(mitre.cut_at(around), cut, epsilon = 1e-3);
    }
    let [tip, bottom] = mitre.range();
    assert_relative_eq!(tip, 14.199, epsilon = 1e-3);
    assert_relative_eq!(bottom, 21.997, epsilon = 1e-3);
    assert_relative_eq!(mitre.template(0.0).unwrap()[0].y, 0.0, epsilon = 1e-9);
    // Without a housing a plain mitre: level with the crossing outside, and never past it.
    let plain = Mitre::new(25.4, 0.0, PI / 3.0).unwrap();
    assert_relative_eq!(plain.cut_at(PI), 0.0);
    assert_relative_eq!(
        plain.cut_at(PI / 3.0),
        6.35 / (PI / 6.0).tan(),
        epsilon = 1e-9
    );
    assert!(Mitre::new(25.4, 38.1, 0.0).is_err());
    assert!(Mitre::new(25.4, 38.1, PI).is_err());
    assert!(Mitre::new(25.4, -1.0, 1.0).is_err());
    assert!(Mitre::new(f64::NAN, 38.1, 1.0).is_err());
}

#[test]
fn what_does_not_sit_on_its_header_is_refused() {
    assert!(Cope::new(50.0, 38.1, FRAC_PI_2, 0.0).is_err());
    assert!(Cope::new(30.0, 38.1, FRAC_PI_2, 5.0).is_err());
    assert!(Cope::new(25.4, 38.1, 0.0, 0.0).is_err());
    assert!(Cope::new(25.4, f64::INFINITY, FRAC_PI_2, 0.0).is_err());
}

proptest! {
    /// Metal a hair beyond the cut lies outside the housing and on its own side of the plane between the tubes; a hair before it, it does not.
    #[test]
    fn a_mitre_touches_housing_or_twin(tube in 10.0..60.0, housing in 1.0..80.0, angle in 0.2..2.8f64, f in 0.0..6.3f64) {
        let mitre = Mitre::new(tube, housing, angle).unwrap();
        let (q, z) = (tube / 2.0 * f.cos(), mitre.cut_at(f));
        // In the arm's plane, seen from the crossing: the tube runs along x, its twin leans by the angle towards y.
        let clear = |z: f64| {
            let from_housing = q.hypot(z) - housing / 2.0;
            let own_side = z * (angle / 2.0).sin() - q * (angle / 2.0).cos();
            from_housing.min(own_side).min(z)
        };
        prop_assert!(clear(z + 1e-6) > -1e-9);
        prop_assert!(clear(z - 1e-6) < 1e-9);
    }

    /// Every point of the cut lies on the header: its distance from the header's axis is the header's radius.
    #[test]
    fn the_cut_lies_on_the_header(tube in 10.0..60.0, more in 0.0..40.0, angle in 0.3..2.8f64, share in -1.0..1.0, f in 0.0..6.3f64) {
        let header = tube + more;
        let offset = share * more / 2.0 * 0.99;
        let cope = Cope::new(tube, header, angle, offset).unwrap();
        let point = [tube / 2.0 * f.cos(), tube / 2.0 * f.sin() + offset, cope.cut_at(f)];
        // The header's axis leans by the angle from the tube's axis, z, towards x.
        let axis = [angle.sin(), 0.0, angle.cos()];
        let along: f64 = point.iter().zip(axis).map(|(p, a)| p * a).sum();
        let square: f64 = point.iter().map(|p| p * p).sum();
        prop_assert!(((square - along * along).sqrt() - header / 2.0).abs() < 1e-6);
    }
}
