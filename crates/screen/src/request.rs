//! What the parts of the screen ask for. They read; the bench carries the requests out after the frame, in order.

use trammel_analysis::Raise;
use trammel_build::{Edit, PointRef};

use crate::action::Action;

/// One request.
#[derive(Clone, Debug, PartialEq)]
pub enum Request {
    /// Something that also has a menu entry or key.
    Act(Action),
    /// An edit as one undo step.
    Edit(Edit),
    /// Choose a point, or none.
    Select(Option<PointRef>),
    /// The pointer is over a point in a table.
    Hover(PointRef),
    /// Put the moved linkage at a travel and rack position, mm.
    Pose {
        /// Wheel travel, mm.
        travel: f64,
        /// Rack travel, mm.
        rack: f64,
    },
    /// Let the rack follow the inner joint, or leave it.
    RackFollows(bool),
    /// Open a file.
    OpenPath(std::path::PathBuf),
    /// Open a demo build by its name.
    OpenDemo(&'static str),
    /// An edit as one undo step with a name of its own.
    EditAs {
        /// What an undo list calls it.
        name: String,
        /// The edits, made in order; all of them or none.
        edits: Vec<Edit>,
    },
    /// Make another ride height the build's, as one undo step.
    RideHeight(Raise),
    /// The same, the wheels standing at a travel of the moved linkage, mm: what is shown becomes the ride height.
    RideHeightAt {
        /// Wheel travel, mm.
        travel: f64,
        /// What becomes of camber and stops; by how much follows from the travel.
        how: Raise,
    },
    /// Write what the sliders of the page What if try out into the build, as one undo step.
    ApplyWhatIf,
    /// Start a search for layouts, or stop it.
    Search(bool),
    /// Write files of the sheets; where to and which kinds is asked.
    Export(trammel_sheets::Which),
    /// Look at what was written last, in the system's viewer.
    OpenExported,
    /// Something with the drawer of measured parts.
    Parts(crate::set_up::drawer::PartAsk),
    /// Save the cards for setting up; where to is asked.
    SaveCards,
    /// Save the sheet to measure parts by; where to is asked.
    SaveMeasuringSheet,
    /// Take a sheet of toe readings from a file; which one is asked.
    OpenReadings,
    /// Take a tape survey from a file; which one is asked.
    OpenSurvey,
    /// Say something to the user.
    Say(String),
    /// Something typed could not be used: say why and what stands instead.
    Refuse(String),
}
