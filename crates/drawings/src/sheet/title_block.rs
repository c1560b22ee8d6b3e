//! The title block with the fields of ISO 7200 (from memory), and the shop's own: material, thickness, quantity.

use trammel_fabrication::plane::Point;

use crate::metrics::Metrics;
use crate::model::{Drawing, Line, Text};

/// The program and its version, for every title block.
pub const MADE_WITH: &str = concat!("Trammel ", env!("CARGO_PKG_VERSION"));

/// What the title block says. An empty field leaves its box open to write in.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct TitleBlock {
    /// Legal owner.
    pub owner: String,
    /// Title: the part.
    pub title: String,
    /// Supplementary title: the build.
    pub supplementary: String,
    /// Document type: `template`, `cut list`.
    pub kind: String,
    /// Identification number.
    pub number: String,
    /// Revision index.
    pub revision: String,
    /// Date of issue.
    pub date: String,
    /// Creator.
    pub creator: String,
    /// Approval person.
    pub approved: String,
    /// Material and thickness.
    pub material: String,
    /// How many, and of which hand.
    pub quantity: String,
    /// What lengths are written in.
    pub units: String,
    /// `1:1`, or a dash for a table.
    pub scale: String,
    /// What worked the sheet out, with its version.
    pub made_with: String,
}

/// Width of the block, mm (ISO 7200: 180).
pub(super) const WIDTH: f64 = 180.0;
/// Its height, mm.
pub(super) const HEIGHT: f64 = 30.0;
/// Height of a row, mm.
const ROW: f64 = HEIGHT / 3.0;
/// Heights of capitals, mm: labels, entries, title.
const LABEL: f64 = 1.5;
const ENTRY: f64 = 2.2;
const TITLE: f64 = 3.0;
/// From a box's edge to its lettering, mm.
const INSET: f64 = 1.0;

/// Draws the block with its lower left corner here; `sheet` of `sheets`.
pub(super) fn draw(
    block: &TitleBlock,
    corner: Point,
    [sheet, sheets]: [usize; 2],
    metrics: &Metrics,
    drawing: &mut Drawing,
) {
    let sheet = format!("{sheet} / {sheets}");
    let rows: [&[(f64, &str, &str)]; 3] = [
        &[
            (26.0, "Created by", &block.creator),
            (26.0, "Approved by", &block.approved),
            (40.0, "Quantity", &block.quantity),
            (14.0, "Scale", &block.scale),
            (36.0, "Lengths in", &block.units),
            (22.0, "Date of issue", &block.date),
            (16.0, "Sheet", &sheet),
        ],
        &[
            (70.0, "Material", &block.material),
            (60.0, "Build", &block.supplementary),
            (12.0, "Number", &block.number),
            (24.0, "Worked out with", &block.made_with),
            (14.0, "Revision", &block.revision),
        ],
        &[
            (52.0, "Owner", &block.owner),
            (78.0, "Title", &block.title),
            (50.0, "Document", &block.kind),
        ],
    ];
    let mut y = corner.y;
    for row in rows {
        let mut x = corner.x;
        for &(width, label, entry) in row {
            field(Point::new(x, y), width, label, entry, metrics, drawing);
            x += width;
        }
        y += ROW;
    }
    drawing.frame(Line::WIDE, corner, [WIDTH, HEIGHT]);
}

fn field(
    corner: Point,
    width: f64,
    label: &str,
    entry: &str,
    metrics: &Metrics,
    drawing: &mut Drawing,
) {
    drawing.frame(Line::NARROW, corner, [width, ROW]);
    let left = corner.x + INSET;
    drawing.letter(Text::new(
        left,
        corner.y + ROW - INSET - LABEL,
        LABEL,
        label,
    ));
    let is_title = label == "Title";
    let wanted = if is_title { TITLE } else { ENTRY };
    let height = metrics.fitting(entry, wanted, width - 2.0 * INSET, is_title);
    let text = Text::new(left, corner.y + 2.0, height, entry);
    drawing.letter(if is_title { text.bold() } else { text });
}
