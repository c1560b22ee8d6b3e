//! The proof on the bench: it goes on in every stage, since its cautions are shown in every stage.

use egui::Context;

use super::Bench;
use crate::{prove::settings::MarkedPart, view::Stage};

impl Bench {
    /// Asks for the proof, takes what has come, and works out the forces of this frame's pose.
    pub(super) fn prove_go_on(&mut self, ctx: &Context) {
        let build = self.history.build();
        if self.prove.go_on(ctx, build, self.history.is_open()) {
            self.results.take_proof(build, self.prove.proof());
        }
        if let Some(axle) = self.results.axle(self.view.axle) {
            self.prove.pose_forces(build, axle, &self.view);
        }
    }

    /// The part that is marked on the drawing.
    pub(super) fn marked_part(&self) -> Option<MarkedPart> {
        self.view
            .prove
            .marked
            .filter(|_| self.view.stage == Stage::Prove)
    }
}
