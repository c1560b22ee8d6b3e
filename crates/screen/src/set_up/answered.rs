//! A question to a thread of its own, asked again when it changes.

use egui::Context;

use crate::background::Background;

/// The question last asked, and the newest answer.
pub(crate) struct Answered<Q, A> {
    worker: Option<Background<Q, (Q, A)>>,
    asked: Option<Q>,
    shown: Option<(Q, A)>,
}

impl<Q, A> Default for Answered<Q, A> {
    fn default() -> Self {
        Self {
            worker: None,
            asked: None,
            shown: None,
        }
    }
}

impl<Q: Clone + PartialEq + Send + 'static, A: Send + 'static> Answered<Q, A> {
    /// Takes what has come, and asks where the question is a new one.
    pub(crate) fn ask(&mut self, ctx: &Context, name: &str, question: &Q, answer: fn(&Q) -> A) {
        if self.worker.is_none() {
            self.worker = Background::start(name, ctx, move |q: Q| {
                let a = answer(&q);
                (q, a)
            });
        }
        let Some(worker) = &self.worker else { return };
        self.shown = worker.newest().or(self.shown.take());
        if self.asked.as_ref() != Some(question) {
            worker.hand_in(question.clone());
            self.asked = Some(question.clone());
        }
    }

    /// The newest answer.
    pub(crate) fn shown(&self) -> Option<&A> {
        self.shown.as_ref().map(|(_, a)| a)
    }

    /// Whether it is the answer to the question last asked.
    pub(crate) fn is_current(&self) -> bool {
        self.shown
            .as_ref()
            .is_some_and(|(q, _)| self.asked.as_ref() == Some(q))
    }
}
