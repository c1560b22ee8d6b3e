//! `trammel map`: the score of every place of a tie-rod joint.

mod picture;
mod ramp;
mod table;

use std::path::Path;

use trammel_geometry::Point;
use trammel_tuning::{MapFrame, Plane, Scoring, TieRodJoint, ToeMap};

use super::chosen::Chosen;
use crate::arguments::tune::MapArguments;
use crate::fault::Fault;
use crate::files;
use crate::terminal;

/// Mapped rectangle when nothing is said: width and height, in and mm.
const WIDTH: [f64; 2] = [4.0, 100.0];
const HEIGHT: [f64; 2] = [3.0, 75.0];

/// What is mapped.
struct Asked {
    chosen: Chosen,
    joint: TieRodJoint,
    plane: Plane,
    scoring: Scoring,
    /// mm.
    rack: f64,
    /// Width and height, mm.
    extent: [f64; 2],
}

pub(crate) fn run(arguments: &MapArguments) -> Result<(), Fault> {
    let chosen = Chosen::of(&arguments.corner)?;
    for path in [&arguments.csv, &arguments.picture].into_iter().flatten() {
        if files::same_file(path, &arguments.corner.build) {
            return Err(Fault::OverBuild { path: path.clone() });
        }
    }
    let asked = Asked {
        joint: arguments.point.into(),
        plane: arguments.plane.into(),
        scoring: arguments.score.into(),
        rack: chosen.length("--rack", &arguments.rack)?,
        extent: [
            chosen.length_or("--width", arguments.width.as_deref(), WIDTH)?,
            chosen.length_or("--height", arguments.height.as_deref(), HEIGHT)?,
        ],
        chosen,
    };
    // Both are made before either is written.
    let table = match &arguments.csv {
        Some(_) => Some(table::csv(&asked, arguments.cells)?),
        None => None,
    };
    let png = match &arguments.picture {
        Some(_) => Some(picture::png(&asked, arguments.size)?),
        None => None,
    };
    if let (Some(path), Some(png)) = (&arguments.picture, png) {
        files::write(path, &png)?;
    }
    match (&arguments.csv, table) {
        (Some(path), Some(table)) if path == Path::new("-") => terminal::print_bytes(&table),
        (Some(path), Some(table)) => files::write(path, &table),
        _ => Ok(()),
    }
}

impl Asked {
    /// Where the joint is now, in the corner's own frame.
    fn place(&self) -> Point {
        self.joint.place(self.chosen.corner())
    }

    /// A complete map of so many columns and rows about the joint.
    fn map(&self, cells: [usize; 2]) -> Result<ToeMap, Fault> {
        let frame = MapFrame::new(self.plane, self.place(), self.extent, cells)?;
        let stations = self.chosen.stations(self.rack)?;
        let mut map = ToeMap::new(self.chosen.corner(), self.joint, frame, &stations)?;
        map.complete();
        match map.lowest(self.scoring) {
            Some(_) => Ok(map),
            None => Err(Fault::NoPlace),
        }
    }
}
