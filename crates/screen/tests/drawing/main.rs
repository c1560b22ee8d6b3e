//! The drawing under hands and eyes: drags by name, gestures, and pictures.

mod bench;
mod hands;
mod pictures;
