//! What can go wrong between a drawing and its bytes.

/// Why nothing was written.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum DrawingError {
    /// The font in the program can't be read.
    #[error(
        "the font in the program can't be read: {found}; expected DejaVu Sans; nothing was written"
    )]
    Font {
        /// What the reader said.
        found: String,
    },
    /// A coordinate that is no number.
    #[error(
        "a coordinate of \u{201c}{drawing}\u{201d} is no finite number; expected mm; nothing was written"
    )]
    NotFinite {
        /// Title of the drawing.
        drawing: String,
    },
    /// The PDF can't be made.
    #[error("the PDF of \u{201c}{drawing}\u{201d} can't be made: {found}; nothing was written")]
    Pdf {
        /// Title of the set.
        drawing: String,
        /// What the writer said.
        found: String,
    },
    /// The CSV can't be made.
    #[error("the CSV of \u{201c}{table}\u{201d} can't be made: {found}; nothing was written")]
    Csv {
        /// Title of the table.
        table: String,
        /// What the writer said.
        found: String,
    },
}
