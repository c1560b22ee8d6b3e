//! Instant centre and roll centre: the theorem of three centres in a planar corner, and the normal to a path in any corner.

use nalgebra::Vector2;
use proptest::prelude::*;
use trammel_geometry::{Corner, Point, TieRod, Vector};

use crate::corners::{any_corner, arm, carried, kart, linkage, near};

/// A corner that moves in the front view only: pivot axes along x, the tie rod a copy of the lower arm behind it.
fn planar() -> Corner {
    Corner {
        upper_arm: arm(
            [80.0, 250.0, 350.0],
            [-120.0, 250.0, 350.0],
            [-15.0, 545.0, 385.0],
        ),
        lower_arm: arm(
            [80.0, 190.0, 215.0],
            [-120.0, 190.0, 215.0],
            [5.0, 575.0, 190.0],
        ),
        tie_rod: TieRod {
            inner: Point::new(-95.0, 190.0, 215.0),
            outer: Point::new(-95.0, 575.0, 190.0),
        },
        ..kart()
    }
}

fn crossing(a: [Vector2<f64>; 2], b: [Vector2<f64>; 2]) -> Vector2<f64> {
    let (u, v) = (a[1] - a[0], b[1] - b[0]);
    let t = (b[0] - a[0]).perp(&v) / u.perp(&v);
    a[0] + u * t
}

fn front_view(p: Point) -> Vector2<f64> {
    Vector2::new(p.y, p.z)
}

/// Kennedy-Aronhold: the upright's centre lies on the lines of both arms, the body's roll centre on the line from the contact point to it and, by
/// symmetry, on the centre plane.
#[test]
fn three_centres() {
    let c = planar();
    let l = linkage(&c);
    for travel in [-90.0, -40.0, 0.0, 35.0, 80.0] {
        let pose = l.pose(travel, 0.0).unwrap();
        let m = l.measures(&pose);
        let centre = crossing(
            [
                front_view(c.upper_arm.front_pivot),
                front_view(pose.upper_ball_joint),
            ],
            [
                front_view(c.lower_arm.front_pivot),
                front_view(pose.lower_ball_joint),
            ],
        );
        let found = m.instant_centre.unwrap();
        near(found.y, centre.x, 1e-8 * centre.norm());
        near(found.z, centre.y, 1e-8 * centre.norm());
        let contact = front_view(pose.contact);
        near(
            found.swing_arm_length,
            contact.x - centre.x,
            1e-8 * centre.norm(),
        );
        let plane = [Vector2::new(0.0, -1.0), Vector2::new(0.0, 1.0)];
        let roll = crossing([contact, centre], plane);
        near(m.roll_centre_height, roll.y - contact.y, 1e-8);
    }
}

proptest! {
    /// The normal in the front view to the path of the upright's own point at the contact cuts the centre plane at the roll centre, and the
    /// instant centre is where the upright's points don't move.
    #[test]
    fn normal_to_the_path(corner in any_corner(), travel in -50.0..50.0_f64, rack in -25.0..25.0_f64) {
        let l = linkage(&corner);
        let step = 1e-3;
        let poses = [travel - step, travel, travel + step].map(|t| l.pose(t, rack));
        let [Ok(down), Ok(here), Ok(up)] = poses else {
            return Err(TestCaseError::reject("out of reach"));
        };
        prop_assume!(here.margins.least() > 0.2);
        let m = l.measures(&here);
        let velocity = |p: Point| (carried(p, &here, &up) - carried(p, &here, &down)) / (2.0 * step);
        let v = velocity(here.contact);
        prop_assert!((m.roll_centre_height - here.contact.y * v.y / v.z).abs() < 1e-4);
        if let Some(centre) = m.instant_centre.filter(|c| c.swing_arm_length.abs() < 2e4) {
            let v = velocity(Point::new(here.contact.x, centre.y, centre.z));
            prop_assert!(v.y.abs() < 1e-6 && v.z.abs() < 1e-6, "{v}");
            prop_assert!((here.contact.y - centre.y - centre.swing_arm_length).abs() < 1e-7);
        }
    }
}

/// An upright that does not turn has no centre.
#[test]
fn none_when_endlessly_far() {
    let mut c = planar();
    c.upper_arm = arm(
        [80.0, 190.0, 415.0],
        [-120.0, 190.0, 415.0],
        [-15.0, 575.0, 390.0],
    );
    let l = linkage(&c);
    let m = l.measures(&l.pose(30.0, 0.0).unwrap());
    assert_eq!(m.instant_centre, None);
    assert!(m.roll_centre_height.is_finite());
    let _: Vector = l.pose(30.0, 0.0).unwrap().rates.upright;
}
