//! The guided tour: three steps that point at the thing itself and go on when it was really done.

use egui::{
    Align2, Area, Context, Frame, Id, Key, Order, Pos2, Rect, RichText, Stroke, StrokeKind,
};
use trammel_build::{AxleName, PointName, PointRef, Side, Triple};

use super::Bench;
use crate::{
    action::Action,
    landmark::{self, Landmark},
    request::Request,
    tokens::{Tokens, type_size},
    view::Stage,
};

/// Width of the box, points.
const WIDTH: f32 = 272.0;
/// Between the box and what it points at, points.
const GAP: f32 = 14.0;
/// The demo that it is walked on.
pub(super) const DEMO: &str = "good";

const JOINT: PointRef = PointRef {
    axle: AxleName::Front,
    side: Side::Left,
    point: PointName::TieRodInner,
};

/// What is to be done next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Step {
    Drag,
    PutBack,
    Caution,
}

/// Where the tour is.
#[derive(Debug)]
pub(super) struct Tour {
    step: Step,
    /// Where the joint was when the step began.
    joint: Option<Triple>,
    /// Where the box stands; it stays while the hand is at work.
    stands: Option<Pos2>,
    size: egui::Vec2,
}

/// What was pressed in the box.
enum Pressed {
    Next,
    Skip,
}

impl Bench {
    /// Begins the tour if the demo is on the table, nothing is asked, and it was never shown on this machine. The window calls it once at the start.
    pub fn offer_tour(&mut self) {
        let shown = !self.remembered.remembers() || self.remembered.state().tour_shown;
        if self.files.is_bare_start() && !shown && self.dialog.is_none() {
            self.begin_tour();
        }
    }

    /// Whether the tour is being shown.
    #[must_use]
    pub fn is_touring(&self) -> bool {
        self.tour.is_some()
    }

    /// Begins the tour on the build that is on the table.
    pub fn begin_tour(&mut self) {
        self.go(Stage::LayOut);
        self.view.axle = AxleName::Front;
        self.view.side = Side::Left;
        self.view.open_caution = None;
        self.drawing.fill = None;
        self.drawing.refit();
        self.remembered.keep(|state| state.tour_shown = true);
        self.tour = Some(Tour {
            step: Step::Drag,
            joint: self.history.build().point(JOINT),
            stands: None,
            size: egui::vec2(WIDTH, 120.0),
        });
    }

    /// Escape ends the tour, unless it has a drag or a typed number to give up.
    pub(super) fn tour_keys(&mut self, ctx: &Context) {
        if self.tour.is_none() || self.history.is_open() || ctx.text_edit_focused() {
            return;
        }
        if ctx.input_mut(|i| i.consume_key(egui::Modifiers::NONE, Key::Escape)) {
            self.tour = None;
        }
    }

    /// Points at what is to be done, over everything else.
    pub(super) fn tour_ui(&mut self, ctx: &Context, requests: &mut Vec<Request>) {
        let Some(mut tour) = self.tour.take() else {
            return;
        };
        if tour.step == Step::PutBack && self.view.stage != Stage::Tune {
            // What is dragged before the map is open is not yet the answer.
            tour.joint = self.history.build().point(JOINT);
        }
        if self.tour_was_followed(&tour) {
            self.tour = self.after(&tour, requests);
            ctx.request_repaint();
            return;
        }
        let (text, marks) = self.said_by_tour(tour.step, ctx);
        let tokens = &self.tokens;
        for rect in &marks {
            outline(ctx, *rect, tokens);
        }
        let screen = ctx.content_rect().shrink(8.0);
        let held = ctx.input(|i| i.pointer.any_down());
        let stands = match tour.stands.filter(|_| held) {
            Some(at) => at,
            None => place(screen, &marks, tour.size),
        };
        if tour.stands != Some(stands) {
            tour.stands = Some(stands);
            ctx.request_repaint();
        }
        let (pressed, size) = tour_box(ctx, stands, tour.step, &text, tokens);
        if (size - tour.size).abs().max_elem() > 0.5 {
            tour.size = size;
            ctx.request_repaint();
        }
        self.tour = match pressed {
            None => Some(tour),
            Some(Pressed::Skip) => None,
            Some(Pressed::Next) => self.after(&tour, requests),
        };
    }

    /// Whether the user really did what the step asks.
    fn tour_was_followed(&self, tour: &Tour) -> bool {
        let moved = self.history.build().point(JOINT) != tour.joint && !self.history.is_open();
        match tour.step {
            Step::Drag => moved,
            Step::PutBack => moved && self.view.stage == Stage::Tune,
            Step::Caution => self.view.open_caution.is_some(),
        }
    }

    fn after(&self, tour: &Tour, requests: &mut Vec<Request>) -> Option<Tour> {
        let step = match tour.step {
            Step::Drag => Step::PutBack,
            Step::PutBack => Step::Caution,
            Step::Caution => {
                requests.push(Request::Say(
                    "That was the tour. Help has it again, with the manual and the glossary."
                        .to_owned(),
                ));
                return None;
            }
        };
        Some(Tour {
            step,
            joint: self.history.build().point(JOINT),
            stands: None,
            size: tour.size,
        })
    }

