//! The loupe: the map in a corner of the table, large enough to read and to put the joint in its place.

use egui::{
    Align2, Color32, CursorIcon, Mesh, Painter, Pos2, Rect, Response, Role, Sense, Shape, Stroke,
    StrokeKind, Ui, Vec2, WidgetInfo, pos2, vec2,
};
use trammel_geometry::Point;

use super::{clear::Clear, lattice::Lattice, map::MapWork, picture, ramp};
use crate::{
    drawing::{MapPicture, strokes},
    tokens::{Tokens, type_size, weight},
};

/// Margin around the map inside the frame, and the caption's height, points.
const MARGIN: f32 = 6.0;
const CAPTION: f32 = 21.0;
/// Labels of level lines keep at least this far apart, points.
const APART: f32 = 30.0;
/// Narrowest and widest map, mm.
pub(crate) const WIDTHS: [f64; 2] = [20.0, 320.0];

/// Where the loupe stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Place {
    /// With its frame and caption.
    pub outer: Rect,
    /// The map.
    pub map: Rect,
    /// Outboard is to the left, as the drawing has the right side.
    pub mirrored: bool,
}

/// What is done on the loupe.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Touch {
    /// Place under the pointer, in the unit square.
    pub over: Option<[f32; 2]>,
    /// The joint is wanted here.
    pub to: Option<[f32; 2]>,
    /// The button went down on the map in this frame.
    pub began: bool,
    /// The button was let go in this frame.
    pub ended: bool,
    /// The map is wanted so many times as wide.
    pub widen: Option<f64>,
}

/// Sizes tried, largest first, for the lower inboard corner, where a corner of a car leaves most room.
const SIZES: [f32; 4] = [1.0, 0.92, 0.84, 0.76];

/// The lower inboard corner of the table if it hides nothing of what is at `busy` there, else the corner where it hides least.
pub(crate) fn place(table: Rect, busy: &[Pos2]) -> Option<Place> {
    let widest = (0.42 * table.width())
        .clamp(240.0, 560.0)
        .min(table.width() - 24.0);
    let size = |part: f32| {
        let width = part * widest;
        let height = (width - 2.0 * MARGIN) * 0.5625 + 2.0 * MARGIN + CAPTION;
        vec2(width, height)
    };
    if widest < 200.0 || size(1.0).y > 0.75 * table.height() {
        return None;
    }
    let inner = table.shrink(12.0).with_min_y(table.top() + 40.0);
    let hidden = |rect: &Rect| {
        busy.iter()
            .filter(|p| rect.expand(9.0).contains(**p))
            .count()
    };
    let at = |corner: Align2, part: f32| corner.align_size_within_rect(size(part), inner);
    let corners = [
        Align2::LEFT_BOTTOM,
        Align2::LEFT_TOP,
        Align2::RIGHT_BOTTOM,
        Align2::RIGHT_TOP,
    ];
    let usual = SIZES.map(|part| at(Align2::LEFT_BOTTOM, part));
    let outer = usual
        .into_iter()
        .find(|r| hidden(r) == 0)
        .or_else(|| corners.map(|c| at(c, 1.0)).into_iter().min_by_key(hidden))?;
    let map = outer.shrink(MARGIN);
    Some(Place {
        outer,
        map: map.with_max_y(map.bottom() - CAPTION),
        mirrored: false,
    })
}

/// A rectangle on the other side of a table.
pub(crate) fn across(rect: Rect, table: Rect) -> Rect {
    let shift = 2.0 * (table.center().x - rect.center().x);
    rect.translate(vec2(shift, 0.0))
}

impl Place {
    /// The same on the other side of the table, for a right corner.
    pub(crate) fn mirrored(self, table: Rect) -> Self {
        Self {
            outer: across(self.outer, table),
            map: across(self.map, table),
            mirrored: !self.mirrored,
        }
    }

    fn turned(&self, x: f32) -> f32 {
        if self.mirrored { 1.0 - x } else { x }
    }

    /// On the screen, of a place in the unit square.
    pub(crate) fn screen(&self, [x, y]: [f32; 2]) -> Pos2 {
        pos2(
            self.map.left() + self.turned(x) * self.map.width(),
            self.map.bottom() - y * self.map.height(),
        )
    }

