//! The plate that the rack is bolted to.

/// A plate on the frame with four holes for the rack's feet.
#[derive(Clone, Debug, PartialEq)]
pub struct RackMount {
    /// Along the rack.
    pub width: f64,
    /// Across it.
    pub height: f64,
    /// Its thickness.
    pub thickness: f64,
    /// From hole to hole along the rack.
    pub along: f64,
    /// From hole to hole across it.
    pub across: f64,
    /// Thread of the bolts.
    pub thread: Option<String>,
}
