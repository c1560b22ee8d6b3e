//! The drawing: three projections of one build to one scale, with points that can be dragged.

use egui::Ui;
use trammel_analysis::{Grade, Study};
use trammel_build::{AxleName, Build, PointRef, Triple};

use crate::tokens::Tokens;

/// Which way the drawing is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Projection {
    /// From ahead: the vehicle's left is on the right of the picture.
    Front,
    /// From above: forward is down, next to the front view.
    Plan,
    /// From the vehicle's left: forward is to the left.
    Side,
}

/// What the drawing shows.
#[derive(Clone, Copy, Debug)]
pub struct DrawingInput<'a> {
    /// The build, for points and what may move.
    pub build: &'a Build,
    /// Its results, for the linkage at rest and moved.
    pub study: &'a Study,
    /// The axle on the table.
    pub axle: AxleName,
    /// Wheel travel of the moved linkage, mm.
    pub travel: f64,
    /// Rack travel of the moved linkage, mm.
    pub rack: f64,
    /// Selected point.
    pub selected: Option<PointRef>,
    /// Point under the pointer, here or in the table.
    pub hovered: Option<PointRef>,
    /// Snap of a drag, in the build's unit; the fine step when a modifier is held.
    pub snap: f64,
    /// Fine snap, in the build's unit.
    pub fine_snap: f64,
    /// Instant-centre lines on demand.
    pub instant_centres: bool,
    /// Marks of the worst caution at a point.
    pub marks: &'a [(PointRef, Grade)],
    /// Colours.
    pub tokens: &'a Tokens,
}

/// What the user did on the drawing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DrawingEvent {
    /// The pointer is over this point.
    Hover(PointRef),
    /// Chosen, or nothing chosen.
    Select(Option<PointRef>),
    /// A drag began at this point.
    DragStarted(PointRef),
    /// It should now be here, the build's unit, vehicle axes, snapped.
    DragMoved(PointRef, Triple),
    /// The drag ended where it is.
    DragEnded,
    /// The drag was given up: put the point back.
    DragCancelled,
}

/// Zoom, pan and drag of the drawing.
#[derive(Clone, Debug, Default)]
pub struct Drawing {
    /// The projection that fills the table, or all three.
    pub fill: Option<Projection>,
}

impl Drawing {
    /// Paints the table in the space that is left and tells what was done on it.
    pub fn ui(&mut self, _ui: &mut Ui, _input: &DrawingInput<'_>) -> Vec<DrawingEvent> {
        Vec::new()
    }
}
