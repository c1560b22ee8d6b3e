//! Writing files on a thread of its own, one after the other, each whole or not at all.

use std::{
    path::{Path, PathBuf},
    sync::{
        Arc,
        atomic::{AtomicUsize, Ordering},
        mpsc::{Receiver, channel},
    },
};

use egui::Context;
use trammel_drawings::metrics::Metrics;
use trammel_persistence::{in_plain_words, save_bytes};
use trammel_sheets::{FileName, Format, Sheets, Which, file_of, files_of};

/// What an export came to: what to say, and what to look at.
type Done = Result<(String, PathBuf), String>;

/// Files being written.
pub(super) struct Export {
    count: usize,
    written: Arc<AtomicUsize>,
    done: Receiver<Done>,
}

impl Export {
    /// Begins.
    ///
    /// # Errors
    /// In words: no such sheet, nothing to write, no thread.
    pub(super) fn start(
        ctx: &Context,
        sheets: Arc<Sheets>,
        formats: &[Format],
        which: &Which,
        folder: PathBuf,
    ) -> Result<Self, String> {
        let names = files_of(&sheets, formats, which).map_err(|e| e.to_string())?;
        if names.is_empty() {
            return Err(
                "There is no file of that kind of these sheets; nothing was written.".into(),
            );
        }
        let (count, written) = (names.len(), Arc::new(AtomicUsize::new(0)));
        let (send, done) = channel();
        let (ctx, so_far) = (ctx.clone(), Arc::clone(&written));
        std::thread::Builder::new()
            .name("export".into())
            .spawn(move || {
                let result = write_all(&sheets, &names, &folder, |n| {
                    so_far.store(n, Ordering::Relaxed);
                    ctx.request_repaint();
                });
                // Whoever asked may be gone; the files are there all the same.
                let _ = send.send(result);
                ctx.request_repaint();
            })
            .map_err(|e| format!("Nothing was written: {e}."))?;
        Ok(Self {
            count,
            written,
            done,
        })
    }

    pub(super) fn progress(&self) -> [usize; 2] {
        [self.written.load(Ordering::Relaxed), self.count]
    }

    pub(super) fn done(&self) -> Option<Done> {
        use std::sync::mpsc::TryRecvError;
        match self.done.try_recv() {
            Ok(done) => Some(done),
            Err(TryRecvError::Empty) => None,
            Err(TryRecvError::Disconnected) => {
                Some(Err("The export stopped before its end.".into()))
            }
        }
    }
}

fn write_all(sheets: &Sheets, names: &[FileName], folder: &Path, told: impl Fn(usize)) -> Done {
    let so_far = |n: usize| format!("{n} of {} files were written before", names.len());
    std::fs::create_dir_all(folder).map_err(|e| {
        format!(
            "{} can't be made: {}. Nothing was written.",
            folder.display(),
            in_plain_words(&e)
        )
    })?;
    let metrics = Metrics::new().map_err(|e| e.to_string())?;
    let mut first = None;
    for (n, name) in names.iter().enumerate() {
        let file = file_of(sheets, name, &metrics).map_err(|e| format!("{e}; {}.", so_far(n)))?;
        let path = folder.join(&file.name);
        save_bytes(&path, &file.bytes).map_err(|e| format!("{e}; {}.", so_far(n)))?;
        first.get_or_insert(path);
        told(n + 1);
    }
    let first = first.unwrap_or_else(|| folder.to_owned());
    let said = match names.len() {
        1 => format!("Written to {}", first.display()),
        n => format!("{n} files written to {}", folder.display()),
    };
    Ok((said, first))
}
