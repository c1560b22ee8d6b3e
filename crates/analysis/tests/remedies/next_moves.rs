//! Errors planted in a vehicle are read, named and cured by real moves, on both layouts.

use trammel_analysis::{NextMoves, SideNext, advice_words, next_moves};
use trammel_build::{
    Adjusted, AdjustedPart, Adjusters, AxleModel, AxleName, Build, Edit, PointName, PointRef,
    RackEndRange, ReadingRow, Session, Side, StackRange, ToeMethod, TravelMeasure, TravelSpec,
    Triple,
};
use trammel_geometry::{Corner, Linkage};
use trammel_setup::{AdjusterKind, Raw, Way};
use trammel_tuning::{Hardpoint, HeightError, RodSide, ToeCurves};

use super::common::{demo, plumb};

/// A light buggy, mm, its tie rod ahead of the steering axis or behind it; toe stays within a tenth of a degree as drawn.
fn buggy(ahead: bool) -> Build {
    let mut build = plumb(0.0, 60.0);
    let front = &mut build.front;
    front.upper_arm.front_pivot = [110.0, 235.0, 372.0];
    front.upper_arm.rear_pivot = [-130.0, 235.0, 368.0];
    front.upper_arm.ball_joint = [-11.0, 537.0, 362.0];
    front.lower_arm.front_pivot = [140.0, 200.0, 235.0];
    front.lower_arm.rear_pivot = [-140.0, 200.0, 235.0];
    front.lower_arm.ball_joint = [8.0, 560.0, 200.0];
    let (x, y, z) = if ahead {
        (95.0, 198.9, 263.3)
    } else {
        (-95.0, 209.8, 263.0)
    };
    front.tie_rod.inner = [x, y, z];
    front.tie_rod.outer = [x, 548.0, 235.0];
    front.wheel.centre = [0.0, 635.0, 260.0];
    front.wheel.loaded_radius = 260.0;
    front.travel = Some(TravelSpec {
        bump: 75.0,
        droop: 60.0,
    });
    front.rack.travel = Some(40.0);
    front.rack.face = None;
    front.rack.bore_mouth = None;
    build.limits.toe_change_deg = Some(0.2);
    build
}

/// The same with its inner joints this much further forward, outboard and up, left and right.
fn welded(drawn: &Build, off: [Triple; 2]) -> Build {
    let mut edits = vec![Edit::SeparateRight(AxleName::Front, PointName::TieRodInner)];
    for (side, [x, y, z]) in [Side::Left, Side::Right].into_iter().zip(off) {
        let point = PointRef {
            axle: AxleName::Front,
            side,
            point: PointName::TieRodInner,
        };
        let [px, py, pz] = drawn.point(point).expect("there");
        let out = if side == Side::Left { y } else { -y };
        let to = [px + x, py + out, pz + z];
        edits.push(Edit::MovePoint { point, to });
    }
    edits.iter().fold(drawn.clone(), |b, e| {
        e.apply(&b).unwrap_or_else(|f| panic!("{f}"))
    })
}

fn posed(build: &Build) -> AxleModel {
    build.axle(AxleName::Front).expect("posed")
}

/// What would be read on the true vehicle, in degrees to a thousandth.
fn read(truth: &Build, method: ToeMethod, sides: &[Side]) -> Session {
    let axle = posed(truth);
    let mut rows = Vec::new();
    for &side in sides {
        let linkage = axle.linkage(side);
        let toe = |mm: f64| {
            let pose = linkage.pose(mm, 0.0).expect("reached");
            linkage.measures(&pose).toe.to_degrees()
        };
        for place in [0.0, 25.0, 50.0, 75.0, 0.0, -25.0, -50.0, 0.0] {
            let change = ((toe(place) - toe(0.0)) * 1e3).round() / 1e3;
            rows.push(ReadingRow {
                side,
                run: 1,
                rack: 0.0,
                place,
                ride: place == 0.0,
                shown: Raw::Degrees(change.abs(), if change < 0.0 { Way::Out } else { Way::In }),
            });
        }
    }
    Session {
        date: String::new(),
        notes: String::new(),
        adjusted: Vec::new(),
        method,
        accuracy: Some(0.01),
        travel_by: TravelMeasure::Travel,
        travel_accuracy: Some(0.5),
        rows,
    }
}

