//! Whatever text is given as a tape survey: it is refused with a message, can't be worked out for a reason, or gives finite places.
#![no_main]

mod share;

use libfuzzer_sys::fuzz_target;
use trammel_persistence::read_survey;
use trammel_setup::suggest;

/// One survey in so many is adjusted.
const ADJUSTED: u32 = 4;
/// For one in so many further readings are suggested.
const SUGGESTED: u32 = 16;

fuzz_target!(|text: &str| {
    let file = match read_survey(text) {
        Ok(file) => file,
        Err(fault) => return assert!(!fault.to_string().is_empty()),
    };
    // A real survey has dozens of readings; the cube of hundreds would only slow the search for faults.
    if file.survey.readings().len() > 40 || !share::one_in(ADJUSTED, text) {
        return;
    }
    match file.survey.adjust() {
        Ok(found) => {
            for placed in &found.points {
                assert!(placed.at.iter().all(|v| v.is_finite()));
                assert!(placed.covariance.iter().all(|v| v.is_finite()));
            }
        }
        Err(fault) => assert!(!fault.to_string().is_empty()),
    }
    if !share::one_in(SUGGESTED, text) {
        return;
    }
    for s in suggest(&file.survey, 1.0) {
        assert!(s.own_then.is_finite() && s.worst_then.is_finite());
    }
});
