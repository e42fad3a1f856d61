//! Somebody who saves one plan again and again, and remembers what was acknowledged.

use std::collections::BTreeMap;
use std::net::SocketAddr;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::time::{Duration, Instant};

use serde_json::Value;

use crate::http::{Answer, exchange, parse};
use crate::service::{Kept, titled};

/// Longest that a service may take to be itself again after what broke it is mended.
const RECOVERY: Duration = Duration::from_secs(20);

/// People saving at once: how many saves were acknowledged to them, and whether they go on.
#[derive(Default)]
pub struct Load {
    acknowledged: AtomicU64,
    stop: AtomicBool,
}

impl Load {
    /// Waits until so many more saves were acknowledged, or for two seconds.
    pub fn wait(&self, saves: u64) {
        let (begun, first) = (Instant::now(), self.acknowledged.load(Ordering::Relaxed));
        while self.acknowledged.load(Ordering::Relaxed) < first + saves
            && begun.elapsed() < Duration::from_secs(2)
        {
            std::thread::sleep(Duration::from_millis(1));
        }
    }

    /// Tells everybody to stop.
    pub fn end(&self) {
        self.stop.store(true, Ordering::Relaxed);
    }
}

/// Somebody who saves.
pub struct Saver {
    name: String,
    kept: Kept,
    stands: u32,
    /// Titles by the revision under which they were acknowledged.
    pub acknowledged: BTreeMap<u32, String>,
    /// Saves sent.
    pub sent: u64,
    /// Saves refused in words.
    pub refused: u64,
    /// Saves of which nothing was heard: they may stand or not.
    pub unheard: u64,
    /// Answers that should not have come.
    pub odd: Vec<String>,
}

impl Saver {
    /// Somebody with a new plan.
    ///
    /// # Panics
    /// When no plan can be kept.
    #[must_use]
    pub fn new(name: &str, at: SocketAddr) -> Self {
        let body = titled(&format!("{name} 1")).to_string();
        let answer = request(at, "POST", "/api/v1/plans", &[], body.as_bytes())
            .expect("an answer")
            .json();
        let text = |value: &Value| value.as_str().expect("a text").to_owned();
        let links = &answer["links"];
        let kept = Kept {
            id: text(&answer["id"]),
            edit: text(&links["edit"]),
            record: text(&links["record"]),
            view: text(&links["view"]),
        };
        Self::with(name, kept)
    }

    /// Somebody with a plan that is there.
    #[must_use]
    pub fn with(name: &str, kept: Kept) -> Self {
        let name = name.to_owned();
        Self {
            name,
            kept,
            stands: 1,
            acknowledged: BTreeMap::new(),
            sent: 0,
            refused: 0,
            unheard: 0,
            odd: Vec::new(),
        }
    }

    /// The plan.
    #[must_use]
    pub const fn plan(&self) -> &Kept {
        &self.kept
    }

    /// Saves once; whether it was acknowledged.
    pub fn save(&mut self, at: SocketAddr) -> bool {
        let (base, next) = (self.stands, self.stands + 1);
        let title = format!("{} {next}", self.name);
        let precondition = format!("\"{base}\"");
        self.sent += 1;
        let answer = request(
            at,
            "PUT",
            &self.kept.path(""),
            &[
                ("authorization", &self.bearer()),
                ("if-match", &precondition),
            ],
            titled(&title).to_string().as_bytes(),
        );
        match answer.as_ref().map(|answer| answer.status) {
            Some(200) => {
                self.acknowledged.insert(next, title);
                self.stands = next;
                return true;
            }
            // Another saved, or a save of which nothing was heard stands.
            Some(412) => self.stands = answer.map_or(next, |answer| current(&answer)),
            Some(503) => {
                self.refused += 1;
                let answer = answer.as_ref().expect("an answer");
                if answer.header("retry-after").is_empty() {
                    self.odd
                        .push(format!("503 without Retry-After: {}", answer.text()));
                }
            }
            Some(status) => self.odd.push(format!(
                "{status}: {}",
                answer.as_ref().map(Answer::text).unwrap_or_default()
            )),
            None => self.unheard += 1,
        }
        false
    }

