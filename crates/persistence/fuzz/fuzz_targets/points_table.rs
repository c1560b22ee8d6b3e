//! Whatever text is given as a table of points: it is refused with a message or gives finite points, each once.
#![no_main]

mod share;

use std::collections::BTreeSet;

use libfuzzer_sys::fuzz_target;
use trammel_persistence::read_points;

fuzz_target!(|text: &str| {
    match read_points(text, share::unit(text)) {
        Ok(points) => {
            let names: BTreeSet<_> = points.iter().map(|(at, _)| *at).collect();
            assert_eq!(names.len(), points.len());
            assert!(points.iter().flat_map(|(_, t)| t).all(|v| v.is_finite()));
        }
        Err(fault) => assert!(!fault.to_string().is_empty()),
    }
});