    /// What a step says now, and where it points; the first place is the one that the box stands beside.
    fn said_by_tour(&self, step: Step, ctx: &Context) -> (String, Vec<Rect>) {
        let at = |l| landmark::place(ctx, l);
        let tab = match Action::Go(Stage::Tune).shortcut() {
            Some(s) => format!("Tune ({})", s.format(&egui::ModifierNames::NAMES, false)),
            None => "Tune".to_owned(),
        };
        let (text, marks) = match step {
            Step::Drag => (
                "Drag the inner tie-rod joint a little up or down and watch the toe curve at the right. The faint curve is the one from before.".to_owned(),
                vec![at(Landmark::InnerJoint), at(Landmark::ToePlot)],
            ),
            Step::PutBack if self.view.stage != Stage::Tune => (
                format!("Now find the joint's best spot: open {tab}."),
                vec![at(Landmark::TuneTab)],
            ),
            Step::PutBack => match at(Landmark::MoveIt) {
                Some(button) => (
                    "The map shows where the joint may go. Press Move it there, and the toe curve is flat again.".to_owned(),
                    vec![Some(button), at(Landmark::Hint)],
                ),
                None => (
                    "The hint beside the map tells the joint's best spot. It has a button as soon as a move gains something.".to_owned(),
                    vec![at(Landmark::Hint)],
                ),
            },
            Step::Caution => (
                "The worst caution always stands first. Click it: why it matters, and what would mend it. Sheets to print are in Make.".to_owned(),
                vec![at(Landmark::WorstCaution)],
            ),
        };
        (text, marks.into_iter().flatten().collect())
    }
}

fn outline(ctx: &Context, rect: Rect, tokens: &Tokens) {
    let layer = egui::LayerId::new(Order::Foreground, Id::unique("tour outline"));
    let stroke = Stroke::new(2.0, tokens.accent);
    ctx.layer_painter(layer)
        .rect_stroke(rect.expand(4.0), 6.0, stroke, StrokeKind::Outside);
}

/// The box; what was pressed in it, and its size.
fn tour_box(
    ctx: &Context,
    stands: Pos2,
    step: Step,
    text: &str,
    tokens: &Tokens,
) -> (Option<Pressed>, egui::Vec2) {
    let mut pressed = None;
    let number = match step {
        Step::Drag => 1,
        Step::PutBack => 2,
        Step::Caution => 3,
    };
    let shown = Area::new(Id::unique("tour"))
        .order(Order::Foreground)
        .pivot(Align2::LEFT_TOP)
        .fixed_pos(stands)
        .constrain(false)
        .show(ctx, |ui| {
            Frame::popup(ui.style())
                .fill(tokens.panel)
                .stroke(Stroke::new(1.5, tokens.accent))
                .show(ui, |ui| {
                    ui.set_width(WIDTH - 2.0 * 10.0);
                    let head = format!("Tour, step {number} of 3");
                    ui.label(
                        RichText::new(head)
                            .font(type_size::head())
                            .color(tokens.accent),
                    );
                    ui.add(egui::Label::new(text).wrap());
                    ui.horizontal(|ui| {
                        let next = if number == 3 { "Finish" } else { "Next" };
                        if ui.button(next).clicked() {
                            pressed = Some(Pressed::Next);
                        }
                        let skip = ui.button("Skip the tour");
                        if skip
                            .on_hover_text("Escape does the same. Help has it again.")
                            .clicked()
                        {
                            pressed = Some(Pressed::Skip);
                        }
                    });
                });
        });
    (pressed, shown.response.rect.size())
}

/// Beside the first mark, where it hides none and stays on the screen; in the middle of the screen without any.
fn place(screen: Rect, marks: &[Rect], size: egui::Vec2) -> Pos2 {
    let Some(first) = marks.first().map(|m| m.expand(GAP)) else {
        return screen.center() - 0.5 * size;
    };
    let (c, half) = (first.center(), 0.5 * size);
    let corners = [
        // Below comes first: beside a mark stand others of its row.
        Pos2::new(c.x - half.x, first.bottom()),
        Pos2::new(first.right(), c.y - half.y),
        Pos2::new(first.left() - size.x, c.y - half.y),
        Pos2::new(c.x - half.x, first.top() - size.y),
        Pos2::new(first.right(), first.bottom()),
        Pos2::new(first.left() - size.x, first.bottom()),
        Pos2::new(first.left() - size.x, first.top() - size.y),
        Pos2::new(first.right(), first.top() - size.y),
    ];
    let within = |at: Pos2| {
        let most = (screen.max - size).max(screen.min);
        at.clamp(screen.min, most)
    };
    let hidden = |at: Pos2| -> f32 {
        let rect = Rect::from_min_size(at, size);
        let overlaps = marks.iter().map(|m| {
            let both = rect.intersect(m.expand(6.0));
            if both.is_positive() { both.area() } else { 0.0 }
        });
        overlaps.sum()
    };
    let places = corners.map(within);
    let best = places
        .into_iter()
        .min_by(|a, b| hidden(*a).total_cmp(&hidden(*b)));
    best.unwrap_or(screen.min)
}

#[cfg(test)]
mod tests {
    use super::{GAP, place};
    use egui::{Rect, pos2, vec2};

    #[test]
    fn the_box_stays_on_the_screen_and_hides_nothing_that_it_points_at() {
        let size = vec2(272.0, 130.0);
        for (w, h) in [(1024.0, 700.0), (1280.0, 800.0), (2560.0, 1440.0)] {
            let screen = Rect::from_min_size(pos2(0.0, 0.0), vec2(w, h)).shrink(8.0);
            for x in 0..=16_u8 {
                for y in 0..=16_u8 {
                    let (fx, fy) = (f32::from(x) / 16.0, f32::from(y) / 16.0);
                    let at = screen.min + vec2(fx * screen.width(), fy * screen.height());
                    let mark = Rect::from_center_size(at, vec2(120.0, 24.0)).intersect(screen);
                    let found = Rect::from_min_size(place(screen, &[mark], size), size);
                    assert!(
                        screen.expand(0.1).contains_rect(found),
                        "{mark:?} {found:?}"
                    );
                    assert!(!found.intersects(mark), "{mark:?} {found:?}");
                }
            }
        }
        const { assert!(GAP > 6.0) };
    }
}
