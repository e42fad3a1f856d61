//! What is worth finding out before anything is built.

use stillground::figure::Units;
use stillground::options::Worth;

use super::asked_at;
use crate::forms::questions;
use crate::views::verdict::per_cent;

/// An answer that is worth finding out.
pub struct WorthView {
    /// Where it is asked.
    pub href: Option<String>,
    /// The question.
    pub label: String,
    /// How it is found out.
    pub how: &'static str,
    /// What it moves.
    pub moves: String,
}

impl WorthView {
    /// An answer worth finding out, in the reader's units.
    #[must_use]
    pub fn of(worth: &Worth, root: &str, units: Units) -> Self {
        let ends = worth.star_growth_ratio_from.zip(worth.star_growth_ratio_to);
        Self {
            href: asked_at(&worth.field, root),
            label: questions::label(&worth.field).to_owned(),
            how: worth.how,
            moves: ends.map_or_else(String::new, |(from, to)| moves(from, to, units)),
        }
    }
}

/// By how much the star grows at worst, from one end of what the answer may be to the other.
fn moves(from_ratio: f64, to_ratio: f64, units: Units) -> String {
    let (low, high) = (from_ratio.min(to_ratio), from_ratio.max(to_ratio));
    let [low, high] = [low, high].map(|ratio| per_cent(ratio, units));
    if low == high {
        return "The star hardly depends on it; what may be built does.".to_owned();
    }
    format!("Depending on it, the star grows by {low} to {high} at worst.")
}
