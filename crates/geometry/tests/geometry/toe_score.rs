//! Scores of a toe curve.

use trammel_geometry::ToeScore;

use crate::corners::near;

#[test]
fn a_straight_line() {
    let curve: Vec<(f64, f64)> = (-10..=10)
        .map(|i| (f64::from(i), 0.001 * f64::from(i)))
        .collect();
    let s = ToeScore::of(&curve, 0.001);
    near(s.largest, 0.01, 1e-15);
    near(s.largest_at, -10.0, 0.0);
    // Mean of i^2 for -10..=10 is 2 * 385 / 21.
    near(s.rms, 0.001 * (770.0_f64 / 21.0).sqrt(), 1e-15);
    near(s.bowl, 0.0, 1e-15);
    near(s.slope, 0.001, 0.0);
}

#[test]
fn a_bowl_over_uneven_travel() {
    // Straight lines between the points: the bowl is taken at the 20 mm that both sides reach.
    let curve = [
        (-40.0, 0.4),
        (-20.0, 0.2),
        (0.0, 0.0),
        (10.0, 0.1),
        (20.0, 0.3),
    ];
    let s = ToeScore::of(&curve, 0.0);
    near(s.bowl, 0.25, 1e-15);
    near(s.largest, 0.4, 0.0);
    near(s.largest_at, -40.0, 0.0);
}

#[test]
fn curves_of_nothing() {
    let s = ToeScore::of(&[], 0.5);
    assert_eq!((s.largest, s.rms, s.bowl, s.slope), (0.0, 0.0, 0.0, 0.5));
    let s = ToeScore::of(&[(0.0, 0.0)], 0.0);
    assert_eq!((s.largest, s.rms, s.bowl), (0.0, 0.0, 0.0));
    // From the design height up only, no bump has its droop.
    let s = ToeScore::of(&[(0.0, 0.1), (10.0, 0.3)], 0.0);
    assert_eq!((s.largest, s.bowl), (0.3, 0.0));
    let s = ToeScore::of(&[(5.0, 0.1), (5.0, 0.1), (5.0, 0.2)], 0.0);
    assert!(s.bowl.is_finite() && s.rms.is_finite());
}
