//! Tables as CSV.

use super::Table;
use crate::DrawingError;

/// Heads and rows as CSV, one table after the other with an empty line between.
///
/// # Errors
/// What the CSV writer can't write.
pub fn to_csv(tables: &[Table]) -> Result<String, DrawingError> {
    let texts: Result<Vec<String>, DrawingError> = tables.iter().map(one).collect();
    Ok(texts?.join("\n"))
}

fn one(table: &Table) -> Result<String, DrawingError> {
    let failed = |found: String| DrawingError::Csv {
        table: table.title.clone(),
        found,
    };
    let mut writer = csv::WriterBuilder::new()
        .flexible(true)
        .from_writer(Vec::new());
    let heads: Vec<&str> = table
        .columns()
        .iter()
        .map(|column| column.head.as_str())
        .collect();
    writer
        .write_record([&table.title])
        .map_err(|error| failed(error.to_string()))?;
    writer
        .write_record(&heads)
        .map_err(|error| failed(error.to_string()))?;
    for row in table.rows() {
        writer
            .write_record(row)
            .map_err(|error| failed(error.to_string()))?;
    }
    let bytes = writer
        .into_inner()
        .map_err(|error| failed(error.to_string()))?;
    String::from_utf8(bytes).map_err(|error| failed(error.to_string()))
}
