//! The files of a set of sheets, as bytes.

use std::{fmt, str::FromStr};

use trammel_drawings::metrics::Metrics;
use trammel_drawings::model::Layer;
use trammel_drawings::sheet::SheetSet;
use trammel_drawings::{DrawingError, dxf, part, pdf, svg, table};

use crate::{Group, Sheet, Sheets, draft::file_name};

/// A kind of file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Format {
    /// Paper.
    Pdf,
    /// For the cutter.
    Dxf,
    /// For the cutter.
    Svg,
    /// Lists.
    Csv,
}

impl Format {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Pdf, Self::Dxf, Self::Svg, Self::Csv];

    /// The word, which is the extension too.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Pdf => "pdf",
            Self::Dxf => "dxf",
            Self::Svg => "svg",
            Self::Csv => "csv",
        }
    }
}

impl fmt::Display for Format {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.word())
    }
}

/// No such format.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("read {typed:?}, expected pdf, dxf, svg or csv")]
pub struct FormatError {
    typed: String,
}

impl FromStr for Format {
    type Err = FormatError;

    fn from_str(typed: &str) -> Result<Self, FormatError> {
        let word = typed.trim().to_ascii_lowercase();
        let found = Self::ALL.into_iter().find(|f| f.word() == word);
        found.ok_or_else(|| FormatError {
            typed: typed.to_owned(),
        })
    }
}

/// A file to be written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OutFile {
    /// Its name, with extension.
    pub name: String,
    /// What it holds.
    pub bytes: Vec<u8>,
}

/// Why a file could not be made.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum FileFault {
    /// There is no such sheet.
    #[error("there is no sheet called {found:?}; the sheets are: {known}")]
    NoSheet {
        /// What was asked for.
        found: String,
        /// Those there are.
        known: String,
    },
    /// A writer's fault.
    #[error("{name}: {fault}; the file was not written")]
    Drawing {
        /// Which file.
        name: String,
        /// What is wrong.
        fault: DrawingError,
    },
}

/// What goes into one file.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Holds {
    /// The pages of these sheets.
    Pages(Vec<usize>),
    /// A flat part for the cutter.
    Part(usize, Format),
    /// A plate of parts: which kind, which plate.
    Plate(usize, usize, Format),
    /// Lists of a sheet.
    Lists(usize),
}

/// A file by its name, to be made with [`file_of`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FileName {
    /// Its name, with extension.
    pub name: String,
    holds: Holds,
}

/// The files of these formats, in order: all of the set, or those of one sheet.
///
/// # Errors
/// There is no such sheet.
pub fn file_names(
    sheets: &Sheets,
    formats: &[Format],
    only: Option<&str>,
) -> Result<Vec<FileName>, FileFault> {
    files_of(
        sheets,
        formats,
        &only.map_or(Which::All, |name| Which::One(name.to_owned())),
    )
}

/// Which sheets of a set are written.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum Which {
    /// All, with the plates of nested parts.
    #[default]
    All,
    /// One, by its name.
    One(String),
    /// Those of some groups, their pages in one PDF.
    Groups(Vec<Group>),
}

impl Which {
    fn holds(&self, sheet: &Sheet) -> bool {
        match self {
            Self::All => true,
            Self::One(name) => *name == sheet.name,
            Self::Groups(groups) => groups.contains(&sheet.group),
        }
    }

    /// Name of the PDF that has the pages of several sheets.
    fn stem(&self) -> String {
        let mut words = vec!["sheets".to_owned()];
        if let Self::Groups(groups) = self {
            words.extend(groups.iter().map(|g| file_name(g.label())));
        }
        words.join("-")
    }
}

