//! The table of poses against the kernel.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod common;

use approx::assert_relative_eq;
use common::demo;
use trammel_analysis::{
    DEFAULT_POSITIONS, Span, SweepColumn, SweepFault, SweepRequest, SweepTable,
};
use trammel_build::{AxleName, LengthUnit, Side};

fn request(side: Side) -> SweepRequest {
    SweepRequest {
        axle: AxleName::Front,
        side,
        travel: None,
        rack: None,
        unit: LengthUnit::Millimetre,
    }
}

fn span(from: f64, to: f64, n: usize) -> Option<Span> {
    Some(Span::new(from, to, n).expect("a span"))
}

fn cell(table: &SweepTable, row: usize, column: SweepColumn) -> Option<f64> {
    let at = SweepColumn::ALL
        .iter()
        .position(|c| *c == column)
        .expect("a column");
    table.rows[row][at]
}

#[test]
fn without_positions_it_is_the_builds_own_range_with_the_rack_at_centre() {
    let build = demo("good");
    let table = SweepTable::of(
        &build,
        &SweepRequest {
            unit: LengthUnit::Inch,
            ..request(Side::Left)
        },
    )
    .expect("a table");
    assert_eq!(table.rows.len(), DEFAULT_POSITIONS);
    let (first, last) = (0, DEFAULT_POSITIONS - 1);
    assert_relative_eq!(
        cell(&table, first, SweepColumn::Travel).expect("a cell"),
        -2.5,
        max_relative = 1e-12
    );
    assert_relative_eq!(
        cell(&table, last, SweepColumn::Travel).expect("a cell"),
        3.0,
        max_relative = 1e-12
    );
    assert!((0..table.rows.len()).all(|i| cell(&table, i, SweepColumn::Rack) == Some(0.0)));
    assert_eq!(table.left_out(), None);
}

#[test]
fn every_cell_is_the_kernels() {
    let build = demo("badly-placed-rack");
    let model = build.axle(AxleName::Front).expect("an axle");
    for side in [Side::Left, Side::Right] {
        let asked = SweepRequest {
            travel: span(-50.0, 60.0, 12),
            rack: span(-30.0, 30.0, 5),
            ..request(side)
        };
        let table = SweepTable::of(&build, &asked).expect("a table");
        assert_eq!(table.rows.len(), 60);
        let linkage = model.linkage(side);
        for row in 0..table.rows.len() {
            let get = |c| cell(&table, row, c).expect("a cell");
            let (travel, rack) = (get(SweepColumn::Travel), get(SweepColumn::Rack));
            assert_eq!(rack, -30.0 + 15.0 * (row / 12) as f64);
            let both = model.axle.heave(travel, rack).expect("within reach");
            let (m, other) = match side {
                Side::Left => (both.left_measures, both.right_measures),
                Side::Right => (both.right_measures, both.left_measures),
            };
            let at_design = linkage.measures(&linkage.pose(0.0, rack).expect("within reach"));
            let near = 1e-9;
            assert_relative_eq!(get(SweepColumn::Toe), m.toe.to_degrees(), epsilon = near);
            assert_relative_eq!(
                get(SweepColumn::ToeChange),
                (m.toe - at_design.toe).to_degrees(),
                epsilon = near
            );
            assert_relative_eq!(
                get(SweepColumn::Steer),
                m.steer.to_degrees(),
                epsilon = near
            );
            assert_relative_eq!(
                get(SweepColumn::OtherWheelSteer),
                other.steer.to_degrees(),
                epsilon = near
            );
            assert_relative_eq!(
                get(SweepColumn::Camber),
                m.camber.to_degrees(),
                epsilon = near
            );
            assert_relative_eq!(
                get(SweepColumn::RollCentreHeight),
                m.roll_centre_height,
                epsilon = 1e-6
            );
            assert_relative_eq!(
                get(SweepColumn::TieRodAngle),
                m.tie_rod_angle.to_degrees(),
                epsilon = near
            );
            let ackermann = both.ackermann(build.wheelbase_mm());
            match cell(&table, row, SweepColumn::Ackermann) {
                Some(a) => assert_relative_eq!(a, ackermann.expect("steered"), max_relative = 1e-6),
                None => assert_eq!(ackermann, None),
            }
        }
    }
}

