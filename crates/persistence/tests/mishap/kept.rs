//! Every input that fuzzing keeps is read by every reader again: refused with a message, or read.

use std::{fs, path::Path};

use trammel_build::{LengthUnit, parse_length};
use trammel_persistence::{Drawer, read_bytes, read_points, read_readings, read_survey};

#[test]
fn what_fuzzing_kept_is_refused_with_a_message_or_read() {
    let fuzz = Path::new(env!("CARGO_MANIFEST_DIR")).join("fuzz");
    let mut count = 0;
    for target in ["seeds", "kept"].map(|f| fuzz.join(f)) {
        for folder in fs::read_dir(target).expect("a folder").flatten() {
            for file in fs::read_dir(folder.path()).expect("a folder").flatten() {
                let bytes = fs::read(file.path()).expect("a file");
                count += 1;
                if let Err(fault) = read_bytes(&bytes) {
                    assert!(!fault.to_string().is_empty());
                }
                let text = String::from_utf8_lossy(&bytes);
                for unit in [LengthUnit::Inch, LengthUnit::Millimetre] {
                    let faults = [
                        parse_length(&text, unit).err().map(|f| f.to_string()),
                        read_points(&text, unit).err().map(|f| f.to_string()),
                        read_readings(&text, unit).err().map(|f| f.to_string()),
                        read_survey(&text).err().map(|f| f.to_string()),
                        Drawer::read(&text).err().map(|f| f.to_string()),
                    ];
                    assert!(faults.iter().flatten().all(|f| !f.is_empty()));
                }
            }
        }
    }
    assert!(count > 300, "only {count} inputs");
}
