//! The set-up part of the build file, sheets of readings, surveys and the drawer.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

use trammel_build::{
    Adjusted, AdjustedPart, AxleName, Build, Edit, JointPart, LengthUnit, Part, PartKind,
    PointName, PointRef, RackEndRange, RackPart, ReadingRow, RodRange, Session, SetUp, Side,
    SpindlePart, SpringPart, SpringRate, StackRange, Statics, SteeringArm, SurveyedPoint,
    ToeMethod, TravelMeasure, Weights,
};
use trammel_geometry::{Point, Vector};
use trammel_persistence::{
    Document, Drawer, DrawerFault, demos, read, read_readings, read_survey, write,
};
use trammel_setup::{Board, Hint, Place, Raw, SpotWay, Way, What};
use trammel_tuning::Axis;

fn demo() -> Build {
    read(demos()[0].text).unwrap()
}

fn row(place: f64, shown: Raw) -> ReadingRow {
    ReadingRow {
        side: Side::Right,
        run: 2,
        rack: -0.5,
        place,
        ride: place == 10.0,
        shown,
    }
}

fn session(method: ToeMethod, rows: Vec<ReadingRow>) -> Session {
    Session {
        date: "3 May".into(),
        notes: "after the \"big\" hit".into(),
        adjusted: vec![Adjusted {
            part: AdjustedPart::RackEnd,
            side: Side::Left,
            by: 0.1,
        }],
        method,
        accuracy: Some(0.001),
        travel_by: TravelMeasure::WheelHeight,
        travel_accuracy: Some(0.04),
        rows,
    }
}

fn full() -> SetUp {
    let mut set_up = SetUp::default();
    set_up.adjusters.rack_end = Some(RackEndRange {
        turns_out: 4.0,
        turns_in: 2.5,
        only: None,
    });
    set_up.adjusters.washers = Some(StackRange {
        thickness: 0.0625,
        more: 3,
        fewer: 1,
        only: Some(Side::Right),
    });
    set_up.adjusters.washers_along = Some(trammel_build::BoltAxis::Vertical);
    set_up.adjusters.shims = Some(StackRange {
        thickness: 0.03125,
        more: 4,
        fewer: 0,
        only: None,
    });
    set_up.adjusters.rod = Some(RodRange {
        per_turn: 0.1,
        shorter: 0.5,
        longer: 0.75,
    });
    set_up.sessions = vec![
        session(
            ToeMethod::TwoDials(10.0, Way::Out),
            vec![row(
                10.0,
                Raw::Pair {
                    front: 0.0,
                    rear: 0.1,
                },
            )],
        ),
        session(
            ToeMethod::OneDial(10.0, Way::In),
            vec![row(11.0, Raw::Dial(-0.1))],
        ),
        session(
            ToeMethod::Tape(21.0),
            vec![row(
                10.0,
                Raw::Pair {
                    front: 40.0,
                    rear: 41.0,
                },
            )],
        ),
        session(
            ToeMethod::Laser(120.0, Board::Behind),
            vec![row(10.0, Raw::Spot(0.5, SpotWay::Outboard))],
        ),
        session(
            ToeMethod::Mirror(120.0),
            vec![row(10.0, Raw::Spot(0.5, SpotWay::Back))],
        ),
        session(
            ToeMethod::Degrees,
            vec![row(10.0, Raw::Degrees(0.25, Way::Out))],
        ),
    ];
    let point = PointRef {
        axle: AxleName::Front,
        side: Side::Right,
        point: PointName::TieRodInner,
    };
    set_up.surveyed.insert(
        point,
        SurveyedPoint {
            variances: [0.1, 0.2, 0.3],
            covariances: [-0.01, 0.02, 0.0],
        },
    );
    set_up.survey = vec!["unit, in".into(), "mark, A, 0, 0, 0".into()];
    set_up.statics = Statics {
        toe_deg: [Some(0.125), None],
        wanted_toe_deg: Some(0.0),
        camber_deg: [Some(-1.25), Some(-0.75)],
        tape_difference: Some(-0.125),
        shock: [None, Some(13.5)],
        castor_sweep: Some([15.0, 1.5, -1.5]),
        weights: Some(Weights::Pounds([180.0, 181.5, 220.0, 219.0])),
    };
    set_up
}

