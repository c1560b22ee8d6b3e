//! Why toe changes, worked out beside the window while something is dragged: the search for it is too long for a frame.

use egui::Context;
use trammel_geometry::Corner;
use trammel_tuning::{Cause, Stations, TieRodJoint};

use crate::background::Background;

/// A corner, the joint that may be out of place, and where toe is looked at.
type Ask = (Corner, TieRodJoint, Stations);

/// The cause with its worker.
#[derive(Default)]
pub(crate) struct Reasons {
    worker: Option<Background<Ask, Option<Cause>>>,
    asked: Option<Ask>,
    last: Option<Cause>,
}

impl Reasons {
    /// Why the toe of a corner changes; while something is dragged, a frame or two late. `true` when something has come since the last look.
    pub(crate) fn take(&mut self) -> bool {
        let came = self.worker.as_ref().and_then(Background::newest);
        let news = came.is_some();
        self.last = came.unwrap_or(self.last.take());
        news
    }

    /// The cause in a corner: at once, or the last one known while its own is worked out.
    pub(crate) fn of(&mut self, ctx: &Context, ask: Ask, held: bool) -> Option<Cause> {
        if !held {
            self.last = cause(&ask);
            self.asked = None;
            return self.last;
        }
        if self.worker.is_none() {
            self.worker = Background::start("reasons", ctx, |ask| cause(&ask));
        }
        if let Some(worker) = self
            .worker
            .as_ref()
            .filter(|_| self.asked.as_ref() != Some(&ask))
        {
            worker.hand_in(ask.clone());
            self.asked = Some(ask);
        }
        self.last
    }
}

fn cause((corner, joint, stations): &Ask) -> Option<Cause> {
    Cause::of(corner, *joint, stations)
}
