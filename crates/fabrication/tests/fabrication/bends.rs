use std::f64::consts::FRAC_PI_2;

use approx::assert_relative_eq;
use trammel_fabrication::bend::Bend;
use trammel_fabrication::minimums::{Minimum, check};
use trammel_fabrication::rack_bracket::{BracketSize, EndBolt, Joint, Making, RackBracket, fit};

/// Machinery's Handbook prints L = (0.64 T + 1.57 R) for a right angle in soft steel (pattern from memory): pi/2 K = 0.64 gives K = 0.407.
#[test]
fn allowance_agrees_with_the_printed_rule() {
    let (t, r) = (3.175, 4.7625);
    let bend = Bend::new(FRAC_PI_2, r, t, 0.407).unwrap();
    assert_relative_eq!(bend.allowance(), 0.64 * t + 1.57 * r, max_relative = 2e-3);
}

#[test]
fn a_right_angle_by_hand() {
    // R 5, t 5, K 0.4: pi/2 x 7 = 10.9956; setback 10; deduction 20 - 10.9956.
    let bend = Bend::new(FRAC_PI_2, 5.0, 5.0, 0.4).unwrap();
    assert_relative_eq!(bend.allowance(), 10.995_574_287_564_276, epsilon = 1e-12);
    assert_relative_eq!(bend.setback(), 10.0, epsilon = 1e-12);
    assert_relative_eq!(bend.deduction(), 9.004_425_712_435_724, epsilon = 1e-12);
}

#[test]
fn no_bend_from_nothing() {
    assert!(Bend::new(0.0, 5.0, 5.0, 0.4).is_err());
    assert!(Bend::new(FRAC_PI_2, -1.0, 5.0, 0.4).is_err());
    assert!(Bend::new(FRAC_PI_2, 5.0, 5.0, f64::NAN).is_err());
}

fn size() -> BracketSize {
    BracketSize {
        width: 38.1,
        thickness: 4.7625,
        gap: 20.0,
        stand_off: 35.0,
        edge: 15.875,
        ear_hole: 10.0,
        base_hole: 13.0,
    }
}

#[test]
fn the_bent_bar_has_the_length_of_its_outside_less_two_deductions() {
    let making = Making::Bent {
        inside_radius: 5.0,
        k: 0.4,
    };
    let bar = &RackBracket::new(size(), making)
        .unwrap()
        .parts("bracket")
        .unwrap()[0];
    let bend = Bend::new(FRAC_PI_2, 5.0, 4.7625, 0.4).unwrap();
    let outside = 2.0 * (35.0 + 15.875 + 4.7625) + 20.0 + 2.0 * 4.7625;
    assert_relative_eq!(
        bar.bounds().width(),
        outside - 2.0 * bend.deduction(),
        epsilon = 1e-9
    );
    let holes: Vec<f64> = bar.holes.iter().map(|hole| hole.centre.x).collect();
    assert_relative_eq!(holes[0], 15.875);
    assert_relative_eq!(holes[1] * 2.0, bar.bounds().width(), epsilon = 1e-9);
    assert_relative_eq!(holes[0] + holes[2], bar.bounds().width(), epsilon = 1e-9);
    assert_eq!(bar.bends.len(), 2);
    // Along the flat from the ear's hole to the bend's start is the stand-off less the radius.
    assert_relative_eq!(
        bar.bends[0].from.x - bend.allowance() / 2.0 - holes[0],
        30.0,
        epsilon = 1e-9
    );
}

#[test]
fn the_welded_bracket_stands_as_high_as_the_bent_one() {
    let parts = RackBracket::new(size(), Making::Welded)
        .unwrap()
        .parts("bracket")
        .unwrap();
    assert_eq!(parts.len(), 2);
    assert_relative_eq!(parts[0].bounds().width(), 20.0);
    assert_relative_eq!(
        parts[1].bounds().width() - parts[1].holes[0].centre.x,
        35.0 + 4.7625,
        epsilon = 1e-9
    );
    assert_eq!(parts[1].quantity.total(), 2);
}

#[test]
fn room_over_the_whole_adjustment() {
    let bracket = RackBracket::new(size(), Making::Welded).unwrap();
    let joint = Joint {
        ball_width: 12.7,
        head_diameter: 26.0,
        washer: 3.0,
    };
    let bolt = EndBolt {
        head_height: 10.0,
        head_width: 19.0,
        jam_nut: 8.0,
        engagement: 24.0,
        exposed: 6.0,
        adjustment: 4.0,
        thread_depth: 30.0,
    };
    let fit = fit(&bracket, &joint, &bolt).unwrap();
    assert_relative_eq!(fit.play, 1.3, epsilon = 1e-9);
    assert_relative_eq!(fit.joint_to_bolt_head, 12.0, epsilon = 1e-9);
    assert_relative_eq!(fit.head_between_ears, 1.0);
    assert_relative_eq!(fit.nut_to_rack, 2.0);
    assert_relative_eq!(fit.least_engagement, 20.0);
    assert_relative_eq!(fit.bolt_end_to_thread_end, 2.0);
    assert_relative_eq!(fit.most_exposed, 10.0);
    assert_relative_eq!(fit.bolt_length, 4.7625 + 8.0 + 6.0 + 24.0, epsilon = 1e-9);
}

#[test]
fn a_hole_near_a_bend_is_found() {
    let parts = |stand_off| {
        let making = Making::Bent {
            inside_radius: 5.0,
            k: 0.4,
        };
        RackBracket::new(
            BracketSize {
                stand_off,
                ..size()
            },
            making,
        )
        .unwrap()
        .parts("b")
        .unwrap()
    };
    let low = |stand_off| {
        check(&parts(stand_off)[0])
            .iter()
            .any(|c| c.what == Minimum::HoleToBend && c.at == 0 && !c.holds())
    };
    // Middle of the bend lies allowance / 2 = 5.42 past the radius' start: the hole needs 2t + R + 5 of stand-off less 5 + 5.42.
    assert!(low(18.0) && !low(35.0));
}

#[test]
fn bends_need_room() {
    let making = Making::Bent {
        inside_radius: 11.0,
        k: 0.4,
    };
    assert_eq!(
        RackBracket::new(size(), making).unwrap_err().what,
        "the bends' inside radius"
    );
}
