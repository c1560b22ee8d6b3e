//! Hardpoints as a table, for spreadsheets and the clipboard: `point,x (in),y (in),z (in)` and a row for each point.

mod fault;
mod names;
mod read;

use trammel_build::{AxleName, Build, PointName, PointRef, Side, Triple};

pub use fault::{TableFault, TableFaultKind};
pub use read::read_points;

/// What stands between the cells of a table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Separator {
    /// A comma, as in a file.
    Comma,
    /// A tab, as on the clipboard of spreadsheets.
    Tab,
}

/// The points that a build gives, as a table in its unit: the left side of both axles, and right-hand points with places of their own. Numbers with the
/// fewest digits that read back the same.
#[must_use]
pub fn write_points(build: &Build, separator: Separator) -> String {
    let mark = match separator {
        Separator::Comma => ",",
        Separator::Tab => "\t",
    };
    let unit = build.unit.sign();
    let heading = ["x", "y", "z"].map(|axis| format!("{axis} ({unit})"));
    let mut table = format!("point{mark}{}\n", heading.join(mark));
    for (at, triple) in points(build) {
        // Names and numbers need no quotes.
        let cells = triple.map(|v| v.to_string());
        table.push_str(&format!("{}{mark}{}\n", names::name(at), cells.join(mark)));
    }
    table
}

fn points(build: &Build) -> Vec<(PointRef, Triple)> {
    let mut points = Vec::new();
    for axle in [AxleName::Front, AxleName::Rear] {
        let Some(spec) = build.axle_spec(axle) else {
            continue;
        };
        for point in PointName::ALL {
            let left = spec.typed_point(point);
            points.extend(left.map(|t| (PointRef::left(axle, point), t)));
        }
        for (point, triple) in &spec.right {
            let at = PointRef {
                axle,
                side: Side::Right,
                point: *point,
            };
            points.push((at, *triple));
        }
    }
    points
}
