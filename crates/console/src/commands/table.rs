//! Tables as CSV, to where they are wanted.

use std::{io, path::Path};

use crate::fault::Fault;
use crate::files;
use crate::terminal;

/// Numbers in the shortest form that reads back to the same value; an empty cell where there is none.
pub(crate) fn csv<Row>(
    header: impl IntoIterator<Item = impl AsRef<[u8]>>,
    rows: impl IntoIterator<Item = Row>,
) -> io::Result<Vec<u8>>
where
    Row: IntoIterator<Item = Option<f64>>,
{
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(header)?;
    for row in rows {
        let cells = row.into_iter();
        writer.write_record(cells.map(|cell| cell.map_or_else(String::new, |v| v.to_string())))?;
    }
    writer
        .into_inner()
        .map_err(|e| io::Error::other(e.to_string()))
}

/// Puts a table of a build's into a file or, for `-`, on standard output; never over the build itself.
pub(crate) fn deliver(bytes: &[u8], to: &Path, build: &Path) -> Result<(), Fault> {
    if to == Path::new("-") {
        Ok(terminal::print_bytes(bytes)?)
    } else if files::same_file(to, build) {
        Err(Fault::OverBuild {
            path: to.to_owned(),
        })
    } else {
        files::write(to, bytes)
    }
}
