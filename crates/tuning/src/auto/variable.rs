//! What may be moved.

use trammel_geometry::{Corner, Vector};

use crate::{Axis, Coordinate, Hardpoint};

/// One number that the search may choose: how far some hardpoints move together.
#[derive(Clone, Debug, PartialEq)]
pub struct Variable {
    /// Hardpoints, and what each moves by for one mm.
    pub moves: Vec<(Hardpoint, Vector)>,
    /// Least and most, mm from where they are now.
    pub low: f64,
    /// See `low`.
    pub high: f64,
    /// The shop's step, mm. For a single coordinate its value in the vehicle is rounded to whole steps, otherwise the
    /// move is.
    pub step: Option<f64>,
}

impl Variable {
    /// A single coordinate, between `low` and `high` mm from where it is now.
    #[must_use]
    pub fn coordinate(coordinate: Coordinate, low: f64, high: f64) -> Self {
        let along = match coordinate.axis {
            Axis::X => Vector::x(),
            Axis::Y => Vector::y(),
            Axis::Z => Vector::z(),
        };
        Self::together(&[coordinate.point], along, low, high)
    }

    /// Several hardpoints along one direction.
    #[must_use]
    pub fn together(points: &[Hardpoint], along: Vector, low: f64, high: f64) -> Self {
        Self {
            moves: points.iter().map(|&p| (p, along)).collect(),
            low,
            high,
            step: None,
        }
    }

    /// The rack up and down with its joints.
    #[must_use]
    pub fn rack_height(low: f64, high: f64) -> Self {
        Self::together(&[Hardpoint::TieRodInner], Vector::z(), low, high)
    }

    /// The rack wider or narrower, half of it on this side.
    #[must_use]
    pub fn rack_width(low: f64, high: f64) -> Self {
        Self::together(&[Hardpoint::TieRodInner], Vector::y(), low, high)
    }

    /// The outer tie-rod joint in and out.
    #[must_use]
    pub fn joint_width(low: f64, high: f64) -> Self {
        Self::together(&[Hardpoint::TieRodOuter], Vector::y(), low, high)
    }

    /// Both pivots of the upper arm up and down.
    #[must_use]
    pub fn upper_pivots_height(low: f64, high: f64) -> Self {
        let pivots = [Hardpoint::UpperFrontPivot, Hardpoint::UpperRearPivot];
        Self::together(&pivots, Vector::z(), low, high)
    }

    /// Both pivots of the lower arm up and down.
    #[must_use]
    pub fn lower_pivots_height(low: f64, high: f64) -> Self {
        let pivots = [Hardpoint::LowerFrontPivot, Hardpoint::LowerRearPivot];
        Self::together(&pivots, Vector::z(), low, high)
    }

    /// With a shop's step.
    #[must_use]
    pub fn in_steps(self, step: f64) -> Self {
        Self {
            step: Some(step),
            ..self
        }
    }

    /// Where nought of this variable stands against whole steps, mm.
    pub(crate) fn origin(&self, corner: &Corner) -> f64 {
        match self.moves.as_slice() {
            [(point, along)] => along.dot(&point.of(&mut corner.clone()).coords),
            _ => 0.0,
        }
    }
}

/// The corner with every variable moved by its value, mm.
pub(crate) fn moved(corner: &Corner, variables: &[Variable], values: &[f64]) -> Corner {
    let mut moved = *corner;
    for (v, &by) in variables.iter().zip(values) {
        for (point, along) in &v.moves {
            *point.of(&mut moved) += along * by;
        }
    }
    moved
}
