//! What build error does to the toe curve: many builds, each a little off everywhere.

mod band;
mod draw;
mod normal;
mod ranking;
mod request;
mod run;

pub use band::{Band, Quantiles, RackBand};
pub use normal::quantile as normal_quantile;
pub use ranking::Share;
pub use request::{ScatterFault, ScatterRequest, Spread, Tolerance, default_tolerances};
pub use run::{Scatter, scatter};
