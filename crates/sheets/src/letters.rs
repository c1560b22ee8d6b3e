//! Letters that the font of the sheets lacks.

use trammel_drawings::metrics::Metrics;
use trammel_drawings::model::Shape;

use crate::Sheet;

/// As much of a text as is told, letters.
const TOLD: usize = 40;

/// The first sheet with letters that its font lacks, and what is to be said of it.
pub(crate) fn lacking(sheets: &[Sheet], metrics: &Metrics) -> Option<(usize, String)> {
    let (index, text) = sheets.iter().enumerate().find_map(|(index, sheet)| {
        let text = texts(sheet).find(|text| !text.is_ascii() && !metrics.has(text))?;
        Some((index, text))
    })?;
    let mut told: String = text.chars().take(TOLD).collect();
    if told.len() < text.len() {
        told.push('…');
    }
    let heed = format!(
        "The font of the sheets lacks letters of “{told}”: empty boxes stand for them, here and wherever they are printed. Words in Latin, Greek or Cyrillic letters are printed whole."
    );
    Some((index, heed))
}

fn texts(sheet: &Sheet) -> impl Iterator<Item = &str> {
    let placed = sheet.pages.iter().flat_map(|page| &page.placed);
    let items = placed.flat_map(|placed| &placed.drawing.items);
    items.filter_map(|item| match &item.shape {
        Shape::Text(text) => Some(text.content.as_str()),
        _ => None,
    })
}
