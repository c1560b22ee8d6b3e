//! The window's content as a picture, without a display.

use std::{
    path::{Path, PathBuf},
    time::Duration,
};

use trammel_build::{AxleName, Build};
use trammel_raster::{View, render};
use trammel_screen::{
    Bench, Start, fonts,
    host::{Host, Pick, Picked},
    set_up::settings::SetUpPage,
    view::{Page, Stage},
};

use crate::{
    arguments::{PageWord, PictureArguments, StageWord},
    fault::Fault,
    files,
};

/// Frames until the layout has settled.
const FRAMES: u32 = 4;
/// Frames in which what Tune works out beside the window comes in.
const TUNE_FRAMES: u32 = 240;
/// How long each of those waits.
const TUNE_WAIT: Duration = Duration::from_millis(5);

/// A machine with nobody at it.
struct Nobody;

impl Host for Nobody {
    fn ask_for_file(&mut self, _pick: &Pick, _start: Option<&Path>) {}
    fn answer(&mut self) -> Option<Picked> {
        None
    }
    fn state_folder(&self) -> Option<PathBuf> {
        None
    }
    fn quit(&mut self) {}
}

/// Turns to a page, of whichever stage it is.
fn turn_to(view: &mut trammel_screen::view::View, page: PageWord) {
    match page {
        PageWord::Curves => view.page = Page::Curves,
        PageWord::Points => view.page = Page::Points,
        PageWord::Figures => view.page = Page::Figures,
        PageWord::Readings => view.set_up.page = SetUpPage::Readings,
        PageWord::NextMove => view.set_up.page = SetUpPage::NextMove,
        PageWord::TapeSurvey => view.set_up.page = SetUpPage::TapeSurvey,
        PageWord::Static => view.set_up.page = SetUpPage::Static,
        PageWord::Log => view.set_up.page = SetUpPage::Log,
        PageWord::Parts => view.set_up.page = SetUpPage::Parts,
    }
}

/// Draws the window's content for a build and writes it as a PNG.
pub(crate) fn draw(build: Build, arguments: &PictureArguments) -> Result<(), Fault> {
    let mm = build.unit.mm();
    let mut bench = Bench::new(Box::new(Nobody), Start::Build(Box::new(build)));
    bench.set_light(arguments.light);
    let stage = match arguments.stage {
        StageWord::LayOut => Stage::LayOut,
        StageWord::Tune => Stage::Tune,
        StageWord::SetUp => Stage::SetUp,
    };
    bench.go(stage);
    // What these stages work out beside the window takes its time.
    let waits = matches!(stage, Stage::Tune | Stage::SetUp);
    let view = bench.view_mut();
    view.axle = arguments.axle.into();
    turn_to(view, arguments.page);
    view.travel = arguments.travel * mm;
    view.rack = if view.axle == AxleName::Front {
        arguments.rack * mm
    } else {
        0.0
    };
    let size_points = egui::vec2(arguments.size[0], arguments.size[1]);
    let view = View {
        size_points,
        pixels_per_point: arguments.scale,
        settle_frames: if waits { TUNE_FRAMES } else { FRAMES },
    };
    let fail = |e: &dyn std::fmt::Display| Fault::Picture(e.to_string());
    let picture = render(
        &view,
        |ctx| ctx.set_fonts(fonts::definitions()),
        |ui| {
            if waits {
                std::thread::sleep(TUNE_WAIT);
            }
            bench.ui(ui);
        },
    )
    .map_err(|e| fail(&e))?;
    let png = picture.to_png().map_err(|e| fail(&e))?;
    files::write(&arguments.out, &png)
}