#[test]
fn everything_of_setting_up_comes_back() {
    let build = Edit::SetSetUp(Box::new(full())).apply(&demo()).unwrap();
    let text = write(&build);
    assert_eq!(read(&text).unwrap(), build, "{text}");
    assert!(text.contains("method: two_dials(10.0, toe_out)"), "{text}");
    assert!(
        text.contains("point: \"front.right.tie_rod.inner\""),
        "{text}"
    );
}

#[test]
fn a_session_added_to_a_file_leaves_the_rest_of_its_text() {
    let document = Document::read(demos()[0].text).unwrap();
    let build = Edit::SetSetUp(Box::new(full()))
        .apply(document.build())
        .unwrap();
    let text = document.text_for(&build);
    assert_eq!(read(&text).unwrap(), build);
    let kept = demos()[0]
        .text
        .lines()
        .filter(|l| text.lines().any(|t| t == *l))
        .count();
    assert!(kept + 2 >= demos()[0].text.lines().count(), "{text}");
}

#[test]
fn a_build_without_it_says_nothing_of_it() {
    assert!(!write(&demo()).contains("set_up"));
    assert_eq!(demo().set_up, SetUp::default());
}

#[test]
fn a_figure_that_cannot_stand_is_named() {
    let mut bad = full();
    bad.sessions[0].method = ToeMethod::TwoDials(0.0, Way::In);
    let fault = Edit::SetSetUp(Box::new(bad)).apply(&demo()).unwrap_err();
    assert!(
        fault
            .to_string()
            .starts_with("set_up.sessions.1.method is 0, expected"),
        "{fault}"
    );
}

const DIALS: &str = "\
# after the first run
unit,mm
date,3 May
method,two dials
spacing,250
grows,in
accuracy,0.02
adjusted,left,rack end,2.5
side,left
travel,front,rear
0,0,0
up 25,0.4,-0.1
down 25,-0.3,0.1
0,0.01,0
";

#[test]
fn a_sheet_of_two_dials_is_read_in_the_builds_unit() {
    let s = read_readings(DIALS, LengthUnit::Millimetre).unwrap();
    assert_eq!(s.method, ToeMethod::TwoDials(250.0, Way::In));
    assert_eq!(
        (s.date.as_str(), s.accuracy, s.rows.len()),
        ("3 May", Some(0.02), 4)
    );
    assert_eq!(
        s.adjusted,
        [Adjusted {
            part: AdjustedPart::RackEnd,
            side: Side::Left,
            by: 2.5
        }]
    );
    assert_eq!(
        (s.rows[2].place, s.rows[2].shown),
        (
            -25.0,
            Raw::Pair {
                front: -0.3,
                rear: 0.1
            }
        )
    );
    let inches = read_readings(DIALS, LengthUnit::Inch).unwrap();
    assert!((inches.rows[1].place - 25.0 / 25.4).abs() < 1e-6);
    let tabs = DIALS.replace(',', "\t");
    assert_eq!(read_readings(&tabs, LengthUnit::Millimetre).unwrap(), s);
}

#[test]
fn other_methods_and_places_are_read() {
    let degrees =
        "unit,in\nmethod,degrees\nride,10\nside,wheel height,toe,way\nL,10,0,\nL,11 1/2,0.2,OUT\n";
    let s = read_readings(degrees, LengthUnit::Inch).unwrap();
    assert_eq!(s.travel_by, TravelMeasure::WheelHeight);
    assert!(s.rows[0].ride && !s.rows[1].ride);
    assert_eq!(
        (s.rows[1].place, s.rows[1].shown),
        (11.5, Raw::Degrees(0.2, Way::Out))
    );
    let laser = "unit,mm\nmethod,laser\ndistance,3000\nboard,ahead\nside,shock length,ride,spot,way,rack\nright,400,yes,0,in,0\nright,390,,4,outboard,10\n";
    let s = read_readings(laser, LengthUnit::Millimetre).unwrap();
    assert_eq!(s.rows[1].shown, Raw::Spot(4.0, SpotWay::Outboard));
    assert_eq!((s.rows[0].ride, s.rows[1].rack), (true, 10.0));
    let mirror = "unit,mm\nmethod,mirror\ndistance,3000\nside,shock length,ride,spot,way\nright,400,yes,0,ahead\nright,395,no,1,ahead\nright,390,,4,back\n";
    let s = read_readings(mirror, LengthUnit::Millimetre).unwrap();
    let spots = s.rows.iter().map(|row| (row.ride, row.shown));
    let ways = [
        (true, 0.0, SpotWay::Ahead),
        (false, 1.0, SpotWay::Ahead),
        (false, 4.0, SpotWay::Back),
    ];
    assert!(spots.eq(ways.map(|(ride, spot, way)| (ride, Raw::Spot(spot, way)))));
    let odd = read_readings(&mirror.replace("yes", "maybe"), LengthUnit::Millimetre).unwrap_err();
    assert!(odd.to_string().contains("`yes` at ride height"), "{odd}");
    let tape = "unit,mm\nmethod,tape\nacross,530\nblocks,ride,front,rear\n20,yes,1000,1002\n40,,1001,1002\n";
    let s = read_readings(tape, LengthUnit::Millimetre).unwrap();
    assert_eq!(s.travel_by, TravelMeasure::Blocks);
}

