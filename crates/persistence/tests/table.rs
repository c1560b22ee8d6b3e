//! Points as a table: out, in, and what is refused.
#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests fail as tests do"
)]

mod common;

use LengthUnit::{Inch, Millimetre};
use common::{any_build, good};
use proptest::prelude::*;
use trammel_build::{AxleName, Edit, LengthUnit, PointName, PointRef, Side};
use trammel_persistence::{Separator, read_points, write_points};

fn left(point: PointName) -> PointRef {
    PointRef::left(AxleName::Front, point)
}

#[test]
fn the_table_of_the_good_demo() {
    let table = write_points(&good(), Separator::Comma);
    let lines: Vec<&str> = table.lines().collect();
    assert_eq!(lines[0], "point,x (in),y (in),z (in)");
    assert_eq!(lines[1], "front.upper_arm.front_pivot,4.5,7.75,12.875");
    assert!(lines.contains(&"front.tie_rod.inner,-3.5,6.5625,8.75"));
    assert!(lines.contains(&"front.rack.face,-3.5,4.6875,8.75"));
    assert!(lines.contains(&"rear.wheel.centre,-66,25.5,10.5"));
    assert_eq!(lines.len(), 1 + 13 + 11);
    let tabs = write_points(&good(), Separator::Tab);
    assert_eq!(tabs, table.replace(',', "\t"));
}

#[test]
fn tables_read_as_their_maker_means_them() {
    let inner = (left(PointName::TieRodInner), [-3.5, 6.5625, 8.75]);
    for table in [
        "point,x (in),y (in),z (in)\ntie_rod.inner,-3 1/2,6 9/16,8.75\n",
        "point,x (in),y (in),z (in)\nfront.tie_rod.inner, -3.5 , 6.5625, 8-3/4\n",
        "\u{feff}Point\tX [inch]\tY [inch]\tZ [inch]\r\nfront.left.tie_rod.inner\t-3.5\t6.5625\t8.75\r\n",
        "point;x in;y in;z in\ntie_rod.inner;-3.5;6.5625;8.75",
        "z_in,note,y_in,x_in,point\n8.75,from the donor,6.5625,-3.5,tie_rod.inner\n,,,,\n\n",
        "point,x (in),y (in),z (in)\ntie_rod.inner,\"-3 1/2\"\"\",\"6 9/16\"\"\",8 3/4\"\n",
        "point,x (in),y (in),z (in)\ntie_rod.inner,-35e-1,6.5625E+0,222.25 mm\n",
        "point,x (mm),y (mm),z (mm)\ntie_rod.inner,-88.9,166.6875,222.25\n",
    ] {
        assert_eq!(read_points(table, Inch), Ok(vec![inner]), "{table}");
    }
    let right = PointRef {
        axle: AxleName::Rear,
        side: Side::Right,
        point: PointName::WheelCentre,
    };
    let table = "point,x (in),y (in),z (in)\nrear.right.wheel.centre,-66,-25.5,10.5\n";
    let mm = [-66.0 * 25.4, -25.5 * 25.4, 266.7];
    let read = read_points(table, Millimetre).expect("points");
    assert_eq!(read[0].0, right);
    assert!(read[0].1.iter().zip(mm).all(|(a, b)| (a - b).abs() < 1e-7));
}

