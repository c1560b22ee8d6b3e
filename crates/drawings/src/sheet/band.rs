//! The band beside or over the title block: check bars, what to check before cutting, caution, sign-off boxes.

use trammel_fabrication::plane::Point;

use super::bars;
use crate::metrics::Metrics;
use crate::model::{Drawing, Line, Text};

/// Height of the band, mm.
pub(super) const HEIGHT: f64 = 36.0;
/// Width of the part with the bars, mm.
const BARS: f64 = bars::LONGEST + 6.0;
/// Height of the row of sign-off boxes, mm.
const SIGN: f64 = 11.0;
/// Heights of capitals, mm, and from line to line.
const LABEL: f64 = 1.5;
const BODY: f64 = 1.8;
const LEADING: f64 = 3.1;

/// Said over the bars.
const PRINT: &str = "Print at 100 per cent. Measure all four bars before use; paper that is out by 0.5 mm is not full size.";

/// Draws the band with its lower left corner here.
pub(super) fn draw(
    corner: Point,
    width: f64,
    caution: &[String],
    sign_offs: &[String],
    metrics: &Metrics,
    drawing: &mut Drawing,
) {
    drawing.frame(Line::NARROW, corner, [BARS, HEIGHT]);
    bars::across(
        corner + trammel_fabrication::plane::Vector::new(2.5, SIGN + 4.0),
        drawing,
    );
    let above = Point::new(corner.x + 1.5, corner.y + HEIGHT - 1.5);
    lines(PRINT, above, BARS - 3.0, f64::INFINITY, metrics, drawing);
    let share = BARS / (sign_offs.len().max(1) as f64);
    for (index, name) in sign_offs.iter().enumerate() {
        let box_corner = Point::new(corner.x + index as f64 * share, corner.y);
        drawing.frame(Line::NARROW, box_corner, [share, SIGN]);
        let height = metrics.fitting(name, LABEL, share - 2.0, false);
        drawing.letter(Text::new(
            box_corner.x + 1.0,
            box_corner.y + SIGN - 1.0 - LABEL,
            height,
            name,
        ));
    }
    let left = corner.x + BARS;
    drawing.frame(
        Line::NARROW,
        Point::new(left, corner.y),
        [width - BARS, HEIGHT],
    );
    if caution.is_empty() {
        return;
    }
    drawing.letter(Text::new(left + 1.5, corner.y + HEIGHT - 1.5 - BODY, BODY, "Caution").bold());
    let below = Point::new(left + 1.5, corner.y + HEIGHT - 1.5 - LEADING);
    lines(
        &caution.join(" "),
        below,
        width - BARS - 3.0,
        HEIGHT - LEADING - 3.0,
        metrics,
        drawing,
    );
}

/// Wrapped lettering whose top is here, smaller where it would not go into this height.
fn lines(
    content: &str,
    top: Point,
    width: f64,
    room: f64,
    metrics: &Metrics,
    drawing: &mut Drawing,
) {
    let mut scale = 1.0;
    let mut wrapped = metrics.wrapped(content, BODY, width);
    while wrapped.len() as f64 * LEADING * scale > room && scale > 0.4 {
        scale *= 0.95;
        wrapped = metrics.wrapped(content, BODY * scale, width);
    }
    for (index, line) in wrapped.into_iter().enumerate() {
        let y = top.y - BODY * scale - index as f64 * LEADING * scale;
        drawing.letter(Text::new(top.x, y, BODY * scale, line));
    }
}
