//! The map as a picture: bands, contour lines with their levels, axes.

use std::cell::RefCell;

use egui::{
    Align2, Color32, ColorImage, FontId, Pos2, Rect, Stroke, TextureHandle, TextureOptions, Ui,
    pos2, vec2,
};
use trammel_build::Axis;
use trammel_raster::{View, render};
use trammel_screen::fonts;
use trammel_tuning::{Cell, Plane, Scoring, TieRodJoint, ToeMap};

use super::{
    Asked,
    ramp::{LEVELS, band, colour},
};
use crate::fault::Fault;

/// Frames until fonts and textures have settled.
const FRAMES: u32 = 2;
/// Pixels of a cell.
const CELL_PX: usize = 2;
/// Columns of the map looked along for a contour line with room for its label.
const LOOKS: usize = 23;
/// Room for labels: left, top, right, bottom, px.
const MARGINS: [f32; 4] = [74.0, 60.0, 96.0, 54.0];
const PAPER: Color32 = Color32::from_rgb(252, 252, 250);
const INK: Color32 = Color32::from_rgb(24, 26, 30);
const CONTOUR: Color32 = Color32::from_rgb(255, 255, 255);
const BARRED: Color32 = Color32::from_rgb(214, 214, 214);
const KEPT_OUT: Color32 = Color32::from_rgb(213, 94, 0);
const TEXT_PX: f32 = 13.0;

pub(super) fn png(asked: &Asked, [width, height]: [f32; 2]) -> Result<Vec<u8>, Fault> {
    let [left, top, right, bottom] = MARGINS;
    let cells = |px: f32| (px.max(40.0) as usize) / CELL_PX;
    let counts = [cells(width - left - right), cells(height - top - bottom)];
    let map = asked.map(counts)?;
    let size = vec2((counts[0] * CELL_PX) as f32, (counts[1] * CELL_PX) as f32);
    let sheet = Sheet {
        asked,
        map: &map,
        image: image(asked, &map),
        texture: RefCell::new(None),
        plot: Rect::from_min_size(pos2(left, top), size),
    };
    let view = View {
        size_points: vec2(width, height),
        pixels_per_point: 1.0,
        settle_frames: FRAMES,
    };
    let fail = |e: &dyn std::fmt::Display| Fault::Picture(e.to_string());
    let setup = |ctx: &egui::Context| ctx.set_fonts(fonts::definitions());
    let picture = render(&view, setup, |ui| sheet.draw(ui)).map_err(|e| fail(&e))?;
    picture.to_png().map_err(|e| fail(&e))
}

/// What a cell shows: its band, or why there is none.
#[derive(Clone, Copy, PartialEq)]
enum Shown {
    Band(usize),
    Barred,
}

fn shown(asked: &Asked, map: &ToeMap, column: usize, row: usize) -> Shown {
    match map.cell(column, row) {
        Cell::Scored(score) => Shown::Band(band(in_degrees(asked, score.by(asked.scoring)))),
        Cell::Barred(_) | Cell::Pending => Shown::Barred,
    }
}

/// A score in degrees, a slope in degrees per unit of length.
fn in_degrees(asked: &Asked, score: f64) -> f64 {
    match asked.scoring {
        Scoring::Slope => score.to_degrees() * asked.chosen.unit().mm(),
        Scoring::Largest | Scoring::Rms => score.to_degrees(),
    }
}

/// One pixel for each cell, the top row first.
fn image(asked: &Asked, map: &ToeMap) -> ColorImage {
    let [columns, rows] = [map.frame().columns(), map.frame().rows()];
    let mut pixels = Vec::with_capacity(columns * rows);
    for y in 0..rows {
        let row = rows - 1 - y;
        for column in 0..columns {
            pixels.push(pixel(asked, map, column, row));
        }
    }
    ColorImage::new([columns, rows], pixels)
}

fn pixel(asked: &Asked, map: &ToeMap, column: usize, row: usize) -> Color32 {
    let [columns, rows] = [map.frame().columns(), map.frame().rows()];
    let here = shown(asked, map, column, row);
    let kept_out = |c: usize, r: usize| {
        let place = map.frame().place(c as f64, r as f64);
        asked.chosen.keep_out(place).is_some()
    };
    let next = [(column + 1, row), (column, row + 1)];
    let next = next.into_iter().filter(|&(c, r)| c < columns && r < rows);
    let held = kept_out(column, row);
    let (mut edge, mut line) = (false, false);
    for (c, r) in next {
        edge |= kept_out(c, r) != held;
        line |= shown(asked, map, c, r) != here;
    }
    let plain = match here {
        Shown::Band(band) => colour(band),
        Shown::Barred if (column + row).is_multiple_of(6) => INK,
        Shown::Barred => BARRED,
    };
    match (edge, held, line) {
        (true, _, _) => KEPT_OUT,
        (_, true, _) if (column + 5 * row).is_multiple_of(7) => KEPT_OUT,
        (_, _, true) => CONTOUR,
        _ => plain,
    }
}

