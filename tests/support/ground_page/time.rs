//! Seconds.

use std::time::Instant;

use stillground::decided::design_plan;
use stillground::halfspace::{NoShelf, Shape, SmallShelf, Solved, solve, solved};
use stillground::site_plan::SitePlan;

use super::{CONTACTS, table};
use crate::elements::Reference;

/// The solver's seconds beside the elements'.
#[must_use]
pub fn table_of(reference: &Reference) -> String {
    let case = reference.case("cube 1, 0.35");
    let row = |contact: &str| {
        let shape = case.shape(contact);
        let (new, map) = (best(|| solve(&shape)), best_map(&shape));
        let elements = case.seconds(contact);
        vec![
            contact.to_owned(),
            milliseconds(new),
            milliseconds(map),
            format!("{elements:.0} s"),
            format!("{:.0}", elements / new),
        ]
    };
    table(
        &[
            "contact",
            "solver, a new shape",
            "map of 61 × 61 places afresh",
            "finite elements",
            "elements over a new shape",
        ],
        CONTACTS.map(row),
    )
}

/// A shape that is kept, and a whole design.
#[must_use]
pub fn others(reference: &Reference) -> String {
    let shape = reference.case("cube 1, 0.35").shape("none");
    let shelf = SmallShelf::holding(8);
    let kept = best(|| solved(&shape, &shelf));
    let cold = best(|| design_plan(&SitePlan::unknown(), &NoShelf));
    let rows = [
        ("a shape that is kept", kept),
        ("a whole design of which nothing is kept", cold),
    ];
    table(
        &["what", "time"],
        rows.map(|(what, time)| vec![what.to_owned(), milliseconds(time)]),
    )
}

fn milliseconds(seconds: f64) -> String {
    if seconds < 1e-6 {
        "below 0.001 ms".to_owned()
    } else {
        format!("{:.1} ms", 1e3 * seconds)
    }
}

fn best<T>(mut once: impl FnMut() -> T) -> f64 {
    (0..20)
        .map(|_| seconds(&mut once))
        .fold(f64::INFINITY, f64::min)
}

fn seconds<T>(once: &mut impl FnMut() -> T) -> f64 {
    let began = Instant::now();
    let answer = once();
    let seconds = began.elapsed().as_secs_f64();
    drop(answer);
    seconds
}

/// A map of a solution that has worked out no place yet.
fn best_map(shape: &Shape) -> f64 {
    let Some(solved) = solve(shape) else {
        return f64::NAN;
    };
    (0..10)
        .map(|_| map_afresh(&solved))
        .fold(f64::INFINITY, f64::min)
}

/// A copy remembers no places.
fn map_afresh(solved: &Solved) -> f64 {
    let copy = solved.clone();
    seconds(&mut || map(&copy))
}

fn map(solved: &Solved) -> f64 {
    let places = || (-30..=30).map(|i| f64::from(i) * 0.05);
    places()
        .flat_map(|x| places().map(move |y| (x, y)))
        .map(|(x, y)| solved.under_weight(x, y)[4])
        .sum()
}
