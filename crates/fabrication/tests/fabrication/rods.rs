use approx::assert_relative_eq;
use nalgebra_points::arm_points;
use trammel_fabrication::arm::{ArmPlan, Leg};
use trammel_fabrication::end_cut::EndCut;
use trammel_fabrication::spacer::{Sleeve, Spacer, pair_gap};
use trammel_fabrication::tie_rod::{Hand, RodEnding, rod_tube};
use trammel_strength::thread::Thread;

fn ending(hand: Hand) -> RodEnding {
    RodEnding {
        thread: Thread::find("1/2-20").unwrap(),
        hand,
        centre_to_thread: 26.0,
        thread_length: 38.0,
        showing: 6.0,
        jam_nut: 8.0,
        flange: 5.0,
        thread_depth: 32.0,
    }
}

#[test]
fn the_sum_by_hand() {
    let tube = rod_tube(340.0, &[ending(Hand::Right), ending(Hand::Left)], 1.0).unwrap();
    assert_relative_eq!(tube.length, 340.0 - 2.0 * (26.0 + 6.0 + 8.0 + 5.0));
    assert_relative_eq!(
        tube.sum.iter().map(|line| line.length).sum::<f64>(),
        tube.length
    );
    assert_eq!(tube.sum.len(), 9);
    assert!(
        tube.sum[1].what.contains("1/2-20 UNF right-hand")
            && tube.sum[5].what.contains("left-hand")
    );
    let [end, _] = tube.adjustment;
    assert_relative_eq!(end.engaged, 24.0);
    assert_relative_eq!(end.inwards, 6.0);
    assert_relative_eq!(end.outwards, 24.0 - 12.7);
    assert_relative_eq!(tube.per_turn, 2.0 * 1.27);
}

#[test]
fn both_ends_of_one_hand_do_not_adjust() {
    let tube = rod_tube(340.0, &[ending(Hand::Right), ending(Hand::Right)], 1.0).unwrap();
    assert_relative_eq!(tube.per_turn, 0.0);
}

#[test]
fn the_thread_may_reach_the_end_of_its_hole_before_the_nut() {
    let deep = RodEnding {
        thread_depth: 27.0,
        ..ending(Hand::Right)
    };
    let tube = rod_tube(340.0, &[deep, ending(Hand::Left)], 1.0).unwrap();
    assert_relative_eq!(tube.adjustment[0].inwards, 3.0);
}

#[test]
fn a_rod_too_short_for_a_tube_is_refused() {
    let refused = rod_tube(80.0, &[ending(Hand::Right), ending(Hand::Left)], 1.0).unwrap_err();
    assert_eq!(refused.what, "the tube's length");
    let bare = RodEnding {
        thread_length: 10.0,
        ..ending(Hand::Right)
    };
    assert!(rod_tube(340.0, &[bare, ending(Hand::Left)], 1.0).is_err());
}

mod nalgebra_points {
    use nalgebra::Point3;

    /// An arm 240 wide and 320 long in a plane that is tilted by a 3-4-5 triangle.
    pub fn arm_points() -> [Point3<f64>; 3] {
        let up = |x: f64, reach: f64| Point3::new(x, reach * 0.8, reach * 0.6);
        [up(140.0, 0.0), up(-100.0, 0.0), up(20.0, 320.0)]
    }
}

#[test]
fn the_true_shape_of_a_tilted_arm() {
    let [front, rear, ball] = arm_points();
    let plan = ArmPlan::new(front, rear, ball).unwrap();
    assert_relative_eq!(plan.pivots, 240.0, epsilon = 1e-9);
    assert_relative_eq!(plan.ball_joint.x, 120.0, epsilon = 1e-9);
    assert_relative_eq!(plan.ball_joint.y, 320.0, epsilon = 1e-9);
    let leg = (120.0_f64 * 120.0 + 320.0 * 320.0).sqrt();
    assert_relative_eq!(plan.legs()[0], leg, epsilon = 1e-9);
    assert_relative_eq!(plan.legs()[1], leg, epsilon = 1e-9);
    let tube = plan.tube(Leg::Front, 25.4, 34.0, 20.0).unwrap();
    // The notch's tips reach as near as they can to the axis, its bottom stays as far as it must.
    let (sin, cos) = (320.0 / leg, 120.0 / leg);
    let farthest = (17.0 + 12.7 * cos) / sin;
    // At the ball joint the tubes meet each other where a line through the housing's middle, leaning 120 in 320, leaves their insides.
    let meet = 12.7 * 320.0 / 120.0;
    assert_relative_eq!(tube.shortest, leg - meet - farthest, epsilon = 1e-6);
    // Tip to tip: at the bush the sides, at the housing (radius less than the tube's) the outside, level with its middle.
    let nearest = (0..360).map(|d| tube.cope.cut_at(f64::from(d).to_radians()));
    let nearest = nearest.fold(f64::INFINITY, f64::min);
    assert_relative_eq!(tube.cut_length, leg - nearest, epsilon = 1e-6);
}

#[test]
fn an_arm_needs_three_points() {
    let [front, rear, _] = arm_points();
    assert!(ArmPlan::new(front, rear, front).is_err());
    assert!(ArmPlan::new(front, front, rear).is_err());
}

#[test]
fn gaps_and_spacers() {
    let pair = pair_gap(12.7, 4.0, 0.5, 4.8, 1.6).unwrap();
    assert_relative_eq!(pair.gap, 21.2);
    assert_relative_eq!(pair.grip, 34.0, epsilon = 1e-9);
    // A ring 20 x 10 x 10 of steel: 235.6 x 10 mm3.
    let spacer = Spacer::new(10.0, 10.0, 20.0).unwrap();
    assert_relative_eq!(spacer.mass(7850.0), 0.018_496, max_relative = 1e-3);
    assert!(Spacer::new(10.0, 20.0, 20.0).is_err());
    let sleeve = Sleeve::new(spacer, 12.7, 16.0).unwrap();
    assert_relative_eq!(sleeve.spigot_length, 8.0);
    assert!(Sleeve::new(spacer, 10.0, 16.0).is_err());
}
