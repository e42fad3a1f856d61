//! `stillground print FILE --out FOLDER`: a plan in, its sheets, drawings and lists out.

use std::fs;
use std::path::Path;

use super::Failure;
use super::design::read;
use crate::drawing;
use crate::handlers::print::{Issue, bytes};
use crate::prints::Print;
use crate::views::pdf::Paper;
use crate::views::{csv, dxf, ics, svg};

/// Writes a plan's files.
pub(super) fn print(file: &Path, out: &Path, paper: Option<&str>) -> Result<(), Failure> {
    let (_, planned) = read(file)?;
    let units = planned.brief.units;
    let paper = match paper {
        None => Paper::usual(units),
        Some(key) => Paper::from_key(key).ok_or_else(|| {
            Failure::input(format!(
                "paper {key}: it is a4 or letter, or a3 to a0 for the template"
            ))
        })?,
    };
    let write = |name: &str, bytes: &[u8]| {
        let path = out.join(name);
        fs::write(&path, bytes)
            .map_err(|error| Failure::fault(format!("{}: {error}", path.display())))
    };
    fs::create_dir_all(out.join("drawings"))
        .map_err(|error| Failure::fault(format!("{}: {error}", out.display())))?;
    for (name, which) in [
        ("plan.pdf", Print::Plan),
        ("file.pdf", Print::File),
        ("template.pdf", Print::Template),
    ] {
        write(
            name,
            &bytes(which, &planned, &Issue::default(), paper).map_err(Failure::fault)?,
        )?;
    }
    for name in drawing::NAMES {
        if let Some(drawing) = drawing::by_name(name, &planned.brief, &planned.design) {
            write(
                &format!("drawings/{name}.svg"),
                svg::write(&drawing).as_bytes(),
            )?;
        }
    }
    let design = serde_json::to_vec_pretty(&planned.design)
        .map_err(|error| Failure::fault(format!("design.json: {error}")))?;
    write("design.json", &design)?;
    write(
        "template.dxf",
        dxf::workshop(&planned.brief, &planned.design)
            .map_err(Failure::fault)?
            .as_bytes(),
    )?;
    write(
        "materials.csv",
        csv::materials(&planned.design, units).as_bytes(),
    )?;
    match &planned.brief.work.start_date {
        Some(start) => write(
            "schedule.ics",
            ics::schedule(&planned.design, &[], &planned.brief.title, 0, start).as_bytes(),
        ),
        None => Ok(()),
    }
}
