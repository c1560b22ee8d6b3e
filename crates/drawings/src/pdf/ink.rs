//! One ink on a PDF page.

use std::f64::consts::FRAC_PI_4;

use krilla::color::luma;
use krilla::geom::{Path, PathBuilder, Point as PdfPoint, Transform};
use krilla::paint::{Fill, LineCap, LineJoin, Stroke as PdfStroke, StrokeDash};
use krilla::surface::Surface;
use krilla::text::{GlyphId, KrillaGlyph};
use trammel_fabrication::plane::{Arc, Edge, Point, Vector};

use super::{Fonts, OnPage, POINTS};
use crate::ink::Ink;
use crate::metrics::{CAPITAL, Metrics};
use crate::model::{Line, Text};

pub(super) fn draw(
    ink: &Ink,
    on_page: OnPage,
    fonts: &Fonts,
    metrics: &Metrics,
    surface: &mut Surface<'_>,
) {
    match ink {
        Ink::Path {
            edges,
            closed,
            line,
        } => {
            surface.set_fill(None);
            surface.set_stroke(Some(pen(*line)));
            if let Some(path) = path(edges, *closed, on_page) {
                surface.draw_path(&path);
            }
        }
        Ink::Fill(points) => {
            black(surface);
            let next = points.iter().skip(1);
            let edges: Vec<Edge> = points
                .iter()
                .zip(next)
                .map(|(&from, &to)| Edge::Line { from, to })
                .collect();
            if let Some(path) = path(&edges, true, on_page) {
                surface.draw_path(&path);
            }
        }
        Ink::Text(text) => letter(text, on_page, fonts, metrics, surface),
    }
}

fn black(surface: &mut Surface<'_>) {
    surface.set_stroke(None);
    surface.set_fill(Some(Fill::default()));
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "line widths in single precision"
)]
fn pen(line: Line) -> PdfStroke {
    let points = |mm: f64| (mm * POINTS) as f32;
    let array: Vec<f32> = line.pattern().into_iter().map(points).collect();
    PdfStroke {
        paint: luma::Color::black().into(),
        width: points(line.width()),
        line_cap: LineCap::Butt,
        line_join: LineJoin::Miter,
        dash: (!array.is_empty()).then_some(StrokeDash { array, offset: 0.0 }),
        ..PdfStroke::default()
    }
}

fn path(edges: &[Edge], closed: bool, on_page: OnPage) -> Option<Path> {
    let mut builder = PathBuilder::new();
    let (x, y) = on_page.xy(edges.first()?.from());
    builder.move_to(x, y);
    for edge in edges {
        match edge {
            Edge::Line { to, .. } => {
                let (x, y) = on_page.xy(*to);
                builder.line_to(x, y);
            }
            Edge::Arc(arc) => curve(arc, on_page, &mut builder),
        }
    }
    if closed {
        builder.close();
    }
    builder.finish()
}

/// An arc as cubics of an eighth of a turn at most, each off by no more than 4e-6 of the radius.
fn curve(arc: &Arc, on_page: OnPage, builder: &mut PathBuilder) {
    let pieces = (arc.sweep.abs() / FRAC_PI_4).ceil().max(1.0);
    let step = arc.sweep / pieces;
    let reach = 4.0 / 3.0 * (step / 4.0).tan() * arc.radius;
    let mut angle = arc.start;
    let mut from = arc.at(0.0);
    let along = |angle: f64| Vector::new(-angle.sin(), angle.cos()) * reach;
    let mut piece = 0.0;
    while piece < pieces {
        piece += 1.0;
        let to: Point = arc.at(piece / pieces);
        let (first, second) = (from + along(angle), to - along(angle + step));
        let ((x1, y1), (x2, y2), (x, y)) = (on_page.xy(first), on_page.xy(second), on_page.xy(to));
        builder.cubic_to(x1, y1, x2, y2, x, y);
        angle += step;
        from = to;
    }
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "letters are set in single precision"
)]
fn letter(
    text: &Text,
    on_page: OnPage,
    fonts: &Fonts,
    metrics: &Metrics,
    surface: &mut Surface<'_>,
) {
    if text.content.is_empty() {
        return;
    }
    let glyphs: Vec<KrillaGlyph> = metrics
        .letters(&text.content, text.bold)
        .into_iter()
        .map(|letter| {
            KrillaGlyph::new(
                GlyphId::new(letter.glyph),
                letter.advance as f32,
                0.0,
                0.0,
                0.0,
                letter.bytes,
                None,
            )
        })
        .collect();
    let font = if text.bold { &fonts.bold } else { &fonts.plain };
    let size = (text.height / CAPITAL * POINTS) as f32;
    let (x, y) = on_page.xy(metrics.start(text));
    black(surface);
    if text.turn == 0.0 {
        surface.draw_glyphs(
            PdfPoint::from_xy(x, y),
            &glyphs,
            font.clone(),
            &text.content,
            size,
            false,
        );
        return;
    }
    // The page's y runs down, so a turn to the left is one to the right there.
    surface.push_transform(&Transform::from_rotate_at(
        -text.turn.to_degrees() as f32,
        x,
        y,
    ));
    surface.draw_glyphs(
        PdfPoint::from_xy(x, y),
        &glyphs,
        font.clone(),
        &text.content,
        size,
        false,
    );
    surface.pop();
}
