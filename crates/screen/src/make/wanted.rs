//! Which kinds of file of which sheets are to be written, as the dialog asks for them.

use std::collections::BTreeSet;

use egui::{RichText, Ui};
use trammel_sheets::{Format, Group, Which};

use crate::tokens::Tokens;

/// What is to be written once a folder is given; kinds and groups stay as they were chosen last.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Wanted {
    one: Option<String>,
    formats: BTreeSet<Format>,
    groups: BTreeSet<Group>,
}

impl Default for Wanted {
    fn default() -> Self {
        Self {
            one: None,
            formats: Format::ALL.into(),
            groups: Group::ALL.into(),
        }
    }
}

impl Wanted {
    /// Begins with what was asked for.
    pub(crate) fn ask(&mut self, which: &Which) {
        self.one = match which {
            Which::One(name) => Some(name.clone()),
            Which::All | Which::Groups(_) => None,
        };
        if let Which::Groups(groups) = which {
            self.groups = groups.iter().copied().collect();
        }
    }

    pub(crate) fn formats(&self) -> Vec<Format> {
        self.formats.iter().copied().collect()
    }

    pub(crate) fn which(&self) -> Which {
        match &self.one {
            Some(name) => Which::One(name.clone()),
            None if self.groups.len() == Group::ALL.len() => Which::All,
            None => Which::Groups(self.groups.iter().copied().collect()),
        }
    }

    /// Whether there is anything to write.
    pub(crate) fn is_something(&self) -> bool {
        !self.formats.is_empty() && (self.one.is_some() || !self.groups.is_empty())
    }

    /// The boxes to tick.
    pub(crate) fn ui(&mut self, ui: &mut Ui, tokens: &Tokens) {
        ui.add_space(6.0);
        ui.label("Kinds of file");
        ui.horizontal_wrapped(|ui| {
            for format in Format::ALL {
                let (word, meaning) = meaning(format);
                tick(ui, &mut self.formats, format, word, meaning);
            }
        });
        if let Some(name) = &self.one {
            ui.label(
                RichText::new(format!("Of the sheet {name} alone."))
                    .small()
                    .color(tokens.ink_soft),
            );
            return;
        }
        ui.add_space(4.0);
        ui.label("Sheets");
        ui.horizontal_wrapped(|ui| {
            for group in Group::ALL {
                tick(ui, &mut self.groups, group, group.label(), "");
            }
        });
        let text = "Parts nested on a plate are written when all sheets are.";
        ui.label(RichText::new(text).small().color(tokens.ink_soft));
    }
}

fn tick<T: Copy + Ord>(ui: &mut Ui, of: &mut BTreeSet<T>, what: T, word: &str, meaning: &str) {
    let mut on = of.contains(&what);
    let mut response = ui.checkbox(&mut on, word);
    if !meaning.is_empty() {
        response = response.on_hover_text(meaning);
    }
    if response.changed() {
        if on {
            of.insert(what);
        } else {
            of.remove(&what);
        }
    }
}

fn meaning(format: Format) -> (&'static str, &'static str) {
    match format {
        Format::Pdf => ("PDF", "Paper at full size, all pages in one file"),
        Format::Dxf => (
            "DXF",
            "For the cutter, in mm: each flat part by itself and nested on plates",
        ),
        Format::Svg => ("SVG", "For the cutter, in mm: the same"),
        Format::Csv => ("CSV", "Lists: cut list, coordinates, diagonals"),
    }
}
