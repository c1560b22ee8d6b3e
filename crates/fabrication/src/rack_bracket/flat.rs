//! The bracket's flat parts.

use super::BracketSize;
use crate::bend::Bend;
use crate::flat_part::{BendLine, BendWay, FlatPart, Hole, Quantity};
use crate::plane::{Contour, ContourError, Point};
use crate::size::SizeError;

/// The bar before it is bent, x along it from the end of one ear.
pub(super) fn bar(size: &BracketSize, bend: Bend, name: &str) -> Result<FlatPart, SizeError> {
    let (radius, allowance) = (bend.inside_radius(), bend.allowance());
    let ear = size.edge + size.stand_off - radius;
    let base = size.gap - 2.0 * radius;
    let length = 2.0 * (ear + allowance) + base;
    let mut part = plate(size, length, name)?;
    part.holes = vec![
        hole(size, size.edge, size.ear_hole, "tie-rod joint's bolt"),
        hole(size, length / 2.0, size.base_hole, "rack-end bolt"),
        hole(
            size,
            length - size.edge,
            size.ear_hole,
            "tie-rod joint's bolt",
        ),
    ];
    let middle = ear + allowance / 2.0;
    part.bends = [middle, length - middle]
        .map(|x| BendLine {
            from: Point::new(x, 0.0),
            to: Point::new(x, size.width),
            bend,
            way: BendWay::Up,
        })
        .to_vec();
    part.notes = vec![
        "Bend first, then open the ears' holes together on one bolt, so that they line up.".to_owned(),
        "Bend lines are the middle of the bend. Bend a trial strip and correct the lengths by what it shows.".to_owned(),
    ];
    Ok(part)
}

/// Base and ears to be welded.
pub(super) fn plates(size: &BracketSize, name: &str) -> Result<Vec<FlatPart>, SizeError> {
    let mut base = plate(size, size.gap, &format!("{name}, base"))?;
    base.holes = vec![Hole {
        pulled_through: true,
        ..hole(size, size.gap / 2.0, size.base_hole, "rack-end bolt")
    }];
    let ear_length = size.edge + size.stand_off + size.thickness;
    let mut ear = plate(size, ear_length, &format!("{name}, ear"))?;
    ear.quantity = Quantity {
        as_drawn: 2,
        mirrored: 0,
    };
    ear.holes = vec![hole(size, size.edge, size.ear_hole, "tie-rod joint's bolt")];
    for part in [&mut base, &mut ear] {
        part.notes = vec!["Weld with a spacer bolted between the ears; the base's outside face is flush with the ears' ends.".to_owned()];
    }
    base.notes.push("The bolt pulls square to the base, between its two welds: its hole is not held against an edge distance.".to_owned());
    Ok(vec![base, ear])
}

fn plate(size: &BracketSize, length: f64, name: &str) -> Result<FlatPart, ContourError> {
    let outline = Contour::rectangle(Point::origin(), Point::new(length, size.width), 0.0)?;
    Ok(FlatPart::plain(name, outline, size.thickness))
}

fn hole(size: &BracketSize, x: f64, diameter: f64, purpose: &str) -> Hole {
    Hole {
        centre: Point::new(x, size.width / 2.0),
        diameter,
        purpose: purpose.to_owned(),
        pulled_through: false,
    }
}
