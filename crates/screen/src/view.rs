//! What is looked at: nothing of it is part of the build.

use trammel_analysis::{CautionKind, Quantity, TravelCurve};
use trammel_build::{AxleName, Edit, PointName, PointRef, Side, Triple};

/// Stages of the job, in its order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Stage {
    /// Points, wheel, vehicle.
    LayOut,
    /// Where the tie rod's joints belong.
    Tune,
    /// Readings of the finished vehicle, and the move to make.
    SetUp,
}

impl Stage {
    /// In the order of the strip.
    pub const ALL: [Self; 3] = [Self::LayOut, Self::Tune, Self::SetUp];

    /// Its name on the strip.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::LayOut => "Lay out",
            Self::Tune => "Tune",
            Self::SetUp => "Set up",
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
            Self::SetUp => "Readings of the finished vehicle in, the next turn of the thread out",
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

/// What tells one caution from the others while its numbers change.
pub type CautionKey = (CautionKind, AxleName, Option<Side>, Option<PointRef>);

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
    /// Whether the rack goes where the inner tie-rod joint is put.
    pub rack_follows: bool,
    /// Toe curve as it was before the last change.
    pub ghost: Option<TravelCurve>,
    /// What the Tune stage is asked for.
    pub tune: crate::tune::settings::TuneView,
    /// What is looked at and half typed in the Set up stage.
    pub set_up: crate::set_up::settings::SetUpView,
    /// The caution whose remedies are unfolded.
    pub open_caution: Option<CautionKey>,
}

impl View {
    /// The edit that puts a point in a place, as the view has it: with the rack, or the point alone.
    #[must_use]
    pub fn moving(&self, point: PointRef, to: Triple) -> Edit {
        if self.takes_rack_along(point) {
            Edit::MoveRack { point, to }
        } else {
            Edit::MovePoint { point, to }
        }
    }

    /// Whether the rack goes along with this point.
    #[must_use]
    pub fn takes_rack_along(&self, point: PointRef) -> bool {
        self.rack_follows && can_take_rack_along(point)
    }
}

/// Whether a point is an inner joint on a rack.
#[must_use]
pub fn can_take_rack_along(point: PointRef) -> bool {
    point.axle == AxleName::Front && point.point == PointName::TieRodInner
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
            rack_follows: true,
            ghost: None,
            tune: crate::tune::settings::TuneView::default(),
            set_up: crate::set_up::settings::SetUpView::default(),
            open_caution: None,
        }
    }
}
