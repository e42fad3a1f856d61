//! Disks that are full, that refuse, that may only be read. Small disks are made in memory, which takes root.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::Arc;

use tempfile::TempDir;

use super::{Saver, Trial};
use crate::binary::{command, path, run, serve_in, start};
use crate::place::Place;
use crate::postgres::Cluster;

/// Why a trial with a disk of its own was not made.
const NO_DISK: &str = "making a small disk takes root";
/// Most saves until a disk must be full.
const MOST_SAVES: u32 = 20_000;

/// A small disk in memory; it is gone when it is dropped.
struct Disk(TempDir);

impl Disk {
    fn new(kib: u32) -> Option<Self> {
        let folder = TempDir::new().ok()?;
        let made = Command::new("mount")
            .args([
                "-t",
                "tmpfs",
                "-o",
                &format!("size={kib}k,mode=755"),
                "tmpfs",
            ])
            .arg(folder.path())
            .output();
        made.is_ok_and(|made| made.status.success())
            .then_some(Self(folder))
    }

    fn path(&self) -> &Path {
        self.0.path()
    }

    fn remount(&self, how: &str) -> bool {
        let done = Command::new("mount")
            .args(["-o", &format!("remount,{how}")])
            .arg(self.path())
            .output();
        done.is_ok_and(|done| done.status.success())
    }

    /// A file that takes room and gives it back when it is removed.
    fn filler(&self, kib: usize) -> PathBuf {
        let file = self.path().join("filler");
        fs::write(&file, vec![1; kib * 1024]).expect("a file that fits");
        file
    }
}

impl Drop for Disk {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg("-l").arg(self.path()).output();
    }
}

/// Saves onto a disk until it is full, gives it room again, and goes on, without starting the service again.
#[must_use]
pub fn full_disk() -> Trial {
    let name = "disk full while saving, then room again, SQLite";
    let Some(disk) = Disk::new(4096) else {
        return Trial::untried(name, NO_DISK);
    };
    let filler = disk.filler(2048);
    let data = disk.path().join("data");
    let flags = [
        "--listen",
        "127.0.0.1:0",
        "--data",
        data.to_str().expect("a name"),
    ];
    let mut trial = Trial::new(name);
    let process = start(command(disk.path(), &flags));
    let mut saver = Saver::new("save", process.socket);
    fill(&mut trial, &mut saver, process.socket, &filler);
    process.kill();
    let process = start(command(disk.path(), &flags));
    trial.count(&saver, process.socket);
    trial
}

/// The same with a database whose files are on a small disk.
#[must_use]
pub fn full_database() -> Trial {
    let name = "disk full while saving, then room again, PostgreSQL";
    let Some(disk) = Disk::new(20_480) else {
        return Trial::untried(name, NO_DISK);
    };
    let folder = disk.path().join("tables");
    fs::create_dir(&folder).expect("a folder");
    let cluster = Arc::new(Cluster::start());
    let place = Place::at(cluster.clone(), cluster.database_in(&folder));
    let mut trial = Trial::new(name);
    {
        let process = serve_in(&place);
        let mut saver = Saver::new("save", process.socket);
        let filler = disk.filler(11_000);
        fill(&mut trial, &mut saver, process.socket, &filler);
        trial.count(&saver, process.socket);
    }
    // The server goes before its disk does.
    drop((place, cluster));
    trial
}

fn fill(trial: &mut Trial, saver: &mut Saver, at: std::net::SocketAddr, filler: &Path) {
    trial.rounds = 1;
    while saver.refused < 5 && saver.sent < u64::from(MOST_SAVES) {
        saver.save(at);
    }
    trial.expect(saver.refused > 0, || {
        "the disk never became full".to_owned()
    });
    fs::remove_file(filler).expect("room again");
    let again = saver.save_at_last(at);
    trial.expect(again.is_some(), || {
        "with room again, nothing was saved".to_owned()
    });
}

/// Saves until the system refuses to write the store's file any further, and starts again without that limit.
#[must_use]
pub fn limited_file() -> Trial {
    let mut trial = Trial {
        rounds: 1,
        ..Trial::new("write errors (a limit on the size of a file), SQLite")
    };
    let folder = TempDir::new().expect("a folder");
    let script = format!(
        "trap '' XFSZ; ulimit -f 600; exec '{}' --listen 127.0.0.1:0 --data data",
        path().display()
    );
    let mut limited = Command::new("sh");
    limited
        .args(["-c", &script])
        .current_dir(folder.path())
        .env_clear()
        .env("HOME", folder.path());
    let process = start(limited);
    let mut saver = Saver::new("save", process.socket);
    while saver.refused < 5 && saver.sent < u64::from(MOST_SAVES) {
        saver.save(process.socket);
    }
    trial.expect(saver.refused > 0, || "no write was refused".to_owned());
    process.kill();
    let process = start(command(
        folder.path(),
        &["--listen", "127.0.0.1:0", "--data", "data"],
    ));
    let again = saver.save_at_last(process.socket);
    trial.expect(again.is_some(), || {
        "without the limit, nothing was saved".to_owned()
    });
    trial.count(&saver, process.socket);
    trial
}

/// Starts on a disk that may only be read: refused in words; when it may be written again, everything is there.
#[must_use]
pub fn read_only_folder() -> Trial {
    let name = "folder that may only be read, SQLite";
    let Some(disk) = Disk::new(4096) else {
        return Trial::untried(name, NO_DISK);
    };
    let data = disk.path().join("data");
    let flags = [
        "--listen",
        "127.0.0.1:0",
        "--data",
        data.to_str().expect("a name"),
    ];
    let elsewhere = TempDir::new().expect("a folder");
    let mut trial = Trial {
        rounds: 1,
        ..Trial::new(name)
    };
    let process = start(command(elsewhere.path(), &flags));
    let mut saver = Saver::new("save", process.socket);
    (0..20).for_each(|_| _ = saver.save(process.socket));
    process.kill();
    trial.expect(disk.remount("ro"), || {
        "the disk could not be made read-only".to_owned()
    });
    let refused = run(elsewhere.path(), &flags);
    let said = String::from_utf8_lossy(&refused.stderr).into_owned();
    trial.expect(
        refused.status.code() == Some(1) && said.contains("STILLGROUND_DATA"),
        || format!("{}: {said}", refused.status),
    );
    trial.expect(disk.remount("rw"), || {
        "the disk could not be made writable".to_owned()
    });
    let process = start(command(elsewhere.path(), &flags));
    trial.expect(saver.save_at_last(process.socket).is_some(), || {
        "nothing was saved afterwards".to_owned()
    });
    trial.count(&saver, process.socket);
    trial
}
