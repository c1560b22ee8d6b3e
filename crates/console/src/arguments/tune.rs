//! The words of the commands that tune: tune, map, scatter, lift.

use std::path::PathBuf;

use clap::{ArgGroup, Args, ValueEnum};
use trammel_tuning::{Emphasis, Movable, Plane, Scoring, TieRodJoint, Ways};

use super::common::{AxleWord, OutArguments, SideWord, size};

/// Which corner of which build.
#[derive(Debug, Args)]
pub(crate) struct CornerArguments {
    /// Build file, or demo:NAME.
    #[arg(value_name = "BUILD")]
    pub build: PathBuf,
    /// Axle.
    #[arg(long, value_enum, default_value_t = AxleWord::Front)]
    pub axle: AxleWord,
    /// Side.
    #[arg(long, value_enum, default_value_t = SideWord::Left)]
    pub side: SideWord,
}

#[derive(Debug, Args)]
pub(crate) struct TuneArguments {
    #[command(flatten)]
    pub corner: CornerArguments,
    /// What may move: a dimension such as rack_height or a coordinate such as tie_rod.inner.z,
    /// if wanted with a range of its own from where it is now and steps of its own:
    /// rack_width=-1/2..1 or rack_width=-1/2..1@1/8.
    #[arg(
        long = "move",
        value_name = "WHAT[=FROM..TO][@STEP]",
        value_delimiter = ',',
        allow_hyphen_values = true,
        verbatim_doc_comment
    )]
    pub moves: Vec<String>,
    /// Wanted besides little toe change, such as tie_rod_angle=..12 (at most),
    /// ackermann=30.. (at least), castor=5..7, or scrub_radius=1.5 (as near as can be);
    /// toe_change_at_lock=0*2 counts twice as much as little toe change over the travel.
    #[arg(
        long = "limit",
        value_name = "FIGURE=RANGE[*WEIGHT]",
        value_delimiter = ',',
        allow_hyphen_values = true,
        verbatim_doc_comment
    )]
    pub limits: Vec<String>,
    /// Joint that goes to its best spot; only without --move and --limit.
    #[arg(long, value_enum, default_value_t = PointWord::Inner)]
    pub point: PointWord,
    /// Ways that it may go there; only without --move and --limit.
    #[arg(long, value_enum, default_value_t = WaysWord::Front)]
    pub ways: WaysWord,
    /// Part of the travel in which toe change counts most; other than whole it is a search.
    #[arg(long, value_enum, default_value_t = WeighWord::Whole)]
    pub weigh: WeighWord,
    /// What makes a place of the joint better; only without --move and --limit.
    #[arg(long, value_enum, default_value_t = ScoreWord::Largest)]
    pub score: ScoreWord,
    /// How far a coordinate may move either way. Without it 3 in, or 75 mm.
    #[arg(long, value_name = "LENGTH")]
    pub reach: Option<String>,
    /// Take the best place in whole steps of the shop, such as 1/16 or 1 mm.
    #[arg(long, value_name = "LENGTH")]
    pub step: Option<String>,
    /// Seed of the global search: the same seed gives the same answer.
    #[arg(long, value_name = "NUMBER", default_value_t = 1)]
    pub seed: u64,
    #[command(flatten)]
    pub out: OutArguments,
    /// Write JSON.
    #[arg(long)]
    pub json: bool,
}

#[derive(Debug, Args)]
#[command(group = ArgGroup::new("to").required(true).multiple(true).args(["csv", "picture"]))]
pub(crate) struct MapArguments {
    #[command(flatten)]
    pub corner: CornerArguments,
    /// Joint whose places are mapped.
    #[arg(long, value_enum, default_value_t = JointWord::Inner)]
    pub point: JointWord,
    /// Plane of the map, through the joint.
    #[arg(long, value_enum, default_value_t = PlaneWord::Front)]
    pub plane: PlaneWord,
    /// What a place is judged by in the picture.
    #[arg(long, value_enum, default_value_t = ScoreWord::Largest)]
    pub score: ScoreWord,
    /// Rack position, to the left positive.
    #[arg(
        long,
        value_name = "LENGTH",
        allow_hyphen_values = true,
        default_value = "0"
    )]
    pub rack: String,
    /// Width of the mapped rectangle, the joint in its middle. Without it 4 in, or 100 mm.
    #[arg(long, value_name = "LENGTH")]
    pub width: Option<String>,
    /// Height of the mapped rectangle. Without it 3 in, or 75 mm.
    #[arg(long, value_name = "LENGTH")]
    pub height: Option<String>,
    /// Cells each way of the table.
    #[arg(long, value_name = "NUMBER", default_value_t = 41)]
    pub cells: usize,
    /// Table to write: a file, whole or not at all, or - for standard output.
    #[arg(long, value_name = "FILE", allow_hyphen_values = true)]
    pub csv: Option<PathBuf>,
    /// PNG picture to write, whole or not at all.
    #[arg(long, value_name = "FILE")]
    pub picture: Option<PathBuf>,
    /// Width and height of the picture in pixels.
    #[arg(long, value_name = "WxH", default_value = "1000x760", value_parser = size)]
    pub size: [f32; 2],
}

