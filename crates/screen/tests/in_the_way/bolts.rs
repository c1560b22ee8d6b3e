//! The clear area on the map, and the joints' bolts.

use super::*;

#[test]
fn the_clear_area_is_shown_or_not() {
    let mut screen = in_the_way("good");
    click(&mut screen, "Show it on the map");
    assert!(!screen.state().view().tune.clear_area);
    assert!(screen.query_by_label("Move it inside").is_none());
    click(&mut screen, "Best spot");
    click(&mut screen, "Clear area");
    assert!(screen.state().view().tune.clear_area);
}

#[test]
fn bolts_are_chosen_typed_and_turned_with_one_click() {
    let mut screen = in_the_way("lifted");
    let inner = |s: &Screen| s.state().build().front.joint_bolts.inner;
    click(&mut screen, "Inner bolt: upright");
    assert_eq!(inner(&screen), Some(BoltAxis::Vertical));
    let offered = screen
        .get_by_label_contains("Turn the inner bolt fore-and-aft: ")
        .accesskit_node()
        .label()
        .expect("a label");
    let numbers: Vec<f64> = offered
        .split([' ', '°'])
        .filter_map(|w| w.parse().ok())
        .collect();
    assert!(
        numbers[0] > 12.0 && numbers[1] < 0.5 * numbers[0],
        "{offered}"
    );
    click(&mut screen, &offered);
    assert_eq!(inner(&screen), Some(BoltAxis::ForeAft));
    assert!(
        screen
            .query_by_label_contains("Turn the inner bolt")
            .is_none()
    );

    click(&mut screen, "Inner bolt: any way");
    assert_eq!(inner(&screen), Some(BoltAxis::Direction([1.0, 0.0, 0.0])));
    type_in(&mut screen, "Inner bolt, z", "0.5");
    assert_eq!(inner(&screen), Some(BoltAxis::Direction([1.0, 0.0, 0.5])));
    // No direction at all: refused.
    type_in(&mut screen, "Inner bolt, z", "0");
    type_in(&mut screen, "Inner bolt, x", "0");
    assert_eq!(inner(&screen), Some(BoltAxis::Direction([1.0, 0.0, 0.0])));
    click(&mut screen, "Inner bolt: not known");
    assert_eq!(inner(&screen), None);

    let outer = |s: &Screen| s.state().build().front.joint_bolts.outer;
    for (name, bolt) in [
        ("Outer bolt: crosswise", BoltAxis::Lateral),
        ("Outer bolt: fore-and-aft", BoltAxis::ForeAft),
        ("Outer bolt: upright", BoltAxis::Vertical),
    ] {
        click(&mut screen, name);
        assert_eq!(outer(&screen), Some(bolt));
    }
}

#[test]
fn the_clear_area_follows_the_bolt() {
    let mut screen = in_the_way("lifted");
    let joint = screen.state().build().point_mm(INNER).expect("a joint");
    let swivels = |s: &Screen| {
        let reasons = s.state().tune().blocks_at(joint).expect("known");
        reasons.iter().any(|r| r.contains("swivels"))
    };
    click(&mut screen, "Inner bolt: upright");
    wait_for_clear(&mut screen);
    assert!(swivels(&screen));
    click(&mut screen, "Inner bolt: fore-and-aft");
    wait_for_clear(&mut screen);
    assert!(!swivels(&screen));
}

/// Between the places of the map's coarse look the figures are read off; where the joint stands they are its own.
#[test]
fn where_the_joint_is_it_is_looked_at_itself() {
    let mut screen = in_the_way("badly-placed-rack");
    wait_for_clear(&mut screen);
    screen.run_steps(2);
    let own = screen.query_by_label_contains("In the way: rack end 1.9, wanted 2.0");
    assert!(own.is_some());
}
