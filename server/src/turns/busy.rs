//! How many work and how many wait, by work.

use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

/// Work that keeps a processor busy.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Work {
    /// A plan is designed.
    Design,
    /// Sheets are printed.
    Press,
    /// A photograph is written anew.
    Darkroom,
}

impl Work {
    /// Every one.
    pub const ALL: [Self; 3] = [Self::Design, Self::Press, Self::Darkroom];

    /// Its name among the figures.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Design => "design",
            Self::Press => "press",
            Self::Darkroom => "darkroom",
        }
    }
}

/// The counts: working and waiting, for each work.
#[derive(Default)]
pub(super) struct Busy([[AtomicUsize; 2]; 3]);

/// Somebody who works or waits, until this is dropped.
pub(super) struct Stay {
    busy: Arc<Busy>,
    work: Work,
    waits: bool,
}

impl Busy {
    fn count(&self, work: Work, waits: bool) -> &AtomicUsize {
        &self.0[work as usize][usize::from(waits)]
    }

    pub(super) fn now(&self, work: Work) -> (usize, usize) {
        let read = |waits| self.count(work, waits).load(Ordering::Relaxed);
        (read(false), read(true))
    }
}

impl Stay {
    pub(super) fn begin(busy: &Arc<Busy>, work: Work, waits: bool) -> Self {
        busy.count(work, waits).fetch_add(1, Ordering::Relaxed);
        Self {
            busy: Arc::clone(busy),
            work,
            waits,
        }
    }
}

impl Drop for Stay {
    fn drop(&mut self) {
        self.busy
            .count(self.work, self.waits)
            .fetch_sub(1, Ordering::Relaxed);
    }
}
