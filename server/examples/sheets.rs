//! Writes every drawing of every plan in a folder, to be looked at: `cargo run --example sheets -- tests/examples target/sheets`.

use std::path::Path;
use std::time::Instant;
use std::{env, fs};

use stillground::brief;
use stillground::design::design;
use stillground::halfspace::NoShelf;
use stillground::site_plan::SitePlan;
use stillground_server::drawing;
use stillground_server::views::pdf::{self, Paper, Sheet};
use stillground_server::views::svg;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut given = env::args().skip(1);
    let from = given.next().unwrap_or_else(|| "tests/examples".to_owned());
    let to = given.next().unwrap_or_else(|| "target/sheets".to_owned());
    let mut plans = vec![("unknown".to_owned(), SitePlan::unknown())];
    for entry in fs::read_dir(&from).into_iter().flatten().flatten() {
        let path = entry.path();
        if path.extension().is_some_and(|ending| ending == "json") {
            let name = path
                .file_stem()
                .unwrap_or_default()
                .to_string_lossy()
                .into_owned();
            plans.push((name, serde_json::from_str(&fs::read_to_string(&path)?)?));
        }
    }
    for (name, plan) in &plans {
        write(&Path::new(&to).join(name), plan)?;
    }
    Ok(())
}

fn write(folder: &Path, plan: &SitePlan) -> Result<(), Box<dyn std::error::Error>> {
    fs::create_dir_all(folder)?;
    let brief = brief::resolve(plan)?;
    let design = design(&brief, &NoShelf);
    for name in drawing::NAMES {
        if let Some(drawing) = drawing::by_name(name, &brief, &design) {
            println!(
                "{} {name}: {:.0} × {:.0} mm",
                folder.display(),
                drawing.width,
                drawing.height
            );
            fs::write(folder.join(format!("{name}.svg")), svg::write(&drawing))?;
        }
    }
    let sheet = Sheet {
        brief: &brief,
        design: &design,
        revision: Some(3),
        date: Some("1 March 2027"),
        view_link: Some("https://planner.example/p/8f14e45fceea167a5a36dedd4bea2543/plan?rev=3"),
        check_link: Some("https://planner.example/s/mfrggzdfmztwq2lknnwg23tpoa?rev=3"),
        letterhead: None,
        built: &[],
    };
    for (paper, ending) in [(Paper::A4, "a4"), (Paper::Letter, "letter")] {
        let start = Instant::now();
        fs::write(
            folder.join(format!("plan-{ending}.pdf")),
            pdf::plan(&sheet, paper)?,
        )?;
        println!(
            "{} plan-{ending}: {:.0} ms",
            folder.display(),
            start.elapsed().as_secs_f64() * 1000.0
        );
        fs::write(
            folder.join(format!("file-{ending}.pdf")),
            pdf::file(&sheet, paper)?,
        )?;
        fs::write(
            folder.join(format!("template-{ending}.pdf")),
            pdf::template(&sheet, paper)?,
        )?;
    }
    Ok(())
}
