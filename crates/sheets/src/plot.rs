//! Toe change over the travel, drawn for a sheet.

use trammel_analysis::TravelCurve;
use trammel_drawings::model::{Anchor, Drawing, Layer, Line, Shape, Text};
use trammel_fabrication::plane::Point;

use crate::Shop;

const WIDTH: f64 = 110.0;
const HEIGHT: f64 = 80.0;
/// Height of the capitals, mm.
const TEXT: f64 = 2.0;

/// Two curves in one frame: as designed, unbroken; rounded, dashed. Travel runs up, toe-in to the right.
pub(crate) fn toe_curves(
    title: &str,
    before: &TravelCurve,
    after: &TravelCurve,
    shop: &Shop,
) -> Drawing {
    let mut drawing = Drawing::new(title);
    let travels = || before.stations.iter().map(|s| s.pose.travel);
    let low = travels().fold(0.0, f64::min);
    let high = travels().fold(1e-6, f64::max);
    let widest = [before, after]
        .iter()
        .flat_map(|c| &c.stations)
        .fold(0.0_f64, |w, s| w.max(s.toe_change.to_degrees().abs()));
    let half = nice(widest);
    let at = |travel: f64, toe: f64| {
        Point::new(
            WIDTH / 2.0 * (1.0 + toe.to_degrees() / half),
            HEIGHT * (travel - low) / (high - low),
        )
    };
    drawing.frame(Line::NARROW, Point::origin(), [WIDTH, HEIGHT]);
    let zero = at(0.0, 0.0);
    drawing.stroke(
        Line::CENTRE,
        Point::new(zero.x, 0.0),
        Point::new(zero.x, HEIGHT),
    );
    drawing.stroke(
        Line::CENTRE,
        Point::new(0.0, zero.y),
        Point::new(WIDTH, zero.y),
    );
    for (curve, line) in [(before, Line::WIDE), (after, Line::DASHED)] {
        let points: Vec<Point> = curve
            .stations
            .iter()
            .map(|s| at(s.pose.travel, s.toe_change))
            .collect();
        if points.len() > 1 {
            drawing.add(Layer::Sheet, line, Shape::Polyline(points));
        }
    }
    letters(&mut drawing, half, [low, high], shop);
    drawing
}

fn letters(drawing: &mut Drawing, half: f64, [low, high]: [f64; 2], shop: &Shop) {
    let below = -TEXT * 2.0;
    for (x, toe, anchor) in [
        (0.0, -half, Anchor::Start),
        (WIDTH / 2.0, 0.0, Anchor::Middle),
        (WIDTH, half, Anchor::End),
    ] {
        let text = if toe == 0.0 {
            "0".to_owned()
        } else {
            format!("{}\u{b0}", trammel_build::signed(toe, 2))
        };
        drawing.letter(Text::new(x, below, TEXT, text).anchored(anchor));
    }
    drawing.letter(
        Text::new(
            WIDTH / 2.0,
            below * 2.0,
            TEXT,
            "toe change, toe-in to the right",
        )
        .anchored(Anchor::Middle),
    );
    for (y, travel) in [(0.0, low), (HEIGHT - TEXT, high)] {
        let word = if travel > 0.0 { "bump" } else { "droop" };
        let text = format!("{word} {}", shop.text(travel.abs()));
        drawing.letter(Text::new(-2.0, y, TEXT, text).anchored(Anchor::End));
    }
    drawing.letter(Text::new(
        0.0,
        HEIGHT + TEXT,
        TEXT,
        "unbroken: as designed; dashed: every printed coordinate rounded",
    ));
}

/// A round figure no less than this.
fn nice(widest: f64) -> f64 {
    [0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 45.0]
        .into_iter()
        .find(|v| *v >= widest)
        .unwrap_or(90.0)
}
