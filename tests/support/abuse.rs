//! Trials in which one client asks for all it can get, and another asks for a page meanwhile: how long that one waits, how
//! often it is refused, what memory the service takes, and how soon all is quiet again.
//!
//! # What is the service's, and what the machine's
//!
//! Attacker, service and the other client share one machine. An attacker on a machine of its own would take nothing from the
//! processors that the service has; here it takes whatever it can, and if it ran in the process that measures, even the clock
//! of the other client would wait for it. So each is a process of its own: the service and the other client at the usual
//! priority, the attacker at the lowest (`nice -n 19`), which leaves it all that the others do not ask for and nothing that
//! they do. It is bounded by nothing else.
//!
//! A page takes one or two milliseconds where nobody else asks, which is less than one turn of the system's at a processor
//! (three to four milliseconds): whoever asks while the system is busy at all may wait for one, whatever the service does.
//! How long that is is not assumed but measured in the same run: the same attacker attacks a bare axum server that sends the
//! bytes of the same page and does nothing else (`bare.rs`), and the other client asks that one. The goal stands at three
//! times what the page took in quiet, or three times what it took at the bare server under the same attack, where that is
//! more. Both are printed, so that the reader sees which it was.

mod attacker;
mod attacks;
mod bare;
mod line;
mod neighbour;

use std::fmt;
use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::path::Path;
use std::process::Command;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::time::Duration;

use crate::binary::{Process, command, start};
use crate::place::Place;
use attacker::Attacker;
pub use attacker::attack;
use attacks::Attack;
pub use attacks::attacks;
use bare::Bare;
pub use bare::serve_bare;
use neighbour::Neighbour;

/// How long each attack goes on.
const WHILE: Duration = Duration::from_secs(6);
/// How long the neighbour is watched before it.
const BEFORE: Duration = Duration::from_secs(3);
/// Longest time until all is as before.
const QUIET_WITHIN: Duration = Duration::from_secs(5);
/// How long the bare server is attacked.
const AT_THE_BARE: Duration = Duration::from_secs(4);
/// Most memory that the service may hold, MiB.
const MOST_MEMORY: f64 = 256.0;
/// Longest that whoever watches the service may wait for its answer.
const LONGEST_HEALTH: Duration = Duration::from_secs(1);

/// Whoever asks for too much, the neighbour, and a proxy: three machines, all of them this one.
const GREEDY: IpAddr = IpAddr::V4(Ipv4Addr::new(127, 0, 0, 66));
const OTHER: IpAddr = IpAddr::V4(Ipv4Addr::LOCALHOST);

/// What is attacked, as the attacker sees it.
pub struct Target {
    at: SocketAddr,
    /// A plan of the attacker's own.
    own: Own,
    /// Whether it goes on.
    goes_on: AtomicBool,
    tried: AtomicU64,
    answered: AtomicU64,
}

/// A plan's name and links.
struct Own {
    id: String,
    record: String,
    view: String,
}

impl Target {
    fn goes_on(&self) -> bool {
        self.goes_on.load(Ordering::Relaxed)
    }
}

/// What became of one attack.
pub struct Trial {
    line: u8,
    name: &'static str,
    tried: u64,
    answered: u64,
    most_answered: Option<u64>,
    most_slower: f64,
    before_ms: f64,
    bare_ms: f64,
    during_ms: f64,
    refused: u64,
    health: Duration,
    memory_mib: f64,
    quiet_after: Option<Duration>,
}

impl Trial {
    /// What is not as it should be.
    #[must_use]
    pub fn wrong(&self) -> Vec<String> {
        let mut wrong = Vec::new();
        let mut expect = |right: bool, otherwise: String| {
            if !right {
                wrong.push(otherwise);
            }
        };
        let slower = self.during_ms / self.before_ms.max(self.bare_ms);
        expect(
            slower <= self.most_slower,
            format!("{slower:.1} times as slow"),
        );
        expect(self.refused == 0, format!("{} refused", self.refused));
        expect(
            self.memory_mib <= MOST_MEMORY,
            format!("{:.0} MiB", self.memory_mib),
        );
        expect(
            self.health <= LONGEST_HEALTH,
            format!("health after {:?}", self.health),
        );
        expect(
            self.quiet_after.is_some(),
            format!("not quiet within {QUIET_WITHIN:?}"),
        );
        if let Some(most) = self.most_answered {
            expect(
                self.answered <= most,
                format!("{} were answered, of {most} at most", self.answered),
            );
        }
        wrong
    }
}

impl fmt::Display for Trial {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let wrong = self.wrong();
        let quiet = self.quiet_after.map_or("–".to_owned(), |after| {
            format!("{:.1}", after.as_secs_f64())
        });
        write!(
            f,
            "| {} | {} | {} | {} | {:.1} | {:.1} | {:.1} | {:.1} | {:.1} | {} | {:.0} | {:.0} | {} | {} |",
            self.line,
            self.name,
            self.tried,
            self.answered,
            self.before_ms,
            self.bare_ms,
            self.during_ms,
            self.during_ms / self.before_ms,
            self.during_ms / self.bare_ms,
            self.refused,
            self.health.as_secs_f64() * 1000.0,
            self.memory_mib,
            quiet,
            if wrong.is_empty() {
                "held".to_owned()
            } else {
                wrong.join("; ")
            }
        )
    }
}

