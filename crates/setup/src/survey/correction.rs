//! From what the tape shows to the distance between centres.

/// Where on a round hole, bolt or ball the tape was held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Edge {
    /// At its centre.
    Centre,
    /// At the edge nearer to the other end; its diameter, mm.
    Near(f64),
    /// At the edge further from the other end; its diameter, mm.
    Far(f64),
}

/// What is between a reading and the distance between centres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Correction {
    /// The mark of the tape that was held at the start, mm: 0 for its end, 25.4 for an inch burned.
    pub started_at: f64,
    /// How it was held at the start.
    pub from: Edge,
    /// How it was read at the other end.
    pub to: Edge,
}

impl Correction {
    /// From centre to centre with the tape's own end.
    pub const NONE: Self = Self {
        started_at: 0.0,
        from: Edge::Centre,
        to: Edge::Centre,
    };

    /// The distance between centres, mm, of what the tape shows, mm.
    #[must_use]
    pub fn distance(&self, shown: f64) -> f64 {
        let part = |edge| match edge {
            Edge::Centre => 0.0,
            Edge::Near(diameter) => 0.5 * diameter,
            Edge::Far(diameter) => -0.5 * diameter,
        };
        shown - self.started_at + part(self.from) + part(self.to)
    }
}
