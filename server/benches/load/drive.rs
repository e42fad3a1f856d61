//! A bounded client: so many kept connections, each sending its next request when the last was answered whole.

use std::io::{Error, ErrorKind, Result};
use std::net::SocketAddr;
use std::sync::Arc;
use std::time::{Duration, Instant};

use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::TcpStream;

/// What is not counted: connections are made, and what is kept is written for the first time.
const WARM: Duration = Duration::from_millis(500);
/// Longest head of an answer, and how much of a body is read at once.
pub const BUFFER: usize = 64 * 1024;
const HEAD_END: &[u8] = b"\r\n\r\n";

/// The request that a connection sends next, by the connection's and the request's number.
pub type Next = Arc<dyn Fn(usize, u64) -> Vec<u8> + Send + Sync>;

/// What was seen.
#[derive(Debug, Clone, Default)]
pub struct Seen {
    /// Time for each answer in microseconds, sorted.
    times_us: Vec<u32>,
    /// Answers other than 200.
    pub refused: u64,
    /// Time that was counted.
    length: Duration,
}

impl Seen {
    /// Answers a second.
    pub fn rate(&self) -> f64 {
        self.times_us.len() as f64 / self.length.as_secs_f64().max(f64::MIN_POSITIVE)
    }

    /// The time within which a share of the answers came, in milliseconds.
    pub fn within_ms(&self, share_ratio: f64) -> f64 {
        let place = (self.times_us.len() as f64 * share_ratio) as usize;
        self.times_us
            .get(place.min(self.times_us.len().saturating_sub(1)))
            .map_or(f64::NAN, |time| f64::from(*time) / 1000.0)
    }

    /// Both together, seen at the same time.
    pub fn beside(self, other: Self) -> Self {
        let length = self.length.max(other.length);
        Self {
            length,
            ..self.and(other)
        }
    }

    /// Both together, one after the other.
    pub fn and(mut self, other: Self) -> Self {
        self.times_us.extend(other.times_us);
        self.times_us.sort_unstable();
        Self {
            times_us: self.times_us,
            refused: self.refused + other.refused,
            length: self.length + other.length,
        }
    }
}

/// A page, asked for again and again.
pub fn always(path: &str) -> Next {
    let request = page(path);
    Arc::new(move |_, _| request.clone())
}

/// Several pages, each connection asking for one after the other from a place of its own.
pub fn in_turn(paths: &[String]) -> Next {
    let requests: Vec<Vec<u8>> = paths.iter().map(|path| page(path)).collect();
    Arc::new(move |connection, nth| {
        let place = (connection as u64).wrapping_add(nth) % (requests.len() as u64).max(1);
        requests.get(place as usize).cloned().unwrap_or_default()
    })
}

/// A request for a page on a kept connection.
pub fn page(path: &str) -> Vec<u8> {
    format!("GET {path} HTTP/1.1\r\nHost: localhost\r\n\r\n").into_bytes()
}

/// Sends requests for a time.
pub async fn drive(
    to: SocketAddr,
    connections: usize,
    length: Duration,
    next: Next,
) -> Result<Seen> {
    let begin = Instant::now() + WARM;
    let end = begin + length;
    let tasks: Vec<_> = (0..connections)
        .map(|number| tokio::spawn(connection(to, number, begin, end, Arc::clone(&next))))
        .collect();
    let mut all = Seen {
        length,
        ..Seen::default()
    };
    for task in tasks {
        let (times_us, refused) = task.await.map_err(Error::other)??;
        all.times_us.extend(times_us);
        all.refused += refused;
    }
    all.times_us.sort_unstable();
    Ok(all)
}

async fn connection(
    to: SocketAddr,
    number: usize,
    begin: Instant,
    end: Instant,
    next: Next,
) -> Result<(Vec<u32>, u64)> {
    let mut stream = TcpStream::connect(to).await?;
    stream.set_nodelay(true)?;
    let (mut buffer, mut times_us, mut refused) = (vec![0; BUFFER], Vec::new(), 0);
    for nth in 0.. {
        let request = next(number, nth);
        let sent = Instant::now();
        if sent >= end {
            break;
        }
        let status = ask(&mut stream, &mut buffer, &request, |_| ()).await?;
        let answered = Instant::now();
        if answered < begin || answered > end {
            continue;
        }
        if status == 200 {
            times_us.push(u32::try_from((answered - sent).as_micros()).unwrap_or(u32::MAX));
        } else {
            refused += 1;
        }
    }
    Ok((times_us, refused))
}

/// Sends a request and reads the answer to its end, part by part; its status.
pub async fn ask(
    stream: &mut TcpStream,
    buffer: &mut [u8],
    request: &[u8],
    mut part: impl FnMut(&[u8]),
) -> Result<u16> {
    stream.write_all(request).await?;
    let mut filled = 0;
    let head = loop {
        filled += some(stream.read(&mut buffer[filled..]).await?)?;
        if let Some(end) = buffer[..filled]
            .windows(HEAD_END.len())
            .position(|four| four == HEAD_END)
        {
            break end + HEAD_END.len();
        }
    };
    let (status, length) = read_head(&buffer[..head])?;
    part(&buffer[head..filled]);
    let mut left = length.saturating_sub(filled - head);
    while left > 0 {
        let most = left.min(buffer.len());
        let read = some(stream.read(&mut buffer[..most]).await?)?;
        part(&buffer[..read]);
        left -= read;
    }
    Ok(status)
}

fn some(read: usize) -> Result<usize> {
    if read == 0 {
        Err(ErrorKind::UnexpectedEof.into())
    } else {
        Ok(read)
    }
}

/// The status and the body's length.
fn read_head(head: &[u8]) -> Result<(u16, usize)> {
    let bad = || {
        Error::new(
            ErrorKind::InvalidData,
            "an answer without a status and a length",
        )
    };
    let text = std::str::from_utf8(head).map_err(Error::other)?;
    let status = text
        .split(' ')
        .nth(1)
        .and_then(|status| status.parse().ok())
        .ok_or_else(bad)?;
    let lines = text.lines().filter_map(|line| line.split_once(':'));
    let mut length = lines.filter(|(name, _)| name.eq_ignore_ascii_case("content-length"));
    let length = length
        .next()
        .and_then(|(_, length)| length.trim().parse().ok())
        .ok_or_else(bad)?;
    Ok((status, length))
}
