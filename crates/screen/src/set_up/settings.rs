//! What is looked at and half typed in the Set up stage: nothing of it is part of the build.

use trammel_build::Side;

/// Pages of the notebook's lower part in this stage.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SetUpPage {
    /// Toe read against travel.
    Readings,
    /// What to turn or shim.
    NextMove,
    /// Coordinates from a tape.
    TapeSurvey,
    /// Toe, camber, castor, weights.
    Static,
    /// Every session, and the sign-off list.
    Log,
    /// Measured parts.
    Parts,
}

impl SetUpPage {
    /// In the order of the switch.
    pub const ALL: [Self; 6] = [
        Self::Readings,
        Self::NextMove,
        Self::TapeSurvey,
        Self::Static,
        Self::Log,
        Self::Parts,
    ];

    /// Its name on the switch.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Readings => "Readings",
            Self::NextMove => "Next move",
            Self::TapeSurvey => "Tape survey",
            Self::Static => "Static",
            Self::Log => "Log",
            Self::Parts => "Parts",
        }
    }
}

/// A line of readings that is being typed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Entry {
    /// Where the wheel is; empty takes the next station.
    pub place: String,
    /// The first number, with its word where the method wants one.
    pub first: String,
    /// The second number, where the method has two.
    pub second: String,
}

/// A line of the survey that is being typed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SurveyEntry {
    /// Which kind of line, by its place in the list.
    pub kind: usize,
    /// The point, or the first one.
    pub from: String,
    /// The second point, where there is one.
    pub to: String,
    /// What was read, or what is known of the place.
    pub value: String,
    /// What stands behind a reading.
    pub extra: String,
}

/// The state of looking.
#[derive(Clone, Debug)]
pub struct SetUpView {
    /// Page of the notebook.
    pub page: SetUpPage,
    /// Wheel that is read.
    pub side: Side,
    /// Which way through the travel, from 1.
    pub run: u32,
    /// Rack position, the build's unit, to the left positive.
    pub rack: f64,
    /// The line being typed.
    pub entry: Entry,
    /// A table to be pasted.
    pub paste: String,
    /// The survey's line being typed.
    pub survey_entry: SurveyEntry,
    /// A survey to be pasted.
    pub survey_paste: String,
}

impl Default for SetUpView {
    fn default() -> Self {
        Self {
            page: SetUpPage::Readings,
            side: Side::Left,
            run: 1,
            rack: 0.0,
            entry: Entry::default(),
            paste: String::new(),
            survey_entry: SurveyEntry::default(),
            survey_paste: String::new(),
        }
    }
}
