//! The command line: serve, or do one thing and end.

mod design;
mod serve;

use std::ffi::OsString;
use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Parser, Subcommand};

use crate::config::{Config, Settings};

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
}

/// A reason to end with a status other than 0.
struct Failure {
    status: u8,
    said: String,
}

impl Failure {
    /// What was given cannot be used.
    fn input(said: impl ToString) -> Self {
        Self { status: BAD_INPUT, said: said.to_string() }
    }

    /// It could not be done.
    fn fault(said: impl ToString) -> Self {
        Self { status: 1, said: said.to_string() }
    }
}

/// Runs a command line.
pub fn run(words: impl IntoIterator<Item = OsString>) -> ExitCode {
    let line = match Line::try_parse_from(words) {
        Ok(line) => line,
        Err(refusal) => {
            let _ = refusal.print();
            return ExitCode::from(u8::try_from(refusal.exit_code()).unwrap_or(BAD_INPUT));
        }
    };
    match obey(line) {
        Ok(()) => ExitCode::SUCCESS,
        Err(Failure { status, said }) => {
            // One line, whatever the reason holds.
            eprintln!("stillground: {}", said.split_whitespace().collect::<Vec<_>>().join(" "));
            ExitCode::from(status)
        }
    }
}

fn obey(line: Line) -> Result<(), Failure> {
    let config = || Config::new(line.settings.clone()).map_err(Failure::input);
    match line.command.unwrap_or(Command::Serve) {
        Command::Serve => serve::serve(config()?),
        Command::Design { file } => design::design(&file),
    }
}
