//! Running the programs that measure.

use std::path::Path;
use std::process::Command;

/// Whether the program answers; if not, says loudly that nothing was measured, or fails where it is required.
pub fn at_hand(what: &str, command: &mut Command) -> bool {
    let answers = command.output().is_ok_and(|output| output.status.success());
    if !answers {
        let required =
            std::env::var("TRAMMEL_OUTSIDE_TOOLS").is_ok_and(|value| value == "required");
        assert!(!required, "{what} is required and doesn't answer");
        eprintln!(
            "\n*** SKIPPED: {what} is not installed; nothing was measured from outside ***\n"
        );
    }
    answers
}

pub fn poppler(program: &str) -> bool {
    at_hand(
        &format!("{program} (poppler-utils)"),
        Command::new(program).arg("-v"),
    )
}

pub fn python() -> Command {
    Command::new(std::env::var("TRAMMEL_PYTHON").unwrap_or_else(|_| "python3".to_owned()))
}

/// What a program prints.
pub fn printed(command: &mut Command) -> String {
    let output = command.output().expect("the program runs");
    assert!(
        output.status.success(),
        "{command:?}: {}",
        String::from_utf8_lossy(&output.stderr)
    );
    String::from_utf8(output.stdout).expect("text")
}

/// What a script of the reference folder finds in a file.
pub fn script(name: &str, file: &Path) -> serde_json::Value {
    let script = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("reference")
        .join(name);
    serde_json::from_str(&printed(python().arg(script).arg(file))).expect("JSON")
}
