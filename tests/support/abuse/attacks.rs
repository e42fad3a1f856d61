//! What one client may try, by the lines of what is to hold.

use std::future::Future;
use std::io::Cursor;
use std::pin::Pin;
use std::sync::Arc;
use std::sync::atomic::Ordering;
use std::time::Duration;

use image::{DynamicImage, ImageFormat, RgbImage};
use tokio::task::JoinSet;

use super::line::Line;
use super::{GREEDY, Target};

type Running = Pin<Box<dyn Future<Output = ()> + Send>>;

/// One client's worst.
pub struct Attack {
    pub(super) line: u8,
    pub(super) name: &'static str,
    /// The proxies that the service is told to believe.
    pub(super) proxies: &'static str,
    /// Files that the service may open.
    pub(super) files: Option<u32>,
    /// Most tries that may be answered with anything but a refusal.
    pub(super) most_answered: Option<u64>,
    /// How much slower the neighbour's slowest page of a hundred may become.
    pub(super) most_slower: f64,
    pub(super) run: fn(Arc<Target>) -> Running,
}

impl Attack {
    /// Whether it is of a line.
    #[must_use]
    pub fn is_of(&self, line: u8) -> bool {
        self.line == line
    }
}

const PLAIN: Attack = Attack {
    line: 0,
    name: "",
    proxies: "",
    files: None,
    most_answered: None,
    most_slower: 3.0,
    run: |_| Box::pin(async {}),
};

/// All of them.
#[must_use]
pub fn attacks() -> Vec<Attack> {
    vec![
        Attack {
            line: 1,
            name: "guesses the organiser’s password through a stated proxy that names it by a byte that is no letter",
            proxies: "127.0.0.66",
            most_answered: Some(12),
            run: |target| {
                asking(target, 8, |target| {
                    guess(target, b"x-forwarded-for: \xff\r\n")
                })
            },
            ..PLAIN
        },
        Attack {
            line: 1,
            name: "guesses it through a proxy that says nothing",
            most_answered: Some(12),
            run: |target| asking(target, 8, |target| guess(target, b"")),
            ..PLAIN
        },
        Attack {
            line: 2,
            name: "asks for links that open nothing",
            most_answered: Some(22),
            run: |target| {
                asking(target, 8, |target| {
                    get(target, &format!("/p/{}/site", "a".repeat(32)))
                })
            },
            ..PLAIN
        },
        Attack {
            line: 3,
            name: "opens sockets for prints with a body that never comes",
            run: |target| {
                holding(target, 100, |target| {
                    let path = format!("/p/{}/plan.pdf", target.own.view);
                    with("GET", &path, target, b"content-length: 10\r\n")
                })
            },
            ..PLAIN
        },
        Attack {
            line: 4,
            name: "sends 1 MiB again and again to a page that does not exist",
            run: |target| asking(target, 100, |target| post(target, "/nowhere")),
            ..PLAIN
        },
        Attack {
            line: 4,
            name: "sends 1 MiB again and again where a plan is designed",
            run: |target| asking(target, 100, |target| post(target, "/api/v1/design")),
            ..PLAIN
        },
        Attack {
            line: 4,
            name: "sends all but the last byte of 1 MiB on each of 500 sockets",
            run: |target| {
                holding(target, 500, |target| {
                    let whole = post(target, "/api/v1/design");
                    let (_, but_the_last) = whole.body.split_last().expect("a body");
                    Asked {
                        body: but_the_last,
                        ..whole
                    }
                })
            },
            ..PLAIN
        },
        Attack {
            line: 5,
            name: "asks for plans on each of 500 sockets and reads nothing",
            run: |target| {
                holding(target, 500, |target| {
                    get(target, &format!("/p/{}/plan", target.own.view)).repeat(8)
                })
            },
            ..PLAIN
        },
        Attack {
            line: 5,
            name: "opens 1 010 sockets and says nothing, where 1 024 files may be open",
            files: Some(1024),
            run: |target| holding(target, 1010, |_| Vec::new()),
            ..PLAIN
        },
        Attack {
            line: 6,
            name: "sends photographs of 49 million dots, as JPEG",
            run: |target| photographs(target, ImageFormat::Jpeg, 7000),
            ..PLAIN
        },
        Attack {
            line: 6,
            name: "sends photographs of 12 million dots, as WebP of some kilobytes",
            run: |target| photographs(target, ImageFormat::WebP, 3460),
            ..PLAIN
        },
        Attack {
            line: 6,
            name: "sends photographs of 59 million dots, as WebP of some kilobytes",
            run: |target| photographs(target, ImageFormat::WebP, 7700),
            ..PLAIN
        },
        Attack {
            line: 7,
            name: "asks for the same print, or only for its head",
            run: |target| {
                asking(target, 24, |target| {
                    with(
                        "HEAD",
                        &format!("/p/{}/plan.pdf", target.own.view),
                        target,
                        b"",
                    )
                })
            },
            ..PLAIN
        },
        Attack {
            line: 7,
            name: "asks for prints of the example, on every paper",
            run: |target| asking(target, 24, on_every_paper),
            ..PLAIN
        },
        Attack {
            line: 7,
            name: "has plans designed, each another",
            run: |target| asking(target, 24, design),
            ..PLAIN
        },
        Attack {
            line: 8,
            name: "has all ways to build a plan looked for, one plan after another",
            most_slower: 1.5,
            run: |target| asking(target, 6, ways),
            ..PLAIN
        },
    ]
}

