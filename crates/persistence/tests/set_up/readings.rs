//! Sheets of toe readings.

use trammel_build::LengthUnit;
use trammel_persistence::read_readings;

use super::*;

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
