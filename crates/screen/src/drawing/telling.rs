//! What the drawing shows, in words for a screen reader.

use trammel_analysis::Grade;
use trammel_build::{Axis, AxleName, Side, format_length};

use super::{DrawingInput, Projection};
use crate::words;

/// Axle, views, pose, the selected point, and how many points are marked.
pub(super) fn words(input: &DrawingInput<'_>, fill: Option<Projection>) -> String {
    let unit = input.build.unit;
    let axle = match input.axle {
        AxleName::Front => "Front axle",
        AxleName::Rear => "Rear axle",
    };
    let views = fill.map_or("plan, front and left side view", |view| match view {
        Projection::Front => "front view",
        Projection::Plan => "plan",
        Projection::Side => "left side view",
    });
    let mut parts = vec![
        format!("{axle}, {views}"),
        format!("wheel travel {}", words::length(input.travel, unit)),
        format!("rack {}", words::length(input.rack, unit)),
    ];
    if let Some((at, triple)) = (input.selected).and_then(|p| Some((p, input.build.point(p)?))) {
        let places = Axis::ALL.map(|axis| {
            let value = triple.get(axis.index()).copied().unwrap_or_default();
            format!("{} {}", axis.letter(), format_length(value, unit))
        });
        let side = match at.side {
            Side::Left => "left",
            Side::Right => "right",
        };
        let name = at.point.label();
        let places = places.join(", ");
        parts.push(format!(
            "selected: {name}, {side}, at {places} {}",
            unit.sign()
        ));
    }
    let here = |grade| {
        let of = |(p, g): &&(trammel_build::PointRef, Grade)| p.axle == input.axle && *g == grade;
        input.marks.iter().filter(of).count()
    };
    for (grade, word) in [(Grade::Danger, "danger"), (Grade::Caution, "caution")] {
        match here(grade) {
            0 => {}
            1 => parts.push(format!("1 point marked {word}")),
            n => parts.push(format!("{n} points marked {word}")),
        }
    }
    parts.join("; ")
}
