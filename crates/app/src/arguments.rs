//! The words on the command line.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};
use trammel_analysis::{DEFAULT_POSITIONS, Span, SweepColumn};
use trammel_build::{AxleName, LengthUnit, Side};

use crate::{
    prove_arguments::{ForcesArguments, ProveArguments},
    prove_help::{FORCES_ABOUT, PROVE_ABOUT},
    set_up_arguments::{
        ADVISE_ABOUT, AdviseArguments, CARDS_ABOUT, CardsArguments, SURVEY_ABOUT, SurveyArguments,
    },
    sheets_arguments::{SHEETS_ABOUT, SheetsArguments},
    tune_arguments::{LiftArguments, MapArguments, PlaneWord, ScatterArguments, TuneArguments},
    tune_help::{LIFT_ABOUT, MAP_ABOUT, SCATTER_ABOUT, TUNE_ABOUT},
};

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

/// The corner that is posed, where to, and where the table goes.
#[derive(Debug, Args)]
pub(crate) struct PosesArguments {
    /// Axle.
    #[arg(long, value_enum, default_value_t = AxleWord::Front)]
    pub axle: AxleWord,
    /// Side.
    #[arg(long, value_enum, default_value_t = SideWord::Left)]
    pub side: SideWord,
    /// Wheel travels, up positive: STEPS positions from FROM to TO, both included,
    /// such as -4:4:9. Without it the build's own range
    #[arg(
        long,
        value_name = "FROM:TO:STEPS",
        allow_hyphen_values = true,
        value_parser = span,
        verbatim_doc_comment
    )]
    pub travel: Option<Span>,
    /// Rack positions, to the left positive, in the same way. Without it the rack is
    /// at its centre; with it every travel is posed at every rack position
    #[arg(
        long,
        value_name = "FROM:TO:STEPS",
        allow_hyphen_values = true,
        value_parser = span,
        verbatim_doc_comment
    )]
    pub rack: Option<Span>,
    /// Unit of every length asked for and written. Without it the build's own.
    #[arg(long, value_enum)]
    pub unit: Option<UnitWord>,
    /// Where to: a file, written whole or not at all, or - for standard output.
    #[arg(
        long,
        value_name = "FILE",
        default_value = "-",
        allow_hyphen_values = true
    )]
    pub csv: PathBuf,
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
pub(crate) struct PictureArguments {
    /// Build file, or demo:NAME.
    #[arg(value_name = "BUILD")]
    pub build: PathBuf,
    /// PNG file to write.
    #[arg(long, value_name = "FILE")]
    pub out: PathBuf,
    /// Width and height in points.
    #[arg(long, value_name = "WxH", default_value = "1280x800", value_parser = size)]
    pub size: [f32; 2],
    /// Pixels for each point.
    #[arg(long, value_name = "NUMBER", default_value_t = 1.0, value_parser = scale)]
    pub scale: f32,
    /// Light instead of dark.
    #[arg(long)]
    pub light: bool,
    /// Axle on the table.
    #[arg(long, value_enum, default_value_t = AxleWord::Front)]
    pub axle: AxleWord,
    /// Stage of the job.
    #[arg(long, value_enum, default_value_t = StageWord::LayOut)]
    pub stage: StageWord,
    /// Page of the notebook: curves, points, figures in Lay out; best-spot, room, build-error, automatic, ride-height, what-if in Tune; checks, load-cases,
    /// forces, rack-end, parts in Prove; sheets, shop in Make; readings, next-move, tape-survey, static, log, drawer in Set up. The first where it is left out.
    #[arg(long, value_enum)]
    pub page: Option<PageWord>,
    /// View that has the toe map in Tune.
    #[arg(long, value_enum, default_value_t = PlaneWord::Front)]
    pub map: PlaneWord,
    /// Wheel travel of the moved linkage, in the build's unit.
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true, default_value_t = 0.0, value_parser = finite)]
    pub travel: f64,
    /// Rack travel of the moved linkage, in the build's unit.
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true, default_value_t = 0.0, value_parser = finite)]
    pub rack: f64,
}

/// A stage of the job on the command line.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum StageWord {
    LayOut,
    Tune,
    Prove,
    Make,
    SetUp,
}

