//! Builds in, files out.

use std::{
    ffi::OsStr,
    fs,
    path::{Path, PathBuf},
};

use trammel_build::Build;
use trammel_persistence::{Demo, Document, Expected, OpenFault, demos, read_text};
use trammel_screen::Start;

use crate::arguments::common::OutArguments;
use crate::fault::Fault;

/// What stands before the name of a demo where a build file is expected.
const DEMO: &str = "demo:";

/// The build that a word on the command line means: a file, or `demo:NAME`.
pub(crate) fn build(from: &Path) -> Result<Build, Fault> {
    document(from).map(|document| document.build().clone())
}

/// The same with its text.
pub(crate) fn document(from: &Path) -> Result<Document, Fault> {
    if let Some(name) = demo_name(from.as_os_str()) {
        let demo = demo(name)?;
        return Document::read(demo.text).map_err(|fault| Fault::Demo {
            name: demo.name,
            fault: Box::new(fault),
        });
    }
    let text = read_text(from)?;
    let document = Document::read(&text).map_err(|fault| OpenFault::Build {
        path: from.to_owned(),
        fault: Box::new(fault),
    })?;
    Ok(document)
}

/// Refuses to write over a file that is there already, unless that is wanted.
pub(crate) fn check_free(out: &OutArguments) -> Result<(), Fault> {
    match &out.out {
        Some(path) if !out.force && path.symlink_metadata().is_ok() => {
            Err(Fault::Exists { path: path.clone() })
        }
        _ => Ok(()),
    }
}

/// Writes a changed build where it is wanted, its text as it was wherever nothing changed.
pub(crate) fn save(out: &OutArguments, from: &Document, build: &Build) -> Result<(), Fault> {
    let Some(path) = &out.out else {
        return Ok(());
    };
    let expected = if out.force {
        Expected::Anything
    } else {
        Expected::Nothing
    };
    trammel_persistence::save(path, &from.text_for(build), expected)?;
    Ok(())
}

/// What the window starts with. A file that is not there is told here, since it is most likely a word mistyped; whatever else is
/// wrong with a file the window itself shows.
pub(crate) fn start(from: Option<PathBuf>) -> Result<Start, Fault> {
    let Some(path) = from else {
        return Ok(Start::Demo);
    };
    if let Some(name) = demo_name(path.as_os_str()) {
        return Ok(Start::NamedDemo(demo(name)?.name.to_owned()));
    }
    match path.metadata() {
        Ok(_) => Ok(Start::File(path)),
        Err(source) => Err(OpenFault::File { path, source }.into()),
    }
}

fn demo_name(from: &OsStr) -> Option<&str> {
    from.to_str()?.strip_prefix(DEMO)
}

fn demo(name: &str) -> Result<Demo, Fault> {
    demos()
        .into_iter()
        .find(|d| d.name == name)
        .ok_or_else(|| Fault::NoDemo {
            name: name.to_owned(),
            known: demos().map(|d| format!("{DEMO}{}", d.name)).join(", "),
        })
}

/// Writes a file whole or not at all.
pub(crate) fn write(path: &Path, bytes: &[u8]) -> Result<(), Fault> {
    Ok(trammel_persistence::save_bytes(path, bytes)?)
}

/// Whether two words name one file that is there.
pub(crate) fn same_file(a: &Path, b: &Path) -> bool {
    match (fs::canonicalize(a), fs::canonicalize(b)) {
        (Ok(a), Ok(b)) => a == b,
        _ => false,
    }
}
