//! Exact conversions from the inch system. The kernel itself works in mm, N and MPa.

/// One inch in mm, exact (international yard and pound agreement of 1959; ISO 80000-3).
pub const INCH: f64 = 25.4;

/// One pound-force in N, exact: 0.45359237 kg x 9.80665 m/s^2 (agreement of 1959; third CGPM, 1901).
pub const POUND_FORCE: f64 = 0.453_592_37 * 9.806_65;

/// One ksi (1000 pounds-force per square inch) in MPa, from the two above: 6.894757...
pub const KSI: f64 = 1000.0 * POUND_FORCE / (INCH * INCH);

#[cfg(test)]
mod tests {
    use super::*;

    /// NIST SP 811 appendix B.8 prints 4.448222 N per lbf and 6.894757 MPa per ksi.
    #[test]
    fn agrees_with_the_printed_conversion_factors() {
        assert!((POUND_FORCE - 4.448_222).abs() < 5e-7);
        assert!((KSI - 6.894_757).abs() < 5e-7);
    }
}
