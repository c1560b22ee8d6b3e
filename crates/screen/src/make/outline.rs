//! The grips of a tab's outline on its page: dragged or nudged, each measure held against its least while it moves.

use egui::{Align2, EventFilter, Key, Modifiers, Rect, Sense, Shape, Stroke, StrokeKind, Ui, vec2};
use trammel_build::{
    AxleName, BracketSpec, Build, Edit, JointParts, PartsEdit, PointName, TabOutline,
};
use trammel_drawings::model;
use trammel_fabrication::{
    flat_part::FlatPart,
    minimums::check,
    plane::{Edge, Point, Vector},
};
use trammel_sheets::{Shop, bracket_at, flat_part_at};

use super::page::{OnPage, flat};
use crate::tokens::{Tokens, type_size, weight};

/// What the hand did to the outline.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum OutlineEvent {
    /// A drag began: what an undo list calls it.
    Began(String),
    /// The bracket is to be so.
    Put(Box<Edit>),
    /// The drag ended.
    Ended,
    /// The drag was given up.
    GivenUp,
}

/// What can be taken hold of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Grip {
    /// The hole's centre over the foot.
    Height,
    /// The free end: the edge distance above the hole, and the round end's radius.
    End,
    /// The side beside the hole: from the foot's width inwards the tab tapers.
    Taper,
    /// The foot's corner.
    Foot,
}

impl Grip {
    const ALL: [Self; 4] = [Self::Height, Self::End, Self::Taper, Self::Foot];

    /// Its name for the screen reader and the tip.
    fn name(self) -> &'static str {
        match self {
            Self::Height => "height of the hole",
            Self::End => "edge distance",
            Self::Taper => "radius beside the hole",
            Self::Foot => "width at the foot",
        }
    }

    /// Which way it goes: across or up.
    fn way(self) -> Vector {
        match self {
            Self::Height | Self::End => Vector::y(),
            Self::Taper | Self::Foot => Vector::x(),
        }
    }
}

/// The grip in the hand, and what the pointer missed it by when it took hold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Held {
    grip: Grip,
    off: Vector,
}

/// Half a grip's side, and half of the room that takes the pointer, points.
const MARK: f32 = 4.5;
const REACH: f32 = 10.0;
/// From a grip to its tip, points.
const TIP: f32 = 16.0;
/// The finer step that a drag or a nudge takes with Shift, of the shop's own.
const FINE: f64 = 0.25;

/// Shows the grips of the sheet's tab, if it is one, and reads the hand on them.
pub(super) fn ui(
    ui: &mut Ui,
    build: &Build,
    on: &OnPage<'_>,
    held: &mut Option<Held>,
    tokens: &Tokens,
) -> Vec<OutlineEvent> {
    let Some(tab) = Tab::on(build, on) else {
        return held
            .take()
            .map(|_| OutlineEvent::Ended)
            .into_iter()
            .collect();
    };
    if on.sheet.part.as_ref().map(|p| &p.outline) != Some(&tab.part.outline) {
        tab.ink(ui, on, tokens);
    }
    let mut events = Vec::new();
    let mut tip = None;
    for grip in Grip::ALL {
        let place = on.sight.point(tab.place(grip) + tab.shift);
        if !on.table.contains(place) {
            continue;
        }
        let room = Rect::from_center_size(place, vec2(2.0 * REACH, 2.0 * REACH));
        let name = format!("Grip: {}", grip.name());
        let id = ui.scope_id().with(&name);
        let response = ui.interact(room, id, Sense::click_and_drag());
        response
            .widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, ui.is_enabled(), &name));
        if response.clicked() || response.drag_started() {
            response.request_focus();
        }
        if response.drag_started() {
            let pressed = ui.input(|i| i.pointer.press_origin()).unwrap_or(place);
            let off = tab.place(grip) - (on.sight.place(pressed) - tab.shift);
            *held = Some(Held { grip, off });
            events.push(OutlineEvent::Began(format!(
                "Drag {} of {}",
                grip.name(),
                tab.part.name
            )));
        }
        let in_hand = held.filter(|h| h.grip == grip);
        if let Some(hand) = in_hand {
            events.extend(drag(ui, &response, &tab, on, hand));
            if events.contains(&OutlineEvent::GivenUp) || events.contains(&OutlineEvent::Ended) {
                *held = None;
            }
        } else if response.has_focus() {
            events.extend(nudge(ui, id, &tab, grip));
        }
        let lively = response.hovered() || response.has_focus() || in_hand.is_some();
        if lively && (tip.is_none() || in_hand.is_some() || response.hovered()) {
            tip = Some((grip, place));
        }
        mark(ui, place, lively, tokens);
    }
    if let Some((grip, place)) = tip {
        tab.tip(ui, grip, place, on, tokens);
    }
    events
}

