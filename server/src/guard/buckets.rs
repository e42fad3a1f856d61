//! Counting by a moment: each client has, for each kind, the time at which it will have paid for all that it took
//! (the generic cell rate algorithm, ITU-T I.371). One number a client; the least recently seen are forgotten.

use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, Instant};

use moka::policy::EvictionPolicy;
use moka::sync::Cache;

use super::RouteKind;
use crate::client::Circle;

/// Most counts that are kept: a few megabytes.
const MOST: u64 = 50_000;

/// The counts. Cheap to clone.
#[derive(Clone)]
pub(super) struct Buckets {
    begun: Instant,
    paid: Cache<(RouteKind, Circle), Arc<AtomicU64>>,
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
    /// Takes one in each circle, or says how long to wait for it; then none is taken.
    pub(super) fn take(&self, kind: RouteKind, circles: &[(Circle, u32)]) -> Result<(), Duration> {
        self.look(kind, circles)?;
        let now = self.now();
        for (i, &(circle, shares)) in circles.iter().enumerate() {
            let paid = self
                .paid
                .get_with((kind, circle), || Arc::new(AtomicU64::new(0)));
            let taken = paid.fetch_update(Ordering::Relaxed, Ordering::Relaxed, |at| {
                after(kind, shares, now, at).ok()
            });
            if let Err(at) = taken {
                self.give_back(kind, circles.get(..i).unwrap_or_default());
                return Err(after(kind, shares, now, at).err().unwrap_or_default());
            }
        }
        Ok(())
    }

    /// Whether one could be taken, without taking it.
    pub(super) fn look(&self, kind: RouteKind, circles: &[(Circle, u32)]) -> Result<(), Duration> {
        for &(circle, shares) in circles {
            if let Some(paid) = self.paid.get(&(kind, circle)) {
                after(kind, shares, self.now(), paid.load(Ordering::Relaxed))?;
            }
        }
        Ok(())
    }

    /// Gives back what was taken.
    pub(super) fn give_back(&self, kind: RouteKind, circles: &[(Circle, u32)]) {
        for &(circle, shares) in circles {
            if let Some(paid) = self.paid.get(&(kind, circle)) {
                let _ = paid.fetch_update(Ordering::Relaxed, Ordering::Relaxed, |at| {
                    Some(at.saturating_sub(each(kind, shares)))
                });
            }
        }
    }

    fn now(&self) -> u64 {
        u64::try_from(self.begun.elapsed().as_micros()).unwrap_or(u64::MAX)
    }
}

/// What one costs a circle of so many shares, in microseconds.
fn each(kind: RouteKind, shares: u32) -> u64 {
    let each = kind.rate().1.as_micros() / u128::from(shares.max(1));
    u64::try_from(each).unwrap_or(u64::MAX)
}

/// When all is paid after one more, or how long to wait.
fn after(kind: RouteKind, shares: u32, now: u64, paid: u64) -> Result<u64, Duration> {
    let (burst, each) = (kind.rate().0.saturating_mul(shares), each(kind, shares));
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
    use std::net::Ipv4Addr;

    use super::*;

    #[test]
    fn a_burst_is_taken_and_then_one_at_a_time() {
        let (burst, each) = RouteKind::Begin.rate();
        let each = each.as_micros() as u64;
        let mut paid = 0;
        for _ in 0..burst {
            paid = after(RouteKind::Begin, 1, 0, paid).unwrap();
        }
        assert_eq!(
            after(RouteKind::Begin, 1, 0, paid),
            Err(Duration::from_micros(each))
        );
        assert_eq!(
            after(RouteKind::Begin, 1, each - 1, paid),
            Err(Duration::from_micros(1))
        );
        assert!(after(RouteKind::Begin, 1, each, paid).is_ok());
    }

    fn circles(address: u32) -> Vec<(Circle, u32)> {
        Circle::of_address(Ipv4Addr::from_bits(address).into(), false)
    }

    fn at(address: &str) -> Vec<(Circle, u32)> {
        Circle::of_address(address.parse().unwrap(), false)
    }

    #[test]
    fn clients_do_not_pay_for_each_other_and_memory_is_bounded() {
        let buckets = Buckets::default();
        let taken = (0..100)
            .filter(|_| buckets.take(RouteKind::Door, &circles(7)).is_ok())
            .count();
        assert_eq!(taken, 10);
        assert!(
            buckets.look(RouteKind::Door, &circles(7)).is_err()
                && buckets.take(RouteKind::Door, &circles(8)).is_ok()
                && buckets.take(RouteKind::Guess, &circles(7)).is_ok()
        );
        for client in 0..(MOST as u32 * 3) {
            let _ = buckets.take(RouteKind::Design, &circles(client));
        }
        buckets.paid.run_pending_tasks();
        assert!(buckets.paid.entry_count() <= MOST);
    }

    #[test]
    fn whoever_changes_its_household_with_each_request_is_refused_with_its_line() {
        let buckets = Buckets::default();
        let taken = (0..0x1000)
            .filter(|household| {
                let from = format!("2001:db8:7:{household:x}::1");
                buckets.take(RouteKind::Door, &at(&from)).is_ok()
            })
            .count();
        assert_eq!(taken, 10 * 16, "sixteen households' part in a /48");
        assert!(buckets.take(RouteKind::Door, &at("2001:db8:8::1")).is_ok());
    }

    #[test]
    fn what_is_given_back_may_be_taken_again() {
        let buckets = Buckets::default();
        for _ in 0..1000 {
            assert!(buckets.take(RouteKind::Begin, &circles(7)).is_ok());
            buckets.give_back(RouteKind::Begin, &circles(7));
        }
    }
}
