//! The Set up stage: readings in, measured against predicted, the move to make.
//!
//! | where | what |
//! |---|---|
//! | [`settings`] | what is looked at and half typed |
//! | `rows` | lines of readings as they are typed |
//! | `measured` | the newest session as points of the plot |
//! | `survey` | the tape survey of the build, adjusted |
//! | `ellipses` | how well surveyed points are known, on the drawing |
//! | [`drawer`] | what is asked of the drawer of measured parts |
//! | `edits` | the steps that this stage makes of a build |
//! | `answered` | questions to a thread of their own |
//!
//! What is worked out here depends on the build alone and is never saved.

mod answered;
pub mod drawer;
pub(crate) mod edits;
mod ellipses;
pub(crate) mod measured;
pub(crate) mod rows;
pub mod settings;
pub(crate) mod survey;

pub(crate) use ellipses::ink as ink_ellipses;

use egui::Context;
use trammel_analysis::{NextMoves, next_moves};
use trammel_build::{AxleModel, Build, Side};

use answered::Answered;
use measured::Measured;
use survey::SurveyAnswer;
use trammel_persistence::Drawer;

/// The next move, or why there is none.
pub(crate) type NextAnswer = Result<NextMoves, String>;

/// Everything that the stage has worked out.
#[derive(Default)]
pub struct SetUpWork {
    next: Answered<Build, NextAnswer>,
    survey: Answered<Build, SurveyAnswer>,
    measured: Option<(Build, Side, Measured)>,
    drawer: Option<Result<Drawer, String>>,
}

impl SetUpWork {
    /// Goes on with what the stage shows. Moves and survey are worked out beside the window.
    pub(crate) fn go_on(&mut self, ctx: &Context, build: &Build, model: &AxleModel, side: Side) {
        self.next.ask(ctx, "next move", build, |b| {
            next_moves(b).map_err(|fault| fault.to_string())
        });
        if !build.set_up.survey.is_empty() {
            self.survey.ask(ctx, "survey", build, survey::answer);
        }
        let known = self
            .measured
            .as_ref()
            .is_some_and(|(b, s, _)| *s == side && b == build);
        if !known {
            let measured = Measured::of(build, model, side);
            self.measured = Some((build.clone(), side, measured));
        }
    }

    /// What to do next, once known; of the newest build that was worked out.
    pub(crate) fn next(&self) -> Option<&NextAnswer> {
        self.next.shown()
    }

    /// Whether what is shown is of the build as it stands.
    #[must_use]
    pub fn is_current(&self) -> bool {
        self.next.is_current()
    }

    /// Whether the moves are expected to bring every wheel that was read within the limit; `None` where there are none.
    #[must_use]
    pub fn cured(&self) -> Option<bool> {
        self.next()?.as_ref().ok().map(NextMoves::cured)
    }

    /// Whether the survey that is shown is of the build as it stands.
    #[must_use]
    pub fn survey_is_current(&self) -> bool {
        self.survey.is_current()
    }

    /// The survey, once known.
    pub(crate) fn survey(&self) -> Option<&SurveyAnswer> {
        self.survey.shown()
    }

    /// The newest session's readings of the wheel that is looked at.
    pub(crate) fn measured(&self) -> Option<&Measured> {
        self.measured.as_ref().map(|(_, _, m)| m)
    }

    /// The drawer of measured parts, once opened; why it can't be.
    #[must_use]
    pub fn drawer(&self) -> Option<&Result<Drawer, String>> {
        self.drawer.as_ref()
    }

    /// The drawer was read or changed.
    pub(crate) fn set_drawer(&mut self, drawer: Result<Drawer, String>) {
        self.drawer = Some(drawer);
    }

    /// The wheel that is looked at.
    pub(crate) fn side(&self) -> Option<Side> {
        self.measured.as_ref().map(|(_, side, _)| *side)
    }

    /// How many measured points the plot shows.
    #[must_use]
    pub fn measured_points(&self) -> usize {
        self.measured().map_or(0, |m| m.points.len())
    }
}
