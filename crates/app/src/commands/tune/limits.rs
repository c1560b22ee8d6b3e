//! What `--limit` asks for.

use trammel_build::LengthUnit;
use trammel_tuning::{Aim, Figure, Figures, Wish};

use crate::fault::Fault;

/// Weight of a limit against the toe change, which has one: a limit comes first.
const FIRST: f64 = 100.0;
/// Part of its scale by which a limit is aimed inside, so that it is met and not only approached.
const INSIDE: f64 = 0.02;

/// Unit of a figure on the command line.
#[derive(Clone, Copy)]
enum Kind {
    Degrees,
    DegreesPerLength,
    Length,
    Plain,
}

/// Name on the command line, figure, unit, and how far off counts as one: in degrees, mm or as it is.
type Row = (&'static str, Figure, Kind, f64);

const FIGURES: [Row; 11] = [
    ("toe_change", Figure::ToeChange, Kind::Degrees, 0.05),
    (
        "toe_change_at_lock",
        Figure::ToeChangeAtLock,
        Kind::Degrees,
        0.05,
    ),
    (
        "camber_gain",
        Figure::CamberGain,
        Kind::DegreesPerLength,
        0.004,
    ),
    (
        "roll_centre_height",
        Figure::RollCentreHeight,
        Kind::Length,
        10.0,
    ),
    (
        "roll_centre_migration",
        Figure::RollCentreMigration,
        Kind::Length,
        10.0,
    ),
    ("scrub_radius", Figure::ScrubRadius, Kind::Length, 5.0),
    ("castor", Figure::Castor, Kind::Degrees, 0.5),
    ("ackermann", Figure::Ackermann, Kind::Plain, 5.0),
    ("turning_circle", Figure::TurningCircle, Kind::Length, 100.0),
    ("tie_rod_angle", Figure::TieRodAngle, Kind::Degrees, 1.0),
    ("rack_end_factor", Figure::RackEndFactor, Kind::Plain, 0.1),
];

impl Kind {
    /// One of the command line's unit in the kernel's.
    fn size(self, unit: LengthUnit) -> f64 {
        match self {
            Self::Degrees => 1.0_f64.to_radians(),
            Self::DegreesPerLength => 1.0_f64.to_radians() / unit.mm(),
            Self::Length => unit.mm(),
            Self::Plain => 1.0,
        }
    }

    fn scale(self, scale: f64) -> f64 {
        match self {
            Self::Degrees | Self::DegreesPerLength => scale.to_radians(),
            Self::Length | Self::Plain => scale,
        }
    }

    fn sign(self, unit: LengthUnit) -> String {
        match self {
            Self::Degrees => "°".into(),
            Self::DegreesPerLength => format!("°/{}", unit.sign()),
            Self::Length => format!(" {}", unit.sign()),
            Self::Plain => String::new(),
        }
    }
}

/// A limit with the figure that came of it, in the command line's unit.
pub(super) struct Held {
    pub name: &'static str,
    /// Least that is wanted.
    pub from: Option<f64>,
    /// Most that is wanted; the same as `from` where it is wanted as near as can be.
    pub to: Option<f64>,
    pub value: Option<f64>,
    pub sign: String,
}

impl Held {
    /// Whether it is met; what is only wanted as near as can be always is.
    pub(super) fn met(&self) -> bool {
        let Some(value) = self.value else {
            return false;
        };
        let near = self.from.is_some() && self.from == self.to;
        let slack = 1e-9 * (1.0 + value.abs());
        near || (self.from.is_none_or(|f| value >= f - slack)
            && self.to.is_none_or(|t| value <= t + slack))
    }
}

/// A limit as it was typed.
pub(super) struct Limit {
    row: Row,
    from: Option<f64>,
    to: Option<f64>,
}

impl Limit {
    /// Reads `tie_rod_angle=..12`.
    pub(super) fn read(text: &str) -> Result<Self, Fault> {
        let fault = |why: String| Fault::Option {
            option: "--limit",
            found: text.to_owned(),
            why,
        };
        let (name, range) = text
            .split_once('=')
            .ok_or_else(|| fault("expected FIGURE=RANGE, such as tie_rod_angle=..12".into()))?;
        let row = FIGURES.into_iter().find(|r| r.0 == name).ok_or_else(|| {
            let known = FIGURES.map(|r| r.0).join(", ");
            fault(format!(
                "there is no figure {name}; the figures are {known}"
            ))
        })?;
        let [from, to] = range_of(range).map_err(fault)?;
        Ok(Self { row, from, to })
    }

    pub(super) fn figure(&self) -> Figure {
        self.row.1
    }

    pub(super) fn wishes(&self, unit: LengthUnit) -> Vec<Wish> {
        let (_, figure, kind, scale) = self.row;
        let scale = kind.scale(scale);
        let wish = |aim, weight| Wish {
            figure,
            aim,
            scale,
            weight,
        };
        let of = |v: f64| v * kind.size(unit);
        match (self.from, self.to) {
            (Some(f), Some(t)) if f == t => vec![wish(Aim::Near(of(f)), 1.0)],
            (f, t) => {
                let inside = INSIDE * scale;
                // A narrow band is aimed at its middle.
                let room = f
                    .zip(t)
                    .map_or(f64::INFINITY, |(f, t)| 0.5 * (of(t) - of(f)));
                let inside = inside.min(room);
                let least = f.map(|f| wish(Aim::AtLeast(of(f) + inside), FIRST));
                let most = t.map(|t| wish(Aim::AtMost(of(t) - inside), FIRST));
                least.into_iter().chain(most).collect()
            }
        }
    }

    pub(super) fn held(&self, figures: &Figures, unit: LengthUnit) -> Held {
        let (name, figure, kind, _) = self.row;
        Held {
            name,
            from: self.from,
            to: self.to,
            value: figures.get(figure).map(|v| v / kind.size(unit)),
            sign: kind.sign(unit),
        }
    }
}

/// Every figure by name in the command line's unit.
pub(super) fn all(figures: &Figures, unit: LengthUnit) -> Vec<(&'static str, Option<f64>, String)> {
    FIGURES
        .into_iter()
        .map(|(name, figure, kind, _)| {
            let value = figures.get(figure).map(|v| v / kind.size(unit));
            (name, value.filter(|v| v.is_finite()), kind.sign(unit))
        })
        .collect()
}

/// Reads `5..7`, `..7`, `5..` or `6`.
fn range_of(text: &str) -> Result<[Option<f64>; 2], String> {
    let number = |part: &str| -> Result<Option<f64>, String> {
        if part.trim().is_empty() {
            return Ok(None);
        }
        let read = part.trim().parse::<f64>().ok().filter(|v| v.is_finite());
        match read {
            Some(v) => Ok(Some(v)),
            None => Err(format!("{part:?} is no number; expected such as 12 or 0.3")),
        }
    };
    let expected = "expected a range such as ..12, 5.. or 5..7, or one number";
    let range = match text.split_once("..") {
        Some((from, to)) => [number(from)?, number(to)?],
        None => [number(text)?; 2],
    };
    match range {
        [None, None] => Err(expected.into()),
        [Some(f), Some(t)] if f > t => Err(format!("{f} is more than {t}; {expected}")),
        range => Ok(range),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ranges_are_read() {
        assert_eq!(range_of("..12"), Ok([None, Some(12.0)]));
        assert_eq!(range_of("5.."), Ok([Some(5.0), None]));
        assert_eq!(range_of("-5..-1.5"), Ok([Some(-5.0), Some(-1.5)]));
        assert_eq!(range_of("1.5"), Ok([Some(1.5), Some(1.5)]));
        for odd in ["", "..", "a..", "3..2", "..NaN", "inf"] {
            assert!(range_of(odd).is_err(), "{odd}");
        }
    }

    #[test]
    fn a_limit_is_met_on_its_right_side_only() {
        let held = |from, to, value| Held {
            name: "castor",
            from,
            to,
            value: Some(value),
            sign: String::new(),
        };
        assert!(held(None, Some(12.0), 12.0).met());
        assert!(!held(None, Some(12.0), 12.1).met());
        assert!(held(Some(2.0), None, 2.5).met());
        assert!(!held(Some(2.0), Some(3.0), 1.9).met());
        assert!(held(Some(2.0), Some(2.0), 9.0).met());
    }
}
