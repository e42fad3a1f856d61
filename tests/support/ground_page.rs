//! The page `docs/ground-validation.md`: its words from `ground_page/ground_validation.md`, its tables from the solver, the
//! finite elements and the published forms.

pub mod closed_forms;
mod convergence;
pub mod finite;
mod time;
pub mod uneven;

use std::fmt::Write as _;

use stillground::halfspace::Shape;

use crate::elements::Reference;

/// The page's words, with a name in double braces where each table goes.
const WORDS: &str = include_str!("ground_page/ground_validation.md");
/// Where the page is kept, from the repository's root.
pub const PLACE: &str = "docs/ground-validation.md";
/// Most patches of the planner's finer mesh.
const MOST_PATCHES: usize = 140;
/// The three ways of contact that most tables have.
const CONTACTS: [&str; 3] = ["full", "half", "none"];

type Table = fn(&Reference) -> String;

/// Tables that take a few seconds in a debug build.
const QUICK: [(&str, Table); 11] = [
    ("elements", finite::elements),
    ("meshes", finite::meshes),
    ("leans", finite::leans),
    ("lining", uneven::lining),
    ("papers", closed_forms::papers),
    ("partial", closed_forms::partial),
    ("surface", closed_forms::surface),
    ("cylinder", closed_forms::cylinder),
    ("stiffening", uneven::stiffening),
    ("layers", uneven::layers),
    ("layer-leans", uneven::leans),
];
/// Tables for which finer meshes are solved.
const SLOW: [(&str, Table); 3] = [
    ("asymmetry", convergence::asymmetry),
    ("convergence", convergence::meshes),
    ("shapes", convergence::shapes),
];

/// The whole page as the code gives it today.
#[must_use]
pub fn page() -> String {
    let reference = Reference::read();
    let tables = QUICK.into_iter().chain(SLOW).chain([
        ("time", time::table_of as Table),
        ("other-times", time::others),
    ]);
    tables.fold(WORDS.to_owned(), |page, (name, table)| {
        page.replace(&format!("{{{{{name}}}}}"), table(&reference).trim_end())
    })
}

/// Names of the quick tables whose figures of today do not stand in a page.
#[must_use]
pub fn stale(page: &str) -> Vec<&'static str> {
    let reference = Reference::read();
    QUICK
        .into_iter()
        .filter(|(_, table)| !page.contains(table(&reference).trim_end()))
        .map(|(name, _)| name)
        .collect()
}

/// Names of all tables but those of times whose figures of today do not stand in a page.
#[must_use]
pub fn stale_thoroughly(page: &str) -> Vec<&'static str> {
    let reference = Reference::read();
    let tables = QUICK.into_iter().chain(SLOW);
    tables
        .filter(|(_, table)| !page.contains(table(&reference).trim_end()))
        .map(|(name, _)| name)
        .collect()
}

/// Sentences of the words that a page does not have.
#[must_use]
pub fn missing_words(page: &str) -> Vec<&'static str> {
    WORDS
        .lines()
        .filter(|line| !line.starts_with("{{") && !page.contains(line))
        .collect()
}

fn block(
    length_m: f64,
    width_m: f64,
    depth_m: f64,
    from: f64,
    to: f64,
    poisson_ratio: f64,
) -> Shape {
    Shape {
        length_m,
        width_m,
        depth_m,
        contact_from_m: from,
        contact_to_m: to,
        poisson_ratio,
    }
}

fn cube(from: f64) -> Shape {
    block(1.0, 1.0, 1.0, from, 1.0, 0.35)
}

fn table(head: &[&str], rows: impl IntoIterator<Item = Vec<String>>) -> String {
    let mut text = format!("| {} |\n|{}\n", head.join(" | "), "---|".repeat(head.len()));
    for row in rows {
        // Writing to a string cannot fail.
        let _ = writeln!(text, "| {} |", row.join(" | "));
    }
    text
}

/// How far a figure is from its reference, in per cent.
fn off(found: f64, reference: f64) -> String {
    format!("{:+.1} %", 100.0 * (found / reference - 1.0))
}
