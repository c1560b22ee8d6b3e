//! What is done with keep-outs on the table: a drag is one undo step.

use egui::Context;
use trammel_build::KeepOutCorners;

use super::Bench;
use crate::{
    drawing::{KeepOutEvent, KeepOutHand},
    tune::{keep_outs, settings::TunePage},
    view::Stage,
};

impl Bench {
    /// What may be done with them: they are moved in the Tune stage only.
    pub(super) fn keep_out_hand(&self) -> KeepOutHand {
        let here = self.view.stage == Stage::Tune;
        let tune = &self.view.tune;
        KeepOutHand {
            may_move: here,
            draws: here && tune.draws_keep_out,
            chosen: tune.keep_out.filter(|_| here),
        }
    }

    pub(super) fn keep_out_event(&mut self, ctx: &Context, event: KeepOutEvent) {
        match event {
            KeepOutEvent::Choose(chosen) => self.choose_keep_out(chosen),
            // Tab only passes by: the notebook stays on its page.
            KeepOutEvent::Reached(index) => self.view.tune.keep_out = Some(index),
            KeepOutEvent::MoveBegan(index) => self.begin_keep_out(index, "Move"),
            KeepOutEvent::ResizeBegan(index) => self.begin_keep_out(index, "Resize"),
            KeepOutEvent::DrawBegan => {
                let new = self.history.build().keep_outs.len();
                self.begin_keep_out(new, "Add");
            }
            KeepOutEvent::Put(index, corners) => self.put_keep_out(ctx, index, corners),
            KeepOutEvent::Remove(index) => {
                let build = self.history.build();
                let edit = keep_outs::without(build, index);
                let request = keep_outs::step(build, index, "Remove", edit);
                self.carry_out(ctx, vec![request]);
                self.choose_keep_out(None);
            }
            KeepOutEvent::ToolDown => self.view.tune.draws_keep_out = false,
        }
    }

    fn choose_keep_out(&mut self, chosen: Option<usize>) {
        self.view.tune.keep_out = chosen;
        if chosen.is_some() {
            self.view.tune.page = TunePage::InTheWay;
        }
    }

    fn begin_keep_out(&mut self, index: usize, deed: &str) {
        self.keep_ghost();
        self.message = None;
        let name = keep_outs::step_name(self.history.build(), index, deed);
        self.history.begin(name);
        self.choose_keep_out(Some(index));
    }

    /// A place that can't be taken is passed over. Nothing but the map depends on keep-outs, so nothing else is worked out.
    fn put_keep_out(&mut self, ctx: &Context, index: usize, corners: KeepOutCorners) {
        let edit = keep_outs::put(self.history.build(), index, corners);
        if !self.history.is_open() {
            let request = keep_outs::step(self.history.build(), index, "Move", edit);
            self.carry_out(ctx, vec![request]);
        } else if let Err(fault) = self.history.edit(&edit) {
            self.complain(
                ctx,
                format!(
                    "Not there: {fault}. The keep-out waits at the last place that it can have."
                ),
            );
        }
    }
}
