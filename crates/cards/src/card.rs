//! The cards as tables and pages.

use trammel_build::Build;
use trammel_drawings::{
    metrics::Metrics,
    pdf,
    sheet::{Content, MADE_WITH, Paper, SheetSet, TitleBlock},
    table::{self, Table},
};

use crate::{CardFault, after, before, sign_off, turns};

/// A card.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Card {
    /// What to lock, check and measure, with columns to write in.
    Before,
    /// What was read, what to move and what to expect.
    After,
    /// What a turn and a flat of the thread do.
    Turns,
    /// What to look at before it is driven.
    SignOff,
}

impl Card {
    /// In the order of work.
    pub const ALL: [Self; 4] = [Self::Before, Self::After, Self::Turns, Self::SignOff];

    /// Its title.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            Self::Before => "Set-up card: before measuring",
            Self::After => "Set-up card: readings and moves",
            Self::Turns => "Turns table",
            Self::SignOff => "Sign-off list",
        }
    }

    /// The card of a build. Empty where there is nothing to say: without readings there are no moves.
    ///
    /// # Errors
    /// [`CardFault`].
    pub fn tables(self, build: &Build) -> Result<Vec<Table>, CardFault> {
        match self {
            Self::Before => before::tables(build),
            Self::After => after::tables(build),
            Self::Turns => turns::tables(build),
            Self::SignOff => Ok(sign_off::tables(build)),
        }
    }

    fn caution(self) -> Vec<String> {
        let text = match self {
            Self::Before | Self::Turns => {
                "Locked fasteners and positive steering stops before the wheels turn."
            }
            Self::After => {
                "Chances count build tolerances and reading accuracy, nothing else. No figure here approves a vehicle."
            }
            Self::SignOff => {
                "A list of what to look at, no approval. What is bent is replaced, never straightened."
            }
        };
        vec![text.to_owned()]
    }
}

/// All cards of a build as pages, each card with its own sheet numbers.
///
/// # Errors
/// [`CardFault`].
pub fn sheets(build: &Build, paper: Paper, metrics: &Metrics) -> Result<SheetSet, CardFault> {
    let mut pages = Vec::new();
    for card in Card::ALL {
        let tables = card.tables(build)?;
        if tables.is_empty() {
            continue;
        }
        let block = TitleBlock {
            title: card.title().to_owned(),
            supplementary: build.title.clone(),
            kind: "set-up card".to_owned(),
            units: build.unit.sign().to_owned(),
            scale: "-".to_owned(),
            made_with: MADE_WITH.to_owned(),
            ..TitleBlock::default()
        };
        pages.extend(table::lay_out(
            paper,
            &block,
            &tables,
            &Content {
                caution: card.caution(),
                ..Content::default()
            },
            metrics,
        ));
    }
    Ok(SheetSet {
        title: format!("{}: set-up cards", build.title),
        pages,
    })
}

/// The same as a PDF.
///
/// # Errors
/// [`CardFault`].
pub fn pdf(build: &Build, paper: Paper) -> Result<Vec<u8>, CardFault> {
    let metrics = Metrics::new()?;
    let set = sheets(build, paper, &metrics)?;
    Ok(pdf::write(&set, &metrics)?)
}
