//! Trammel's drawings: one model, and everything that reads it.
//!
//! | module | subject |
//! |---|---|
//! | [`model`] | a drawing as plain data: lines, arcs, text, dimensions, hatch, on layers |
//! | [`metrics`] | how wide a text is, from the font that is embedded |
//! | [`ink`] | a drawing taken apart into strokes, fills and texts, for a writer or a painter |
//! | [`part`] | a flat part as the cutter's outline and as a full-size template with its dimensions |
//! | [`wrap`] | wrap-around templates of a tube's ends |
//! | [`sheet`] | paper, frame, title block, check bars, notes, tiles: pages |
//! | [`table`] | tables as pages and as CSV: the cut list |
//! | [`pdf`], [`dxf`], [`svg`] | the writers; each gives bytes or text, and none touches a file |
//!
//! Units: mm, rad; x to the right, y up, from the lower left corner of a page. Full size throughout: a millimetre of the model is one of paper and of steel. The same
//! drawing gives the same bytes every time.
//!
//! Line types and weights follow ISO 128-2, lettering heights ISO 3098-1, dimensions ISO 129-1 (running dimensions from one datum edge), title block fields ISO 7200,
//! frames ISO 5457 (all from memory).

pub mod dxf;
pub mod ink;
pub mod metrics;
pub mod model;
pub mod part;
pub mod pdf;
pub mod sheet;
pub mod svg;
pub mod table;
pub mod wrap;

mod error;

pub use error::DrawingError;
