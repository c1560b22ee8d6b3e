//! Lengths as typed and shown. Expected values are worked out by hand; an inch is 25.4 mm exactly.

use LengthUnit::{Inch, Millimetre};
use proptest::prelude::*;
use trammel_build::{
    LengthProblem, LengthUnit, TapeReading, convert_length, format_length, parse_length,
};

#[test]
fn lengths_read_as_the_shop_means_them() {
    for (text, inches) in [
        ("12 5/8", 12.625),
        ("12-5/8", 12.625),
        ("12 5/8\"", 12.625),
        ("  12   5 / 8 in ", 12.625),
        ("12 5/8 in.", 12.625),
        ("1' 3-1/2\"", 15.5),
        ("1'-3 1/2\"", 15.5),
        ("1' - 3 1/2\"", 15.5),
        ("1 ft 3 1/2 in", 15.5),
        ("1 foot 3.5 inches", 15.5),
        ("1' 3", 15.0),
        ("2'", 24.0),
        ("1.5 ft", 18.0),
        ("5/8", 0.625),
        ("13/8", 1.625),
        ("-3 3/4", -3.75),
        ("\u{2212}3-3/4", -3.75),
        ("+3.25", 3.25),
        ("3.25", 3.25),
        (".5", 0.5),
        ("7.", 7.0),
        ("0", 0.0),
        ("-0", 0.0),
        ("12\u{215d}", 12.625),
        ("12 \u{215d}\u{2033}", 12.625),
        ("\u{bd}", 0.5),
        ("1\u{2032} 3\u{2033}", 15.0),
        ("1\u{2019} 3\u{201d}", 15.0),
        ("1' 3''", 15.0),
        ("3\u{2044}4", 0.75),
        ("12\u{a0}5/8", 12.625),
        ("254 mm", 10.0),
        ("25.4cm", 10.0),
        ("0.254 m", 10.0),
        ("1/3", 1.0 / 3.0),
    ] {
        assert_eq!(parse_length(text, Inch), Ok(inches), "{text}");
    }
    for (text, mm) in [
        ("320", 320.0),
        ("320 mm", 320.0),
        ("32 cm", 320.0),
        ("32.1 cm", 321.0),
        ("1.2 m", 1200.0),
        ("12 5/8 in", 320.675),
        ("1' 0\"", 304.8),
        ("5/8\"", 15.875),
    ] {
        assert_eq!(parse_length(text, Millimetre), Ok(mm), "{text}");
    }
}

#[test]
fn what_is_no_length_is_refused_with_its_reason() {
    let unexpected = |s: &str| LengthProblem::Unexpected(s.into());
    for (text, problem) in [
        ("", LengthProblem::NoNumber),
        ("   ", LengthProblem::NoNumber),
        ("in", LengthProblem::NoNumber),
        ("-", LengthProblem::NoNumber),
        ("3,25", LengthProblem::Comma),
        ("1,250", LengthProblem::Comma),
        ("5/0", LengthProblem::OverNought),
        ("3 5/0", LengthProblem::OverNought),
        ("12 13/8", LengthProblem::OddFraction),
        ("12.5 1/8", LengthProblem::OddFraction),
        ("12 - 5/8", LengthProblem::MinusInside),
        ("12-5", LengthProblem::MinusInside),
        ("12 -5", LengthProblem::MinusInside),
        ("--3", LengthProblem::MinusInside),
        ("1.5' 3\"", LengthProblem::BrokenFeet),
        ("1/2' 3\"", LengthProblem::BrokenFeet),
        ("12 furlongs", LengthProblem::UnknownUnit("furlongs".into())),
        ("NaN", LengthProblem::UnknownUnit("NaN".into())),
        ("1e3", LengthProblem::UnknownUnit("e".into())),
        ("12 5", unexpected("5")),
        ("1/2/4", unexpected("/")),
        ("1.2.3", unexpected("1.2.3")),
        ("12\" 5/8", unexpected("5")),
        ("3 in 1 ft", unexpected("1")),
        ("32 cm 5 mm", unexpected("5")),
        ("12 5/8 %", unexpected("%")),
        ("123456789", LengthProblem::TooLarge),
        ("99999.5 ft", LengthProblem::TooLarge),
    ] {
        let fault = parse_length(text, Inch).expect_err(text);
        assert_eq!(fault.problem, problem, "{text}");
    }
}

#[test]
fn a_refusal_says_what_was_typed_and_what_is_expected() {
    let said = |text, unit| parse_length(text, unit).expect_err(text).to_string();
    assert_eq!(
        said(" 3,25 ", Inch),
        "`3,25` can't be read as a length: its comma may stand for a decimal point or for thousands; \
         expected a length such as 12 5/8, 12.625, 1' 3-1/2\" or 320 mm"
    );
    assert_eq!(
        said("12 ells", Millimetre),
        "`12 ells` can't be read as a length: `ells` is no unit that is known here; \
         expected a length such as 320, 320.5, 32 cm or 12 5/8 in"
    );
}

