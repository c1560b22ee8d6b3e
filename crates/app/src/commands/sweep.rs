//! `trammel sweep`: the table as CSV.

use std::{io, path::Path};

use trammel_analysis::{SweepColumn, SweepRequest, SweepTable};

use crate::{arguments::SweepArguments, console, fault::Fault, files};

pub(crate) fn run(arguments: &SweepArguments) -> Result<(), Fault> {
    let build = files::build(&arguments.build)?;
    let request = SweepRequest {
        axle: arguments.axle.into(),
        side: arguments.side.into(),
        travel: arguments.travel,
        rack: arguments.rack,
        unit: arguments.unit.map_or(build.unit, Into::into),
    };
    let table = SweepTable::of(&build, &request)?;
    let left_out = table.left_out();
    if table.rows.is_empty() {
        return Err(Fault::NothingReached(left_out.unwrap_or_default()));
    }
    let to_terminal = arguments.csv == Path::new("-");
    let csv = csv(&table).map_err(Fault::Output)?;
    if to_terminal {
        console::print_bytes(&csv)?;
    } else if files::same_file(&arguments.csv, &arguments.build) {
        return Err(Fault::OverBuild {
            path: arguments.csv.clone(),
        });
    } else {
        files::write(&arguments.csv, &csv)?;
    }
    if let Some(line) = left_out {
        console::complain(&line);
    }
    Ok(())
}

/// Numbers in the shortest form that reads back to the same value; an empty cell where there is none.
fn csv(table: &SweepTable) -> io::Result<Vec<u8>> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(SweepColumn::ALL.map(SweepColumn::name))?;
    for row in &table.rows {
        writer.write_record(row.map(|cell| cell.map_or_else(String::new, |v| v.to_string())))?;
    }
    writer
        .into_inner()
        .map_err(|e| io::Error::other(e.to_string()))
}
