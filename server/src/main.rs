//! The binary: the command line and nothing else.

use std::process::ExitCode;

fn main() -> ExitCode {
    stillground_server::cli::run(std::env::args_os())
}
