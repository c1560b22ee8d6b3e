//! How the screen was left, for the next run: tour, light or dark, scale, window.

use std::path::PathBuf;

use egui::Context;
use trammel_persistence::ScreenState;

use super::scale;

/// What is remembered, and where.
pub(super) struct Remembered {
    folder: Option<PathBuf>,
    state: ScreenState,
}

impl Remembered {
    /// What a folder remembers; without one nothing is remembered, and everything is as at a first start.
    pub(super) fn new(folder: Option<PathBuf>) -> Self {
        let state = folder.as_deref().map(ScreenState::load).unwrap_or_default();
        Self { folder, state }
    }

    pub(super) fn state(&self) -> &ScreenState {
        &self.state
    }

    /// Whether there is a folder to remember things in.
    pub(super) fn remembers(&self) -> bool {
        self.folder.is_some()
    }

    /// Shows everything at the wanted scale, as far as this frame's window holds it, and takes the window's size as what it would be left with. One
    /// that fills the display leaves the size that it had before.
    pub(super) fn follow(&mut self, ctx: &Context) {
        scale::show(ctx, self.state.scale);
        let [maximised, fullscreen] = ctx.input(|i| {
            let viewport = i.viewport();
            [viewport.maximized, viewport.fullscreen].map(|it| it == Some(true))
        });
        self.state.maximised = maximised;
        if !maximised && !fullscreen {
            let size = scale::window(ctx);
            // A cast from float to integer keeps within the integer's range.
            self.state.window = [size.x.round() as u16, size.y.round() as u16];
        }
    }

    /// Changes what is remembered and writes it, beside what another window may have written since. A state that can't be written is no reason
    /// to stop work.
    pub(super) fn keep(&mut self, change: impl Fn(&mut ScreenState)) {
        change(&mut self.state);
        if let Some(folder) = &self.folder {
            let mut kept = ScreenState::load(folder);
            let before = kept;
            change(&mut kept);
            if kept != before {
                let _ = kept.save(folder);
            }
        }
    }

    /// Writes how the window is left.
    pub(super) fn leave(&mut self) {
        let now = self.state;
        self.keep(|state| {
            state.maximised = now.maximised;
            state.window = now.window;
        });
    }
}
