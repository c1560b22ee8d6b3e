//! What no load changes: gaps and swivel over travel and lock.

use super::*;

/// Every pair is there once, at a pose no grid pose of which is tighter.
#[test]
fn gaps_are_found_over_travel_and_lock() {
    let linkage = linkage();
    let sizes = Thicknesses {
        tie_rod: 19.05,
        upper_arm: 25.4,
        lower_arm: 25.4,
        spring: 60.0,
        tyre_diameter: 545.0,
        tyre_width: 175.0,
        rim_diameter: 254.0,
        rim_width: 150.0,
        rim_thickness: 4.0,
    };
    let clearances = Clearances::new(sizes, 10.0).unwrap();
    let proof = prove(&Setup {
        clearances: Some(clearances),
        ..setup_of(&linkage, &[], &[], Fineness::default())
    });
    assert_eq!(proof.rows.len(), Pair::ALL.len());
    for pair in Pair::ALL {
        let row = proof
            .rows
            .iter()
            .find(|row| row.part == pair.to_string())
            .unwrap();
        let mut least = f64::INFINITY;
        for (travel, rack) in [
            (-70.0, -35.0),
            (-70.0, 35.0),
            (70.0, 35.0),
            (0.0, 20.0),
            (33.0, -35.0),
        ] {
            let pose = linkage.pose(travel, rack).unwrap();
            least = least.min(
                clearances
                    .gap(pair, linkage.corner(), &pose)
                    .unwrap()
                    .distance,
            );
        }
        assert!(row.value <= least + 2e-3, "{pair} {} {least}", row.value);
        assert_eq!(row.factor.unwrap(), row.value / 10.0);
    }
}

/// What no load changes is looked at in every pose: the ball swivels as far as the rod leans out of the plane across its bolt.
#[test]
fn a_rod_ends_swivel_is_looked_at_over_travel_and_lock() {
    let (linkage, parts) = (linkage(), parts());
    let proof = proof_of(&linkage, &parts);
    let rows: Vec<&Row> = proof
        .rows
        .iter()
        .filter(|row| row.check == Check::Misalignment)
        .collect();
    let &[row] = rows.as_slice() else {
        panic!("one row: {rows:?}");
    };
    assert_eq!(
        (row.part.as_str(), &row.load_case),
        ("outer rod end", &None)
    );
    let at = row.pose.unwrap();
    assert!(at.travel.abs() > 60.0, "{at:?}");
    assert_relative_eq!(row.standing().unwrap(), row.factor.unwrap());
    // Asked there alone it says the same.
    let setup = setup_of(&linkage, &parts, &[], Fineness::default());
    let pose = linkage.pose(at.travel, at.rack).unwrap();
    let alone = stance_at(&setup, &pose);
    assert_eq!(
        (alone.len(), alone[0].check, &alone[0].part),
        (1, row.check, &row.part)
    );
    assert_relative_eq!(alone[0].value, row.value, max_relative = 1e-9);
}

/// How far a ball swivels is known of the rod's ends only: the arms' joints have no rod that leans.
#[test]
fn swivel_is_looked_at_on_the_rod_only() {
    let linkage = linkage();
    let pose = linkage.pose(0.0, 0.0).unwrap();
    let joint = Joint::default()
        .with_misalignment(ListedRodEnd::all()[4].misalignment().unwrap())
        .unwrap();
    let rows_at = |place| {
        let mounted = Mounted::new(place, Body::Upright, Vector3::z()).unwrap();
        let parts = [named("joint", PartKind::Joint(place, Some(mounted), joint))];
        stance_at(&setup_of(&linkage, &parts, &[], Fineness::default()), &pose).len()
    };
    assert_eq!(rows_at(JointPlace::TieRodOuter), 1);
    assert_eq!(rows_at(JointPlace::TieRodInner), 1);
    assert_eq!(rows_at(JointPlace::BallJoint(ArmName::Lower)), 0);
}
