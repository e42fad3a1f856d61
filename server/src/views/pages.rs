//! Pages: typed structs whose fields are words already, each beside its template.

pub mod all_answers;
pub mod answers;
pub mod begin;
pub mod beside;
pub mod beside_each_other;
pub mod card;
pub mod chapter;
pub mod climate;
pub mod code;
pub mod commissioning;
pub mod deeper;
pub mod drawn;
pub mod field;
pub mod figures;
pub mod found;
pub mod frame;
pub mod front;
pub mod house;
pub mod improvement;
pub mod links;
pub mod materials;
pub mod number;
pub mod organiser;
pub mod panel;
pub mod plan;
pub mod prices;
pub mod printed;
pub mod record;
pub mod recover;
pub mod remarks;
pub mod revisions;
pub mod sheet;
pub mod short;
pub mod side;
pub mod stale;
pub mod step;
pub mod versions;
pub mod ways;
pub mod working;

use askama::Template;
use axum::response::Html;

use crate::error::Trouble;

/// A page as an answer.
///
/// # Errors
/// The template's own, which is our fault.
pub fn answer(page: &impl Template) -> Result<Html<String>, Trouble> {
    page.render()
        .map(Html)
        .map_err(|error| Trouble::broken("writing a page", &error))
}
