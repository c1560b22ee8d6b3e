//! The proof on a thread of its own: coarse while something is held, whole when it is let go.

use std::sync::{
    Arc,
    atomic::{AtomicU64, Ordering},
};

use egui::Context;
use trammel_analysis::{Proof, ProofDepth, ThreadRow, prove, thread_comparison};
use trammel_build::{Build, Side};

use crate::background::Background;

struct Job {
    build: Build,
    depth: ProofDepth,
    edition: u64,
}

struct Done {
    edition: u64,
    result: Proved,
}

/// A proof with what is shown beside it.
#[derive(Clone, Debug, Default)]
pub(crate) struct Proved {
    pub proof: Proof,
    /// Threads side by side for the left and the right rack end; kept from the last whole proof while a coarse one is shown.
    pub threads: Option<[Vec<ThreadRow>; 2]>,
}

/// The newest proof and the worker behind it.
#[derive(Default)]
pub(crate) struct ProofWork {
    worker: Option<Background<Job, Option<Done>>>,
    asked: Option<(Build, ProofDepth)>,
    /// Counts what was asked for; a whole proof is given up when a newer one is wanted.
    edition: Arc<AtomicU64>,
    shown: Option<Done>,
}

impl ProofWork {
    /// The work with a build proved already, for a picture: it has no later frame to show the proof in.
    pub(crate) fn begun(build: &Build) -> Self {
        let shown = whole(build, ProofDepth::Full, &|| false);
        Self {
            asked: Some((build.clone(), ProofDepth::Full)),
            shown: shown.map(|result| Done { edition: 0, result }),
            ..Self::default()
        }
    }

    /// Asks for a proof of the build where it is not known yet; `true` when a newer proof has come.
    pub(crate) fn go_on(&mut self, ctx: &Context, build: &Build, held: bool) -> bool {
        if self.asked.is_none() && ctx.cumulative_frame_nr() == 0 {
            // The first frame of a window is not to share the processor with a proof.
            ctx.request_repaint();
            return false;
        }
        self.ask(ctx, build, held);
        let newest = self.worker.as_ref().and_then(Background::newest).flatten();
        let Some(mut newest) = newest else {
            return false;
        };
        if newest.result.threads.is_none() {
            newest.result.threads = self.shown.take().and_then(|d| d.result.threads);
        }
        self.shown = Some(newest);
        true
    }

    fn ask(&mut self, ctx: &Context, build: &Build, held: bool) {
        let known =
            |(b, depth): &(Build, ProofDepth)| (held || *depth == ProofDepth::Full) && b == build;
        if self.asked.as_ref().is_some_and(known) {
            return;
        }
        if self.worker.is_none() {
            let newest = Arc::clone(&self.edition);
            self.worker = Background::start("proof", ctx, move |job: Job| {
                // A coarse proof is done before it could be given up.
                let outdated = || {
                    job.depth == ProofDepth::Full && newest.load(Ordering::Relaxed) != job.edition
                };
                let result = whole(&job.build, job.depth, &outdated)?;
                Some(Done {
                    edition: job.edition,
                    result,
                })
            });
        }
        let Some(worker) = &self.worker else { return };
        let depth = if held {
            ProofDepth::Quick
        } else {
            ProofDepth::Full
        };
        let edition = self.edition.fetch_add(1, Ordering::Relaxed) + 1;
        worker.hand_in(Job {
            build: build.clone(),
            depth,
            edition,
        });
        self.asked = Some((build.clone(), depth));
    }

    /// The newest proof.
    pub(crate) fn shown(&self) -> Option<&Proved> {
        self.shown.as_ref().map(|d| &d.result)
    }

    /// Whether it is that of the build as it was last seen.
    pub(crate) fn is_current(&self) -> bool {
        let edition = self.edition.load(Ordering::Relaxed);
        self.shown.as_ref().is_some_and(|d| d.edition == edition)
    }
}

fn whole(build: &Build, depth: ProofDepth, outdated: &dyn Fn() -> bool) -> Option<Proved> {
    let proof = prove(build, depth, outdated)?;
    let threads = (depth == ProofDepth::Full)
        .then(|| [Side::Left, Side::Right].map(|side| thread_comparison(build, side)));
    Some(Proved { proof, threads })
}
