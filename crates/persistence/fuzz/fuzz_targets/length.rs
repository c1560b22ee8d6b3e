//! Whatever is typed as a length: it is refused with a message or is a finite number that shows and reads back to within what is shown.
#![no_main]

use libfuzzer_sys::fuzz_target;
use trammel_build::{LengthUnit, format_length, parse_length};

fuzz_target!(|text: &str| {
    for (unit, off) in [
        (LengthUnit::Inch, 0.000_051),
        (LengthUnit::Millimetre, 0.005_1),
    ] {
        match parse_length(text, unit) {
            Ok(value) => {
                assert!(value.is_finite());
                let shown = format_length(value, unit);
                let back = parse_length(&shown, unit);
                assert!(back.is_ok_and(|b| (b - value).abs() <= off), "{shown}");
            }
            Err(fault) => assert!(!fault.to_string().is_empty()),
        }
    }
});
