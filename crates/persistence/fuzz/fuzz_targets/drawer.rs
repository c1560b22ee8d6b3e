//! Whatever text is given as the drawer of parts: it is refused with a message or comes back as it was, and its parts are put in or refused.
#![no_main]

use std::sync::LazyLock;

use libfuzzer_sys::fuzz_target;
use trammel_build::{AxleName, Build, Edit};
use trammel_persistence::{Drawer, demos, read};

static DEMO: LazyLock<Build> = LazyLock::new(|| read(demos()[0].text).expect("a demo"));

fuzz_target!(|text: &str| {
    let drawer = match Drawer::read(text) {
        Ok(drawer) => drawer,
        Err(fault) => return assert!(!fault.to_string().is_empty()),
    };
    if let Ok(written) = drawer.write() {
        let again = Drawer::read(&written).expect("what was written reads");
        // No number is equal to itself when it is none.
        assert!(again == drawer || written.contains("NaN"));
    }
    for part in &drawer.parts {
        match Edit::PutPart(AxleName::Front, Box::new(part.clone())).apply(&DEMO) {
            Ok(build) => assert!(build.faults().is_empty()),
            Err(fault) => assert!(!fault.to_string().is_empty()),
        }
    }
});
