//! The Tune stage on the bench: what its hand and its work need of the rest.

use egui::{Context, Ui};
use trammel_analysis::{Raise, RaiseFault, WhatIf, raised, rise_at};
use trammel_build::LengthUnit;

use super::{Bench, layout::snap};
use crate::{
    drawing::{MapPicture, MapView, Projection},
    tune::{OnTable, loupe::WIDTHS, plane, what_if::Slide},
    view::Stage,
    words,
};

impl Bench {
    /// Takes the wheel over the loupe before the table zooms.
    pub(super) fn tune_wheel(&mut self, ui: &Ui) {
        if self.view.stage == Stage::Tune {
            let widen = self.tune.wheel(ui);
            self.widen_map(widen);
        }
    }

    /// The view that has the map.
    pub(super) fn map_projection(&self) -> Projection {
        plane::view(self.view.tune.plane)
    }

    /// Has the map lie in the view that fills the table; where another plane was chosen since, its view fills it.
    pub(super) fn map_what_is_shown(&mut self) {
        if let (Stage::Tune, Some(shown)) = (self.view.stage, self.drawing.fill) {
            if self.view.tune.plane == self.mapped {
                self.view.tune.plane = plane::of(shown);
            } else {
                self.drawing.fill = Some(self.map_projection());
            }
        }
        self.mapped = self.view.tune.plane;
    }

    fn widen_map(&mut self, times: Option<f64>) {
        if let Some(times) = times {
            self.view.tune.map_width =
                (self.view.tune.map_width * times).clamp(WIDTHS[0], WIDTHS[1]);
        }
    }

    /// Reads the hand on the loupe and carries it out.
    pub(super) fn tune_hand(&mut self, ui: &Ui, seen: MapView) {
        if self.view.stage != Stage::Tune {
            return;
        }
        let mut tune = std::mem::take(&mut self.tune);
        let build = self.history.build();
        let snaps = snap(build.unit);
        let table = ui.max_rect();
        let done = self.results.axle(self.view.axle).map(|axle| {
            let on = OnTable {
                build,
                axle,
                view: &self.view,
                tokens: &self.tokens,
                table,
                seen,
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
        let Some(axle) = self.results.axle(self.view.axle) else {
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
        let Some(axle) = self.results.axle(self.view.axle) else {
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

    /// Makes another ride height the build's.
    pub(super) fn set_ride_height(&mut self, ctx: &Context, raise: &Raise) {
        let build = self.history.build();
        match raised(build, raise) {
            Ok(edit) => {
                let way = if raise.by < 0.0 { "Lower" } else { "Raise" };
                let by = words::length(raise.by.abs(), build.unit);
                self.edit_as(ctx, format!("{way} the frame by {by}"), &[edit]);
                self.view.tune.raise.by = 0.0;
            }
            Err(fault) => self.keeps_ride_height(ctx, &fault),
        }
    }

    fn keeps_ride_height(&mut self, ctx: &Context, fault: &RaiseFault) {
        self.complain(
            ctx,
            format!("Not done: {fault}. The ride height stays as it was."),
        );
    }

    /// Makes a wheel travel the ride height; the picture of the moved linkage stays what it is, at no travel now.
    pub(super) fn set_ride_height_at(&mut self, ctx: &Context, travel: f64, how: &Raise) {
        let corner = (self.view.axle, self.view.side);
        match rise_at(self.history.build(), corner, travel, how.reset) {
            Ok(by) => {
                let before = self.history.build().clone();
                self.set_ride_height(ctx, &Raise { by, ..*how });
                if *self.history.build() != before {
                    self.view.travel = 0.0;
                }
            }
            Err(fault) => self.keeps_ride_height(ctx, &fault),
        }
    }

    /// Writes what is tried out into the build.
    pub(super) fn apply_what_if(&mut self, ctx: &Context) {
        let tune = &self.view.tune;
        let what = tune.what_if;
        let build = self.history.build().clone();
        match what.edits(&build, self.view.axle, &tune.raise) {
            Ok(edits) => {
                self.edit_as(ctx, tried_out(what, build.unit), &edits);
                if *self.history.build() != build {
                    self.view.tune.what_if = WhatIf::default();
                }
            }
            Err(fault) => self.complain(
                ctx,
                format!("Not done: {fault}. Everything stays as it was."),
            ),
        }
    }

    pub(super) fn map_picture(&self) -> Option<MapPicture> {
        if self.view.stage != Stage::Tune {
            return None;
        }
        Some(MapPicture {
            texture: self.tune.map().texture()?,
            projection: plane::view(self.tune.map().plane()),
            corners: self
                .tune
                .map()
                .corners()
                .map(|p| self.view.side.place_in_vehicle(p)),
        })
    }
}

/// Name of the step, such as `Rack height 1/4 in up, lift of the frame 1 in up`.
fn tried_out(mut what: WhatIf, unit: LengthUnit) -> String {
    let parts = Slide::ALL.into_iter().filter_map(|slide| {
        let value = *slide.of(&mut what);
        let [more, less] = slide.ways();
        let way = if value < 0.0 { less } else { more };
        let by = words::length(value.abs(), unit);
        (value != 0.0).then(|| format!("{} {by} {way}", slide.label()))
    });
    parts.collect::<Vec<_>>().join(", ")
}