    fn part(&self, at: Pos2) -> [f32; 2] {
        [
            self.turned((at.x - self.map.left()) / self.map.width()),
            (self.map.bottom() - at.y) / self.map.height(),
        ]
    }
}

/// Reads what is done on it; wheel turns over it are taken here, so that the table does not zoom.
pub(crate) fn touch(ui: &Ui, place: &Place) -> Touch {
    // The frame takes what would go to joints under it.
    ui.interact(
        place.outer,
        ui.scope_id().with("loupe frame"),
        Sense::CLICK | Sense::DRAG,
    );
    let id = ui.scope_id().with("loupe");
    let response = ui.interact(place.map, id, Sense::CLICK | Sense::DRAG);
    response.widget_info(|| WidgetInfo::labeled(Role::Figure, true, "Loupe of the toe map"));
    let pointer = ui.input(|i| i.pointer.interact_pos());
    let inside = |p: &Pos2| place.map.contains(*p);
    let mut touch = Touch {
        over: pointer
            .filter(|p| response.contains_pointer() && inside(p))
            .map(|p| place.part(p)),
        ..Touch::default()
    };
    press(ui, place, &response, pointer, &mut touch);
    let (minus, plus) = (
        zoom_button(ui, place, 0, "Map narrower"),
        zoom_button(ui, place, 1, "Map wider"),
    );
    touch.widen = match (minus.clicked(), plus.clicked()) {
        (true, _) => Some(1.0 / 1.5),
        (_, true) => Some(1.5),
        _ => None,
    };
    touch
}

/// Takes the wheel before the table does.
pub(crate) fn wheel(ui: &Ui, place: &Place) -> Option<f64> {
    let over = ui
        .input(|i| i.pointer.hover_pos())
        .is_some_and(|p| place.outer.contains(p));
    if !over {
        return None;
    }
    let turned = ui.input_mut(|i| std::mem::take(&mut i.smooth_scroll_delta.y));
    (turned != 0.0).then(|| (-0.0037 * f64::from(turned)).exp())
}

fn press(ui: &Ui, place: &Place, response: &Response, pointer: Option<Pos2>, touch: &mut Touch) {
    if touch.over.is_some() {
        ui.set_cursor_icon(CursorIcon::Crosshair);
    }
    let down = response.is_pointer_button_down_on();
    let clamped = pointer.map(|p| place.part(place.map.clamp(p)));
    touch.began = down && ui.input(|i| i.pointer.primary_pressed());
    touch.ended = response.drag_stopped() || response.clicked();
    if down || touch.ended {
        touch.to = clamped;
    }
}

fn zoom_button(ui: &Ui, place: &Place, index: u8, name: &str) -> Response {
    let at = zoom_rect(place, index);
    let response = ui.interact(
        at,
        ui.scope_id().with(("loupe zoom", index)),
        Sense::click(),
    );
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, name));
    response.on_hover_text(format!("{name} (or the wheel over the loupe)"))
}

fn zoom_rect(place: &Place, index: u8) -> Rect {
    let right = place.map.right() - 22.0 * f32::from(1 - index);
    Rect::from_min_size(
        pos2(right - 20.0, place.map.bottom() + 4.0),
        Vec2::splat(19.0),
    )
}

/// Paints the frame, the map with its lines, and the caption.
pub(crate) fn ink(
    painter: &Painter,
    place: &Place,
    map: &MapWork,
    clear: Option<&Clear>,
    caption: &str,
    tokens: &Tokens,
) {
    let frame = Stroke::new(weight::NARROW, tokens.accent);
    painter.rect(place.outer, 6.0, tokens.panel, frame, StrokeKind::Inside);
    match map.texture() {
        Some(texture) => {
            painter.image(
                texture,
                place.map,
                MapPicture::uv(!place.mirrored),
                Color32::WHITE,
            );
            let inside = painter.with_clip_rect(place.map.intersect(painter.clip_rect()));
            lines(&inside, place, map, clear, tokens);
        }
        None => {
            let why = map.fault().unwrap_or("the map is being worked out");
            painter.text(
                place.map.center(),
                Align2::CENTER_CENTER,
                why,
                type_size::small(),
                tokens.ink,
            );
        }
    }
    let at = pos2(
        place.map.left() + 2.0,
        place.map.bottom() + 0.5 * CAPTION + 3.0,
    );
    let cut = Rect::from_min_max(
        pos2(place.map.left(), place.map.bottom()),
        pos2(zoom_rect(place, 0).left() - 2.0, place.outer.bottom()),
    );
    let words = painter.with_clip_rect(cut.intersect(painter.clip_rect()));
    words.text(
        at,
        Align2::LEFT_CENTER,
        caption,
        type_size::small(),
        tokens.ink_soft,
    );
    for (index, sign) in [(0, "+"), (1, "−")] {
        let rect = zoom_rect(place, index);
        painter.rect(
            rect,
            3.0,
            tokens.panel_raised,
            Stroke::NONE,
            StrokeKind::Inside,
        );
        painter.text(
            rect.center(),
            Align2::CENTER_CENTER,
            sign,
            type_size::text(),
            tokens.ink,
        );
    }
}

