//! Chance with a seed, for made-up measurements.

pub use stillground::proof::chance::Chance;

/// A whole number below.
pub fn below(chance: &mut Chance, most: usize) -> usize {
    ((chance.even() * most as f64) as usize).min(most - 1)
}
