//! Work that would hold a frame up, on a thread of its own. Only the newest job counts.

use std::sync::{
    Arc,
    atomic::{AtomicUsize, Ordering},
    mpsc::{Receiver, Sender, channel},
};

use egui::{Context, Id};

type Count = Arc<AtomicUsize>;

fn count(ctx: &Context) -> Count {
    ctx.data_mut(|data| {
        data.get_temp_mut_or_default::<Count>(Id::unique("jobs in hand"))
            .clone()
    })
}

/// How many jobs of a window are handed in and neither done nor given up for newer ones. At nought the next frame shows all that was asked for.
#[must_use]
pub fn jobs_in_hand(ctx: &Context) -> usize {
    count(ctx).load(Ordering::Acquire)
}

/// A worker that takes jobs and gives results, and wakes the window when there is one. It ends when this is dropped.
pub(crate) struct Background<J, R> {
    jobs: Sender<J>,
    results: Receiver<R>,
    in_hand: Count,
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
        let in_hand = count(ctx);
        let (ctx, counted) = (ctx.clone(), in_hand.clone());
        let run = move || {
            while let Ok(mut job) = to_do.recv() {
                while let Ok(newer) = to_do.try_recv() {
                    job = newer;
                    counted.fetch_sub(1, Ordering::Release);
                }
                let wanted = done.send(work(job)).is_ok();
                counted.fetch_sub(1, Ordering::Release);
                if !wanted {
                    counted.fetch_sub(to_do.try_iter().count(), Ordering::Release);
                    return;
                }
                ctx.request_repaint();
            }
        };
        std::thread::Builder::new()
            .name(name.to_owned())
            .spawn(run)
            .ok()?;
        Some(Self {
            jobs,
            results,
            in_hand,
        })
    }

    /// Hands a job in. A worker that is gone takes none, and nothing comes of it.
    pub(crate) fn hand_in(&self, job: J) {
        self.in_hand.fetch_add(1, Ordering::Release);
        if self.jobs.send(job).is_err() {
            self.in_hand.fetch_sub(1, Ordering::Release);
        }
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
