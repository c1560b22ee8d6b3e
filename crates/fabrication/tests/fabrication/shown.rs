use approx::assert_relative_eq;
use trammel_fabrication::shown::{LengthStyle, ShopUnit};

const BOTH: LengthStyle = LengthStyle {
    both: true,
    ..LengthStyle::INCH
};

#[test]
fn lengths_as_printed() {
    for (style, mm, text) in [
        (LengthStyle::INCH, 38.1, "1 1/2 (1.500)"),
        (LengthStyle::INCH, 15.875, "5/8 (0.625)"),
        (LengthStyle::INCH, 38.9, "1 17/32 (1.531)"),
        (LengthStyle::INCH, 38.4, "1 1/2+ (1.512)"),
        (LengthStyle::INCH, 50.79, "2 (2.000)"),
        (LengthStyle::INCH, 50.7, "2- (1.996)"),
        (LengthStyle::INCH, -19.05, "-3/4 (-0.750)"),
        (LengthStyle::INCH, 0.0, "0 (0.000)"),
        (BOTH, 38.1, "1 1/2 (1.500) [38.1 mm]"),
        (LengthStyle::MILLIMETRE, 38.1, "38.1"),
        (LengthStyle::MILLIMETRE, -0.01, "0.0"),
        (LengthStyle::MILLIMETRE, f64::NAN, "-"),
    ] {
        assert_eq!(style.text(mm), text, "{mm}");
    }
}

#[test]
fn rounding_to_the_shops_step() {
    assert_relative_eq!(LengthStyle::INCH.rounded(38.4), 38.1, epsilon = 1e-9);
    assert_relative_eq!(LengthStyle::MILLIMETRE.rounded(38.3), 38.5, epsilon = 1e-9);
    let tenths = LengthStyle {
        unit: ShopUnit::Millimetre { tenths: 1 },
        both: false,
    };
    assert_relative_eq!(tenths.rounded(38.34), 38.3, epsilon = 1e-9);
}
