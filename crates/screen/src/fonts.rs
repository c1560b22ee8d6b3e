//! The one font, in two cuts: DejaVu Sans, which has every sign that a shop drawing needs.

use std::sync::Arc;

use egui::{FontData, FontDefinitions, FontFamily};
use trammel_drawings::metrics::{BOLD, PLAIN};

use crate::tokens::type_size;

/// Fonts for screen and pictures; nothing depends on what a machine has installed.
#[must_use]
pub fn definitions() -> FontDefinitions {
    let mut fonts = FontDefinitions::empty();
    // The same bytes as those that paper is set from, so that the program carries each font once.
    let (plain, bold) = (FontData::from_static(PLAIN), FontData::from_static(BOLD));
    fonts.font_data.insert("plain".into(), Arc::new(plain));
    fonts.font_data.insert("bold".into(), Arc::new(bold));
    for family in [FontFamily::Proportional, FontFamily::Monospace] {
        fonts.families.insert(family, vec!["plain".into()]);
    }
    fonts
        .families
        .insert(type_size::bold(), vec!["bold".into(), "plain".into()]);
    fonts
}
