//! Carrying out what was asked for; after a change everything is worked out anew.

use egui::Context;
use trammel_analysis::Depth;
use trammel_build::{AxleName, Edit, PointName, PointRef, Side};
use trammel_tuning::TieRodJoint;

use super::{
    Bench,
    dialogs::{Dialog, PathFor},
};
use crate::{
    request::Request,
    results::Results,
    tune::sides_are_alike,
    view::{Page, Stage},
};

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
                Request::RideHeight(raise) => self.set_ride_height(ctx, &raise),
                Request::RideHeightAt { travel, how } => {
                    self.set_ride_height_at(ctx, travel, &how);
                }
                Request::ApplyWhatIf => self.apply_what_if(ctx),
                Request::Search(on) => self.set_searching(ctx, on),
                Request::Export(which) => self.ask_for_sheets_folder(&which),
                Request::OpenExported => self.open_exported(ctx),
                Request::Parts(ask) => self.parts(ctx, &ask),
                Request::SaveCards => self.ask_for_cards(),
                Request::SaveMeasuringSheet => self.ask_for_measuring_sheet(),
                Request::OpenReadings => {
                    self.dialog = Some(Dialog::path(PathFor::Readings, String::new()));
                }
                Request::OpenSurvey => {
                    self.dialog = Some(Dialog::path(PathFor::Survey, String::new()));
                }
                Request::Say(text) => self.say(ctx, text),
                Request::Refuse(text) => self.complain(ctx, text),
            }
        }
    }

    /// Chooses a point; a joint of the tie rod is the one that is mapped then.
    pub(super) fn select(&mut self, point: Option<PointRef>) {
        self.view.selected = point;
        let Some(point) = point else { return };
        let own = !sides_are_alike(self.history.build(), point.axle);
        if self.view.stage == Stage::Tune && own && self.view.side != point.side {
            self.view.side = point.side;
            self.view.ghost = None;
        }
        self.view.tune.joint = match point.point {
            PointName::TieRodInner => TieRodJoint::Inner,
            PointName::TieRodOuter => TieRodJoint::Outer,
            _ => return,
        };
    }

    /// Makes edits as one step with a name of its own; all of them or none.
    pub(super) fn edit_as(&mut self, ctx: &Context, name: String, edits: &[Edit]) {
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
            let axle = self.results.axle(self.view.axle);
            self.view.ghost = axle.map(|a| a.curve(self.view.side).clone());
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
        results.take_proof(self.history.build(), self.prove.proof());
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
        let count = build.keep_outs.len();
        self.view.tune.keep_out = self.view.tune.keep_out.filter(|i| *i < count);
        if let Some(axle) = self.results.axle(self.view.axle) {
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
            tune: self.view.tune.for_another_build(),
            prove: crate::prove::settings::ProveView {
                page: self.view.prove.page,
                ..Default::default()
            },
            make: self.view.make.clone(),
            ..Default::default()
        };
        self.view.tune.keep_out = None;
        self.view.tune.draws_keep_out = false;
        self.history = crate::history::History::new(build);
        self.results = Results::of(self.history.build(), Depth::Full);
        self.prove = crate::prove::Prove::default();
        self.drawing = crate::drawing::Drawing::default();
        if stage == Stage::Tune {
            self.drawing.fill = Some(crate::drawing::Projection::Front);
        }
    }
}
