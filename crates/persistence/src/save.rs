//! Putting a text on disk so that at every instant either the old file or the new one is there whole.

use std::{
    ffi::OsString,
    fs, io,
    io::{Read, Write},
    path::{Path, PathBuf},
};

use atomic_write_file::AtomicWriteFile;

use crate::{LARGEST_FILE, in_plain_words, outside::not_a_file};

/// Links to follow before they count as going round in a circle.
const MOST_LINKS: usize = 40;

/// What the writer believes to be on disk now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Expected<'a> {
    /// No file of this name.
    Nothing,
    /// A file with this text, as it was opened or saved last. A file that has gone since is written again.
    Text(&'a str),
    /// Whatever: the user was asked and wants it replaced.
    Anything,
}

/// What a save did.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Saved {
    /// The file written: the target where the path was a link.
    pub path: PathBuf,
    /// The previous version, where there was one that differed.
    pub backup: Option<PathBuf>,
}

/// Why nothing was saved. The file on disk is as it was.
#[derive(Debug, thiserror::Error)]
pub enum SaveFault {
    /// The file is not as this program left it; ask before writing over it.
    #[error(
        "{} changed on disk since it was opened here; nothing was saved, so that the other change is not lost",
        path.display()
    )]
    ChangedOnDisk {
        /// Which file.
        path: PathBuf,
    },
    /// There is a file already where none was expected; ask before writing over it.
    #[error("{} is there already; nothing was saved over it", path.display())]
    AlreadyThere {
        /// Which file.
        path: PathBuf,
    },
    /// A folder, a device or the like.
    #[error("{} is {found}; expected a file to save to", path.display())]
    NotAFile {
        /// What was given.
        path: PathBuf,
        /// What it is.
        found: &'static str,
    },
    /// More than is ever read back.
    #[error(
        "{} would have {bytes} bytes; nothing was saved, since a file of more than {LARGEST_FILE} could not be opened again", path.display()
    )]
    TooLarge {
        /// Which file.
        path: PathBuf,
        /// How large it would be.
        bytes: usize,
    },
    /// The system refused.
    #[error("{} could not be {doing}: {}; the file on disk is as it was", path.display(), in_plain_words(source))]
    System {
        /// Which file.
        path: PathBuf,
        /// What was being done to it.
        doing: &'static str,
        /// What the system says.
        source: io::Error,
    },
}

/// Saves a text: the previous version goes to a backup beside it (`name.ron.bak`), the new one is written beside, synced to disk and then put in its
/// place in one step. A link stays a link; what it points at is written. A file that holds this text already is left alone.
///
/// What is on disk is compared with `expected` byte by byte just before. Two programs that save in the same instant can still
/// pass each other; the earlier version is in the backup then.
///
/// # Errors
/// [`SaveFault`]; the old file is whole in every case.
pub fn save(path: &Path, text: &str, expected: Expected<'_>) -> Result<Saved, SaveFault> {
    let path = target(path)?;
    if text.len() as u64 > LARGEST_FILE {
        let bytes = text.len();
        return Err(SaveFault::TooLarge { path, bytes });
    }
    let current = current(&path)?;
    if current.is(text) {
        return Ok(Saved { path, backup: None });
    }
    let backup = match (current, expected) {
        (Current::Nothing, _) => None,
        (_, Expected::Nothing) => return Err(SaveFault::AlreadyThere { path }),
        (now, Expected::Text(known)) if !now.is(known) => {
            return Err(SaveFault::ChangedOnDisk { path });
        }
        (Current::Bytes(now), _) => Some(back_up(&path, &mut now.as_slice())?),
        (Current::TooLarge, _) => {
            let mut old = fs::File::open(&path).map_err(system(&path, "backed up"))?;
            Some(back_up(&path, &mut old)?)
        }
    };
    write_file(&path, text.as_bytes()).map_err(system(&path, "saved"))?;
    Ok(Saved { path, backup })
}

/// Saves what can be made again from a build at any time: whole or not at all, over what is there, without a backup.
///
/// # Errors
/// [`SaveFault`]; the old file is whole in every case.
pub fn save_bytes(path: &Path, bytes: &[u8]) -> Result<(), SaveFault> {
    let path = target(path)?;
    write_file(&path, bytes).map_err(system(&path, "written"))
}

/// Whether the file differs from what was opened or saved last; one that has gone or can't be read does.
#[must_use]
pub fn changed_on_disk(path: &Path, known: &str) -> bool {
    target(path)
        .and_then(|path| current(&path))
        .map_or(true, |now| !now.is(known))
}

/// Writes a file whole or not at all: beside, then renamed.
///
/// # Errors
/// When the system refuses; what was there is whole then.
pub(crate) fn write_file(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let mut file = AtomicWriteFile::open(path)?;
    file.write_all(bytes)?;
    file.commit()
}

/// The name of the backup of a file: `kart.ron` has `kart.ron.bak`.
#[must_use]
pub fn backup_path(path: &Path) -> PathBuf {
    let mut name = path.file_name().map(OsString::from).unwrap_or_default();
    name.push(".bak");
    path.with_file_name(name)
}

fn back_up(path: &Path, old: &mut impl Read) -> Result<PathBuf, SaveFault> {
    let backup = backup_path(path);
    let copied = AtomicWriteFile::open(&backup).and_then(|mut file| {
        io::copy(old, &mut file)?;
        file.commit()
    });
    copied.map_err(system(&backup, "written as the backup"))?;
    Ok(backup)
}

fn system(path: &Path, doing: &'static str) -> impl FnOnce(io::Error) -> SaveFault {
    let path = path.to_owned();
    move |source| SaveFault::System {
        path,
        doing,
        source,
    }
}

/// Where a path leads when its last part is a link, also to a file that is not there yet.
fn target(path: &Path) -> Result<PathBuf, SaveFault> {
    let mut path = path.to_owned();
    for _ in 0..MOST_LINKS {
        match fs::symlink_metadata(&path) {
            Ok(meta) if meta.is_symlink() => {
                let link = fs::read_link(&path).map_err(system(&path, "followed"))?;
                path = path
                    .parent()
                    .map_or(link.clone(), |folder| folder.join(link));
            }
            Ok(meta) => match not_a_file(meta.file_type()) {
                Some(found) => return Err(SaveFault::NotAFile { path, found }),
                None => return Ok(path),
            },
            Err(_) => return Ok(path),
        }
    }
    Err(SaveFault::NotAFile {
        path,
        found: "a link that leads round in a circle",
    })
}

/// What is on disk under a name.
enum Current {
    Nothing,
    Bytes(Vec<u8>),
    /// More than a build ever takes, so none that was opened or saved here; not read into memory.
    TooLarge,
}

impl Current {
    fn is(&self, text: &str) -> bool {
        matches!(self, Self::Bytes(now) if now == text.as_bytes())
    }
}

fn current(path: &Path) -> Result<Current, SaveFault> {
    let mut bytes = Vec::new();
    let read =
        fs::File::open(path).and_then(|file| file.take(LARGEST_FILE + 1).read_to_end(&mut bytes));
    match read {
        Ok(size) if size as u64 > LARGEST_FILE => Ok(Current::TooLarge),
        Ok(_) => Ok(Current::Bytes(bytes)),
        Err(fault) if fault.kind() == io::ErrorKind::NotFound => Ok(Current::Nothing),
        Err(fault) => Err(system(path, "compared")(fault)),
    }
}
