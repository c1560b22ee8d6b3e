//! What the stage puts on the drawing table: the loupe, the hint, the best spot and the two-line rule.

use egui::{Id, Key, Pos2, Rect, Ui};
use trammel_analysis::AxleStudy;
use trammel_build::{Build, LengthUnit, Side, Triple};
use trammel_geometry::{Linkage, Point};
use trammel_tuning::{Plane, TieRodJoint, ToeCurves};

use super::{
    Tune, hint, loupe, mapped_point, overlay, plane, rule_ink, settings::scoring_label,
    sides_are_alike, stations,
};
use crate::{
    drawing::{DrawingEvent, MapView, Projection},
    request::Request,
    tokens::Tokens,
    view::View,
    words,
};

/// The hand on the loupe.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Hand {
    place: Option<loupe::Place>,
    over: Option<[f32; 2]>,
    dragging: bool,
    given_up: bool,
    last: Option<Triple>,
    /// The place that the keyboard reads, while it is on the loupe.
    reading: Option<Point>,
    /// The loupe's node for a screen reader.
    id: Option<Id>,
    focused_button: Option<u8>,
}

/// What was done on the loupe in a frame.
#[derive(Default)]
pub(crate) struct Done {
    /// What is wanted of the joint.
    pub events: Vec<DrawingEvent>,
    /// How many times as wide the map is wanted.
    pub widen: Option<f64>,
    /// The loupe is wanted larger, or as it was.
    pub resize: bool,
}

/// What is on the table in this frame.
pub(crate) struct OnTable<'a> {
    pub build: &'a Build,
    pub axle: &'a AxleStudy,
    pub view: &'a View,
    pub tokens: &'a Tokens,
    pub table: Rect,
    pub seen: MapView,
}

impl Tune {
    /// Takes the wheel over the loupe; how many times as wide the map is wanted.
    pub(crate) fn wheel(&self, ui: &Ui) -> Option<f64> {
        loupe::wheel(ui, self.hand.place.as_ref()?)
    }

    /// Reads hand and keyboard on the loupe; `snaps` are the plain and the fine step.
    pub(crate) fn hand(&mut self, ui: &Ui, on: &OnTable<'_>, snaps: (f64, f64)) -> Done {
        let corner = on.axle.model.linkage(on.view.side).corner();
        let points = [
            corner.upper_arm.front_pivot,
            corner.upper_arm.rear_pivot,
            corner.upper_arm.ball_joint,
            corner.lower_arm.front_pivot,
            corner.lower_arm.rear_pivot,
            corner.lower_arm.ball_joint,
            corner.tie_rod.inner,
            corner.tie_rod.outer,
            corner.wheel.centre,
        ];
        let busy: Vec<Pos2> = points.iter().map(|p| on.seen.screen(*p)).collect();
        if !self.hand.dragging {
            self.hand.place = place(on, &busy);
        }
        let Some(place) = self.hand.place else {
            self.hand.reading = None;
            return Done::default();
        };
        let touch = loupe::touch(ui, &place, on.view.tune.large_loupe);
        self.hand.over = touch.over;
        self.hand.id = touch.id;
        self.hand.focused_button = touch.focused_button;
        let (plain, fine) = snaps;
        let fine_now = ui.input(|i| i.modifiers.shift);
        let mut events = self.events(ui, on, &touch, if fine_now { fine } else { plain });
        events.extend(self.by_keyboard(on, touch.keys, snaps));
        Done {
            events,
            widen: touch.widen,
            resize: touch.resize,
        }
    }

    /// Moves the place that is read, and puts the joint there when it is asked for.
    fn by_keyboard(
        &mut self,
        on: &OnTable<'_>,
        keys: Option<loupe::Keys>,
        (plain, fine): (f64, f64),
    ) -> Vec<DrawingEvent> {
        let Some(keys) = keys else {
            self.hand.reading = None;
            return Vec::new();
        };
        let joint = on
            .view
            .tune
            .joint
            .place(on.axle.model.linkage(on.view.side).corner());
        let mut at = self.hand.reading.filter(|_| !keys.home).unwrap_or(joint);
        let mm = on.build.unit.mm();
        let [low, high] = self.map.corners();
        let axes = plane::axes(self.map.plane()).map(trammel_build::Axis::index);
        for (n, axis) in axes.into_iter().enumerate() {
            let by = keys.steps[n] * plain + keys.fine_steps[n] * fine;
            let by = if on.seen.turned()[n] { -by } else { by };
            at[axis] = (at[axis] + mm * by).clamp(low[axis], high[axis]);
        }
        self.hand.reading = Some(at);
        let point = mapped_point(on.view);
        match self.wanted(on, at, fine) {
            Some(to) if keys.put => vec![
                DrawingEvent::DragStarted(point),
                DrawingEvent::DragMoved(point, to),
                DrawingEvent::DragEnded,
            ],
            _ => Vec::new(),
        }
    }

