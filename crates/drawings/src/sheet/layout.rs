//! What goes where on a sheet.

use trammel_fabrication::plane::{Bounds, Point, Vector};

use super::{Page, Paper, Placed, Room, TitleBlock, band, bars, tiles, title_block};
use crate::ink::bounds;
use crate::metrics::Metrics;
use crate::model::{Drawing, Line, Text};

/// From the paper's edge to the frame: on the left, to file it, and elsewhere, mm (ISO 5457).
const FILING: f64 = 20.0;
const EDGE: f64 = 10.0;
/// Free room inside the frame, mm.
const INSIDE: f64 = 4.0;
/// Height of the notes' capitals, from line to line, and the width of their column, mm.
const NOTE: f64 = 2.2;
const LEADING: f64 = 3.8;
const COLUMN: f64 = 80.0;

/// What a sheet shows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Content {
    /// The drawing, at full size, anywhere in its plane.
    pub drawing: Drawing,
    /// Notes, each a paragraph.
    pub notes: Vec<String>,
    /// The caution block.
    pub caution: Vec<String>,
    /// Names of the sign-off boxes.
    pub sign_offs: Vec<String>,
    /// Which sheet of how many it is, where it is laid out alone as one of several.
    pub sheet: Option<[usize; 2]>,
}

/// The pages of one drawing: one if it goes on the paper beside its notes, else the notes on one and tiles on others.
#[must_use]
pub fn lay_out(
    paper: Paper,
    block: &TitleBlock,
    content: &Content,
    metrics: &Metrics,
) -> Vec<Page> {
    let form = form(paper);
    let size = bounds(&content.drawing, metrics);
    let bodies = bodies(&form.room, &size, content, metrics);
    let sheets = bodies.len();
    let page = |(index, body): (usize, Vec<Placed>)| {
        let mut placed = vec![Placed::whole(frame(
            &form,
            block,
            content,
            content.sheet.unwrap_or([index + 1, sheets]),
            metrics,
        ))];
        placed.extend(body);
        Page { paper, placed }
    };
    bodies.into_iter().enumerate().map(page).collect()
}

/// What each page shows inside its frame.
fn bodies(room: &Room, size: &Bounds, content: &Content, metrics: &Metrics) -> Vec<Vec<Placed>> {
    let beside = Room {
        width: room.width - COLUMN - INSIDE,
        ..*room
    };
    let tall = |width: f64| notes_height(&content.notes, width, metrics);
    let fits = |room: &Room| size.width() <= room.width && size.height() <= room.height;
    let over = tall(room.width);
    let below = Room {
        height: room.height - over,
        ..*room
    };
    if fits(&below) {
        return vec![vec![
            middle(&content.drawing, size, &below),
            notes(&content.notes, room, room.width, metrics),
        ]];
    }
    if fits(&beside) && tall(COLUMN) <= room.height {
        let column = Room {
            corner: room.corner + Vector::new(room.width - COLUMN, 0.0),
            ..*room
        };
        return vec![vec![
            middle(&content.drawing, size, &beside),
            notes(&content.notes, &column, COLUMN, metrics),
        ]];
    }
    let mut pages = Vec::new();
    if !content.notes.is_empty() {
        pages.push(vec![notes(&content.notes, room, room.width, metrics)]);
    }
    if fits(room) {
        pages.push(vec![middle(&content.drawing, size, room)]);
        return pages;
    }
    // The edge of a tile must not touch what is drawn.
    let size = &size.grown(tiles::MARGIN);
    let count @ [columns, rows] = tiles::count(size, room);
    for row in (0..rows).rev() {
        pages.extend(
            (0..columns)
                .map(|column| tiles::tile(&content.drawing, size, room, count, [column, row])),
        );
    }
    pages
}

/// The drawing in the middle of its room.
fn middle(drawing: &Drawing, size: &Bounds, room: &Room) -> Placed {
    let free = Vector::new(room.width - size.width(), room.height - size.height()) / 2.0;
    let from = if size.is_empty() {
        Point::origin()
    } else {
        size.min
    };
    Placed {
        drawing: drawing.clone(),
        shift: room.corner + free - from,
        window: None,
    }
}

/// The fixed parts of a sheet of this paper.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Form {
    pub(crate) frame: Room,
    block: Point,
    band: Room,
    /// Where a drawing may lie.
    pub(crate) room: Room,
}

pub(crate) fn form(paper: Paper) -> Form {
    let [width, height] = paper.size();
    let frame = Room {
        corner: Point::new(FILING, EDGE),
        width: width - FILING - EDGE,
        height: height - 2.0 * EDGE,
    };
    let right = frame.corner.x + frame.width;
    let block = Point::new(right - title_block::WIDTH, frame.corner.y);
    let left_of_block = frame.width - title_block::WIDTH;
    let beside = left_of_block >= title_block::WIDTH;
    let band = Room {
        corner: Point::new(
            frame.corner.x,
            if beside {
                block.y
            } else {
                block.y + title_block::HEIGHT
            },
        ),
        width: if beside { left_of_block } else { frame.width },
        height: band::HEIGHT,
    };
    let foot = (band.corner.y + band::HEIGHT).max(block.y + title_block::HEIGHT);
    let strip = bars::PAIR + 3.0;
    let room = Room {
        corner: Point::new(frame.corner.x + strip + INSIDE, foot + INSIDE),
        width: frame.width - strip - 2.0 * INSIDE,
        height: frame.corner.y + frame.height - foot - 2.0 * INSIDE,
    };
    Form {
        frame,
        block,
        band,
        room,
    }
}

fn frame(
    form: &Form,
    block: &TitleBlock,
    content: &Content,
    sheet: [usize; 2],
    metrics: &Metrics,
) -> Drawing {
    let mut drawing = Drawing::new("frame");
    drawing.frame(
        Line::WIDE,
        form.frame.corner,
        [form.frame.width, form.frame.height],
    );
    title_block::draw(block, form.block, sheet, metrics, &mut drawing);
    band::draw(
        form.band.corner,
        form.band.width,
        &content.caution,
        &content.sign_offs,
        metrics,
        &mut drawing,
    );
    let foot = form.room.corner.y + 2.0;
    bars::up(
        Point::new(form.frame.corner.x + bars::PAIR, foot),
        &mut drawing,
    );
    drawing
}

fn wrapped(notes: &[String], width: f64, metrics: &Metrics) -> Vec<String> {
    notes
        .iter()
        .flat_map(|note| metrics.wrapped(note, NOTE, width))
        .collect()
}

fn notes_height(notes: &[String], width: f64, metrics: &Metrics) -> f64 {
    wrapped(notes, width, metrics).len() as f64 * LEADING
}

/// The notes at the top of a room.
fn notes(paragraphs: &[String], room: &Room, width: f64, metrics: &Metrics) -> Placed {
    let mut drawing = Drawing::new("notes");
    let mut y = room.corner.y + room.height - NOTE;
    for line in wrapped(paragraphs, width, metrics) {
        drawing.letter(Text::new(room.corner.x, y, NOTE, line));
        y -= LEADING;
    }
    Placed::whole(drawing)
}
