//! The map as CSV.

use std::io;

use trammel_tuning::{Cell, Reason};

use super::Asked;
use crate::fault::Fault;

const COLUMNS: [&str; 8] = [
    "x",
    "y",
    "z",
    "largest_deg",
    "rms_deg",
    "slope_deg",
    "state",
    "keep_out",
];

pub(super) fn csv(asked: &Asked, cells: usize) -> Result<Vec<u8>, Fault> {
    let map = asked.map([cells, cells])?;
    let frame = *map.frame();
    let mut writer = csv::Writer::from_writer(Vec::new());
    let mut write = |record: [String; 8]| {
        let written = writer.write_record(record);
        written.map_err(|e| Fault::Output(io::Error::other(e)))
    };
    write(COLUMNS.map(str::to_owned))?;
    for row in 0..frame.rows() {
        for column in 0..frame.columns() {
            let place = frame.place(column as f64, row as f64);
            let [x, y, z] = asked.chosen.typed(place).map(|v| v.to_string());
            let [largest, rms, slope, state] = scored(asked, map.cell(column, row));
            let keep_out = asked.chosen.keep_out(place).unwrap_or_default().to_owned();
            write([x, y, z, largest, rms, slope, state, keep_out])?;
        }
    }
    let bytes = writer.into_inner();
    bytes.map_err(|e| Fault::Output(io::Error::other(e.to_string())))
}

/// Numbers in the shortest form that reads back to the same value.
fn scored(asked: &Asked, cell: Cell) -> [String; 4] {
    let none = |state: &str| {
        [
            String::new(),
            String::new(),
            String::new(),
            state.to_owned(),
        ]
    };
    match cell {
        Cell::Scored(s) => [
            s.largest.to_degrees().to_string(),
            s.rms.to_degrees().to_string(),
            (s.slope.to_degrees() * asked.chosen.unit().mm()).to_string(),
            "scored".to_owned(),
        ],
        Cell::Barred(Reason::NotBuilt(_)) => none("not_built"),
        Cell::Barred(Reason::OutOfReach(_)) | Cell::Pending => none("out_of_reach"),
    }
}
