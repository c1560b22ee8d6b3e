//! The window's content as a picture, without a display.

use std::time::Duration;

use trammel_build::{AxleName, Build};
use trammel_raster::{View, render};
use trammel_screen::{
    Bench, Start, fonts,
    host::Nobody,
    make::MakeNotes,
    prove::settings::ProvePage,
    set_up::settings::SetUpPage,
    tune::settings::TunePage,
    view::{Page, Stage, View as ScreenView},
};

use crate::arguments::picture::PageWord;
use crate::arguments::picture::PictureArguments;
use crate::arguments::picture::StageWord;
use crate::fault::Fault;
use crate::files;

/// Frames until the layout has settled.
const FRAMES: u32 = 4;
/// Frames in which what a stage works out beside the window comes in.
const TUNE_FRAMES: u32 = 240;
/// How long each of those waits.
const TUNE_WAIT: Duration = Duration::from_millis(5);

/// Turns to a page of the notebook; a page of another stage is turned to there.
fn turn_to(view: &mut ScreenView, page: PageWord) {
    match page {
        PageWord::Curves => view.page = Page::Curves,
        PageWord::Points => view.page = Page::Points,
        PageWord::Figures => view.page = Page::Figures,
        PageWord::BestSpot => view.tune.page = TunePage::Spot,
        PageWord::Room => view.tune.page = TunePage::InTheWay,
        PageWord::BuildError => view.tune.page = TunePage::BuildError,
        PageWord::Automatic => view.tune.page = TunePage::Automatic,
        PageWord::RideHeight => view.tune.page = TunePage::RideHeight,
        PageWord::WhatIf => view.tune.page = TunePage::WhatIf,
        PageWord::Checks => view.prove.page = ProvePage::Checks,
        PageWord::LoadCases => view.prove.page = ProvePage::LoadCases,
        PageWord::Forces => view.prove.page = ProvePage::Forces,
        PageWord::RackEnd => view.prove.page = ProvePage::RackEnd,
        PageWord::Parts => view.prove.page = ProvePage::Parts,
        PageWord::Sheets => view.make.notes = MakeNotes::Sheets,
        PageWord::Shop => view.make.notes = MakeNotes::Shop,
        PageWord::Readings => view.set_up.page = SetUpPage::Readings,
        PageWord::NextMove => view.set_up.page = SetUpPage::NextMove,
        PageWord::TapeSurvey => view.set_up.page = SetUpPage::TapeSurvey,
        PageWord::Static => view.set_up.page = SetUpPage::Static,
        PageWord::Log => view.set_up.page = SetUpPage::Log,
        PageWord::Drawer => view.set_up.page = SetUpPage::Parts,
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
        StageWord::Prove => Stage::Prove,
        StageWord::Make => Stage::Make,
        StageWord::SetUp => Stage::SetUp,
    };
    bench.view_mut().tune.plane = arguments.map.into();
    bench.go(stage);
    // What these stages work out beside the window takes its time.
    let waits = stage != Stage::LayOut;
    let view = bench.view_mut();
    view.axle = arguments.axle.into();
    if let Some(page) = arguments.page {
        turn_to(view, page);
    }
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
