//! What there is only so much of, for all together and for each client: connections, requests that are worked on, bytes of
//! bodies that are held.

use std::collections::HashMap;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use crate::client::Circle;

/// So much, and no more. Every copy is the same.
#[derive(Clone)]
pub struct Shares(Arc<Pot>);

struct Pot {
    most: usize,
    each: usize,
    taken: Mutex<Taken>,
}

#[derive(Default)]
struct Taken {
    all: usize,
    by: HashMap<Circle, usize>,
}

/// What was taken; it goes back when this is dropped.
pub struct Share {
    pot: Shares,
    circles: Vec<(Circle, u32)>,
    much: usize,
}

/// Why there is none left.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spent {
    /// This client has its part.
    Yours,
    /// All together have all.
    All,
}

impl Shares {
    /// So much for all, and so much for one client.
    #[must_use]
    pub fn new(most: usize, each: usize) -> Self {
        Self(Arc::new(Pot {
            most,
            each,
            taken: Mutex::default(),
        }))
    }

    /// A share of nothing, which may grow; for whoever is in these circles.
    #[must_use]
    pub fn open(&self, circles: Vec<(Circle, u32)>) -> Share {
        Share {
            pot: self.clone(),
            circles,
            much: 0,
        }
    }

    /// Takes one.
    ///
    /// # Errors
    /// None is left.
    pub fn one(&self, circles: Vec<(Circle, u32)>) -> Result<Share, Spent> {
        let mut share = self.open(circles);
        share.grow(1).map(|()| share)
    }

    /// How much is taken by all.
    #[must_use]
    pub fn taken(&self) -> usize {
        self.lock().all
    }

    fn lock(&self) -> MutexGuard<'_, Taken> {
        self.0.taken.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Share {
    /// Takes more.
    ///
    /// # Errors
    /// So much is not left; nothing is taken then.
    pub fn grow(&mut self, more: usize) -> Result<(), Spent> {
        let pot = &self.pot.0;
        let mut taken = self.pot.lock();
        let room = |(circle, shares): &(Circle, u32)| {
            let has = taken.by.get(circle).copied().unwrap_or(0);
            has + more <= pot.each.saturating_mul(*shares as usize)
        };
        if !self.circles.iter().all(room) {
            return Err(Spent::Yours);
        }
        if taken.all + more > pot.most {
            return Err(Spent::All);
        }
        taken.all += more;
        for (circle, _) in &self.circles {
            *taken.by.entry(*circle).or_default() += more;
        }
        self.much += more;
        Ok(())
    }
}

impl Drop for Share {
    fn drop(&mut self) {
        if self.much == 0 {
            return;
        }
        let mut taken = self.pot.lock();
        taken.all -= self.much;
        for (circle, _) in &self.circles {
            let left = taken.by.get_mut(circle).map(|has| {
                *has -= self.much;
                *has
            });
            if left == Some(0) {
                taken.by.remove(circle);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn circles(address: &str) -> Vec<(Circle, u32)> {
        Circle::of_address(address.parse().unwrap(), false)
    }

    #[test]
    fn one_client_has_its_part_and_another_the_rest_and_all_goes_back() {
        let shares = Shares::new(3, 2);
        let held: Vec<_> = (0..2)
            .map(|_| shares.one(circles("192.0.2.1")).unwrap())
            .collect();
        assert_eq!(
            shares.one(circles("192.0.2.1")).err(),
            Some(Spent::Yours),
            "its part is spent"
        );
        let other = shares.one(circles("192.0.2.2")).unwrap();
        assert_eq!(shares.one(Vec::new()).err(), Some(Spent::All));
        drop((held, other));
        assert_eq!(shares.taken(), 0);
        assert!(shares.lock().by.is_empty(), "nobody is kept in mind");
    }

    #[test]
    fn a_line_of_many_households_has_more_than_one_and_not_all() {
        let shares = Shares::new(1000, 2);
        let held: Vec<_> = (0..40)
            .filter_map(|household| {
                shares
                    .one(circles(&format!("2001:db8:1:{household:x}::1")))
                    .ok()
            })
            .collect();
        assert_eq!(held.len(), 8, "four households' part in their /56");
    }
}
