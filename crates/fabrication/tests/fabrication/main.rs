//! Shop geometry against closed forms, handbooks and parts known by hand.

mod bends;
mod coping;
mod cutting;
mod handbook;
mod plane;
mod rods;
mod shown;
mod tabs;
