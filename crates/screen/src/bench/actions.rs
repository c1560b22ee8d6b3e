//! What each action does.

use egui::Context;
use trammel_build::{Axis, AxleName, Coordinate, Edit, LengthUnit, Side};

use super::{
    Bench,
    dialogs::{Dialog, PathFor},
    files::Next,
    help::Search,
    scale,
};
use crate::{
    action::Action,
    view::{Page, Stage},
};

/// Seconds for one run from bump to droop and back.
const RUN_SECONDS: f64 = 4.0;

impl Bench {
    pub(super) fn act(&mut self, ctx: &Context, action: Action) {
        match action {
            Action::New => self.ask_then(ctx, Next::New),
            Action::Open => self.dialog = Some(Dialog::path(PathFor::Open, String::new())),
            Action::Save => self.save(ctx),
            Action::SaveAs => {
                self.dialog = Some(Dialog::path(PathFor::SaveAs, self.suggested_path()));
            }
            Action::ImportPoints => {
                self.dialog = Some(Dialog::path(PathFor::Import, String::new()));
            }
            Action::ExportPoints => {
                self.dialog = Some(Dialog::path(PathFor::Export, self.suggested_table_path()));
            }
            Action::CopyPoints => self.copy_points(ctx),
            Action::PastePoints => self.dialog = Some(Dialog::Paste(String::new())),
            Action::Undo => self.step(ctx, true),
            Action::Redo => self.step(ctx, false),
            Action::SwitchUnit => self.switch_unit(ctx),
            Action::SwitchTheme => {
                let light = self.tokens.dark;
                self.set_light(light);
                self.remembered.keep(|state| state.light = light);
                ctx.request_repaint();
            }
            Action::Larger => self.step_scale(ctx, true),
            Action::Smaller => self.step_scale(ctx, false),
            Action::UsualScale => self.set_scale(ctx, scale::USUAL),
            Action::Go(stage) => self.go(stage),
            Action::SwitchAxle => self.switch_axle(ctx),
            Action::Play => self.play(ctx),
            Action::ResetPose => {
                self.view.playing_since = None;
                self.view.travel = 0.0;
                self.view.rack = 0.0;
            }
            Action::InstantCentres => self.view.instant_centres = !self.view.instant_centres,
            Action::Fill(projection) => {
                self.drawing.fill = if self.drawing.fill == Some(projection) {
                    None
                } else {
                    Some(projection)
                };
            }
            Action::Fit => self.drawing.refit(),
            Action::PointTable => {
                self.view.page = if self.view.page == Page::Points {
                    Page::Curves
                } else {
                    Page::Points
                };
            }
            Action::LockPoint => self.lock_point(ctx),
            Action::MirrorPoint => self.mirror_point(ctx),
            Action::Tour => self.ask_then(ctx, Next::Tour),
            Action::Manual => self.dialog = Some(Dialog::Manual(self.view.stage.into())),
            Action::Glossary => self.dialog = Some(Dialog::Glossary(Search::default())),
            Action::Shortcuts => self.dialog = Some(Dialog::Keys),
            Action::About => self.dialog = Some(Dialog::About),
            Action::Quit => self.ask_then(ctx, Next::Quit),
        }
    }

    /// Goes to another stage. In Tune the map's view of the corner fills the table; the views of the stage before come back after it.
    pub fn go(&mut self, stage: Stage) {
        if self.view.stage == stage {
            return;
        }
        let before = self.view.stage;
        self.view.stage = stage;
        let tune = stage == Stage::Tune;
        if tune {
            self.fill_before = self.drawing.fill;
            self.drawing.fill = Some(self.map_projection());
        } else if before == Stage::Tune {
            self.drawing.fill = self.fill_before;
        }
    }

    fn step(&mut self, ctx: &Context, back: bool) {
        let name = if back {
            self.history.undo_name()
        } else {
            self.history.redo_name()
        };
        let Some(name) = name.map(str::to_owned) else {
            return;
        };
        self.keep_ghost();
        if back {
            self.history.undo();
            self.say(ctx, format!("Taken back: {name}"));
        } else {
            self.history.redo();
            self.say(ctx, format!("Made again: {name}"));
        }
        self.work_out();
    }

