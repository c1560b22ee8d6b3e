//! The words of the set-up commands.

use std::path::PathBuf;

use clap::Args;
use trammel_drawings::sheet::Paper;

use super::common::OutArguments;

#[derive(Debug, Args)]
pub(crate) struct AdviseArguments {
    /// Build file, or demo:NAME.
    #[arg(value_name = "BUILD")]
    pub build: PathBuf,
    /// Table of toe readings.
    #[arg(long, value_name = "FILE")]
    pub readings: PathBuf,
    #[command(flatten)]
    pub out: OutArguments,
    /// Write JSON.
    #[arg(long)]
    pub json: bool,
}

#[derive(Debug, Args)]
#[command(mut_arg("out", |out| out.requires("against")))]
pub(crate) struct SurveyArguments {
    /// Table of a tape survey.
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// Build file, or demo:NAME: what stands elsewhere than it was drawn there, and what that does to toe.
    #[arg(long, value_name = "BUILD")]
    pub against: Option<PathBuf>,
    #[command(flatten)]
    pub out: OutArguments,
    /// Write JSON.
    #[arg(long)]
    pub json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct CardsArguments {
    /// Build file, or demo:NAME; the measuring sheet takes its unit.
    #[arg(value_name = "BUILD")]
    pub build: PathBuf,
    /// PDF file to write.
    #[arg(long, value_name = "FILE")]
    pub out: PathBuf,
    /// Paper: a4, a3, letter or tabloid.
    #[arg(long, value_name = "PAPER", default_value = "a4", value_parser = paper)]
    pub paper: Paper,
    /// Instead of the cards the sheet to measure spindles, racks, springs and joints by.
    #[arg(long)]
    pub measuring_sheet: bool,
    /// Write over a file that is there already.
    #[arg(long)]
    pub force: bool,
}

fn paper(text: &str) -> Result<Paper, String> {
    text.parse::<Paper>().map_err(|fault| fault.to_string())
}

pub(crate) const CARDS_ABOUT: &str = "\
Cards for setting up, to print: what to lock, check and measure, with blank columns for every
wheel height; readings and moves, where the build holds any; what a turn and a flat of the tie rod
do; and the list to sign before the vehicle is driven. One PDF; the same build gives the same bytes.
With --measuring-sheet: what to measure on spindles, racks, springs and joints, from where to where.";

pub(crate) const ADVISE_ABOUT: &str = "\
Say what to turn or shim next, from readings of toe against wheel travel.

The readings are a table (commas, semicolons or tabs). Settings stand above it, a line each:
  unit, mm                 or in; without it the build's own
  method, two dials        one dial, tape, laser, mirror, degrees
  spacing, 250             between the contacts (two dials, one dial)
  grows, in                which way the plate goes at a dial whose number grows (both dials alike)
  across, 530              from front mark to rear mark on one tyre (tape)
  distance, 3000           to the board (laser, mirror);  board, ahead  or behind (laser)
  accuracy, 0.02           of one number (a standard deviation); travel accuracy, 1
  side, left               where the table has no column `side`
  ride, 410                the place that is ride height, where it is not travel 0
  adjusted, left, rack_end, 2.5   what was moved since the session before: rack_end (out is
                           positive), washers, shims; a line each
  date, 3 May    notes, ...
Then a heading and a line for each place of the wheel, ride height among them:
  travel (up 25, down 25, or 25 and -25), wheel height, shock length, or blocks
  front, rear (two dials, tape); dial; spot and way (laser: inboard, outboard; mirror: ahead, back);
  toe and way (degrees: IN, OUT; a sign is refused)
  side, run, rack, ride (yes at ride height): where they are needed
Lines that start with # are remarks. Read ride height again at the end of a run: the return is checked.

With --out the session is kept in the build, so that the next round counts both.
Exit 0: the moves are expected to bring every wheel that was read within the limit; 1: no adjuster
does, and where to weld is said; 2: the input can't be used.

With --json, one object (angles in degrees, toe-in positive; lengths in the build's unit):
  title, unit, limit_deg, cured, adjusters_assumed, shims (shims under the rack, both sides)
  read_together   what a tape across both tyres can't tell, or null
  asks       list of questions about readings that look wrong
  sides      list of { side, readings [{ rack, travel, toe_deg, way, deviation_deg }],
             return_to_zero_deg, came_back, repeatability_deg,
             cause { tie_rod, slope_deg_per_25_mm, bowl_deg, height_error, length_error, words }
             (each figure with its _deviation), learned { figures, misfit, alike, errors },
             now and best { moves, largest_deg, confidence, rod_longer, rod_words }, alternatives,
             reweld { by, to, largest_deg }, next (as readings) }
  out        the file written";

pub(crate) const SURVEY_ABOUT: &str = "\
Coordinates from tape readings, with how well each is known.

The survey is a table (commas, semicolons or tabs), a line each:
  unit, mm                         or in; tape class, 2
  mark, A, 0, 0, 0                 a mark whose place is given; a sixth cell: how well, if measured
  point, joint, above              a sought point; above, below, left, right, ahead or behind tells
                                   which of two mirror places; or three numbers: about where
  tape, A, joint, 412.5            height, joint, 263    offset, joint, 210 (from the centre line)
  station, joint, 95 (forward)     rise, left, forward: from one point to another
  angle, A, joint, 4.5             degrees by an angle gauge, rising positive
Behind a reading may stand: accuracy 2 (a standard deviation), round (the tape went round something),
starts 25.4 (a burned end), from near 12, from far 12, to near 12, to far 12 (held at the edge of a
hole of that diameter). Lines that start with # are remarks.

With --against a point is compared with the hardpoint of its name (tie_rod.inner is the left front one,
rear.right.tie_rod.inner says it all); with --out as well the surveyed places go into the build, how well
each is known with them. While a reading contradicts the others nothing is written.

Exit 0: coordinates; 1: coordinates, but a reading contradicts the others; 2: the input can't be used.

With --json, one object (lengths in the table's unit, angles in degrees):
  unit, spare (readings beyond the fewest), variance_factor
  points     list of { name, x, y, z, deviation [x, y, z], covariance [xx, yy, zz, xy, xz, yz],
             weak { direction, deviation } }
  readings   list of { what, left_over, checked (0 to 1), standardised }
  as_built   with --against: list of { axle, side, point, by [forward, outboard, up], toe_change_deg }
  out        the file written
  blunder    { what, off_by, expected, or, slip }
  suggestions   list of { what, about, own_now, own_then (the place it is about), worst_now, worst_then }";