    /// Saves at one instance after another until told to stop; where one does not take it, the next is asked.
    pub fn save_until(&mut self, at: &[SocketAddr], load: &Load) {
        let mut which = 0;
        while !load.stop.load(Ordering::Relaxed) {
            if self.save(at[which % at.len()]) {
                load.acknowledged.fetch_add(1, Ordering::Relaxed);
            } else {
                which += 1;
                std::thread::sleep(Duration::from_millis(2));
            }
        }
    }

    /// Saves until one is acknowledged; how long that took, when it did at all.
    pub fn save_at_last(&mut self, at: SocketAddr) -> Option<Duration> {
        let begun = Instant::now();
        while begun.elapsed() < RECOVERY {
            if self.save(at) {
                return Some(begun.elapsed());
            }
            std::thread::sleep(Duration::from_millis(50));
        }
        None
    }

    /// What was acknowledged and is not there, and gaps in what is there.
    #[must_use]
    pub fn missing(&self, at: SocketAddr) -> Vec<String> {
        self.missing_since(at, usize::MAX)
    }

    /// The same of the last few that were acknowledged.
    #[must_use]
    pub fn missing_since(&self, at: SocketAddr, last: usize) -> Vec<String> {
        let read = |below: &str| {
            request(
                at,
                "GET",
                &self.kept.path(below),
                &[("authorization", &self.bearer())],
                b"",
            )
        };
        let mut missing = Vec::new();
        for (number, title) in self.acknowledged.iter().rev().take(last) {
            let found = read(&format!("/revisions/{number}"));
            if !found
                .as_ref()
                .is_some_and(|found| found.status == 200 && found.json()["title"] == **title)
            {
                missing.push(format!(
                    "{title} as revision {number}: {:?}",
                    found.map(|found| found.text())
                ));
            }
        }
        // A hundred at a time.
        let (mut numbers, mut next) = (Vec::<u64>::new(), Some("/revisions".to_owned()));
        while let Some(list) = next.as_deref().and_then(&read).map(|list| list.json()) {
            let listed = list["revisions"].as_array().into_iter().flatten();
            numbers.extend(listed.filter_map(|line| line["revision"].as_u64()));
            let below = list["next"].as_u64();
            next = below.map(|below| format!("/revisions?below={below}"));
        }
        if !numbers.iter().rev().copied().eq((1..).take(numbers.len())) || numbers.is_empty() {
            missing.push(format!("revisions with gaps: {numbers:?}"));
        }
        missing
    }

    fn bearer(&self) -> String {
        format!("Bearer {}", self.kept.edit)
    }
}

fn current(answer: &Answer) -> u32 {
    answer.json()["current"]["revision"]
        .as_u64()
        .and_then(|number| u32::try_from(number).ok())
        .unwrap_or(1)
}

/// Sends a request; nothing when the line broke before the whole answer was there.
#[must_use]
pub fn request(
    at: SocketAddr,
    method: &str,
    path: &str,
    headers: &[(&str, &str)],
    body: &[u8],
) -> Option<Answer> {
    let mut head = format!(
        "{method} {path} HTTP/1.1\r\nhost: {at}\r\nconnection: close\r\ncontent-type: application/json\r\n"
    );
    for (name, value) in headers {
        head.push_str(&format!("{name}: {value}\r\n"));
    }
    head.push_str(&format!("content-length: {}\r\n\r\n", body.len()));
    let mut bytes = head.into_bytes();
    bytes.extend_from_slice(body);
    let answer = parse(&exchange(at, &bytes).ok()?)?;
    let whole = answer
        .header("content-length")
        .parse()
        .is_ok_and(|length: usize| length == answer.body.len());
    (whole || answer.body.is_empty()).then_some(answer)
}
