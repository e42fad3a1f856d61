//! The attacker in a process of its own, at the lowest priority that the system has: on a machine that it shares with the
//! service it then takes nothing that the service or the other client asks for, and is bounded by nothing else. An attacker
//! from elsewhere has processors of its own.

use std::io::{Read, Write};
use std::net::SocketAddr;
use std::process::Stdio;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::time::Duration;

use tokio::io::AsyncReadExt;
use tokio::process::{Child, Command};

use super::attacks::attacks;
use super::{Own, Target};

/// How long what still waits for an answer may wait when it is told to stop.
const FAREWELL: Duration = Duration::from_millis(300);
/// Longest time until it is gone.
const GONE_WITHIN: Duration = Duration::from_secs(5);

/// An attack that goes on until it is told to stop.
pub(super) struct Attacker(Child);

impl Attacker {
    /// Begins an attack, by its place among all.
    pub(super) fn begin(place: usize, at: SocketAddr, own: &Own) -> Self {
        let this = std::env::current_exe().expect("this program");
        let child = Command::new("nice")
            .args(["-n", "19"])
            .arg(this)
            .args(["attack", &place.to_string(), &at.to_string()])
            .args([&own.id, &own.record, &own.view])
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .kill_on_drop(true)
            .spawn()
            .expect("an attacker");
        Self(child)
    }

    /// Ends it; how often it tried, and how often it was answered with anything but a refusal.
    pub(super) async fn end(mut self) -> (u64, u64) {
        drop(self.0.stdin.take());
        let mut said = String::new();
        let out = self.0.stdout.take();
        let told = async {
            if let Some(mut out) = out {
                let _ = out.read_to_string(&mut said).await;
            }
        };
        let _ = tokio::time::timeout(GONE_WITHIN, told).await;
        let _ = self.0.kill().await;
        let mut counts = said
            .split_whitespace()
            .map(|count| count.parse().expect("a count"));
        let mut next = || counts.next().expect("the attacker's counts");
        (next(), next())
    }
}

/// Attacks until the standard input ends, then says how often it tried and how often it was answered.
///
/// # Panics
/// When the words are not those of [`Attacker::begin`].
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
    let running = tokio::spawn((attack.run)(Arc::clone(&target)));
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
