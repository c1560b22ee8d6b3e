//! A build, a small application round the drawing, and hands for it.

use std::sync::Arc;

use egui::{Context, FontData, FontDefinitions, FontFamily, Pos2, Ui};
use egui_kittest::{Harness, kittest::Queryable};
use trammel_analysis::{Grade, Study};
use trammel_build::{
    ArmPoints, AxleName, AxleSpec, Build, Edit, LengthUnit, PointName, PointRef, RackSpec,
    SpringSpec, TieRodPoints, TravelSpec, WheelSpec,
};
use trammel_geometry::ArmName;
use trammel_screen::{
    drawing::{Drawing, DrawingEvent, DrawingInput, KeepOutHand, Projection, handle_name},
    tokens::Tokens,
};

/// A front axle in inches, made up.
pub(crate) fn build() -> Build {
    Build::new("Bench build", LengthUnit::Inch, front())
}

fn front() -> AxleSpec {
    AxleSpec {
        spring: Some(SpringSpec {
            arm: ArmName::Lower,
            chassis_mount: [0.0, 11.8, 20.5],
            arm_mount: [0.2, 17.0, 8.2],
            open_length: None,
            closed_length: None,
            rate: None,
        }),
        travel: Some(TravelSpec {
            bump: 4.0,
            droop: 4.0,
        }),
        rack: RackSpec {
            travel: Some(1.5),
            ..RackSpec::default()
        },
        ..AxleSpec::new(
            ArmPoints {
                front_pivot: [3.9, 9.8, 13.6],
                rear_pivot: [-4.3, 9.8, 13.2],
                ball_joint: [-0.5, 21.6, 15.4],
            },
            ArmPoints {
                front_pivot: [5.5, 7.9, 7.5],
                rear_pivot: [-5.5, 7.9, 7.5],
                ball_joint: [0.3, 22.6, 6.9],
            },
            TieRodPoints {
                inner: [-3.75, 8.9, 8.75],
                outer: [-4.1, 22.1, 8.4],
            },
            WheelSpec {
                centre: [0.0, 25.0, 10.5],
                loaded_radius: 10.5,
                toe_deg: 0.0,
                camber_deg: -1.0,
            },
        )
    }
}

/// The left front point of a name.
pub(crate) fn left(point: PointName) -> PointRef {
    PointRef::left(AxleName::Front, point)
}

/// An application that does what the drawing says and writes it down.
pub(crate) struct Bench {
    pub build: Build,
    pub study: Study,
    pub drawing: Drawing,
    pub axle: AxleName,
    pub travel: f64,
    pub rack: f64,
    pub selected: Option<PointRef>,
    pub hovered: Option<PointRef>,
    pub snap: f64,
    pub fine_snap: f64,
    pub instant_centres: bool,
    pub marks: Vec<(PointRef, Grade)>,
    pub tokens: Tokens,
    /// Everything but hovering, in order.
    pub done: Vec<DrawingEvent>,
    before: Option<Build>,
}

impl Bench {
    pub(crate) fn new(build: Build) -> Self {
        Self {
            study: Study::of(&build).expect("the bench's build can be worked out"),
            build,
            drawing: Drawing::default(),
            axle: AxleName::Front,
            travel: 0.0,
            rack: 0.0,
            selected: None,
            hovered: None,
            snap: 1.0 / 16.0,
            fine_snap: 1.0 / 64.0,
            instant_centres: false,
            marks: Vec::new(),
            tokens: Tokens::dark(),
            done: Vec::new(),
            before: None,
        }
    }

    pub(crate) fn ui(&mut self, ui: &mut Ui) {
        let mut drawing = std::mem::take(&mut self.drawing);
        let (events, inking) = drawing.hand(ui, &self.input());
        self.drawing = drawing;
        self.hovered = None;
        for event in events {
            self.take(event);
        }
        inking.ink(ui, &self.input());
    }

