//! The command line: serve, or do one thing and end.

mod archive;
mod check;
mod design;
mod options;
mod parcel;
mod plans;
mod print;
mod serve;
mod trace;

use std::ffi::OsString;
use std::fmt::Display;
use std::io::Write;
use std::num::NonZeroUsize;
use std::path::PathBuf;
use std::process::ExitCode;
use std::time::Duration;

use clap::{CommandFactory, FromArgMatches, Parser, Subcommand};
use stillground::trace::{Asked, Kind};

use crate::config::{
    Config, Copying, NO_TEXT, Settings, Stated, Stranger, of_any_bytes, read, stated, strangers,
};

/// Exit status for input that cannot be used, as for a wrong flag.
const BAD_INPUT: u8 = 2;

/// Plans permanent telescope piers: from the site to a sheet to dig, pour, drill and order from.
#[derive(Debug, Parser)]
#[command(name = "stillground", version, max_term_width = 100)]
struct Line {
    #[command(subcommand)]
    command: Option<Command>,
    #[command(flatten)]
    settings: Settings,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Start the planner (what happens when no command is given)
    Serve,
    /// Print the design of a plan as JSON
    Design {
        /// A plan as JSON; - reads it from the standard input
        file: PathBuf,
    },
    /// Print as JSON all the piers that fit a plan's pit: what digging less costs the star, and what is worth measuring
    Options {
        /// A plan as JSON; - reads it from the standard input
        file: PathBuf,
    },
    /// Print as JSON what a record of a knock, or of a star while somebody steps, says
    Trace(Record),
    /// Write a plan's sheets, template, drawings and lists into a folder
    Print {
        /// A plan as JSON; - reads it from the standard input
        file: PathBuf,
        /// The folder to write into
        #[arg(long, default_value = ".")]
        out: PathBuf,
        /// Size of paper, a4 or letter, or for the template a3 to a0; left out: by the plan's units
        #[arg(long)]
        paper: Option<String>,
    },
    /// Write a consistent copy of the store to a new file; the planner may run meanwhile
    Backup {
        /// The file to write; with --every, the folder to write copies into
        file: PathBuf,
        /// Stay, and write a copy each time so long has passed, for instance 90s, 30m, 6h or 1d
        #[arg(long, value_name = "TIME", value_parser = read::stretch)]
        every: Option<Duration>,
        /// How many good copies stay; the oldest goes after a good new one
        #[arg(long, value_name = "COUNT", requires = "every", default_value = "14", value_parser = read::copies)]
        keep: NonZeroUsize,
    },
    /// Put a copy in the store's place, be it SQLite or PostgreSQL; the planner must be stopped
    Restore {
        /// A file written by backup
        file: PathBuf,
        /// Replace a store that is there; it is kept beside the new one
        #[arg(long)]
        force: bool,
        /// Take a copy although rows of it are damaged: they stay damaged, and the others are there again
        #[arg(long)]
        damaged_too: bool,
    },
    /// Read everything that is kept and name what is damaged; the planner may run meanwhile
    Verify {
        /// A file written by backup; left out: the store
        file: Option<PathBuf>,
    },
    /// Write one plan with all its revisions as JSON, without its links
    Export {
        /// The plan's name in the store, or the secret of one of its links
        plan: String,
        /// A new file; left out: the standard output
        #[arg(long)]
        out: Option<PathBuf>,
    },
    /// Keep a plan that was exported as a new one, and print its new links
    Import {
        /// A file written by export; - reads it from the standard input
        file: PathBuf,
    },
    /// List the plans that are kept: name in the store, title, revision, bytes, when saved and when opened last
    Plans {
        /// List the removed ones instead
        #[arg(long)]
        removed: bool,
    },
    /// Erase a plan at once and for good, with its record and its photographs
    Erase {
        /// The plan's name in the store
        plan: String,
    },
    /// Explain each setting and what is wrong with it
    Check,
}

/// A record, and what its file does not say.
#[derive(Debug, clap::Args)]
struct Record {
    /// A table of samples as text, CSV or the like; - reads it from the standard input
    file: PathBuf,
    /// What it shows: a knock's swing, or a star's places while somebody steps to a place and away
    #[arg(long, value_parser = ["knock", "lean"])]
    kind: Option<String>,
    /// Samples a second, where the file has no times
    #[arg(long, value_name = "HZ")]
    rate: Option<f64>,
    /// The column of times: its name or number from one, with :s or :ms to say its unit
    #[arg(long, value_name = "COLUMN")]
    time: Option<String>,
    /// The column that was measured: its name or number from one; two of a lean with a comma between
    #[arg(long, value_name = "COLUMN")]
    value: Option<String>,
    /// Bearings towards which the top leans where a lean's first and second column grow, degrees from north, with a comma between
    #[arg(
        long,
        value_name = "DEGREES",
        value_delimiter = ',',
        allow_hyphen_values = true
    )]
    towards: Vec<f64>,
    /// Seconds of arc in one unit of the column
    #[arg(long, value_name = "ARCSEC_PER_UNIT", allow_hyphen_values = true)]
    scale: Option<f64>,
    /// When somebody stepped there and away in turn, seconds from the first row, with commas between
    #[arg(long, value_name = "SECONDS", value_delimiter = ',')]
    at: Vec<f64>,
}

