//! A small HTTP client that sends just what a test says, and nothing more.

use std::io::{Read, Write};
use std::net::{Shutdown, SocketAddr, TcpStream};
use std::time::Duration;

use serde_json::Value;

/// Longest that a service may be silent: it gives an answer up by itself after thirty seconds.
const SILENCE: Duration = Duration::from_secs(40);

/// An answer of the service.
#[derive(Debug, Clone)]
pub struct Answer {
    /// Status code.
    pub status: u16,
    headers: Vec<(String, String)>,
    /// Body.
    pub body: Vec<u8>,
}

impl Answer {
    /// A header, by its name in any case; empty when it is not there.
    #[must_use]
    pub fn header(&self, name: &str) -> &str {
        self.headers
            .iter()
            .find(|(found, _)| found.eq_ignore_ascii_case(name))
            .map_or("", |(_, value)| value)
    }

    /// The body as text.
    #[must_use]
    pub fn text(&self) -> String {
        String::from_utf8_lossy(&self.body).into_owned()
    }

    /// The body as JSON.
    ///
    /// # Panics
    /// When it is none.
    #[must_use]
    pub fn json(&self) -> Value {
        serde_json::from_slice(&self.body)
            .unwrap_or_else(|error| panic!("{error} in {}: {}", self.status, self.text()))
    }
}

/// Sends a request on a connection of its own.
///
/// # Panics
/// When the service does not answer in HTTP within forty seconds.
#[must_use]
pub fn send(
    to: SocketAddr,
    method: &str,
    path: &str,
    headers: &[(&str, &str)],
    body: &[u8],
) -> Answer {
    let mut head = format!("{method} {path} HTTP/1.1\r\nhost: {to}\r\nconnection: close\r\n");
    for (name, value) in headers {
        head.push_str(&format!("{name}: {value}\r\n"));
    }
    if !body.is_empty() {
        head.push_str(&format!("content-length: {}\r\n", body.len()));
    }
    head.push_str("\r\n");
    let mut bytes = head.into_bytes();
    bytes.extend_from_slice(body);
    raw(to, &bytes)
}

/// Sends bytes as they are and reads one answer.
///
/// # Panics
/// When no HTTP answer comes within forty seconds.
#[must_use]
pub fn raw(to: SocketAddr, bytes: &[u8]) -> Answer {
    let answer =
        exchange(to, bytes).unwrap_or_else(|error| panic!("the service did not answer: {error}"));
    parse(&answer).unwrap_or_else(|| {
        panic!(
            "this is no HTTP answer: {}",
            String::from_utf8_lossy(&answer)
        )
    })
}

/// Sends bytes and reads until the service closes the line.
///
/// # Errors
/// The line's own.
pub fn exchange(to: SocketAddr, bytes: &[u8]) -> std::io::Result<Vec<u8>> {
    let mut line = TcpStream::connect_timeout(&to, Duration::from_secs(10))?;
    line.set_read_timeout(Some(SILENCE))?;
    line.write_all(bytes)?;
    let mut answer = Vec::new();
    line.read_to_end(&mut answer)?;
    let _ = line.shutdown(Shutdown::Both);
    Ok(answer)
}

/// Sends a request and reads one answer whose length is stated, for a server that keeps the line open.
///
/// # Errors
/// The line's own, silence for too long among them.
pub fn ask(to: SocketAddr, bytes: &[u8], silence: Duration) -> std::io::Result<Vec<u8>> {
    let mut line = TcpStream::connect_timeout(&to, Duration::from_secs(10))?;
    line.set_read_timeout(Some(silence))?;
    line.write_all(bytes)?;
    let (mut answer, mut part) = (Vec::new(), [0; 65_536]);
    loop {
        let length = line.read(&mut part)?;
        answer.extend_from_slice(&part[..length]);
        if length == 0 || is_whole(&answer) {
            return Ok(answer);
        }
    }
}

fn is_whole(bytes: &[u8]) -> bool {
    let Some(end) = bytes.windows(4).position(|window| window == b"\r\n\r\n") else {
        return false;
    };
    let head = String::from_utf8_lossy(&bytes[..end]).to_ascii_lowercase();
    let length = head.lines().find_map(|line| {
        line.strip_prefix("content-length:")?
            .trim()
            .parse::<usize>()
            .ok()
    });
    length.is_some_and(|length| bytes.len() >= end + 4 + length)
}

/// An answer as it came over the line; none when it is not HTTP.
#[must_use]
pub fn parse(bytes: &[u8]) -> Option<Answer> {
    let end = bytes.windows(4).position(|window| window == b"\r\n\r\n")?;
    let head = std::str::from_utf8(&bytes[..end]).ok()?;
    let mut lines = head.split("\r\n");
    let status = lines.next()?.split(' ').nth(1)?.parse().ok()?;
    let headers = lines
        .filter_map(|line| line.split_once(':'))
        .map(|(name, value)| (name.to_owned(), value.trim().to_owned()))
        .collect();
    let mut answer = Answer {
        status,
        headers,
        body: bytes[end + 4..].to_vec(),
    };
    if answer
        .header("transfer-encoding")
        .eq_ignore_ascii_case("chunked")
    {
        answer.body = unchunk(&answer.body)?;
    }
    Some(answer)
}

fn unchunk(mut bytes: &[u8]) -> Option<Vec<u8>> {
    let mut body = Vec::new();
    loop {
        let end = bytes.windows(2).position(|window| window == b"\r\n")?;
        let size =
            usize::from_str_radix(std::str::from_utf8(&bytes[..end]).ok()?.trim(), 16).ok()?;
        if size == 0 {
            return Some(body);
        }
        body.extend_from_slice(bytes.get(end + 2..end + 2 + size)?);
        bytes = bytes.get(end + 4 + size..)?;
    }
}