fn advised(drawn: &Build, truth: &Build, adjusters: Adjusters) -> NextMoves {
    let mut build = drawn.clone();
    build.set_up.adjusters = adjusters;
    build
        .set_up
        .sessions
        .push(read(truth, ToeMethod::Degrees, &[Side::Left, Side::Right]));
    next_moves(&build).unwrap_or_else(|f| panic!("{f}"))
}

/// Largest toe change of the true corner once the advised moves are made on it, degrees.
fn afterwards(truth: &Build, next: &NextMoves, side: &SideNext) -> f64 {
    let corner = *posed(truth).linkage(side.readings.side).corner();
    largest(&side.advice.best.shift.on(&corner), next)
}

fn largest(corner: &Corner, next: &NextMoves) -> f64 {
    let linkage = Linkage::new(corner).expect("builds");
    let curves = ToeCurves::of(&linkage, &next.stations).expect("swept");
    curves
        .changes()
        .fold(0.0, |m: f64, c| m.max(c.abs()))
        .to_degrees()
}

fn all() -> Adjusters {
    Adjusters {
        rack_end: Some(RackEndRange {
            turns_out: 5.0,
            turns_in: 5.0,
            only: None,
        }),
        washers: Some(stack(1.5, 5, 5)),
        washers_along: None,
        shims: Some(stack(1.0, 4, 4)),
        rod: None,
    }
}

fn stack(thickness: f64, more: u32, fewer: u32) -> StackRange {
    StackRange {
        thickness,
        more,
        fewer,
        only: None,
    }
}

#[test]
fn a_height_error_is_named_and_the_move_cures_the_true_vehicle_on_both_layouts() {
    let mut slopes = Vec::new();
    for ahead in [false, true] {
        let drawn = buggy(ahead);
        for up in [5.0, -5.0] {
            let truth = welded(&drawn, [[0.0, 0.0, up]; 2]);
            let next = advised(&drawn, &truth, all());
            assert!(next.cured() && !next.adjusters_assumed, "{ahead} {up}");
            for side in &next.sides {
                let cause = side.cause.as_ref().expect("told");
                let (rod, height) = (
                    if ahead {
                        RodSide::Ahead
                    } else {
                        RodSide::Behind
                    },
                    if up > 0.0 {
                        HeightError::InnerTooHigh
                    } else {
                        HeightError::InnerTooLow
                    },
                );
                assert_eq!((cause.side, cause.height()), (rod, Some(height)));
                // High inner joint: inner down or outer up, ahead and behind alike.
                let shift = &side.advice.best.shift;
                assert!((shift.outer.z - shift.inner.z) * up > 0.0, "{shift:?}");
                let then = afterwards(&truth, &next, side);
                assert!(then <= 0.2, "{ahead} {up}: {then}");
                if up > 0.0 {
                    slopes.push(cause.shape.as_ref().expect("both ways").slope.value);
                }
            }
        }
    }
    // The same error reads IN in bump on one layout and OUT on the other.
    assert!(slopes[0] * slopes[2] < 0.0, "{slopes:?}");
}

#[test]
fn unlike_sides_get_moves_of_their_own() {
    for ahead in [false, true] {
        let drawn = buggy(ahead);
        let truth = welded(&drawn, [[0.0, 0.0, 4.5], [0.0, 0.0, -4.5]]);
        let next = advised(&drawn, &truth, all());
        let turned: Vec<f64> = next
            .sides
            .iter()
            .map(|s| s.advice.best.shift.outer.z - s.advice.best.shift.inner.z)
            .collect();
        assert!(turned[0] > 1.0 && turned[1] < -1.0, "{turned:?}");
        for side in &next.sides {
            assert!(afterwards(&truth, &next, side) <= 0.2);
        }
    }
}