    fn step_scale(&mut self, ctx: &Context, larger: bool) {
        let now = scale::shown(ctx, self.remembered.state().scale);
        let next = scale::stepped(now, larger);
        if scale::shown(ctx, next) < next {
            self.say(
                ctx,
                format!("At more than {now} per cent this window would not hold everything."),
            );
        } else {
            self.set_scale(ctx, next);
        }
    }

    fn set_scale(&mut self, ctx: &Context, scale: u16) {
        self.remembered.keep(|state| state.scale = scale);
        self.say(
            ctx,
            format!("Everything is shown at {scale} per cent of the usual."),
        );
        ctx.request_repaint();
    }

    fn switch_unit(&mut self, ctx: &Context) {
        let unit = match self.history.build().unit {
            LengthUnit::Inch => LengthUnit::Millimetre,
            LengthUnit::Millimetre => LengthUnit::Inch,
        };
        self.edit(ctx, &Edit::ConvertUnit(unit));
        let name = match unit {
            LengthUnit::Inch => "inches",
            LengthUnit::Millimetre => "millimetres",
        };
        self.say(ctx, format!("Every length of the build is now in {name}. Undo brings the old numbers back as they were typed."));
    }

    fn switch_axle(&mut self, ctx: &Context) {
        let other = match self.view.axle {
            AxleName::Front => AxleName::Rear,
            AxleName::Rear => AxleName::Front,
        };
        if self.history.build().axle_spec(other).is_none() {
            self.say(
                ctx,
                "This build has a front axle only. A rear axle can be added in its file.",
            );
            return;
        }
        self.view.axle = other;
        self.view.side = Side::Left;
        self.view.selected = None;
        self.view.ghost = None;
        self.view.travel = 0.0;
        self.view.rack = 0.0;
        self.drawing.refit();
    }

    fn play(&mut self, ctx: &Context) {
        let now = ctx.input(|i| i.time);
        self.view.playing_since = if self.view.playing_since.is_some() {
            None
        } else {
            Some(now)
        };
    }

    /// Moves the linkage on while a run is going.
    pub(super) fn run_through_travel(&mut self, ctx: &Context) {
        let Some(since) = self.view.playing_since else {
            return;
        };
        let Some(axle) = self.results.axle(self.view.axle) else {
            return;
        };
        let range = axle.model.travel;
        let phase = (ctx.input(|i| i.time) - since) / RUN_SECONDS;
        // From the design height into bump first; slow at the ends, as a wheel is.
        let wave = (phase * std::f64::consts::TAU).sin();
        self.view.travel = if wave >= 0.0 {
            wave * range.bump
        } else {
            -wave * range.droop
        };
        ctx.request_repaint();
    }

    fn lock_point(&mut self, ctx: &Context) {
        let Some(at) = self.view.selected else {
            self.say(
                ctx,
                "Select a point first: click it on the drawing or in the table.",
            );
            return;
        };
        let coordinate = |axis| Coordinate {
            axle: at.axle,
            point: at.point,
            axis,
        };
        let locked = Axis::ALL
            .into_iter()
            .all(|a| self.history.build().locked.contains(&coordinate(a)));
        self.edit(ctx, &Edit::SetPointLock(at.axle, at.point, !locked));
    }

    fn mirror_point(&mut self, ctx: &Context) {
        match self.view.selected {
            Some(at) if at.side == Side::Right => {
                let own = self.history.build().has_own_right_point(at.axle, at.point);
                let edit = if own { Edit::MirrorLeft(at.axle, at.point) } else { Edit::SeparateRight(at.axle, at.point) };
                self.edit(ctx, &edit);
            }
            _ => self.say(
                ctx,
                "Select a right-hand point first. It mirrors the left one until you give it a place of its own.",
            ),
        }
    }
}
