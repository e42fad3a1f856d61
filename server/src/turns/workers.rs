//! The threads on which plans are designed, printed, and photographs written anew: they give way to those that serve
//! requests, so that an answer which needs no such work never waits behind it.

use std::sync::Arc;

use rayon::{ThreadPool, ThreadPoolBuilder};
use tokio::sync::oneshot;

use super::busy::Work;
use crate::error::Trouble;

/// How far the system puts these threads behind the others (0 is like them, 19 the most): a ninth of a processor for which
/// both ask.
const BEHIND: i32 = 10;

/// The threads. Every copy is the same.
#[derive(Clone, Default)]
pub(super) struct Workers {
    many: Option<Arc<ThreadPool>>,
    /// What decodes a photograph shares its work among the threads where it runs: here there is one.
    darkroom: Option<Arc<ThreadPool>>,
}

impl Workers {
    /// So many threads, and one for photographs.
    pub(super) fn new(threads: usize) -> Self {
        Self {
            many: pool(threads, "work"),
            darkroom: pool(1, "darkroom"),
        }
    }

    /// Works on one of them; where the system gave none, on any thread that may be kept waiting.
    ///
    /// # Errors
    /// The work panicked.
    pub(super) async fn run<T: Send + 'static>(
        &self,
        kind: Work,
        work: impl FnOnce() -> T + Send + 'static,
    ) -> Result<T, Trouble> {
        let pool = match kind {
            Work::Darkroom => &self.darkroom,
            Work::Design | Work::Press => &self.many,
        };
        let (done, result) = oneshot::channel();
        let work = move || drop(done.send(work()));
        match pool {
            Some(pool) => pool.spawn(work),
            None => drop(tokio::task::spawn_blocking(work)),
        }
        // Work that panicked drops its end.
        result
            .await
            .map_err(|error| Trouble::broken("work stopped", &error))
    }
}

fn pool(threads: usize, name: &'static str) -> Option<Arc<ThreadPool>> {
    let pool = ThreadPoolBuilder::new()
        .num_threads(threads)
        .thread_name(move |number| format!("{name}-{number}"))
        .start_handler(|_| give_way())
        .panic_handler(|_| tracing::error!("work panicked"))
        .build();
    pool.inspect_err(|error| tracing::warn!(%error, "no threads of their own for work"))
        .ok()
        .map(Arc::new)
}

/// Puts this thread behind the others of the process; a system that orders whole processes only is left alone.
pub(crate) fn give_way() {
    #[cfg(target_os = "linux")]
    if let Err(error) = rustix::process::setpriority_process(None, BEHIND) {
        tracing::warn!(%error, "a thread that works is not put behind those that answer");
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[tokio::test]
    async fn work_is_done_behind_what_serves_and_photographs_on_one_thread() {
        let workers = Workers::new(2);
        for kind in Work::ALL {
            let (threads, behind) = workers
                .run(kind, || {
                    (
                        rayon::current_num_threads(),
                        rustix::process::getpriority_process(None).ok(),
                    )
                })
                .await
                .unwrap();
            assert_eq!(threads, if kind == Work::Darkroom { 1 } else { 2 });
            if cfg!(target_os = "linux") {
                assert_eq!(behind, Some(BEHIND), "{kind:?}");
            }
        }
        let here = rustix::process::getpriority_process(None).ok();
        assert_ne!(here, Some(BEHIND), "what serves stays where it is");
    }

    #[tokio::test]
    async fn work_that_panics_is_told_and_the_next_is_done() {
        let workers = Workers::new(1);
        for kind in Work::ALL {
            let broken = workers.run(kind, || -> u8 { panic!("as it was told") });
            assert!(broken.await.is_err());
            assert_eq!(workers.run(kind, || 7).await.ok(), Some(7));
        }
    }
}
