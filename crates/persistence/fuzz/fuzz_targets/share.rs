//! What is done for a share of the inputs only: the same for an input each time.
#![allow(dead_code, reason = "no target uses all of it")]

use trammel_build::LengthUnit;

/// FNV-1a, 32 bits (from memory).
fn number(text: &str) -> u32 {
    let step = |sum: u32, byte: u8| (sum ^ u32::from(byte)).wrapping_mul(16_777_619);
    text.bytes().fold(2_166_136_261, step)
}

/// Whether an input is of the one in so many. Its upper bits count: the lowest is the unit's.
pub fn one_in(share: u32, text: &str) -> bool {
    (number(text) >> 8).is_multiple_of(share)
}

/// The unit that an input is read in, half of them in each.
pub fn unit(text: &str) -> LengthUnit {
    if number(text).is_multiple_of(2) {
        LengthUnit::Inch
    } else {
        LengthUnit::Millimetre
    }
}