#[test]
fn only_washers_moves_only_washers() {
    for ahead in [false, true] {
        let drawn = buggy(ahead);
        let truth = welded(&drawn, [[0.0, 0.0, 4.5]; 2]);
        let washers = Adjusters {
            washers: Some(stack(1.5, 5, 0)),
            ..Adjusters::default()
        };
        let next = advised(&drawn, &truth, washers);
        assert_eq!(next.shims, 0);
        for side in &next.sides {
            let moves = &side.advice.best.moves;
            assert!(
                matches!(moves[..], [m] if matches!(m.kind, AdjusterKind::OuterWasher { .. }) && m.steps == 3),
                "{moves:?}"
            );
            assert!(afterwards(&truth, &next, side) <= 0.2);
        }
    }
}

#[test]
fn washers_along_an_upside_down_bolt_go_the_other_way() {
    let mut drawn = buggy(false);
    let truth = welded(&drawn, [[0.0, 0.0, 4.5]; 2]);
    drawn.front.joint_bolts.outer = Some(trammel_build::BoltAxis::Direction([0.0, 0.0, -1.0]));
    let washers = Adjusters {
        washers: Some(stack(1.5, 0, 5)),
        ..Adjusters::default()
    };
    let next = advised(&drawn, &truth, washers);
    let moves = &next.sides[0].advice.best.moves;
    assert!(matches!(moves[..], [m] if m.steps == -3), "{moves:?}");
}

#[test]
fn an_adjuster_of_one_side_only_moves_that_side_only() {
    let drawn = buggy(false);
    let truth = welded(&drawn, [[0.0, 0.0, 4.0]; 2]);
    let shims = StackRange {
        only: Some(Side::Right),
        ..stack(1.0, 0, 5)
    };
    let adjusters = Adjusters {
        shims: Some(shims),
        ..Adjusters::default()
    };
    let next = advised(&drawn, &truth, adjusters);
    let [left, right] = &next.sides[..] else {
        panic!("two sides")
    };
    assert_eq!(next.shims, 0, "they don't raise both sides");
    assert!(left.advice.best.moves.is_empty() && !left.advice.cured);
    let moves = &right.advice.best.moves;
    assert!(
        matches!(moves[..], [m] if m.kind == AdjusterKind::RackShim && m.steps == -4),
        "{moves:?}"
    );
    assert!(afterwards(&truth, &next, right) <= 0.2);
    // Logged as done, they are counted on that side alone.
    let mut build = drawn;
    build.set_up.adjusters = adjusters;
    let both = [Side::Left, Side::Right];
    build
        .set_up
        .sessions
        .push(read(&truth, ToeMethod::Degrees, &both));
    let mended = welded(&truth, [[0.0; 3], [0.0, 0.0, -4.0]]);
    let mut second = read(&mended, ToeMethod::Degrees, &both);
    second.adjusted.push(Adjusted {
        part: AdjustedPart::Shims,
        side: Side::Right,
        by: -4.0,
    });
    build.set_up.sessions.push(second);
    let next = next_moves(&build).expect("advised");
    let now: Vec<f64> = next.sides.iter().map(|s| s.readings.now.inner.z).collect();
    assert_eq!(now, [0.0, -4.0]);
    assert!(next.sides.iter().all(|s| s.learned.misfit < 1.5));
}

#[test]
fn what_no_adjuster_cures_is_told_where_to_weld() {
    for ahead in [false, true] {
        let drawn = buggy(ahead);
        let truth = welded(&drawn, [[0.0, 0.0, 18.0]; 2]);
        let rack_end = Adjusters {
            rack_end: Some(RackEndRange {
                turns_out: 1.0,
                turns_in: 1.0,
                only: None,
            }),
            ..Adjusters::default()
        };
        let next = advised(&drawn, &truth, rack_end);
        assert!(!next.cured());
        for side in &next.sides {
            let weld = side.advice.reweld.expect("told");
            assert!((weld.by.z + 18.0).abs() < 3.0, "{weld:?}");
            let mut corner = *posed(&truth).linkage(side.readings.side).corner();
            corner.tie_rod.inner += weld.by;
            let then = largest(&corner, &next);
            assert!(then < 0.2, "{ahead}: {then}");
            let words = advice_words::reweld(side, drawn.unit).expect("said");
            assert!(words.contains("must be welded elsewhere"), "{words}");
        }
    }
}