#[derive(Debug, Args)]
pub(crate) struct ScatterArguments {
    #[command(flatten)]
    pub corner: CornerArguments,
    /// How many builds are made up.
    #[arg(long, value_name = "NUMBER", default_value_t = 4000)]
    pub builds: usize,
    /// The same seed gives the same builds.
    #[arg(long, value_name = "NUMBER", default_value_t = 1)]
    pub seed: u32,
    /// Largest toe change allowed, degrees. Without it the build's own limit.
    #[arg(long, value_name = "DEGREES")]
    pub limit: Option<f64>,
    /// Rack position, to the left positive.
    #[arg(
        long,
        value_name = "LENGTH",
        allow_hyphen_values = true,
        default_value = "0"
    )]
    pub rack: String,
    /// Write JSON.
    #[arg(long)]
    pub json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct LiftArguments {
    /// The corner that the table is of; the whole frame is raised.
    #[command(flatten)]
    pub corner: CornerArguments,
    /// What the frame is raised by; lowered where it is negative.
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    pub by: String,
    /// Static camber: put back by an adjuster at the upper arm, or left as it comes.
    #[arg(long, value_enum, default_value_t = CamberWord::Reset)]
    pub camber: CamberWord,
    /// Stops of the wheels' travel.
    #[arg(long, value_enum, default_value_t = StopsWord::Kept)]
    pub stops: StopsWord,
    #[command(flatten)]
    pub out: OutArguments,
    /// Write JSON.
    #[arg(long)]
    pub json: bool,
}

/// A joint of the tie rod on the command line.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum JointWord {
    #[value(name = "tie_rod.inner")]
    Inner,
    #[value(name = "tie_rod.outer")]
    Outer,
}

/// What goes to its best spot on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum PointWord {
    #[value(name = "tie_rod.inner")]
    Inner,
    #[value(name = "tie_rod.outer")]
    Outer,
    /// Both, with the least movement among equally good places.
    Both,
}

/// Ways to the best spot on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum WaysWord {
    /// Up, down, in and out.
    Front,
    /// Up, down, fore and aft.
    Side,
    /// In, out, fore and aft.
    Plan,
    /// Up and down.
    Height,
    /// In and out.
    Width,
    /// All three coordinates, with the least movement among equally good places.
    Free,
}

/// What counts most on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum WeighWord {
    /// All of it alike.
    Whole,
    /// The ride height most, the stops a tenth of that.
    Middle,
}

impl PointWord {
    /// The joint that causes are told of and the rule is compared with.
    pub(crate) fn joint(self) -> TieRodJoint {
        match self {
            Self::Inner | Self::Both => TieRodJoint::Inner,
            Self::Outer => TieRodJoint::Outer,
        }
    }
}

impl From<PointWord> for Movable {
    fn from(word: PointWord) -> Self {
        match word {
            PointWord::Inner => Self::Inner,
            PointWord::Outer => Self::Outer,
            PointWord::Both => Self::Both,
        }
    }
}

impl From<WaysWord> for Ways {
    fn from(word: WaysWord) -> Self {
        match word {
            WaysWord::Front => Self::FrontPlane,
            WaysWord::Side => Self::SidePlane,
            WaysWord::Plan => Self::PlanPlane,
            WaysWord::Height => Self::Height,
            WaysWord::Width => Self::Width,
            WaysWord::Free => Self::Free,
        }
    }
}

impl From<WeighWord> for Emphasis {
    fn from(word: WeighWord) -> Self {
        match word {
            WeighWord::Whole => Self::Whole,
            WeighWord::Middle => Self::Middle,
        }
    }
}

/// A plane on the command line.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum PlaneWord {
    /// Across and up.
    Front,
    /// Along and up.
    Side,
    /// Across and along.
    Plan,
}

/// A score on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum ScoreWord {
    /// Largest toe change over the travel.
    Largest,
    /// Its RMS.
    Rms,
    /// Its slope at ride height.
    Slope,
}

/// What becomes of camber on the command line.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum CamberWord {
    /// Put back.
    Reset,
    /// Left as it comes.
    AsItComes,
}

/// What becomes of the stops on the command line.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum StopsWord {
    /// They stay where they are on frame and arms: more bump, less droop.
    Kept,
    /// As much travel each way as before, with spring units as much longer as their mounts are further apart.
    MoveAlong,
}

impl From<JointWord> for TieRodJoint {
    fn from(word: JointWord) -> Self {
        match word {
            JointWord::Inner => Self::Inner,
            JointWord::Outer => Self::Outer,
        }
    }
}

impl From<PlaneWord> for Plane {
    fn from(word: PlaneWord) -> Self {
        match word {
            PlaneWord::Front => Self::Front,
            PlaneWord::Side => Self::Side,
            PlaneWord::Plan => Self::Plan,
        }
    }
}

impl From<ScoreWord> for Scoring {
    fn from(word: ScoreWord) -> Self {
        match word {
            ScoreWord::Largest => Self::Largest,
            ScoreWord::Rms => Self::Rms,
            ScoreWord::Slope => Self::Slope,
        }
    }
}