/// Angles stay, lengths scale by 25.4, positions are as asked for to the last digit.
#[test]
fn units_change_lengths_only() {
    let build = demo("good");
    let inch = SweepRequest {
        travel: span(-2.0, 2.0, 5),
        unit: LengthUnit::Inch,
        ..request(Side::Left)
    };
    let mm = SweepRequest {
        travel: span(-50.8, 50.8, 5),
        ..request(Side::Left)
    };
    let (inch, mm) = (
        SweepTable::of(&build, &inch).expect("a table"),
        SweepTable::of(&build, &mm).expect("a table"),
    );
    for row in 0..5 {
        assert_eq!(
            cell(&inch, row, SweepColumn::Travel),
            Some(row as f64 - 2.0)
        );
        let both = |c| {
            (
                cell(&inch, row, c).expect("a cell"),
                cell(&mm, row, c).expect("a cell"),
            )
        };
        let (a, b) = both(SweepColumn::Castor);
        assert_relative_eq!(a, b, max_relative = 1e-12);
        for column in [
            SweepColumn::ScrubRadius,
            SweepColumn::SpringLength,
            SweepColumn::RollCentreHeight,
        ] {
            let (a, b) = both(column);
            assert_relative_eq!(a * 25.4, b, max_relative = 1e-9);
        }
        let (a, b) = both(SweepColumn::WheelRate);
        assert_relative_eq!(a, b, max_relative = 1e-9);
    }
}

#[test]
fn a_symmetric_builds_right_side_is_its_left_at_the_opposite_rack() {
    let build = demo("good");
    let left = SweepRequest {
        travel: span(-2.0, 2.0, 3),
        rack: span(-1.0, 1.0, 3),
        unit: LengthUnit::Inch,
        ..request(Side::Left)
    };
    let right = SweepRequest {
        rack: span(1.0, -1.0, 3),
        side: Side::Right,
        ..left
    };
    let (left, right) = (
        SweepTable::of(&build, &left).expect("a table"),
        SweepTable::of(&build, &right).expect("a table"),
    );
    for row in 0..9 {
        for column in SweepColumn::ALL {
            let (a, b) = (cell(&left, row, column), cell(&right, row, column));
            let sign = match column {
                SweepColumn::Rack
                | SweepColumn::Steer
                | SweepColumn::OtherWheelSteer
                | SweepColumn::InstantCentreY => -1.0,
                _ => 1.0,
            };
            match (a, b) {
                (Some(a), Some(b)) => {
                    assert_relative_eq!(a, sign * b, epsilon = 1e-7, max_relative = 1e-7);
                }
                (a, b) => assert_eq!(a, b, "{column:?}"),
            }
        }
    }
}

#[test]
fn poses_out_of_reach_are_left_out_and_told_in_one_line() {
    let build = demo("good");
    let asked = SweepRequest {
        travel: span(-40.0, 4.0, 45),
        unit: LengthUnit::Inch,
        ..request(Side::Left)
    };
    let table = SweepTable::of(&build, &asked).expect("a table");
    assert!(table.rows.len() < 45 && table.rows.len() > 7);
    assert_eq!(table.asked, 45);
    let line = table.left_out().expect("told");
    assert!(line.contains("runs out at a wheel travel of -"), "{line}");
    assert!(!line.contains('\n'));
    let asked = SweepRequest {
        rack: span(-50.0, -40.0, 2),
        travel: None,
        unit: LengthUnit::Inch,
        ..request(Side::Left)
    };
    let table = SweepTable::of(&build, &asked).expect("a table");
    assert!(table.rows.is_empty());
    assert!(
        table.left_out().expect("told").contains("rack travel of"),
        "{:?}",
        table.left_out()
    );
}

#[test]
fn requests_that_mean_nothing_are_refused() {
    let build = demo("good");
    let rear = SweepRequest {
        axle: AxleName::Rear,
        rack: span(-1.0, 1.0, 3),
        ..request(Side::Left)
    };
    assert_eq!(
        SweepTable::of(&build, &rear),
        Err(SweepFault::NoRack {
            axle: AxleName::Rear
        })
    );
    let mut front_only = build.clone();
    front_only.rear = None;
    let rear = SweepRequest { rack: None, ..rear };
    assert!(matches!(
        SweepTable::of(&front_only, &rear),
        Err(SweepFault::Build(_))
    ));
    assert!(SweepTable::of(&build, &rear).is_ok());
    let huge = SweepRequest {
        travel: span(-1.0, 1.0, 1000),
        rack: span(-1.0, 1.0, 1000),
        ..request(Side::Left)
    };
    assert_eq!(
        SweepTable::of(&build, &huge),
        Err(SweepFault::TooMany { rows: 1_000_000 })
    );
    assert!(Span::new(f64::NAN, 1.0, 3).is_err());
    assert!(Span::new(-f64::MAX, f64::MAX, 3).is_err());
    assert!(Span::new(0.0, 1.0, 1).is_err());
    assert!(Span::new(0.0, 1.0, 0).is_err());
}
