//! Times by the clock: never compared with those of another day or machine, only with each other within a run.

use std::{
    process::{Command, Stdio},
    time::{Duration, Instant},
};

use crate::cases::{CALIBRATION, Case};

/// What is timed takes at least this long, so that the clock is no part of it, and not much longer, so that some runs go through unbroken on a busy machine.
const RUN: Duration = Duration::from_micros(300);
/// How long a case is timed for.
const SPAN: Duration = Duration::from_millis(1500);
/// At least so many runs of which the least counts.
const RUNS: u32 = 5;

/// Times of a case and of the calibration beside it, seconds.
#[derive(Clone, Copy, Debug)]
pub struct Times {
    /// One go of the case.
    pub case: f64,
    /// One go of the calibration.
    pub calibration: f64,
}

/// The least time of one go, the calibration taking turns with the case so that both see the same machine.
#[must_use]
pub fn least(case: &Case) -> Times {
    let (mut work, mut fixed) = ((case.ready)(), (CALIBRATION.ready)());
    let (goes, fixed_goes) = (goes(&mut work), goes(&mut fixed));
    let mut found = Times {
        case: f64::MAX,
        calibration: f64::MAX,
    };
    let start = Instant::now();
    let mut runs = 0;
    while runs < RUNS || start.elapsed() < SPAN {
        found.case = found.case.min(each(&mut work, goes));
        found.calibration = found.calibration.min(each(&mut fixed, fixed_goes));
        runs += 1;
    }
    found
}

/// How many goes make up a run.
fn goes(work: &mut dyn FnMut()) -> u32 {
    let start = Instant::now();
    let mut goes = 0;
    while goes == 0 || start.elapsed() < RUN {
        work();
        goes += 1;
    }
    goes
}

fn each(work: &mut dyn FnMut(), goes: u32) -> f64 {
    let start = Instant::now();
    (0..goes).for_each(|_| work());
    start.elapsed().as_secs_f64() / f64::from(goes)
}

/// Median time of a whole command over so many starts, seconds; its output is thrown away.
///
/// # Errors
///
/// What went wrong in words, where it can't be started or does not end with 0 or 1 (an answer that is no).
pub fn command(program: &str, words: &[&str], starts: usize) -> Result<f64, String> {
    let told = || format!("{program} {}", words.join(" "));
    let mut times = Vec::with_capacity(starts);
    for _ in 0..starts {
        let start = Instant::now();
        let status = Command::new(program)
            .args(words)
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .status()
            .map_err(|e| format!("{}: {e}", told()))?;
        times.push(start.elapsed().as_secs_f64());
        if !matches!(status.code(), Some(0 | 1)) {
            return Err(format!("{}: {status}", told()));
        }
    }
    median(&mut times).ok_or_else(|| format!("{}: not started once", told()))
}

/// The middle one, or the mean of the two in the middle.
pub fn median(values: &mut [f64]) -> Option<f64> {
    values.sort_by(f64::total_cmp);
    let middle = values.len() / 2;
    let upper = *values.get(middle)?;
    if values.len() % 2 == 1 {
        return Some(upper);
    }
    Some((upper + values.get(middle.checked_sub(1)?)?) / 2.0)
}