/// The heads of the columns.
pub const HEADS: &str = "| line | what one client does for six seconds | tried | answered | another’s page before, 99 % within, ms | a bare server’s page meanwhile, ms | the service’s page meanwhile, ms | ratio to before | to the bare server | refused | slowest health, ms | most memory, MiB | quiet again after, s | |\n|---:|---|---:|---:|---:|---:|---:|---:|---:|---:|---:|---:|---:|---|";

/// Makes an attack, by its place among all, on a service of its own.
///
/// # Panics
/// When the service does not start.
pub async fn trial(number: usize, attack: &Attack) -> Trial {
    let place = Place::on_sqlite();
    let process = serve(&place, attack);
    let at = process.socket;
    let (page, _) = keep(at).await;
    let (_, own) = keep(at).await;
    let neighbour = Neighbour { at, page };
    let mut attacker = Attacker::ready(number, at, &own).await;
    let before = neighbour.watch(BEFORE, process.id()).await;
    attacker.attack().await;
    let during = neighbour.watch(WHILE, process.id()).await;
    let begun = std::time::Instant::now();
    let ((tried, answered), quiet_after) = tokio::join!(attacker.end(), async {
        loop {
            let long = Duration::from_millis(500);
            let now = neighbour.watch(long, process.id()).await;
            if now.refused == 0 && now.slow_ms <= (1.5 * before.slow_ms).max(before.slow_ms + 2.0) {
                break Some(begun.elapsed());
            }
            if begun.elapsed() >= QUIET_WITHIN {
                break None;
            }
        }
    });
    let sent = neighbour.once().await.unwrap_or_default();
    drop(process);
    Trial {
        line: attack.line,
        name: attack.name,
        tried,
        answered,
        most_answered: attack.most_answered,
        most_slower: attack.most_slower,
        before_ms: before.slow_ms,
        bare_ms: at_a_bare_server(number, &own, &sent).await,
        during_ms: during.slow_ms,
        refused: during.refused,
        health: during.health,
        memory_mib: during.memory_mib,
        quiet_after,
    }
}

/// How long the same page takes at a server that does nothing but send it, under the same attack.
async fn at_a_bare_server(number: usize, own: &Own, page: &[u8]) -> f64 {
    let bare = Bare::start(page).await;
    let neighbour = Neighbour {
        at: bare.at,
        page: "/".to_owned(),
    };
    let mut attacker = Attacker::ready(number, bare.at, own).await;
    attacker.attack().await;
    let seen = neighbour.watch(AT_THE_BARE, 0).await;
    let _ = attacker.end().await;
    seen.slow_ms
}

/// A service in which the neighbour is not counted, so that it may ask without a pause.
fn serve(place: &Place, attack: &Attack) -> Process {
    let settings = [
        ("STILLGROUND_UNCOUNTED", "127.0.0.1"),
        ("STILLGROUND_TRUSTED_PROXIES", attack.proxies),
    ];
    let mut plain = command(place.folder(), &[]);
    if let Some(files) = attack.files {
        // A shell lowers the limit and becomes the service.
        let mut limited = Command::new("sh");
        limited
            .args(["-c", &format!("ulimit -n {files}; exec \"$0\" \"$@\"")])
            .arg(plain.get_program())
            .current_dir(place.folder())
            .env_clear()
            .env("HOME", place.folder());
        plain = limited;
    }
    let token = token(place.folder());
    plain
        .args(place.flags())
        .args(["--listen", "127.0.0.1:0"])
        .arg("--organiser-token-file")
        .arg(token)
        .envs(settings);
    start(plain)
}

fn token(folder: &Path) -> std::path::PathBuf {
    let file = folder.join("token");
    std::fs::write(&file, "a password of many letters").expect("a file");
    file
}

/// Keeps a plan: the address of a page of its, and its links.
async fn keep(at: SocketAddr) -> (String, Own) {
    let body = include_str!("../examples/quarry-lane.json");
    let head = format!(
        "POST /api/v1/plans HTTP/1.1\r\nhost: {at}\r\ncontent-type: application/json\r\ncontent-length: {}\r\n\r\n{body}",
        body.len()
    );
    let mut line = line::Line::open(OTHER, at).await.expect("a line");
    let answer = line.ask(head.as_bytes()).await.expect("an answer");
    assert_eq!(answer.status, 201);
    let kept: serde_json::Value = serde_json::from_slice(&answer.body).expect("JSON");
    let text = |value: &serde_json::Value| value.as_str().expect("a text").to_owned();
    let links = &kept["links"];
    let own = Own {
        id: text(&kept["id"]),
        record: text(&links["record"]),
        view: text(&links["view"]),
    };
    (format!("/p/{}/site", text(&links["edit"])), own)
}
