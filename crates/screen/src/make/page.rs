//! The page on the table as it will print: drawn from the same strokes as the PDF.

use egui::{
    Color32, FontId, Pos2, Rect, Sense, Shape, Stroke, StrokeKind, Ui, Vec2, epaint::TextShape,
    vec2,
};
use trammel_drawings::{
    ink::{self, Ink},
    metrics::{CAPITAL, Metrics},
    model::{Line, Text},
    sheet::Page,
};
use trammel_fabrication::plane::{Bounds, Edge, Point, Vector};
use trammel_sheets::{Sheet, Sheets};

use super::MakeView;
use crate::{
    number_field::tell_node,
    tokens::{Tokens, type_size},
};

/// Free room around the whole page, points.
const MARGIN: f32 = 26.0;
/// Room that the buttons take below it, points.
const BUTTONS: f32 = 20.0;
/// Zoom from the whole page to a few millimetres.
const ZOOM: [f32; 2] = [0.5, 24.0];
/// Chord error of a drawn arc, points.
const CHORD: f64 = 0.15;

/// Strokes of the page in sight, with where they lie on it.
#[derive(Default)]
pub(super) struct PageInk {
    of: Option<(String, usize)>,
    placed: Vec<(Vector, Option<Bounds>, Vec<Ink>)>,
    metrics: Option<Metrics>,
}

impl PageInk {
    pub(super) fn forget(&mut self) {
        self.of = None;
    }

    fn fill(&mut self, key: (String, usize), page: &Page) {
        if self.of.as_ref() == Some(&key) {
            return;
        }
        if self.metrics.is_none() {
            self.metrics = Metrics::new().ok();
        }
        let Some(metrics) = &self.metrics else {
            return;
        };
        let placed = page.placed.iter().map(|placed| {
            let inks = ink::strokes(&placed.drawing, metrics);
            let inks = inks.into_iter().map(|s| s.ink).collect();
            (placed.shift, placed.window, inks)
        });
        self.placed = placed.collect();
        self.of = Some(key);
    }
}

/// From page millimetres to the screen.
#[derive(Clone, Copy)]
pub(super) struct Sight {
    corner: Pos2,
    /// Points in a millimetre.
    pub(super) scale: f32,
    height: f32,
}

impl Sight {
    pub(super) fn point(&self, p: Point) -> Pos2 {
        self.corner + vec2(p.x as f32, self.height - p.y as f32) * self.scale
    }

    /// The place on the page under a point of the screen.
    pub(super) fn place(&self, at: Pos2) -> Point {
        let from = (at - self.corner) / self.scale;
        Point::new(f64::from(from.x), f64::from(self.height - from.y))
    }
}

/// The page in sight.
pub(super) struct OnPage<'a> {
    pub(super) sheet: &'a Sheet,
    pub(super) page: &'a Page,
    pub(super) sight: Sight,
    pub(super) table: Rect,
}

/// Shows the chosen sheet's page and reads the hand on it.
pub(super) fn ui<'a>(
    ui: &mut Ui,
    sheets: Option<&'a Sheets>,
    ink: &mut PageInk,
    view: &mut MakeView,
    tokens: &Tokens,
) -> Option<OnPage<'a>> {
    let table = ui.max_rect();
    ui.painter().rect_filled(table, 0.0, tokens.table);
    let Some((sheets, sheet)) = sheets.and_then(|s| Some((s, view.chosen(s)?))) else {
        let text = "Working the sheets out…";
        ui.painter().text(
            table.center(),
            egui::Align2::CENTER_CENTER,
            text,
            type_size::text(),
            tokens.ink_soft,
        );
        return None;
    };
    let count = sheet.pages.len();
    view.page = view.page.min(count.saturating_sub(1));
    let page = sheet.pages.get(view.page)?;
    ink.fill((sheet.name.clone(), view.page), page);
    let shown = format!("{}, page {} of {count}", sheet.title, view.page + 1);
    hand(ui, table, &shown, view);
    let sight = paper(table, sheets, view);
    paint(ui, table, sight, sheets, ink, tokens);
    buttons(ui, table, view, count, tokens);
    Some(OnPage {
        sheet,
        page,
        sight,
        table,
    })
}

