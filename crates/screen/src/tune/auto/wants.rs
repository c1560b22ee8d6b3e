//! What may be wanted besides little toe change, in the words and units of the screen.

use trammel_build::LengthUnit;
use trammel_tuning::{Figure, FigureUnit, Wish};

use crate::terms::{self, Term};

/// How a figure is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum How {
    /// Not below.
    AtLeast,
    /// Not above.
    AtMost,
    /// As near as can be.
    Near,
}

impl How {
    /// Its word.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::AtLeast => "at least",
            Self::AtMost => "at most",
            Self::Near => "near",
        }
    }

    /// The one that a click brings.
    #[must_use]
    pub fn next(self) -> Self {
        match self {
            Self::AtLeast => Self::AtMost,
            Self::AtMost => Self::Near,
            Self::Near => Self::AtLeast,
        }
    }
}

/// One thing that may be wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Want {
    /// Which figure.
    pub figure: Figure,
    /// Whether it is wanted.
    pub on: bool,
    /// How.
    pub how: How,
    /// How much, in the figure's own unit.
    pub value: f64,
    /// What it counts against the other things that are wanted.
    pub weight: f64,
}

impl Want {
    /// A figure that is not wanted yet, with a value to begin with.
    #[must_use]
    pub fn new(figure: Figure) -> Self {
        let degrees = f64::to_radians;
        let (how, value) = match figure {
            Figure::ToeChange => (How::AtMost, degrees(0.1)),
            Figure::ToeChangeAtLock => (How::AtMost, degrees(1.0)),
            Figure::CamberGain => (How::Near, degrees(-1.5) / 100.0),
            Figure::RollCentreHeight => (How::Near, 76.2),
            Figure::RollCentreMigration => (How::AtMost, 101.6),
            Figure::ScrubRadius => (How::AtMost, 50.8),
            Figure::Castor => (How::Near, degrees(7.0)),
            Figure::Ackermann => (How::Near, 60.0),
            Figure::TurningCircle => (How::AtMost, 6096.0),
            Figure::TieRodAngle => (How::AtMost, degrees(15.0)),
            Figure::RackEndFactor => (How::AtLeast, trammel_build::defaults::RACK_END_FACTOR),
        };
        Self {
            figure,
            on: false,
            how,
            value,
            weight: 1.0,
        }
    }

    pub(super) fn wishes(&self) -> Vec<Wish> {
        let (from, to) = match self.how {
            How::AtLeast => (Some(self.value), None),
            How::AtMost => (None, Some(self.value)),
            How::Near => (Some(self.value), Some(self.value)),
        };
        let wishes = self.figure.within(from, to).into_iter();
        wishes.map(|w| w.weighed(self.weight)).collect()
    }
}

/// From a figure's own unit to the one it is shown in.
#[must_use]
pub fn factor(figure: Figure, unit: LengthUnit) -> f64 {
    let degree = 1.0_f64.to_degrees();
    match (figure.unit(), unit) {
        (FigureUnit::Angle, _) => degree,
        (FigureUnit::AnglePerLength, LengthUnit::Inch) => degree * 25.4,
        (FigureUnit::AnglePerLength, LengthUnit::Millimetre) => degree * 100.0,
        (FigureUnit::Length, _) => unit.from_mm(1.0),
        (FigureUnit::LongLength, LengthUnit::Inch) => unit.from_mm(1.0) / 12.0,
        (FigureUnit::LongLength, LengthUnit::Millimetre) => 1e-3,
        (FigureUnit::Percent | FigureUnit::Factor, _) => 1.0,
    }
}

/// The sign of the unit that a figure is shown in.
#[must_use]
pub fn sign(figure: Figure, unit: LengthUnit) -> &'static str {
    match (figure.unit(), unit) {
        (FigureUnit::Angle, _) => "°",
        (FigureUnit::AnglePerLength, LengthUnit::Inch) => "°/in",
        (FigureUnit::AnglePerLength, LengthUnit::Millimetre) => "°/100 mm",
        (FigureUnit::Length, _) => unit.sign(),
        (FigureUnit::LongLength, LengthUnit::Inch) => "ft",
        (FigureUnit::LongLength, LengthUnit::Millimetre) => "m",
        (FigureUnit::Percent, _) => "%",
        (FigureUnit::Factor, _) => "",
    }
}

/// A figure's name where there is room for it.
#[must_use]
pub fn long_name(figure: Figure) -> &'static str {
    match figure {
        Figure::ToeChange => "Toe change",
        Figure::ToeChangeAtLock => "Toe change at lock",
        Figure::CamberGain => "Camber gain",
        Figure::RollCentreHeight => "Roll-centre height",
        Figure::RollCentreMigration => "Roll centre's wander",
        Figure::ScrubRadius => "Scrub radius",
        Figure::Castor => "Castor",
        Figure::Ackermann => "Ackermann",
        Figure::TurningCircle => "Turning circle",
        Figure::TieRodAngle => "Tie-rod angle",
        Figure::RackEndFactor => "Rack-end factor",
    }
}

/// A figure's name where there is little.
#[must_use]
pub fn name(figure: Figure) -> &'static str {
    match figure {
        Figure::ToeChange => "toe",
        Figure::ToeChangeAtLock => "toe at lock",
        Figure::CamberGain => "camber",
        Figure::RollCentreHeight => "roll centre",
        Figure::RollCentreMigration => "its wander",
        Figure::ScrubRadius => "scrub",
        Figure::Castor => "castor",
        Figure::Ackermann => "Ackermann",
        Figure::TurningCircle => "circle",
        Figure::TieRodAngle => "rod angle",
        Figure::RackEndFactor => "rack end",
    }
}

/// What a figure means.
#[must_use]
pub fn term(figure: Figure) -> Term {
    match figure {
        Figure::ToeChange => terms::LARGEST_TOE_CHANGE,
        Figure::ToeChangeAtLock => terms::TOE_CHANGE_AT_LOCK,
        Figure::CamberGain => terms::CAMBER_GAIN,
        Figure::RollCentreHeight => terms::ROLL_CENTRE,
        Figure::RollCentreMigration => terms::ROLL_CENTRE_MIGRATION,
        Figure::ScrubRadius => terms::SCRUB_RADIUS,
        Figure::Castor => terms::CASTOR,
        Figure::Ackermann => terms::ACKERMANN,
        Figure::TurningCircle => terms::TURNING_CIRCLE,
        Figure::TieRodAngle => terms::TIE_ROD_ANGLE,
        Figure::RackEndFactor => terms::RACK_END_FACTOR,
    }
}

/// How it is taken in a search for layouts, where that is not plain from its term.
#[must_use]
pub fn taken(figure: Figure) -> &'static str {
    match figure {
        Figure::ToeChange => "Little is always wanted; a limit comes first.",
        Figure::ToeChangeAtLock => "Made little beside the toe change at centre, by their weights.",
        Figure::CamberGain | Figure::RollCentreHeight => "At the design height.",
        Figure::Ackermann | Figure::TurningCircle => "At full lock.",
        Figure::TieRodAngle => "The largest in the front view over the travel.",
        Figure::RackEndFactor => {
            "Under the build's hit, at the worst of a coarse grid of travel and lock."
        }
        Figure::RollCentreMigration | Figure::ScrubRadius | Figure::Castor => "",
    }
}
