//! Unsaved work, kept in the user's state folder until it is saved or given up, and found again after a crash.
//!
//! A session holds a lock on a file of its own for as long as it lives; the system lets go of the lock however the session ends. Work whose lock can be
//! had is left over from a session that did not end well.

use std::{
    fs::{self, File, OpenOptions, TryLockError},
    io,
    path::{Path, PathBuf},
    sync::atomic::{AtomicU32, Ordering},
    time::{Duration, SystemTime, UNIX_EPOCH},
};

use serde::{Deserialize, Serialize};

use crate::{
    LARGEST_FILE, in_plain_words,
    outside::{kept_text, not_a_file},
    save::write_file,
};

const WORK: &str = "ron";
const LOCK: &str = "lock";
/// A lock without work that is older than this is not of a session that is just starting.
const STARTED_BY_NOW: Duration = Duration::from_secs(60);

/// Why unsaved work could not be kept.
#[derive(Debug, thiserror::Error)]
#[error("unsaved work could not be kept in {}: {}", path.display(), in_plain_words(source))]
pub struct AutosaveFault {
    /// Where.
    pub path: PathBuf,
    /// What the system says.
    pub source: io::Error,
}

/// The unsaved work of one document of one session.
#[derive(Debug)]
pub struct Autosave {
    work: PathBuf,
    lock_path: PathBuf,
    // Held for its lock.
    _lock: File,
    kept: Option<Kept>,
}

/// What a file of unsaved work holds.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(rename = "unsaved_work")]
struct Kept {
    /// The build file that the work belongs to; none for a build that was never saved.
    path: Option<String>,
    /// Seconds since 1970 began, UTC.
    saved_at_s: u64,
    /// The build's text.
    text: String,
}

/// Work of a session that did not end well. Its lock is held while this lives, so that no other session offers it too.
#[derive(Debug)]
pub struct Leftover {
    /// The build file that the work belongs to; none for a build that was never saved.
    pub path: Option<PathBuf>,
    /// When it was kept.
    pub saved_at: SystemTime,
    /// The build's text.
    pub text: String,
    work: PathBuf,
    lock_path: PathBuf,
    _lock: Option<File>,
}

impl Autosave {
    /// Begins to keep work in a folder, which is made if need be. Nothing is written until [`Autosave::keep`].
    ///
    /// # Errors
    /// When the folder can't be made or written to.
    pub fn start(folder: &Path) -> Result<Self, AutosaveFault> {
        static COUNT: AtomicU32 = AtomicU32::new(0);
        let count = COUNT.fetch_add(1, Ordering::Relaxed);
        let now = SystemTime::now()
            .duration_since(UNIX_EPOCH)
            .unwrap_or_default();
        let stem = format!("unsaved-{}-{}-{count}", now.as_nanos(), std::process::id());
        let lock_path = folder.join(&stem).with_extension(LOCK);
        let lock = || -> io::Result<File> {
            fs::create_dir_all(folder)?;
            let file = File::create_new(&lock_path)?;
            // A file system without locks still keeps the work; it is offered to the next session then even while this one lives.
            let _ = file.try_lock();
            Ok(file)
        };
        let lock = lock().map_err(|source| AutosaveFault {
            path: lock_path.clone(),
            source,
        })?;
        Ok(Self {
            work: folder.join(&stem).with_extension(WORK),
            lock_path,
            _lock: lock,
            kept: None,
        })
    }

    /// Keeps a text as the unsaved work of this document, in place of what was kept before. Nothing is written when nothing changed.
    ///
    /// # Errors
    /// When it can't be written; what was kept before still is.
    pub fn keep(&mut self, path: Option<&Path>, text: &str) -> Result<(), AutosaveFault> {
        let path = path.map(|p| p.to_string_lossy().into_owned());
        let same = |k: &Kept| k.text == text && k.path == path;
        if self.kept.as_ref().is_some_and(same) {
            return Ok(());
        }
        let saved_at_s = SystemTime::now()
            .duration_since(UNIX_EPOCH)
            .map_or(0, |d| d.as_secs());
        let kept = Kept {
            path,
            saved_at_s,
            text: text.to_owned(),
        };
        let fault = |source| AutosaveFault {
            path: self.work.clone(),
            source,
        };
        let written = ron::to_string(&kept).map_err(|e| fault(io::Error::other(e)))?;
        write_file(&self.work, written.as_bytes()).map_err(fault)?;
        self.kept = Some(kept);
        Ok(())
    }

