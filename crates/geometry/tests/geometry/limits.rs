//! Where the reach ends: just inside there is a pose, just outside there is none.

use proptest::prelude::*;
use trammel_geometry::{Limit, Linkage, Member, Vector};

use crate::corners::{any_corner, kart, linkage, near};

/// How far inside and outside the limit is tried, mm: where two members come in line at once, rounding blurs the end by some 1e-5 mm.
const HAIR: f64 = 1e-4;

/// The same along the rack.
const RACK_HAIR: f64 = 1e-6;

/// Travel beyond which the arms stand nearly upright, mm.
const FOLDED: f64 = 300.0;

fn travel_limit(l: &Linkage, way: f64, rack: f64) -> Option<(f64, Member)> {
    let stop = l
        .pose(way * 1e4, rack)
        .expect_err("no corner reaches that far");
    match stop.limit {
        Limit::Travel(at) => Some((at, stop.member)),
        Limit::Rack(_) => None,
    }
}

fn rack_limit(l: &Linkage, rack: f64) -> (f64, Member) {
    let stop = l.pose(0.0, rack).expect_err("no rod reaches that far");
    match stop.limit {
        Limit::Rack(at) => (at, stop.member),
        Limit::Travel(_) => panic!("the wheel is at its design height"),
    }
}

proptest! {
    #[test]
    fn travel_ends_sharply(corner in any_corner(), rack in -30.0..30.0_f64) {
        let l = linkage(&corner);
        for way in [-1.0, 1.0] {
            let Some((at, _)) = travel_limit(&l, way, rack) else { continue };
            prop_assert!(at * way >= 0.0);
            prop_assert!(l.pose(at - way * HAIR, rack).is_ok(), "inside {at}");
            prop_assert!(l.pose(at + way * HAIR, rack).is_err(), "outside {at}");
            // Farther than such a wheel can ever travel the linkage may fold back and reach again within a step.
            if at.abs() < FOLDED {
                let same = l.pose(at + way * 3.0, rack).unwrap_err();
                prop_assert_eq!(same.limit, Limit::Travel(at));
            }
        }
    }

    #[test]
    fn rack_ends_sharply(mut corner in any_corner()) {
        corner.rack_axis.get_or_insert(Vector::y());
        let l = linkage(&corner);
        for way in [-1.0, 1.0] {
            let (at, _) = rack_limit(&l, way * 1e4);
            prop_assert!(at * way > 0.0);
            prop_assert!(l.pose(0.0, at - way * RACK_HAIR).is_ok(), "inside {at}");
            prop_assert!(l.pose(0.0, at + way * RACK_HAIR).is_err(), "outside {at}");
            for beyond in [at + way * 0.02, at + way * 5.0, way * f64::INFINITY] {
                let (again, _) = rack_limit(&l, beyond);
                prop_assert!((again - at).abs() < RACK_HAIR, "{again} for {at}");
            }
        }
    }

    /// On the way to a limit some member comes in line, or the wheel stops rising: the margins say so.
    #[test]
    fn margins_vanish_at_the_end(corner in any_corner()) {
        let l = linkage(&corner);
        for way in [-1.0, 1.0] {
            let Some((at, _)) = travel_limit(&l, way, 0.0) else { continue };
            let last = l.pose(at - way * HAIR, 0.0).unwrap();
            let earlier = l.pose(0.5 * at, 0.0).unwrap();
            prop_assert!(last.margins.least() < 0.1, "{:?}", last.margins);
            prop_assert!(last.margins.least() < earlier.margins.least());
        }
    }
}

/// Level arms of one length: the steering axis stands upright at y 560.
fn upright_axis() -> trammel_geometry::Corner {
    let mut c = kart();
    c.lower_arm = crate::corners::arm(
        [100.0, 200.0, 200.0],
        [-100.0, 200.0, 200.0],
        [0.0, 560.0, 200.0],
    );
    c.upper_arm = crate::corners::arm(
        [100.0, 200.0, 380.0],
        [-100.0, 200.0, 380.0],
        [0.0, 560.0, 380.0],
    );
    c
}

