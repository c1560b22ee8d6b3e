//! The commands that work without a window.

pub(crate) mod advise;
pub(crate) mod cards;
pub(crate) mod check;
mod chosen;
pub(crate) mod demo;
mod findings_json;
mod findings_text;
pub(crate) mod forces;
pub(crate) mod lift;
pub(crate) mod map;
pub(crate) mod new;
pub(crate) mod picture;
pub(crate) mod prove;
mod remedy_json;
pub(crate) mod scatter;
pub(crate) mod sheets;
pub(crate) mod survey;
pub(crate) mod sweep;
mod table;
pub(crate) mod tune;
