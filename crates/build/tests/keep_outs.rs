//! Extents of keep-outs, and what they hold.

use trammel_build::{Axis, AxleName, KeepOut, KeepOutCorners, LengthUnit};
use trammel_geometry::Point;

const RECTANGLE: KeepOutCorners = KeepOutCorners::Front([6.0, 3.0], [2.0, 5.0]);
const BOX: KeepOutCorners = KeepOutCorners::Box([-4.0, 6.0, 3.0], [-1.0, 2.0, 5.0]);

fn holds(corners: KeepOutCorners, axle: AxleName, [x, y, z]: [f64; 3]) -> bool {
    let keep_out = KeepOut {
        name: String::new(),
        corners,
    };
    let place = Point::new(x, y, z);
    keep_out.holds(axle, place, LengthUnit::Millimetre)
}

#[test]
fn a_rectangle_has_no_ends_along_x_and_a_box_has() {
    assert_eq!(RECTANGLE.along(Axis::X), None);
    assert_eq!(RECTANGLE.along(Axis::Y), Some([6.0, 2.0]));
    assert_eq!(BOX.along(Axis::X), Some([-4.0, -1.0]));
    assert_eq!(BOX.along(Axis::Z), Some([3.0, 5.0]));
    assert_eq!(RECTANGLE.with_along(Axis::X, [1.0, 2.0]), RECTANGLE);
    let wider = RECTANGLE.with_along(Axis::Y, [7.0, 2.0]);
    assert_eq!(wider, KeepOutCorners::Front([7.0, 3.0], [2.0, 5.0]));
    assert_eq!(
        BOX.with_along(Axis::Z, [0.0, 1.0]).along(Axis::Z),
        Some([0.0, 1.0])
    );
}

#[test]
fn a_box_without_ends_is_its_rectangle_and_back() {
    assert_eq!(BOX.at_every_x(), RECTANGLE);
    assert_eq!(RECTANGLE.between([-4.0, -1.0]), BOX);
    assert_eq!(BOX.mirrored().along(Axis::Y), Some([-6.0, -2.0]));
    assert_eq!(BOX.mirrored().mirrored(), BOX);
}

#[test]
fn what_is_inside_on_either_side_of_the_car_is_held_and_the_edge_too() {
    use AxleName::{Front, Rear};
    assert!(holds(RECTANGLE, Front, [99.0, 2.0, 3.0]));
    assert!(holds(RECTANGLE, Front, [0.0, -4.0, 4.0]));
    assert!(!holds(RECTANGLE, Front, [0.0, 1.9, 4.0]));
    assert!(!holds(RECTANGLE, Front, [0.0, 4.0, 5.1]));
    assert!(!holds(RECTANGLE, Rear, [0.0, 4.0, 4.0]));
    assert!(holds(BOX, Front, [-2.0, 4.0, 4.0]));
    assert!(holds(BOX, Rear, [-2.0, -4.0, 4.0]));
    assert!(!holds(BOX, Front, [0.0, 4.0, 4.0]));
}
