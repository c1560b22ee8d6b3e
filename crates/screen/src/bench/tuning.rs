//! The Tune stage on the bench: what its hand and its work need of the rest.

use egui::{Context, Ui};

use super::{Bench, layout::snap};
use crate::{
    drawing::{FrontView, MapPicture},
    tune::{OnTable, loupe::WIDTHS},
    view::Stage,
};

impl Bench {
    /// Takes the wheel over the loupe before the table zooms.
    pub(super) fn tune_wheel(&mut self, ui: &Ui) {
        if self.view.stage == Stage::Tune {
            let widen = self.tune.wheel(ui);
            self.widen_map(widen);
        }
    }

    fn widen_map(&mut self, times: Option<f64>) {
        if let Some(times) = times {
            self.view.tune.map_width =
                (self.view.tune.map_width * times).clamp(WIDTHS[0], WIDTHS[1]);
        }
    }

    /// Reads the hand on the loupe and carries it out.
    pub(super) fn tune_hand(&mut self, ui: &Ui, front: FrontView) {
        if self.view.stage != Stage::Tune {
            return;
        }
        let mut tune = std::mem::take(&mut self.tune);
        let build = self.history.build();
        let snaps = snap(build.unit);
        let table = ui.max_rect();
        let done = self
            .results
            .study
            .as_ref()
            .and_then(|s| s.axle(self.view.axle))
            .map(|axle| {
                let on = OnTable {
                    build,
                    axle,
                    view: &self.view,
                    tokens: &self.tokens,
                    table,
                    front,
                };
                tune.hand(ui, &on, snaps)
            });
        self.tune = tune;
        if let Some(done) = done {
            self.drawing_events(ui.ctx(), done.events);
            self.widen_map(done.widen);
            self.view.tune.large_loupe ^= done.resize;
        }
    }

    /// Goes on with what the stage works out, within its share of the frame.
    pub(super) fn tune_go_on(&mut self, ctx: &Context) {
        if self.view.stage != Stage::Tune {
            return;
        }
        let Some(axle) = self
            .results
            .study
            .as_ref()
            .and_then(|s| s.axle(self.view.axle))
        else {
            return;
        };
        let held = self.history.is_open();
        self.tune.go_on(
            ctx,
            self.history.build(),
            axle,
            &self.view,
            &self.tokens,
            held,
        );
    }

    /// Starts a search for layouts, or stops it.
    pub(super) fn set_searching(&mut self, ctx: &Context, on: bool) {
        let Some(axle) = self
            .results
            .study
            .as_ref()
            .and_then(|s| s.axle(self.view.axle))
        else {
            return;
        };
        self.view.tune.preview = None;
        if let Err(why) = self
            .tune
            .set_searching(on, ctx, self.history.build(), axle, &self.view)
        {
            self.complain(ctx, why);
        }
    }

    pub(super) fn map_picture(&self) -> Option<MapPicture> {
        if self.view.stage != Stage::Tune {
            return None;
        }
        Some(MapPicture {
            texture: self.tune.map().texture()?,
            corners: self.tune.map().corners(),
        })
    }
}
