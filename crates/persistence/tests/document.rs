//! Writing, reading again, and saving edits without disturbing the rest of a text.
#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests fail as tests do"
)]

mod common;

use common::{any_build, good};
use proptest::prelude::*;
use trammel_build::{
    Axis, AxleName, BoltAxis, Coordinate, Edit, HitPoint, JointBolts, KeepOutCorners, LengthUnit,
    Mass, PointName, PointRef, SpringRate, Triple,
};
use trammel_persistence::{Document, demos, read, write};

/// The smallest file of format 1, and one that gives everything in the canonical layout. Every later version must read both.
const SMALLEST: &str = include_str!("format1/smallest.ron");
const EVERYTHING: &str = include_str!("format1/everything.ron");

fn document(text: &str) -> Document {
    Document::read(text).unwrap_or_else(|fault| panic!("{fault}"))
}

/// The text after an edit, and that it holds the edited build.
fn edited(document: &Document, edit: &Edit) -> String {
    let build = edit
        .apply(document.build())
        .unwrap_or_else(|fault| panic!("{fault}"));
    let text = document.text_for(&build);
    assert_eq!(read(&text).as_ref(), Ok(&build), "{text}");
    text
}

fn move_inner(to: Triple) -> Edit {
    Edit::MovePoint {
        point: PointRef::left(AxleName::Front, PointName::TieRodInner),
        to,
    }
}

#[test]
fn the_smallest_file_opens() {
    let build = document(SMALLEST).build().clone();
    assert_eq!(build.title, "Two-seat trail kart");
    assert_eq!(build.unit, LengthUnit::Inch);
    assert_eq!(build.front.upper_arm.rear_pivot, [-5.0, 7.25, 13.5]);
    assert_eq!(build.front.wheel.camber_deg, -1.0);
    assert_eq!(build.rear, None);
    assert_eq!(build.front.spring, None);
}

