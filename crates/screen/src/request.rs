//! What the parts of the screen ask for. They read; the bench carries the requests out after the frame, in order.

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
    /// Start a search for layouts, or stop it.
    Search(bool),
    /// Something with the drawer of measured parts.
    Parts(crate::set_up::drawer::PartAsk),
    /// Save the cards for setting up; where to is asked.
    SaveCards,
    /// Say something to the user.
    Say(String),
    /// Something typed could not be used: say why and what stands instead.
    Refuse(String),
}
