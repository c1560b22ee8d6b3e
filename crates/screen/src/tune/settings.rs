//! What is looked at and asked for in the Tune stage: nothing of it is part of the build.

use super::{auto::AutoSettings, lift::LiftFigure};
use trammel_build::{LengthUnit, PointName};
use trammel_tuning::{Scoring, TieRodJoint, Ways};

/// Pages of the notebook's lower part in this stage.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TunePage {
    /// The best spot, why, and what turns and washers do.
    Spot,
    /// What build error does.
    BuildError,
    /// Automatic tuning.
    Automatic,
    /// A new ride height.
    RideHeight,
}

impl TunePage {
    /// In the order of the switch.
    pub const ALL: [Self; 4] = [
        Self::Spot,
        Self::BuildError,
        Self::Automatic,
        Self::RideHeight,
    ];

    /// Its name on the switch.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Spot => "Best spot",
            Self::BuildError => "Build error",
            Self::Automatic => "Automatic",
            Self::RideHeight => "Ride height",
        }
    }
}

/// Rack positions at which a place of the joint is judged.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum MapRack {
    /// At centre.
    Centre,
    /// Where the moved linkage is.
    Here,
    /// The worst of both locks and the centre.
    Worst,
}

impl MapRack {
    /// In the order of the switch.
    pub const ALL: [Self; 3] = [Self::Centre, Self::Here, Self::Worst];

    /// Its name on the switch.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Centre => "at centre",
            Self::Here => "as it stands",
            Self::Worst => "worst of three",
        }
    }

    /// What it means.
    #[must_use]
    pub fn meaning(self) -> &'static str {
        match self {
            Self::Centre => {
                "Every place is judged with the rack at centre, as when driving straight ahead."
            }
            Self::Here => {
                "Every place is judged with the rack where the slider below the drawing has it."
            }
            Self::Worst => {
                "Every place is judged at both locks and at centre; the worst of the three counts."
            }
        }
    }
}

/// Ways that the best spot is looked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SpotWays {
    /// Up, down, in and out.
    Plane,
    /// Up and down only.
    Height,
    /// In and out only.
    Width,
    /// Fore and aft as well.
    Free,
}

impl SpotWays {
    /// In the order of the switch.
    pub const ALL: [Self; 4] = [Self::Plane, Self::Height, Self::Width, Self::Free];

    /// Its name on the switch.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Plane => "height and width",
            Self::Height => "height only",
            Self::Width => "width only",
            Self::Free => "any way",
        }
    }

    /// What it means.
    #[must_use]
    pub fn meaning(self) -> &'static str {
        match self {
            Self::Plane => "Up, down, in and out; fore and aft it stays.",
            Self::Height => "Up and down only, as with shims under the rack.",
            Self::Width => "In and out only, as with a longer or shorter rack.",
            Self::Free => {
                "Fore and aft as well. Many places are then equally good; the one with the least movement is taken."
            }
        }
    }

    pub(crate) fn ways(self) -> Ways {
        match self {
            Self::Plane => Ways::FrontPlane,
            Self::Height => Ways::Height,
            Self::Width => Ways::Width,
            Self::Free => Ways::Free,
        }
    }
}

/// Name of a score on switches and in sentences.
#[must_use]
pub fn scoring_label(scoring: Scoring) -> &'static str {
    match scoring {
        Scoring::Largest => "largest",
        Scoring::Rms => "RMS",
        Scoring::Slope => "slope",
    }
}

/// The hardpoint of a joint.
pub(crate) fn point_of(joint: TieRodJoint) -> PointName {
    match joint {
        TieRodJoint::Inner => PointName::TieRodInner,
        TieRodJoint::Outer => PointName::TieRodOuter,
    }
}

