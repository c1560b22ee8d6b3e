//! The bench: the whole screen with everything on it. One `ui` call is one frame.

mod actions;
mod changes;
mod dialogs;
mod drag;
mod files;
mod focus;
mod help;
mod keep_outs;
mod keys;
mod layout;
mod making;
mod manual;
mod proving;
mod questions;
mod remembered;
mod scale;
mod setting_up;
mod tables;
mod tour;
mod tuning;
mod unsaved;

use egui::Ui;
use trammel_build::{Build, PointRef};

pub use files::Start;
pub use help::OTHER_KEYS;
pub use scale::LEAST_WINDOW;

use crate::{
    drawing::{Drawing, Projection},
    history::History,
    host::Host,
    message::Message,
    prove::Prove,
    request::Request,
    results::Results,
    set_up::SetUpWork,
    tokens::Tokens,
    tune::Tune,
    view::View,
};

use dialogs::Dialog;
use files::Files;

/// Everything on the bench.
pub struct Bench {
    history: History,
    results: Results,
    view: View,
    drawing: Drawing,
    tokens: Tokens,
    style_is_set: bool,
    message: Option<Message>,
    dialog: Option<Dialog>,
    files: Files,
    remembered: remembered::Remembered,
    host: Box<dyn Host>,
    quitting: bool,
    /// Point under the pointer in the point table, for the next frame's drawing.
    hovered_row: Option<PointRef>,
    tune: Tune,
    /// The plane of the map, as it was in the last frame.
    mapped: trammel_tuning::Plane,
    prove: Prove,
    making: making::Making,
    set_up: SetUpWork,
    focus: focus::Focus,
    /// What filled the table before the Tune stage.
    fill_before: Option<Projection>,
    tour: Option<tour::Tour>,
}

impl Bench {
    /// A bench with a build on it, proved already: for a picture, which has one moment only.
    #[must_use]
    pub fn new(host: Box<dyn Host>, start: Start) -> Self {
        Self::with(host, start, Prove::begun)
    }

    /// A bench whose build is proved behind the first frames: for a window, which is seen sooner without waiting for it.
    #[must_use]
    pub fn at_once(host: Box<dyn Host>, start: Start) -> Self {
        Self::with(host, start, |_| Prove::default())
    }

    fn with(host: Box<dyn Host>, start: Start, prove: impl FnOnce(&Build) -> Prove) -> Self {
        let files::Begun {
            build,
            files,
            dialog,
            problem,
        } = files::begin(host.as_ref(), start);
        let prove = prove(&build);
        let mut results = Results::of(&build, trammel_analysis::Depth::Full);
        results.take_proof(&build, prove.proof());
        let remembered = remembered::Remembered::new(host.state_folder());
        let tokens = Tokens::of(remembered.state().light);
        let making = making::Making::new(host.state_folder());
        Self {
            history: History::new(build),
            results,
            view: View::default(),
            drawing: Drawing::default(),
            tokens,
            style_is_set: false,
            message: problem.map(|text| Message {
                text,
                problem: true,
                since: 0.0,
            }),
            dialog,
            files,
            remembered,
            host,
            quitting: false,
            hovered_row: None,
            tune: Tune::default(),
            mapped: trammel_tuning::Plane::Front,
            prove,
            making,
            set_up: SetUpWork::default(),
            focus: focus::Focus::default(),
            fill_before: None,
            tour: None,
        }
    }

    /// Shows the bench light instead of dark.
    pub fn set_light(&mut self, light: bool) {
        self.tokens = Tokens::of(light);
        self.style_is_set = false;
    }

    /// The window goes: how it is left is remembered for the next run.
    pub fn leave(&mut self) {
        self.remembered.leave();
    }

    /// The build as it stands.
    #[must_use]
    pub fn build(&self) -> &Build {
        self.history.build()
    }

    /// What was worked out from it.
    #[must_use]
    pub fn results(&self) -> &Results {
        &self.results
    }

    /// What is looked at.
    #[must_use]
    pub fn view(&self) -> &View {
        &self.view
    }

    /// What is looked at, to be set up for a picture.
    pub fn view_mut(&mut self) -> &mut View {
        &mut self.view
    }

    /// The drawing, to be set up for a picture.
    pub fn drawing_mut(&mut self) -> &mut Drawing {
        &mut self.drawing
    }

    /// What the Tune stage has worked out.
    #[must_use]
    pub fn tune(&self) -> &Tune {
        &self.tune
    }

    /// What the Prove stage has worked out.
    #[must_use]
    pub fn prove(&self) -> &Prove {
        &self.prove
    }

    /// What the Make stage has worked out.
    #[must_use]
    pub fn make(&self) -> &crate::make::Make {
        &self.making.make
    }

    /// What the Set up stage has worked out.
    #[must_use]
    pub fn set_up(&self) -> &SetUpWork {
        &self.set_up
    }

    /// Whether there is work that no file holds.
    #[must_use]
    pub fn has_unsaved_work(&self) -> bool {
        self.files.differs_from_file(self.history.build())
    }

    /// The line last said to the user, if it still stands.
    #[must_use]
    pub fn said(&self) -> Option<&str> {
        self.message.as_ref().map(|m| m.text.as_str())
    }

    /// Name of the step that undo would take back.
    #[must_use]
    pub fn undo_name(&self) -> Option<&str> {
        self.history.undo_name()
    }

    /// Title of the window.
    #[must_use]
    pub fn window_title(&self) -> String {
        let build = self.history.build();
        let title = if build.title.is_empty() {
            "Untitled build"
        } else {
            &build.title
        };
        let mark = if self.has_unsaved_work() { "● " } else { "" };
        format!("{mark}{title} — Trammel")
    }

    /// One frame.
    pub fn ui(&mut self, ui: &mut Ui) {
        let ctx = ui.ctx().clone();
        if !self.style_is_set {
            crate::style::apply(&ctx, &self.tokens);
            self.style_is_set = true;
        }
        self.remembered.follow(&ctx);
        self.bring_focus_into_sight(&ctx);
        let mut requests = Vec::new();
        self.files_before_frame(&ctx, &mut requests);
        if self.dialog.is_none() {
            self.tour_keys(&ctx);
            requests.extend(crate::action::pressed(&ctx).into_iter().map(Request::Act));
            requests.extend(self.nudges(&ctx));
        }
        self.run_through_travel(&ctx);
        self.carry_out(&ctx, std::mem::take(&mut requests));
        self.view.hovered = self.hovered_row.take();
        self.screen(ui, &mut requests);
        if self.dialog.is_none() {
            self.tour_ui(&ctx, &mut requests);
        }
        self.dialog_ui(&ctx, &mut requests);
        self.follow_focus(&ctx);
        if !requests.is_empty() {
            // What was painted above showed the state before these.
            ctx.request_repaint();
        }
        self.carry_out(&ctx, requests);
    }

    fn say(&mut self, ctx: &egui::Context, text: impl Into<String>) {
        self.message = Some(Message {
            text: text.into(),
            problem: false,
            since: ctx.input(|i| i.time),
        });
    }

    fn complain(&mut self, ctx: &egui::Context, text: impl Into<String>) {
        self.message = Some(Message {
            text: text.into(),
            problem: true,
            since: ctx.input(|i| i.time),
        });
    }
}
