//! What is done on the drawing: a drag is one undo step and everything follows it in the same frame.

use egui::Context;
use trammel_build::{PointRef, Triple};

use super::Bench;
use crate::drawing::DrawingEvent;

impl Bench {
    pub(super) fn drawing_events(&mut self, ctx: &Context, events: Vec<DrawingEvent>) {
        for event in events {
            match event {
                DrawingEvent::Hover(point) => self.view.hovered = Some(point),
                DrawingEvent::Select(point) => self.select(point),
                DrawingEvent::DragStarted(point) => self.begin_drag(point),
                DrawingEvent::DragMoved(point, to) => self.drag_to(ctx, point, to),
                DrawingEvent::KeepOut(event) => self.keep_out_event(ctx, event),
                DrawingEvent::DragEnded => {
                    self.view.tune.draws_keep_out = false;
                    self.history.commit();
                    self.work_out();
                }
                DrawingEvent::DragCancelled => {
                    self.history.abort();
                    self.work_out();
                }
            }
        }
    }

    fn begin_drag(&mut self, point: PointRef) {
        self.keep_ghost();
        self.select(Some(point));
        self.message = None;
        let here = self.history.build().point(point).unwrap_or_default();
        self.history.begin(self.view.moving(point, here).name());
    }

    /// A place that can't be built is passed over: the point waits at the last one that can.
    fn drag_to(&mut self, ctx: &Context, point: PointRef, to: Triple) {
        match self.history.edit(&self.view.moving(point, to)) {
            Ok(()) => self.work_out(),
            Err(fault) => self.complain(
                ctx,
                format!("Not there: {fault}. The point waits at the last place that can be built."),
            ),
        }
    }
}
