//! What may move, and within what limits and steps.

use trammel_build::{AxleName, Build, Coordinate, PointName};
use trammel_tuning::{self as tuning, Axis, Dimension, Hardpoint, Variable};

/// How far anything may move either way at first, mm.
const WITHIN: f64 = 50.8;

/// Part of the car that a dimension belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Part {
    /// Rack and tie-rod joints.
    TieRod,
    /// The arms' pivots on the frame, two at a time.
    Pivots,
    /// Each pivot by itself.
    SinglePivots,
    /// The ball joints on the upright.
    BallJoints,
}

impl Part {
    /// In the order of the list.
    pub const ALL: [Self; 4] = [
        Self::TieRod,
        Self::Pivots,
        Self::SinglePivots,
        Self::BallJoints,
    ];

    /// Its name on the screen.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::TieRod => "Rack and tie rod",
            Self::Pivots => "Arm pivots",
            Self::SinglePivots => "Single pivots",
            Self::BallJoints => "Ball joints",
        }
    }

    fn dimensions(self) -> Vec<Dimension> {
        use Dimension as D;
        let one = |point| [Axis::Z, Axis::Y, Axis::X].map(|axis| D::One(of(point, axis)));
        match self {
            Self::TieRod => [D::RackHeight, D::RackWidth, D::RackSetBack]
                .into_iter()
                .chain(one(Hardpoint::TieRodOuter))
                .collect(),
            Self::Pivots => vec![
                D::UpperPivotsHeight,
                D::UpperPivotsWidth,
                D::LowerPivotsHeight,
                D::LowerPivotsWidth,
            ],
            Self::SinglePivots => [
                Hardpoint::UpperFrontPivot,
                Hardpoint::UpperRearPivot,
                Hardpoint::LowerFrontPivot,
                Hardpoint::LowerRearPivot,
            ]
            .into_iter()
            .flat_map(one)
            .collect(),
            Self::BallJoints => one(Hardpoint::UpperBallJoint)
                .into_iter()
                .chain(one(Hardpoint::LowerBallJoint))
                .collect(),
        }
    }
}

fn of(point: Hardpoint, axis: Axis) -> tuning::Coordinate {
    tuning::Coordinate { point, axis }
}

/// A dimension with whether and how far it may move.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// Part it is listed under.
    pub part: Part,
    /// What it is.
    pub dimension: Dimension,
    /// Whether it may move.
    pub on: bool,
    /// Least and most from where it is now, mm: outboard, up and forward are positive.
    pub range: [f64; 2],
    /// Step of its own, mm; without it the shop's.
    pub step: Option<f64>,
}

impl Row {
    pub(super) fn variable(&self, shop_step: f64) -> Variable {
        let [low, high] = self.range;
        let step = self.step.unwrap_or(shop_step);
        self.dimension.variable(low, high).in_steps(step)
    }
}

/// All rows, rack height and width ticked.
pub(super) fn all() -> Vec<Row> {
    let row = |part, dimension| Row {
        part,
        dimension,
        on: matches!(dimension, Dimension::RackHeight | Dimension::RackWidth),
        range: [-WITHIN, WITHIN],
        step: None,
    };
    Part::ALL
        .into_iter()
        .flat_map(|part| part.dimensions().into_iter().map(move |d| row(part, d)))
        .collect()
}

/// A dimension's name on the screen.
#[must_use]
pub fn label(dimension: Dimension) -> String {
    let fixed = match dimension {
        Dimension::RackHeight => "Rack height",
        Dimension::RackWidth => "Rack width, each side",
        Dimension::RackSetBack => "Rack, fore and aft",
        Dimension::UpperPivotsHeight => "Upper pivots, height",
        Dimension::UpperPivotsWidth => "Upper pivots, in and out",
        Dimension::LowerPivotsHeight => "Lower pivots, height",
        Dimension::LowerPivotsWidth => "Lower pivots, in and out",
        Dimension::One(c) => {
            let point = match c.point {
                Hardpoint::TieRodInner => "Inner joint",
                Hardpoint::TieRodOuter => "Outer joint",
                Hardpoint::UpperFrontPivot => "Upper front pivot",
                Hardpoint::UpperRearPivot => "Upper rear pivot",
                Hardpoint::LowerFrontPivot => "Lower front pivot",
                Hardpoint::LowerRearPivot => "Lower rear pivot",
                Hardpoint::UpperBallJoint => "Upper ball joint",
                Hardpoint::LowerBallJoint => "Lower ball joint",
                Hardpoint::WheelCentre => "Wheel centre",
            };
            let way = match c.axis {
                Axis::X => "fore and aft",
                Axis::Y => "in and out",
                Axis::Z => "height",
            };
            return format!("{point}, {way}");
        }
    };
    fixed.to_owned()
}

/// Whether a lock of the build holds any of it.
#[must_use]
pub fn locked(dimension: Dimension, build: &Build, axle: AxleName) -> bool {
    let held = |c: tuning::Coordinate| {
        let point = PointName::from_path(c.point.name());
        point.is_some_and(|point| {
            let axis = c.axis;
            build.locked.contains(&Coordinate { axle, point, axis })
        })
    };
    dimension.coordinates().into_iter().any(held)
}
