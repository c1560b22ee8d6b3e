//! What may be moved.

use trammel_geometry::{Corner, Vector};

use crate::Hardpoint;

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