#[test]
fn the_readings_say_which_errors_they_cant_tell_apart() {
    let drawn = buggy(false);
    let truth = welded(&drawn, [[0.0, 0.0, 5.0]; 2]);
    let next = advised(&drawn, &truth, all());
    for side in &next.sides {
        let told = &side.learned.told;
        assert!((1..=4).contains(&told.figures), "{}", told.figures);
        // Raising the inner joint or lowering the outer one reads the same.
        let has = |point, group: &[trammel_tuning::Coordinate]| {
            group
                .iter()
                .any(|c| c.point == point && c.axis == trammel_tuning::Axis::Z)
        };
        let both = |g: &Vec<_>| has(Hardpoint::TieRodInner, g) && has(Hardpoint::TieRodOuter, g);
        assert!(told.alike.iter().any(both), "{:?}", told.alike);
        assert!(!told.unseen.is_empty());
    }
}

#[test]
fn a_tape_over_both_tyres_says_that_it_cant_tell_the_wheels_apart() {
    let drawn = buggy(false);
    let truth = welded(&drawn, [[0.0, 0.0, 5.0]; 2]);
    let mut session = read(&truth, ToeMethod::Degrees, &[Side::Left]);
    assert_eq!(advice_words::read_together(&session), None);
    session.method = ToeMethod::Tape(500.0);
    session.accuracy = Some(0.5);
    for row in &mut session.rows {
        if let Raw::Degrees(size, way) = row.shown {
            let rear = 2.0 * 500.0 * way.signed(size).to_radians().sin();
            row.shown = Raw::Pair {
                front: 1200.0,
                rear: 1200.0 + rear,
            };
        }
    }
    assert!(advice_words::read_together(&session).is_some());
    let mut build = drawn;
    build.set_up.sessions.push(session);
    let next = next_moves(&build).expect("advised");
    let largest: Vec<f64> = next.sides.iter().map(|s| s.advice.now.largest).collect();
    assert_eq!(largest.len(), 2, "each wheel is given half");
    assert!((largest[0] - largest[1]).abs() < 1e-9, "{largest:?}");
}

/// What the measured demo's own remarks say of how it was built, inches: inner, outer, lower ball joint; outboard and up.
const MEASURED: [[[f64; 2]; 3]; 2] = [
    [[-0.04, 0.09], [0.0, -0.03], [0.0, 0.0]],
    [[0.05, 0.06], [0.0, 0.0], [0.03, 0.0]],
];

#[test]
fn the_measured_demo_reads_as_the_kart_that_it_says() {
    let build = demo("measured");
    let drawn = posed(&build);
    let session = &build.set_up.sessions[0];
    let sheets = session.sheets(&drawn, build.unit).expect("sheets");
    for (sheet, off) in sheets.iter().zip(MEASURED) {
        let mut corner = *drawn.linkage(sheet.side).corner();
        let joints = [
            &mut corner.tie_rod.inner,
            &mut corner.tie_rod.outer,
            &mut corner.lower_arm.ball_joint,
        ];
        for (joint, [out, up]) in joints.into_iter().zip(off) {
            joint.y += out * 25.4;
            joint.z += up * 25.4;
        }
        let linkage = Linkage::new(&corner).expect("builds");
        for p in sheet.sheet.reduce().expect("reduced").readings.points() {
            let toe = |travel| {
                let pose = linkage.pose(travel, p.rack).expect("reached");
                linkage.measures(&pose).toe
            };
            let off = (p.change - (toe(p.travel) - toe(0.0))).abs();
            assert!(off < 3.5 * p.deviation, "{:?} {p:?} {off}", sheet.side);
        }
    }
}

#[test]
fn the_measured_demo_strays_and_its_moves_cure_it() {
    let build = demo("measured");
    let next = next_moves(&build).expect("advised");
    assert!(next.cured());
    let left = &next.sides[0];
    assert!(left.advice.now.largest > next.limit);
    assert!(left.advice.best.confidence > 0.8);
    assert!(!next.adjusters_assumed);
    assert_eq!(next.stations.racks(), [0.0]);
}