struct Sheet<'a> {
    asked: &'a Asked,
    map: &'a ToeMap,
    image: ColorImage,
    /// Kept from frame to frame, since what is painted names it.
    texture: RefCell<Option<TextureHandle>>,
    plot: Rect,
}

impl Sheet<'_> {
    fn draw(&self, ui: &Ui) {
        let painter = ui.ctx().layer_painter(egui::LayerId::background());
        painter.rect_filled(ui.ctx().content_rect(), 0.0, PAPER);
        let mut texture = self.texture.borrow_mut();
        let texture = texture.get_or_insert_with(|| {
            let image = self.image.clone();
            ui.ctx().load_texture("map", image, TextureOptions::NEAREST)
        });
        let whole = Rect::from_min_max(Pos2::ZERO, pos2(1.0, 1.0));
        painter.image(texture.id(), self.plot, whole, Color32::WHITE);
        self.contour_labels(&painter);
        self.axes(&painter);
        self.legend(&painter);
        self.marks(&painter);
        for (line, y) in self.title().into_iter().zip([14.0, 32.0]) {
            let font = FontId::proportional(TEXT_PX);
            let at = pos2(self.plot.left(), y);
            painter.text(at, Align2::LEFT_CENTER, line, font, INK);
        }
    }

    fn title(&self) -> [String; 2] {
        let joint = match self.asked.joint {
            TieRodJoint::Inner => "inner",
            TieRodJoint::Outer => "outer",
        };
        let view = match self.asked.plane {
            Plane::Front => "front",
            Plane::Side => "side",
            Plane::Plan => "plan",
        };
        let chosen = &self.asked.chosen;
        [
            format!(
                "{}; {} axle, {} side, {view} view",
                chosen.build().title,
                chosen.axle().word(),
                chosen.side.word()
            ),
            format!(
                "With the {joint} tie-rod joint placed here: {}",
                self.what()
            ),
        ]
    }

    fn what(&self) -> String {
        match self.asked.scoring {
            Scoring::Largest => "largest toe change over the travel, °".into(),
            Scoring::Rms => "RMS toe change over the travel, °".into(),
            Scoring::Slope => format!(
                "slope of toe at ride height, °/{}",
                self.asked.chosen.unit().sign()
            ),
        }
    }

    /// The middle of a cell on the sheet.
    fn at(&self, column: f64, row: f64) -> Pos2 {
        let px = CELL_PX as f32;
        pos2(
            self.plot.left() + (column as f32 + 0.5) * px,
            self.plot.bottom() - (row as f32 + 0.5) * px,
        )
    }

    /// The level of each contour line, once, where there is room for it.
    fn contour_labels(&self, painter: &egui::Painter) {
        let mut placed: Vec<Rect> = Vec::new();
        let [columns, rows] = [self.map.frame().columns(), self.map.frame().rows()];
        for (i, level) in LEVELS.iter().enumerate() {
            // Each level starts looking elsewhere, so that labels of neighbouring levels stand apart.
            let start = columns / 2 + i * columns / 24;
            let looks = (0..LOOKS).map(|look| (start + look * columns / LOOKS) % columns);
            let crossing = looks
                .flat_map(|column| (1..rows).map(move |row| (column, row)))
                .find_map(|(column, row)| {
                    let [here, below] =
                        [row, row - 1].map(|r| shown(self.asked, self.map, column, r));
                    let (Shown::Band(a), Shown::Band(b)) = (here, below) else {
                        return None;
                    };
                    let centre = self.at(column as f64, row as f64);
                    let rect = Rect::from_center_size(centre, vec2(38.0, TEXT_PX + 2.0));
                    let free =
                        self.plot.contains_rect(rect) && !placed.iter().any(|p| p.intersects(rect));
                    (a.min(b) <= i && a.max(b) > i && free).then_some(rect)
                });
            if let Some(rect) = crossing {
                painter.rect_filled(rect, 3.0, PAPER.gamma_multiply(0.85));
                let font = FontId::proportional(TEXT_PX - 1.0);
                painter.text(
                    rect.center(),
                    Align2::CENTER_CENTER,
                    format!("{level}°"),
                    font,
                    INK,
                );
                placed.push(rect);
            }
        }
    }

    fn axes(&self, painter: &egui::Painter) {
        painter.rect_stroke(
            self.plot,
            0.0,
            Stroke::new(1.0, INK),
            egui::StrokeKind::Outside,
        );
        let font = FontId::proportional(TEXT_PX);
        let [across, up] = match self.asked.plane {
            Plane::Front => [Axis::Y, Axis::Z],
            Plane::Side => [Axis::X, Axis::Z],
            Plane::Plan => [Axis::Y, Axis::X],
        };
        let frame = self.map.frame();
        let [columns, rows] = [frame.columns() - 1, frame.rows() - 1].map(|n| n as f64);
        let value = |axis: Axis, column: f64, row: f64| {
            let place = self.asked.chosen.typed(frame.place(column, row));
            place.get(axis.index()).copied().unwrap_or_default()
        };
        for (share, tick) in ticks(value(across, 0.0, 0.0), value(across, columns, 0.0)) {
            let at = pos2(self.at(share * columns, 0.0).x, self.plot.bottom());
            painter.line_segment([at, at + vec2(0.0, 5.0)], Stroke::new(1.0, INK));
            painter.text(
                at + vec2(0.0, 7.0),
                Align2::CENTER_TOP,
                tick,
                font.clone(),
                INK,
            );
        }
        for (share, tick) in ticks(value(up, 0.0, 0.0), value(up, 0.0, rows)) {
            let at = pos2(self.plot.left(), self.at(0.0, share * rows).y);
            painter.line_segment([at, at - vec2(5.0, 0.0)], Stroke::new(1.0, INK));
            painter.text(
                at - vec2(8.0, 0.0),
                Align2::RIGHT_CENTER,
                tick,
                font.clone(),
                INK,
            );
        }
        let unit = self.asked.chosen.unit().sign();
        let under = pos2(self.plot.center().x, self.plot.bottom() + 38.0);
        painter.text(
            under,
            Align2::CENTER_CENTER,
            format!("{}, {unit}", across.letter()),
            font.clone(),
            INK,
        );
        let beside = pos2(14.0, self.plot.top() - 12.0);
        painter.text(
            beside,
            Align2::LEFT_CENTER,
            format!("{}, {unit}", up.letter()),
            font,
            INK,
        );
    }

    fn legend(&self, painter: &egui::Painter) {
        let font = FontId::proportional(TEXT_PX);
        let left = self.plot.right() + 14.0;
        for i in 0..=LEVELS.len() {
            let bottom = self.plot.bottom() - 22.0 * i as f32;
            let patch = Rect::from_min_max(pos2(left, bottom - 22.0), pos2(left + 18.0, bottom));
            painter.rect_filled(patch, 0.0, colour(i));
            if let Some(level) = LEVELS.get(i) {
                let at = pos2(left + 24.0, bottom - 22.0);
                painter.text(
                    at,
                    Align2::LEFT_CENTER,
                    format!("{level}°"),
                    font.clone(),
                    INK,
                );
            }
        }
    }

    /// The joint as it is, a cross, and the lowest place, a ring.
    fn marks(&self, painter: &egui::Painter) {
        let frame = self.map.frame();
        let middle = self.at(
            0.5 * (frame.columns() - 1) as f64,
            0.5 * (frame.rows() - 1) as f64,
        );
        for (width, ink) in [(4.0, PAPER), (1.5, INK)] {
            for arm in [vec2(8.0, 8.0), vec2(8.0, -8.0)] {
                painter.line_segment([middle - arm, middle + arm], Stroke::new(width, ink));
            }
        }
        if let Some((column, row, _)) = self.map.lowest(self.asked.scoring) {
            let at = self.at(column as f64, row as f64);
            painter.circle_stroke(at, 8.0, Stroke::new(4.0, PAPER));
            painter.circle_stroke(at, 8.0, Stroke::new(1.5, INK));
        }
    }
}

