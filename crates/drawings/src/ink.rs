//! A drawing taken apart: what a writer or a painter has to draw, and nothing else.

mod dimension;
mod hatch;

use std::f64::consts::TAU;

use trammel_fabrication::plane::{Arc, Bounds, Edge, Point};

use crate::metrics::Metrics;
use crate::model::{Drawing, Item, Layer, Line, Shape, Text};

/// One thing to draw.
#[derive(Clone, Debug, PartialEq)]
pub enum Ink {
    /// A path along edges, each of which starts where the one before ends.
    Path {
        /// The edges.
        edges: Vec<Edge>,
        /// Whether it comes back to its start.
        closed: bool,
        /// How it looks on paper.
        line: Line,
    },
    /// A filled polygon.
    Fill(Vec<Point>),
    /// Lettering.
    Text(Text),
}

/// One thing to draw, on its layer.
#[derive(Clone, Debug, PartialEq)]
pub struct Stroke {
    /// What it is for.
    pub layer: Layer,
    /// What is drawn.
    pub ink: Ink,
}

/// Everything a drawing consists of, in the order it is drawn.
#[must_use]
pub fn strokes(drawing: &Drawing, metrics: &Metrics) -> Vec<Stroke> {
    let mut strokes = Vec::new();
    for item in &drawing.items {
        let mut put = |ink| {
            strokes.push(Stroke {
                layer: item.layer,
                ink,
            });
        };
        take_apart(item, metrics, &mut put);
    }
    strokes
}

/// The room a drawing takes, with its dimensions and lettering; empty when nothing is drawn.
#[must_use]
pub fn bounds(drawing: &Drawing, metrics: &Metrics) -> Bounds {
    let mut bounds = Bounds::EMPTY;
    for stroke in strokes(drawing, metrics) {
        bounds.join(&stroke.ink.bounds(metrics));
    }
    bounds
}

impl Ink {
    /// The room it takes.
    #[must_use]
    pub fn bounds(&self, metrics: &Metrics) -> Bounds {
        let mut bounds = Bounds::EMPTY;
        match self {
            Self::Path { edges, .. } => edges.iter().for_each(|edge| bounds.join(&edge.bounds())),
            Self::Fill(points) => points.iter().for_each(|&point| bounds.include(point)),
            Self::Text(text) => bounds = metrics.bounds(text),
        }
        bounds
    }

    /// Whether every coordinate is a finite number.
    #[must_use]
    pub fn is_finite(&self) -> bool {
        let ends = |edge: &Edge| [edge.from(), edge.to()];
        let fine = |point: Point| point.x.is_finite() && point.y.is_finite();
        match self {
            Self::Path { edges, .. } => edges.iter().flat_map(ends).all(fine),
            Self::Fill(points) => points.iter().copied().all(fine),
            Self::Text(text) => fine(text.at) && text.height.is_finite() && text.turn.is_finite(),
        }
    }
}

fn take_apart(item: &Item, metrics: &Metrics, put: &mut dyn FnMut(Ink)) {
    let line = item.line;
    match &item.shape {
        Shape::Contour(contour) => put(Ink::Path {
            edges: contour.edges().collect(),
            closed: true,
            line,
        }),
        Shape::Polyline(points) => put(polyline(points, line)),
        Shape::Arc(arc) => put(Ink::Path {
            edges: vec![Edge::Arc(*arc)],
            closed: false,
            line,
        }),
        Shape::Circle { centre, radius } => put(circle(*centre, *radius, line)),
        Shape::Fill(points) => put(Ink::Fill(points.clone())),
        Shape::Text(text) => put(Ink::Text(text.clone())),
        Shape::Hatch {
            contour,
            angle,
            spacing,
        } => hatch::lines(contour, *angle, *spacing, |from, to| {
            put(polyline(&[from, to], line));
        }),
        Shape::Dimension(dimension) => dimension::draw(dimension, metrics, put),
    }
}

fn polyline(points: &[Point], line: Line) -> Ink {
    let edges = points
        .iter()
        .zip(points.iter().skip(1))
        .map(|(&from, &to)| Edge::Line { from, to });
    Ink::Path {
        edges: edges.collect(),
        closed: false,
        line,
    }
}

fn circle(centre: Point, radius: f64, line: Line) -> Ink {
    let round = Arc {
        centre,
        radius,
        start: 0.0,
        sweep: TAU,
    };
    Ink::Path {
        edges: vec![Edge::Arc(round)],
        closed: true,
        line,
    }
}
