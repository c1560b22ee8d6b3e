//! What was read of the vehicle as it stands: toe, camber, ride height, castor sweep, weights.

/// Readings of the vehicle at rest, left and right; what is left out was not read.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Statics {
    /// Toe of each wheel, rack centred, degrees, in is positive.
    pub toe_deg: [Option<f64>; 2],
    /// Toe that each wheel should have, degrees.
    pub wanted_toe_deg: Option<f64>,
    /// What a tape reads across the rears of both tyres less across their fronts, in is positive, the build's unit.
    pub tape_difference: Option<f64>,
    /// Camber of each wheel, degrees, top outboard is positive.
    pub camber_deg: [Option<f64>; 2],
    /// Length of each spring unit between its mounts as the vehicle stands, the build's unit.
    pub shock: [Option<f64>; 2],
    /// Steered each way, camber with the wheel's front outward, and inward, degrees.
    pub castor_sweep: Option<[f64; 3]>,
    /// What four scales show.
    pub weights: Option<Weights>,
}

/// Front left, front right, rear left, rear right, in the unit that the scales show.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Weights {
    /// Kilograms.
    Kilograms([f64; 4]),
    /// Pounds.
    Pounds([f64; 4]),
}

impl Statics {
    /// Every angle, degrees.
    pub(super) fn angles(&self) -> impl Iterator<Item = f64> {
        let toe = self.toe_deg.into_iter().chain([self.wanted_toe_deg]);
        let single = toe.chain(self.camber_deg).flatten();
        single.chain(self.castor_sweep.into_iter().flatten())
    }

    /// Every length.
    pub(super) fn lengths(&mut self) -> impl Iterator<Item = &mut f64> {
        self.shock
            .iter_mut()
            .chain([&mut self.tape_difference])
            .flatten()
    }
}

impl Weights {
    /// The four figures.
    #[must_use]
    pub fn figures(self) -> [f64; 4] {
        match self {
            Self::Kilograms(v) | Self::Pounds(v) => v,
        }
    }
}