#[test]
fn half_entered_and_wrongly_signed_sheets_are_refused_in_words() {
    let said = |text: &str| {
        read_readings(text, LengthUnit::Millimetre)
            .unwrap_err()
            .to_string()
    };
    for (text, expected) in [
        (
            DIALS.replace("up 25,0.4,-0.1", "up 25,0.4,"),
            "line 12, rear: the cell is empty; two dials need a front and a rear number at every place. Fill it in or take the line out",
        ),
        (
            DIALS.replace("up 25", "up -25"),
            "line 12, where the wheel was: `up -25` has a sign; write the size alone and the word `up` or `down` beside it, so that nobody has to remember which way the sign goes",
        ),
        (
            DIALS.replace("grows,in\n", ""),
            "there is no line `grows`; write one such as `grows, in` above the table",
        ),
        (
            DIALS.replace("grows,in", "grows,left"),
            "line 6, grows: found `left`, expected `in` or `out`: which way the plate goes at a dial whose number grows",
        ),
        (
            DIALS.replace("side,left\n", ""),
            "line 9: there is no line `side`; write one such as `side, left` above the table",
        ),
        (
            DIALS.replace("front,rear", "front,back"),
            "line 10: there is no column `rear`; two dials need a front and a rear number at every place",
        ),
        (
            DIALS.replace("spacing,250\n", "spacing,250\nspacing,250\n"),
            "line 6: `spacing` stands here a second time; expected it once",
        ),
        (
            "unit,mm\nmethod,degrees\nside,left\ntravel,toe,way\n0,0,\n25,-0.2,IN\n".into(),
            "line 6, toe: `-0.2` has a sign; write the size alone and IN or OUT beside it, so that nobody has to remember which way the sign goes",
        ),
        (
            "unit,mm\nmethod,degrees\nside,left\ntravel,toe,way\n0,0,\n25,0.2,\n".into(),
            "line 6, way: the cell is empty; degrees need the way as a word: IN or OUT. Fill it in or take the line out",
        ),
        (
            "unit,mm\nmethod,degrees\n".into(),
            "there are no readings; expected a heading such as `side, travel, front, rear` and a line for each place of the wheel",
        ),
    ] {
        assert_eq!(said(&text), expected);
    }
    assert!(
        said(&DIALS.replace("0.4", "0,4")).contains("line 12"),
        "a decimal comma makes a cell too many or a wrong one"
    );
}

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

fn drawer() -> Drawer {
    let part = |name: &str, kind| Part {
        name: name.into(),
        unit: LengthUnit::Inch,
        notes: "left one".into(),
        kind,
    };
    Drawer {
        parts: vec![
            part(
                "quad",
                PartKind::Spindle(SpindlePart {
                    ball_joint_spacing: 6.5,
                    inclination_deg: 9.0,
                    spindle_height: 2.25,
                    wheel_out: 3.0,
                    arm_length: 3.75,
                    arm: SteeringArm::Behind,
                    arm_height: 1.5,
                    arm_out: -0.5,
                }),
            ),
            part(
                "rack",
                PartKind::Rack(RackPart {
                    joint_to_joint: 17.0,
                    travel: 1.5,
                    travel_per_turn: 2.0,
                    end_thread: "1/2-20".into(),
                    hard_to: None,
                }),
            ),
            part(
                "shock",
                PartKind::Spring(SpringPart {
                    open: 16.0,
                    closed: 12.0,
                    rate: Some(SpringRate::PoundsPerInch(95.0)),
                }),
            ),
            part(
                "heim",
                PartKind::Joint(JointPart {
                    ball_width: 0.5,
                    swivel_deg: 13.0,
                    rating: Some(9000.0),
                }),
            ),
        ],
    }
}

