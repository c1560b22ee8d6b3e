//! A move of a joint in words: `down 1/8 in, in 1/16 in`.

use trammel_build::LengthUnit;
use trammel_geometry::Vector;

use crate::words;

/// Moves shorter than this are none on a tape, mm.
const LEAST: f64 = 25.4 / 64.0;

/// A move of a left corner's joint; `None` where nothing is left that a tape shows.
pub(crate) fn in_words(by: Vector, unit: LengthUnit) -> Option<String> {
    let part = |mm: f64, plus: &str, minus: &str| {
        let word = if mm > 0.0 { plus } else { minus };
        (mm.abs() > LEAST).then(|| format!("{word} {}", words::length(mm.abs(), unit)))
    };
    let parts: Vec<String> = [
        part(by.z, "up", "down"),
        part(by.y, "out", "in"),
        part(by.x, "forward", "back"),
    ]
    .into_iter()
    .flatten()
    .collect();
    (!parts.is_empty()).then(|| parts.join(", "))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn up_out_and_forward_are_positive_on_the_left() {
        let by = Vector::new(0.0, -25.4 / 16.0, -25.4 / 8.0);
        assert_eq!(
            in_words(by, LengthUnit::Inch).as_deref(),
            Some("down 1/8 in, in 1/16 in")
        );
        assert_eq!(
            in_words(-by, LengthUnit::Millimetre).as_deref(),
            Some("up 3.2 mm, out 1.6 mm")
        );
        assert_eq!(
            in_words(Vector::new(-9.0, 0.0, 0.0), LengthUnit::Millimetre).as_deref(),
            Some("back 9.0 mm")
        );
        assert_eq!(
            in_words(Vector::new(-0.2, 0.1, -0.1), LengthUnit::Inch),
            None
        );
    }
}