impl Record {
    fn asked(self) -> (PathBuf, Asked) {
        let asked = Asked {
            kind: self.kind.map(|kind| {
                if kind == "lean" {
                    Kind::Lean
                } else {
                    Kind::Knock
                }
            }),
            rate_hz: self.rate,
            time: self.time,
            value: self.value,
            towards_deg: self.towards,
            scale_arcsec_per_unit: self.scale,
            at_s: self.at,
        };
        (self.file, asked)
    }
}

/// A reason to end with a status other than 0.
struct Failure {
    status: u8,
    said: String,
}

impl Failure {
    /// What was given cannot be used.
    fn input(said: impl ToString) -> Self {
        Self {
            status: BAD_INPUT,
            said: said.to_string(),
        }
    }

    /// It could not be done.
    fn fault(said: impl ToString) -> Self {
        Self {
            status: 1,
            said: said.to_string(),
        }
    }
}

/// Runs a command line.
pub fn run(words: impl IntoIterator<Item = OsString>) -> ExitCode {
    let line = Line::command().mut_args(of_any_bytes);
    let read = line
        .try_get_matches_from(words)
        .and_then(|matches| Ok((Line::from_arg_matches(&matches)?, stated(&matches))));
    let (line, stated) = match read {
        Ok(read) => read,
        Err(refusal) => {
            let _ = refusal.print();
            return ExitCode::from(u8::try_from(refusal.exit_code()).unwrap_or(BAD_INPUT));
        }
    };
    match obey(line, &stated) {
        Ok(()) => ExitCode::SUCCESS,
        Err(Failure { status, said }) => {
            // One line, whatever the reason holds.
            eprintln!(
                "stillground: {}",
                said.split_whitespace().collect::<Vec<_>>().join(" ")
            );
            ExitCode::from(status)
        }
    }
}

fn obey(line: Line, stated: &[Stated]) -> Result<(), Failure> {
    let strangers = strangers(
        std::env::vars_os().map(|(name, _)| name.to_string_lossy().into_owned()),
        stated,
    );
    let config = || {
        strangers.iter().try_for_each(not_misspelt)?;
        stated.iter().try_for_each(is_text)?;
        Config::new(line.settings.clone()).map_err(Failure::input)
    };
    match line.command.unwrap_or(Command::Serve) {
        Command::Serve => serve::serve(config()?),
        Command::Design { file } => design::design(&file),
        Command::Options { file } => options::options(&file),
        Command::Trace(record) => {
            let (file, asked) = record.asked();
            trace::trace(&file, asked)
        }
        Command::Print { file, out, paper } => print::print(&file, &out, paper.as_deref()),
        Command::Backup {
            file, every: None, ..
        } => archive::backup(&config()?, &file),
        Command::Backup {
            file,
            every: Some(every),
            keep,
        } => {
            let keep = keep.get();
            let folder = file;
            archive::copies(
                config()?,
                Copying {
                    folder,
                    every,
                    keep,
                },
            )
        }
        Command::Restore {
            file,
            force,
            damaged_too,
        } => archive::restore(&config()?, &file, force, damaged_too),
        Command::Verify { file } => archive::verify(&config()?, file.as_deref()),
        Command::Export { plan, out } => parcel::export(&config()?, &plan, out.as_deref()),
        Command::Import { file } => parcel::import(&config()?, &file),
        Command::Plans { removed } => plans::list(&config()?, removed),
        Command::Erase { plan } => plans::erase(&config()?, &plan),
        Command::Check => check::check(&line.settings, stated, &strangers),
    }
}

/// A setting whose name is misspelt would not be read, and what it was to close would stay open.
fn not_misspelt(stranger: &Stranger) -> Result<(), Failure> {
    let Stranger { name, meant } = stranger;
    if meant.is_none() {
        Ok(())
    } else {
        Err(Failure::input(format!("{name}: {}", stranger.words())))
    }
}

/// What is no text would be read as another value than was meant.
fn is_text(setting: &Stated) -> Result<(), Failure> {
    if setting.is_text {
        Ok(())
    } else {
        Err(Failure::input(format!("{}: {NO_TEXT}", setting.name)))
    }
}

/// Prints a line; whoever stops reading is told of by the exit status.
fn say(line: impl Display) -> Result<(), Failure> {
    let mut out = std::io::stdout().lock();
    let said = writeln!(out, "{line}").and_then(|()| out.flush());
    said.map_err(|error| Failure::fault(format!("what was done cannot be printed: {error}")))
}

/// Runs what waits for files, outside the service.
fn block_on<T>(work: impl Future<Output = T>) -> Result<T, Failure> {
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .map_err(Failure::fault)?;
    Ok(runtime.block_on(work))
}