#[test]
fn what_can_not_be_taken_is_refused_with_its_row_and_column() {
    let heading = "point,x (in),y (in),z (in)\n";
    for (table, said) in [
        ("", "the table holds no points"),
        (heading, "the table holds no points"),
        (
            "tie_rod.inner,1,2,3\n",
            "row 1: found `tie_rod.inner, 1, 2, 3`, expected the heading `point, x (in), y (in), z (in)`, or with `(mm)`",
        ),
        (
            "point,x (in),y (in)\n",
            "row 1: there is no column `z`; expected the heading `point, x (in), y (in), z (in)`, or with `(mm)`",
        ),
        (
            "point,x,y,z\ntie_rod.inner,1,2,3\n",
            "row 1, column x: the heading has no unit; expected `x (in)` or `x (mm)`",
        ),
        (
            "point,x (in),y (in),z\ntie_rod.inner,1,2,3\n",
            "row 1, column z: the heading has no unit; expected `z (in)` or `z (mm)`",
        ),
        (
            "point,x (cubits),y (in),z (in)\n",
            "row 1, column x (cubits): the heading has the unit `cubits`; expected `in` or `mm`",
        ),
        (
            "point,x (in),y (mm),z (in)\n",
            "row 1, column y (mm): the unit is not that of the other columns; expected one unit for x, y and z",
        ),
        (
            "point,x (in),y (in),z (in),x (in)\n",
            "row 1, column x (in): the heading stands here a second time; expected it once",
        ),
        (
            &format!("{heading}tie_rod.inner,1,2,3\ntie_rod.outer,1,2\n"),
            "row 3: the row has 3 cells; expected 4",
        ),
        (
            &format!("{heading}tierod.inner,1,2,3\n"),
            "row 2, column point: `tierod.inner` is no point; the nearest known name is `front.tie_rod.inner`",
        ),
        (
            &format!("{heading}rear.right.wheel.center,1,2,3\n"),
            "row 2, column point: `rear.right.wheel.center` is no point; the nearest known name is `rear.right.wheel.centre`",
        ),
        (
            &format!("{heading}the left thing,1,2,3\n"),
            "row 2, column point: `the left thing` is no point; expected a name such as `front.tie_rod.inner`",
        ),
        (
            &format!("{heading}tie_rod.inner,1,2,3\n\nfront.tie_rod.inner,1,2,3\n"),
            "row 4, column point: front.tie_rod.inner stands in row 2 already; expected it once",
        ),
        (
            &format!("{heading}tie_rod.inner,1,,3\n"),
            "row 2, column y (in): `` can't be read as a length: there is no number in it; expected a length such as 12 5/8, 12.625, 1' 3-1/2\" or 320 mm",
        ),
        (
            &format!("{heading}tie_rod.inner,1,\"2,5\",3\n"),
            "row 2, column y (in): `2,5` can't be read as a length: its comma may stand for a decimal point or for thousands; expected a length such as 12 5/8, 12.625, 1' 3-1/2\" or 320 mm",
        ),
        (
            &format!("{heading}tie_rod.inner,1,2,NaN\n"),
            "row 2, column z (in): `NaN` can't be read as a length: `NaN` is no unit that is known here; expected a length such as 12 5/8, 12.625, 1' 3-1/2\" or 320 mm",
        ),
    ] {
        let fault = read_points(table, Inch).expect_err(table);
        assert_eq!(fault.to_string(), said, "{table}");
    }
}

#[test]
fn a_table_too_large_is_not_read() {
    let fault = read_points(&"x".repeat(5 << 20), Inch).expect_err("too large");
    assert!(fault.to_string().contains("5242880 bytes"), "{fault}");
    // 4 MiB to the byte are looked into.
    let fault = read_points(&"x".repeat(4 << 20), Inch).expect_err("no heading");
    assert!(!fault.to_string().contains("bytes"), "{fault}");
}

proptest! {
    #[test]
    fn points_come_back_to_the_last_bit_and_as_one_edit(build in any_build(), tab in any::<bool>()) {
        let separator = if tab { Separator::Tab } else { Separator::Comma };
        let mut unlocked = build;
        unlocked.locked.clear();
        let points = read_points(&write_points(&unlocked, separator), unlocked.unit).expect("points");
        for (at, triple) in &points {
            prop_assert_eq!(unlocked.point(*at).map(|t| t.map(f64::to_bits)), Some(triple.map(f64::to_bits)));
        }
        prop_assert_eq!(Edit::MovePoints(points).apply(&unlocked), Ok(unlocked.clone()));
    }

    #[test]
    fn any_table_is_read_or_refused(
        text in any::<String>(),
        near in "point[,\t;]x \\((in|mm)\\),y \\(in\\),z[ _(]in\\)?\n([a-z._]{0,12}[,\t\"0-9/. -]{0,12}\n){0,4}",
    ) {
        for table in [text, near] {
            let _ = read_points(&table, Inch);
        }
    }
}
