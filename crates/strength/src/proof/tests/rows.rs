//! The rows of a proof: which there are, in which order, and what each wants.

use super::*;

#[test]
fn every_part_is_checked_under_every_case_and_the_worst_comes_first() {
    let parts = parts();
    let proof = proof_of(&linkage(), &parts);
    assert_eq!(proof.omissions, []);
    for part in &parts {
        for case in default_cases() {
            let here =
                |row: &&Row| row.part == part.name && row.load_case.as_ref() == Some(&case.name);
            assert!(
                proof.rows.iter().any(|row| here(&row)),
                "{} {}",
                part.name,
                case.name
            );
        }
    }
    let standings: Vec<f64> = proof.rows.iter().filter_map(Row::standing).collect();
    assert!(standings.is_sorted_by(|a, b| a <= b));
    let first_without = proof.rows.iter().position(|row| row.factor.is_none());
    assert!(first_without.is_none_or(|at| at == standings.len()));
    for row in &proof.rows {
        assert!(
            row.value.is_finite() && row.limit.value.is_finite(),
            "{row:?}"
        );
    }
    // What no load changes is there once.
    let once = |check| proof.rows.iter().filter(|row| row.check == check).count();
    assert_eq!(once(Check::ThreadEngagement), 1);
    assert_eq!(once(Check::WallLeft), 1);
}

/// A right corner, worked out as its mirror image, is proved as its left twin.
#[test]
fn a_mirrored_corner_has_the_same_rows() {
    let right: Corner = linkage().corner().mirrored();
    let twin = Linkage::new(&right.mirrored()).unwrap();
    let (here, there) = (proof_of(&linkage(), &parts()), proof_of(&twin, &parts()));
    assert_eq!(here, there);
}

/// A stouter thread is never worse: '3/8 or 1/2?' is answered by numbers.
#[test]
fn a_stouter_thread_stands_better() {
    let face = |thread| {
        let proof = proof_of(&linkage(), &[named("rack end", rack_end(thread))]);
        let row = proof
            .rows
            .into_iter()
            .find(|row| row.check == Check::RackFaceYield);
        row.unwrap().factor.unwrap()
    };
    assert!(face("1/2-20") > 2.0 * face("3/8-24"));
}

/// Strength wants the user's factor; lengths, angles and allowed stresses hold their own margin.
#[test]
fn each_check_wants_its_own_factor() {
    let proof = proof_of(&linkage(), &parts());
    let wanted = |check| {
        let row = proof.rows.iter().find(|row| row.check == check);
        row.map(|row| row.wanted)
    };
    for check in [
        Check::RackFaceYield,
        Check::Buckling,
        Check::ArmTubeYield,
        Check::BoltShear,
        Check::TabBearing,
    ] {
        assert_eq!(wanted(check), Some(2.0), "{check}");
        let standing = proof
            .rows
            .iter()
            .find(|row| row.check == check)
            .and_then(Row::standing);
        let factor = proof
            .rows
            .iter()
            .find(|row| row.check == check)
            .and_then(|row| row.factor);
        assert_eq!(standing, factor.map(|factor| factor / 2.0), "{check}");
    }
    for check in [
        Check::RackEndToe,
        Check::ThreadEngagement,
        Check::WallLeft,
        Check::JointRating,
        Check::WeldThroat,
        Check::Misalignment,
    ] {
        assert_eq!(wanted(check), Some(1.0), "{check}");
    }
}

/// At one pose every check of a part has one row under a case: the worse of its findings in both senses.
#[test]
fn one_row_for_each_check_at_a_pose() {
    let (linkage, parts) = (linkage(), parts());
    let setup = setup_of(&linkage, &parts, &[], Fineness::default());
    let case = default_cases()
        .into_iter()
        .find(|case| case.senses().len() == 2)
        .unwrap();
    let pose = linkage.pose(0.0, 12.0).unwrap();
    let rows = prove_at(&setup, &case, &pose);
    let equilibrium = Equilibrium::at(&linkage, &pose).unwrap();
    let PartKind::TieRod(rod) = &parts[1].kind else {
        unreachable!()
    };
    let mut worst = [0.0_f64; 2];
    for &sense in case.senses() {
        let load = scene().load(&case, &linkage, &pose, sense).unwrap();
        let tension = equilibrium.under(&load).unwrap().tie_rod_tension;
        // The rod is pushed in one sense and pulled in the other.
        rod.check(tension, |finding| match finding.check {
            Check::AxialYield => worst[0] = worst[0].max(finding.value),
            Check::Buckling => worst[1] = worst[1].max(finding.value),
            _ => {}
        });
    }
    for (check, value) in [(Check::AxialYield, worst[0]), (Check::Buckling, worst[1])] {
        let of_rod: Vec<&Row> = rows
            .iter()
            .filter(|row| row.part == "tie rod" && row.check == check)
            .collect();
        assert_eq!(of_rod.len(), 1, "{check}");
        assert!(value > 0.0, "{check}");
        assert_relative_eq!(of_rod[0].value, value, max_relative = 1e-12);
    }
    for row in &rows {
        let same = rows
            .iter()
            .filter(|other| other.part == row.part && other.check == row.check);
        assert_eq!(same.count(), 1, "{} {}", row.part, row.check);
    }
}
