//! Factors pose by pose against the proof's worst ones.

#![allow(clippy::expect_used, reason = "a test stops where it fails")]

mod common;

use approx::assert_relative_eq;
use trammel_analysis::{
    FactorRequest, ProofDepth, ProofPart, ProofRow, WorstPose, factors_over, prove,
};
use trammel_build::{Build, Side};
use trammel_strength::clearance::Pair;

fn drawn_rows(build: &Build) -> Vec<ProofRow> {
    let proof = prove(build, ProofDepth::Full, &|| false).expect("not called off");
    let drawn = |row: &ProofRow| row.has_a_curve() && row.factor.is_some();
    proof.rows.into_iter().filter(drawn).collect()
}

fn asked(row: &ProofRow) -> FactorRequest {
    FactorRequest {
        axle: row.axle,
        side: row.side.unwrap_or(Side::Left),
        part: row.part,
        check: row.check,
        load_case: row.load_case.clone().unwrap_or_default(),
    }
}

#[test]
fn at_the_worst_pose_the_factor_is_that_of_the_row() {
    let build = common::demo("lifted");
    let rows = drawn_rows(&build);
    assert!(rows.len() > 30, "{}", rows.len());
    for part in [ProofPart::Steering, ProofPart::Gap(Pair::TieRodAndTyre)] {
        assert!(rows.iter().any(|row| row.part == part), "{}", part.label());
    }
    for row in rows {
        let pose = row.pose.expect("a pose");
        let found = factors_over(&build, &asked(&row), &[pose]);
        let name = format!("{} {} {:?}", row.part.label(), row.check, row.load_case);
        assert_eq!(found.len(), 1, "{name}");
        assert_relative_eq!(
            found[0].factor,
            row.factor.expect("a factor"),
            max_relative = 1e-6
        );
    }
}

#[test]
fn what_is_not_there_has_no_factors() {
    let build = common::demo("lifted");
    let rows = drawn_rows(&build);
    let here = [WorstPose {
        travel: 0.0,
        rack: 0.0,
    }];
    let loaded = rows.iter().find(|row| row.load_case.is_some());
    let ask = asked(loaded.expect("a row under a load"));
    let unknown = FactorRequest {
        load_case: "no such case".into(),
        ..ask.clone()
    };
    assert_eq!(factors_over(&build, &unknown, &here), []);
    let far = [WorstPose {
        travel: 5000.0,
        rack: 0.0,
    }];
    assert_eq!(factors_over(&build, &ask, &far), [], "out of reach");
}
