//! The load table: `cargo bench -p stillground-server --bench load [-- docs/speed.md]`.
//!
//! Starts the planner as anyone starts it and, for each page, a bare handler that sends the same bytes, asks both in turn,
//! and prints what it saw; with a file's name behind `--` it writes it there as well. Everything stays on this machine and
//! ends within a few minutes.
#![allow(missing_docs, reason = "a program, of which nothing is used elsewhere")]

mod bare;
mod drive;
mod instances;
mod machine;
#[path = "../../../tests/support/postgres.rs"]
#[allow(
    dead_code,
    clippy::expect_used,
    clippy::unwrap_used,
    reason = "it is the tests'"
)]
mod postgres;
mod saves;
mod table;

use std::io::{Error, Result};
use std::path::{Path, PathBuf};
use std::time::Duration;

use bare::Bare;
use drive::{Seen, always, drive, in_turn};
use machine::Planner;
use table::{Found, Line, Saves};

/// Connections at once.
const CONNECTIONS: usize = 200;
/// How long each page is asked for in a turn.
const TURN: Duration = Duration::from_millis(1500);
/// Turns of each page.
const TURNS: usize = 2;
/// People who save at once.
const PEOPLE: [usize; 2] = [1, 32];
/// How long the saves go on in a turn.
const SAVING: Duration = Duration::from_millis(1500);
/// Turns of saves.
const SAVING_TURNS: usize = 4;
/// Plans whose pages are asked for in turn.
const MANY: usize = 40;
/// How long a planner that was asked for nothing is left alone before its memory is looked at.
const REST: Duration = Duration::from_secs(2);

#[tokio::main]
async fn main() -> Result<()> {
    let words: Vec<String> = std::env::args()
        .skip(1)
        .filter(|word| !word.starts_with("--"))
        .collect();
    match words.as_slice() {
        [word, file] if word == bare::PAGES => bare::pages(Path::new(file)).await,
        [word, folder] if word == bare::ROWS => bare::rows(Path::new(folder)).await,
        words => {
            let page = table::write(&find().await?);
            println!("{page}");
            // Cargo starts a bench in its package's folder; the file is named from the workspace's.
            let workspace = Path::new(env!("CARGO_MANIFEST_DIR"))
                .parent()
                .unwrap_or(Path::new("."));
            words
                .first()
                .map_or(Ok(()), |file| std::fs::write(workspace.join(file), page))
        }
    }
}

async fn find() -> Result<Found> {
    let crowd = machine::crowd();
    let folder = tempfile::tempdir()?;
    let first = Planner::start(folder.path()).await?;
    let new = first.ready_after;
    drop(first);
    let planner = Planner::start(folder.path()).await?;
    tokio::time::sleep(REST).await;
    let idle = planner.memory_mib()?;
    let lines = pages(&planner, folder.path()).await?;
    let saves = save_in_turn(&planner, folder.path()).await?;
    let ms = |time: Duration| format!("{:.0} ms", time.as_secs_f64() * 1000.0);
    let process = vec![
        (
            "load of the machine before this began: beyond one, other work took part in every figure",
            crowd,
        ),
        (
            "ready after its first start, which makes the database",
            ms(new),
        ),
        ("ready after a later start", ms(planner.ready_after)),
        ("memory held while idle", format!("{idle:.0} MiB")),
        (
            "memory held after all of the above",
            format!("{:.0} MiB", planner.memory_mib()?),
        ),
    ];
    drop(planner);
    let instances = instances::find(folder.path()).await?;
    Ok(Found {
        cores: machine::cores(),
        connections: CONNECTIONS,
        lines,
        saves,
        instances,
        process,
    })
}

/// Saves, bare rows, and rows by a bare handler, in turn: what a disk gives changes from second to second.
async fn save_in_turn(planner: &Planner, folder: &Path) -> Result<Saves> {
    let mut found = Saves {
        bare: Vec::new(),
        alone: Vec::new(),
        seen: PEOPLE.map(|people| (people, Seen::default(), Seen::default())),
    };
    let handler = bare::start(bare::ROWS, &turn_folder(folder, "handler")?)?;
    for turn in 0..SAVING_TURNS {
        eprintln!("saves, turn {}", turn + 1);
        found.bare.push(
            saves::bare_rows(&turn_folder(folder, &format!("bare-{turn}"))?, SAVING)
                .await
                .map_err(Error::other)?,
        );
        found.alone.push(
            saves::store_alone(&turn_folder(folder, &format!("alone-{turn}"))?, SAVING).await?,
        );
        for (people, bare, seen) in &mut found.seen {
            *bare = std::mem::take(bare)
                .and(drive(handler.socket, *people, SAVING, saves::rows()).await?);
            *seen = std::mem::take(seen).and(saves::save(planner, *people, SAVING).await?);
        }
    }
    Ok(found)
}

/// Each page in turn.
async fn pages(planner: &Planner, folder: &Path) -> Result<Vec<Line>> {
    let plan = saves::create(planner).await?;
    let mut asked = vec![("front page".to_owned(), vec!["/".to_owned()])];
    for step in ["site", "excavation", "footing", "pier", "anchors", "floor"] {
        asked.push((step.to_owned(), vec![format!("/p/{}/{step}", plan.edit)]));
    }
    asked.push((
        "plan by its view link".to_owned(),
        vec![format!("/p/{}/plan", plan.view)],
    ));
    let mut many = Vec::new();
    for _ in 0..MANY {
        many.push(format!("/p/{}/site", saves::create(planner).await?.edit));
    }
    asked.push((format!("site of {MANY} plans in turn"), many));
    asked.push((
        "plan by the code on its sheet".to_owned(),
        vec![format!("/p/{}/plan?rev=1", plan.view)],
    ));
    let mut lines = Vec::new();
    for (what, paths) in asked {
        eprintln!("{what}");
        lines.push(line(planner, folder, what, &paths).await?);
    }
    Ok(lines)
}

/// A page of the planner's and the bare handler with its bytes, in turn.
async fn line(planner: &Planner, folder: &Path, what: String, paths: &[String]) -> Result<Line> {
    let mut body = Vec::new();
    for path in paths {
        let (status, text) = planner.get(path).await?;
        if status != 200 {
            return Err(Error::other(format!("{what}: status {status}")));
        }
        body = text;
    }
    let file = folder.join("page.html");
    std::fs::write(&file, &body)?;
    let bare: Bare = bare::start(bare::PAGES, &file)?;
    let mut line = Line {
        what,
        bytes: body.len(),
        bare: Seen::default(),
        planner: Seen::default(),
    };
    for _ in 0..TURNS {
        line.bare = line
            .bare
            .and(drive(bare.socket, CONNECTIONS, TURN, always("/")).await?);
        line.planner = line
            .planner
            .and(drive(planner.socket, CONNECTIONS, TURN, in_turn(paths)).await?);
    }
    Ok(line)
}

fn turn_folder(folder: &Path, name: &str) -> Result<PathBuf> {
    let folder = folder.join(name);
    std::fs::create_dir(&folder)?;
    Ok(folder)
}
