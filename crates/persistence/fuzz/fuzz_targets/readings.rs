//! Whatever text is given as a sheet of readings: it is refused with a message or gives a session that a build keeps, and whose toe is finite.
#![no_main]

mod share;

use std::sync::LazyLock;

use libfuzzer_sys::fuzz_target;
use trammel_build::{AxleModel, AxleName, Build, Edit};
use trammel_persistence::{demos, read, read_readings, write};

/// A whole build is written and read again for one sheet in so many.
const KEPT: u32 = 16;

static DEMO: LazyLock<(Build, AxleModel)> = LazyLock::new(|| {
    let build = read(demos()[0].text).expect("a demo");
    let axle = build.axle(AxleName::Front).expect("posed");
    (build, axle)
});

fuzz_target!(|text: &str| {
    let (build, axle) = &*DEMO;
    let unit = share::unit(text);
    let session = match read_readings(text, unit) {
        Ok(session) => session,
        Err(fault) => return assert!(!fault.to_string().is_empty()),
    };
    if let Ok(sheets) = session.sheets(axle, unit) {
        for reduced in sheets.iter().filter_map(|s| s.sheet.reduce().ok()) {
            let finite = |p: &trammel_setup::ToePoint| p.change.is_finite() && p.deviation > 0.0;
            assert!(reduced.readings.points().all(finite));
        }
    }
    if !share::one_in(KEPT, text) {
        return;
    }
    let mut set_up = build.set_up.clone();
    set_up.sessions.push(session);
    if let Ok(kept) = Edit::SetSetUp(Box::new(set_up)).apply(build) {
        assert_eq!(read(&write(&kept)).as_ref(), Ok(&kept));
    }
});
