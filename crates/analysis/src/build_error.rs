//! How exactly a build's points are made, in the words of the tuning kernel.

use trammel_build::{Axis, AxleName, Build, Coordinate, PointName};
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
        axis: match coordinate.axis {
            trammel_tuning::Axis::X => Axis::X,
            trammel_tuning::Axis::Y => Axis::Y,
            trammel_tuning::Axis::Z => Axis::Z,
        },
    }
}

/// How well each coordinate of an axle's corner is built: normally spread, as the build says. The wheel centre, a measure of the hub rather than
/// of the shop, only where it is named.
#[must_use]
pub fn tolerances(build: &Build, axle: AxleName) -> Vec<Tolerance> {
    trammel_tuning::Coordinate::all()
        .filter_map(|coordinate| {
            let at = coordinate_name(axle, coordinate);
            let counts = at.point != PointName::WheelCentre || build.tolerances.names(at);
            counts.then(|| Tolerance {
                coordinate,
                spread: Spread::Normal(build.deviation_mm(at)),
            })
        })
        .collect()
}
