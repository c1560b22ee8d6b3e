//! The Set up stage on the bench: what its work needs of the rest, parts and cards.

use std::path::{Path, PathBuf};

use egui::Context;
use trammel_build::{AxleName, Edit};
use trammel_drawings::sheet::Paper;
use trammel_persistence::{Drawer, write_file};

use super::{Bench, dialogs::Dialog};
use crate::{set_up::drawer::PartAsk, view::Stage};

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
        self.dialog = Some(Dialog::cards(self.suggested_cards_path()));
    }

    /// Writes the cards as a PDF: A4 where lengths are in millimetres, letter where they are in inches.
    pub(super) fn save_cards(&mut self, ctx: &Context, path: &Path) {
        let build = self.history.build();
        let paper = match build.unit {
            trammel_build::LengthUnit::Inch => Paper::Letter,
            trammel_build::LengthUnit::Millimetre => Paper::A4,
        };
        let path = if path.extension().is_none() {
            path.with_extension("pdf")
        } else {
            path.to_owned()
        };
        let bytes = match trammel_cards::pdf(build, paper) {
            Ok(bytes) => bytes,
            Err(fault) => return self.complain(ctx, format!("{fault}. No card was written.")),
        };
        match write_file(&path, &bytes) {
            Ok(()) => self.say(ctx, format!("Cards written to {}", path.display())),
            Err(fault) => self.complain(
                ctx,
                format!("{} can't be written: {fault}.", path.display()),
            ),
        }
    }
}
