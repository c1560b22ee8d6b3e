//! How wide a text is: the advance widths of the font that the program carries, DejaVu Sans, plain and bold.
//!
//! PDF pages are set from the same widths, letter by letter, so what fits here fits on paper.

use skrifa::instance::{LocationRef, Size};
use skrifa::{FontRef, GlyphId, MetadataProvider};

use crate::DrawingError;
use crate::model::{Anchor, Text};
use trammel_fabrication::plane::{Bounds, Point, Vector};

/// The plain font.
pub static PLAIN: &[u8] = include_bytes!("../../../assets/fonts/DejaVuSans.ttf");
/// The bold font.
pub static BOLD: &[u8] = include_bytes!("../../../assets/fonts/DejaVuSans-Bold.ttf");

/// Height of a capital of DejaVu Sans over its em: 1493 of 2048 units (its OS/2 table).
pub const CAPITAL: f64 = 1493.0 / 2048.0;
/// How far letters reach below the base line, over a capital's height.
const BELOW: f64 = 0.35;
/// How far letters reach above it: brackets and accents.
const ABOVE: f64 = 1.1;

/// The two fonts, read.
#[derive(Clone)]
pub struct Metrics {
    plain: FontRef<'static>,
    bold: FontRef<'static>,
}

/// A letter of a text: its glyph, its width in ems, and where it stands in the text.
#[derive(Clone, Debug, PartialEq)]
pub struct Letter {
    /// Number of the glyph in the font.
    pub glyph: u32,
    /// Advance, in ems.
    pub advance: f64,
    /// Bytes of the text.
    pub bytes: std::ops::Range<usize>,
}

impl Metrics {
    /// The fonts that the program carries.
    ///
    /// # Errors
    /// The font data can't be read.
    pub fn new() -> Result<Self, DrawingError> {
        let read = |data| {
            FontRef::new(data).map_err(|error| DrawingError::Font {
                found: error.to_string(),
            })
        };
        Ok(Self {
            plain: read(PLAIN)?,
            bold: read(BOLD)?,
        })
    }

    /// The letters of a text. What the font hasn't got stands as its box for a missing letter.
    #[must_use]
    pub fn letters(&self, content: &str, bold: bool) -> Vec<Letter> {
        let font = if bold { &self.bold } else { &self.plain };
        let widths = font.glyph_metrics(Size::unscaled(), LocationRef::default());
        let per_em = f64::from(
            font.metrics(Size::unscaled(), LocationRef::default())
                .units_per_em,
        );
        let map = font.charmap();
        content
            .char_indices()
            .map(|(start, letter)| {
                let glyph = map.map(letter).unwrap_or(GlyphId::NOTDEF);
                Letter {
                    glyph: glyph.to_u32(),
                    advance: f64::from(widths.advance_width(glyph).unwrap_or_default()) / per_em,
                    bytes: start..start + letter.len_utf8(),
                }
            })
            .collect()
    }

    /// Whether the font has every letter of a text.
    #[must_use]
    pub fn has(&self, content: &str) -> bool {
        self.letters(content, false)
            .iter()
            .all(|letter| letter.glyph != 0)
    }

    /// Width of a line of text whose capitals are this high, mm.
    #[must_use]
    pub fn width(&self, content: &str, height: f64, bold: bool) -> f64 {
        let ems: f64 = self
            .letters(content, bold)
            .iter()
            .map(|letter| letter.advance)
            .sum();
        ems * height / CAPITAL
    }

    /// Where a text's base line starts.
    #[must_use]
    pub fn start(&self, text: &Text) -> Point {
        let share = match text.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => 0.5,
            Anchor::End => 1.0,
        };
        let back = share * self.width(&text.content, text.height, text.bold);
        text.at - back * direction(text.turn)
    }

    /// The room a text takes.
    #[must_use]
    pub fn bounds(&self, text: &Text) -> Bounds {
        let start = self.start(text);
        let along = self.width(&text.content, text.height, text.bold) * direction(text.turn);
        let up = direction(text.turn + std::f64::consts::FRAC_PI_2) * text.height;
        let mut bounds = Bounds::EMPTY;
        for corner in [start - up * BELOW, start + up * ABOVE] {
            bounds.include(corner);
            bounds.include(corner + along);
        }
        bounds
    }

    /// A text in lines no wider than this, mm. A word that is wider itself is broken.
    #[must_use]
    pub fn wrapped(&self, content: &str, height: f64, width: f64) -> Vec<String> {
        let mut lines = vec![String::new()];
        for word in content.split_whitespace() {
            for piece in self.pieces(word, height, width) {
                let Some(line) = lines.last_mut() else { break };
                let longer = if line.is_empty() {
                    piece.clone()
                } else {
                    format!("{line} {piece}")
                };
                if self.width(&longer, height, false) <= width {
                    *line = longer;
                } else {
                    lines.push(piece);
                }
            }
        }
        lines
    }

    /// A word, or its pieces where it is wider than the line.
    fn pieces(&self, word: &str, height: f64, width: f64) -> Vec<String> {
        let mut pieces = vec![String::new()];
        for letter in word.chars() {
            let Some(piece) = pieces.last_mut() else {
                break;
            };
            piece.push(letter);
            if self.width(piece, height, false) > width && piece.chars().count() > 1 {
                piece.pop();
                pieces.push(letter.to_string());
            }
        }
        pieces
    }

    /// The height, no more than `height`, at which a text is no wider than this, mm.
    #[must_use]
    pub fn fitting(&self, content: &str, height: f64, width: f64, bold: bool) -> f64 {
        let wide = self.width(content, height, bold);
        if wide > width {
            height * width / wide
        } else {
            height
        }
    }
}

fn direction(turn: f64) -> Vector {
    Vector::new(turn.cos(), turn.sin())
}
