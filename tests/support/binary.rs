//! The built binary: run once to its end, or as a service that can be killed.

use std::io::{BufRead, BufReader, Write};
use std::net::SocketAddr;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, ExitStatus, Output, Stdio};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;
use std::time::{Duration, Instant};

use crate::place::Place;

/// Longest time for a command that is meant to end.
const LONGEST: Duration = Duration::from_secs(20);

/// The binary that `STILLGROUND_BINARY` names, or the one built beside the tests.
///
/// # Panics
/// When there is none.
#[must_use]
pub fn path() -> PathBuf {
    let beside = || {
        Some(
            std::env::current_exe()
                .ok()?
                .parent()?
                .parent()?
                .join("stillground"),
        )
    };
    let path = std::env::var_os("STILLGROUND_BINARY")
        .map(PathBuf::from)
        .or_else(beside)
        .expect("a path of the binary");
    assert!(
        path.is_file(),
        "{} is missing: run cargo build first",
        path.display()
    );
    path
}

/// A command of the binary that takes nothing from the environment of the tests.
#[must_use]
pub fn command(folder: &Path, words: &[&str]) -> Command {
    let mut command = Command::new(path());
    command
        .args(words)
        .current_dir(folder)
        .env_clear()
        .env("HOME", folder)
        .stdin(Stdio::null());
    command
}

/// Runs it to its end.
///
/// # Panics
/// When it cannot be started, or does not end.
#[must_use]
pub fn run(folder: &Path, words: &[&str]) -> Output {
    run_with_input(folder, words, b"")
}

/// Runs it to its end with a text on its standard input.
///
/// # Panics
/// When it cannot be started, or does not end.
#[must_use]
pub fn run_with_input(folder: &Path, words: &[&str], input: &[u8]) -> Output {
    let mut command = command(folder, words);
    let mut child = command
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the binary runs");
    // It may refuse before it has read all.
    let _ = child.stdin.take().map(|mut stdin| stdin.write_all(input));
    let ended = Arc::new(AtomicBool::new(false));
    let watch = thread::spawn({
        let (ended, id) = (ended.clone(), child.id());
        move || watch(&ended, id)
    });
    let output = child.wait_with_output().expect("the binary ends");
    ended.store(true, Ordering::Relaxed);
    watch.join().expect("it ends in time");
    output
}

/// Waits for a process to end; one that does not is stopped, and the test fails.
fn watch(ended: &AtomicBool, id: u32) {
    let begun = Instant::now();
    while !ended.load(Ordering::Relaxed) {
        if begun.elapsed() > LONGEST {
            let _ = Command::new("kill").arg(id.to_string()).status();
            panic!("the binary did not end within {LONGEST:?}");
        }
        thread::sleep(Duration::from_millis(5));
    }
}

/// A service in a process of its own, killed when dropped.
pub struct Process {
    /// Where it listens.
    pub socket: SocketAddr,
    /// The first line that it printed.
    pub printed: String,
    child: Child,
}

/// Starts a service on a folder and waits for its address.
#[must_use]
pub fn serve(folder: &Path) -> Process {
    start(command(folder, &["--listen", "127.0.0.1:0"]))
}

/// Runs it to its end on a place's store.
#[must_use]
pub fn run_in(place: &Place, words: &[&str]) -> Output {
    run(place.folder(), &with_flags(&place.flags(), words))
}

/// Starts a service on a place's store and waits for its address.
#[must_use]
pub fn serve_in(place: &Place) -> Process {
    start(command(
        place.folder(),
        &with_flags(&place.flags(), &["--listen", "127.0.0.1:0"]),
    ))
}

fn with_flags<'a>(flags: &'a [String], words: &[&'a str]) -> Vec<&'a str> {
    words
        .iter()
        .copied()
        .chain(flags.iter().map(String::as_str))
        .collect()
}

/// Starts a service by a command and waits for its address.
///
/// # Panics
/// When it prints none.
#[must_use]
pub fn start(mut command: Command) -> Process {
    // A test asks more than any one person; one that is about the limits says otherwise before.
    if !command
        .get_envs()
        .any(|(name, _)| name == "STILLGROUND_UNCOUNTED")
    {
        command.env("STILLGROUND_UNCOUNTED", "127.0.0.0/8");
    }
    let mut child = command
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .expect("it runs");
    let mut printed = String::new();
    BufReader::new(child.stdout.take().expect("its output"))
        .read_line(&mut printed)
        .expect("a line");
    let socket = printed
        .trim()
        .trim_start_matches("http://")
        .trim_end_matches('/')
        .parse()
        .expect("an address");
    Process {
        socket,
        printed,
        child,
    }
}

impl Process {
    /// Its process id.
    #[must_use]
    pub fn id(&self) -> u32 {
        self.child.id()
    }

    /// Tells it to stop, as a system does that is shut down in order.
    ///
    /// # Panics
    /// When it cannot be told.
    pub fn tell_to_stop(&self) {
        let told = Command::new("kill")
            .args(["-TERM", &self.id().to_string()])
            .status()
            .expect("a command that runs");
        assert!(told.success(), "{told}");
    }

    /// Waits until it has ended by itself.
    ///
    /// # Panics
    /// When it does not.
    pub fn ended(mut self) -> ExitStatus {
        let begun = Instant::now();
        loop {
            if let Some(status) = self.child.try_wait().expect("a status") {
                return status;
            }
            assert!(
                begun.elapsed() < LONGEST,
                "it did not end within {LONGEST:?}"
            );
            thread::sleep(Duration::from_millis(10));
        }
    }

    /// Kills it at once, as a power cut would, and waits until it is gone.
    pub fn kill(mut self) {
        self.end();
    }

    fn end(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

impl Drop for Process {
    fn drop(&mut self) {
        self.end();
    }
}
