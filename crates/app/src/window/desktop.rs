//! The machine as the screen sees it: file dialogs of the desktop, folders of the user.

use std::{
    path::{Path, PathBuf},
    sync::mpsc::{Receiver, channel},
};

use eframe::egui::Context;
use trammel_screen::host::{Host, Pick, Picked};

/// A real desktop.
pub(super) struct Desktop {
    ctx: Context,
    answer: Option<Receiver<Picked>>,
}

impl Desktop {
    pub(super) fn new(ctx: Context) -> Self {
        Self { ctx, answer: None }
    }
}

/// The user's folder for what is kept between two runs.
pub(super) fn state_folder() -> Option<PathBuf> {
    let folders = directories::ProjectDirs::from("", "", "trammel")?;
    Some(
        folders
            .state_dir()
            .unwrap_or(folders.data_local_dir())
            .to_owned(),
    )
}

impl Host for Desktop {
    fn ask_for_file(&mut self, pick: &Pick, start: Option<&Path>) {
        let (send, receive) = channel();
        self.answer = Some(receive);
        let mut dialog = rfd::FileDialog::new();
        if let Some(folder) = start {
            dialog = dialog.set_directory(folder);
        }
        let pick = pick.clone();
        let ctx = self.ctx.clone();
        // On a thread of its own: the desktop's dialog blocks, and may take its time to say that there is none.
        let asked = std::thread::Builder::new()
            .name("file dialog".into())
            .spawn(move || {
                let path = match pick {
                    Pick::OpenBuild => builds(dialog).pick_file(),
                    Pick::SaveBuild(name) => builds(dialog).set_file_name(name).save_file(),
                    Pick::OpenTable => tables(dialog).pick_file(),
                    Pick::SaveTable(name) => tables(dialog).set_file_name(name).save_file(),
                    Pick::SheetsFolder => dialog.pick_folder(),
                    Pick::SaveSheets(name) => sheets(dialog).set_file_name(name).save_file(),
                };
                // The screen may have stopped waiting; then nobody needs the answer.
                let _ = send.send(path.map_or(Picked::Nothing, Picked::Path));
                ctx.request_repaint();
            });
        if asked.is_err() {
            self.answer = None;
        }
    }

    fn answer(&mut self) -> Option<Picked> {
        let answer = self.answer.as_ref()?.try_recv();
        match answer {
            Ok(picked) => {
                self.answer = None;
                Some(picked)
            }
            Err(std::sync::mpsc::TryRecvError::Empty) => None,
            Err(std::sync::mpsc::TryRecvError::Disconnected) => {
                self.answer = None;
                Some(Picked::Nothing)
            }
        }
    }

    fn state_folder(&self) -> Option<PathBuf> {
        state_folder()
    }

    fn open_in_viewer(&mut self, path: &Path) -> Result<(), String> {
        open::that_detached(path).map_err(|e| e.to_string())
    }

    fn quit(&mut self) {
        self.ctx
            .send_viewport_cmd(eframe::egui::ViewportCommand::Close);
    }
}

fn builds(dialog: rfd::FileDialog) -> rfd::FileDialog {
    dialog.add_filter("Trammel build", &["ron"])
}

fn sheets(dialog: rfd::FileDialog) -> rfd::FileDialog {
    dialog.add_filter("Sheets to print", &["pdf"])
}

fn tables(dialog: rfd::FileDialog) -> rfd::FileDialog {
    dialog.add_filter("Point table", &["csv", "tsv", "txt"])
}