    fn input(&self) -> DrawingInput<'_> {
        DrawingInput {
            build: &self.build,
            study: &self.study,
            axle: self.axle,
            travel: self.travel,
            rack: self.rack,
            selected: self.selected,
            hovered: self.hovered,
            snap: self.snap,
            fine_snap: self.fine_snap,
            instant_centres: self.instant_centres,
            keep_outs: KeepOutHand::default(),
            map: None,
            forces: None,
            marked: None,
            remarks: &[],
            marks: &self.marks,
            tokens: &self.tokens,
        }
    }

    fn take(&mut self, event: DrawingEvent) {
        match event {
            DrawingEvent::Hover(point) => {
                self.hovered = Some(point);
                return;
            }
            DrawingEvent::Select(point) => self.selected = point,
            DrawingEvent::DragStarted(_) => self.before = Some(self.build.clone()),
            DrawingEvent::DragMoved(point, to) => {
                if let Ok(next) = (Edit::MovePoint { point, to }).apply(&self.build) {
                    self.set(next);
                }
            }
            DrawingEvent::DragEnded => self.before = None,
            DrawingEvent::DragCancelled => {
                if let Some(before) = self.before.take() {
                    self.set(before);
                }
            }
            DrawingEvent::KeepOut(_) => {}
        }
        self.done.push(event);
    }

    fn set(&mut self, build: Build) {
        if let Ok(study) = Study::of(&build) {
            self.study = study;
            self.build = build;
        }
    }
}

/// The bundled font: egui's own are not built in.
pub(crate) fn set_fonts(context: &Context) {
    let bytes = include_bytes!("../../../../assets/fonts/DejaVuSans.ttf");
    let mut fonts = FontDefinitions::empty();
    fonts
        .font_data
        .insert("sans".to_owned(), Arc::new(FontData::from_static(bytes)));
    for family in [FontFamily::Proportional, FontFamily::Monospace] {
        fonts.families.insert(family, vec!["sans".to_owned()]);
    }
    context.set_fonts(fonts);
}

/// The bench in a window of 860 x 700 points.
pub(crate) fn window(bench: Bench) -> Harness<'static, Bench> {
    window_of(bench, egui::vec2(860.0, 700.0))
}

/// The bench in a window of its own size.
pub(crate) fn window_of(bench: Bench, size: egui::Vec2) -> Harness<'static, Bench> {
    let mut harness = Harness::builder()
        .with_size(size)
        .with_step_dt(1.0 / 60.0)
        .with_context_setup(set_fonts)
        .build_ui_state(|ui, bench: &mut Bench| bench.ui(ui), bench);
    harness.step();
    harness
}

/// Hands for a window.
pub(crate) trait Hands {
    /// Where a point is in a view.
    fn find(&self, point: PointRef, projection: Projection) -> Pos2;
    /// Presses the button there.
    fn press(&mut self, at: Pos2);
    /// Moves the pointer in a few steps.
    fn carry(&mut self, from: Pos2, to: Pos2);
    /// Lets the button go.
    fn release(&mut self, at: Pos2);
    /// All of it.
    fn drag(&mut self, from: Pos2, to: Pos2) {
        self.press(from);
        self.carry(from, to);
        self.release(to);
    }
}

impl Hands for Harness<'_, Bench> {
    fn find(&self, point: PointRef, projection: Projection) -> Pos2 {
        self.get_by_label(&handle_name(point, projection))
            .rect()
            .center()
    }

    fn press(&mut self, at: Pos2) {
        self.hover_at(at);
        self.step();
        self.drag_at(at);
        self.step();
    }

    fn carry(&mut self, from: Pos2, to: Pos2) {
        for n in 1..=5_u8 {
            self.hover_at(from + (to - from) * (f32::from(n) / 5.0));
            self.step();
        }
    }

    fn release(&mut self, at: Pos2) {
        self.drop_at(at);
        self.step();
    }
}