/// A page of the notebook on the command line.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum PageWord {
    Curves,
    Points,
    Figures,
    BestSpot,
    Room,
    BuildError,
    Automatic,
    RideHeight,
    WhatIf,
    Checks,
    LoadCases,
    Forces,
    RackEnd,
    Parts,
    Sheets,
    Shop,
    Readings,
    NextMove,
    TapeSurvey,
    Static,
    Log,
    Drawer,
}

/// Reads `1280x800`.
pub(crate) fn size(text: &str) -> Result<[f32; 2], String> {
    let expected = || {
        format!(
            "read {text:?}, expected width and height from 400x300 to 4000x3000, such as 1280x800"
        )
    };
    let (width, height) = text.split_once('x').ok_or_else(expected)?;
    let side = |t: &str| t.parse::<f32>().map_err(|_| expected());
    let [width, height] = [side(width)?, side(height)?];
    let fits = (400.0..=4000.0).contains(&width) && (300.0..=3000.0).contains(&height);
    if fits {
        Ok([width, height])
    } else {
        Err(expected())
    }
}

/// Reads a number that is one.
fn finite(text: &str) -> Result<f64, String> {
    let number = text.trim().parse::<f64>().ok().filter(|v| v.is_finite());
    number.ok_or_else(|| "expected a number, such as -1.5".into())
}

/// Reads a scale.
fn scale(text: &str) -> Result<f32, String> {
    let number = text.trim().parse::<f32>().ok();
    let number = number.filter(|v| (0.5..=4.0).contains(v));
    number.ok_or_else(|| "expected a number from 0.5 to 4".into())
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

/// An axle on the command line.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum AxleWord {
    Front,
    Rear,
}

/// A side on the command line.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum SideWord {
    Left,
    Right,
}

/// A unit on the command line.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum UnitWord {
    Mm,
    Inch,
}

impl From<AxleWord> for AxleName {
    fn from(word: AxleWord) -> Self {
        match word {
            AxleWord::Front => Self::Front,
            AxleWord::Rear => Self::Rear,
        }
    }
}

impl From<SideWord> for Side {
    fn from(word: SideWord) -> Self {
        match word {
            SideWord::Left => Self::Left,
            SideWord::Right => Self::Right,
        }
    }
}

impl From<UnitWord> for LengthUnit {
    fn from(word: UnitWord) -> Self {
        match word {
            UnitWord::Mm => Self::Millimetre,
            UnitWord::Inch => Self::Inch,
        }
    }
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

/// Reads `FROM:TO:STEPS`.
pub(crate) fn span(text: &str) -> Result<Span, String> {
    let parts: Vec<&str> = text.split(':').collect();
    let [from, to, steps] = parts.as_slice() else {
        return Err("expected FROM:TO:STEPS, such as -4:4:9".into());
    };
    let number = |what: &str, text: &str| {
        text.trim()
            .parse::<f64>()
            .map_err(|_| format!("{what} is {text:?}; expected a number, such as -4 or 2.5"))
    };
    let steps = steps.trim();
    let steps = steps
        .parse::<usize>()
        .map_err(|_| format!("STEPS is {steps:?}; expected how many positions, such as 9"))?;
    Span::new(number("FROM", from)?, number("TO", to)?, steps).map_err(|e| e.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;
    use clap::CommandFactory;

    #[test]
    fn the_command_line_is_well_formed() {
        Arguments::command().debug_assert();
    }

    #[test]
    fn positions_are_read_with_signs_and_decimals() {
        assert_eq!(span("-4:4:9"), Ok(Span::new(-4.0, 4.0, 9).unwrap()));
        assert_eq!(span("-1.5:-0.5:3"), Ok(Span::new(-1.5, -0.5, 3).unwrap()));
        assert_eq!(span("2:2:1"), Ok(Span::new(2.0, 2.0, 1).unwrap()));
    }

    #[test]
    fn odd_positions_are_refused_with_what_was_expected() {
        for odd in [
            "",
            "1:2",
            "1:2:3:4",
            "a:1:3",
            "1:b:3",
            "0:1:x",
            "0:1:-3",
            "0:1:0",
            "0:1:1",
            "NaN:1:3",
            "0:inf:3",
            "0:1:1000000",
        ] {
            let said = span(odd).expect_err(odd);
            assert!(said.contains("expected"), "{odd}: {said}");
        }
    }
}
