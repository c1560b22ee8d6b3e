use std::f64::consts::{FRAC_PI_2, PI};

use approx::assert_relative_eq;
use proptest::prelude::*;
use trammel_fabrication::plane::{Contour, ContourError, Edge, Placement, Point, Vector, Vertex};

/// A slot 60 long over its round ends and 20 wide.
fn slot() -> Contour {
    Contour::new(vec![
        Vertex::straight(-20.0, -10.0),
        Vertex::arc(20.0, -10.0, PI),
        Vertex::straight(20.0, 10.0),
        Vertex::arc(-20.0, 10.0, PI),
    ])
    .unwrap()
}

#[test]
fn a_slot_is_a_rectangle_and_a_circle() {
    let slot = slot();
    assert_relative_eq!(slot.area(), 800.0 + 100.0 * PI, max_relative = 1e-12);
    assert_relative_eq!(slot.length(), 80.0 + 20.0 * PI, max_relative = 1e-12);
    let bounds = slot.bounds();
    assert_relative_eq!(bounds.min.x, -30.0, epsilon = 1e-9);
    assert_relative_eq!(bounds.max.x, 30.0, epsilon = 1e-9);
    assert_relative_eq!(bounds.height(), 20.0, epsilon = 1e-9);
}

#[test]
fn an_arc_of_more_than_half_a_turn_keeps_its_centre() {
    // Three quarters of a circle of radius 5 about (0, 0), from (5, 0) to (0, -5).
    let Edge::Arc(arc) = Edge::between(
        Point::new(5.0, 0.0),
        Point::new(0.0, -5.0),
        (1.5 * PI / 4.0).tan(),
    ) else {
        panic!("an arc")
    };
    assert_relative_eq!(arc.centre, Point::origin(), epsilon = 1e-12);
    assert_relative_eq!(arc.radius, 5.0, epsilon = 1e-12);
    assert_relative_eq!(
        arc.at(0.5),
        Point::new(5.0 * (0.75 * PI).cos(), 5.0 * (0.75 * PI).sin()),
        epsilon = 1e-12
    );
    assert!(arc.covers(PI) && !arc.covers(-FRAC_PI_2 / 2.0));
}

#[test]
fn distance_is_to_the_nearest_of_lines_and_arcs() {
    let slot = slot();
    assert_relative_eq!(slot.distance_to(Point::new(0.0, 4.0)), 6.0, epsilon = 1e-12);
    assert_relative_eq!(
        slot.distance_to(Point::new(33.0, 0.0)),
        3.0,
        epsilon = 1e-12
    );
    // Inside an end, off its centre: 10 - 5.
    assert_relative_eq!(
        slot.distance_to(Point::new(20.0 + 3.0, 4.0)),
        5.0,
        epsilon = 1e-12
    );
}

#[test]
fn inside_and_outside() {
    let slot = slot();
    assert!(slot.contains(Point::new(29.0, 0.0)));
    assert!(!slot.contains(Point::new(29.0, 9.0)));
    assert!(!slot.contains(Point::new(0.0, 11.0)));
}

#[test]
fn given_clockwise_it_is_the_same_contour() {
    let clockwise = Contour::new(vec![
        Vertex::straight(-20.0, 10.0),
        Vertex::arc(20.0, 10.0, -PI),
        Vertex::straight(20.0, -10.0),
        Vertex::arc(-20.0, -10.0, -PI),
    ])
    .unwrap();
    assert_relative_eq!(clockwise.area(), slot().area(), max_relative = 1e-12);
    assert!(clockwise.contains(Point::new(29.0, 0.0)));
}

#[test]
fn what_is_no_outline_is_refused() {
    let refused = |vertices: &[(f64, f64)]| {
        Contour::new(
            vertices
                .iter()
                .map(|&(x, y)| Vertex::straight(x, y))
                .collect(),
        )
        .unwrap_err()
    };
    assert_eq!(refused(&[]), ContourError::NoArea { found: 0 });
    assert_eq!(
        refused(&[(0.0, 0.0), (1.0, 0.0), (2.0, 0.0)]),
        ContourError::NoArea { found: 3 }
    );
    assert_eq!(
        refused(&[(0.0, 0.0), (f64::NAN, 0.0), (2.0, 3.0)]),
        ContourError::NotFinite { at: 1 }
    );
    assert_eq!(
        refused(&[(0.0, 0.0), (1.0, 0.0), (1.0, 0.0), (0.0, 3.0)]),
        ContourError::NoLength { at: 1 }
    );
}

proptest! {
    /// Turned over, turned round and shifted, a part keeps its area, its edge and the distances of its points.
    #[test]
    fn placing_keeps_the_part(mirrored: bool, turn in -7.0..7.0, x in -500.0..500.0, y in -500.0..500.0, px in -40.0..40.0, py in -20.0..20.0) {
        let placement = Placement { mirrored, turn, shift: Vector::new(x, y) };
        let (slot, point) = (slot(), Point::new(px, py));
        let placed = slot.placed(&placement);
        prop_assert!((placed.area() - slot.area()).abs() < 1e-6);
        prop_assert!((placed.length() - slot.length()).abs() < 1e-6);
        let there = placement.point(point);
        prop_assert!((placed.distance_to(there) - slot.distance_to(point)).abs() < 1e-6);
        prop_assert_eq!(placed.contains(there), slot.contains(point));
    }
}