fn with(method: &str, path: &str, target: &Target, headers: &[u8]) -> Vec<u8> {
    let mut request = format!("{method} {path} HTTP/1.1\r\nhost: {}\r\n", target.at).into_bytes();
    request.extend(headers);
    request.extend(b"\r\n");
    request
}

fn get(target: &Target, path: &str) -> Vec<u8> {
    with("GET", path, target, b"")
}

/// A body of a mebibyte, there from the beginning: an attacker who made or copied each anew would be busy with that, and
/// hold up with half a gibyte of fresh memory whoever shares the machine.
static BODY: [u8; 1024 * 1024] = [b' '; 1024 * 1024];

/// What is sent: a head that is made for it and a body that is not.
struct Asked {
    head: Vec<u8>,
    body: &'static [u8],
}

impl From<Vec<u8>> for Asked {
    fn from(head: Vec<u8>) -> Self {
        Self { head, body: &[] }
    }
}

fn post(target: &Target, path: &str) -> Asked {
    Asked {
        head: head_of_json(target, path, BODY.len()),
        body: &BODY,
    }
}

/// The example's prints, each of its papers in turn.
fn on_every_paper(target: &Target) -> Vec<u8> {
    let papers = [
        "plan.pdf?paper=a4",
        "plan.pdf?paper=letter",
        "template.pdf?paper=a4",
        "template.pdf?paper=letter",
        "template.pdf?paper=a3",
        "template.pdf?paper=a2",
        "template.pdf?paper=a1",
        "template.pdf?paper=a0",
    ];
    let turn = target.tried.load(Ordering::Relaxed) as usize % papers.len();
    get(target, &format!("/example/{}", papers[turn]))
}

fn guess(target: &Target, forwarded: &[u8]) -> Vec<u8> {
    let body = b"password=wrong+wrong+wrong+wrong";
    let mut headers = format!(
        "content-type: application/x-www-form-urlencoded\r\ncontent-length: {}\r\n",
        body.len()
    )
    .into_bytes();
    headers.extend(forwarded);
    let mut request = with("POST", "/organiser/in", target, &headers);
    request.extend(body);
    request
}

fn design(target: &Target) -> Vec<u8> {
    let turn = target.tried.load(Ordering::Relaxed) % 100_000;
    let body = format!(
        "{{\"schema_version\":1,\"block\":{{\"length_m\":{:.5},\"width_m\":1.1}}}}",
        1.0 + turn as f64 / 100_000.0
    );
    post_json(target, "/api/v1/design", &body)
}

fn post_json(target: &Target, path: &str, body: &str) -> Vec<u8> {
    let mut request = head_of_json(target, path, body.len());
    request.extend(body.as_bytes());
    request
}

fn head_of_json(target: &Target, path: &str, length: usize) -> Vec<u8> {
    let head = format!("content-type: application/json\r\ncontent-length: {length}\r\n");
    with("POST", path, target, head.as_bytes())
}