/// Drag pans, the wheel zooms about the pointer, a double click shows the whole page.
fn hand(ui: &mut Ui, table: Rect, shown: &str, view: &mut MakeView) {
    if view.zoom <= 0.0 {
        view.fit();
    }
    let response = ui.interact(table, ui.scope_id().with("page"), Sense::click_and_drag());
    response.widget_info(|| {
        egui::WidgetInfo::labeled(egui::Role::Image, true, "Sheet as it will print")
    });
    tell_node(ui, response.id, shown);
    view.pan += response.drag_delta();
    if response.double_clicked() {
        view.fit();
    }
    if let Some(at) = response.hover_pos() {
        let (scroll, pinch) = ui.input(|i| (i.smooth_scroll_delta.y, i.zoom_delta()));
        let times = (scroll / 240.0).exp() * pinch;
        zoom_about(view, at - middle(table), times);
    }
}

/// The middle of the room that the page has.
fn middle(table: Rect) -> Pos2 {
    table.center() - vec2(0.0, BUTTONS / 2.0)
}

fn zoom_about(view: &mut MakeView, at: Vec2, times: f32) {
    let next = (view.zoom * times).clamp(ZOOM[0], ZOOM[1]);
    view.pan = at - (at - view.pan) * (next / view.zoom);
    view.zoom = next;
}

fn paper(table: Rect, sheets: &Sheets, view: &MakeView) -> Sight {
    let [width, height] = sheets.paper.size().map(|v| v as f32);
    let room = table.size() - Vec2::splat(2.0 * MARGIN) - vec2(0.0, BUTTONS);
    let scale = (room.x / width).min(room.y / height).max(0.1) * view.zoom;
    let corner = middle(table) + view.pan - vec2(width, height) * scale / 2.0;
    Sight {
        corner,
        scale,
        height,
    }
}

fn paint(ui: &Ui, table: Rect, sight: Sight, sheets: &Sheets, ink: &PageInk, tokens: &Tokens) {
    let [width, height] = sheets.paper.size().map(|v| v as f32);
    let sheet = Rect::from_min_size(sight.corner, vec2(width, height) * sight.scale);
    let painter = ui.painter().with_clip_rect(table);
    painter.rect(
        sheet,
        0.0,
        tokens.paper,
        Stroke::new(1.0, tokens.rule),
        StrokeKind::Outside,
    );
    for (shift, window, inks) in &ink.placed {
        let clip = window.map_or(sheet, |w| {
            Rect::from_two_pos(sight.point(w.min), sight.point(w.max))
        });
        let painter = painter.with_clip_rect(clip.intersect(table));
        for one in inks {
            draw(
                &painter,
                one,
                *shift,
                sight,
                ink.metrics.as_ref(),
                tokens.paper_ink,
            );
        }
    }
}

fn draw(
    painter: &egui::Painter,
    ink: &Ink,
    shift: Vector,
    sight: Sight,
    metrics: Option<&Metrics>,
    black: Color32,
) {
    let at = |p: &Point| sight.point(p + shift);
    match ink {
        Ink::Path {
            edges,
            closed,
            line,
        } => {
            let mut points = flat(edges, sight.scale).iter().map(at).collect::<Vec<_>>();
            if *closed {
                points.extend(points.first().copied());
            }
            if Rect::from_points(&points)
                .expand(2.0)
                .intersects(painter.clip_rect())
            {
                path(painter, &points, *line, sight.scale, black);
            }
        }
        Ink::Fill(points) => {
            let points = points.iter().map(at).collect();
            painter.add(Shape::convex_polygon(points, black, Stroke::NONE));
        }
        Ink::Text(text) => {
            if let Some(metrics) = metrics {
                letter(painter, text, shift, sight, metrics, black);
            }
        }
    }
}

