//! Trammel.
fn main() {}
