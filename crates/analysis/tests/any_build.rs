//! Whatever a build looks like: no panic, no figure that is no number, no promise that is not kept.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod common;

use common::{demo, sides_apart};
use proptest::prelude::*;
use trammel_analysis::{Findings, Study, SweepColumn, SweepRequest, SweepTable};
use trammel_build::{AxleName, Build, Edit, PointName, PointRef, RackSpec, Side, TravelSpec};

/// A demo with its points thrown about, and figures that a hurried builder may type.
fn any_build() -> impl Strategy<Value = Build> {
    let name = prop::sample::select(vec!["good", "lifted", "badly-placed-rack"]);
    let throws = prop::collection::vec(prop::array::uniform3(-1.0..1.0_f64), 26);
    let size = prop::sample::select(vec![0.0, 0.2, 1.0, 4.0]);
    let travel = (0.01..20.0_f64, 0.01..20.0_f64);
    let hit = prop::array::uniform3(-1.0..1.0_f64);
    (
        name,
        throws,
        size,
        any::<bool>(),
        travel,
        0.01..8.0_f64,
        hit,
    )
        .prop_map(|(name, throws, size, apart, (bump, droop), rack, hit)| {
            let mut build = demo(name);
            if apart {
                build = sides_apart(&build);
            }
            build.front.travel = Some(TravelSpec { bump, droop });
            build.front.rack = RackSpec {
                travel: Some(rack),
                axis: Some([0.2 * hit[0], 1.0, 0.2 * hit[1]]),
                ..build.front.rack
            };
            build.hit.direction = Some(hit);
            let places = PointName::ALL
                .iter()
                .flat_map(|p| [Side::Left, Side::Right].map(|s| (*p, s)));
            for ((point, side), throw) in places.zip(throws) {
                let at = PointRef {
                    axle: AxleName::Front,
                    side,
                    point,
                };
                let Some(place) = build.point(at) else {
                    continue;
                };
                let to = std::array::from_fn(|i| place[i] + size * throw[i]);
                // A throw that makes no linkage is left out.
                if let Ok(next) = (Edit::MovePoint { point: at, to }).apply(&build) {
                    build = next;
                }
            }
            build
        })
}

fn all_finite(findings: &Findings) {
    for c in &findings.cautions {
        let figure = c
            .figure
            .is_none_or(|f| f.value.is_finite() && f.limit.is_finite());
        let worst = c
            .worst
            .is_none_or(|w| w.travel.is_finite() && w.rack.is_finite());
        let values = c
            .remedies
            .iter()
            .all(|r| r.value.is_none_or(f64::is_finite));
        assert!(
            figure && worst && values && c.severity().is_finite(),
            "{c:?}"
        );
        let texts = c.remedies.iter().map(|r| &r.text);
        for text in texts.chain([&c.headline, &c.detail, &c.reason]) {
            assert!(!text.contains("NaN") && !text.contains("inf"), "{text}");
        }
    }
    for end in &findings.rack_ends {
        assert!(end.factor.is_finite() && end.factor >= 0.0, "{end:?}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, ..ProptestConfig::default() })]

    #[test]
    fn findings_are_numbers_and_remedies_can_be_applied(build in any_build()) {
        let Ok(study) = Study::of(&build) else { return Ok(()) };
        let findings = Findings::of(&build, &study);
        all_finite(&findings);
        for remedy in findings.cautions.iter().flat_map(|c| &c.remedies) {
            match remedy.edit.as_ref().map(|e| e.apply(&build)) {
                None | Some(Ok(_)) => {}
                // A larger thread or another grade changes no linkage, so it can only fail where the build was unusable before.
                Some(Err(fault)) => {
                    prop_assert!(false, "{}: {fault}", remedy.text);
                }
            }
        }
    }

    #[test]
    fn a_sweep_has_no_cell_that_is_no_number(build in any_build(), right in any::<bool>()) {
        let request = SweepRequest {
            axle: AxleName::Front,
            side: if right { Side::Right } else { Side::Left },
            travel: None,
            rack: None,
            unit: build.unit,
        };
        let Ok(table) = SweepTable::of(&build, &request) else { return Ok(()) };
        prop_assert!(table.rows.iter().flatten().flatten().all(|v| v.is_finite()));
        prop_assert_eq!(table.rows.iter().all(|r| r.len() == SweepColumn::COUNT), true);
        prop_assert_eq!(table.rows.len() == table.asked, table.left_out().is_none());
    }
}
