//! The figures as a page of documentation.

use crate::drive::Seen;
use crate::instances::Instances;

/// What a page gave, and a bare handler with its bytes.
pub struct Line {
    /// What was asked for.
    pub what: String,
    /// Length of the answer in bytes.
    pub bytes: usize,
    /// The bare handler.
    pub bare: Seen,
    /// The planner.
    pub planner: Seen,
}

/// All that was found.
pub struct Found {
    /// The machine in two words.
    pub cores: String,
    /// Connections at once.
    pub connections: usize,
    /// Pages.
    pub lines: Vec<Line>,
    /// Saves.
    pub saves: Saves,
    /// One instance and two on PostgreSQL; empty where it could not be started.
    pub instances: Vec<Instances>,
    /// Process figures: what, and how much.
    pub process: Vec<(&'static str, String)>,
}

/// Saves, and rows of a bare SQLite file in turn with them.
pub struct Saves {
    /// Rows a second, in each turn.
    pub bare: Vec<f64>,
    /// Saves a second of the store alone, in each turn.
    pub alone: Vec<f64>,
    /// People who save at once, what a bare handler that keeps rows showed them, and what the planner did.
    pub seen: [(usize, Seen, Seen); 2],
}

/// The page.
pub fn write(found: &Found) -> String {
    let Found {
        cores,
        connections,
        lines,
        saves,
        instances,
        process,
    } = found;
    let (raw, alone) = (mean(&saves.bare), mean(&saves.alone));
    let rows: Vec<String> = saves.bare.iter().map(|rows| format!("{rows:.0}")).collect();
    let rows = rows.join(", ");
    let lines: String = lines.iter().map(line).collect();
    let saves: String = saves
        .seen
        .iter()
        .map(|(people, bare, seen)| save(*people, bare, seen, raw))
        .collect();
    let process: String = process
        .iter()
        .map(|(what, much)| format!("| {what} | {much} |\n"))
        .collect();
    format!(
        "# How fast it is\n\n\
         Written by `cargo bench -p stillground-server --bench load -- docs/speed.md`, on {cores} that served and asked at once, \
         over loopback. The ratio to the bare handler, which was asked in turn with the planner in the same run, says more than \
         the figures beside it, which change with the machine and with whatever else runs on it.\n\n\
         ## Pages\n\n\
         {connections} kept connections, each asking again as soon as it is answered. The bare handler is an axum handler in a \
         process of its own that holds the page's bytes and sends them. Every answer of the planner's has looked its link up in \
         the database and written the page anew from the kept design.\n\n\
         | page | KiB | bare, a second | planner, a second | ratio | half within, ms | 99 % within, ms | bare, 99 % within, ms |\n\
         |---|---:|---:|---:|---:|---:|---:|---:|\n{lines}\n\
         ## Saves\n\n\
         Each save is a revision that is on the disk before it is acknowledged, sent as a whole plan over the interface for \
         programs, read, checked, and stored on top of the one before. A bare SQLite file, asked in turn with them by one \
         writer without a network, took {rows} rows of the same bytes a second, one a transaction, synchronous FULL. The bare \
         handler is an axum handler in a process of its own that puts the bytes it is sent into such a file: what is left of \
         bare rows when they come over HTTP from one person, whatever is done with them. The store alone, asked within this \
         program for the same saves, one after the other, kept {alone:.0} a second: {:.2} of bare rows. Saves that wait for the disk together \
         are kept by one transaction; one that comes alone goes at once.\n\n\
         | people who save at once | bare handler, rows a second | saves a second | ratio to the bare handler | ratio to bare rows | half within, ms | 99 % within, ms |\n\
         |---:|---:|---:|---:|---:|---:|---:|\n{saves}\n\
         {}## The process\n\n| what | how much |\n|---|---:|\n{process}",
        alone / raw,
        two(instances)
    )
}

fn mean(rates: &[f64]) -> f64 {
    rates.iter().sum::<f64>() / rates.len().max(1) as f64
}

fn line(line: &Line) -> String {
    let Line {
        what,
        bytes,
        bare,
        planner,
    } = line;
    format!(
        "| {what} | {:.0} | {:.0} | {:.0} | {:.2} | {:.1} | {:.1} | {:.1} |{}\n",
        *bytes as f64 / 1024.0,
        bare.rate(),
        planner.rate(),
        planner.rate() / bare.rate(),
        planner.within_ms(0.5),
        planner.within_ms(0.99),
        bare.within_ms(0.99),
        refused(planner),
    )
}

fn save(people: usize, bare: &Seen, seen: &Seen, raw: f64) -> String {
    let (handler, rate, half, most) = (
        bare.rate(),
        seen.rate(),
        seen.within_ms(0.5),
        seen.within_ms(0.99),
    );
    let refused = refused(&seen.clone().and(bare.clone()));
    format!(
        "| {people} | {handler:.0} | {rate:.0} | {:.2} | {:.2} | {half:.1} | {most:.1} |{refused}\n",
        rate / handler,
        rate / raw
    )
}

/// What two instances on one database give beside one.
fn two(instances: &[Instances]) -> String {
    if instances.is_empty() {
        return String::new();
    }
    let lines: String = instances.iter().map(pair).collect();
    format!(
        "## Two instances on PostgreSQL\n\n\
         64 connections ask one instance, or half of them each of two on the same database, in turn; each instance serves with one \
         thread, so that it takes about one core. Client, database and \
         instances share the machine: the last columns say how many of its cores each kept busy while two were asked. Where they \
         add up to all there are, a second instance has nothing to run on: then the machine bounds the ratio, not the planner.\n\n\
         | what | one, a second | two, a second | ratio | cores: instances | cores: database | cores: client |\n\
         |---|---:|---:|---:|---:|---:|---:|\n{lines}\n"
    )
}

fn pair(pair: &Instances) -> String {
    let Instances {
        what,
        seen: [one, two],
        busy: [instances, database, client],
    } = pair;
    let refused = refused(&one.clone().and(two.clone()));
    let (one, two) = (one.rate(), two.rate());
    format!(
        "| {what} | {one:.0} | {two:.0} | {:.2} | {instances:.2} | {database:.2} | {client:.2} |{refused}\n",
        two / one
    )
}

/// Answers that were none are never passed over.
fn refused(seen: &Seen) -> String {
    if seen.refused == 0 {
        String::new()
    } else {
        format!(" {} were refused |", seen.refused)
    }
}
