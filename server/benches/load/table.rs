//! The figures as a page of documentation.

use crate::drive::Seen;

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
    /// People who save at once, and what they saw.
    pub saves: Vec<(usize, Seen)>,
    /// Rows a second of a bare SQLite file, before and after the saves.
    pub bare_rows: [f64; 2],
    /// Process figures: what, and how much.
    pub process: Vec<(&'static str, String)>,
}

/// The page.
pub fn write(found: &Found) -> String {
    let Found { cores, connections, lines, saves, bare_rows, process } = found;
    let raw = f64::midpoint(bare_rows[0], bare_rows[1]);
    let lines: String = lines.iter().map(line).collect();
    let saves: String = saves.iter().map(|(people, seen)| save(*people, seen, raw)).collect();
    let process: String = process.iter().map(|(what, much)| format!("| {what} | {much} |\n")).collect();
    format!(
        "# How fast it is\n\n\
         Written by `cargo bench -p stillground-server --bench load -- docs/speed.md`, on {cores} that served and asked at once, \
         over loopback. The ratio to the bare handler, which was asked in turn with the planner in the same run, says more than \
         the figures beside it, which change with the machine and with whatever else runs on it.\n\n\
         ## Pages\n\n\
         {connections} kept connections, each asking again as soon as it is answered. The bare handler is an axum handler in a \
         process of its own that holds the page's bytes and sends them. Every answer of the planner's has looked its link up in \
         the database. A page *kept* was asked for before and its plan has not changed since; a page *written* is put together \
         anew for each request from the kept design.\n\n\
         | page | KiB | bare, a second | planner, a second | ratio | half within, ms | 99 % within, ms | bare, 99 % within, ms |\n\
         |---|---:|---:|---:|---:|---:|---:|---:|\n{lines}\n\
         ## Saves\n\n\
         Each save is a revision that is on the disk before it is acknowledged, sent as a whole plan over the interface for \
         programs, read, checked, and stored on top of the one before. A bare SQLite file took {:.0} rows of the same bytes a second \
         before and {:.0} after, one a transaction, synchronous FULL.\n\n\
         | people who save at once | saves a second | ratio to bare rows | half within, ms | 99 % within, ms |\n\
         |---:|---:|---:|---:|---:|\n{saves}\n\
         ## The process\n\n| what | how much |\n|---|---:|\n{process}",
        bare_rows[0], bare_rows[1]
    )
}

fn line(line: &Line) -> String {
    let Line { what, bytes, bare, planner } = line;
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

fn save(people: usize, seen: &Seen, raw: f64) -> String {
    let (rate, half, most) = (seen.rate(), seen.within_ms(0.5), seen.within_ms(0.99));
    format!("| {people} | {rate:.0} | {:.2} | {half:.1} | {most:.1} |{}\n", rate / raw, refused(seen))
}

/// Answers that were none are never passed over.
fn refused(seen: &Seen) -> String {
    if seen.refused == 0 { String::new() } else { format!(" {} were refused |", seen.refused) }
}
