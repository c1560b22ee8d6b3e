//! What is looked at and asked for in the Tune stage: nothing of it is part of the build.

use super::{
    auto::{AutoSettings, Form},
    lift::LiftFigure,
    what_if::Slide,
};
use trammel_analysis::{Raise, Stops, WhatIf};
use trammel_build::{LengthUnit, PointName};
use trammel_tuning::{Plane, Reset, Scoring, TieRodJoint, Ways};

/// Pages of the notebook's lower part in this stage.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TunePage {
    /// The best spot, why, and what turns and washers do.
    Spot,
    /// What is in the way: keep-outs, and the joints' bolts.
    InTheWay,
    /// What build error does.
    BuildError,
    /// Automatic tuning.
    Automatic,
    /// A new ride height.
    RideHeight,
    /// Rack height, lift and arm lengths tried out.
    WhatIf,
}

impl TunePage {
    /// In the order of the switch.
    pub const ALL: [Self; 6] = [
        Self::Spot,
        Self::InTheWay,
        Self::BuildError,
        Self::Automatic,
        Self::RideHeight,
        Self::WhatIf,
    ];

    /// Its name on the switch.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Spot => "Best spot",
            Self::InTheWay => "Room",
            Self::BuildError => "Build error",
            Self::Automatic => "Automatic",
            Self::RideHeight => "Ride height",
            Self::WhatIf => "What if",
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
    /// The two ways of the map's plane.
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
    pub fn label(self, plane: Plane) -> &'static str {
        match (self, plane) {
            (Self::Plane, Plane::Front) => "height and width",
            (Self::Plane, Plane::Side) => "height, fore and aft",
            (Self::Plane, Plane::Plan) => "width, fore and aft",
            _ => self.plain_label(),
        }
    }

    fn plain_label(self) -> &'static str {
        match self {
            Self::Plane => "in the map's plane",
            Self::Height => "height only",
            Self::Width => "width only",
            Self::Free => "any way",
        }
    }

    /// What it means.
    #[must_use]
    pub fn meaning(self) -> &'static str {
        match self {
            Self::Plane => {
                "The ways of the map's plane. Where fore and aft is one of them many places are equally good; the one with the least movement is taken."
            }
            Self::Height => "Up and down only, as with shims under the rack.",
            Self::Width => "In and out only, as with a longer or shorter rack.",
            Self::Free => {
                "Fore and aft as well. Many places are then equally good; the one with the least movement is taken."
            }
        }
    }

    pub(crate) fn ways(self, plane: Plane) -> Ways {
        match self {
            Self::Plane => match plane {
                Plane::Front => Ways::FrontPlane,
                Plane::Side => Ways::SidePlane,
                Plane::Plan => Ways::PlanPlane,
            },
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
    /// The plane of the map; a view that fills the table has it in its own.
    pub plane: Plane,
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
    /// The chosen keep-out, by its place in the build.
    pub keep_out: Option<usize>,
    /// Whether a drag on the table draws a keep-out.
    pub draws_keep_out: bool,
    /// Whether the loupe is shown larger.
    pub large_loupe: bool,
    /// What automatic tuning is asked for.
    pub auto: AutoSettings,
    /// How the frame is looked at: so much higher, and what becomes of camber and stops.
    pub raise: Raise,
    /// What is tried out.
    pub what_if: WhatIf,
    /// The slider along which the family of curves is drawn.
    pub along: Slide,
    /// What the plot over the lift shows.
    pub lift_figure: LiftFigure,
    /// Whether the threads of the rack end are shown at that lift, instead of the figures.
    pub lift_threads: bool,
    /// The layout of the search that is shown on the drawing.
    pub preview: Option<usize>,
    /// In which form layouts are shown and applied.
    pub form: Form,
    /// Page of the notebook.
    pub page: TunePage,
}

impl TuneView {
    /// The same way of looking at another build, with nothing tried out.
    #[must_use]
    pub fn for_another_build(&self) -> Self {
        Self {
            raise: Raise {
                by: 0.0,
                ..self.raise
            },
            what_if: WhatIf::default(),
            preview: None,
            ..self.clone()
        }
    }
}

impl Default for TuneView {
    fn default() -> Self {
        Self {
            joint: TieRodJoint::Inner,
            plane: Plane::Front,
            scoring: Scoring::Largest,
            racks: MapRack::Centre,
            ways: SpotWays::Plane,
            both: false,
            map_width: 89.0,
            rule: true,
            clear_area: true,
            keep_out: None,
            draws_keep_out: false,
            large_loupe: false,
            auto: AutoSettings::default(),
            raise: Raise {
                by: 0.0,
                reset: Reset::ToeAndCamber,
                stops: Stops::Kept,
            },
            what_if: WhatIf::default(),
            along: Slide::Rack,
            lift_figure: LiftFigure::Toe,
            lift_threads: false,
            preview: None,
            form: Form::InSteps,
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

/// A length on the nearest whole step of the shop, in the build's unit; a sixteenth is written as it is, without what converting leaves behind.
#[must_use]
pub(crate) fn whole_steps(mm: f64, unit: LengthUnit) -> f64 {
    let per_unit = match unit {
        LengthUnit::Inch => 16.0,
        LengthUnit::Millimetre => 1.0,
    };
    (unit.from_mm(mm) * per_unit).round() / per_unit
}