/// A steering arm in the plane of a straight rack, upright steering axis: the rod is in line with the arm when the inner joint is their sum
/// away from the axis, in closed form.
#[test]
fn dead_point_of_the_tie_rod() {
    let mut c = upright_axis();
    c.tie_rod.inner = trammel_geometry::Point::new(-80.0, 220.0, 240.0);
    c.tie_rod.outer = trammel_geometry::Point::new(-110.0, 545.0, 240.0);
    let l = linkage(&c);
    let arm = 110.0_f64.hypot(15.0);
    let rod = 30.0_f64.hypot(325.0);
    // Towards the wheel the rod meets the arm folded over, away from it stretched out.
    let stretched = 340.0 - ((rod + arm).powi(2) - 80.0_f64.powi(2)).sqrt();
    let folded = 340.0 - ((rod - arm).powi(2) - 80.0_f64.powi(2)).sqrt();
    let (at, member) = rack_limit(&l, -1000.0);
    near(at, stretched, 5e-8);
    assert_eq!(member, Member::TieRod);
    let (at, member) = rack_limit(&l, 1000.0);
    near(at, folded, 5e-8);
    assert_eq!(member, Member::TieRod);
}

/// A short upper arm that comes in line with the upright before the lower arm is at its end.
#[test]
fn upper_arm_runs_out() {
    let mut c = kart();
    c.upper_arm.front_pivot.y += 180.0;
    c.upper_arm.rear_pivot.y += 180.0;
    let l = linkage(&c);
    let ends = [-1.0, 1.0].map(|way| travel_limit(&l, way, 0.0).unwrap());
    assert!(
        ends.iter().any(|(_, member)| *member == Member::UpperArm),
        "{ends:?}"
    );
}

#[test]
fn says_which_member_and_where() {
    let stop = linkage(&kart()).pose(0.0, 500.0).unwrap_err();
    let text = stop.to_string();
    assert!(
        text.starts_with("the tie rod runs out at a rack travel of "),
        "{text}"
    );
    assert!(text.ends_with("mm (asked for 500.0 mm)"), "{text}");
    let stop = linkage(&kart()).pose(900.0, 0.0).unwrap_err();
    let text = stop.to_string();
    assert!(text.contains("runs out at a wheel travel of "), "{text}");
    assert!(
        text.contains("asked for 900.0 mm with the rack at 0.0 mm"),
        "{text}"
    );
}

#[test]
fn a_rack_travel_that_is_none_ends_where_the_rack_stands() {
    let mut fixed = kart();
    fixed.rack_axis = None;
    for (corner, rack) in [
        (kart(), f64::NAN),
        (fixed, f64::NAN),
        (fixed, f64::INFINITY),
        (fixed, f64::NEG_INFINITY),
    ] {
        assert_eq!(
            rack_limit(&linkage(&corner), rack),
            (0.0, Member::TieRod),
            "{rack}"
        );
    }
}

/// A rod only 30 mm longer than the steering arm, on a rack that passes 30 mm behind the steering axis: within some 5 mm of the axis the rod is too long to
/// fold, and beyond it would reach again. No rack gets over there, however far it is asked to go.
#[test]
fn a_narrow_gap_in_the_rack_s_reach_is_not_jumped() {
    let mut c = upright_axis();
    c.tie_rod.inner = trammel_geometry::Point::new(-30.0, 450.0, 240.0);
    c.tie_rod.outer = trammel_geometry::Point::new(-100.0, 560.0, 240.0);
    let l = linkage(&c);
    let rod = 70.0_f64.hypot(110.0);
    let folded = 110.0 - ((rod - 100.0).powi(2) - 30.0_f64.powi(2)).sqrt();
    for asked in [120.0, 137.0, 160.0, 200.0, 250.0, 300.0] {
        let (at, member) = rack_limit(&l, asked);
        near(at, folded, 1e-6);
        assert_eq!(member, Member::TieRod);
    }
}
