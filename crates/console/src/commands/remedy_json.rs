//! A remedy in the answers as JSON.

use serde::Serialize;
use trammel_analysis::Remedy;

#[derive(Serialize)]
pub(super) struct RemedyOut<'a> {
    text: &'a str,
    value: Option<f64>,
    applicable: bool,
}

impl<'a> From<&'a Remedy> for RemedyOut<'a> {
    fn from(remedy: &'a Remedy) -> Self {
        Self {
            text: &remedy.text,
            value: remedy.value,
            applicable: remedy.edit.is_some(),
        }
    }
}