fn mark(ui: &Ui, place: egui::Pos2, lively: bool, tokens: &Tokens) {
    let half = if lively { MARK + 1.5 } else { MARK };
    let rect = Rect::from_center_size(place, vec2(2.0 * half, 2.0 * half));
    ui.painter().rect(
        rect,
        1.0,
        tokens.accent,
        Stroke::new(weight::HAIR, tokens.paper_ink),
        StrokeKind::Inside,
    );
}

fn drag(
    ui: &Ui,
    response: &egui::Response,
    tab: &Tab<'_>,
    on: &OnPage<'_>,
    hand: Held,
) -> Vec<OutlineEvent> {
    if ui.input(|i| i.key_pressed(Key::Escape)) {
        return vec![OutlineEvent::GivenUp];
    }
    let mut events = Vec::new();
    if let Some(at) = response.interact_pointer_pos() {
        let fine = ui.input(|i| i.modifiers.shift);
        let to = on.sight.place(at) - tab.shift + hand.off;
        events.extend(tab.put(hand.grip, to, fine));
    }
    if response.drag_stopped() || !ui.input(|i| i.pointer.any_down()) {
        events.push(OutlineEvent::Ended);
    }
    events
}

/// The arrow keys along the way that the grip goes.
fn nudge(ui: &Ui, id: egui::Id, tab: &Tab<'_>, grip: Grip) -> Option<OutlineEvent> {
    let arrows = EventFilter {
        horizontal_arrows: true,
        vertical_arrows: true,
        ..EventFilter::default()
    };
    ui.memory_mut(|m| m.set_focus_lock_filter(id, arrows));
    let mut steps = [0.0, 0.0];
    ui.input_mut(|i| {
        for (key, way) in [
            (Key::ArrowRight, Vector::x()),
            (Key::ArrowLeft, -Vector::x()),
            (Key::ArrowUp, Vector::y()),
            (Key::ArrowDown, -Vector::y()),
        ] {
            let along = way.dot(&grip.way());
            // Those with more modifiers first: a key with none takes any.
            for (slot, modifiers) in steps.iter_mut().zip([Modifiers::SHIFT, Modifiers::NONE]) {
                *slot += along * i.count_and_consume_key(modifiers, key) as f64;
            }
        }
    });
    let [fine, whole] = steps;
    if fine == 0.0 && whole == 0.0 {
        return None;
    }
    let by = tab.step * (whole + FINE * fine);
    tab.put(grip, tab.place(grip) + grip.way() * by, fine != 0.0)
}

/// The tab that the page shows, as the build has it now.
struct Tab<'a> {
    build: &'a Build,
    axle: AxleName,
    point: PointName,
    spec: BracketSpec,
    part: FlatPart,
    /// Where its own origin lies on the page.
    shift: Vector,
    /// The shop's step, mm.
    step: f64,
}

impl<'a> Tab<'a> {
    fn on(build: &'a Build, on: &OnPage<'_>) -> Option<Self> {
        let (axle, point) = on.sheet.at?;
        let drawn = on.sheet.part.as_ref()?;
        let part = flat_part_at(build, axle, point).ok()?;
        if part.name != drawn.name || part.holes.is_empty() {
            return None;
        }
        let outline = model::Shape::Contour(drawn.outline.clone());
        let shows = |p: &&trammel_drawings::sheet::Placed| {
            p.drawing.items.iter().any(|item| item.shape == outline)
        };
        let shift = on.page.placed.iter().find(shows)?.shift;
        Some(Self {
            build,
            axle,
            point,
            spec: bracket_at(build, axle, point),
            part,
            shift,
            step: Shop::of(build).style.step(),
        })
    }

    fn hole(&self) -> Point {
        self.part
            .holes
            .first()
            .map_or(Point::origin(), |h| h.centre)
    }

    fn place(&self, grip: Grip) -> Point {
        let (hole, bounds) = (self.hole(), self.part.bounds());
        match grip {
            Grip::Height => hole,
            Grip::End => Point::new(hole.x, bounds.max.y),
            Grip::Taper => Point::new(hole.x + self.beside(), hole.y),
            Grip::Foot => Point::new(bounds.max.x, bounds.min.y),
        }
    }

    /// From the hole to the side beside it.
    fn beside(&self) -> f64 {
        let bounds = self.part.bounds();
        match self.form() {
            TabOutline::Straight => bounds.width() / 2.0,
            TabOutline::Radiused | TabOutline::Tapered => bounds.max.y - self.hole().y,
        }
    }

    fn form(&self) -> TabOutline {
        let half = self.spec.width / 2.0;
        self.spec.form.unwrap_or(match self.spec.edge {
            Some(edge) if edge < half - 1e-9 => TabOutline::Tapered,
            _ => TabOutline::Radiused,
        })
    }