/// Round numbers between two ends: where they are, as a share of the way, and what they say.
fn ticks(from: f64, to: f64) -> Vec<(f64, String)> {
    let span = (to - from).abs();
    let decade = 10.0_f64.powf((span / 8.0).log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|m| m * decade)
        .find(|s| span / s <= 8.0)
        .unwrap_or(span);
    if span.is_nan() || step <= 0.0 {
        return Vec::new();
    }
    let decimals = (-step.log10().floor()).max(0.0) as usize;
    let low = from.min(to);
    let first = (low / step).ceil() as i64;
    (first..first + 12)
        .map(|i| i as f64 * step)
        .filter(|v| *v <= low + span * (1.0 + 1e-9))
        .map(|v| ((v - from) / (to - from), format!("{:.decimals$}", v + 0.0)))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ticks_are_round_and_within() {
        let said: Vec<String> = ticks(5.3, 9.2).into_iter().map(|t| t.1).collect();
        assert_eq!(
            said,
            ["5.5", "6.0", "6.5", "7.0", "7.5", "8.0", "8.5", "9.0"]
        );
        let mirrored = ticks(-5.0, -9.0);
        assert_eq!(mirrored.last().map(|t| t.1.as_str()), Some("-5.0"));
        assert!(mirrored.iter().all(|t| (0.0..=1.0).contains(&t.0)));
        assert!(ticks(1.0, 1.0).is_empty());
    }
}
