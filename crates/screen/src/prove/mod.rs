//! The Prove stage: what every part bears under every load case, against which limit.
//!
//! | where | what |
//! |---|---|
//! | [`settings`] | what is looked at |
//! | `work` | the proof on a thread of its own |
//! | [`forces`] | member forces of the chosen load case, and the factor of a check pose by pose |
//! | `arrows` | force arrows for the drawing |
//!
//! What is worked out here depends on the build and on what is asked for, and is never saved.

mod arrows;
pub mod forces;
pub mod settings;
mod work;

use egui::Context;
use trammel_analysis::{AxleStudy, FactorRow, ForceRow, Proof, ThreadRow};
use trammel_build::{Build, Side};

use crate::{
    drawing::ForcePicture,
    view::{Stage, View},
};
use forces::{ForcesWork, Place, chosen_case};
use work::ProofWork;

/// Everything that the stage has worked out.
#[derive(Default)]
pub struct Prove {
    work: ProofWork,
    forces: ForcesWork,
    picture: Option<ForcePicture>,
}

impl Prove {
    /// With a build proved already.
    pub(crate) fn begun(build: &Build) -> Self {
        Self {
            work: ProofWork::begun(build),
            ..Self::default()
        }
    }

    /// Asks for the proof of the build, in every stage; `true` when a newer one has come.
    pub(crate) fn go_on(&mut self, ctx: &Context, build: &Build, held: bool) -> bool {
        self.work.go_on(ctx, build, held)
    }

    /// Works out the forces that the stage shows at this pose.
    pub(crate) fn pose_forces(&mut self, build: &Build, axle: &AxleStudy, view: &View) {
        self.picture = None;
        if view.stage != Stage::Prove {
            return;
        }
        let place = Place {
            axle: view.axle,
            side: view.side,
            travel: view.travel,
            rack: view.rack,
        };
        self.forces
            .go_on(build, axle.model.lock(), &place, &view.prove);
        if !view.prove.arrows {
            return;
        }
        let Some(Ok(row)) = self.forces.here() else {
            return;
        };
        self.picture = chosen_case(build, &view.prove).and_then(|case| {
            arrows::picture(
                row,
                self.forces.acting(),
                case.name,
                axle.model.linkage(view.side),
                (view.side, build.unit),
            )
        });
    }

    /// The newest proof; none before there is any.
    #[must_use]
    pub fn proof(&self) -> Option<&Proof> {
        self.work.shown().map(|p| &p.proof)
    }

    /// Whether the proof is that of the build as it stands.
    #[must_use]
    pub fn is_current(&self) -> bool {
        self.work.is_current()
    }

    /// Threads side by side for the rack end of a side.
    pub(crate) fn threads(&self, side: Side) -> &[ThreadRow] {
        let both = self.work.shown().and_then(|p| p.threads.as_ref());
        both.map_or(&[], |[left, right]| match side {
            Side::Left => left,
            Side::Right => right,
        })
    }

    /// Forces at the present pose, or why there are none.
    #[must_use]
    pub fn forces_here(&self) -> Option<Result<&ForceRow, &str>> {
        self.forces.here()
    }

    /// Both sides on the rack at the present pose, and what they ask of the hands; none on an axle without a rack.
    #[must_use]
    pub fn steering_here(&self) -> Option<trammel_analysis::SteeringForces> {
        self.forces.steering()
    }

    /// Forces over travel or rack.
    pub(crate) fn forces_along(&self) -> &[ForceRow] {
        self.forces.along()
    }

    /// The factor that is plotted: at the present pose, and over travel or rack.
    pub(crate) fn factors(&self) -> (Option<FactorRow>, &[FactorRow]) {
        self.forces.factors()
    }

    /// The arrows on the drawing, when the stage shows them.
    #[must_use]
    pub fn picture(&self) -> Option<&ForcePicture> {
        self.picture.as_ref()
    }
}
