//! Point tables: files and the clipboard.

use std::path::Path;

use egui::Context;
use trammel_build::{Edit, PointRef, Triple};
use trammel_persistence::{Expected, Separator, read_points, read_text, save, write_points};

use super::Bench;

impl Bench {
    pub(super) fn copy_points(&mut self, ctx: &Context) {
        ctx.copy_text(write_points(self.history.build(), Separator::Tab));
        self.say(
            ctx,
            "The point table is on the clipboard, for a spreadsheet.",
        );
    }

    pub(super) fn paste_points(&mut self, ctx: &Context, text: &str) {
        match read_points(text, self.history.build().unit) {
            Ok(points) => self.place_points(ctx, points),
            Err(fault) => self.complain(ctx, format!("{fault}. No point was moved.")),
        }
    }

    pub(super) fn import_points(&mut self, ctx: &Context, path: &Path) {
        match read_text(path) {
            Ok(text) => self.paste_points(ctx, &text),
            Err(fault) => self.complain(ctx, format!("{fault}.")),
        }
    }

    fn place_points(&mut self, ctx: &Context, points: Vec<(PointRef, Triple)>) {
        let count = points.len();
        let before = self.history.build().clone();
        self.edit(ctx, &Edit::MovePoints(points));
        if *self.history.build() != before {
            self.say(
                ctx,
                format!("Placed {count} points. Undo puts them all back."),
            );
        }
    }

    pub(super) fn export_points(&mut self, ctx: &Context, path: &Path) {
        let text = write_points(self.history.build(), Separator::Comma);
        match save(path, &text, Expected::Nothing) {
            Ok(_) => self.say(ctx, format!("Points written to {}", path.display())),
            Err(fault) => self.complain(ctx, format!("{fault}.")),
        }
    }
}