/// Brackets, quotes and backslashes mean nothing in text between `r#"` and `"#`, for an edit beside it neither.
#[test]
fn raw_text_is_passed_over_as_they_stand() {
    let title = r#""Two-seat trail kart""#;
    let raw = SMALLEST.replace(title, r###"r#"Two-seat ("trail" \q kart"#"###);
    assert_ne!(raw, SMALLEST);
    let document = document(&raw);
    assert_eq!(document.build().title, r#"Two-seat ("trail" \q kart"#);
    let text = edited(&document, &move_inner([-3.0, 6.25, 8.5]));
    assert!(
        text.contains(r###"r#"Two-seat ("trail" \q kart"#"###),
        "{text}"
    );
}

#[test]
fn an_unedited_build_keeps_its_text_to_the_byte() {
    for text in demos().map(|d| d.text).into_iter().chain([SMALLEST]) {
        let document = document(text);
        assert_eq!(document.text_for(&document.build().clone()), text);
    }
}

#[test]
fn the_canonical_text_of_the_smallest_file() {
    let expected = r#"(
    format: 1,
    title: "Two-seat trail kart",
    unit: inch,
    front: (
        upper_arm: (front_pivot: (2.5, 7.25, 14.0), rear_pivot: (-5.0, 7.25, 13.5), ball_joint: (-0.5, 21.0, 15.0)),
        lower_arm: (front_pivot: (4.0, 5.0, 7.0), rear_pivot: (-6.0, 5.0, 7.0), ball_joint: (0.0, 22.0, 6.5)),
        tie_rod: (inner: (-3.0, 6.0, 8.5), outer: (-3.5, 21.5, 8.0)),
        wheel: (centre: (0.0, 25.0, 10.5), loaded_radius: 10.5, toe_deg: 0.0, camber_deg: -1.0),
    ),
)
"#;
    let text = write(document(SMALLEST).build());
    let (header, body) = text.split_at(text.find("(\n").expect("a body"));
    assert_eq!(body, expected);
    assert!(
        header.lines().count() >= 3 && header.lines().all(|l| l.starts_with("//")),
        "{header}"
    );
}

#[test]
fn everything_that_a_file_can_give_is_read_and_written() {
    let build = document(EVERYTHING).build().clone();
    assert_eq!(write(&build), EVERYTHING);
    assert_eq!(build.unit, LengthUnit::Millimetre);
    assert_eq!(
        build.notes,
        "First line \"quoted\".\nSecond line: 5\u{2033}."
    );
    assert_eq!(build.vehicle.mass, Some(Mass::Kilograms(374.0)));
    assert_eq!(build.hit.at, Some(HitPoint::Contact));
    assert_eq!(build.front.rack_end.thread.as_deref(), Some("M12x1.25"));
    let rate = build.front.spring.and_then(|s| s.rate);
    assert_eq!(rate, Some(SpringRate::NewtonsPerMillimetre(20.0)));
    let right = build.front.right.get(&PointName::RackFace);
    assert_eq!(right, Some(&[-88.9, -136.0, 222.25]));
    assert_eq!(build.locked.len(), 4);
    assert_eq!(build.limits.lock_over_deg, Some(25.0));
}

#[test]
fn a_moved_point_changes_only_its_numbers() {
    let text = edited(&document(SMALLEST), &move_inner([-3.0, 6.0625, 8.5]));
    assert_eq!(
        text,
        SMALLEST.replace("(-3.0, 6.0, 8.5)", "(-3.0, 6.0625, 8.5)")
    );
}

#[test]
fn a_number_typed_another_way_stays_as_typed_until_it_is_changed() {
    let typed = SMALLEST.replace("(-3.0, 6.0, 8.5)", "( -3 , +6.0e0,8.50 )");
    let text = edited(&document(&typed), &move_inner([-3.0, 6.0, 8.75]));
    assert_eq!(text, typed.replace("8.50 )", "8.75 )"));
}

#[test]
fn a_new_field_goes_behind_the_last_one_and_keeps_the_comments() {
    let lock = Edit::SetLock(
        Coordinate::from_path("front.tie_rod.inner.z").expect("a name"),
        true,
    );
    let text = edited(&document(SMALLEST), &lock);
    assert_eq!(
        text,
        SMALLEST.replace(
            "    ),\n)",
            "    ),\n    locked: [\"front.tie_rod.inner.z\"],\n)"
        )
    );
    let face = Edit::MovePoint {
        point: PointRef::left(AxleName::Front, PointName::RackFace),
        to: [-3.0, 4.5, 8.5],
    };
    let text = edited(&document(&text), &face);
    assert!(
        text.contains("\n        rack: (face: (-3.0, 4.5, 8.5)),\n    ),\n"),
        "{text}"
    );
    assert!(text.contains("// or mm"));
}

#[test]
fn a_new_field_goes_into_brackets_without_a_trailing_comma_or_on_one_line() {
    let one_line = SMALLEST.replace("    ),\n)", "        rack: (travel: 1.5)\n    )\n)");
    let face = Edit::MovePoint {
        point: PointRef::left(AxleName::Front, PointName::RackFace),
        to: [-3.0, 4.5, 8.5],
    };
    let text = edited(&document(&one_line), &face);
    assert!(
        text.contains("rack: (travel: 1.5, face: (-3.0, 4.5, 8.5))\n    )\n)"),
        "{text}"
    );
    let text = edited(
        &document(&one_line),
        &Edit::SetNotes("a \"note\"\nof two lines".into()),
    );
    assert!(
        text.ends_with("    ),\n    notes: \"a \\\"note\\\"\nof two lines\",\n)\n"),
        "{text}"
    );
}

#[test]
fn what_can_not_be_changed_in_place_is_laid_out_anew_with_the_old_comments_at_the_end() {
    let demo = document(demos()[0].text);
    let text = edited(&demo, &Edit::SetSpring(AxleName::Front, None));
    assert!(
        text.contains("// front.wheel: 21x7-10 tyre with the driver aboard."),
        "{text}"
    );
    // Once carried, they stay as they are.
    let again = edited(&document(&text), &Edit::SetRear(None));
    assert_eq!(again.matches("21x7-10 tyre").count(), 1, "{again}");
    assert_eq!(again.matches("laid out anew").count(), 1, "{again}");
}

#[test]
fn converting_the_unit_says_so_in_the_file() {
    let text = edited(
        &document(SMALLEST),
        &Edit::ConvertUnit(LengthUnit::Millimetre),
    );
    assert!(text.starts_with("// Converted from inch to mm"), "{text}");
    assert!(
        text.contains("unit: mm,                       // or mm"),
        "{text}"
    );
    let back = edited(&document(&text), &Edit::ConvertUnit(LengthUnit::Inch));
    assert_eq!(back.matches("// Converted from").count(), 1, "{back}");
}

#[test]
fn a_file_from_an_editor_that_marks_it_and_ends_lines_its_own_way_opens_and_keeps_both() {
    let text = format!("\u{feff}{}", SMALLEST.replace('\n', "\r\n"));
    let document = document(&text);
    assert_eq!(document.build(), crate::document(SMALLEST).build());
    let moved = edited(&document, &move_inner([-3.0, 6.0, 8.75]));
    assert_eq!(moved, text.replace("(-3.0, 6.0, 8.5)", "(-3.0, 6.0, 8.75)"));
}

#[test]
fn optional_parts_may_be_wrapped_or_not() {
    let with =
        |rack: &str| SMALLEST.replace("    ),\n)", &format!("        rack: {rack},\n    ),\n)"));
    let plain = document(&with("(travel: 1.5)")).build().clone();
    assert_eq!(document(&with("(travel: Some(1.5))")).build(), &plain);
    assert_eq!(document(&with("(travel: 1.5, face: None)")).build(), &plain);
}

#[test]
fn shop_data_of_the_full_file_is_read_field_by_field() {
    let build = document(EVERYTHING).build().clone();
    let bolts = JointBolts {
        inner: Some(BoltAxis::ForeAft),
        outer: Some(BoltAxis::Direction([0.1, 0.0, 1.0])),
    };
    assert_eq!(build.front.joint_bolts, bolts);
    let [engine, tube] = build.keep_outs.as_slice() else {
        panic!("{:?}", build.keep_outs)
    };
    assert_eq!(engine.name, "Engine");
    let far = KeepOutCorners::Box([-400.0, -150.0, 100.0], [-120.0, 150.0, 600.0]);
    assert_eq!(engine.corners, far);
    assert_eq!(
        tube.corners,
        KeepOutCorners::Front([120.0, 150.0], [150.0, 180.0])
    );
    let deviation = |path| {
        let at = Coordinate::from_path(path).expect("a name");
        build.deviation_mm(at)
    };
    assert_eq!(deviation("front.tie_rod.inner.x"), 0.3);
    assert_eq!(deviation("front.tie_rod.outer.y"), 0.5);
    assert_eq!(deviation("front.upper_arm.ball_joint.z"), 2.0);
    assert_eq!(deviation("front.lower_arm.ball_joint.z"), 1.0);
    assert_eq!(deviation("front.lower_arm.ball_joint.y"), 2.0);
}

#[test]
fn keep_outs_and_tolerances_are_converted_with_the_unit_and_bolt_directions_are_not() {
    let build = document(EVERYTHING).build().clone();
    let inches = Edit::ConvertUnit(LengthUnit::Inch)
        .apply(&build)
        .expect("inches");
    let KeepOutCorners::Box(from, to) = inches.keep_outs[0].corners else {
        panic!("{:?}", inches.keep_outs)
    };
    let mm = from.map(|v| v * 25.4);
    assert!((mm[0] + 400.0).abs() < 2e-3 && (to[2] * 25.4 - 600.0).abs() < 2e-3);
    for point in PointName::ALL {
        for axis in Axis::ALL {
            let at = Coordinate {
                axle: AxleName::Front,
                point,
                axis,
            };
            let [a, b] = [&build, &inches].map(|b| b.deviation_mm(at));
            assert!((a - b).abs() < 2e-3, "{at}: {a} mm and {b} mm");
        }
    }
    assert_eq!(inches.front.joint_bolts, build.front.joint_bolts);
    let place = build
        .point_mm(PointRef::left(AxleName::Front, PointName::TieRodInner))
        .expect("the joint");
    let holds = |b: &trammel_build::Build, place| {
        let within = |k: &trammel_build::KeepOut| k.holds(AxleName::Front, place, b.unit);
        b.keep_outs.iter().map(within).collect::<Vec<_>>()
    };
    assert_eq!(holds(&build, place), [false, false]);
    // On the right-hand side of the engine, and its twin.
    let inside = trammel_geometry::Point::new(-200.0, -140.0, 222.0);
    assert_eq!(holds(&build, inside), [true, false]);
    assert_eq!(
        holds(&inches, trammel_build::mirror(inside.into()).into()),
        [true, false]
    );
}

#[test]
fn one_keep_out_of_several_is_changed_where_it_stands() {
    let spaced = EVERYTHING.replace("name: \"Engine\",", "name: \"Engine\", /* with its fan */");
    let file = document(&spaced);
    let mut keep_outs = file.build().keep_outs.clone();
    keep_outs[1].corners = KeepOutCorners::Front([120.0, 150.0], [155.0, 180.0]);
    let text = edited(&file, &Edit::SetKeepOuts(keep_outs.clone()));
    let wanted = spaced.replace(
        "front((120.0, 150.0), (150.0, 180.0))",
        "front((120.0, 150.0), (155.0, 180.0))",
    );
    assert_eq!(text, wanted);
    // One fewer: the list is written anew, and a comment that stood in it is carried to the end.
    keep_outs.truncate(1);
    let text = edited(&file, &Edit::SetKeepOuts(keep_outs));
    assert!(text.contains("with its fan"), "{text}");
}

/// A list that grows is written anew where it stands; what is around it stays as its author left it.
#[test]
fn a_list_that_grows_is_written_where_it_stands() {
    let spaced = EVERYTHING.replace("    keep_outs: [", "    keep_outs:   [");
    assert_ne!(spaced, EVERYTHING);
    let file = document(&spaced);
    let mut keep_outs = file.build().keep_outs.clone();
    keep_outs.push(trammel_build::KeepOut {
        name: "Seat".into(),
        corners: KeepOutCorners::Front([0.0, 150.0], [50.0, 180.0]),
    });
    let text = edited(&file, &Edit::SetKeepOuts(keep_outs));
    let last =
        "        (name: \"Lower frame tube\", corners: front((120.0, 150.0), (150.0, 180.0))),\n";
    let wanted = spaced.replace(
        last,
        &format!("{last}        (name: \"Seat\", corners: front((0.0, 150.0), (50.0, 180.0))),\n"),
    );
    assert_eq!(text, wanted);
}

/// A rack so written in the smallest build, and how it is written once its face has a place.
fn face_added(rack: &str, with_face: &str) {
    let with =
        |rack: &str| SMALLEST.replace("    ),\n)", &format!("        rack: {rack},\n    ),\n)"));
    let face = Edit::MovePoint {
        point: PointRef::left(AxleName::Front, PointName::RackFace),
        to: [-3.0, 4.5, 8.5],
    };
    assert_eq!(edited(&document(&with(rack)), &face), with(with_face));
}

/// A comma in a comment behind the last field parts nothing.
#[test]
fn a_comma_in_a_comment_is_no_comma() {
    face_added(
        "(\n            travel: 1.5 // one, or two\n        )",
        "(\n            travel: 1.5, // one, or two\n            face: (-3.0, 4.5, 8.5),\n        )",
    );
}

/// Over several lines, with the closing bracket behind the last field: a new one goes between the two.
#[test]
fn a_new_field_goes_before_a_bracket_that_has_no_line_of_its_own() {
    face_added(
        "(travel: 1.5,\n            travel_per_turn: 2.0)",
        "(travel: 1.5,\n            travel_per_turn: 2.0, face: (-3.0, 4.5, 8.5))",
    );
}

/// Signs that an editor would not show are written as what they are.
#[test]
fn signs_that_can_not_be_seen_are_written_out() {
    let mut build = document(SMALLEST).build().clone();
    build.title = "a\u{7}b\rc\u{feff}d\te".into();
    let text = write(&build);
    assert!(
        text.contains("title: \"a\\u{7}b\\u{d}c\\u{feff}d\te\""),
        "{text}"
    );
    assert_eq!(read(&text), Ok(build));
}

/// Fields are gathered on a line until it would be wider than 120 signs, the comma behind it among them.
#[test]
fn no_line_of_the_canonical_text_is_wider_than_a_hundred_and_twenty_signs() {
    let (mut keep_out, mut tie_rod) = (0, 0);
    let mut build = document(EVERYTHING).build().clone();
    for length in 0..60 {
        // A name and six numbers that grow by a sign at a time.
        build.keep_outs[0].name = "n".repeat(length);
        let rod = &mut build.front.tie_rod;
        let numbers = rod.inner.iter_mut().chain(&mut rod.outer);
        for (number, used) in numbers.zip((0..).step_by(10)) {
            let more = "1".repeat(length.saturating_sub(used).min(10));
            *number = format!("8.5{more}").parse().expect("a number");
        }
        let text = write(&build);
        for line in text.lines().filter(|line| line.ends_with("),")) {
            let wide = line.chars().count();
            assert!(wide <= 120, "{line}");
            if line.contains("(name: \"") {
                keep_out = keep_out.max(wide);
            } else if line.contains("tie_rod: (inner") {
                tie_rod = tie_rod.max(wide);
            }
        }
    }
    assert_eq!((keep_out, tie_rod), (120, 120));
}

#[test]
fn an_attribute_in_front_is_passed_over_and_kept() {
    let with = format!("#![enable(implicit_some)]\n{SMALLEST}");
    let text = edited(&document(&with), &move_inner([-3.0, 6.0625, 8.5]));
    assert_eq!(
        text,
        with.replace("(-3.0, 6.0, 8.5)", "(-3.0, 6.0625, 8.5)")
    );
}

#[test]
fn a_wrapped_point_is_moved_inside_its_wrapping() {
    let wrapped = SMALLEST.replace(
        "    ),\n)",
        "        rack: (face: Some((-3.0, 4.5, 8.5))),\n    ),\n)",
    );
    let face = Edit::MovePoint {
        point: PointRef::left(AxleName::Front, PointName::RackFace),
        to: [-3.0, 4.75, 8.5],
    };
    let text = edited(&document(&wrapped), &face);
    assert_eq!(
        text,
        wrapped.replace("(-3.0, 4.5, 8.5)", "(-3.0, 4.75, 8.5)")
    );
}

#[test]
fn joint_bolts_are_added_behind_the_last_field_of_their_axle() {
    let bolts = JointBolts {
        inner: Some(BoltAxis::ForeAft),
        outer: Some(BoltAxis::Vertical),
    };
    let text = edited(
        &document(SMALLEST),
        &Edit::SetJointBolts(AxleName::Front, bolts),
    );
    assert!(
        text.contains("        joint_bolts: (inner: fore_aft, outer: vertical),\n    ),"),
        "{text}"
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn a_written_build_reads_back_equal_and_writes_the_same_text(build in any_build()) {
        let text = write(&build);
        let read = read(&text);
        prop_assert_eq!(read.as_ref(), Ok(&build), "{}", text);
        prop_assert_eq!(write(&build), text);
    }

    #[test]
    fn any_build_can_follow_any_other_in_a_document(before in any_build(), after in any_build()) {
        let document = Document::new(&before);
        let next = document.with(&after);
        let read = read(next.text());
        prop_assert_eq!(read.as_ref(), Ok(&after), "{}", next.text());
        prop_assert_eq!(next.text_for(&after), next.text());
    }

    #[test]
    fn numbers_come_back_to_the_last_bit(z in 8.0..9.5_f64, bits in any::<u64>()) {
        let mut build = good();
        build.front.tie_rod.inner[2] = z;
        let odd = f64::from_bits(bits);
        if odd.is_finite() && odd.abs() < 1e3 {
            build.front.rack.face = Some([odd, 5.0, -odd]);
        }
        let read = read(&write(&build)).expect("a build");
        prop_assert_eq!(read.front.tie_rod.inner[2].to_bits(), z.to_bits());
        let bits = |b: &trammel_build::Build| b.front.rack.face.map(|t| t.map(f64::to_bits));
        prop_assert_eq!(bits(&read), bits(&build));
    }
}
