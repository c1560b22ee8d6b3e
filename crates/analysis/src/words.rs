//! How figures are written in cautions: lengths as a tape reads them, numbers rounded to the side that flatters nothing.

use trammel_build::{LengthUnit, Side, TapeReading, TravelRange, decimal, defaults, format_length};

/// A length found, to the nearest sixteenth or tenth of a millimetre, with its unit.
pub(crate) fn length(mm: f64, unit: LengthUnit) -> String {
    on_tape(mm, unit, 16)
}

/// A length to work to, to the nearest 1/64 in or tenth of a millimetre, with its unit.
pub(crate) fn work_length(mm: f64, unit: LengthUnit) -> String {
    on_tape(mm, unit, 64)
}

fn on_tape(mm: f64, unit: LengthUnit, marks: u32) -> String {
    let value = match unit {
        LengthUnit::Inch => TapeReading::of(unit.from_mm(mm), marks).reading,
        LengthUnit::Millimetre => (mm * 10.0).round() / 10.0,
    };
    // Minus nought would only puzzle.
    format!("{} {}", format_length(value + 0.0, unit), unit.sign())
}

/// A force, N, in pounds-force beside inches and in kilonewtons beside millimetres.
pub(crate) fn force(newtons: f64, unit: LengthUnit) -> String {
    match unit {
        LengthUnit::Inch => format!("{:.0} lbf", newtons / defaults::NEWTONS_PER_POUND_FORCE),
        LengthUnit::Millimetre => format!("{:.1} kN", newtons / 1000.0),
    }
}

/// A number with at most so many decimals and no idle noughts.
fn trimmed(value: f64, decimals: usize) -> String {
    let text = decimal(value, decimals);
    let text = if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.')
    } else {
        &text
    };
    text.to_owned()
}

/// A number cut off below, for what should be large.
fn rounded_down(value: f64, decimals: usize) -> String {
    let scale = 10_f64.powi(decimals as i32);
    trimmed((value * scale + 1e-6).floor() / scale, decimals)
}

/// A number carried up, for what should be small.
fn rounded_up(value: f64, decimals: usize) -> String {
    let scale = 10_f64.powi(decimals as i32);
    trimmed((value * scale - 1e-6).ceil() / scale, decimals)
}

/// A figure with three digits that count.
pub(crate) fn figure(value: f64) -> String {
    let digits = match value.abs() {
        v if v >= 100.0 => 0,
        v if v >= 10.0 => 1,
        v if v >= 1.0 => 2,
        _ => 3,
    };
    trimmed(value, digits)
}

/// A factor, rounded down.
pub(crate) fn factor(value: f64) -> String {
    rounded_down(value, if value < 0.1 { 2 } else { 1 })
}

/// An angle that should be small, degrees, rounded up to a tenth.
pub(crate) fn angle(degrees: f64) -> String {
    format!("{}°", rounded_up(degrees, 1))
}

/// An angle that should be large, degrees, rounded down to a tenth.
pub(crate) fn least_angle(degrees: f64) -> String {
    format!("{}°", rounded_down(degrees, 1))
}

/// A toe change, degrees, rounded up to a hundredth.
pub(crate) fn toe(degrees: f64) -> String {
    format!("{}°", rounded_up(degrees, 2))
}

/// A pose, such as `full droop, left lock`.
pub(crate) fn pose(
    travel: f64,
    rack: f64,
    range: TravelRange,
    lock: f64,
    unit: LengthUnit,
) -> String {
    let near = |a: f64, b: f64| (a - b).abs() < 1e-6 * (1.0 + b.abs());
    let height = if near(travel, 0.0) {
        "design height".to_owned()
    } else if near(travel, range.droop) {
        "full droop".to_owned()
    } else if near(travel, range.bump) {
        "full bump".to_owned()
    } else {
        let way = if travel > 0.0 { "bump" } else { "droop" };
        format!("{} of {way}", length(travel.abs(), unit))
    };
    if lock == 0.0 {
        return height;
    }
    let steer = if near(rack, 0.0) {
        "rack at centre".to_owned()
    } else if near(rack.abs(), lock) {
        format!("{} lock", hand(rack))
    } else {
        format!("rack {} to the {}", length(rack.abs(), unit), hand(rack))
    };
    format!("{height}, {steer}")
}

fn hand(rack: f64) -> &'static str {
    if rack > 0.0 { "left" } else { "right" }
}

/// `Left rack end` or, for both sides alike, `Rack end`.
pub(crate) fn sided(side: Option<Side>, what: &str) -> String {
    match side {
        Some(Side::Left) => format!("Left {what}"),
        Some(Side::Right) => format!("Right {what}"),
        None => {
            let mut letters = what.chars();
            letters.next().map_or_else(String::new, |first| {
                first.to_uppercase().chain(letters).collect()
            })
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use trammel_build::Stop;

    #[test]
    fn inches_are_written_as_a_tape_reads_them() {
        let inch = |v: f64| length(v * 25.4, LengthUnit::Inch);
        assert_eq!(inch(1.625), "1 5/8 in");
        assert_eq!(inch(0.5), "1/2 in");
        assert_eq!(inch(-0.4375), "-7/16 in");
        assert_eq!(inch(3.0), "3 in");
        assert_eq!(inch(0.01), "0 in");
        assert_eq!(work_length(0.171_875 * 25.4, LengthUnit::Inch), "11/64 in");
        assert_eq!(length(41.275, LengthUnit::Millimetre), "41.3 mm");
        assert_eq!(length(-0.01, LengthUnit::Millimetre), "0 mm");
    }

    #[test]
    fn rounding_flatters_nothing() {
        assert_eq!(factor(1.99), "1.9");
        assert_eq!(factor(2.0), "2");
        assert_eq!(factor(0.04), "0.04");
        assert_eq!(angle(12.01), "12.1°");
        assert_eq!(angle(12.0), "12°");
        assert_eq!(toe(0.301), "0.31°");
        assert_eq!(least_angle(24.99), "24.9°");
    }

    #[test]
    fn forces_go_with_the_unit_of_length() {
        assert_eq!(force(4_448.221_615, LengthUnit::Inch), "1000 lbf");
        assert_eq!(force(4_448.221_615, LengthUnit::Millimetre), "4.4 kN");
    }

    #[test]
    fn poses_are_named_by_their_stops() {
        let range = TravelRange {
            droop: -80.0,
            bump: 100.0,
            droop_stop: Stop::Wanted,
            bump_stop: Stop::Wanted,
        };
        let at = |t, r| pose(t, r, range, 38.0, LengthUnit::Millimetre);
        assert_eq!(at(-80.0, 38.0), "full droop, left lock");
        assert_eq!(at(100.0, -38.0), "full bump, right lock");
        assert_eq!(at(0.0, 0.0), "design height, rack at centre");
        assert_eq!(at(12.0, -5.0), "12 mm of bump, rack 5 mm to the right");
        assert_eq!(
            pose(-20.0, 0.0, range, 0.0, LengthUnit::Millimetre),
            "20 mm of droop"
        );
    }
}
