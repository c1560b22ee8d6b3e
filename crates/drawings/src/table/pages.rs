//! Tables as pages.

use trammel_fabrication::plane::Point;

use super::{Column, Table};
use crate::metrics::Metrics;
use crate::model::{Anchor, Drawing, Line, Text};
use crate::sheet::{Content, Page, Paper, Placed, TitleBlock, form, lay_out as lay_out_sheet};

/// Heights of capitals, of a line of a row, and of what goes around it, mm.
const BODY: f64 = 2.0;
const HEAD: f64 = 2.0;
const TITLE: f64 = 3.0;
const LINE: f64 = 3.4;
const AROUND: f64 = 2.0;
/// What rounding may take off a width, so that an entry does not break in the column made for it, mm.
const HAIR: f64 = 0.01;
/// From a column's edge to its lettering, mm.
const INSET: f64 = 1.2;

/// Tables below each other on as many sheets as it takes; long entries wrap, heads are repeated on each sheet. Caution block and sign-off boxes are those of `around`.
#[must_use]
pub fn lay_out(
    paper: Paper,
    block: &TitleBlock,
    tables: &[Table],
    around: &Content,
    metrics: &Metrics,
) -> Vec<Page> {
    let room = form(paper).room;
    let mut drawings = vec![Drawing::new(block.title.clone())];
    let mut left = room.height;
    for table in tables {
        let widths = widths(table, room.width, metrics);
        let mut open = false;
        for row in table.rows() {
            let cells = wrap(row, &widths, metrics);
            let tall = height(&cells);
            let heads = if open {
                0.0
            } else {
                head_height(table, &widths, metrics)
            };
            if left < tall + heads && left < room.height {
                drawings.push(Drawing::new(block.title.clone()));
                left = room.height;
                open = false;
            }
            let Some(drawing) = drawings.last_mut() else {
                break;
            };
            if !open {
                left = draw_head(drawing, table, &widths, [room.width, left], metrics);
                open = true;
            }
            left = draw_row(
                drawing,
                table.columns(),
                &cells,
                &widths,
                left,
                Line::NARROW,
                false,
            );
        }
        left -= LINE;
    }
    let sheets = drawings.len();
    let page = |(index, drawing): (usize, Drawing)| {
        sheet(paper, block, drawing, around, [index, sheets], metrics)
    };
    drawings.into_iter().enumerate().filter_map(page).collect()
}

/// A framed sheet with the table's drawing in its room.
fn sheet(
    paper: Paper,
    block: &TitleBlock,
    drawing: Drawing,
    around: &Content,
    [index, sheets]: [usize; 2],
    metrics: &Metrics,
) -> Option<Page> {
    let content = Content {
        caution: around.caution.clone(),
        sign_offs: around.sign_offs.clone(),
        sheet: Some([index + 1, sheets]),
        ..Content::default()
    };
    let mut block = block.clone();
    if sheets > 1 {
        block.title = format!("{} ({} of {sheets})", block.title, index + 1);
    }
    let mut page = lay_out_sheet(paper, &block, &content, metrics).pop()?;
    let room = form(paper).room;
    page.placed.push(Placed {
        drawing,
        shift: room.corner.coords,
        window: None,
    });
    Some(page)
}

/// How strongly a wide column's room follows its longest entry, tried in turn: in proportion first, then kinder to the shorter ones.
const SHARES: [f64; 4] = [1.0, 0.8, 0.65, 0.5];

