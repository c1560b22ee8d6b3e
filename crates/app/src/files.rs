//! Builds in, files out.

use std::{
    ffi::OsStr,
    fs,
    io::{self, Write as _},
    path::{Path, PathBuf},
};

use atomic_write_file::AtomicWriteFile;
use trammel_build::Build;
use trammel_persistence::{Demo, OpenFault, demos, read, read_text};
use trammel_screen::Start;

use crate::fault::Fault;

/// What stands before the name of a demo where a build file is expected.
const DEMO: &str = "demo:";

/// The build that a word on the command line means: a file, or `demo:NAME`.
pub(crate) fn build(from: &Path) -> Result<Build, Fault> {
    if let Some(name) = demo_name(from.as_os_str()) {
        let demo = demo(name)?;
        return read(demo.text).map_err(|fault| Fault::Demo {
            name: demo.name,
            fault: Box::new(fault),
        });
    }
    let text = read_text(from)?;
    let build = read(&text).map_err(|fault| OpenFault::Build {
        path: from.to_owned(),
        fault: Box::new(fault),
    })?;
    Ok(build)
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
    let written = || -> io::Result<()> {
        let mut file = AtomicWriteFile::open(path)?;
        file.write_all(bytes)?;
        file.commit()
    };
    written().map_err(|source| Fault::Write {
        path: path.to_owned(),
        source,
    })
}

/// Whether two words name one file that is there.
pub(crate) fn same_file(a: &Path, b: &Path) -> bool {
    match (fs::canonicalize(a), fs::canonicalize(b)) {
        (Ok(a), Ok(b)) => a == b,
        _ => false,
    }
}