#[test]
fn the_drawer_comes_back_from_its_file() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("deep/drawer.ron");
    assert_eq!(Drawer::load(&path).unwrap(), Drawer::default());
    drawer().save(&path).unwrap();
    assert_eq!(Drawer::load(&path).unwrap(), drawer());
}

#[test]
fn a_damaged_or_newer_drawer_is_said_and_left() {
    assert!(matches!(
        Drawer::read("(format: 1, parts: [("),
        Err(DrawerFault::NotDrawer(_))
    ));
    let newer = drawer().write().unwrap().replace("format: 1", "format: 2");
    assert!(matches!(
        Drawer::read(&newer),
        Err(DrawerFault::NewerFormat(2))
    ));
}

#[test]
fn a_drawer_that_can_not_be_read_is_no_empty_one() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("drawer.ron");
    drawer().save(&file).unwrap();
    let below = Drawer::load(&file.join("drawer.ron"));
    assert!(matches!(below, Err(DrawerFault::File(_))), "{below:?}");
    // A byte more than 4 MiB is refused by its size; just as much is looked into.
    let size = |bytes| {
        let open = std::fs::File::options().write(true).open(&file).unwrap();
        open.set_len(bytes).unwrap();
        Drawer::load(&file)
    };
    let larger = size((4 << 20) + 1);
    assert!(
        matches!(larger, Err(DrawerFault::TooLarge(4_194_305))),
        "{larger:?}"
    );
    let largest = size(4 << 20);
    assert!(
        matches!(largest, Err(DrawerFault::NotDrawer(_))),
        "{largest:?}"
    );
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

/// Toe in degrees is known to so many degrees, not to a length.
#[test]
fn the_accuracy_of_degrees_is_in_degrees() {
    let sheet = |accuracy: &str| {
        let text = format!(
            "unit,in\nmethod,degrees\naccuracy,{accuracy}\nside,left\ntravel,toe,way\n0,0,\n1,0.2,IN\n"
        );
        read_readings(&text, LengthUnit::Millimetre)
    };
    assert_eq!(sheet("0.05").unwrap().accuracy, Some(0.05));
    let said = sheet("1/16").unwrap_err().to_string();
    assert!(said.contains("degrees, such as 0.05"), "{said}");
}

#[test]
fn a_reading_without_a_run_is_of_the_first() {
    let build = Edit::SetSetUp(Box::new(full())).apply(&demo()).unwrap();
    let text = write(&build);
    let run = "run: 2, ";
    assert!(text.contains(run), "{text}");
    let first = read(&text.replace(run, "")).unwrap();
    let runs = |build: &Build| build.set_up.sessions[0].rows[0].run;
    assert_eq!((runs(&build), runs(&first)), (2, 1));
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
fn the_columns_of_a_sheet_are_read_or_asked_for() {
    let sheet = |heading: &str, row: &str| {
        let text = format!("unit,mm\nmethod,degrees\n{heading}\nleft,0,0,,1\n{row}\n");
        read_readings(&text, LengthUnit::Millimetre).map_err(|fault| fault.to_string())
    };
    let heading = "side,travel,toe,way,run";
    let runs = |row: &str| sheet(heading, row).map(|s| s.rows[1].run);
    assert_eq!(runs("left,25,0.2,IN,3"), Ok(3));
    assert_eq!(runs("left,25,0.2,IN,"), Ok(1));
    for none in ["0", "1001", "-1", "two"] {
        let said = runs(&format!("left,25,0.2,IN,{none}")).unwrap_err();
        assert!(
            said.starts_with("line 5, run: ") && said.contains("the run's number, from 1"),
            "{said}"
        );
    }
    let said = runs(",25,0.2,IN,2").unwrap_err();
    assert!(
        said.contains("every line needs its wheel, left or right"),
        "{said}"
    );
    let said = sheet("side,travel,toe,way,Toe", "left,25,0.2,IN,").unwrap_err();
    assert_eq!(
        said,
        "line 3: `toe` stands here a second time; expected it once"
    );
    // Columns without a name are passed over, however many.
    assert!(sheet("side,travel,toe,way,,", "left,25,0.2,IN,,").is_ok());
    let laser = "unit,mm\nmethod,laser\ndistance,3000\nboard,ahead\nside,travel,spot,way\nright,0,4,ahead\n";
    let said = read_readings(laser, LengthUnit::Millimetre)
        .unwrap_err()
        .to_string();
    assert!(
        said.contains("found `ahead`, expected `inboard` or `outboard`"),
        "{said}"
    );
}
