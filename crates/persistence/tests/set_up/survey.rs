//! Tape surveys.

use trammel_geometry::{Point, Vector};
use trammel_persistence::{read_readings, read_survey};
use trammel_setup::{Hint, Place, What};
use trammel_tuning::Axis;

use super::*;

#[test]
fn a_survey_is_read_with_its_corrections() {
    let text = "\
unit,mm
tape class,1
mark,A,0,0,0
mark,B,600,0,0,0.5
mark,C,0,600,0
point,joint,above
tape,A,joint,500,starts 25.4,to near 12
tape,B,joint,600,accuracy 2
tape,C,joint,610,round
height,joint,240,accuracy 0.5
tape,A,joint,500,from near 10
tape,A,joint,500,from far 10
tape,A,joint,500,to far 12
";
    let file = read_survey(text).unwrap();
    let readings = file.survey.readings();
    assert!((readings[0].value - (500.0 - 25.4 + 6.0)).abs() < 1e-9);
    assert_eq!((readings[1].deviation, readings[3].deviation), (2.0, 0.5));
    assert!(readings[2].deviation > 2.5);
    // To a near edge half a diameter is missing, to a far one it is too much.
    for (reading, middle) in readings[4..].iter().zip([505.0, 495.0, 494.0]) {
        assert!(
            (reading.value - middle).abs() < 1e-9,
            "{} {middle}",
            reading.value
        );
    }
}

#[test]
fn a_wrong_survey_says_where_and_what() {
    let said = |text: &str| read_survey(text).unwrap_err().to_string();
    for (text, expected) in [
        (
            "mark,A,0,0,0\npoint,joint\ntape,A,joint,\n",
            "line 3, reading: the cell is empty; a reading needs its number. Fill it in or take the line out",
        ),
        (
            "mark,A,0,0,0\ntape,A,joint,400\n",
            "line 2, name: there is no mark or point `joint`; give it a line `mark, joint, x, y, z` or `point, joint` above this one",
        ),
        (
            "mark,A,0,0,0\npoint,joint\ntape,A,joint,-400\n",
            "line 3, reading: the reading of the tape from A to joint is -400; expected a length above nought; the reading was not taken",
        ),
        (
            "mark,A,0,0,0\nmark,A,1,0,0\n",
            "line 2, name: there are two points named A; give one of them another name",
        ),
    ] {
        assert_eq!(said(text), expected);
    }
    assert!(said("string,A\n").starts_with("line 1: `string` is not known here"));
    let beside = said("point,joint,beside\n");
    assert!(
        beside.starts_with("line 1, side: found `beside`, expected `above`, `below`"),
        "{beside}"
    );
    assert!(said("").starts_with("there are no readings"));
}

/// Every number of a survey in inches is 25.4 mm: marks in their three directions, how well they are known, hints, readings.
#[test]
fn a_survey_in_inches_is_read_into_millimetres() {
    let text = "\
unit,in
mark,A,1,2,3
mark,B,20,0,0,0.125
point,joint,above
point,other,4,5,6
point,third
height,joint,10
left,A,joint,10,accuracy 0.1
angle,A,joint,4.5,accuracy 0.2
tape,A,joint,20,accuracy 0.1,to far 1/2
";
    let survey = read_survey(text).unwrap().survey;
    let place = |name| survey.place(survey.point(name).unwrap()).unwrap();
    let Place::Given(at) = place("A") else {
        panic!("{:?}", place("A"))
    };
    assert!((at - Point::new(25.4, 50.8, 76.2)).norm() < 1e-9, "{at}");
    let Place::Measured(at, known) = place("B") else {
        panic!("{:?}", place("B"))
    };
    assert!((at - Point::new(508.0, 0.0, 0.0)).norm() < 1e-9, "{at}");
    assert!((known - Vector::repeat(3.175)).norm() < 1e-9, "{known}");
    let above = Hint::Side(trammel_setup::Side::Above);
    assert_eq!(place("joint"), Place::Sought(Some(above)));
    let Place::Sought(Some(Hint::Near(near))) = place("other") else {
        panic!("{:?}", place("other"))
    };
    assert!((near - Point::new(101.6, 127.0, 152.4)).norm() < 1e-9);
    assert_eq!(place("third"), Place::Sought(None));
    let degree = std::f64::consts::PI / 180.0;
    let wanted = [
        (254.0, 1.0),
        (254.0, 2.54),
        (4.5 * degree, 0.2 * degree),
        (508.0 - 6.35, 2.54),
    ];
    for (reading, (value, deviation)) in survey.readings().iter().zip(wanted) {
        assert!((reading.value - value).abs() < 1e-9, "{reading:?}");
        assert!((reading.deviation - deviation).abs() < 1e-9, "{reading:?}");
    }
    assert_eq!(survey.readings().len(), wanted.len());
}

/// A word of the survey says which way its number goes: x ahead, y to the left, z up.
#[test]
fn every_word_of_a_survey_has_its_direction() {
    let text = "\
mark,A,0,0,0
point,joint
height,joint,240
offset,joint,310
station,joint,-90
rise,A,joint,240
left,A,joint,310
forward,A,joint,-90
";
    let survey = read_survey(text).unwrap().survey;
    let (a, joint) = (survey.point("A").unwrap(), survey.point("joint").unwrap());
    let wanted = [
        (What::Offset(joint, Axis::Z), 240.0),
        (What::Offset(joint, Axis::Y), 310.0),
        (What::Offset(joint, Axis::X), -90.0),
        (What::Difference(a, joint, Axis::Z), 240.0),
        (What::Difference(a, joint, Axis::Y), 310.0),
        (What::Difference(a, joint, Axis::X), -90.0),
    ];
    let read = survey.readings().iter().map(|r| (r.what, r.value));
    assert!(read.eq(wanted), "{:?}", survey.readings());
}

#[test]
fn sheets_too_large_are_not_read() {
    let long = "x".repeat(5 << 20);
    for said in [
        read_survey(&long).unwrap_err().to_string(),
        read_readings(&long, LengthUnit::Inch)
            .unwrap_err()
            .to_string(),
    ] {
        assert!(said.contains("5242880 bytes"), "{said}");
    }
    // 4 MiB to the byte are looked into.
    let said = read_survey(&long[..4 << 20]).unwrap_err().to_string();
    assert!(said.contains("is not known here"), "{said}");
}
