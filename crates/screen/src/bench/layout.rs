//! Where things stand on the screen.

use egui::{Color32, Margin, Rect, Ui, UiBuilder};
use trammel_build::LengthUnit;

use super::Bench;
use crate::{
    bottom_bar::{self, BottomBarInput},
    drawing::{DrawingInput, Inking},
    message,
    notebook::{self, NotebookInput},
    request::Request,
    title_block,
    tokens::Tokens,
    top_strip::{self, TopStripInput},
    tune::OnTable,
    view::Stage,
};

const TOP: f32 = 44.0;
/// Margin at the sides of the bar below.
const BAR_SIDES: i8 = 14;

/// Snap of drags and nudges in a unit: plain and fine.
pub(super) fn snap(unit: LengthUnit) -> (f64, f64) {
    match unit {
        LengthUnit::Inch => (1.0 / 16.0, 1.0 / 64.0),
        LengthUnit::Millimetre => (1.0, 0.1),
    }
}

/// The four places of the screen.
#[derive(Clone, Copy, Debug)]
struct Places {
    strip: Rect,
    notebook: Rect,
    bar: Rect,
    table: Rect,
}

impl Places {
    fn of(screen: Rect) -> Self {
        let (strip, rest) = screen.split_top_bottom_at_y(screen.top() + TOP);
        let width = (0.335 * screen.width()).clamp(400.0, 560.0);
        let (left, notebook) = rest.split_left_right_at_x(rest.right() - width);
        let bottom = bottom_bar::height(left.width() - 2.0 * f32::from(BAR_SIDES));
        let (table, bar) = left.split_top_bottom_at_y(left.bottom() - bottom);
        Self {
            strip,
            notebook,
            bar,
            table,
        }
    }
}

impl Bench {
    /// The whole screen. The hand on the table is read first and carried out, then everything is painted: what follows a drag shows it in the
    /// same frame.
    pub(super) fn screen(&mut self, ui: &mut Ui, requests: &mut Vec<Request>) {
        let places = Places::of(ui.max_rect());
        let tokens = self.tokens.clone();
        let mut table = ui.new_child(UiBuilder::new().id_salt("table").max_rect(places.table));
        let inking = self.hand(&mut table);
        let on_table =
            (inking.as_ref()).and_then(|i| i.map_view(self.map_projection(), self.view.side));
        self.tune_go_on(ui.ctx());
        self.prove_go_on(ui.ctx());
        self.make_go_on(ui.ctx());
        self.set_up_go_on(ui.ctx());
        let views = inking.as_ref().map(Inking::views);
        part(
            ui,
            "strip",
            places.strip,
            tokens.panel,
            Margin::symmetric(14, 0),
            |ui| self.strip(ui, &tokens, requests),
        );
        part(
            ui,
            "notebook",
            places.notebook,
            tokens.panel,
            Margin::ZERO,
            |ui| {
                let input = NotebookInput {
                    build: self.history.build(),
                    results: &self.results,
                    tune: &self.tune,
                    prove: &self.prove,
                    make: &self.making.make,
                    set_up: &self.set_up,
                    tokens: &tokens,
                };
                notebook::ui(ui, &input, &mut self.view, requests);
            },
        );
        part(
            ui,
            "bar",
            places.bar,
            tokens.panel,
            Margin::symmetric(BAR_SIDES, 7),
            |ui| {
                let study = self.results.study.as_ref();
                let input = BottomBarInput {
                    build: self.history.build(),
                    study,
                    tokens: &tokens,
                };
                bottom_bar::ui(ui, &input, &self.view, requests);
            },
        );
        match (inking, self.drawing_input()) {
            (Some(inking), Some(input)) => {
                let corner = inking.spare_corner();
                inking.ink(&table, &input);
                if let (Some(seen), Stage::Tune, Some(axle)) =
                    (on_table, self.view.stage, input.study.axle(self.view.axle))
                {
                    let build = input.build;
                    let on = OnTable {
                        build,
                        axle,
                        view: &self.view,
                        tokens: &tokens,
                        table: places.table,
                        seen,
                    };
                    self.tune.ink(&mut table, &on, requests);
                }
                if let (Some(views), Stage::SetUp) = (views, self.view.stage) {
                    crate::set_up::ink_ellipses(&table, &views, &self.set_up, input.build, &tokens);
                }
                if let (Some(corner), Some(axle)) = (corner, input.study.axle(self.view.axle)) {
                    title_block::ui(&mut table, corner, input.build, axle, &tokens);
                }
            }
            _ => {
                table.painter().rect_filled(places.table, 0.0, tokens.table);
            }
        }
        if self.view.stage == Stage::Make {
            let build = self.history.build();
            let events = self
                .making
                .make
                .table(&mut table, build, &mut self.view, &tokens);
            let ctx = table.ctx().clone();
            self.outline_events(&ctx, events);
        }
        let said = self.message.as_ref();
        if said.is_some_and(|m| message::ui(ui.ctx(), m, &tokens, places.table.left_bottom())) {
            self.message = None;
        }
    }

    /// Reads what is done on the table and carries it out.
    fn hand(&mut self, ui: &mut Ui) -> Option<Inking> {
        if self.view.stage == Stage::Make {
            return None;
        }
        self.tune_wheel(ui);
        self.drawing.corner = (self.view.stage == Stage::Tune).then_some(self.view.side);
        self.map_what_is_shown();
        let mut drawing = std::mem::take(&mut self.drawing);
        let done = self.drawing_input().map(|input| drawing.hand(ui, &input));
        self.drawing = drawing;
        self.map_what_is_shown();
        let (events, inking) = done?;
        self.drawing_events(ui.ctx(), events);
        if let Some(seen) = inking.map_view(self.map_projection(), self.view.side) {
            self.tune_hand(ui, seen);
        }
        Some(inking)
    }

    fn drawing_input(&self) -> Option<DrawingInput<'_>> {
        let build = self.history.build();
        let (snap, fine_snap) = snap(build.unit);
        Some(DrawingInput {
            build,
            study: self.results.study.as_ref()?,
            axle: self.view.axle,
            travel: self.view.travel,
            rack: self.view.rack,
            selected: self.view.selected,
            hovered: self.view.hovered,
            snap,
            fine_snap,
            instant_centres: self.view.instant_centres,
            marks: &self.results.marks,
            keep_outs: self.keep_out_hand(),
            map: self.map_picture(),
            forces: self.prove.picture(),
            marked: self.marked_part(),
            remarks: &self.results.remarks,
            tokens: &self.tokens,
        })
    }

    fn strip(&self, ui: &mut Ui, tokens: &Tokens, requests: &mut Vec<Request>) {
        let file_name = self.files.name();
        let input = TopStripInput {
            history: &self.history,
            unsaved: self.files.differs_from_file(self.history.build()),
            file_name: file_name.as_deref(),
            recent: self.files.recent(),
            tokens,
        };
        top_strip::ui(ui, &input, &self.view, requests);
    }
}

/// One place of the screen with its background.
fn part(
    ui: &mut Ui,
    name: &str,
    place: Rect,
    fill: Color32,
    margin: Margin,
    contents: impl FnOnce(&mut Ui),
) {
    ui.painter().rect_filled(place, 0.0, fill);
    let mut child = ui.new_child(UiBuilder::new().id_salt(name).max_rect(place - margin));
    child.set_clip_rect(place);
    contents(&mut child);
}
