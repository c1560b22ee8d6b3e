//! What the stage puts on the drawing table: the loupe, the hint, the best spot and the two-line rule.

use egui::{Key, Pos2, Rect, Shape, Stroke, Ui};
use trammel_analysis::AxleStudy;
use trammel_build::{Build, Triple};
use trammel_geometry::{Linkage, Point};
use trammel_tuning::{TieRodJoint, ToeCurves};

use super::{Tune, hint, loupe, mapped_point, rule_ink, settings::scoring_label, stations};
use crate::{
    drawing::{DrawingEvent, FrontView},
    request::Request,
    tokens::{Tokens, weight},
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
}

/// What is on the table in this frame.
pub(crate) struct OnTable<'a> {
    pub build: &'a Build,
    pub axle: &'a AxleStudy,
    pub view: &'a View,
    pub tokens: &'a Tokens,
    pub table: Rect,
    pub front: FrontView,
}

impl Tune {
    /// Takes the wheel over the loupe; how many times as wide the map is wanted.
    pub(crate) fn wheel(&self, ui: &Ui) -> Option<f64> {
        loupe::wheel(ui, self.hand.place.as_ref()?)
    }

    /// Reads the hand on the loupe: what is wanted of the joint, and how many times as wide the map.
    pub(crate) fn hand(
        &mut self,
        ui: &Ui,
        on: &OnTable<'_>,
        snap: f64,
    ) -> (Vec<DrawingEvent>, Option<f64>) {
        let corner = on.axle.model.axle.left.corner();
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
        let busy: Vec<Pos2> = points.iter().map(|p| on.front.screen(*p)).collect();
        if !self.hand.dragging {
            self.hand.place = loupe::place(on.table, &busy);
        }
        let Some(place) = self.hand.place else {
            return (Vec::new(), None);
        };
        let touch = loupe::touch(ui, &place);
        self.hand.over = touch.over;
        (self.events(ui, on, &touch, snap), touch.widen)
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
        if let (true, Some(part), Some(mut to)) =
            (self.hand.dragging, touch.to, on.build.point(point))
        {
            let place = self.map.place_at(part);
            for (axis, mm) in [(1, place.y), (2, place.z)] {
                let locked = trammel_build::Axis::ALL.get(axis).is_some_and(|a| {
                    let c = trammel_build::Coordinate {
                        axle: point.axle,
                        point: point.point,
                        axis: *a,
                    };
                    on.build.locked.contains(&c)
                });
                if let Some(slot) = to.get_mut(axis).filter(|_| !locked) {
                    *slot = (on.build.unit.from_mm(mm) / snap).round() * snap;
                }
            }
            if self.hand.last != Some(to) {
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
        let corner = on.axle.model.axle.left.corner();
        let here = joint.place(corner);
        let spot = advice
            .places(joint)
            .map(|(exact, snapped)| snapped.unwrap_or(exact));
        let rule = advice.rule.as_ref().filter(|_| on.view.tune.rule);
        if let Some(rule) = rule {
            rule_ink::lines(&painter, on, rule);
        }
        if let Some(other) = self.previewed(on.view) {
            preview(&painter, on, &other);
        }
        if let Some(spot) = spot {
            loupe::best_mark(&painter, on.front.screen(spot), on.tokens);
        }
        let map_rect = loupe::rect_of(self.map.corners().map(|p| on.front.screen(p)));
        if let Some(place) = &self.hand.place {
            leader(&painter, map_rect, place.outer, on.tokens);
            let clear = self.clear().filter(|_| on.view.tune.clear_area);
            loupe::ink(
                &painter,
                place,
                &self.map,
                clear,
                &self.caption(on),
                on.tokens,
            );
            let inside = painter.with_clip_rect(place.map.intersect(painter.clip_rect()));
            let at = |p: Point| place.screen(self.map.part_of(p));
            if let Some(rule) = rule {
                loupe::rule_mark(&inside, at(rule.place(joint)), on.tokens);
            }
            loupe::joint_mark(&inside, at(here), on.tokens);
            if let Some(spot) = spot.filter(|s| loupe::in_sight(&self.map, *s)) {
                loupe::best_mark(&inside, at(spot), on.tokens);
            }
        }
        let hint = hint::Hint {
            advice,
            corner,
            scoring: on.view.tune.scoring,
            axle: on.view.axle,
            view: on.view,
            unit: on.build.unit,
            build: on.build,
            tokens: on.tokens,
        };
        let at = hint::place(
            on.table,
            self.hand.place.map(|p| p.outer),
            on.front.screen(here),
        );
        hint::ui(ui, at, &hint, requests);
    }

    /// What the map shows, or the score under the pointer.
    fn caption(&self, on: &OnTable<'_>) -> String {
        let unit = on.build.unit;
        let settings = &on.view.tune;
        let joint = match settings.joint {
            TieRodJoint::Inner => "inner joint",
            TieRodJoint::Outer => "outer joint",
        };
        let Some(part) = self.hand.over else {
            let width = words::length(self.map.size()[0], unit);
            return format!(
                "{} toe change, {joint} · {width} wide",
                scoring_label(settings.scoring)
            );
        };
        let place = self.map.place_at(part);
        let corner = settings
            .joint
            .moved_to(on.axle.model.axle.left.corner(), place);
        let there = format!(
            "y {}, z {}",
            words::tape(place.y, unit),
            words::tape(place.z, unit)
        );
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

/// From the map on the drawing to the loupe.
fn leader(painter: &egui::Painter, map: Rect, loupe: Rect, tokens: &Tokens) {
    let stroke = Stroke::new(weight::HAIR, tokens.accent);
    painter.rect_stroke(map, 0.0, stroke, egui::StrokeKind::Outside);
    if !map.intersects(loupe) {
        let from = map.clamp(loupe.center());
        painter.line_segment([from, loupe.clamp(map.center())], stroke);
    }
}

/// Another layout over the drawing.
fn preview(painter: &egui::Painter, on: &OnTable<'_>, corner: &trammel_geometry::Corner) {
    let stroke = Stroke::new(weight::SYMBOL, on.tokens.spring);
    let (upper, lower, rod) = (&corner.upper_arm, &corner.lower_arm, &corner.tie_rod);
    let members = [
        [upper.front_pivot, upper.ball_joint],
        [upper.rear_pivot, upper.ball_joint],
        [lower.front_pivot, lower.ball_joint],
        [lower.rear_pivot, lower.ball_joint],
        [rod.inner, rod.outer],
        [upper.ball_joint, lower.ball_joint],
    ];
    for ends in members {
        painter.extend(Shape::dashed_line(
            &ends.map(|p| on.front.screen(p)),
            stroke,
            7.0,
            3.0,
        ));
    }
    for joint in [rod.inner, rod.outer] {
        painter.circle_stroke(on.front.screen(joint), 6.0, stroke);
    }
}
