//! What was written on the screen in the last frame.

use egui::{Rect, Shape};

/// A row of text as it was painted.
#[derive(Clone, Debug)]
pub struct Words {
    pub text: String,
    /// Around its letters, not its rows.
    pub ink: Rect,
    /// Nothing outside is painted.
    pub clip: Rect,
    /// Whether it was cut short with an ellipsis.
    pub cut: bool,
}

impl Words {
    /// The part of its letters that can be seen.
    pub fn seen(&self) -> Rect {
        self.ink.intersect(self.clip)
    }
}

/// Every text of the last frame, as far as it is not wholly clipped away.
pub fn words(screen: &super::Screen) -> Vec<Words> {
    let mut all = Vec::new();
    for shape in &screen.output().shapes {
        gather(&shape.shape, shape.clip_rect, &mut all);
    }
    all.retain(|w| w.seen().is_positive() && !w.text.trim().is_empty());
    all
}

fn gather(shape: &Shape, clip: Rect, all: &mut Vec<Words>) {
    match shape {
        Shape::Vec(shapes) => shapes.iter().for_each(|s| gather(s, clip, all)),
        Shape::Text(text) if text.opacity_factor > 0.05 => {
            all.extend(text.galley.rows.iter().map(|row| Words {
                text: row.text(),
                ink: (row.visuals.mesh_bounds).translate((text.pos + row.pos.to_vec2()).to_vec2()),
                clip,
                cut: text.galley.elided,
            }));
        }
        _ => {}
    }
}

/// A text that shows a number that is none, as a number is written: what is typed, `nan` or `INF`, may stand in names and messages.
pub fn no_number(words: &[Words]) -> Option<&str> {
    let bad = |text: &str| {
        text.split(|c: char| !c.is_alphanumeric())
            .any(|w| matches!(w, "NaN" | "inf"))
    };
    words.iter().map(|w| w.text.as_str()).find(|t| bad(t))
}
