//! What `--limit` asks for.

use trammel_build::LengthUnit;
use trammel_tuning::{Figure, FigureUnit, Figures, Wish};

use crate::fault::Fault;

/// One of a figure's unit on the command line in the kernel's.
fn size(figure: Figure, unit: LengthUnit) -> f64 {
    match figure.unit() {
        FigureUnit::Angle => 1.0_f64.to_radians(),
        FigureUnit::AnglePerLength => 1.0_f64.to_radians() / unit.mm(),
        FigureUnit::Length | FigureUnit::LongLength => unit.mm(),
        FigureUnit::Percent | FigureUnit::Factor => 1.0,
    }
}

fn sign(figure: Figure, unit: LengthUnit) -> String {
    match figure.unit() {
        FigureUnit::Angle => "°".into(),
        FigureUnit::AnglePerLength => format!("°/{}", unit.sign()),
        FigureUnit::Length | FigureUnit::LongLength => format!(" {}", unit.sign()),
        FigureUnit::Percent | FigureUnit::Factor => String::new(),
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
    figure: Figure,
    from: Option<f64>,
    to: Option<f64>,
    weight: f64,
}

/// Most that a limit may weigh.
const MOST_WEIGHT: f64 = 100.0;

impl Limit {
    /// Reads `tie_rod_angle=..12` and `castor=6*2`.
    pub(super) fn read(text: &str) -> Result<Self, Fault> {
        let fault = |why: String| Fault::Option {
            option: "--limit",
            found: text.to_owned(),
            why,
        };
        let (name, range) = text
            .split_once('=')
            .ok_or_else(|| fault("expected FIGURE=RANGE, such as tie_rod_angle=..12".into()))?;
        let figure = Figure::ALL.into_iter().find(|f| f.name() == name);
        let figure = figure.ok_or_else(|| {
            let known = Figure::ALL.map(Figure::name).join(", ");
            fault(format!(
                "there is no figure {name}; the figures are {known}"
            ))
        })?;
        let (range, weight) = match range.split_once('*') {
            None => (range, 1.0),
            Some((range, weight)) => (range, weight_of(weight).map_err(fault)?),
        };
        let [from, to] = range_of(range).map_err(fault)?;
        Ok(Self {
            figure,
            from,
            to,
            weight,
        })
    }

    pub(super) fn figure(&self) -> Figure {
        self.figure
    }

    pub(super) fn wishes(&self, unit: LengthUnit) -> Vec<Wish> {
        let of = |end: Option<f64>| end.map(|v| v * size(self.figure, unit));
        let wishes = self.figure.within(of(self.from), of(self.to));
        wishes.into_iter().map(|w| w.weighed(self.weight)).collect()
    }

    pub(super) fn held(&self, figures: &Figures, unit: LengthUnit) -> Held {
        let (name, value, sign) = told(figures, self.figure, unit);
        Held {
            name,
            from: self.from,
            to: self.to,
            value,
            sign,
        }
    }
}

/// A figure's name, its value in the command line's unit, and that unit's sign.
pub(super) type Told = (&'static str, Option<f64>, String);

fn told(figures: &Figures, figure: Figure, unit: LengthUnit) -> Told {
    let value = figures.get(figure).map(|v| v / size(figure, unit));
    (
        figure.name(),
        value.filter(|v| v.is_finite()),
        sign(figure, unit),
    )
}

/// Every figure.
pub(super) fn all(figures: &Figures, unit: LengthUnit) -> Vec<Told> {
    Figure::ALL.map(|f| told(figures, f, unit)).to_vec()
}

/// Reads a weight.
fn weight_of(text: &str) -> Result<f64, String> {
    let read = text.trim().parse::<f64>().ok();
    let usable = read.filter(|v| (0.0..=MOST_WEIGHT).contains(v));
    usable
        .ok_or_else(|| format!("{text:?} is no weight; expected a number from 0 to {MOST_WEIGHT}"))
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