/// The files of these formats, in order, of the sheets that are wanted. Plates of nested parts come with all sheets only, so that a plate is never cut from a part of the
/// set.
///
/// # Errors
/// There is no such sheet.
pub fn files_of(
    sheets: &Sheets,
    formats: &[Format],
    which: &Which,
) -> Result<Vec<FileName>, FileFault> {
    let only = match which {
        Which::One(name) => Some(name.as_str()),
        Which::All | Which::Groups(_) => None,
    };
    if let Some(found) = only.filter(|name| sheets.sheet(name).is_none()) {
        let known: Vec<&str> = sheets.sheets.iter().map(|s| s.name.as_str()).collect();
        return Err(FileFault::NoSheet {
            found: found.to_owned(),
            known: known.join(", "),
        });
    }
    let mut names = Vec::new();
    let mut add = |stem: &str, format: Format, holds| {
        names.push(FileName {
            name: format!("{stem}.{format}"),
            holds,
        });
    };
    let wanted = |sheet: &Sheet| which.holds(sheet);
    let mut formats = formats.to_vec();
    formats.sort_unstable();
    formats.dedup();
    for format in formats {
        if format == Format::Pdf && only.is_none() && sheets.sheets.iter().any(wanted) {
            let held = |(index, sheet): (usize, &Sheet)| wanted(sheet).then_some(index);
            let of = sheets.sheets.iter().enumerate().filter_map(held).collect();
            add(&which.stem(), format, Holds::Pages(of));
        }
        for (index, sheet) in sheets.sheets.iter().enumerate().filter(|(_, s)| wanted(s)) {
            match format {
                Format::Pdf if only.is_some() => {
                    add(&sheet.name, format, Holds::Pages(vec![index]));
                }
                Format::Dxf | Format::Svg if sheet.part.is_some() => {
                    add(&sheet.name, format, Holds::Part(index, format));
                }
                Format::Csv if !sheet.tables.is_empty() => {
                    add(&sheet.name, format, Holds::Lists(index));
                }
                _ => {}
            }
        }
        if matches!(format, Format::Dxf | Format::Svg) && *which == Which::All {
            for (kind, plates) in sheets.plates.iter().enumerate() {
                let count = plates.plates.as_ref().map_or(0, Vec::len);
                for plate in 0..count {
                    let stem = format!("{}-plate-{}", plates.name, plate + 1);
                    add(&stem, format, Holds::Plate(kind, plate, format));
                }
            }
        }
    }
    Ok(names)
}

/// Makes one file of a set.
///
/// # Errors
/// What the writer says.
pub fn file_of(sheets: &Sheets, file: &FileName, metrics: &Metrics) -> Result<OutFile, FileFault> {
    bytes(sheets, &file.holds, metrics)
        .map(|bytes| OutFile {
            name: file.name.clone(),
            bytes,
        })
        .map_err(|fault| FileFault::Drawing {
            name: file.name.clone(),
            fault,
        })
}

fn bytes(sheets: &Sheets, holds: &Holds, metrics: &Metrics) -> Result<Vec<u8>, DrawingError> {
    let at = |index: usize| sheets.sheets.get(index..=index).unwrap_or_default();
    match holds {
        Holds::Pages(of) => {
            let held: Vec<&Sheet> = of.iter().filter_map(|at| sheets.sheets.get(*at)).collect();
            let title = match held.as_slice() {
                [one] => one.title.clone(),
                _ => sheets.title.clone(),
            };
            let pages = held.iter().flat_map(|s| s.pages.clone()).collect();
            pdf::write(&SheetSet { title, pages }, metrics)
        }
        Holds::Part(index, format) => {
            let flat = at(*index).first().and_then(|s| s.part.as_ref());
            let drawing = flat.map(part::for_the_cutter).unwrap_or_default();
            cutter(&drawing, *format, metrics)
        }
        Holds::Plate(kind, plate, format) => {
            let found = sheets.plates.get(*kind);
            let laid = found.and_then(|p| p.plates.as_ref().ok()?.get(*plate));
            let drawing = part::nested("nested parts", laid.into_iter().flatten());
            cutter(&drawing, *format, metrics)
        }
        Holds::Lists(index) => {
            let lists = at(*index).first().map_or(&[][..], |s| &s.tables);
            table::to_csv(lists).map(String::into_bytes)
        }
    }
}

fn cutter(
    drawing: &trammel_drawings::model::Drawing,
    format: Format,
    metrics: &Metrics,
) -> Result<Vec<u8>, DrawingError> {
    let text = match format {
        Format::Svg => svg::write(drawing, &Layer::FOR_THE_CUTTER, metrics),
        _ => dxf::write(drawing, metrics),
    };
    text.map(String::into_bytes)
}
