//! Work that would hold a frame up, on a thread of its own. Only the newest job counts.

use std::sync::mpsc::{Receiver, Sender, channel};

use egui::Context;

/// A worker that takes jobs and gives results, and wakes the window when there is one. It ends when this is dropped.
pub(crate) struct Background<J, R> {
    jobs: Sender<J>,
    results: Receiver<R>,
}

impl<J: Send + 'static, R: Send + 'static> Background<J, R> {
    /// Starts a worker; `None` where the system gives no thread.
    pub(crate) fn start(
        name: &str,
        ctx: &Context,
        mut work: impl FnMut(J) -> R + Send + 'static,
    ) -> Option<Self> {
        let (jobs, to_do) = channel::<J>();
        let (done, results) = channel();
        let ctx = ctx.clone();
        let run = move || {
            while let Ok(mut job) = to_do.recv() {
                while let Ok(newer) = to_do.try_recv() {
                    job = newer;
                }
                if done.send(work(job)).is_err() {
                    return;
                }
                ctx.request_repaint();
            }
        };
        std::thread::Builder::new()
            .name(name.to_owned())
            .spawn(run)
            .ok()?;
        Some(Self { jobs, results })
    }

    /// Hands a job in. A worker that is gone takes none, and nothing comes of it.
    pub(crate) fn hand_in(&self, job: J) {
        let _ = self.jobs.send(job);
    }

    /// The newest result since the last look.
    pub(crate) fn newest(&self) -> Option<R> {
        self.results.try_iter().last()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_job_is_always_done() {
        let worker = Background::start("test", &Context::default(), |n: u32| {
            std::thread::sleep(std::time::Duration::from_millis(2));
            n
        })
        .unwrap();
        (0..50).for_each(|n| worker.hand_in(n));
        let mut last = None;
        for _ in 0..2000 {
            last = worker.newest().or(last);
            if last == Some(49) {
                return;
            }
            std::thread::sleep(std::time::Duration::from_millis(1));
        }
        panic!("{last:?}");
    }
}
