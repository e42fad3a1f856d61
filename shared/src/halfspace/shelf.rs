//! Where solved shapes are kept. The engine has no state of its own: whoever calls it brings a shelf, or none.

use std::collections::VecDeque;
use std::sync::{Arc, Mutex, PoisonError};

use super::{Shape, Solved};

/// Where solved shapes are kept.
pub trait Shelf: Sync {
    /// The solution kept for a shape.
    fn get(&self, shape: &Shape) -> Option<Arc<Solved>>;
    /// Keeps a solution.
    fn put(&self, shape: &Shape, solved: Arc<Solved>);
}

/// Keeps nothing.
#[derive(Debug, Clone, Copy, Default)]
pub struct NoShelf;

impl Shelf for NoShelf {
    fn get(&self, _shape: &Shape) -> Option<Arc<Solved>> {
        None
    }
    fn put(&self, _shape: &Shape, _solved: Arc<Solved>) {}
}

/// Keeps the last few solutions in memory; the one used longest ago goes first.
#[derive(Debug)]
pub struct SmallShelf {
    most: usize,
    kept: Mutex<VecDeque<Arc<Solved>>>,
}

impl SmallShelf {
    /// A shelf for so many solutions, each some tens of kilobytes.
    pub fn holding(most: usize) -> Self {
        Self {
            most,
            kept: Mutex::new(VecDeque::new()),
        }
    }
}

impl SmallShelf {
    /// This shelf before another one, so that a shape is solved once even where nothing else is kept.
    pub fn before(self, outer: &dyn Shelf) -> Before<'_> {
        Before { inner: self, outer }
    }
}

/// A shelf of one's own before the one that was brought.
pub struct Before<'a> {
    inner: SmallShelf,
    outer: &'a dyn Shelf,
}

impl Shelf for Before<'_> {
    fn get(&self, shape: &Shape) -> Option<Arc<Solved>> {
        self.inner.get(shape).or_else(|| self.outer.get(shape))
    }

    fn put(&self, shape: &Shape, solved: Arc<Solved>) {
        self.inner.put(shape, Arc::clone(&solved));
        self.outer.put(shape, solved);
    }
}

impl Shelf for SmallShelf {
    fn get(&self, shape: &Shape) -> Option<Arc<Solved>> {
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        let place = kept.iter().position(|solved| solved.shape == *shape)?;
        let found = kept.remove(place)?;
        kept.push_front(Arc::clone(&found));
        Some(found)
    }

    fn put(&self, shape: &Shape, solved: Arc<Solved>) {
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        kept.retain(|other| other.shape != *shape);
        kept.push_front(solved);
        kept.truncate(self.most);
    }
}
