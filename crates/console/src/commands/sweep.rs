//! `trammel sweep`: the table as CSV.

use trammel_analysis::{SweepColumn, SweepRequest, SweepTable};

use super::table;
use crate::arguments::SweepArguments;
use crate::fault::Fault;
use crate::files;
use crate::terminal;

pub(crate) fn run(arguments: &SweepArguments) -> Result<(), Fault> {
    let build = files::build(&arguments.build)?;
    let poses = &arguments.poses;
    let request = SweepRequest {
        axle: poses.axle.into(),
        side: poses.side.into(),
        travel: poses.travel,
        rack: poses.rack,
        unit: poses.unit.map_or(build.unit, Into::into),
    };
    let table = SweepTable::of(&build, &request)?;
    let left_out = table.left_out();
    if table.rows.is_empty() {
        return Err(Fault::NothingReached(left_out.unwrap_or_default()));
    }
    let header = SweepColumn::ALL.map(SweepColumn::name);
    let csv = table::csv(header, table.rows.iter().copied()).map_err(Fault::Output)?;
    table::deliver(&csv, &poses.csv, &arguments.build)?;
    if let Some(line) = left_out {
        terminal::complain(&line);
    }
    Ok(())
}