/// The borders of the clear area with what lies beyond.
fn borders(painter: &Painter, place: &Place, clear: &Clear, tokens: &Tokens) {
    let pixel = 1.0 / painter.pixels_per_point();
    let mut taken: Option<Rect> = None;
    let limits = [
        (&clear.rack_end, "rack end past its limit", tokens.danger),
        (&clear.swivel, "joint past its limit", tokens.caution),
    ];
    for (lattice, text, colour) in limits {
        let stroke = Stroke::new(weight::SYMBOL, colour);
        let mut mesh = Mesh::default();
        for [a, b] in lattice.level_line(1.0) {
            strokes::add(&mut mesh, place.screen(a), place.screen(b), stroke, pixel);
        }
        painter.add(Shape::mesh(mesh));
        let Some(at) = beyond(lattice) else { continue };
        let ink = tokens.ink;
        let galley = painter.layout_no_wrap(text.to_owned(), type_size::small(), ink);
        let room = place.map.shrink2(0.5 * galley.size() + vec2(6.0, 4.0));
        let mut rect = Rect::from_center_size(room.clamp(place.screen(at)), galley.size());
        if taken.is_some_and(|t| t.expand(4.0).intersects(rect)) {
            rect = rect.translate(vec2(
                0.0,
                if rect.center().y < place.map.center().y {
                    19.0
                } else {
                    -19.0
                },
            ));
        }
        taken = Some(rect);
        let plate = rect.expand2(vec2(4.0, 1.0));
        painter.rect(
            plate,
            2.0,
            tokens.wash(tokens.panel, 0.85),
            Stroke::new(weight::NARROW, colour),
            StrokeKind::Inside,
        );
        painter.galley(rect.min.round(), galley, ink);
    }
}

/// Where a figure is farthest past its limit, if it is anywhere.
fn beyond(lattice: &Lattice) -> Option<[f32; 2]> {
    let (at, least) = lattice
        .cells()
        .filter(|(_, v)| !v.is_nan())
        .min_by(|a, b| a.1.total_cmp(&b.1))?;
    (least < 1.0).then_some(at)
}

fn lines(painter: &Painter, place: &Place, map: &MapWork, clear: Option<&Clear>, tokens: &Tokens) {
    let pixel = 1.0 / painter.pixels_per_point();
    let mut mesh = Mesh::default();
    let line = Stroke::new(weight::HAIR, tokens.wash(line_colour(tokens), 0.75));
    for (_, stretches) in map.lines() {
        for [a, b] in stretches {
            strokes::add(&mut mesh, place.screen(*a), place.screen(*b), line, pixel);
        }
    }
    let floor: Vec<Pos2> = map.valley().map(|p| place.screen(p)).collect();
    let dash = Stroke::new(weight::SYMBOL, line_colour(tokens));
    for pair in floor.chunks_exact(2) {
        strokes::add(&mut mesh, pair[0], pair[1], dash, pixel);
    }
    painter.add(Shape::mesh(mesh));
    if let Some(clear) = clear {
        borders(painter, place, clear, tokens);
    }
    labels(painter, place, map, tokens);
}

/// Lines on the map are dark on the bright ramp and the other way round.
fn line_colour(tokens: &Tokens) -> Color32 {
    if tokens.dark {
        tokens.on_accent
    } else {
        tokens.ink
    }
}

