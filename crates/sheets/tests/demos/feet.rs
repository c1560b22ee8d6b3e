//! Feet of tabs on round tubes that run askew or along, against shapes worked out by hand.

use trammel_build::PointName;
use trammel_drawings::{metrics::Metrics, sheet::Paper};
use trammel_sheets::Sheets;

use super::good;

/// The lower front pivot of the good demo (5.5, 6.25, 7), its bolt fore and aft, on a 2 in round tube through there.
fn on_tube(
    from: [f64; 3],
    to: [f64; 3],
) -> Vec<(String, trammel_fabrication::flat_part::FlatPart)> {
    let mut build = good();
    let joint = build
        .front
        .parts
        .joints
        .get_mut(&PointName::LowerFrontPivot);
    let bracket = joint.unwrap().bracket.as_mut().unwrap();
    bracket.height = 1.5;
    bracket.tube = Some(trammel_build::FrameTube {
        from,
        to,
        section: trammel_build::Section::Round(2.0, 0.12),
    });
    let sheets = Sheets::of(&build, Paper::A4, &Metrics::new().unwrap());
    let of_joint = |s: &&trammel_sheets::Sheet| s.name.starts_with("front-lower-arm-front-pivot");
    let parts = sheets.sheets.iter().filter(of_joint);
    parts
        .map(|s| (s.name.clone(), s.part.clone().unwrap()))
        .collect()
}

/// Height of the foot's edge under the hole at this x, mm, of the arc that lies there.
fn foot_at(part: &trammel_fabrication::flat_part::FlatPart, x: f64) -> f64 {
    use trammel_fabrication::plane::Edge;
    let below = part.outline.edges().filter_map(|edge| match edge {
        Edge::Arc(arc) if arc.centre.y < 0.0 => {
            let (a, b) = (
                arc.at(0.0).x.min(arc.at(1.0).x),
                arc.at(0.0).x.max(arc.at(1.0).x),
            );
            let up = arc.radius * arc.radius - (x - arc.centre.x).powi(2);
            (a - 1e-9..=b + 1e-9)
                .contains(&x)
                .then(|| arc.centre.y + up.sqrt())
        }
        _ => None,
    });
    below.fold(f64::NEG_INFINITY, f64::max)
}

#[test]
fn ears_on_a_tube_turned_across_are_one_shape_and_its_mirror_image_off_its_middle() {
    // Tube 2 1/2 in inboard of the joint at its height, turned by 20 degrees about the line to the joint: it climbs as it goes forward.
    let slope = 20.0_f64.to_radians().tan();
    let at = |x: f64| [x, 3.75, 7.0 + (x - 5.5) * slope];
    let parts = on_tube(at(0.0), at(12.0));
    let [(name, part)] = parts.as_slice() else {
        panic!("{parts:?}")
    };
    assert_eq!(name, "front-lower-arm-front-pivot-tab");
    assert_eq!((part.quantity.as_drawn, part.quantity.mirrored), (2, 2));
    // The ear stands half of gap and plate off the joint: (1 1/4 + 1/4) / 2. The tube has moved there by as much as it climbs; its cut is an ellipse R high and
    // R / cos 20 wide.
    let (shift, radius) = (0.75 * 25.4 * slope, 25.4);
    let ellipse = |x: f64| {
        let u = x.abs() * 20.0_f64.to_radians().cos();
        (radius * radius - u * u).sqrt()
    };
    let middle = ellipse(shift);
    for x in [-18.0, -10.0, -4.0, 0.0, 6.0, 12.0, 18.0] {
        let [right, left] = [ellipse(x - shift) - middle, ellipse(x + shift) - middle];
        let found = foot_at(part, x);
        let off = (found - right).abs().min((found - left).abs());
        assert!(off < 0.02, "{x}: {found}, {right} or {left}");
    }
    assert!(
        (foot_at(part, 18.0) - foot_at(part, -18.0)).abs() > 1.0,
        "it has a hand"
    );
}

#[test]
fn ears_on_a_tube_that_leans_away_stand_at_their_own_heights() {
    // The tube comes nearer to the joint as it goes forward: 20 degrees in plan.
    let slope = 20.0_f64.to_radians().tan();
    let at = |x: f64| [x, 3.75 + (x - 5.5) * slope, 7.0];
    let parts = on_tube(at(0.0), at(12.0));
    let [(first, front), (second, rear)] = parts.as_slice() else {
        panic!("{parts:?}")
    };
    assert!(first.contains("front-ear") && second.contains("rear-ear"));
    // From ear to ear 1 1/2 in: the front one is lower by what the tube has come nearer.
    let height = |p: &trammel_fabrication::flat_part::FlatPart| p.holes[0].centre.y;
    let difference = height(rear) - height(front);
    assert!(
        (difference - 1.5 * 25.4 * slope).abs() < 1e-6,
        "{difference}"
    );
    assert_eq!((front.quantity.as_drawn, front.quantity.mirrored), (2, 0));
    // Up the tab the cut is R / cos 20 high.
    let drop = (25.4 - (25.4_f64.powi(2) - 15.0 * 15.0).sqrt()) / 20.0_f64.to_radians().cos();
    assert!((foot_at(front, 15.0) + drop).abs() < 0.02);
}

#[test]
fn ears_along_a_round_tube_reach_down_its_flanks() {
    // A 2 in tube across the vehicle under the joint, whose bolt lies along x: both ears lie along the tube, 3/4 in beside its crown.
    let parts = on_tube([5.5, 0.0, 4.5], [5.5, 12.0, 4.5]);
    let [(_, part)] = parts.as_slice() else {
        panic!("{parts:?}")
    };
    let drop = 1.0 - (1.0 - 0.75_f64 * 0.75).sqrt();
    let height = part.holes[0].centre.y / 25.4;
    assert!((height - 1.5 - drop).abs() < 1e-6, "{height}");
    assert_eq!((part.quantity.as_drawn, part.quantity.mirrored), (4, 0));
}