/// The ways to build a plan of which nothing is said but the column's height, each time another.
fn ways(target: &Target) -> Vec<u8> {
    let turn = target.tried.load(Ordering::Relaxed) % 1000;
    let body = format!(
        "{{\"schema_version\":1,\"pier\":{{\"height_m\":{:.3}}}}}",
        1.0 + turn as f64 / 1000.0
    );
    post_json(target, "/api/v1/options", &body)
}

/// So many sockets, on each of which the next request follows the last answer.
fn asking<A: Into<Asked> + 'static>(
    target: Arc<Target>,
    sockets: usize,
    request: fn(&Target) -> A,
) -> Running {
    Box::pin(async move {
        let mut all = JoinSet::new();
        for _ in 0..sockets {
            let target = Arc::clone(&target);
            all.spawn(async move {
                while target.goes_on() {
                    let Ok(mut line) = Line::open(GREEDY, target.at).await else {
                        tokio::time::sleep(Duration::from_millis(5)).await;
                        continue;
                    };
                    while target.goes_on() {
                        let asked: Asked = request(&target).into();
                        target.tried.fetch_add(1, Ordering::Relaxed);
                        match line.ask_with(&asked.head, asked.body).await {
                            Ok(answer) if answer.status != 429 && answer.status != 503 => {
                                target.answered.fetch_add(1, Ordering::Relaxed);
                            }
                            Ok(_) => {}
                            Err(_) => break,
                        }
                    }
                }
            });
        }
        all.join_all().await;
    })
}

/// So many sockets at a time on which something is sent and nothing read; one that is closed is opened again.
fn holding<A: Into<Asked> + 'static>(
    target: Arc<Target>,
    sockets: usize,
    request: fn(&Target) -> A,
) -> Running {
    Box::pin(async move {
        let mut all = JoinSet::new();
        for _ in 0..sockets {
            let target = Arc::clone(&target);
            all.spawn(async move {
                while target.goes_on() {
                    target.tried.fetch_add(1, Ordering::Relaxed);
                    if let Ok(mut line) = Line::open(GREEDY, target.at).await {
                        let asked: Asked = request(&target).into();
                        let sent = line.send(&asked.head, asked.body);
                        let _ = tokio::time::timeout(Duration::from_secs(2), sent).await;
                        let mut seen = [0; 1];
                        while target.goes_on() {
                            tokio::time::sleep(Duration::from_millis(100)).await;
                            match line.stream.peek(&mut seen).await {
                                Ok(length) if length > 0 => {}
                                _ => break,
                            }
                        }
                    }
                    tokio::time::sleep(Duration::from_millis(20)).await;
                }
            });
        }
        all.join_all().await;
    })
}

/// Photographs of a size, sent as fast as they are taken, four at once.
fn photographs(target: Arc<Target>, format: ImageFormat, side: u32) -> Running {
    let picture = DynamicImage::ImageRgb8(RgbImage::from_pixel(side, side, image::Rgb([9, 90, 9])));
    let mut file = Cursor::new(Vec::new());
    if picture.write_to(&mut file, format).is_err() {
        return Box::pin(async {});
    }
    drop(picture);
    let file: Arc<[u8]> = file.into_inner().into();
    let kind = if format == ImageFormat::Jpeg {
        "image/jpeg"
    } else {
        "image/webp"
    };
    Box::pin(async move {
        let mut all = JoinSet::new();
        for _ in 0..4 {
            let (target, file) = (Arc::clone(&target), Arc::clone(&file));
            all.spawn(async move {
                while target.goes_on() {
                    let turn = target.tried.fetch_add(1, Ordering::Relaxed);
                    let head = format!(
                        "authorization: Bearer {}\r\ncontent-type: {kind}\r\ncontent-length: {}\r\n",
                        target.own.record,
                        file.len()
                    );
                    let path = format!(
                        "/api/v1/plans/{}/photos?id=p{turn}&revision=1&task=dig&who=R",
                        target.own.id
                    );
                    let mut request = with("POST", &path, &target, head.as_bytes());
                    request.extend_from_slice(&file);
                    let asked = async { Line::open(GREEDY, target.at).await?.ask(&request).await };
                    match asked.await {
                        Ok(answer) if answer.status != 429 && answer.status != 503 => {
                            target.answered.fetch_add(1, Ordering::Relaxed);
                        }
                        _ => tokio::time::sleep(Duration::from_millis(50)).await,
                    }
                }
            });
        }
        all.join_all().await;
    })
}