    /// The edit that puts a grip there, if it changes anything and what comes of it can be made.
    fn put(&self, grip: Grip, to: Point, fine: bool) -> Option<OutlineEvent> {
        let mm = self.build.unit.mm();
        let step = if fine { self.step * FINE } else { self.step };
        // A step is far above a tenth of a millionth; what is below it is rounding.
        let typed = |length: f64| ((length / step).round() * step / mm * 1e7).round() / 1e7;
        let mut next = self.spec.clone();
        let hole = self.hole();
        match grip {
            Grip::Height => next.height = typed(to.y - hole.y + self.spec.height * mm),
            Grip::End => next.edge = Some(typed(to.y - hole.y)),
            Grip::Taper => {
                let beside = typed(to.x - hole.x);
                let tapers = beside < self.spec.width / 2.0 - 1e-9;
                next.edge = tapers.then_some(beside);
                next.form = Some(if tapers {
                    TabOutline::Tapered
                } else {
                    TabOutline::Radiused
                });
            }
            Grip::Foot => {
                next.width = typed(2.0 * to.x);
                if self.form() == TabOutline::Radiused {
                    // Its end is as wide as its foot.
                    next.edge = None;
                }
            }
        }
        if next == self.spec {
            return None;
        }
        let edit = self.edit(next);
        let made = edit.apply(self.build).ok()?;
        flat_part_at(&made, self.axle, self.point).ok()?;
        Some(OutlineEvent::Put(Box::new(edit)))
    }

    fn edit(&self, bracket: BracketSpec) -> Edit {
        let parts = self
            .build
            .axle_spec(self.axle)
            .and_then(|s| s.parts.joints.get(&self.point));
        let parts = JointParts {
            bracket: Some(bracket),
            ..parts.cloned().unwrap_or_default()
        };
        Edit::Parts(PartsEdit::Joint(self.axle, self.point, Box::new(parts)))
    }

    /// The outline as the build has it, over the one that is on the page.
    fn ink(&self, ui: &Ui, on: &OnPage<'_>, tokens: &Tokens) {
        let painter = ui.painter().with_clip_rect(on.table);
        let at = |p: &Point| on.sight.point(*p + self.shift);
        let edges: Vec<Edge> = self.part.outline.edges().collect();
        let points = flat(&edges, on.sight.scale).iter().map(at).collect();
        let stroke = Stroke::new(weight::WIDE, tokens.accent);
        painter.add(Shape::closed_line(points, stroke));
        for hole in &self.part.holes {
            let radius = hole.diameter as f32 / 2.0 * on.sight.scale;
            painter.circle_stroke(at(&hole.centre), radius, stroke);
        }
    }

    /// What the grip says: its measure, and every least measure of the part.
    fn tip(&self, ui: &Ui, grip: Grip, place: egui::Pos2, on: &OnPage<'_>, tokens: &Tokens) {
        let shop = Shop::of(self.build);
        let (hole, bounds) = (self.hole(), self.part.bounds());
        let length = match grip {
            Grip::Height => self.spec.height * self.build.unit.mm(),
            Grip::End => bounds.max.y - hole.y,
            Grip::Taper => self.beside(),
            Grip::Foot => bounds.width(),
        };
        let mut lines = vec![(
            format!("{}: {}", grip.name(), shop.text(length)),
            tokens.ink,
        )];
        for found in check(&self.part) {
            let (word, colour) = if found.holds() {
                ("", tokens.ink_soft)
            } else {
                ("TOO SMALL: ", tokens.danger)
            };
            let text = format!(
                "{word}{} {}, least {}",
                found.what.word(),
                shop.text(found.value),
                shop.text(found.least)
            );
            lines.push((text, colour));
        }
        let painter = ui.painter().with_clip_rect(on.table);
        let galleys: Vec<_> = lines
            .into_iter()
            .map(|(text, colour)| painter.layout_no_wrap(text, type_size::small(), colour))
            .collect();
        let width = galleys.iter().map(|g| g.size().x).fold(0.0, f32::max);
        let height: f32 = galleys.iter().map(|g| g.size().y).sum();
        let size = vec2(width, height) + vec2(14.0, 10.0);
        // Beside the grip; on its other side where the table ends.
        let right = place.x + TIP + size.x <= on.table.right();
        let align = if right {
            Align2::LEFT_BOTTOM
        } else {
            Align2::RIGHT_BOTTOM
        };
        let anchor = place + vec2(if right { TIP } else { -TIP }, -TIP);
        let room = align.anchor_size(anchor, size);
        painter.rect(
            room,
            5.0,
            tokens.panel,
            Stroke::new(weight::HAIR, tokens.rule),
            StrokeKind::Inside,
        );
        let mut at = room.min + vec2(7.0, 5.0);
        for galley in galleys {
            let down = galley.size().y;
            painter.galley(at, galley, tokens.ink);
            at.y += down;
        }
    }
}
