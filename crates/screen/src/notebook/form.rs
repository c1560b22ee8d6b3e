//! Rows of a form: a word, a field, a unit; what was typed comes back read, or refused with a reason.

use egui::{Grid, RichText, Ui};
use trammel_build::{LengthUnit, format_length, parse_length};

use crate::{
    number_field::NumberField,
    request::Request,
    tokens::{Tokens, type_size},
    words,
};

/// What a row takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Takes {
    /// A length in the build's unit.
    Length {
        /// Whether it may be left out, and what is taken then, mm.
        default_mm: Option<f64>,
    },
    /// A length that may be left out, without anything being taken instead.
    MaybeLength,
    /// A plain number.
    Number {
        /// Sign behind it.
        sign: &'static str,
        /// Whether it may be left out, and what is taken then.
        default: Option<f64>,
    },
    /// A plain number that may be left out, without anything being taken instead.
    MaybeNumber {
        /// Sign behind it.
        sign: &'static str,
    },
}

impl Takes {
    /// A length that may be left out, when this many mm are taken.
    pub(super) fn length_or(default_mm: f64) -> Self {
        Self::Length {
            default_mm: Some(default_mm),
        }
    }

    /// A number that may be left out, when this one is taken.
    pub(super) fn number_or(sign: &'static str, default: f64) -> Self {
        Self::Number {
            sign,
            default: Some(default),
        }
    }

    fn is_length(self) -> bool {
        matches!(self, Self::Length { .. } | Self::MaybeLength)
    }
}

/// What came of typing in a row: a number, or nothing (the field was emptied and the default is taken).
pub(super) type Typed = Option<f64>;

/// A figure of a thing, as a row of a form.
pub(super) struct Field<T> {
    /// The word before it, which is its name too.
    pub label: &'static str,
    /// What stands in the build.
    pub value: Option<f64>,
    /// What may be typed.
    pub takes: Takes,
    /// What it means.
    pub help: &'static str,
    /// Puts what was typed into the thing.
    pub set: fn(&mut T, Typed),
}

/// A form in two columns.
pub(super) struct Form<'a> {
    pub unit: LengthUnit,
    pub tokens: &'a Tokens,
    pub requests: &'a mut Vec<Request>,
}

impl Form<'_> {
    /// A headed group of rows.
    pub(super) fn group(
        &mut self,
        ui: &mut Ui,
        title: &str,
        rows: impl FnOnce(&mut Self, &mut Ui),
    ) {
        ui.add_space(4.0);
        ui.label(RichText::new(title).font(type_size::head()));
        Grid::new(("form", title))
            .num_columns(2)
            .spacing(egui::vec2(8.0, 3.0))
            .min_col_width(24.0)
            .show(ui, |ui| rows(self, ui));
    }

    /// A row; `Some` when something usable was typed that changes the value.
    pub(super) fn row(
        &mut self,
        ui: &mut Ui,
        label: &str,
        value: Option<f64>,
        takes: Takes,
        help: &str,
    ) -> Option<Typed> {
        word(ui, label, help);
        let (hint, sign, optional) = match takes {
            Takes::Length { default_mm } => (
                default_mm.map(|mm| words::tape(mm, self.unit)),
                self.unit.sign(),
                default_mm.is_some(),
            ),
            Takes::Number { sign, default } => (default.map(number), sign, default.is_some()),
            Takes::MaybeLength => (None, self.unit.sign(), true),
            Takes::MaybeNumber { sign } => (None, sign, true),
        };
        let hint = hint.unwrap_or_default();
        let show = |v| {
            if takes.is_length() {
                format_length(v, self.unit)
            } else {
                number(v)
            }
        };
        let shown = value.map(show).unwrap_or_default();
        let field = NumberField {
            name: label,
            shown: &shown,
            hint: &hint,
            width: 84.0,
            enabled: true,
        };
        // The unit stands at its number, however wide another row of the group is.
        let unit = RichText::new(sign).small().color(self.tokens.ink_soft);
        let typed = ui
            .horizontal(|ui| {
                let typed = field.ui(ui, self.tokens);
                ui.label(unit);
                typed
            })
            .inner;
        ui.end_row();
        let typed = typed?;
        if typed.trim().is_empty() {
            if optional {
                return Some(None);
            }
            self.refuse(format!("{label} can't be left empty; it stays at {shown}."));
            return None;
        }
        self.read(label, &typed, &shown, takes)
    }

    fn read(&mut self, label: &str, typed: &str, shown: &str, takes: Takes) -> Option<Typed> {
        let stands = if shown.is_empty() {
            "The default stays.".to_owned()
        } else {
            format!("{label} stays at {shown}.")
        };
        let fault = if takes.is_length() {
            match parse_length(typed, self.unit) {
                Ok(v) => return Some(Some(v)),
                Err(fault) => format!("{fault}."),
            }
        } else {
            match typed
                .trim()
                .replace('−', "-")
                .trim_end_matches(['°', '%'])
                .trim()
                .parse::<f64>()
            {
                Ok(v) if v.is_finite() => return Some(Some(v)),
                _ => format!("Read “{}”, expected a number such as 1.5.", typed.trim()),
            }
        };
        self.refuse(format!("{fault} {stands}"));
        None
    }

    /// Rows for the figures of one thing: what is typed in one makes the edit of the thing with that figure changed.
    pub(super) fn fields<T: Clone>(
        &mut self,
        ui: &mut Ui,
        of: &T,
        edit: impl Fn(T) -> trammel_build::Edit,
        fields: &[Field<T>],
    ) {
        for field in fields {
            if let Some(typed) = self.row(ui, field.label, field.value, field.takes, field.help) {
                let mut next = of.clone();
                (field.set)(&mut next, typed);
                self.edit(edit(next));
            }
        }
    }

    /// A row with text; `Some` with what was typed, empty when it was cleared.
    pub(super) fn text_row(
        &mut self,
        ui: &mut Ui,
        label: &str,
        value: &str,
        hint: &str,
        help: &str,
    ) -> Option<String> {
        word(ui, label, help);
        let field = NumberField {
            name: label,
            shown: value,
            hint,
            width: 190.0,
            enabled: true,
        };
        let typed = field.ui(ui, self.tokens);
        ui.end_row();
        typed.map(|t| t.trim().to_owned())
    }

    pub(super) fn refuse(&mut self, text: String) {
        self.requests.push(Request::Refuse(text));
    }

    pub(super) fn edit(&mut self, edit: trammel_build::Edit) {
        self.requests.push(Request::Edit(edit));
    }
}

/// The word of a row; all rows of the page have their fields in one column.
pub(super) fn word(ui: &mut Ui, label: &str, help: &str) {
    ui.scope(|ui| {
        ui.set_min_width(WORD_WIDTH);
        ui.label(label).on_hover_text(help);
    });
}

const WORD_WIDTH: f32 = 160.0;

fn number(v: f64) -> String {
    v.to_string()
}
