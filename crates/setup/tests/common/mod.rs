//! Karts that the tests share.
#![allow(dead_code, reason = "each test file uses its part")]

pub(crate) mod kart;