fn path(painter: &egui::Painter, points: &[Pos2], line: Line, scale: f32, black: Color32) {
    let stroke = Stroke::new((line.width() as f32 * scale).max(0.6), black);
    let pattern: Vec<f32> = line.pattern().iter().map(|v| *v as f32 * scale).collect();
    // Dashes finer than a pixel are a line.
    if pattern.is_empty() || pattern.iter().copied().fold(0.0, f32::max) < 1.5 {
        painter.add(Shape::line(points.to_vec(), stroke));
        return;
    }
    let (on, off): (Vec<_>, Vec<_>) = pattern
        .iter()
        .copied()
        .enumerate()
        .partition(|(i, _)| i % 2 == 0);
    let only = |part: Vec<(usize, f32)>| part.into_iter().map(|(_, v)| v).collect::<Vec<_>>();
    let (dashes, gaps) = (only(on), only(off));
    if dashes.len() == gaps.len() {
        let shapes = Shape::dashed_line_with_offset(points, stroke, &dashes, &gaps, 0.0);
        painter.extend(shapes);
    } else {
        painter.add(Shape::line(points.to_vec(), stroke));
    }
}

/// Edges as points, arcs in chords that can't be told from them at this scale.
pub(super) fn flat(edges: &[Edge], scale: f32) -> Vec<Point> {
    let mut points = Vec::with_capacity(edges.len() + 1);
    points.extend(edges.first().map(Edge::from));
    for edge in edges {
        if let Edge::Arc(arc) = edge {
            let radius = arc.radius * f64::from(scale);
            let step = 2.0 * (1.0 - (CHORD / radius.max(CHORD)).min(1.0)).acos();
            let count = (arc.sweep.abs() / step.max(0.05)).ceil().clamp(1.0, 180.0) as usize;
            points.extend((1..count).map(|i| arc.at(i as f64 / count as f64)));
        }
        points.push(edge.to());
    }
    points
}

fn letter(
    painter: &egui::Painter,
    text: &Text,
    shift: Vector,
    sight: Sight,
    metrics: &Metrics,
    black: Color32,
) {
    let size = (text.height / CAPITAL) as f32 * sight.scale;
    let at = sight.point(metrics.start(text) + shift);
    if size < 1.5 || !painter.clip_rect().expand(size * 60.0).contains(at) {
        return;
    }
    let font = if text.bold {
        FontId::new(size, type_size::bold())
    } else {
        FontId::proportional(size)
    };
    let galley = painter.layout_no_wrap(text.content.clone(), font, black);
    // The galley hangs from its top; the text stands on its base line.
    let ascent = galley
        .rows
        .first()
        .and_then(|r| r.glyphs.first())
        .map_or(size, |g| g.pos.y);
    let angle = -text.turn as f32;
    let up = egui::emath::Rot2::from_angle(angle) * vec2(0.0, ascent);
    painter.add(TextShape::new(at - up, galley, black).with_angle(angle));
}

/// Page, nearer, farther, whole page.
fn buttons(ui: &mut Ui, table: Rect, view: &mut MakeView, count: usize, tokens: &Tokens) {
    let place = Rect::from_min_size(table.left_bottom() + vec2(12.0, -38.0), vec2(500.0, 32.0));
    ui.painter().rect_filled(place, 6.0, tokens.panel);
    let mut ui = ui.new_child(
        egui::UiBuilder::new()
            .id_salt("page buttons")
            .max_rect(place.shrink2(vec2(8.0, 3.0))),
    );
    ui.horizontal_centered(|ui| {
        let turn = |ui: &mut Ui, name: &str, on: bool| {
            ui.add_enabled(on, egui::Button::new(name)).clicked()
        };
        if turn(ui, "Page back", view.page > 0) {
            view.page -= 1;
        }
        ui.label(format!("{} of {count}", view.page + 1));
        if turn(ui, "Next page", view.page + 1 < count) {
            view.page += 1;
        }
        if turn(ui, "Nearer", true) {
            zoom_about(view, Vec2::ZERO, 1.4);
        }
        if turn(ui, "Farther", true) {
            zoom_about(view, Vec2::ZERO, 1.0 / 1.4);
        }
        if turn(ui, "Whole page", true) {
            view.fit();
        }
    });
}