/// The state of looking at the Tune stage.
#[derive(Clone, Debug)]
pub struct TuneView {
    /// The joint that is mapped.
    pub joint: TieRodJoint,
    /// What places are judged by.
    pub scoring: Scoring,
    /// At which rack positions.
    pub racks: MapRack,
    /// Ways that the best spot is looked for.
    pub ways: SpotWays,
    /// Whether the other joint may move with it.
    pub both: bool,
    /// Width of the map, mm.
    pub map_width: f64,
    /// The two-line rule on the drawing.
    pub rule: bool,
    /// Where the rack end, the joint or a keep-out forbids the place.
    pub clear_area: bool,
    /// How the parts are made.
    pub makings: Makings,
    /// What automatic tuning is asked for.
    pub auto: AutoSettings,
    /// How much higher the frame is looked at, mm.
    pub lift: f64,
    /// What the plot over the lift shows.
    pub lift_figure: LiftFigure,
    /// The layout of the search that is shown on the drawing.
    pub preview: Option<usize>,
    /// Page of the notebook.
    pub page: TunePage,
}

impl Default for TuneView {
    fn default() -> Self {
        Self {
            joint: TieRodJoint::Inner,
            scoring: Scoring::Largest,
            racks: MapRack::Centre,
            ways: SpotWays::Plane,
            both: false,
            map_width: 89.0,
            rule: true,
            clear_area: true,
            makings: Makings::default(),
            auto: AutoSettings::default(),
            lift: 0.0,
            lift_figure: LiftFigure::Toe,
            preview: None,
            page: TunePage::Spot,
        }
    }
}

/// The shop's step, mm: a sixteenth of an inch or a millimetre.
#[must_use]
pub fn shop_step(unit: LengthUnit) -> f64 {
    match unit {
        LengthUnit::Inch => 25.4 / 16.0,
        LengthUnit::Millimetre => 1.0,
    }
}

/// Parts of the car that are made in one go.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Part {
    /// The arms' pivots on the frame.
    Pivots,
    /// The inner tie-rod joint.
    Inner,
    /// What is on the upright: ball joints and outer tie-rod joint.
    Upright,
}

impl Part {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Pivots, Self::Inner, Self::Upright];

    /// Its name on the screen.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Pivots => "Arm pivots",
            Self::Inner => "Inner joint",
            Self::Upright => "Upright",
        }
    }
}

/// How points are put in their places. What each allows is common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Making {
    /// Drilled in a jig.
    Jig,
    /// Measured with a tape and centre-punched.
    Tape,
    /// Held by hand and tacked.
    Hand,
}

impl Making {
    /// From the best to the worst.
    pub const ALL: [Self; 3] = [Self::Jig, Self::Tape, Self::Hand];

    /// Its name on the screen.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Jig => "jig",
            Self::Tape => "tape",
            Self::Hand => "by hand",
        }
    }

    /// What it means.
    #[must_use]
    pub fn meaning(self) -> &'static str {
        match self {
            Self::Jig => "Drilled in a jig: each coordinate within 1/64 in (0.4 mm).",
            Self::Tape => {
                "Measured with a tape and centre-punched: each coordinate within 1/32 in (0.8 mm)."
            }
            Self::Hand => "Held by hand and tacked: each coordinate within 1/16 in (1.6 mm).",
        }
    }

    /// How far a coordinate may be off either way, mm.
    #[must_use]
    pub fn error(self) -> f64 {
        match self {
            Self::Jig => 25.4 / 64.0,
            Self::Tape => 25.4 / 32.0,
            Self::Hand => 25.4 / 16.0,
        }
    }
}

/// How each part is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Makings {
    /// The arms' pivots.
    pub pivots: Making,
    /// The inner tie-rod joint.
    pub inner: Making,
    /// What is on the upright.
    pub upright: Making,
}

impl Makings {
    /// How a part is made.
    #[must_use]
    pub fn of(&self, part: Part) -> Making {
        match part {
            Part::Pivots => self.pivots,
            Part::Inner => self.inner,
            Part::Upright => self.upright,
        }
    }

    /// The same with one part made otherwise.
    #[must_use]
    pub fn with(self, part: Part, making: Making) -> Self {
        match part {
            Part::Pivots => Self {
                pivots: making,
                ..self
            },
            Part::Inner => Self {
                inner: making,
                ..self
            },
            Part::Upright => Self {
                upright: making,
                ..self
            },
        }
    }
}

impl Default for Makings {
    fn default() -> Self {
        Self {
            pivots: Making::Tape,
            inner: Making::Tape,
            upright: Making::Jig,
        }
    }
}
