//! `stillground plans` and `stillground erase PLAN`: what is kept, and one plan gone for good.

use super::parcel::with_store;
use super::{Failure, block_on, say};
use crate::config::Config;
use crate::store::organiser::{ON_A_PAGE, Sought};
use crate::store::{Store, StoreFailure};
use crate::views::words;

/// Prints a line for each plan, the youngest first, its parts set apart by tabs.
pub(super) fn list(config: &Config, removed: bool) -> Result<(), Failure> {
    let lines = block_on(with_store(config, async |store| {
        lines(store, removed).await
    }))?
    .map_err(Failure::fault)?;
    lines.iter().try_for_each(say)
}

async fn lines(store: &Store, removed: bool) -> Result<Vec<String>, StoreFailure> {
    let (mut lines, mut before) = (Vec::new(), None);
    loop {
        let sought = Sought {
            title: "",
            removed,
            before,
        };
        let found = store.shelf(sought).await?;
        let page = found.iter().take(ON_A_PAGE);
        lines.extend(page.map(|plan| {
            let opened = plan.opened_at.map_or("-".to_owned(), words::day);
            format!(
                "{}\t{}\trevision {}\t{} bytes\tsaved {}\topened {opened}",
                plan.id,
                plan.title.as_deref().unwrap_or("-"),
                plan.revision,
                plan.size,
                words::day(plan.saved_at),
            )
        }));
        match found.get(ON_A_PAGE.saturating_sub(1)) {
            Some(last) if found.len() > ON_A_PAGE => before = Some(last.created_at),
            _ => return Ok(lines),
        }
    }
}

/// Erases one plan.
pub(super) fn erase(config: &Config, plan: &str) -> Result<(), Failure> {
    let erased = block_on(with_store(config, async |store| {
        store.remove_plan(plan).await?;
        store.erase_plan(plan).await
    }))?
    .map_err(Failure::fault)?;
    if erased {
        say(format_args!(
            "plan {plan} is erased, with its record and its photographs"
        ))
    } else {
        Err(Failure::fault("no plan has this name"))
    }
}
