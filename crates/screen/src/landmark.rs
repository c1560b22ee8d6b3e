//! Where things stood when they were last shown, for what points at them.

use egui::{Context, Id, Rect};

/// A thing on the screen that can be pointed at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Landmark {
    /// The left inner tie-rod joint in the front view.
    InnerJoint,
    /// The plot of toe change.
    ToePlot,
    /// The tab of the Tune stage.
    TuneTab,
    /// The hint on the drawing, with its buttons.
    Hint,
    /// The button that puts the joint on its best spot.
    MoveIt,
    /// The worst caution, or the head of the panel without any.
    WorstCaution,
}

impl Landmark {
    fn id(self) -> Id {
        Id::unique(("landmark", self))
    }
}

/// Says where a thing stands in this frame.
pub fn mark(ctx: &Context, landmark: Landmark, rect: Rect) {
    let frame = ctx.cumulative_frame_nr();
    ctx.data_mut(|d| d.insert_temp(landmark.id(), (frame, rect)));
}

/// Where a thing stands, if it was shown in this frame or the last.
#[must_use]
pub fn place(ctx: &Context, landmark: Landmark) -> Option<Rect> {
    let (frame, rect) = ctx.data(|d| d.get_temp::<(u64, Rect)>(landmark.id()))?;
    (frame + 1 >= ctx.cumulative_frame_nr() && rect.is_positive()).then_some(rect)
}