/// A label on each level line, where it keeps off the others; none where there is no such place.
fn labels(painter: &Painter, place: &Place, map: &MapWork, tokens: &Tokens) {
    let mut taken: Vec<Pos2> = Vec::new();
    let inside = place.map.shrink2(vec2(20.0, 9.0));
    let count = map.lines().len().max(1) as f32;
    for (n, (level, stretches)) in map.lines().iter().enumerate() {
        let clear = |p: &Pos2| {
            taken
                .iter()
                .map(|t| ((*t - *p) * vec2(0.8, 1.6)).length())
                .fold(f32::INFINITY, f32::min)
        };
        let middles = stretches
            .iter()
            .map(|[a, b]| place.screen([0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1])]));
        // Level stretches read best away from the middle, where joint and spot are.
        let worth = |p: &Pos2| clear(p).min(90.0) + 0.25 * (p.x - place.map.center().x).abs();
        let best = middles
            .filter(|p| inside.contains(*p) && clear(p) > APART)
            .max_by(|a, b| worth(a).total_cmp(&worth(b)));
        let Some(at) = best else { continue };
        let under = ramp::colour(tokens.dark, (n as f32 + 0.5) / count);
        let light =
            u32::from(under.r()) * 3 + u32::from(under.g()) * 6 + u32::from(under.b()) > 1150;
        let ink = if light {
            Color32::from_gray(12)
        } else {
            Color32::from_gray(250)
        };
        let text = painter.layout_no_wrap(picture::level_label(*level), type_size::small(), ink);
        let rect = Rect::from_center_size(at, text.size());
        painter.rect_filled(rect.expand2(vec2(2.0, -1.0)), 2.0, under);
        painter.galley(pos2(rect.min.x.round(), rect.min.y.round()), text, ink);
        taken.push(at);
    }
}

/// The joint as it is.
pub(crate) fn joint_mark(painter: &Painter, at: Pos2, tokens: &Tokens) {
    painter.circle(
        at,
        6.5,
        tokens.table,
        Stroke::new(weight::WIDE, tokens.tie_rod),
    );
    painter.circle_filled(at, 2.2, tokens.tie_rod);
}

/// The best spot: a cross with a gap, dark on light or the other way round.
pub(crate) fn best_mark(painter: &Painter, at: Pos2, tokens: &Tokens) {
    for (width, colour) in [(4.5, tokens.table), (1.8, tokens.ink)] {
        for way in [vec2(1.0, 0.0), vec2(0.0, 1.0)] {
            for sign in [-1.0, 1.0] {
                painter.line_segment(
                    [at + way * 3.0 * sign, at + way * 11.0 * sign],
                    Stroke::new(width, colour),
                );
            }
        }
    }
}

/// The two-line rule's place: a small square on its corner.
pub(crate) fn rule_mark(painter: &Painter, at: Pos2, tokens: &Tokens) {
    let r = 5.5;
    let corners = vec![
        at - vec2(0.0, r),
        at + vec2(r, 0.0),
        at + vec2(0.0, r),
        at - vec2(r, 0.0),
    ];
    painter.add(Shape::closed_line(
        corners.clone(),
        Stroke::new(3.5, tokens.table),
    ));
    painter.add(Shape::closed_line(
        corners,
        Stroke::new(weight::SYMBOL, tokens.accent),
    ));
}

/// The corner of a map on the drawing, from two of its places.
pub(crate) fn rect_of(corners: [Pos2; 2]) -> Rect {
    Rect::from_two_pos(corners[0], corners[1])
}

/// Whether a place is usable for the joint's mark.
pub(crate) fn in_sight(map: &MapWork, place: Point) -> bool {
    map.part_of(place).iter().all(|v| (0.0..=1.0).contains(v))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_loupe_stands_in_the_lower_inboard_corner_and_gives_way_to_joints() {
        let table = Rect::from_min_size(pos2(0.0, 44.0), vec2(850.0, 690.0));
        let free = place(table, &[]).unwrap().outer;
        assert_eq!(Align2::LEFT_BOTTOM.pos_in_rect(&free), pos2(12.0, 722.0));
        let joint = free.center_top() + vec2(0.0, 5.0);
        let smaller = place(table, &[joint]).unwrap().outer;
        assert!(smaller.width() < free.width() && !smaller.contains(joint));
        let elsewhere = place(table, &[pos2(30.0, 700.0)]).unwrap().outer;
        assert!(!elsewhere.contains(pos2(30.0, 700.0)));
        assert!(place(Rect::from_min_size(pos2(0.0, 0.0), vec2(150.0, 100.0)), &[]).is_none());
    }
}
