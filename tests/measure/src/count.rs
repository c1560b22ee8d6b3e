//! Instructions of a case, counted by valgrind: the same to a thousandth however busy the machine is.

use std::{fs, path::Path, process::Command};

use crate::cases::Case;

/// Keeps the C library to one set of its routines, so that counts do not depend on what a processor has. Names of all its versions; it skips what it does not know.
const PLAIN_ROUTINES: &str =
    "glibc.cpu.hwcaps=-AVX2,-AVX2_Usable,-FMA,-FMA_Usable,-FMA4,-AVX512F,-AVX512VL,-ERMS,-FSRM";

/// Whether valgrind can be started here.
#[must_use]
pub fn is_there() -> bool {
    let version = Command::new("valgrind").arg("--version").output();
    version.is_ok_and(|v| v.status.success())
}

/// Instructions of one go of a case. What the program does besides is counted in a run without a go and taken off.
///
/// # Errors
///
/// What went wrong in words.
pub fn instructions(program: &Path, case: &Case) -> Result<f64, String> {
    let idle = run(program, case, 0)?;
    let busy = run(program, case, case.goes)?;
    Ok(busy.saturating_sub(idle) as f64 / f64::from(case.goes))
}

fn run(program: &Path, case: &Case, goes: u32) -> Result<u64, String> {
    let fault = |why: String| format!("{}: {why}", case.name);
    let file = format!("trammel-count-{}-{goes}", std::process::id());
    let file = std::env::temp_dir().join(file);
    let output = Command::new("valgrind")
        .arg("--tool=callgrind")
        .arg(format!("--callgrind-out-file={}", file.display()))
        .arg(program)
        .args(["go", case.name, &goes.to_string()])
        .env("GLIBC_TUNABLES", PLAIN_ROUTINES)
        .output()
        .map_err(|e| fault(e.to_string()))?;
    if !output.status.success() {
        let said = String::from_utf8_lossy(&output.stderr);
        return Err(fault(format!("valgrind: {}\n{said}", output.status)));
    }
    let text = fs::read_to_string(&file).map_err(|e| fault(e.to_string()));
    // It lies among temporary files, where it does no harm.
    let _ = fs::remove_file(&file);
    total(&text?).ok_or_else(|| fault("valgrind wrote no sum".into()))
}

/// The sum that callgrind writes at the end of its file.
fn total(text: &str) -> Option<u64> {
    let line = text.lines().rev();
    let mut sums = line.filter_map(|l| l.strip_prefix("totals:").or(l.strip_prefix("summary:")));
    sums.next()?.trim().parse().ok()
}

#[cfg(test)]
mod tests {
    use super::total;

    #[test]
    fn the_sum_at_the_end_is_read() {
        assert_eq!(
            total("events: Ir\nfn=(1)\n1 5\n\ntotals: 123456\n"),
            Some(123_456)
        );
        assert_eq!(total("events: Ir\nsummary: 77\n"), Some(77));
        assert_eq!(total("events: Ir\n"), None);
    }
}
