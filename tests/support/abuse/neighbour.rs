//! The other client: it asks for a page of its plan again and again, and looks whether the service lives.

use std::net::SocketAddr;
use std::time::{Duration, Instant};

use super::OTHER;
use super::line::Line;

/// Pause between two pages: nobody reads faster.
const PAUSE: Duration = Duration::from_millis(5);
/// Pause between two looks at memory and health.
const LOOK: Duration = Duration::from_millis(50);

/// The other client.
pub struct Neighbour {
    /// Where it asks.
    pub at: SocketAddr,
    /// The address of its page.
    pub page: String,
}

/// What it met.
pub struct Seen {
    /// 99 of 100 pages within, ms.
    pub slow_ms: f64,
    /// Pages that it was not given.
    pub refused: u64,
    /// The longest that an answer about health took.
    pub health: Duration,
    /// Most memory that the service held, MiB.
    pub memory_mib: f64,
}

impl Neighbour {
    /// The page, asked for once.
    pub async fn once(&self) -> Option<Vec<u8>> {
        let mut line = Line::open(OTHER, self.at).await.ok()?;
        let answer = line.ask(self.request().as_bytes()).await.ok()?;
        Some(answer.body)
    }

    fn request(&self) -> String {
        format!("GET {} HTTP/1.1\r\nhost: {}\r\n\r\n", self.page, self.at)
    }

    /// Asks for a while.
    pub async fn watch(&self, long: Duration, process: u32) -> Seen {
        let ((mut took, refused), (health, memory_mib)) =
            tokio::join!(self.ask(long), self.look(long, process));
        took.sort_by(f64::total_cmp);
        let place = (took.len() * 99) / 100;
        let slow_ms = took
            .get(place.min(took.len().saturating_sub(1)))
            .copied()
            .unwrap_or(f64::INFINITY);
        Seen {
            slow_ms,
            refused,
            health,
            memory_mib,
        }
    }

    /// How long each page took, ms, and how many were refused. Each second on a line of its own, as people come.
    async fn ask(&self, long: Duration) -> (Vec<f64>, u64) {
        let request = self.request();
        let (begun, mut took, mut refused) = (Instant::now(), Vec::new(), 0);
        while begun.elapsed() < long {
            let opened = Instant::now();
            let Ok(mut line) = Line::open(OTHER, self.at).await else {
                refused += 1;
                continue;
            };
            while opened.elapsed() < Duration::from_secs(1) && begun.elapsed() < long {
                let asked = Instant::now();
                match line.ask(request.as_bytes()).await {
                    Ok(answer) if answer.status == 200 => {
                        took.push(asked.elapsed().as_secs_f64() * 1000.0);
                    }
                    _ => {
                        refused += 1;
                        break;
                    }
                }
                tokio::time::sleep(PAUSE).await;
            }
        }
        (took, refused)
    }

    async fn look(&self, long: Duration, process: u32) -> (Duration, f64) {
        let request = format!("GET /health/live HTTP/1.1\r\nhost: {}\r\n\r\n", self.at);
        let (begun, mut slowest, mut most) = (Instant::now(), Duration::ZERO, 0.0_f64);
        while begun.elapsed() < long {
            most = most.max(memory_mib(process));
            let asked = Instant::now();
            // Whoever watches tries again while there is time; the wait is what counts.
            loop {
                let answer = match Line::open(OTHER, self.at).await {
                    Ok(mut line) => line.ask(request.as_bytes()).await.ok(),
                    Err(_) => None,
                };
                if answer.is_some_and(|answer| answer.status == 200)
                    || asked.elapsed() > Duration::from_secs(20)
                {
                    break;
                }
                tokio::time::sleep(Duration::from_millis(20)).await;
            }
            slowest = slowest.max(asked.elapsed());
            tokio::time::sleep(LOOK).await;
        }
        (slowest, most)
    }
}

fn memory_mib(process: u32) -> f64 {
    let status = std::fs::read_to_string(format!("/proc/{process}/status")).unwrap_or_default();
    let kib = status.lines().find_map(|line| {
        line.strip_prefix("VmRSS:")?
            .trim()
            .strip_suffix("kB")?
            .trim()
            .parse::<f64>()
            .ok()
    });
    kib.unwrap_or(0.0) / 1024.0
}
