//! Outlines laid out on a stock plate, in rows.
//!
//! Each part keeps an upright rectangle of its own, so outlines never interlock. Parts lie with their longer side along the plate, tallest first; a row is as tall as its first
//! part. Plain and always the same; a cutting shop will nest tighter.

use std::f64::consts::FRAC_PI_2;

use trammel_geometry::in_order;
use trammel_strength::BadNumber;

use crate::flat_part::FlatPart;
use crate::plane::{Placement, Vector};
use crate::size::{not_negative, positive};

/// A stock plate, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StockPlate {
    /// Along.
    pub width: f64,
    /// Up.
    pub height: f64,
    /// Free edge all round.
    pub margin: f64,
    /// Between neighbouring parts.
    pub gap: f64,
}

/// One part on a plate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nested {
    /// Which of the parts given, counted from nought.
    pub part: usize,
    /// Which plate, counted from nought.
    pub plate: usize,
    /// Where it lies.
    pub placement: Placement,
}

/// All parts on plates.
#[derive(Clone, Debug, PartialEq)]
pub struct Nesting {
    /// Every single part, mirrored ones turned over.
    pub parts: Vec<Nested>,
    /// How many plates.
    pub plates: usize,
    /// Area of the parts over that of the plates, as a share.
    pub used: f64,
}

/// Why parts can't be laid out.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum NestError {
    /// A number that can't be used.
    #[error(transparent)]
    BadNumber(#[from] BadNumber),
    /// A part larger than the plate.
    #[error(
        "{name} takes {width:.1} x {height:.1} mm; the plate has {room_width:.1} x {room_height:.1} mm inside its margin; nothing was laid out"
    )]
    TooLarge {
        /// Which part.
        name: String,
        /// Its longer side, mm.
        width: f64,
        /// Its shorter side, mm.
        height: f64,
        /// Room along the plate, mm.
        room_width: f64,
        /// Room up the plate, mm.
        room_height: f64,
    },
    /// More parts than any shop cuts.
    #[error("{found} parts were asked for; expected {MOST_PARTS} at most; nothing was laid out")]
    TooMany {
        /// How many.
        found: u64,
    },
}

/// More is a slip of the keys.
const MOST_PARTS: u64 = 5_000;

/// A part to lay out, lying on its longer side.
struct Item {
    part: usize,
    mirrored: bool,
    turned: bool,
    size: [f64; 2],
}

/// Lays out every part in its quantity.
///
/// # Errors
/// A plate without room, a part larger than that room, far too many parts.
pub fn nest(parts: &[FlatPart], plate: &StockPlate) -> Result<Nesting, NestError> {
    not_negative("the plate's margin", plate.margin)?;
    not_negative("the gap between parts", plate.gap)?;
    let room = [
        positive(
            "the plate's width inside its margin",
            plate.width - 2.0 * plate.margin,
        )?,
        positive(
            "the plate's height inside its margin",
            plate.height - 2.0 * plate.margin,
        )?,
    ];
    let mut items = items(parts, room)?;
    in_order(&mut items, |item| [-item.size[1], -item.size[0]]);
    let mut rows = Rows::default();
    let nested: Vec<Nested> = items
        .iter()
        .filter_map(|item| {
            let (number, corner) = rows.place(item.size, room, plate.gap);
            let placement = placement(
                parts.get(item.part)?,
                item,
                corner + Vector::new(plate.margin, plate.margin),
            );
            Some(Nested {
                part: item.part,
                plate: number,
                placement,
            })
        })
        .collect();
    let area: f64 = nested
        .iter()
        .filter_map(|n| parts.get(n.part))
        .map(FlatPart::area)
        .sum();
    let plates = nested.last().map_or(0, |last| last.plate + 1);
    let bought: f64 = (0..plates).map(|_| plate.width * plate.height).sum();
    Ok(Nesting {
        parts: nested,
        plates,
        used: if bought > 0.0 { area / bought } else { 0.0 },
    })
}

fn items(parts: &[FlatPart], room: [f64; 2]) -> Result<Vec<Item>, NestError> {
    let found: u64 = parts
        .iter()
        .map(|part| u64::from(part.quantity.total()))
        .sum();
    if found > MOST_PARTS {
        return Err(NestError::TooMany { found });
    }
    let mut items = Vec::new();
    for (index, part) in parts.iter().enumerate() {
        let bounds = part.bounds();
        let (w, h) = (bounds.width(), bounds.height());
        let lying = [w.max(h), w.min(h)];
        let fits = |[along, up]: [f64; 2]| along <= room[0] + DUST && up <= room[1] + DUST;
        let size = [lying, [lying[1], lying[0]]]
            .into_iter()
            .find(|&size| fits(size));
        let Some(size) = size else {
            return Err(NestError::TooLarge {
                name: part.name.clone(),
                width: lying[0],
                height: lying[1],
                room_width: room[0],
                room_height: room[1],
            });
        };
        let quantity = part.quantity;
        for (count, mirrored) in [(quantity.as_drawn, false), (quantity.mirrored, true)] {
            items.extend((0..count).map(|_| Item {
                part: index,
                mirrored,
                turned: size[0] != w,
                size,
            }));
        }
    }
    Ok(items)
}

/// Rounding of sums of lengths, mm.
const DUST: f64 = 1e-9;

/// Where the next part goes.
#[derive(Default)]
struct Rows {
    plate: usize,
    at: [f64; 2],
    row_height: f64,
}

impl Rows {
    /// The plate and the lower left corner for a part of this size.
    fn place(&mut self, [along, up]: [f64; 2], room: [f64; 2], gap: f64) -> (usize, Vector) {
        if self.at[0] > 0.0 && self.at[0] + along > room[0] + DUST {
            self.at = [0.0, self.at[1] + self.row_height + gap];
            self.row_height = 0.0;
        }
        if self.at[1] > 0.0 && self.at[1] + up > room[1] + DUST {
            *self = Self {
                plate: self.plate + 1,
                ..Self::default()
            };
        }
        let corner = Vector::new(self.at[0], self.at[1]);
        self.at[0] += along + gap;
        self.row_height = self.row_height.max(up);
        (self.plate, corner)
    }
}

/// The placement that brings the part's lower left corner there.
fn placement(part: &FlatPart, item: &Item, corner: Vector) -> Placement {
    let mut placement = Placement {
        mirrored: item.mirrored,
        turn: if item.turned { FRAC_PI_2 } else { 0.0 },
        shift: Vector::zeros(),
    };
    let bounds = part.outline.placed(&placement).bounds();
    placement.shift = corner - bounds.min.coords;
    placement
}
