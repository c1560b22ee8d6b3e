//! The Set up stage on the bench: what its work needs of the rest, parts and cards.

use std::path::{Path, PathBuf};

use egui::Context;
use trammel_build::{AxleName, Build, Edit, LengthUnit};
use trammel_drawings::sheet::Paper;
use trammel_persistence::{Drawer, read_text, save_bytes};

use super::{
    Bench,
    dialogs::{Dialog, PathFor},
};
use crate::{
    request::Request,
    set_up::{drawer::PartAsk, edits},
    view::Stage,
};

/// The drawer's file in the user's folder.
const DRAWER: &str = "parts.ron";

impl Bench {
    /// Goes on with what the stage works out.
    pub(super) fn set_up_go_on(&mut self, ctx: &Context) {
        if self.view.stage != Stage::SetUp {
            return;
        }
        if self.set_up.drawer().is_none() {
            let drawer = match self.drawer_path() {
                Some(path) => Drawer::load(&path).map_err(|fault| fault.to_string()),
                None => Ok(Drawer::default()),
            };
            self.set_up.set_drawer(drawer);
        }
        // During a drag the processor belongs to the hand.
        if self.history.is_open() {
            return;
        }
        if let Some(front) = self.results.study.as_ref().map(|s| &s.front) {
            let side = self.view.set_up.side;
            self.set_up
                .go_on(ctx, self.history.build(), &front.model, side);
        }
    }

    fn drawer_path(&self) -> Option<PathBuf> {
        self.host.state_folder().map(|folder| folder.join(DRAWER))
    }

    /// Carries out what is asked of the drawer.
    pub(super) fn parts(&mut self, ctx: &Context, ask: &PartAsk) {
        match ask {
            PartAsk::Put(part) => {
                let edit = Edit::PutPart(AxleName::Front, part.clone());
                self.edit(ctx, &edit);
            }
            PartAsk::Keep(drawer) => self.keep_drawer(ctx, drawer),
        }
    }

    fn keep_drawer(&mut self, ctx: &Context, drawer: &Drawer) {
        if let Some(Err(why)) = self.set_up.drawer() {
            let text = format!("{why}. Nothing was saved.");
            self.complain(ctx, text);
            return;
        }
        let saved = match self.drawer_path() {
            Some(path) => drawer.save(&path).map_err(|e| e.to_string()),
            None => Err("this machine has no folder for it".to_owned()),
        };
        self.set_up.set_drawer(Ok(drawer.clone()));
        if let Err(why) = saved {
            self.complain(
                ctx,
                format!(
                    "The drawer of parts is not saved: {why}. It holds until Trammel is closed."
                ),
            );
        }
    }

    pub(super) fn ask_for_cards(&mut self) {
        self.dialog = Some(Dialog::path(PathFor::Cards, self.suggested_cards_path()));
    }

    pub(super) fn ask_for_measuring_sheet(&mut self) {
        self.dialog = Some(Dialog::path(
            PathFor::MeasuringSheet,
            self.suggested_measuring_path(),
        ));
    }

    /// A4 where lengths are in millimetres, letter where they are in inches.
    fn paper(&self) -> Paper {
        match self.history.build().unit {
            LengthUnit::Inch => Paper::Letter,
            LengthUnit::Millimetre => Paper::A4,
        }
    }

    /// Writes the cards as a PDF.
    pub(super) fn save_cards(&mut self, ctx: &Context, path: &Path) {
        match trammel_cards::pdf(self.history.build(), self.paper()) {
            Ok(bytes) => self.save_pdf(ctx, path, &bytes, "Cards"),
            Err(fault) => self.complain(ctx, format!("{fault}. No card was written.")),
        }
    }

    /// Writes the sheet to measure parts by as a PDF.
    pub(super) fn save_measuring_sheet(&mut self, ctx: &Context, path: &Path) {
        match trammel_cards::measuring_pdf(self.history.build().unit, self.paper()) {
            Ok(bytes) => self.save_pdf(ctx, path, &bytes, "Measuring sheet"),
            Err(fault) => self.complain(ctx, format!("{fault}. No sheet was written.")),
        }
    }

    fn save_pdf(&mut self, ctx: &Context, path: &Path, bytes: &[u8], what: &str) {
        let path = if path.extension().is_none() {
            path.with_extension("pdf")
        } else {
            path.to_owned()
        };
        match save_bytes(&path, bytes) {
            Ok(()) => self.say(ctx, format!("{what} written to {}", path.display())),
            Err(fault) => self.complain(
                ctx,
                format!("{} can't be written: {fault}.", path.display()),
            ),
        }
    }

    /// Takes a sheet of readings from a file, all of it or nothing, as one step.
    pub(super) fn open_readings(&mut self, ctx: &Context, path: &Path) {
        let side = self.view.set_up.side;
        self.take_file(ctx, path, "No line was taken", |build, text| {
            edits::pasted(build, text, side)
        });
    }

    /// Takes a tape survey from a file, all of it or nothing, as one step.
    pub(super) fn open_survey(&mut self, ctx: &Context, path: &Path) {
        self.take_file(ctx, path, "The survey stays as it was", |build, text| {
            edits::whole_survey(build, text)
        });
    }

    fn take_file(
        &mut self,
        ctx: &Context,
        path: &Path,
        stands: &str,
        take: impl FnOnce(&Build, &str) -> Result<Request, String>,
    ) {
        let text = match read_text(path) {
            Ok(text) => text,
            Err(fault) => return self.complain(ctx, format!("{fault}. {stands}.")),
        };
        match take(self.history.build(), &text) {
            Ok(request) => {
                self.carry_out(ctx, vec![request]);
                if self.message.is_none() {
                    let text = format!("Taken from {}. Undo takes it back.", path.display());
                    self.say(ctx, text);
                }
            }
            Err(why) => {
                let why = why.trim_end_matches('.');
                self.complain(ctx, format!("{}: {why}. {stands}.", path.display()));
            }
        }
    }
}
