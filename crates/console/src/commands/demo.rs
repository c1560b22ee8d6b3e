//! `trammel demo`: the demo builds as files.

use std::fs;

use trammel_persistence::demos;

use crate::arguments::DemoArguments;
use crate::fault::Fault;
use crate::files;
use crate::terminal;

pub(crate) fn run(arguments: &DemoArguments) -> Result<(), Fault> {
    let folder = &arguments.out;
    let demos = demos();
    if !arguments.force {
        // Looked at before the first is written, so that it is all or nothing.
        let mut paths = demos.iter().map(|d| folder.join(d.file_name));
        if let Some(path) = paths.find(|p| p.symlink_metadata().is_ok()) {
            return Err(Fault::Exists { path });
        }
    }
    fs::create_dir_all(folder).map_err(|source| Fault::Folder {
        path: folder.clone(),
        source,
    })?;
    let mut told = String::new();
    for demo in demos {
        let path = folder.join(demo.file_name);
        files::write(&path, demo.text.as_bytes())?;
        told.push_str(&format!("{}: {}\n", path.display(), demo.about));
    }
    terminal::print(&told)
}
