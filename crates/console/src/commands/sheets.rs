//! `trammel sheets`: everything that is to be made, on paper and for the cutter.

use std::fs;

use trammel_build::{Build, LengthUnit};
use trammel_drawings::{metrics::Metrics, sheet::Paper};
use trammel_sheets::{OutFile, Sheets, file_names, file_of};

use crate::arguments::sheets::SheetsArguments;
use crate::fault::Fault;
use crate::files;
use crate::terminal;

/// Writes the files; whether every part could be made.
pub(crate) fn run(arguments: &SheetsArguments) -> Result<bool, Fault> {
    let build = files::build(&arguments.build)?;
    if let Some(fault) = build.faults().into_iter().next() {
        return Err(fault.into());
    }
    let metrics = Metrics::new()?;
    let paper = arguments.paper.unwrap_or_else(|| usual_paper(&build));
    let sheets = Sheets::of(&build, paper, &metrics);
    let names = file_names(&sheets, &arguments.format, arguments.part.as_deref())?;
    // Everything is made before anything is written, so that a fault leaves the folder as it was.
    let made: Vec<OutFile> = names
        .iter()
        .map(|name| file_of(&sheets, name, &metrics))
        .collect::<Result<_, _>>()?;
    let folder = &arguments.out;
    fs::create_dir_all(folder).map_err(|source| Fault::Folder {
        path: folder.clone(),
        source,
    })?;
    let mut told = String::new();
    for file in &made {
        let path = folder.join(&file.name);
        files::write(&path, &file.bytes)?;
        told.push_str(&format!("{}\n", path.display()));
    }
    for why in &sheets.not_made {
        told.push_str(&format!("{why}\n"));
    }
    terminal::print(&told)?;
    let wanted = |sheet: &&trammel_sheets::Sheet| {
        (arguments.part.as_ref()).is_none_or(|name| *name == sheet.name)
    };
    for sheet in sheets.sheets.iter().filter(wanted) {
        for text in &sheet.heed {
            terminal::complain(&format!("{}: {text}", sheet.title));
        }
    }
    Ok(sheets.not_made.is_empty())
}

/// The paper that the shop is likely to have.
fn usual_paper(build: &Build) -> Paper {
    match build.unit {
        LengthUnit::Inch => Paper::Letter,
        LengthUnit::Millimetre => Paper::A4,
    }
}
