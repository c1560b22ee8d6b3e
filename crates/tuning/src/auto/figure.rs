//! The figures that may be wanted, by name, unit and how far off counts.

use super::request::{Aim, Wish};

/// Something that can be wanted of a car.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Figure {
    /// Largest toe change over the travel, rack at centre, rad.
    ToeChange,
    /// Largest toe change over the travel at either lock, rad.
    ToeChangeAtLock,
    /// Camber change per travel at the design height, rad/mm; negative: top goes in in bump.
    CamberGain,
    /// Roll-centre height at the design height, mm.
    RollCentreHeight,
    /// Highest less lowest roll centre over the travel, mm.
    RollCentreMigration,
    /// Scrub radius at the design position, mm.
    ScrubRadius,
    /// Castor angle at the design position, rad.
    Castor,
    /// Ackermann percentage at lock.
    Ackermann,
    /// Turning circle, kerb to kerb, mm.
    TurningCircle,
    /// Largest angle between tie rod and rack in the front view over the travel, rack at centre, rad.
    TieRodAngle,
    /// Factor of the rack end against its allowed stress.
    RackEndFactor,
}

/// What a figure is measured in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FigureUnit {
    /// rad
    Angle,
    /// rad/mm
    AnglePerLength,
    /// mm
    Length,
    /// mm, and metres of them
    LongLength,
    /// A percentage.
    Percent,
    /// A plain number.
    Factor,
}

/// Weight of a limit against what is only wanted as near as can be: a limit comes first.
const LIMIT_FIRST: f64 = 100.0;
/// Part of its scale by which a limit is aimed inside, so that it is met and not only approached.
const INSIDE: f64 = 0.02;

impl Figure {
    /// All of them.
    pub const ALL: [Self; 11] = [
        Self::ToeChange,
        Self::ToeChangeAtLock,
        Self::CamberGain,
        Self::RollCentreHeight,
        Self::RollCentreMigration,
        Self::ScrubRadius,
        Self::Castor,
        Self::Ackermann,
        Self::TurningCircle,
        Self::TieRodAngle,
        Self::RackEndFactor,
    ];

    /// The name it has in a command or a table.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::ToeChange => "toe_change",
            Self::ToeChangeAtLock => "toe_change_at_lock",
            Self::CamberGain => "camber_gain",
            Self::RollCentreHeight => "roll_centre_height",
            Self::RollCentreMigration => "roll_centre_migration",
            Self::ScrubRadius => "scrub_radius",
            Self::Castor => "castor",
            Self::Ackermann => "ackermann",
            Self::TurningCircle => "turning_circle",
            Self::TieRodAngle => "tie_rod_angle",
            Self::RackEndFactor => "rack_end_factor",
        }
    }

    /// What it is measured in.
    #[must_use]
    pub fn unit(self) -> FigureUnit {
        match self {
            Self::ToeChange | Self::ToeChangeAtLock | Self::Castor | Self::TieRodAngle => {
                FigureUnit::Angle
            }
            Self::CamberGain => FigureUnit::AnglePerLength,
            Self::RollCentreHeight | Self::RollCentreMigration | Self::ScrubRadius => {
                FigureUnit::Length
            }
            Self::TurningCircle => FigureUnit::LongLength,
            Self::Ackermann => FigureUnit::Percent,
            Self::RackEndFactor => FigureUnit::Factor,
        }
    }

    /// Whether a car without a rack, or without travel of it, has no such figure.
    #[must_use]
    pub fn needs_rack(self) -> bool {
        matches!(
            self,
            Self::ToeChangeAtLock | Self::Ackermann | Self::TurningCircle | Self::RackEndFactor
        )
    }

    /// How far off counts as one, in the figure's own unit: about what a builder would give for a twentieth of a degree
    /// of toe. Our own choice.
    #[must_use]
    pub fn scale(self) -> f64 {
        match self {
            Self::ToeChange | Self::ToeChangeAtLock => 0.05_f64.to_radians(),
            Self::CamberGain => 0.004_f64.to_radians(),
            Self::RollCentreHeight | Self::RollCentreMigration => 10.0,
            Self::ScrubRadius | Self::Ackermann => 5.0,
            Self::Castor => 0.5_f64.to_radians(),
            Self::TurningCircle => 100.0,
            Self::TieRodAngle => 1.0_f64.to_radians(),
            Self::RackEndFactor => 0.1,
        }
    }

    /// Wishes that it be no less than `from` and no more than `to`, in its own unit; the same figure twice wants it as
    /// near as can be. A limit weighs a hundred times as much as that.
    #[must_use]
    pub fn within(self, from: Option<f64>, to: Option<f64>) -> Vec<Wish> {
        let scale = self.scale();
        let wish = |aim, weight| Wish {
            figure: self,
            aim,
            scale,
            weight,
        };
        match (from, to) {
            (Some(f), Some(t)) if f == t => vec![wish(Aim::Near(f), 1.0)],
            (f, t) => {
                // A narrow band is aimed at its middle.
                let room = f.zip(t).map_or(f64::INFINITY, |(f, t)| 0.5 * (t - f));
                let inside = (INSIDE * scale).min(room);
                let least = f.map(|f| wish(Aim::AtLeast(f + inside), LIMIT_FIRST));
                let most = t.map(|t| wish(Aim::AtMost(t - inside), LIMIT_FIRST));
                least.into_iter().chain(most).collect()
            }
        }
    }
}

impl Wish {
    /// The same, counting so many times as much.
    #[must_use]
    pub fn weighed(self, times: f64) -> Self {
        Self {
            weight: times * self.weight,
            ..self
        }
    }

    /// What is always wanted: as little toe change over the travel as can be.
    #[must_use]
    pub fn little_toe_change() -> Self {
        Self {
            figure: Figure::ToeChange,
            aim: Aim::Near(0.0),
            scale: Figure::ToeChange.scale(),
            weight: 1.0,
        }
    }
}
