//! Tables as pages and as CSV.

mod csv_text;
mod pages;

pub use csv_text::to_csv;
pub use pages::lay_out;

/// A column.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Column {
    /// Its head.
    pub head: String,
    /// Whether its entries are figures and stand at its right edge.
    pub figures: bool,
}

/// A table; each row has an entry for each column.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Table {
    /// What it lists.
    pub title: String,
    columns: Vec<Column>,
    rows: Vec<Vec<String>>,
}

impl Table {
    /// An empty table with these columns; a head that starts with `#` marks a column of figures, and is shown without it.
    #[must_use]
    pub fn new(title: impl Into<String>, heads: &[&str]) -> Self {
        let column = |head: &&str| Column {
            head: head.trim_start_matches('#').to_owned(),
            figures: head.starts_with('#'),
        };
        Self {
            title: title.into(),
            columns: heads.iter().map(column).collect(),
            rows: Vec::new(),
        }
    }

    /// Adds a row. Entries beyond the last column are dropped, missing ones are empty.
    pub fn row(&mut self, entries: impl IntoIterator<Item = String>) {
        let mut row: Vec<String> = entries.into_iter().take(self.columns.len()).collect();
        row.resize(self.columns.len(), String::new());
        self.rows.push(row);
    }

    /// The columns.
    #[must_use]
    pub fn columns(&self) -> &[Column] {
        &self.columns
    }

    /// The rows.
    #[must_use]
    pub fn rows(&self) -> &[Vec<String>] {
        &self.rows
    }
}
