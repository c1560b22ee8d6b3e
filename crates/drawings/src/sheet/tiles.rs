//! A drawing larger than the paper, cut into tiles that overlap, with register marks to lay them by.

use trammel_fabrication::plane::{Bounds, Point, Vector};

use super::{Placed, Room};
use crate::model::{Anchor, Drawing, Layer, Line, Shape, Text};

/// How far neighbouring tiles overlap, mm.
pub(super) const OVERLAP: f64 = 12.0;
/// Free paper around the whole drawing, mm.
pub(super) const MARGIN: f64 = 2.0;
/// Reach of a register mark's arms, mm; it has to lie inside the overlap.
const MARK: f64 = 4.0;

/// How many tiles it takes, across and up.
pub(super) fn count(content: &Bounds, room: &Room) -> [usize; 2] {
    let along = |size: f64, room: f64| {
        let step = (room - OVERLAP).max(1.0);
        let more = ((size - room).max(0.0) / step - 1e-9).ceil().max(0.0);
        // More tiles than this no one glues together; the rest is not drawn twice over.
        1 + (more.min(99.0) as usize)
    };
    [
        along(content.width(), room.width),
        along(content.height(), room.height),
    ]
}

/// One tile: the drawing moved behind the window, and what is written on it.
pub(super) fn tile(
    content: &Drawing,
    bounds: &Bounds,
    room: &Room,
    [columns, rows]: [usize; 2],
    [column, row]: [usize; 2],
) -> Vec<Placed> {
    let step = Vector::new(room.width - OVERLAP, room.height - OVERLAP);
    let moved = Vector::new(step.x * column as f64, step.y * row as f64);
    let shift = room.corner - (bounds.min + moved);
    let mut drawing = content.clone();
    register_marks(&mut drawing, bounds, room, [columns, rows]);
    vec![
        Placed {
            drawing,
            shift,
            window: Some(room.window()),
        },
        Placed::whole(labels(room, [columns, rows], [column, row])),
    ]
}

/// Marks in the middle of every overlap; both neighbours show them, since they belong to the drawing.
fn register_marks(
    drawing: &mut Drawing,
    bounds: &Bounds,
    room: &Room,
    [columns, rows]: [usize; 2],
) {
    let step = [room.width - OVERLAP, room.height - OVERLAP];
    let middle = |index: usize, step: f64| index as f64 * step + OVERLAP / 2.0;
    for seam in 1..columns {
        for row in 0..rows {
            for share in [0.2, 0.8] {
                let y = row as f64 * step[1] + share * room.height;
                mark(drawing, bounds.min + Vector::new(middle(seam, step[0]), y));
            }
        }
    }
    for seam in 1..rows {
        for column in 0..columns {
            for share in [0.2, 0.8] {
                let x = column as f64 * step[0] + share * room.width;
                mark(drawing, bounds.min + Vector::new(x, middle(seam, step[1])));
            }
        }
    }
}

fn mark(drawing: &mut Drawing, at: Point) {
    for way in [Vector::x(), Vector::y()] {
        drawing.stroke(Line::NARROW, at - way * MARK, at + way * MARK);
    }
    let circle = Shape::Circle {
        centre: at,
        radius: MARK / 2.0,
    };
    drawing.add(Layer::Sheet, Line::NARROW, circle);
}

/// The tile's edge, its name, and who its neighbours are.
fn labels(room: &Room, [columns, rows]: [usize; 2], [column, row]: [usize; 2]) -> Drawing {
    let mut drawing = Drawing::new("tile");
    let Bounds { min, max } = room.window();
    let corners = [
        (min.x, min.y),
        (max.x, min.y),
        (max.x, max.y),
        (min.x, max.y),
        (min.x, min.y),
    ];
    let edge = corners.map(|(x, y)| Point::new(x, y)).to_vec();
    drawing.add(Layer::Sheet, Line::DASHED, Shape::Polyline(edge));
    let name = format!(
        "Tile {}: cut along the dashed edge, lay register marks on each other",
        name(column, row)
    );
    drawing.letter(Text::new(min.x + 2.0, max.y + 1.2, 2.0, name).bold());
    let middle = min + (max - min) / 2.0;
    let neighbour = |column: usize, row: usize| format!("joins {}", self::name(column, row));
    let up = std::f64::consts::FRAC_PI_2;
    if column > 0 {
        drawing.letter(
            Text::new(min.x + 2.5, middle.y, 1.8, neighbour(column - 1, row))
                .turned(up)
                .anchored(Anchor::Middle),
        );
    }
    if column + 1 < columns {
        drawing.letter(
            Text::new(max.x - 1.0, middle.y, 1.8, neighbour(column + 1, row))
                .turned(up)
                .anchored(Anchor::Middle),
        );
    }
    if row > 0 {
        drawing.letter(
            Text::new(middle.x, min.y + 1.0, 1.8, neighbour(column, row - 1))
                .anchored(Anchor::Middle),
        );
    }
    if row + 1 < rows {
        drawing.letter(
            Text::new(middle.x, max.y - 2.8, 1.8, neighbour(column, row + 1))
                .anchored(Anchor::Middle),
        );
    }
    drawing
}

/// Columns count in letters from the left, rows in numbers from below.
fn name(column: usize, row: usize) -> String {
    let letter = u32::try_from(column)
        .ok()
        .and_then(|column| char::from_u32(u32::from('A') + column % 26))
        .unwrap_or('A');
    let round = match column / 26 {
        0 => String::new(),
        again => again.to_string(),
    };
    format!("{letter}{round}{}", row + 1)
}
