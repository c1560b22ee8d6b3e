//! The worst pose is worst.

use super::*;

/// No pose of a fine grid is worse than the one that was found, but for the refinement's last step.
#[test]
fn the_worst_pose_is_worst() {
    let linkage = linkage();
    let parts = [named("rack end", rack_end("1/2-20"))];
    let proof = proof_of(&linkage, &parts);
    let case = default_cases()
        .into_iter()
        .find(|case| case.name == "rock, rearward")
        .unwrap();
    let row = proof
        .rows
        .iter()
        .find(|row| {
            row.check == Check::RackFaceYield && row.load_case.as_deref() == Some("rock, rearward")
        })
        .unwrap();
    let PartKind::RackEnd(part) = &parts[0].kind else {
        unreachable!()
    };
    let mut worst = 0.0_f64;
    for i in 0..=70 {
        for j in 0..=70 {
            let (travel, rack) = (-35.0 + 1.5 * f64::from(i), -35.0 + f64::from(j));
            let pose = linkage.pose(travel, rack).unwrap();
            let load = scene().load(&case, &linkage, &pose, 1.0).unwrap();
            let forces = Equilibrium::at(&linkage, &pose)
                .unwrap()
                .under(&load)
                .unwrap();
            let stress = part.end.under(forces.force_on_inner_joint, rack).unwrap();
            worst = worst.max(stress.rack_face.von_mises());
        }
    }
    assert!(row.value >= worst * (1.0 - 1e-6), "{} {worst}", row.value);
    assert_relative_eq!(row.value, worst, max_relative = 1e-2);
}

/// Looked at again at the pose that it names, a row's part is as bad as the row says.
#[test]
fn a_row_says_what_its_part_has_at_its_pose() {
    let (linkage, parts, cases) = (linkage(), parts(), default_cases());
    let fineness = Fineness {
        travels: 5,
        racks: 5,
        refined: true,
    };
    let setup = setup_of(&linkage, &parts, &cases, fineness);
    let mut looked_at = 0;
    for row in prove(&setup).rows {
        let (Some(name), Some(at)) = (&row.load_case, row.pose) else {
            continue;
        };
        let case = cases.iter().find(|case| case.name == *name).unwrap();
        let pose = linkage.pose(at.travel, at.rack).unwrap();
        let there = prove_at(&setup, case, &pose);
        let again = there
            .iter()
            .find(|other| other.part == row.part && other.check == row.check)
            .unwrap();
        assert_relative_eq!(again.value, row.value, max_relative = 1e-9);
        looked_at += 1;
    }
    assert!(looked_at > 100, "{looked_at}");
}

/// Without refining, the worst pose of the grid is what is told; refining from a coarse grid finds worse, and nothing better.
#[test]
fn refining_only_finds_worse() {
    let (linkage, parts, cases) = (linkage(), parts(), default_cases());
    let standings = |refined| {
        let fineness = Fineness {
            travels: 3,
            racks: 3,
            refined,
        };
        let setup = setup_of(&linkage, &parts, &cases, fineness);
        let mut rows = prove(&setup).rows;
        rows.sort_by(|a, b| {
            let key = |row: &Row| format!("{} {:?} {:?}", row.part, row.check, row.load_case);
            key(a).cmp(&key(b))
        });
        rows
    };
    let (coarse, refined) = (standings(false), standings(true));
    assert_eq!(coarse.len(), refined.len());
    let mut found = 0;
    for (before, after) in coarse.iter().zip(&refined) {
        let name = format!("{} {} {:?}", after.part, after.check, after.load_case);
        let (Some(was), Some(is)) = (before.standing(), after.standing()) else {
            continue;
        };
        assert!(is <= was * (1.0 + 1e-12), "{name}: {was} {is}");
        if is < 0.999 * was {
            found += 1;
        }
    }
    assert!(found > 5, "{found}");
    // What is told without refining is no better than at any pose of the grid.
    let setup = setup_of(&linkage, &parts, &cases, Fineness::default());
    for row in coarse.iter().filter(|row| row.load_case.is_some()) {
        let case = cases
            .iter()
            .find(|case| row.load_case.as_ref() == Some(&case.name))
            .unwrap();
        for region in crate::loads::regions(&linkage, &case.window, &setup.reach)
            .unwrap()
            .into_iter()
            .flatten()
        {
            let fineness = Fineness {
                travels: 3,
                racks: 3,
                refined: false,
            };
            for pose in region.poses(&linkage, fineness) {
                let there = prove_at(&setup, case, &pose);
                let standing = there
                    .iter()
                    .find(|other| other.part == row.part && other.check == row.check)
                    .and_then(Row::standing);
                if let (Some(told), Some(there)) = (row.standing(), standing) {
                    assert!(told <= there * (1.0 + 1e-9), "{} {}", row.part, row.check);
                }
            }
        }
    }
}
