//! The attacker in a process of its own, at the lowest priority that the system has: on a machine that it shares with the
//! service it then takes nothing that the service or the other client asks for, and is bounded by nothing else. An attacker
//! from elsewhere has processors of its own.

use std::io::{Read, Write};
use std::net::SocketAddr;
use std::process::Stdio;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::time::Duration;

use tokio::io::{AsyncBufReadExt, AsyncWriteExt, BufReader};
use tokio::process::{Child, ChildStdout, Command};

use super::attacks::attacks;
use super::{Own, Target};

/// How long what still waits for an answer may wait when it is told to stop.
const FAREWELL: Duration = Duration::from_millis(300);
/// Longest time until it is gone.
const GONE_WITHIN: Duration = Duration::from_secs(20);

/// An attacker that has what it needs, or attacks.
pub(super) struct Attacker {
    child: Child,
    says: BufReader<ChildStdout>,
}

impl Attacker {
    /// Makes one ready for an attack, by its place among all.
    pub(super) async fn ready(place: usize, at: SocketAddr, own: &Own) -> Self {
        let this = std::env::current_exe().expect("this program");
        let mut child = Command::new("nice")
            .args(["-n", "19"])
            .arg(this)
            .args(["attack", &place.to_string(), &at.to_string()])
            .args([&own.id, &own.record, &own.view])
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .kill_on_drop(true)
            .spawn()
            .expect("an attacker");
        let mut says = BufReader::new(child.stdout.take().expect("its output"));
        let _ = says.read_line(&mut String::new()).await;
        Self { child, says }
    }

    /// Lets it attack.
    pub(super) async fn attack(&mut self) {
        let told = self.child.stdin.as_mut().expect("its input");
        told.write_all(b"go\n").await.expect("it listens");
    }

    /// Ends it; how often it tried, and how often it was answered with anything but a refusal.
    pub(super) async fn end(mut self) -> (u64, u64) {
        drop(self.child.stdin.take());
        let mut said = String::new();
        let told = self.says.read_line(&mut said);
        let _ = tokio::time::timeout(GONE_WITHIN, told).await;
        let _ = self.child.kill().await;
        let mut counts = said
            .split_whitespace()
            .map(|count| count.parse().expect("a count"));
        let mut next = || counts.next().expect("the attacker's counts");
        (next(), next())
    }
}

/// Attacks from the first line of the standard input to its end, then says how often it tried and how often it was answered.
///
/// # Panics
/// When the words are not those of an attack.
pub async fn attack(words: &[String]) {
    let [place, at, id, record, view] = words else {
        panic!("attack PLACE ADDRESS ID RECORD VIEW");
    };
    let target = Arc::new(Target {
        at: at.parse().expect("an address"),
        own: Own {
            id: id.clone(),
            record: record.clone(),
            view: view.clone(),
        },
        goes_on: AtomicBool::new(true),
        tried: AtomicU64::new(0),
        answered: AtomicU64::new(0),
    });
    let place: usize = place.parse().expect("a place");
    let attack = attacks().into_iter().nth(place).expect("an attack");
    // Pictures are made here, before anything is measured.
    let attack = (attack.run)(Arc::clone(&target));
    println!("ready");
    let _ = std::io::stdin().read_line(&mut String::new());
    let running = tokio::spawn(attack);
    let ended = || std::io::stdin().read_to_end(&mut Vec::new());
    let _ = tokio::task::spawn_blocking(ended).await;
    target.goes_on.store(false, Ordering::Relaxed);
    let _ = tokio::time::timeout(FAREWELL, running).await;
    let count = |count: &AtomicU64| count.load(Ordering::Relaxed);
    println!("{} {}", count(&target.tried), count(&target.answered));
    let _ = std::io::stdout().flush();
    // What still waits hangs up.
    std::process::exit(0);
}
