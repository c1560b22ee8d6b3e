//! What every figure means: one place for the words that the tooltips, the glossary and the manual say.
//!
//! A term says what it is, its unit and sign, and which way is better. The words follow ISO 8855 and, where it has none, the trade.

mod geometry;
mod setting_up;
mod shop;
mod strength;

use egui::{Label, Response, RichText, Sense, Ui};

pub use geometry::*;
pub use setting_up::*;
pub use shop::*;
pub use strength::*;

/// A word of the trade, as this program uses it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Term {
    /// Its name, as a heading.
    pub name: &'static str,
    /// What it is, with its sign, in a sentence or two.
    pub what: &'static str,
    /// Its unit; empty where it is no figure.
    pub unit: &'static str,
    /// Which way is better; empty where neither is.
    pub better: &'static str,
}

impl Term {
    /// All that is said of it, as one text.
    #[must_use]
    pub fn text(&self) -> String {
        let unit = match self.unit {
            "" => String::new(),
            unit => format!("Unit: {unit}."),
        };
        let said = [self.what, unit.as_str(), self.better];
        said.into_iter()
            .filter(|part| !part.is_empty())
            .collect::<Vec<_>>()
            .join(" ")
    }

    /// The end of a link to it in the manual's glossary.
    #[must_use]
    pub fn anchor(&self) -> String {
        anchor(self.name)
    }
}

/// The end of a link to a heading: small letters, hyphens between the words.
#[must_use]
pub fn anchor(heading: &str) -> String {
    let kept = heading
        .chars()
        .filter(|c| c.is_alphanumeric() || matches!(c, ' ' | '-'));
    kept.collect::<String>().to_lowercase().replace(' ', "-")
}

/// Declares terms and the list of them.
macro_rules! terms {
    ($list:ident: $($(#[$doc:meta])* $key:ident = $name:expr, $what:expr, $unit:expr, $better:expr;)*) => {
        $(
            #[doc = concat!("The term `", stringify!($key), "`.")]
            pub const $key: crate::terms::Term = crate::terms::Term {
                name: $name,
                what: $what,
                unit: $unit,
                better: $better,
            };
        )*
        pub(super) const $list: &[crate::terms::Term] = &[$($key),*];
    };
}
use terms;

/// Every term, by its name.
#[must_use]
pub fn all() -> Vec<Term> {
    let lists = [
        geometry::GEOMETRY,
        strength::STRENGTH,
        shop::SHOP,
        setting_up::SETTING_UP,
    ];
    let mut all = lists.concat();
    all.sort_by_key(|t| t.name.to_lowercase());
    all
}

/// The terms in whose name or text every word of a search stands; those with it in the name come first.
#[must_use]
pub fn found(search: &str) -> Vec<Term> {
    let search = search.to_lowercase();
    let words: Vec<&str> = search.split_whitespace().collect();
    let within = |text: &str| {
        let text = text.to_lowercase();
        words.iter().all(|w| text.contains(w))
    };
    let mut found: Vec<Term> = all()
        .into_iter()
        .filter(|t| within(&format!("{} {}", t.name, t.text())))
        .collect();
    found.sort_by_key(|t| !within(t.name));
    found
}

/// The glossary as a page of the manual.
#[must_use]
pub fn glossary() -> String {
    let mut page = String::from(
        "# Glossary\n\nEvery term that Trammel shows, with its sign and which way is better. The same words stand behind the figures themselves, when the pointer rests on them.\n",
    );
    for term in all() {
        page.push_str(&format!("\n## {}\n\n{}\n", term.name, term.text()));
    }
    page
}

/// Help on a figure.
pub trait Told: Sized {
    /// Tells a term when the pointer or the keyboard's focus rests on this, and to a screen reader.
    fn told(self, term: Term) -> Self {
        self.told_with(term, "")
    }

    /// The same, with a sentence about this very figure first.
    fn told_with(self, term: Term, first: &str) -> Self;
}

impl Told for Response {
    fn told_with(self, term: Term, first: &str) -> Self {
        let text = format!("{first} {}", term.text());
        let text = text.trim();
        let response = self.on_hover_text(text);
        if response.has_focus() && !response.hovered() {
            response.show_tooltip_ui(|ui| {
                ui.set_max_width(ui.spacing().tooltip_width);
                ui.label(text);
            });
        }
        response
    }
}

/// A result that can be reached by keyboard and tells its term.
pub fn figure(ui: &mut Ui, text: RichText, term: Term) -> Response {
    let label = Label::new(text).sense(Sense::focusable_noninteractive());
    ui.add(label).told(term)
}
