//! The best spot outside boxes where no joint may be, against maps and against places all around.

use super::*;
use trammel_tuning::{Block, best_spot_clear_of};

fn about(place: Point, half: Vector) -> Block {
    Block {
        low: place - half,
        high: place + half,
    }
}

fn stations() -> Stations {
    Stations::even(-100.0, 125.0, 21, vec![0.0]).unwrap()
}

/// The least score of a fine map's cells outside the boxes.
fn least_on_map(
    corner: &Corner,
    plane: Plane,
    centre: Point,
    size: f64,
    scoring: Scoring,
    blocks: &[Block],
) -> f64 {
    let frame = MapFrame::new(plane, centre, [size; 2], [241; 2]).unwrap();
    let mut map = ToeMap::new(corner, TieRodJoint::Inner, frame, &stations()).unwrap();
    map.complete();
    let mut least = f64::INFINITY;
    for row in 0..frame.rows() {
        for column in 0..frame.columns() {
            let place = frame.place(column as f64, row as f64);
            if let Cell::Scored(score) = map.cell(column, row)
                && !blocks.iter().any(|b| b.holds(place))
            {
                least = least.min(score.by(scoring));
            }
        }
    }
    least
}

#[test]
fn no_clear_cell_of_a_map_is_better() {
    let corner = common::behind();
    for scoring in [Scoring::Rms, Scoring::Largest] {
        let search = Search {
            step: Some(1.0),
            ..search(Movable::Inner, Ways::FrontPlane, scoring, &stations())
        };
        let plain = best_spot(&corner, &search).unwrap();
        let at = plain.exact.tie_rod.inner;
        let boxes = [
            vec![about(at, Vector::new(500.0, 12.0, 8.0))],
            // The second box shuts the nearest way out of the first.
            vec![
                about(at, Vector::new(500.0, 12.0, 8.0)),
                about(
                    at + Vector::new(0.0, 14.0, 6.0),
                    Vector::new(500.0, 9.0, 9.0),
                ),
                about(
                    at - Vector::new(0.0, 14.0, 6.0),
                    Vector::new(500.0, 9.0, 9.0),
                ),
            ],
        ];
        for blocks in boxes {
            let found = best_spot_clear_of(&corner, &search, &blocks).unwrap();
            let value = found.exact.score.by(scoring);
            let on_map = least_on_map(&corner, Plane::Front, at, 80.0, scoring, &blocks);
            assert!(
                value <= on_map * (1.0 + 1e-9),
                "{scoring:?}: {value} {on_map}"
            );
            // Cells lie a third of a millimetre apart, and the floor of the valley is steep.
            assert!(value > 0.7 * on_map, "{scoring:?}: {value} {on_map}");
            let whole = found.snapped.unwrap();
            for rod in [found.exact.tie_rod, whole.tie_rod] {
                assert!(
                    !blocks.iter().any(|b| b.holds(rod.inner)),
                    "{:?}",
                    rod.inner
                );
            }
            assert_eq!(whole.tie_rod.inner.z.fract(), 0.0);
            assert!(whole.score.by(scoring) >= value * (1.0 - 1e-9));
            assert_eq!(found.without_keep_outs, Some(plain.least));
        }
    }
}

#[test]
fn boxes_out_of_the_way_change_nothing() {
    let corner = common::behind();
    let search = search(
        Movable::Inner,
        Ways::FrontPlane,
        Scoring::Largest,
        &stations(),
    );
    let plain = best_spot(&corner, &search).unwrap();
    let aside = plain.exact.tie_rod.inner + Vector::new(0.0, 0.0, 60.0);
    let found = best_spot_clear_of(&corner, &search, &[about(aside, Vector::repeat(40.0))]);
    assert_eq!(found.unwrap(), plain);
}

/// Both joints, or one every way: outside the box, and of thousands of places about it, and about the place without the
/// box, none that is clear is better than what counts as equal.
#[test]
fn valleys_are_followed_round_a_box() {
    let corner = common::behind();
    for (movable, ways) in [
        (Movable::Both, Ways::FrontPlane),
        (Movable::Inner, Ways::Free),
        (Movable::Inner, Ways::SidePlane),
        (Movable::Inner, Ways::PlanPlane),
    ] {
        let search = search(movable, ways, Scoring::Rms, &stations());
        let plain = best_spot(&corner, &search).unwrap();
        let blocks = [about(
            plain.exact.tie_rod.inner,
            Vector::new(30.0, 6.0, 6.0),
        )];
        let found = best_spot_clear_of(&corner, &search, &blocks).unwrap();
        let inner = found.exact.tie_rod.inner;
        assert!(!blocks[0].holds(inner), "{movable:?} {ways:?}: {inner}");
        let least = found.least.rms;
        assert!(least >= plain.least.rms - 1e-12);
        let mut state = 1_u64;
        let mut next = || {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1);
            (state >> 33) as f64 / f64::from(1_u32 << 30) - 1.0
        };
        let free = match ways {
            Ways::FrontPlane => [0.0, 1.0, 1.0],
            Ways::SidePlane => [1.0, 0.0, 1.0],
            Ways::PlanPlane => [1.0, 1.0, 0.0],
            _ => [1.0; 3],
        };
        let off = |next: &mut dyn FnMut() -> f64| Vector::from(free.map(|f| 20.0 * f * next()));
        for n in 0..4000 {
            let from = if n % 2 == 0 { found.exact } else { plain.exact };
            let mut rod = from.tie_rod;
            rod.inner += off(&mut next);
            if movable == Movable::Both {
                rod.outer += off(&mut next);
            }
            if !blocks[0].holds(rod.inner)
                && let Ok(linkage) = Linkage::new(&Corner {
                    tie_rod: rod,
                    ..corner
                })
                && let Ok(curves) = ToeCurves::of(&linkage, &stations())
            {
                let value = curves.score().rms;
                assert!(
                    value > least - 1e-9,
                    "{movable:?} {ways:?}: {value} {least}"
                );
            }
        }
    }
}

#[test]
fn with_no_clear_place_within_reach_that_is_said() {
    let corner = common::behind();
    let search = search(Movable::Inner, Ways::FrontPlane, Scoring::Rms, &stations());
    let all = about(corner.tie_rod.inner, Vector::repeat(400.0));
    let found = best_spot_clear_of(&corner, &search, &[all]);
    assert_eq!(found, Err(SearchFault::NoneClear));
}

/// The side view and the plan: no cell of the map in that plane is better than what counts as equal.
#[test]
fn the_best_spot_of_a_plane_is_its_maps_least() {
    let corner = common::behind();
    for (ways, plane) in [
        (Ways::SidePlane, Plane::Side),
        (Ways::PlanPlane, Plane::Plan),
    ] {
        for scoring in [Scoring::Rms, Scoring::Largest] {
            let found = best_spot(&corner, &search(Movable::Inner, ways, scoring, &stations()));
            let found = found.unwrap();
            let by = found.exact.tie_rod.inner - corner.tie_rod.inner;
            let depth = if plane == Plane::Side { by.y } else { by.z };
            assert_eq!(depth, 0.0, "{ways:?}");
            let centre = found.exact.tie_rod.inner;
            let on_map = least_on_map(&corner, plane, centre, 120.0, scoring, &[]);
            let equal = 0.001_f64.to_radians();
            assert!(
                found.exact.score.by(scoring) <= on_map + equal * (1.0 + 1e-6),
                "{ways:?} {scoring:?}: {} {on_map}",
                found.exact.score.by(scoring)
            );
        }
    }
}
