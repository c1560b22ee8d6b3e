//! The words of the command that draws the window.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::{
    common::{AxleWord, finite, size},
    tune::PlaneWord,
};

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

/// Reads a scale.
fn scale(text: &str) -> Result<f32, String> {
    let number = text.trim().parse::<f32>().ok();
    let number = number.filter(|v| (0.5..=4.0).contains(v));
    number.ok_or_else(|| "expected a number from 0.5 to 4".into())
}