/// Widths of the columns: what their longest entry wants; where that is too much, narrow columns keep theirs and the wide ones share the rest so that the table is lowest.
fn widths(table: &Table, room: f64, metrics: &Metrics) -> Vec<f64> {
    let wanted = |index: usize, column: &Column| {
        let entries = table
            .rows()
            .iter()
            .filter_map(|row| row.get(index))
            .map(|entry| metrics.width(entry, BODY, false));
        let head = (metrics.width(&column.head, HEAD, true) + 2.0 * INSET) / BOLD_ROOM;
        entries.fold(head, |widest, entry| widest.max(entry + 2.0 * INSET)) + HAIR
    };
    let wanted: Vec<f64> = table
        .columns()
        .iter()
        .enumerate()
        .map(|(index, column)| wanted(index, column))
        .collect();
    let total: f64 = wanted.iter().sum();
    if total <= room {
        return wanted;
    }
    let tall = |widths: &[f64]| -> f64 {
        let rows = table.rows().iter();
        rows.map(|row| height(&wrap(row, widths, metrics))).sum()
    };
    let shared = SHARES.map(|power| share(&wanted, room, power));
    let mut lowest = (f64::INFINITY, wanted);
    for widths in shared {
        let tall = tall(&widths);
        if tall < lowest.0 - 1e-9 {
            lowest = (tall, widths);
        }
    }
    lowest.1
}

fn share(wanted: &[f64], room: f64, power: f64) -> Vec<f64> {
    let fair = room / wanted.len().max(1) as f64;
    let narrow: f64 = wanted.iter().filter(|&&width| width <= fair).sum();
    let wide = wanted.iter().filter(|&&width| width > fair);
    let weights: f64 = wide.map(|width| width.powf(power)).sum();
    let shrink = |&width: &f64| {
        if width > fair {
            (width.powf(power) * (room - narrow) / weights).min(width)
        } else {
            width
        }
    };
    wanted.iter().map(shrink).collect()
}

fn wrap(row: &[String], widths: &[f64], metrics: &Metrics) -> Vec<Vec<String>> {
    row.iter()
        .zip(widths)
        .map(|(entry, width)| metrics.wrapped(entry, BODY, width - 2.0 * INSET))
        .collect()
}

fn height(cells: &[Vec<String>]) -> f64 {
    let lines = cells.iter().map(Vec::len).max().unwrap_or(1);
    lines as f64 * LINE + AROUND
}

fn heads(table: &Table, widths: &[f64], metrics: &Metrics) -> Vec<Vec<String>> {
    let heads: Vec<String> = table
        .columns()
        .iter()
        .map(|column| column.head.clone())
        .collect();
    wrap(
        &heads,
        &widths
            .iter()
            .map(|width| width * BOLD_ROOM)
            .collect::<Vec<_>>(),
        metrics,
    )
}

/// Bold letters are wider than plain ones by up to this share.
const BOLD_ROOM: f64 = 0.9;

fn head_height(table: &Table, widths: &[f64], metrics: &Metrics) -> f64 {
    TITLE * 2.0 + height(&heads(table, widths, metrics))
}

fn draw_head(
    drawing: &mut Drawing,
    table: &Table,
    widths: &[f64],
    [room, top]: [f64; 2],
    metrics: &Metrics,
) -> f64 {
    let height = metrics.fitting(&table.title, TITLE, room, true);
    drawing.letter(Text::new(0.0, top - TITLE, height, table.title.clone()).bold());
    let cells = heads(table, widths, metrics);
    draw_row(
        drawing,
        table.columns(),
        &cells,
        widths,
        top - TITLE * 2.0,
        Line::WIDE,
        true,
    )
}

/// Draws a row whose top is here, with a line under it; gives where the next begins.
fn draw_row(
    drawing: &mut Drawing,
    columns: &[Column],
    cells: &[Vec<String>],
    widths: &[f64],
    top: f64,
    under: Line,
    bold: bool,
) -> f64 {
    let mut x = 0.0;
    for ((lines, width), column) in cells.iter().zip(widths).zip(columns) {
        for (index, line) in lines.iter().enumerate() {
            let y = top - AROUND / 2.0 - BODY - index as f64 * LINE;
            let text = match column.figures {
                true => Text::new(x + width - INSET, y, BODY, line.clone()).anchored(Anchor::End),
                false => Text::new(x + INSET, y, BODY, line.clone()),
            };
            drawing.letter(if bold { text.bold() } else { text });
        }
        x += width;
    }
    let bottom = top - height(cells);
    drawing.stroke(under, Point::new(0.0, bottom), Point::new(x, bottom));
    bottom
}