#[test]
fn lengths_show_in_the_style_of_the_trade() {
    for (inches, text) in [
        (0.0, "0"),
        (-0.0, "0"),
        (-1e-9, "0"),
        (12.0, "12"),
        (12.625, "12 5/8"),
        (0.625, "5/8"),
        (-3.75, "-3 3/4"),
        (-0.5, "-1/2"),
        (1.0 / 64.0, "1/64"),
        (5.0 + 63.0 / 64.0, "5 63/64"),
        (11.999_999_5, "12"),
        (12.6, "12.6"),
        (12.333_333, "12.3333"),
        (-0.1, "-0.1"),
        (0.000_01, "0"),
        (f64::NAN, "-"),
        (f64::INFINITY, "-"),
    ] {
        assert_eq!(format_length(inches, Inch), text, "{inches}");
    }
    for (mm, text) in [
        (320.0, "320"),
        (320.5, "320.5"),
        (320.675, "320.68"),
        (-0.001, "0"),
        (-15.875, "-15.88"),
        (100.0, "100"),
        (1e300, &format!("{:.0}", 1e300)),
    ] {
        assert_eq!(format_length(mm, Millimetre), text, "{mm}");
    }
}

#[test]
fn a_tape_reads_the_nearest_mark_and_says_what_is_left() {
    let reading = TapeReading::thirty_seconds(12.6);
    assert_eq!(format_length(reading.reading, Inch), "12 19/32");
    assert!((reading.left_over - 0.006_25).abs() < 1e-12);
    assert_eq!(TapeReading::of(-3.8, 16).reading, -3.8125);
    assert_eq!(TapeReading::of(2.4, 0).reading, 2.0);
}

proptest! {
    #[test]
    fn any_text_is_read_or_refused(text in any::<String>(), near in "[-0-9 ./,'\"inftcm\u{bd}\u{2212}]{0,16}") {
        for text in [text, near] {
            for unit in [Inch, Millimetre] {
                if let Ok(v) = parse_length(&text, unit) {
                    prop_assert!(v.is_finite());
                }
            }
        }
    }

    #[test]
    fn sixty_fourths_come_back_exactly(parts in -640_000_i32..640_000) {
        let inches = f64::from(parts) / 64.0;
        let text = format_length(inches, Inch);
        prop_assert_eq!(parse_length(&text, Inch), Ok(inches), "{}", text);
    }

    #[test]
    fn what_the_shown_digits_hold_comes_back_exactly(n in -10_000_000_i32..10_000_000) {
        for (value, unit) in [(f64::from(n) / 100.0, Millimetre), (f64::from(n / 10) / 10_000.0, Inch)] {
            let text = format_length(value, unit);
            // A decimal within a millionth of a sixty-fourth is that sixty-fourth only if it is the same number.
            prop_assert_eq!(parse_length(&text, unit), Ok(value), "{}", text);
        }
    }

    #[test]
    fn what_is_shown_is_never_far_off(value in -5000.0..5000.0_f64) {
        for (unit, off) in [(Inch, 0.000_051), (Millimetre, 0.005_1)] {
            let back = parse_length(&format_length(value, unit), unit).expect("a length");
            prop_assert!((back - value).abs() <= off);
        }
    }

    #[test]
    fn feet_inches_and_fractions_add_up(feet in 0_u32..100, inches in 0_u32..12, over in 1_u32..64) {
        let expected = f64::from(feet) * 12.0 + f64::from(inches) + f64::from(over) / 64.0;
        for text in [
            format!("{feet}' {inches}-{over}/64\""),
            format!("{feet} ft {inches} {over}/64 in"),
            format!("{feet}'-{inches} {over}/64"),
        ] {
            prop_assert_eq!(parse_length(&text, Inch), Ok(expected), "{}", text);
        }
        prop_assert_eq!(parse_length(&format!("-{feet}' {inches}\""), Inch).map(f64::abs), Ok(expected.floor()));
    }

    #[test]
    fn a_conversion_comes_back_to_a_ten_millionth(value in -2000.0..2000.0_f64) {
        let there = convert_length(value, Inch, Millimetre);
        prop_assert!((there - value * 25.4).abs() <= 0.51e-7);
        prop_assert!((convert_length(there, Millimetre, Inch) - value).abs() <= 1.1e-7);
        prop_assert_eq!(convert_length(value, Inch, Inch).to_bits(), value.to_bits());
    }
}
