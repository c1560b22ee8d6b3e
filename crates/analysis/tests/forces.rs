//! Forces of a whole corner as a table: in balance, lossless, mirrored.

#![allow(
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test stops where it fails"
)]

mod common;

use approx::assert_relative_eq;
use trammel_analysis::{ForcePoint, ForceRequest, Span, WheelForce, forces_under};
use trammel_build::{AxleName, LengthUnit, Side};

fn request(side: Side, unit: LengthUnit) -> ForceRequest {
    ForceRequest {
        axle: AxleName::Front,
        side,
        travel: Some(Span::new(-2.0, 2.5, 4).unwrap()),
        rack: Some(Span::new(-1.25, 1.25, 3).unwrap()),
        unit,
    }
}

/// The upright is in balance, the arms are, and nothing is lost on the way to the table: forces and moments to 1e-9 of the load.
#[test]
fn every_body_of_the_table_is_in_balance() {
    let build = common::demo("badly-placed-rack");
    let load = WheelForce {
        at: ForcePoint::Contact,
        force: [-700.0, 350.0, 2100.0],
        moment_z: 40_000.0,
    };
    let table = forces_under(&build, &request(Side::Left, build.unit), &load).unwrap();
    assert_eq!((table.rows.len(), table.asked), (12, 12));
    let linkage = build.axle(AxleName::Front).unwrap().axle.left;
    for row in &table.rows {
        let pose = linkage.pose(row.travel, row.rack).unwrap();
        let f = &row.forces;
        let force = trammel_geometry::Vector::from(load.force);
        let rod = -f.force_on_inner_joint;
        let balls = [
            (pose.upper_ball_joint, f.upper.ball_joint_on_upright),
            (pose.lower_ball_joint, f.lower.ball_joint_on_upright),
        ];
        let sum = force + rod + balls[0].1 + balls[1].1;
        assert!(sum.norm() < 1e-9 * force.norm(), "{sum}");
        let moments = pose.contact.coords.cross(&force)
            + pose.tie_rod_outer.coords.cross(&rod)
            + balls
                .iter()
                .map(|(at, by)| at.coords.cross(by))
                .sum::<trammel_geometry::Vector>();
        let moments = moments + trammel_geometry::Vector::new(0.0, 0.0, load.moment_z);
        assert!(moments.norm() < 1e-9 * force.norm() * 1000.0, "{moments}");
        for (arm, spring) in [
            (&f.upper, trammel_geometry::Vector::zeros()),
            (&f.lower, -f.spring_on_chassis),
        ] {
            let sum = arm.front_pivot + arm.rear_pivot - arm.ball_joint_on_upright + spring;
            assert!(sum.norm() < 1e-9 * force.norm(), "{sum}");
        }
    }
}

/// Virtual work: over a small wheel travel the load's work goes into the spring; the rack is held.
#[test]
fn the_loads_work_goes_into_the_spring() {
    let build = common::demo("good");
    let linkage = build.axle(AxleName::Front).unwrap().axle.left;
    let corner = linkage.corner();
    let load = WheelForce {
        at: ForcePoint::Hub,
        force: [-300.0, 150.0, 1800.0],
        moment_z: 0.0,
    };
    let table = forces_under(&build, &request(Side::Left, build.unit), &load).unwrap();
    let length = |pose: &trammel_geometry::Pose| {
        (pose.spring_arm_mount.unwrap() - corner.spring.unwrap().chassis_mount).norm()
    };
    let h = 1e-3;
    for row in &table.rows {
        let [low, high] = [-h, h].map(|d| linkage.pose(row.travel + d, row.rack).unwrap());
        let moved = (high.wheel_centre - low.wheel_centre) / (2.0 * h);
        let shorter = (length(&low) - length(&high)) / (2.0 * h);
        let work = moved.dot(&trammel_geometry::Vector::from(load.force));
        assert_relative_eq!(row.forces.spring_force * shorter, work, max_relative = 1e-6);
    }
}

/// Mirrored loads at mirrored poses give mirrored forces, in vehicle axes.
#[test]
fn mirrored_loads_give_mirrored_forces() {
    let build = common::demo("good");
    let left = WheelForce {
        at: ForcePoint::Contact,
        force: [-500.0, 240.0, 1500.0],
        moment_z: 9000.0,
    };
    let right = WheelForce {
        force: [-500.0, -240.0, 1500.0],
        moment_z: -9000.0,
        ..left
    };
    let of = |side, load| forces_under(&build, &request(side, build.unit), load).unwrap();
    let (ours, theirs) = (of(Side::Left, &left), of(Side::Right, &right));
    for a in &ours.rows {
        let b = theirs
            .rows
            .iter()
            .find(|b| (b.rack + a.rack).abs() < 1e-9 && (b.travel - a.travel).abs() < 1e-9)
            .unwrap();
        assert_relative_eq!(
            a.forces.tie_rod_tension,
            b.forces.tie_rod_tension,
            max_relative = 1e-7
        );
        assert_relative_eq!(
            a.forces.spring_force,
            b.forces.spring_force,
            max_relative = 1e-7
        );
        let mirrored = trammel_geometry::mirror_vector(b.forces.lower.front_pivot);
        assert_relative_eq!(a.forces.lower.front_pivot, mirrored, epsilon = 1e-4);
        // The rack is pulled the other way.
        assert_relative_eq!(
            a.forces.rack_force.unwrap(),
            -b.forces.rack_force.unwrap(),
            epsilon = 1e-4
        );
        let bending = |row: &trammel_analysis::ForceRow| row.rack_end.unwrap().bending;
        assert_relative_eq!(bending(a), bending(b), max_relative = 1e-7);
    }
}
