//! Carrying out what was asked for; after a change everything is worked out anew.

use egui::Context;
use trammel_analysis::Depth;
use trammel_build::{AxleName, Edit, PointName, PointRef, Side};
use trammel_tuning::TieRodJoint;

use super::Bench;
use crate::{request::Request, results::Results, view::Page};

impl Bench {
    pub(super) fn carry_out(&mut self, ctx: &Context, requests: Vec<Request>) {
        for request in requests {
            match request {
                Request::Act(action) => self.act(ctx, action),
                Request::Edit(edit) => self.edit(ctx, &edit),
                Request::Select(point) => self.select(point),
                Request::Hover(point) => self.hovered_row = Some(point),
                Request::Pose { travel, rack } => {
                    self.view.playing_since = None;
                    self.view.travel = travel;
                    self.view.rack = rack;
                }
                Request::RackFollows(follows) => self.view.rack_follows = follows,
                Request::OpenPath(path) => self.ask_then(ctx, super::files::Next::Open(path)),
                Request::OpenDemo(name) => self.ask_then(ctx, super::files::Next::Demo(name)),
                Request::EditAs { name, edits } => self.edit_as(ctx, name, &edits),
                Request::Search(on) => self.set_searching(ctx, on),
                Request::Parts(ask) => self.parts(ctx, &ask),
                Request::SaveCards => self.ask_for_cards(),
                Request::Say(text) => self.say(ctx, text),
                Request::Refuse(text) => self.complain(ctx, text),
            }
        }
    }

    /// Chooses a point; a joint of the tie rod is the one that is mapped then.
    pub(super) fn select(&mut self, point: Option<PointRef>) {
        self.view.selected = point;
        let joint = match point {
            Some(PointRef {
                side: Side::Left,
                point: PointName::TieRodInner,
                ..
            }) => TieRodJoint::Inner,
            Some(PointRef {
                side: Side::Left,
                point: PointName::TieRodOuter,
                ..
            }) => TieRodJoint::Outer,
            _ => return,
        };
        self.view.tune.joint = joint;
    }

    /// Makes edits as one step with a name of its own; all of them or none.
    fn edit_as(&mut self, ctx: &Context, name: String, edits: &[Edit]) {
        self.keep_ghost();
        self.history.begin(name);
        let fault = edits.iter().find_map(|edit| self.history.edit(edit).err());
        match fault {
            Some(fault) => {
                self.history.abort();
                self.complain(
                    ctx,
                    format!("Not done: {fault}. Everything stays as it was."),
                );
            }
            None => {
                self.history.commit();
                self.message = None;
            }
        }
        self.work_out();
    }

    /// Makes an edit; why not is said, and everything stays as it was.
    pub(super) fn edit(&mut self, ctx: &Context, edit: &Edit) {
        self.keep_ghost();
        let before = self.history.build().clone();
        match self.history.edit(edit) {
            Ok(()) => {
                if *self.history.build() != before {
                    self.message = None;
                    self.work_out();
                }
            }
            Err(fault) => {
                self.complain(
                    ctx,
                    format!(
                        "Not done: {}: {fault}. Everything stays as it was.",
                        edit.name()
                    ),
                );
            }
        }
    }

    /// The toe curve as it is now becomes the ghost, unless a drag is going on that has its own.
    pub(super) fn keep_ghost(&mut self) {
        if !self.history.is_open() {
            let study = self.results.study.as_ref();
            self.view.ghost = study
                .and_then(|s| s.axle(self.view.axle))
                .map(|a| a.curve(self.view.side).clone());
        }
    }

    /// Works out everything that depends on the build, and keeps the view within it.
    pub(super) fn work_out(&mut self) {
        let depth = if self.history.is_open() {
            Depth::Quick
        } else {
            Depth::Full
        };
        let mut results = Results::of(self.history.build(), depth);
        if results.study.is_none() {
            // The last build that could be drawn stays on the table.
            results.study = self.results.study.take();
        }
        self.results = results;
        let build = self.history.build();
        if build.axle_spec(self.view.axle).is_none() {
            self.view.axle = AxleName::Front;
        }
        if build
            .axle_spec(self.view.axle)
            .is_some_and(|a| a.right.is_empty())
        {
            self.view.side = Side::Left;
        }
        if self.view.selected.is_some_and(|p| build.point(p).is_none()) {
            self.view.selected = None;
        }
        if let Some(axle) = self
            .results
            .study
            .as_ref()
            .and_then(|s| s.axle(self.view.axle))
        {
            let range = axle.model.travel;
            let lock = axle.model.lock();
            self.view.travel = self
                .view
                .travel
                .clamp(range.droop.min(range.bump), range.bump.max(range.droop));
            self.view.rack = self.view.rack.clamp(-lock, lock);
        }
    }

    /// Another build is on the bench now.
    pub(super) fn start_over(&mut self, build: trammel_build::Build) {
        let page: Page = self.view.page;
        let stage = self.view.stage;
        self.view = crate::view::View {
            stage,
            page,
            quantity: self.view.quantity,
            tune: self.view.tune.clone(),
            ..Default::default()
        };
        self.history = crate::history::History::new(build);
        self.results = Results::of(self.history.build(), Depth::Full);
        self.drawing = crate::drawing::Drawing::default();
        if stage == crate::view::Stage::Tune {
            self.drawing.corner = true;
            self.drawing.fill = Some(crate::drawing::Projection::Front);
        }
    }
}
