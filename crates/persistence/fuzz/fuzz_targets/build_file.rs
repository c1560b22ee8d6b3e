//! Whatever bytes are given as a build file: they are refused with a message or they are a build that survives writing, reading and editing.
#![no_main]

use libfuzzer_sys::fuzz_target;
use trammel_persistence::{Document, read, read_bytes, write};

fuzz_target!(|bytes: &[u8]| {
    let build = match read_bytes(bytes) {
        Ok(build) => build,
        Err(fault) => {
            assert!(!fault.to_string().is_empty());
            return;
        }
    };
    assert_eq!(read(&write(&build)).as_ref(), Ok(&build));
    let Ok(text) = std::str::from_utf8(bytes) else {
        panic!("a build out of no text");
    };
    let Ok(document) = Document::read(text) else {
        panic!("read once and not again");
    };
    assert_eq!(document.text_for(&build), text);
    let mut edited = build;
    edited.title.push('"');
    edited.front.tie_rod.inner[2] += 0.0625;
    edited.front.rack.travel = Some(1.5);
    edited.notes = "fuzzed\n\\".to_owned();
    if edited.faults().is_empty() {
        assert_eq!(read(&document.text_for(&edited)).as_ref(), Ok(&edited));
    }
});
