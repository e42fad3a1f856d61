//! System calls of a running service that fail, or take long, for a while: `strace` puts the fault in and takes it out again.

use std::io::{BufRead, BufReader};
use std::net::SocketAddr;
use std::process::{Child, ChildStderr, Command, Stdio};
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::thread;

use tempfile::TempDir;

use super::saver::request;
use super::{Saver, Trial};
use crate::binary::{Process, command, start};

/// Why a trial with such calls was not made.
const NO_TRACE: &str = "strace is missing, or may not look into other processes";
/// Calls that bring what was written to the disk.
const KEEPING: &str = "fsync,fdatasync";
/// The call that brings back what is on the disk.
const READING: &str = "pread64";
/// Saves that meet each fault.
const SAVES: u64 = 12;
/// Saves that wait for the slow disk.
const SLOW_SAVES: u64 = 6;

/// A fault in a running service; it is mended when this is dropped. What the tracer says has to find a reader, or it ends.
struct Fault(
    Child,
    #[expect(dead_code, reason = "kept open")] BufReader<ChildStderr>,
);

impl Fault {
    /// Puts a fault into some calls of every thread.
    fn new(process: &Process, calls: &str, fault: &str) -> Option<Self> {
        let mut traced = Command::new("strace");
        traced.args([
            "-f",
            "-e",
            &format!("trace={calls}"),
            "-e",
            &format!("inject={calls}:{fault}"),
            "-o",
            "/dev/null",
        ]);
        traced
            .args(["-p", &process.id().to_string()])
            .stdout(Stdio::null())
            .stderr(Stdio::piped());
        let mut child = traced.spawn().ok()?;
        let mut said = String::new();
        let mut saying = BufReader::new(child.stderr.take()?);
        saying.read_line(&mut said).ok()?;
        let fault = Self(child, saying);
        said.contains("attached").then_some(fault)
    }
}

impl Drop for Fault {
    fn drop(&mut self) {
        // Told to stop, it lets go of the service; killed, it might leave the fault behind.
        let _ = Command::new("kill")
            .args(["-TERM", &self.0.id().to_string()])
            .status();
        let _ = self.0.wait();
    }
}

/// The service on a folder of its own.
fn serve(folder: &TempDir) -> Process {
    start(command(
        folder.path(),
        &["--listen", "127.0.0.1:0", "--data", "data"],
    ))
}

/// The disk answers with an error of its own, at keeping, at writing, at both or at reading, and then no longer: refused in words, and
/// the next save is kept without a start anew.
#[must_use]
pub fn failing_calls() -> Trial {
    let name = "errors of the disk (EIO), written or read, then none, SQLite";
    let folder = TempDir::new().expect("a folder");
    let mut trial = Trial::new(name);
    let process = serve(&folder);
    let mut saver = Saver::new("save", process.socket);
    for calls in [
        KEEPING,
        "pwrite64",
        "pwrite64,fsync,fdatasync,ftruncate",
        READING,
    ] {
        let before = saver.refused;
        let Some(fault) = Fault::new(&process, calls, "error=EIO") else {
            return Trial::untried(name, NO_TRACE);
        };
        (0..SAVES).for_each(|_| _ = saver.save(process.socket));
        drop(fault);
        trial.rounds += 1;
        // A save for which nothing has to be read goes through a disk that cannot be read.
        let none_kept = saver.refused == before + SAVES;
        trial.expect(none_kept || calls == READING, || {
            format!(
                "{calls}: {} of {SAVES} saves were refused",
                saver.refused - before
            )
        });
        trial.expect(saver.save_at_last(process.socket).is_some(), || {
            format!("{calls}: afterwards nothing was saved")
        });
    }
    process.kill();
    trial.count(&saver, serve(&folder).socket);
    trial
}

/// The disk takes half a second for what it is asked to keep: saves wait for it, and people who read do not.
#[must_use]
pub fn slow_calls() -> Trial {
    let name = "a disk that takes half a second for each save, SQLite";
    let folder = TempDir::new().expect("a folder");
    let mut trial = Trial {
        rounds: 1,
        ..Trial::new(name)
    };
    let process = serve(&folder);
    let mut saver = Saver::new("save", process.socket);
    let page = format!("/p/{}/site", saver.plan().edit);
    trial.expect(reads(process.socket, &page), || {
        "the page is not read".to_owned()
    });
    let Some(fault) = Fault::new(&process, KEEPING, "delay_enter=500000") else {
        return Trial::untried(name, NO_TRACE);
    };
    let (stop, read, unread) = (AtomicBool::new(false), AtomicU64::new(0), AtomicU64::new(0));
    thread::scope(|scope| {
        scope.spawn(|| {
            while !stop.load(Ordering::Relaxed) {
                let count = if reads(process.socket, &page) {
                    &read
                } else {
                    &unread
                };
                count.fetch_add(1, Ordering::Relaxed);
            }
        });
        (0..SLOW_SAVES).for_each(|_| _ = saver.save(process.socket));
        stop.store(true, Ordering::Relaxed);
    });
    drop(fault);
    let (read, unread) = (read.into_inner(), unread.into_inner());
    trial.expect(unread == 0, || {
        format!("{unread} pages were not read meanwhile")
    });
    trial.expect(read > 5 * SLOW_SAVES, || {
        format!("only {read} pages were read while {SLOW_SAVES} saves waited")
    });
    process.kill();
    trial.count(&saver, serve(&folder).socket);
    trial
}

fn reads(at: SocketAddr, page: &str) -> bool {
    request(at, "GET", page, &[], b"").is_some_and(|answer| answer.status == 200)
}
