//! Counting by a moment: each client has, for each kind, the time at which it will have paid for all that it took
//! (the generic cell rate algorithm, ITU-T I.371). One number a client; the least recently seen are forgotten.

use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, Instant};

use moka::policy::EvictionPolicy;
use moka::sync::Cache;

use super::Kind;

/// Most counts that are kept: a few megabytes.
const MOST: u64 = 50_000;

/// The counts. Cheap to clone.
#[derive(Clone)]
pub(super) struct Buckets {
    begun: Instant,
    paid: Cache<(Kind, u128), Arc<AtomicU64>>,
}

impl Default for Buckets {
    fn default() -> Self {
        let paid = Cache::builder()
            .max_capacity(MOST)
            .eviction_policy(EvictionPolicy::lru())
            .build();
        Self {
            begun: Instant::now(),
            paid,
        }
    }
}

impl Buckets {
    /// Takes one, or says how long to wait for it.
    pub(super) fn take(&self, kind: Kind, key: u128) -> Result<(), Duration> {
        let paid = self
            .paid
            .get_with((kind, key), || Arc::new(AtomicU64::new(0)));
        let now = self.now();
        let taken = paid.fetch_update(Ordering::Relaxed, Ordering::Relaxed, |at| {
            after(kind, now, at).ok()
        });
        taken
            .map(drop)
            .map_err(|at| after(kind, now, at).err().unwrap_or_default())
    }

    /// Whether one could be taken, without taking it.
    pub(super) fn look(&self, kind: Kind, key: u128) -> Result<(), Duration> {
        let Some(paid) = self.paid.get(&(kind, key)) else {
            return Ok(());
        };
        after(kind, self.now(), paid.load(Ordering::Relaxed)).map(drop)
    }

    fn now(&self) -> u64 {
        u64::try_from(self.begun.elapsed().as_micros()).unwrap_or(u64::MAX)
    }
}

/// When all is paid after one more, or how long to wait.
fn after(kind: Kind, now: u64, paid: u64) -> Result<u64, Duration> {
    let (burst, each) = kind.rate();
    let each = u64::try_from(each.as_micros()).unwrap_or(u64::MAX);
    let next = paid.max(now).saturating_add(each);
    let ahead = next - now;
    let most = each.saturating_mul(u64::from(burst));
    if ahead <= most {
        Ok(next)
    } else {
        Err(Duration::from_micros(ahead - most))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_burst_is_taken_and_then_one_at_a_time() {
        let (burst, each) = Kind::Begin.rate();
        let each = each.as_micros() as u64;
        let mut paid = 0;
        for _ in 0..burst {
            paid = after(Kind::Begin, 0, paid).unwrap();
        }
        assert_eq!(
            after(Kind::Begin, 0, paid),
            Err(Duration::from_micros(each))
        );
        assert_eq!(
            after(Kind::Begin, each - 1, paid),
            Err(Duration::from_micros(1))
        );
        assert!(after(Kind::Begin, each, paid).is_ok());
    }

    #[test]
    fn clients_do_not_pay_for_each_other_and_memory_is_bounded() {
        let buckets = Buckets::default();
        let taken = (0..100)
            .filter(|_| buckets.take(Kind::Door, 7).is_ok())
            .count();
        assert_eq!(taken, 10);
        assert!(
            buckets.look(Kind::Door, 7).is_err()
                && buckets.take(Kind::Door, 8).is_ok()
                && buckets.take(Kind::Guess, 7).is_ok()
        );
        for client in 0..(MOST as u128 * 3) {
            let _ = buckets.take(Kind::Design, client);
        }
        buckets.paid.run_pending_tasks();
        assert!(buckets.paid.entry_count() <= MOST);
    }
}
