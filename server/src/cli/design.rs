//! `stillground design FILE`: a plan in, its design out.

use std::fmt::Display;
use std::fs::File;
use std::io::{Read, Write};
use std::path::Path;

use serde::Serialize;
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
    write(&found.design)
}

/// Prints an answer as JSON.
pub(super) fn write(answer: &impl Serialize) -> Result<(), Failure> {
    let text = serde_json::to_string_pretty(answer).map_err(Failure::fault)?;
    let mut out = std::io::stdout().lock();
    writeln!(out, "{text}")
        .and_then(|()| out.flush())
        .map_err(Failure::fault)
}

/// Reads a plan and designs it.
pub(super) fn read(file: &Path) -> Result<(SitePlan, Planned), Failure> {
    let plan = read_plan(file)?;
    let shelf = MemoryShelf::new();
    let found = Planned::of(&plan, &shelf)
        .map_err(|problems| unusable(file, problems))?
        .improve(&shelf);
    Ok((plan, found))
}

/// What is wrong with a file, as a reason to end.
pub(super) fn unusable(file: &Path, said: impl Display) -> Failure {
    Failure::input(format!("{}: {said}", file.display()))
}

/// Reads a plan.
pub(super) fn read_plan(file: &Path) -> Result<SitePlan, Failure> {
    let bytes = bytes(file).map_err(|error| unusable(file, error))?;
    if bytes.len() as u64 > LARGEST {
        return Err(Failure::input(format!(
            "{}: larger than {} MiB, the most that is read",
            file.display(),
            LARGEST >> 20
        )));
    }
    body::parse(&bytes).map_err(|trouble| unusable(file, trouble.sentence()))
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