    /// The mapped joint at a place, the build's unit, on whole steps; locked coordinates stay.
    fn wanted(&self, on: &OnTable<'_>, place: Point, snap: f64) -> Option<Triple> {
        let point = mapped_point(on.view);
        let mut to = on.build.point(point)?;
        let place = on.seen.in_vehicle(place);
        for axis in plane::axes(self.map.plane()) {
            let coordinate = trammel_build::Coordinate {
                axle: point.axle,
                point: point.point,
                axis,
            };
            if !on.build.locked.contains(&coordinate) {
                let typed = on.build.unit.from_mm(place[axis.index()]);
                to[axis.index()] = (typed / snap).round() * snap;
            }
        }
        Some(to)
    }

    fn events(
        &mut self,
        ui: &Ui,
        on: &OnTable<'_>,
        touch: &loupe::Touch,
        snap: f64,
    ) -> Vec<DrawingEvent> {
        let point = mapped_point(on.view);
        let mut events = Vec::new();
        if touch.began {
            self.hand.dragging = true;
            self.hand.given_up = false;
            self.hand.last = on.build.point(point);
            events.push(DrawingEvent::DragStarted(point));
        }
        if self.hand.dragging && ui.input(|i| i.key_pressed(Key::Escape)) {
            self.hand.dragging = false;
            self.hand.given_up = true;
            events.push(DrawingEvent::DragCancelled);
        }
        if let (true, Some(part)) = (self.hand.dragging, touch.to) {
            let to = self.wanted(on, self.map.place_at(part), snap);
            if let Some(to) = to.filter(|_| self.hand.last != to) {
                self.hand.last = Some(to);
                events.push(DrawingEvent::DragMoved(point, to));
            }
        }
        if self.hand.dragging && (touch.ended || !ui.input(|i| i.pointer.any_down())) {
            self.hand.dragging = false;
            events.push(DrawingEvent::DragEnded);
        }
        events
    }

    /// Paints loupe, marks and hint over the drawing.
    pub(crate) fn ink(&self, ui: &mut Ui, on: &OnTable<'_>, requests: &mut Vec<Request>) {
        let painter = ui.painter_at(on.table);
        let Some(advice) = self.advice() else { return };
        let joint = on.view.tune.joint;
        let corner = on.axle.model.linkage(on.view.side).corner();
        let here = joint.place(corner);
        let spot = advice
            .places(joint)
            .map(|(exact, snapped)| snapped.unwrap_or(exact));
        let flat = on.seen.projection() == Projection::Front;
        let rule = (advice.rule.as_ref()).filter(|_| on.view.tune.rule && flat);
        if let Some(rule) = rule {
            rule_ink::lines(&painter, on, rule);
        }
        if let Some(other) = self.previewed(on.view) {
            overlay::preview(&painter, on, &other);
        }
        if let Some(spot) = spot {
            loupe::best_mark(&painter, on.seen.screen(spot), on.tokens);
        }
        let map_rect = loupe::rect_of(self.map.corners().map(|p| on.seen.screen(p)));
        if let Some(place) = &self.hand.place {
            overlay::leader(&painter, map_rect, place.outer, on.tokens);
            let caption = self.caption(on);
            let read = self.read();
            let clear = self.clear().filter(|_| on.view.tune.clear_area);
            let reasons = read
                .zip(clear)
                .map_or_else(Vec::new, |(part, clear)| clear.blocks(part).words());
            self.tell(ui, &caption, &reasons);
            let marks = [Some(here), spot].map(|p| p.map(|p| place.screen(self.map.part_of(p))));
            let marks: Vec<Pos2> = marks.into_iter().flatten().collect();
            let shown = loupe::Inked {
                map: &self.map,
                clear,
                caption: &caption,
                reasons: &reasons,
                marks: &marks,
                focused: self.hand.reading.is_some(),
                focused_button: self.hand.focused_button,
                large: on.view.tune.large_loupe,
                tokens: on.tokens,
            };
            loupe::ink(&painter, place, &shown);
            let inside = painter.with_clip_rect(place.map.intersect(painter.clip_rect()));
            let at = |p: Point| place.screen(self.map.part_of(p));
            if let Some(rule) = rule {
                loupe::rule_mark(&inside, at(rule.place(joint)), on.tokens);
            }
            loupe::joint_mark(&inside, at(here), on.tokens);
            if let Some(spot) = spot.filter(|s| loupe::in_sight(&self.map, *s)) {
                loupe::best_mark(&inside, at(spot), on.tokens);
            }
            if let Some(reading) = self.hand.reading {
                loupe::reading_mark(&inside, at(reading), on.tokens);
            }
            loupe::reasons(&inside, place, &shown);
        }
        let hint = hint::Hint {
            advice,
            corner,
            scoring: on.view.tune.scoring,
            axle: on.view.axle,
            view: on.view,
            unit: on.build.unit,
            build: on.build,
            along: along(on),
            tokens: on.tokens,
        };
        let at = hint::place(
            on.table,
            self.hand.place.map(|p| p.outer),
            on.seen.screen(here),
        );
        hint::ui(ui, at, &hint, requests);
    }

