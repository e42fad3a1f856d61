//! The planner's process: started as anyone starts it, asked how much memory it holds and how soon it was ready.

use std::io::{BufRead, BufReader, Error, Result};
use std::net::SocketAddr;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use tokio::net::TcpStream;

use crate::drive::{BUFFER, ask, page};

/// A planner in a process of its own, ended when dropped.
pub struct Planner {
    /// Where it listens.
    pub socket: SocketAddr,
    /// How long it took from its start to its first answer.
    pub ready_after: Duration,
    child: Child,
}

impl Planner {
    /// Starts it on a folder, with nothing taken from this program's environment; its log is written and thrown away.
    pub async fn start(folder: &Path) -> Result<Self> {
        Self::start_with(folder, &[]).await
    }

    /// The same on a database, and with one thread that serves, so that it takes no more than about one core.
    pub async fn start_on(folder: &Path, database: &str) -> Result<Self> {
        Self::start_with(
            folder,
            &[
                ("STILLGROUND_DATABASE_URL", database),
                ("TOKIO_WORKER_THREADS", "1"),
            ],
        )
        .await
    }

    async fn start_with(folder: &Path, settings: &[(&str, &str)]) -> Result<Self> {
        let begun = Instant::now();
        let mut child = Command::new(env!("CARGO_BIN_EXE_stillground"))
            .args(["--listen", "127.0.0.1:0"])
            .env_clear()
            .env("HOME", folder)
            .env("STILLGROUND_UNCOUNTED", "127.0.0.1")
            .envs(settings.iter().copied())
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()?;
        let line = first_line(&mut child)?;
        let socket = line
            .trim_start_matches("http://")
            .trim_end_matches('/')
            .parse()
            .map_err(Error::other)?;
        let mut planner = Self {
            socket,
            ready_after: Duration::ZERO,
            child,
        };
        if planner.get("/health/ready").await?.0 != 200 {
            return Err(Error::other("the planner is not ready"));
        }
        planner.ready_after = begun.elapsed();
        Ok(planner)
    }

    /// Asks once on a connection of its own: the status and the body.
    pub async fn get(&self, path: &str) -> Result<(u16, Vec<u8>)> {
        self.send(&page(path)).await
    }

    /// Sends one request on a connection of its own.
    pub async fn send(&self, request: &[u8]) -> Result<(u16, Vec<u8>)> {
        let mut body = Vec::new();
        let status = ask(
            &mut TcpStream::connect(self.socket).await?,
            &mut vec![0; BUFFER],
            request,
            |part| body.extend_from_slice(part),
        )
        .await?;
        Ok((status, body))
    }

    /// Processor time that it has taken, seconds.
    pub fn processor_time(&self) -> Result<f64> {
        processor_time(self.child.id())
    }

    /// Memory that it holds, in MiB.
    pub fn memory_mib(&self) -> Result<f64> {
        let status = std::fs::read_to_string(format!("/proc/{}/status", self.child.id()))?;
        let line = status
            .lines()
            .find_map(|line| line.strip_prefix("VmRSS:"))
            .unwrap_or_default();
        let kib: f64 = line
            .trim()
            .trim_end_matches("kB")
            .trim()
            .parse()
            .map_err(Error::other)?;
        Ok(kib / 1024.0)
    }
}

impl Drop for Planner {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// Processor time that a process has taken, seconds: its 14th and 15th figure, in the kernel's hundredths.
pub fn processor_time(process: u32) -> Result<f64> {
    let line = std::fs::read_to_string(format!("/proc/{process}/stat"))?;
    let after_name = line.rsplit_once(')').map_or("", |(_, rest)| rest);
    let ticks: f64 = after_name
        .split_whitespace()
        .skip(11)
        .take(2)
        .filter_map(|ticks| ticks.parse::<f64>().ok())
        .sum();
    Ok(ticks / 100.0)
}

/// The first line that a process prints.
pub fn first_line(child: &mut Child) -> Result<String> {
    let mut line = String::new();
    let output = child
        .stdout
        .take()
        .ok_or_else(|| Error::other("a process without an output"))?;
    BufReader::new(output).read_line(&mut line)?;
    Ok(line.trim().to_owned())
}

/// How many wait for the machine's processors, over the last minute: what else runs is seen by it.
pub fn crowd() -> String {
    let line = std::fs::read_to_string("/proc/loadavg").unwrap_or_default();
    line.split(' ')
        .next()
        .filter(|load| !load.is_empty())
        .unwrap_or("not known")
        .to_owned()
}

/// The machine in two words.
pub fn cores() -> String {
    match std::thread::available_parallelism().map_or(1, usize::from) {
        1 => "one core".to_owned(),
        2 => "two cores".to_owned(),
        many => format!("{many} cores"),
    }
}
