//! `stillground design FILE`: a plan in, its design out.

use std::fs::File;
use std::io::{Read, Write};
use std::path::Path;

use stillground::site_plan::SitePlan;

use super::Failure;
use crate::handlers::api::body;
use crate::planned::Planned;
use crate::shelf::MemoryShelf;

/// Largest file read, bytes; no plan comes near it.
const LARGEST: u64 = 4 * 1024 * 1024;

/// Prints the design of a plan.
pub(super) fn design(file: &Path) -> Result<(), Failure> {
    let (_, found) = read(file)?;
    let text = serde_json::to_string_pretty(&found.design).map_err(Failure::fault)?;
    let mut out = std::io::stdout().lock();
    writeln!(out, "{text}")
        .and_then(|()| out.flush())
        .map_err(Failure::fault)
}

/// Reads a plan and designs it.
pub(super) fn read(file: &Path) -> Result<(SitePlan, Planned), Failure> {
    let bytes =
        bytes(file).map_err(|error| Failure::input(format!("{}: {error}", file.display())))?;
    if bytes.len() as u64 > LARGEST {
        return Err(Failure::input(format!(
            "{}: larger than {} MiB, the most that is read",
            file.display(),
            LARGEST >> 20
        )));
    }
    let bad = |said: String| Failure::input(format!("{}: {said}", file.display()));
    let plan = body::parse(&bytes).map_err(|trouble| bad(trouble.sentence()))?;
    let shelf = MemoryShelf::new();
    let found = Planned::of(&plan, &shelf)
        .map_err(|problems| bad(problems.to_string()))?
        .improve(&plan, &shelf);
    Ok((plan, found))
}

fn bytes(file: &Path) -> std::io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    let input: Box<dyn Read> = if file == Path::new("-") {
        Box::new(std::io::stdin())
    } else {
        Box::new(File::open(file)?)
    };
    input.take(LARGEST + 1).read_to_end(&mut bytes)?;
    Ok(bytes)
}
