//! `stillground options FILE`: a plan in, all the piers that fit out.

use std::path::Path;

use stillground::options;

use super::Failure;
use super::design::{read_plan, unusable, write};
use crate::shelf::MemoryShelf;

/// Prints the options of a plan, however long it takes: the same plan gives the same bytes.
pub(super) fn options(file: &Path) -> Result<(), Failure> {
    let plan = read_plan(file)?;
    let found = options::find(&plan, &MemoryShelf::new(), &|_| true)
        .map_err(|problems| unusable(file, problems))?;
    write(&found)
}
