//! Cautions that the builder has accepted, each with the reason.

/// A caution that stays as it is, on purpose. It is shown and printed with its reason, never hidden.
#[derive(Clone, Debug, PartialEq)]
pub struct AcceptedCaution {
    /// The caution's key, such as `front/both/tie_rod_angle`.
    pub caution: String,
    /// Why it may stay.
    pub reason: String,
    /// Its figure when it was accepted, so that a later worsening can be told.
    pub figure: Option<f64>,
}
