use std::f64::consts::{FRAC_PI_2, PI};

use approx::assert_relative_eq;
use proptest::prelude::*;
use trammel_fabrication::coping::Cope;

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

#[test]
fn what_does_not_sit_on_its_header_is_refused() {
    assert!(Cope::new(50.0, 38.1, FRAC_PI_2, 0.0).is_err());
    assert!(Cope::new(30.0, 38.1, FRAC_PI_2, 5.0).is_err());
    assert!(Cope::new(25.4, 38.1, 0.0, 0.0).is_err());
    assert!(Cope::new(25.4, f64::INFINITY, FRAC_PI_2, 0.0).is_err());
}

proptest! {
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
