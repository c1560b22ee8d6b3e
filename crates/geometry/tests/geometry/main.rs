//! Checks of the kernel from outside, one subject per file.

mod corners;

mod ackermann;
mod bad_input;
mod four_bar;
mod instant_centre;
mod laws;
mod limits;
mod mirror_and_scale;
mod parallel_arms;
mod rates;
mod roll;
mod spatial_four_bar;
mod spring;
mod textbook_corner;
mod tie_rod_angle;
mod toe_score;
mod walks;
