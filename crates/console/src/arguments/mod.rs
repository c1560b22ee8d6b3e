//! The words on the command line.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand};
use trammel_analysis::{DEFAULT_POSITIONS, SweepColumn};

pub(crate) mod common;
pub(crate) mod picture;
pub(crate) mod prove;
mod prove_help;
pub(crate) mod set_up;
pub(crate) mod sheets;
pub(crate) mod tune;
mod tune_help;

use common::{PosesArguments, UnitWord};
use picture::PictureArguments;
use prove::{ForcesArguments, ProveArguments};
use prove_help::{FORCES_ABOUT, PROVE_ABOUT};
use set_up::{
    ADVISE_ABOUT, AdviseArguments, CARDS_ABOUT, CardsArguments, SURVEY_ABOUT, SurveyArguments,
};
use sheets::{SHEETS_ABOUT, SheetsArguments};
use tune::{LiftArguments, MapArguments, ScatterArguments, TuneArguments};
use tune_help::{LIFT_ABOUT, MAP_ABOUT, SCATTER_ABOUT, TUNE_ABOUT};

/// Suspension and steering layout for light off-road karts and buggies.
///
/// Drag the hardpoints of an axle and watch toe, camber and the rest follow; see what is near or
/// past a limit and what would mend it. The commands do the same work without a window.
///
/// BUILD is a build file (.ron), or one of the demos by name: demo:good, demo:lifted,
/// demo:badly-placed-rack, demo:measured.
///
/// Every command ends with 0 when it is done, and with 2, one line on standard error and nothing on
/// standard output when its input can't be used.
#[derive(Debug, Parser)]
#[command(
    name = "trammel",
    version,
    args_conflicts_with_subcommands = true,
    disable_help_subcommand = true,
    verbatim_doc_comment
)]
pub(crate) struct Arguments {
    /// Build to open in the window.
    #[arg(value_name = "BUILD")]
    pub build: Option<PathBuf>,
    #[command(subcommand)]
    pub command: Option<Command>,
}

#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Write a table of poses over wheel travel and rack position.
    #[command(long_about = sweep_about())]
    Sweep(SweepArguments),
    /// List what is near or past a limit, and what would mend it.
    #[command(long_about = CHECK_ABOUT)]
    Check(CheckArguments),
    /// Write the forces of a corner over wheel travel and rack position.
    #[command(long_about = FORCES_ABOUT)]
    Forces(ForcesArguments),
    /// Check every part under every load case at its worst pose.
    #[command(long_about = PROVE_ABOUT)]
    Prove(ProveArguments),
    /// Move joints until the wheel keeps its toe.
    #[command(long_about = TUNE_ABOUT)]
    Tune(TuneArguments),
    /// Score every place of a tie-rod joint, as a table or a picture.
    #[command(long_about = MAP_ABOUT)]
    Map(MapArguments),
    /// Show what build error does to the toe curve.
    #[command(long_about = SCATTER_ABOUT)]
    Scatter(ScatterArguments),
    /// Raise the frame on the same arms.
    #[command(long_about = LIFT_ABOUT)]
    Lift(LiftArguments),
    /// Say what to turn or shim next, from toe readings.
    #[command(long_about = ADVISE_ABOUT)]
    Advise(AdviseArguments),
    /// Coordinates from tape readings.
    #[command(long_about = SURVEY_ABOUT)]
    Survey(SurveyArguments),
    /// Write templates, files for the cutter, fixture sheet and cut list.
    #[command(long_about = SHEETS_ABOUT)]
    Sheets(SheetsArguments),
    /// Set-up cards to print, as a PDF.
    #[command(long_about = CARDS_ABOUT)]
    Cards(CardsArguments),
    /// Draw the window's content into a PNG file, without a display.
    Picture(PictureArguments),
    /// Write a plain build to begin a vehicle of your own with.
    New(NewArguments),
    /// Write the demo builds.
    Demo(DemoArguments),
}

#[derive(Debug, Args)]
pub(crate) struct SweepArguments {
    /// Build file, or demo:NAME.
    #[arg(value_name = "BUILD")]
    pub build: PathBuf,
    #[command(flatten)]
    pub poses: PosesArguments,
}

