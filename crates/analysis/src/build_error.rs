//! How exactly a build's points are made, in the words of the tuning kernel.

use trammel_build::{Axis, AxleName, Build, Coordinate, PointName, PointRef, Side};
use trammel_tuning::{Hardpoint, Spread, Tolerance};

/// The build's name of a hardpoint of the tuning kernel.
#[must_use]
pub fn point_name(point: Hardpoint) -> PointName {
    match point {
        Hardpoint::UpperFrontPivot => PointName::UpperFrontPivot,
        Hardpoint::UpperRearPivot => PointName::UpperRearPivot,
        Hardpoint::UpperBallJoint => PointName::UpperBallJoint,
        Hardpoint::LowerFrontPivot => PointName::LowerFrontPivot,
        Hardpoint::LowerRearPivot => PointName::LowerRearPivot,
        Hardpoint::LowerBallJoint => PointName::LowerBallJoint,
        Hardpoint::TieRodInner => PointName::TieRodInner,
        Hardpoint::TieRodOuter => PointName::TieRodOuter,
        Hardpoint::WheelCentre => PointName::WheelCentre,
    }
}

/// The build's name of a coordinate of the tuning kernel.
#[must_use]
pub fn coordinate_name(axle: AxleName, coordinate: trammel_tuning::Coordinate) -> Coordinate {
    Coordinate {
        axle,
        point: point_name(coordinate.point),
        axis: coordinate.axis,
    }
}

/// How well each coordinate of a corner is known: as it was surveyed, else as the build says it is made; normally spread. The wheel centre, a measure of
/// the hub rather than of the shop, only where it is named or surveyed.
#[must_use]
pub fn tolerances(build: &Build, axle: AxleName, side: Side) -> Vec<Tolerance> {
    trammel_tuning::Coordinate::all()
        .filter_map(|coordinate| {
            let at = coordinate_name(axle, coordinate);
            let surveyed = surveyed(build, at, side);
            let counts = at.point != PointName::WheelCentre
                || surveyed.is_some()
                || build.tolerances.names(at);
            counts.then(|| Tolerance {
                coordinate,
                spread: Spread::Normal(surveyed.unwrap_or_else(|| build.deviation_mm(at))),
            })
        })
        .collect()
}

/// The standard deviation of a surveyed coordinate, mm.
fn surveyed(build: &Build, at: Coordinate, side: Side) -> Option<f64> {
    let point = PointRef {
        axle: at.axle,
        side,
        point: at.point,
    };
    let [x, y, z] = build.set_up.surveyed.get(&point)?.variances;
    let variance = match at.axis {
        Axis::X => x,
        Axis::Y => y,
        Axis::Z => z,
    };
    Some(variance.max(0.0).sqrt() * build.unit.mm())
}
