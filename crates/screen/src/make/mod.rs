//! The Make stage: the sheets as they will print, and their files.
//!
//! | where | what |
//! |---|---|
//! | [`MakeView`] | which sheet and page, how near, on which paper |
//! | `page` | the page on the table, with zoom and pan |
//! | `outline` | the grips of a tab's outline, dragged or nudged on its page |
//! | `wanted` | which kinds of file of which sheets |
//! | `export` | files written beside the window, with progress |
//!
//! Sheets are worked out on a thread of their own whenever the build or the paper changes; the last ones stay in sight until then.

mod export;
pub(crate) mod outline;
mod page;
pub(crate) mod wanted;

use std::{path::PathBuf, sync::Arc};

use egui::{Context, Ui, Vec2};
use trammel_build::{Build, LengthUnit};
use trammel_drawings::{metrics::Metrics, sheet::Paper};
use trammel_sheets::{Format, Sheet, Sheets, Which};

use crate::{background::Background, tokens::Tokens, view::View};
use export::Export;
use outline::{Held, OutlineEvent};
use page::PageInk;

/// What is looked at in the stage.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct MakeView {
    /// The sheet by its name; the first tab where it is none of the set.
    pub sheet: String,
    /// Its page, from nought.
    pub page: usize,
    /// How near: 1 shows the whole page.
    pub zoom: f32,
    /// Where the page's middle lies from the table's, points.
    pub pan: Vec2,
    /// Paper; the usual one of the unit where none is chosen.
    pub paper: Option<Paper>,
    /// What the notebook shows.
    pub notes: MakeNotes,
}

/// A page of the notebook in the stage.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum MakeNotes {
    /// The sheets, and the bracket of the chosen one.
    #[default]
    Sheets,
    /// How the shop prints and saws, and the plate under the rack.
    Shop,
}

impl MakeNotes {
    /// In their order.
    pub const ALL: [Self; 2] = [Self::Sheets, Self::Shop];

    /// Its word.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Sheets => "Sheets",
            Self::Shop => "Shop",
        }
    }
}

impl MakeView {
    /// The paper of a build's sheets.
    #[must_use]
    pub fn paper(&self, build: &Build) -> Paper {
        self.paper.unwrap_or(match build.unit {
            LengthUnit::Inch => Paper::Letter,
            LengthUnit::Millimetre => Paper::A4,
        })
    }

    /// The chosen sheet of a set.
    #[must_use]
    pub fn chosen<'a>(&self, sheets: &'a Sheets) -> Option<&'a Sheet> {
        let tab = |s: &&Sheet| s.group == trammel_sheets::Group::Tabs;
        sheets
            .sheet(&self.sheet)
            .or_else(|| sheets.sheets.iter().find(tab))
            .or_else(|| sheets.sheets.first())
    }

    /// The whole page again.
    pub(crate) fn fit(&mut self) {
        self.zoom = 1.0;
        self.pan = Vec2::ZERO;
    }
}

/// What sheets are worked out from.
#[derive(Clone, PartialEq)]
struct Question {
    build: Build,
    paper: Paper,
}

/// What came of it: the sheets, or why there are none.
type Answer = (Question, Result<Arc<Sheets>, String>);

/// Everything that the stage has worked out.
#[derive(Default)]
pub struct Make {
    worker: Option<Background<Question, Answer>>,
    asked: Option<Question>,
    answer: Option<Answer>,
    ink: PageInk,
    export: Option<Export>,
    /// The grip that is held.
    grip: Option<Held>,
}

impl Make {
    /// Asks for the sheets of the build as it stands, and takes in what has come.
    pub(crate) fn go_on(&mut self, ctx: &Context, build: &Build, view: &View) {
        if let Some(answer) = self.worker.as_ref().and_then(Background::newest) {
            self.answer = Some(answer);
            self.ink.forget();
        }
        let paper = view.make.paper(build);
        let same = self
            .asked
            .as_ref()
            .is_some_and(|q| q.paper == paper && q.build == *build);
        if same {
            return;
        }
        let question = Question {
            build: build.clone(),
            paper,
        };
        let worker = match self.worker.take() {
            Some(worker) => Some(worker),
            None => Background::start("sheets", ctx, work_out),
        };
        match &worker {
            Some(worker) => worker.hand_in(question.clone()),
            // Without a thread the window has to wait once.
            None => self.answer = Some(work_out(question.clone())),
        }
        self.worker = worker;
        self.asked = Some(question);
    }

    /// The sheets, once worked out.
    #[must_use]
    pub fn sheets(&self) -> Option<&Arc<Sheets>> {
        self.answer.as_ref()?.1.as_ref().ok()
    }

    /// Why there are none.
    pub(crate) fn fault(&self) -> Option<&str> {
        self.answer.as_ref()?.1.as_ref().err().map(String::as_str)
    }

    /// Whether the sheets are those of the build as it stands.
    #[must_use]
    pub fn is_current(&self) -> bool {
        self.answer.as_ref().map(|a| &a.0) == self.asked.as_ref()
    }

    /// Shows the page, and what the hand does to the outline on it.
    pub(crate) fn table(
        &mut self,
        ui: &mut Ui,
        build: &Build,
        view: &mut View,
        tokens: &Tokens,
    ) -> Vec<OutlineEvent> {
        let sheets = self.sheets().cloned();
        let on = page::ui(ui, sheets.as_deref(), &mut self.ink, &mut view.make, tokens);
        match on {
            Some(on) => outline::ui(ui, build, &on, &mut self.grip, tokens),
            None => Vec::new(),
        }
    }

    /// Begins to write files: all, or those of one sheet.
    ///
    /// # Errors
    /// In words, why not.
    pub(crate) fn export(
        &mut self,
        ctx: &Context,
        formats: &[Format],
        which: &Which,
        folder: PathBuf,
    ) -> Result<(), String> {
        if !self.is_current() {
            return Err("The sheets are still being worked out; nothing was written.".into());
        }
        let sheets = self
            .sheets()
            .cloned()
            .ok_or("There are no sheets; nothing was written.")?;
        self.export = Some(Export::start(ctx, sheets, formats, which, folder)?);
        Ok(())
    }

    /// How many files of how many are written, while there is an export under way.
    #[must_use]
    pub fn exporting(&self) -> Option<[usize; 2]> {
        self.export.as_ref().map(Export::progress)
    }

    /// What the export came to, once; the file to look at where there is one.
    pub(crate) fn exported(&mut self) -> Option<Result<(String, PathBuf), String>> {
        let done = self.export.as_ref()?.done()?;
        self.export = None;
        Some(done)
    }
}

fn work_out(question: Question) -> Answer {
    let sheets = Metrics::new()
        .map(|metrics| Arc::new(Sheets::of(&question.build, question.paper, &metrics)))
        .map_err(|fault| fault.to_string());
    (question, sheets)
}
