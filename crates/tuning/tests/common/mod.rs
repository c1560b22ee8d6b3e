//! Corners that the tests share.
#![allow(dead_code, unused_imports, reason = "each test file uses its part")]

pub(crate) mod reference;

pub(crate) use trammel_specimens::*;
