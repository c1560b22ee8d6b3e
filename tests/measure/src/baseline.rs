//! What a case cost when it was last accepted, as a multiple of the calibration, and whether it costs more now.

use std::fmt::Write as _;

/// How a cost was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Way {
    /// Instructions counted by valgrind.
    Counted,
    /// Least time by the clock, the calibration beside it.
    Timed,
}

impl Way {
    /// How much more a case may cost, as a share: counts repeat to a thousandth, but compilers and C libraries differ; a clock on a busy machine says little.
    #[must_use]
    pub fn allowed(self) -> f64 {
        match self {
            Self::Counted => 0.10,
            Self::Timed => 1.5,
        }
    }

    fn word(self) -> &'static str {
        match self {
            Self::Counted => "instructions",
            Self::Timed => "time",
        }
    }
}

/// Cost of a case as a multiple of the calibration's: by instructions and by the clock.
#[derive(Clone, Debug, PartialEq)]
pub struct Cost {
    /// Name of the case.
    pub case: String,
    /// By instructions.
    pub counted: f64,
    /// By the clock.
    pub timed: f64,
}

impl Cost {
    fn by(&self, way: Way) -> f64 {
        match way {
            Way::Counted => self.counted,
            Way::Timed => self.timed,
        }
    }
}

const HEADING: &str = "case\tinstructions\ttime";

/// Reads a baseline.
///
/// # Errors
///
/// The line that can't be read, in words.
pub fn read(text: &str) -> Result<Vec<Cost>, String> {
    let mut costs = Vec::new();
    for (number, line) in text.lines().enumerate() {
        if line.starts_with('#') || line == HEADING || line.trim().is_empty() {
            continue;
        }
        let cost = cost(line).ok_or_else(|| {
            let at = number + 1;
            format!("line {at} of the baseline: expected a case and two figures above 0 with tabs between, found {line:?}")
        })?;
        costs.push(cost);
    }
    Ok(costs)
}

fn cost(line: &str) -> Option<Cost> {
    let mut cells = line.split('\t');
    let case = cells.next()?.to_owned();
    let mut figure = || cells.next()?.trim().parse().ok().filter(|f: &f64| *f > 0.0);
    let (counted, timed) = (figure()?, figure()?);
    Some(Cost {
        case,
        counted,
        timed,
    })
}

/// Writes a baseline.
#[must_use]
pub fn write(costs: &[Cost]) -> String {
    let mut text = format!(
        "# What each case costs as a multiple of the calibration (src/calibration.rs), both on one machine. Written by tests/measure/check --accept.\n{HEADING}\n"
    );
    for c in costs {
        // A string takes whatever is written.
        let _ = writeln!(text, "{}\t{:.4}\t{:.4}", c.case, c.counted, c.timed);
    }
    text
}

/// How a case stands against the baseline.
#[derive(Clone, Debug, PartialEq)]
pub enum Verdict {
    /// Within what is allowed either way.
    Level,
    /// Costs less than is put down to chance: worth accepting, so that the gain is kept.
    Fallen(String),
    /// Costs more than allowed.
    Grown(String),
    /// The baseline does not have it.
    Unknown(String),
}

/// Compares a case's cost, as a multiple of the calibration, with the baseline.
#[must_use]
pub fn compare(baseline: &[Cost], case: &str, now: f64, way: Way) -> Verdict {
    let Some(was) = baseline.iter().find(|c| c.case == case) else {
        return Verdict::Unknown(format!(
            "{case}: {now:.3} calibrations; the baseline does not have it"
        ));
    };
    let was = was.by(way);
    let (growth, allowed) = (now / was - 1.0, way.allowed());
    let told = |verb: &str| {
        format!(
            "{case}: {} {verb} from {was:.3} to {now:.3} calibrations ({:+.1} %; {:.0} % is allowed)",
            way.word(),
            1e2 * growth,
            1e2 * allowed
        )
    };
    // What is no number has not passed.
    if growth.is_nan() || growth > allowed {
        Verdict::Grown(told("grew"))
    } else if growth < -allowed {
        Verdict::Fallen(told("fell"))
    } else {
        Verdict::Level
    }
}

#[cfg(test)]
mod tests {
    use super::{Cost, Verdict, Way, compare, read, write};

    fn baseline() -> Vec<Cost> {
        vec![Cost {
            case: "a sweep".into(),
            counted: 10.0,
            timed: 8.0,
        }]
    }

    #[test]
    fn a_baseline_is_read_as_it_was_written() {
        assert_eq!(read(&write(&baseline())), Ok(baseline()));
        for wrong in ["a sweep", "a sweep\t1", "a sweep\t0\t1", "a sweep\tx\t1"] {
            let told = read(wrong).unwrap_err();
            assert!(
                told.contains("line 1") && told.contains("a sweep"),
                "{told}"
            );
        }
    }

    #[test]
    fn what_grew_is_told_with_both_figures() {
        let grown = compare(&baseline(), "a sweep", 11.2, Way::Counted);
        let told = "a sweep: instructions grew from 10.000 to 11.200 calibrations (+12.0 %; 10 % is allowed)";
        assert_eq!(grown, Verdict::Grown(told.into()));
        assert!(matches!(
            compare(&baseline(), "a sweep", f64::NAN, Way::Counted),
            Verdict::Grown(_)
        ));
    }

    #[test]
    fn little_is_level_much_less_is_a_gain_and_a_new_case_is_unknown() {
        let on = |case, now, way| compare(&baseline(), case, now, way);
        assert_eq!(on("a sweep", 10.9, Way::Counted), Verdict::Level);
        assert_eq!(on("a sweep", 9.1, Way::Counted), Verdict::Level);
        assert_eq!(on("a sweep", 13.0, Way::Timed), Verdict::Level);
        assert!(matches!(
            on("a sweep", 8.0, Way::Counted),
            Verdict::Fallen(_)
        ));
        assert!(matches!(on("a sweep", 20.5, Way::Timed), Verdict::Grown(_)));
        assert!(matches!(on("a map", 1.0, Way::Timed), Verdict::Unknown(_)));
    }
}
