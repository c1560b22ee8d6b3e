//! What is looked at in the Prove stage: nothing of it is part of the build.

use trammel_analysis::{ProofPart, ProofRow};
use trammel_build::{AxleName, PointName, Side};
use trammel_strength::{check::Check, thread::System};

/// Pages of the notebook in this stage.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ProvePage {
    /// Every check, worst first.
    Checks,
    /// What is put on.
    LoadCases,
    /// The force in every member.
    Forces,
    /// Threads and grades of the rack end side by side.
    RackEnd,
    /// What the build is made of.
    Parts,
}

impl ProvePage {
    /// In the order of the switch.
    pub const ALL: [Self; 5] = [
        Self::Checks,
        Self::LoadCases,
        Self::Forces,
        Self::RackEnd,
        Self::Parts,
    ];

    /// Its name on the switch.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Checks => "Checks",
            Self::LoadCases => "Load cases",
            Self::Forces => "Forces",
            Self::RackEnd => "Rack end",
            Self::Parts => "Parts",
        }
    }
}

/// What is entered on the page of parts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PartPage {
    /// The threaded end of the rack.
    RackEnd,
    /// The tie rod.
    TieRod,
    /// Both arms' tubes.
    Arms,
    /// Joint, bolt and bracket at a point.
    Joints,
    /// Rim, tyre, spring unit.
    Wheel,
    /// Steering wheel, stops.
    Steering,
    /// Materials of one's own.
    Materials,
    /// Where cautions begin.
    Limits,
}

impl PartPage {
    /// In the order of the chips.
    pub const ALL: [Self; 8] = [
        Self::RackEnd,
        Self::TieRod,
        Self::Arms,
        Self::Joints,
        Self::Wheel,
        Self::Steering,
        Self::Materials,
        Self::Limits,
    ];

    /// Its name on the chip.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::RackEnd => "rack end",
            Self::TieRod => "tie rod",
            Self::Arms => "arms",
            Self::Joints => "joints",
            Self::Wheel => "wheel, spring",
            Self::Steering => "steering",
            Self::Materials => "materials",
            Self::Limits => "limits",
        }
    }

    /// What is entered there.
    #[must_use]
    pub fn meaning(self) -> &'static str {
        match self {
            Self::RackEnd => {
                "The threaded end of the rack: thread, grade, how deep, how it was made."
            }
            Self::TieRod => "Tube, adapters and rod ends of the tie rod.",
            Self::Arms => "Tubes of both A-arms.",
            Self::Joints => "Joint, bolt and bracket at each point.",
            Self::Wheel => "The room that rim, tyre and spring unit take.",
            Self::Steering => "Steering wheel, friction, positive stop.",
            Self::Materials => "Materials of your own, with where their figures come from.",
            Self::Limits => "The factors and gaps that are wanted.",
        }
    }
}

/// What a plot runs over.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Over {
    /// Wheel travel, the rack where it is.
    Travel,
    /// The rack, the wheel where it is.
    Rack,
}

/// Which rows of the checks are listed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Listing {
    /// The worst load case of each check of a part.
    Worst,
    /// Every load case.
    EveryCase,
}

/// What the comparison of threads shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum EndFigure {
    /// Factor against yield.
    Factor,
    /// Steepest tie rod that keeps the wanted factor.
    RodAngle,
    /// Longest free length that keeps it.
    FreeLength,
}

/// What is plotted on the page of forces.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Plotted {
    /// A force of the table.
    Force(super::forces::Member),
    /// The factor of a check.
    Factor(ProofPart, Check),
}

/// What tells a row from the others while its numbers change.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct RowKey {
    axle: AxleName,
    side: Option<Side>,
    part: ProofPart,
    check: Check,
    load_case: Option<String>,
}

impl RowKey {
    /// Of a row.
    #[must_use]
    pub fn of(row: &ProofRow) -> Self {
        Self {
            axle: row.axle,
            side: row.side,
            part: row.part,
            check: row.check,
            load_case: row.load_case.clone(),
        }
    }
}

/// A part that is marked on the drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MarkedPart {
    /// Axle.
    pub axle: AxleName,
    /// Side.
    pub side: Side,
    /// Which.
    pub part: ProofPart,
}

/// The state of looking at the Prove stage.
#[derive(Clone, Debug)]
pub struct ProveView {
    /// Page of the notebook.
    pub page: ProvePage,
    /// Rows listed.
    pub listing: Listing,
    /// The row that is unfolded.
    pub open_row: Option<RowKey>,
    /// The part that is marked on the drawing.
    pub marked: Option<MarkedPart>,
    /// The load case whose forces are shown; the first that is on where none was chosen.
    pub case: Option<String>,
    /// Which way a wheel that is turned on the spot is resisted: 1 or -1.
    pub sense: f64,
    /// Force arrows on the drawing.
    pub arrows: bool,
    /// What is plotted.
    pub plotted: Plotted,
    /// Over what.
    pub over: Over,
    /// The load case that is being edited.
    pub edited_case: Option<String>,
    /// What the comparison of threads shows.
    pub end_figure: EndFigure,
    /// Threads of which system.
    pub end_system: Option<System>,
    /// The thread and grade that are looked at.
    pub end_choice: Option<(String, String)>,
    /// What is entered on the page of parts.
    pub part: PartPage,
    /// The point whose joint is entered.
    pub joint: PointName,
}

impl Default for ProveView {
    fn default() -> Self {
        Self {
            page: ProvePage::Checks,
            listing: Listing::Worst,
            open_row: None,
            marked: None,
            case: None,
            sense: 1.0,
            arrows: true,
            plotted: Plotted::Force(super::forces::Member::TieRod),
            over: Over::Travel,
            edited_case: None,
            end_figure: EndFigure::Factor,
            end_system: None,
            end_choice: None,
            part: PartPage::RackEnd,
            joint: PointName::TieRodInner,
        }
    }
}