    /// Gives up what was kept: the work is saved, or the user does not want it.
    ///
    /// # Errors
    /// When the file can't be removed.
    pub fn clear(&mut self) -> Result<(), AutosaveFault> {
        self.kept = None;
        remove(&self.work).map_err(|source| AutosaveFault {
            path: self.work.clone(),
            source,
        })
    }
}

impl Drop for Autosave {
    fn drop(&mut self) {
        // Kept work stays for the next session; without any, nothing is left behind.
        if self.kept.is_none() {
            let _ = remove(&self.lock_path);
        }
    }
}

impl Leftover {
    /// Removes it: it was taken over, or nobody wants it.
    ///
    /// # Errors
    /// When the file can't be removed.
    pub fn discard(self) -> Result<(), AutosaveFault> {
        remove(&self.work)
            .and_then(|()| remove(&self.lock_path))
            .map_err(|source| AutosaveFault {
                path: self.work.clone(),
                source,
            })
    }
}

/// Work in a folder that was left over by sessions that did not end well, the latest first. What can't be read is passed over and stays where it is; a
/// folder that is not there holds none.
#[must_use]
pub fn leftovers(folder: &Path) -> Vec<Leftover> {
    let entries = fs::read_dir(folder).into_iter().flatten().flatten();
    let paths: Vec<PathBuf> = entries.map(|e| e.path()).collect();
    let with_end = |end: &'static str| {
        paths
            .iter()
            .filter(move |p| p.extension().is_some_and(|e| e == end))
    };
    let mut found: Vec<Leftover> = with_end(WORK).filter_map(|work| leftover(work)).collect();
    for lock in with_end(LOCK).filter(|lock| !paths.contains(&lock.with_extension(WORK))) {
        sweep(lock);
    }
    found.sort_by_key(|l| std::cmp::Reverse(l.saved_at));
    found
}

fn leftover(work: &Path) -> Option<Leftover> {
    let lock_path = work.with_extension(LOCK);
    let lock = open_lock(&lock_path).ok();
    if let Some(Err(TryLockError::WouldBlock)) = lock.as_ref().map(File::try_lock) {
        return None;
    }
    // Twice the size of a build: quotes in it take two characters here.
    let text = kept_text(work, 2 * LARGEST_FILE).ok()?;
    let kept: Kept = ron::from_str(&text).ok()?;
    Some(Leftover {
        path: kept.path.map(PathBuf::from),
        saved_at: UNIX_EPOCH.checked_add(Duration::from_secs(kept.saved_at_s))?,
        text: kept.text,
        work: work.to_owned(),
        lock_path,
        _lock: lock,
    })
}

/// Removes a lock that an ended session left without work.
fn sweep(lock_path: &Path) {
    let old = fs::metadata(lock_path)
        .and_then(|m| m.modified())
        .is_ok_and(|at| at.elapsed().is_ok_and(|age| age > STARTED_BY_NOW));
    let free = || open_lock(lock_path).is_ok_and(|lock| lock.try_lock().is_ok());
    if old && free() {
        let _ = remove(lock_path);
    }
}

/// Opens a lock to try it; what is no file would make one wait.
fn open_lock(path: &Path) -> io::Result<File> {
    match not_a_file(fs::metadata(path)?.file_type()) {
        None => OpenOptions::new().write(true).open(path),
        Some(found) => Err(io::Error::other(found)),
    }
}

fn remove(path: &Path) -> io::Result<()> {
    match fs::remove_file(path) {
        Err(fault) if fault.kind() != io::ErrorKind::NotFound => Err(fault),
        _ => Ok(()),
    }
}
