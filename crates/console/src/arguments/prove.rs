//! The words of the commands that prove.

use std::path::PathBuf;

use clap::{Args, ValueEnum};
use trammel_analysis::ForcePoint;

use super::common::{PosesArguments, finite};

#[derive(Debug, Args)]
pub(crate) struct ForcesArguments {
    /// Build file, or demo:NAME.
    #[arg(value_name = "BUILD")]
    pub build: PathBuf,
    /// Where the force acts: the tyre's contact point or the wheel centre.
    #[arg(long, value_enum)]
    pub at: PointWord,
    /// The force, N, vehicle axes: x forward, y left, z up.
    #[arg(long, value_name = "FX,FY,FZ", allow_hyphen_values = true, value_parser = force)]
    pub force: Force,
    /// A moment about the vertical beside it, N times the unit of length, turning from x to y.
    #[arg(long, value_name = "MZ", allow_hyphen_values = true, default_value_t = 0.0, value_parser = finite)]
    pub moment_z: f64,
    #[command(flatten)]
    pub poses: PosesArguments,
}

#[derive(Debug, Args)]
pub(crate) struct ProveArguments {
    /// Build file, or demo:NAME.
    #[arg(value_name = "BUILD")]
    pub build: PathBuf,
    /// Put on this load case alone.
    #[arg(long, value_name = "NAME")]
    pub case: Option<String>,
    /// Write JSON.
    #[arg(long)]
    pub json: bool,
}

/// Where a force acts, on the command line.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum PointWord {
    Contact,
    Hub,
}

impl From<PointWord> for ForcePoint {
    fn from(word: PointWord) -> Self {
        match word {
            PointWord::Contact => Self::Contact,
            PointWord::Hub => Self::Hub,
        }
    }
}

/// A force as it was typed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Force(pub [f64; 3]);

/// Reads `-1000,0,2500`.
fn force(text: &str) -> Result<Force, String> {
    let numbers: Option<Vec<f64>> = text.split(',').map(|part| finite(part).ok()).collect();
    match numbers.as_deref() {
        Some([x, y, z]) => Ok(Force([*x, *y, *z])),
        _ => Err(format!(
            "read {text:?}, expected three numbers in N, such as -1000,0,2500"
        )),
    }
}

/// Reads a number that is one.
#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn forces_are_read_and_odd_ones_refused() {
        assert_eq!(force("-1000,0, 2500.5"), Ok(Force([-1000.0, 0.0, 2500.5])));
        for odd in ["", "1,2", "1,2,3,4", "a,0,0", "NaN,0,0", "inf,0,0"] {
            assert!(force(odd).expect_err(odd).contains("expected"), "{odd}");
        }
    }
}
