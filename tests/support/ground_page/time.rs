//! Seconds.

use std::time::Instant;

use stillground::halfspace::solve;

use super::{CONTACTS, table};
use crate::elements::Reference;

/// The solver's seconds beside the elements'.
#[must_use]
pub fn table_of(reference: &Reference) -> String {
    let case = reference.case("cube 1, 0.35");
    let row = |contact: &str| {
        let shape = case.shape(contact);
        let once = |_| {
            let began = Instant::now();
            let solved = solve(&shape);
            (began.elapsed().as_secs_f64(), solved).0
        };
        let best = (0..20).map(once).fold(f64::INFINITY, f64::min);
        let elements = case.seconds(contact);
        vec![contact.to_owned(), format!("{:.1} ms", 1e3 * best), format!("{elements:.0} s"), format!("{:.0}", elements / best)]
    };
    table(&["contact", "solver, a new shape", "finite elements", "ratio"], CONTACTS.map(row))
}
