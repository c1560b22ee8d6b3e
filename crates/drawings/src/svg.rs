//! SVG in millimetres: the view box counts in mm, width and height state them, so the file opens at full size.

use std::fmt::Write as _;

use trammel_fabrication::plane::{Arc, Bounds, Edge, Point};

use crate::DrawingError;
use crate::ink::{Ink, Stroke, strokes};
use crate::metrics::{CAPITAL, Metrics};
use crate::model::{Drawing, Layer, Line, Text};

/// The drawing as an SVG file, each layer a group. `layers` picks which, in the order drawn; [`Layer::FOR_THE_CUTTER`] leaves the paper's out.
///
/// # Errors
/// A coordinate that is no finite number.
pub fn write(
    drawing: &Drawing,
    layers: &[Layer],
    metrics: &Metrics,
) -> Result<String, DrawingError> {
    let strokes: Vec<Stroke> = strokes(drawing, metrics)
        .into_iter()
        .filter(|stroke| layers.contains(&stroke.layer))
        .collect();
    if !strokes.iter().all(|stroke| stroke.ink.is_finite()) {
        return Err(DrawingError::NotFinite {
            drawing: drawing.title.clone(),
        });
    }
    let mut bounds = Bounds::EMPTY;
    strokes
        .iter()
        .for_each(|stroke| bounds.join(&stroke.ink.bounds(metrics)));
    let bounds = if bounds.is_empty() {
        bounds
    } else {
        bounds.grown(Line::WIDE.width())
    };
    let mut page = Page {
        left: if bounds.is_empty() { 0.0 } else { bounds.min.x },
        top: if bounds.is_empty() { 0.0 } else { bounds.max.y },
        out: String::new(),
    };
    page.open(&drawing.title, bounds.width(), bounds.height());
    for &layer in layers {
        page.layer(
            layer,
            strokes.iter().filter(|stroke| stroke.layer == layer),
            metrics,
        );
    }
    page.put(format_args!("</svg>\n"));
    Ok(page.out)
}

struct Page {
    left: f64,
    top: f64,
    out: String,
}

impl Page {
    fn put(&mut self, text: std::fmt::Arguments<'_>) {
        // Writing to a string can't fail.
        let _ = self.out.write_fmt(text);
    }

    fn open(&mut self, title: &str, width: f64, height: f64) {
        let (w, h) = (number(width), number(height));
        self.put(format_args!("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"));
        self.put(format_args!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" viewBox=\"0 0 {w} {h}\">\n"
        ));
        self.put(format_args!(
            "<title>{}</title>\n<desc>Millimetres, full size. Kerf is not taken off.</desc>\n",
            escaped(title)
        ));
    }

    fn layer<'a>(
        &mut self,
        layer: Layer,
        strokes: impl Iterator<Item = &'a Stroke>,
        metrics: &Metrics,
    ) {
        let mut strokes = strokes.peekable();
        if strokes.peek().is_none() {
            return;
        }
        self.put(format_args!(
            "<g id=\"{}\" fill=\"none\" stroke=\"black\">\n",
            layer.name()
        ));
        for stroke in strokes {
            match &stroke.ink {
                Ink::Path {
                    edges,
                    closed,
                    line,
                } => self.path(edges, *closed, *line),
                Ink::Fill(points) => self.fill(points),
                Ink::Text(text) => self.text(text, metrics),
            }
        }
        self.put(format_args!("</g>\n"));
    }

    fn xy(&self, point: Point) -> String {
        format!(
            "{} {}",
            number(point.x - self.left),
            number(self.top - point.y)
        )
    }

    fn path(&mut self, edges: &[Edge], closed: bool, line: Line) {
        let style = stroke_style(line);
        if let [Edge::Arc(arc)] = edges
            && closed
        {
            let (cx, cy, r) = (
                number(arc.centre.x - self.left),
                number(self.top - arc.centre.y),
                number(arc.radius),
            );
            self.put(format_args!(
                "<circle cx=\"{cx}\" cy=\"{cy}\" r=\"{r}\"{style}/>\n"
            ));
            return;
        }
        let Some(first) = edges.first() else { return };
        let mut path = format!("M{}", self.xy(first.from()));
        for edge in edges {
            path.push_str(&match edge {
                Edge::Line { to, .. } => format!(" L{}", self.xy(*to)),
                Edge::Arc(arc) => self.arc(arc),
            });
        }
        let end = if closed { " Z" } else { "" };
        self.put(format_args!("<path d=\"{path}{end}\"{style}/>\n"));
    }

    /// The y axis points down in the file, so an anticlockwise arc has the sweep flag 0.
    fn arc(&self, arc: &Arc) -> String {
        let r = number(arc.radius);
        let large = u8::from(arc.sweep.abs() > std::f64::consts::PI);
        let sweep = u8::from(arc.sweep < 0.0);
        format!(" A{r} {r} 0 {large} {sweep} {}", self.xy(arc.at(1.0)))
    }

    fn fill(&mut self, points: &[Point]) {
        let points: Vec<String> = points
            .iter()
            .map(|&point| self.xy(point).replace(' ', ","))
            .collect();
        self.put(format_args!(
            "<polygon points=\"{}\" fill=\"black\" stroke=\"none\"/>\n",
            points.join(" ")
        ));
    }

    fn text(&mut self, text: &Text, metrics: &Metrics) {
        let at = self.xy(metrics.start(text));
        let (x, y) = at.split_once(' ').unwrap_or((&at, "0"));
        let size = number(text.height / CAPITAL);
        let weight = if text.bold {
            " font-weight=\"bold\""
        } else {
            ""
        };
        let turn = match text.turn {
            0.0 => String::new(),
            turn => format!(" transform=\"rotate({} {at})\"", number(-turn.to_degrees())),
        };
        self.put(format_args!(
            "<text x=\"{x}\" y=\"{y}\" font-family=\"DejaVu Sans, sans-serif\" font-size=\"{size}\"{weight}{turn} fill=\"black\" stroke=\"none\">{}</text>\n",
            escaped(&text.content)
        ));
    }
}

fn stroke_style(line: Line) -> String {
    let width = number(line.width());
    let pattern: Vec<String> = line.pattern().into_iter().map(number).collect();
    match pattern.is_empty() {
        true => format!(" stroke-width=\"{width}\""),
        false => format!(
            " stroke-width=\"{width}\" stroke-dasharray=\"{}\"",
            pattern.join(" ")
        ),
    }
}

/// Up to six decimals, no needless noughts.
fn number(value: f64) -> String {
    let text = format!("{value:.6}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" {
        "0".to_owned()
    } else {
        text.to_owned()
    }
}

fn escaped(text: &str) -> String {
    text.chars()
        .filter(|letter| !letter.is_control())
        .map(|letter| match letter {
            '<' => "&lt;".to_owned(),
            '>' => "&gt;".to_owned(),
            '&' => "&amp;".to_owned(),
            '"' => "&quot;".to_owned(),
            other => other.to_string(),
        })
        .collect()
}
