//! The binary: the command line and nothing else.

use std::process::ExitCode;

/// A request is taken up by one thread and let go by another: the system's allocator makes them wait for each other.
#[global_allocator]
static MEMORY: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() -> ExitCode {
    stillground_server::cli::run(std::env::args_os())
}