    /// The place that is read, in the unit square: under the pointer, or where the keyboard is.
    fn read(&self) -> Option<[f32; 2]> {
        let by_key = || self.hand.reading.map(|p| self.map.part_of(p));
        self.hand.over.or_else(by_key)
    }

    /// Tells a screen reader what is read.
    fn tell(&self, ui: &Ui, caption: &str, reasons: &[String]) {
        let Some(id) = self.hand.id else { return };
        let mut text = caption.to_owned();
        for reason in reasons {
            text.push_str(", in the way: ");
            text.push_str(reason);
        }
        ui.ctx()
            .accesskit_node_builder(id, |node| node.set_value(text));
    }

    /// What the map shows, or the score at the place that is read.
    fn caption(&self, on: &OnTable<'_>) -> String {
        let unit = on.build.unit;
        let settings = &on.view.tune;
        let joint = match settings.joint {
            TieRodJoint::Inner => "inner joint",
            TieRodJoint::Outer => "outer joint",
        };
        let Some(part) = self.read() else {
            let width = words::length(self.map.size()[0], unit);
            let side = match (on.view.side, self.map.plane()) {
                // The side view looks at the left wheel.
                (Side::Right, Plane::Side) => "right ",
                _ => "",
            };
            return format!(
                "{} toe change, {side}{joint} · {width} wide",
                scoring_label(settings.scoring)
            );
        };
        let place = self.map.place_at(part);
        let corner = settings
            .joint
            .moved_to(on.axle.model.linkage(on.view.side).corner(), place);
        let shown = on.seen.in_vehicle(place);
        let there = place_in_words(self.map.plane(), shown, unit);
        let score = match (Linkage::new(&corner), stations(on.axle, on.view)) {
            (Ok(linkage), Some(stations)) => match ToeCurves::of(&linkage, &stations) {
                Ok(curves) => hint::figure(&curves.score(), settings.scoring, unit),
                Err(end) => format!("out of reach: {end}"),
            },
            (Err(fault), _) => format!("can't be built: {fault}"),
            (_, None) => String::new(),
        };
        format!("{there}: {score}")
    }
}

/// Where the loupe stands: in the lower inboard corner, on whichever side that is.
fn place(on: &OnTable<'_>, busy: &[Pos2]) -> Option<loupe::Place> {
    let large = on.view.tune.large_loupe;
    let turned = on.seen.turned();
    let as_drawn = |place| loupe::Place { turned, ..place };
    if !on.seen.is_across() {
        return loupe::place(on.table, busy, large).map(as_drawn);
    }
    let middle = on.table.center().x;
    let others: Vec<Pos2> = busy
        .iter()
        .map(|p| egui::pos2(2.0 * middle - p.x, p.y))
        .collect();
    loupe::place(on.table, &others, large).map(|place| as_drawn(place.mirrored(on.table)))
}

/// The coordinates of a place in which the places of a map differ.
pub(crate) fn place_in_words(plane: Plane, place: Point, unit: LengthUnit) -> String {
    let mut axes = plane::axes(plane);
    axes.sort_unstable_by_key(|a| a.index());
    let [a, b] = axes.map(|axis| {
        let at = words::tape(place[axis.index()], unit);
        format!("{} {at}", axis.letter())
    });
    format!("{a}, {b}")
}

/// What goes along with the mapped joint where the two sides differ.
fn along(on: &OnTable<'_>) -> Option<&'static str> {
    let point = mapped_point(on.view);
    if sides_are_alike(on.build, point.axle)
        || on.build.has_own_right_point(point.axle, point.point)
    {
        return None;
    }
    Some(match point.side {
        Side::Left => "The right joint is its mirror image and goes along.",
        Side::Right => "It is the left joint's mirror image: both move.",
    })
}