#[derive(Debug, Args)]
pub(crate) struct CheckArguments {
    /// Build file, or demo:NAME.
    #[arg(value_name = "BUILD")]
    pub build: PathBuf,
    /// Write JSON.
    #[arg(long)]
    pub json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct NewArguments {
    /// Build file to write: two A-arms, tie rod and spring unit of plain shape at each end.
    #[arg(long, value_name = "FILE")]
    pub out: PathBuf,
    /// Unit of the build.
    #[arg(long, value_enum, default_value_t = UnitWord::Inch)]
    pub unit: UnitWord,
    /// What the vehicle is called.
    #[arg(long, value_name = "TEXT")]
    pub title: Option<String>,
    /// Without a rear axle.
    #[arg(long)]
    pub front_only: bool,
    /// Write over a file that is there already; what was there is kept beside it as FILE.bak.
    #[arg(long)]
    pub force: bool,
}

#[derive(Debug, Args)]
pub(crate) struct DemoArguments {
    /// Folder to write to; made if it is not there.
    #[arg(long, value_name = "DIR", default_value = ".")]
    pub out: PathBuf,
    /// Write over files of the same names.
    #[arg(long)]
    pub force: bool,
}

const CHECK_ABOUT: &str = "\
List what is near or past a limit, worst first, and what would mend it.

Every caution has its number, its limit with the source, the pose where it is worst, and remedies
that were worked out on this very build. The proof of the parts (`trammel prove`) is in it: each
check of a part that does not keep its wanted factor, at its worst load case. A static check of
geometry and nominal stress: no approval, and silent about fatigue life, weld quality, bent parts
and play.

Ends with 0, with 1 if any caution is a danger, with 2 if the build can't be used.

With --json, one object (null where there is no such figure; lengths in the build's unit):
  title, unit (mm, inch)
  counts     { danger, caution, note }
  cautions   list, worst first, of
    kind       rack_end_bending, tie_rod_angle, joint_angle, toe_change, lock_over,
               arms_near_toggle, out_of_reach, thread_engagement, unknown_name, proof
    key        what an acceptance in the build file goes by
    accepted   the builder's reason for leaving it; null where there is none
    worse_since_accepted   whether its figure is worse than when it was accepted
    grade      danger, caution, note
    axle       front, rear
    side       left, right; null when it holds for both alike (pose and point are the left's)
    point      the hardpoint to look at, such as tie_rod.inner
    headline, detail, reason, source   text
    value, limit   the number and what it is held against
    bound      at_most, at_least: which side of the limit is wanted
    figure_unit   factor, degrees, mm, inch
    travel, rack   the pose where it is worst
    remedies   list of { text, value (what the number would become; null where it goes),
               applicable (the window can do it with one click) }
  rack_ends  list, one for each side, of
    side, thread, grade, free_length, factor, wanted_factor, travel, rack,
    hit_n, tie_rod_tension_n, bending_n_mm, torsion_n_mm, axial_n, shear_n,
    bending_mpa, torsion_mpa, axial_mpa, shear_mpa, von_mises_mpa, yield_mpa,
    bore_mouth_bending_n_mm, bore_mouth_torsion_n_mm, bore_mouth_axial_n,
    bore_mouth_shear_n";

fn sweep_about() -> String {
    let columns = SweepColumn::ALL.map(|c| format!("  {:<29} {}", c.name(), c.meaning()));
    format!(
        "Write a table of poses over wheel travel and rack position as CSV, one row for each pose.

The rows go rack position by rack position. Without --travel there are {DEFAULT_POSITIONS} travels over the
build's own range. Poses out of reach are left out, and one line on standard error says which
member ran out and where; when not one pose is reached the command ends with 2.

Columns (angles in degrees, lengths in the unit asked for, in full precision; a cell is empty where
there is no such figure; a right wheel is measured in its own sense, toe-in and outward positive):
{}",
        columns.join("\n")
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use clap::CommandFactory;

    #[test]
    fn the_command_line_is_well_formed() {
        Arguments::command().debug_assert();
    }
}
