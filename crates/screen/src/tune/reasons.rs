//! Why toe changes, worked out beside the window while something is dragged: the search for it is too long for a frame.

use egui::Context;
use trammel_geometry::Corner;
use trammel_tuning::{Cause, Stations};

use super::background::Background;

type Ask = (Corner, Stations);

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
    pub(crate) fn of(
        &mut self,
        ctx: &Context,
        corner: &Corner,
        stations: &Stations,
        held: bool,
    ) -> Option<Cause> {
        if !held {
            self.last = Cause::of(corner, stations);
            self.asked = None;
            return self.last;
        }
        if self.worker.is_none() {
            let work = |(corner, stations): Ask| Cause::of(&corner, &stations);
            self.worker = Background::start("reasons", ctx, work);
        }
        let ask = (*corner, stations.clone());
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
