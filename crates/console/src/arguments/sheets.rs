//! Words of `trammel sheets`.

use std::path::PathBuf;

use clap::Args;
use trammel_drawings::sheet::Paper;
use trammel_sheets::Format;

pub(crate) const SHEETS_ABOUT: &str = "\
Write the sheets of a build: full-size templates, files for the cutter, fixture sheet, cut list.

The PDF is at exactly full size; print it at 100 per cent and measure the check bars. DXF (mm) and
SVG have closed contours for the cutter, kerf not taken off, each part in its own file and all flat
parts nested on plates. CSV has the lists. What the build leaves out is taken from the documented
defaults and said on the sheet. The same build gives the same bytes; no date is printed unless
the build has one (shop.issued).

Files of those names in DIR are written over, each whole or not at all; nothing else is touched. One
line for each file goes to standard output, and then what could not be made, with the reason.

Ends with 0, with 1 if a part could not be made, with 2 if the build can't be used or a file can't be
written.";

#[derive(Debug, Args)]
pub(crate) struct SheetsArguments {
    /// Build file, or demo:NAME.
    #[arg(value_name = "BUILD")]
    pub build: PathBuf,
    /// Folder to write to; made if it is not there.
    #[arg(long, value_name = "DIR")]
    pub out: PathBuf,
    /// Paper: a4, a3, letter or tabloid. Without it letter for a build in inches, else A4.
    #[arg(long, value_name = "PAPER")]
    pub paper: Option<Paper>,
    /// Kinds of file, with commas between them.
    #[arg(
        long,
        value_name = "LIST",
        value_delimiter = ',',
        default_value = "pdf,dxf,svg,csv"
    )]
    pub format: Vec<Format>,
    /// One sheet only, by the name of its files, such as front-tie-rod.
    #[arg(long, value_name = "NAME")]
    pub part: Option<String>,
}
