//! What is looked at: nothing of it is part of the build.

use trammel_analysis::{Quantity, TravelCurve};
use trammel_build::{AxleName, PointRef, Side};

/// Stages of the job, in its order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Stage {
    /// Points, wheel, vehicle.
    LayOut,
    /// Where the tie rod's joints belong.
    Tune,
}

impl Stage {
    /// In the order of the strip.
    pub const ALL: [Self; 2] = [Self::LayOut, Self::Tune];

    /// Its name on the strip.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::LayOut => "Lay out",
            Self::Tune => "Tune",
        }
    }

    /// What is done in it.
    #[must_use]
    pub fn meaning(self) -> &'static str {
        match self {
            Self::LayOut => "Place points, wheel and figures, and watch the curves",
            Self::Tune => {
                "Find the place of the tie rod's joints where toe changes least, and how exactly it must be built"
            }
        }
    }
}

/// Pages of the notebook's middle part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Page {
    /// A second curve, chosen by chips.
    Curves,
    /// The whole point table.
    Points,
    /// Wheel, travel, spring, rack, vehicle, limits.
    Figures,
}

impl Page {
    /// In the order of the switch.
    pub const ALL: [Self; 3] = [Self::Curves, Self::Points, Self::Figures];

    /// Its name on the switch.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Curves => "Curves",
            Self::Points => "Points",
            Self::Figures => "Figures",
        }
    }
}

/// The state of looking.
#[derive(Clone, Debug)]
pub struct View {
    /// Stage of the job.
    pub stage: Stage,
    /// Axle on the table.
    pub axle: AxleName,
    /// Wheel whose curves are shown.
    pub side: Side,
    /// Wheel travel of the moved linkage, mm.
    pub travel: f64,
    /// Rack travel of the moved linkage, mm.
    pub rack: f64,
    /// When the run through the travel began, seconds of the window's clock.
    pub playing_since: Option<f64>,
    /// Selected point.
    pub selected: Option<PointRef>,
    /// Point under the pointer.
    pub hovered: Option<PointRef>,
    /// Curve chosen by chip.
    pub quantity: Quantity,
    /// Page of the notebook.
    pub page: Page,
    /// Instant-centre lines on the drawing.
    pub instant_centres: bool,
    /// Toe curve as it was before the last change.
    pub ghost: Option<TravelCurve>,
    /// What the Tune stage is asked for.
    pub tune: crate::tune::settings::TuneView,
    /// The caution whose remedies are unfolded, by its place in the list.
    pub open_caution: Option<(trammel_analysis::CautionKind, AxleName, Option<Side>)>,
}

impl Default for View {
    fn default() -> Self {
        Self {
            stage: Stage::LayOut,
            axle: AxleName::Front,
            side: Side::Left,
            travel: 0.0,
            rack: 0.0,
            playing_since: None,
            selected: None,
            hovered: None,
            quantity: Quantity::Camber,
            page: Page::Curves,
            instant_centres: false,
            ghost: None,
            tune: crate::tune::settings::TuneView::default(),
            open_caution: None,
        }
    }
}
