//! A connection from an address of one's choice on this machine, over which one asks again and again.

use std::io::{Error, Result};
use std::net::{IpAddr, SocketAddr};
use std::time::Duration;

use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::{TcpSocket, TcpStream};

/// Longest that an answer is waited for.
const LONGEST: Duration = Duration::from_secs(15);

/// What the system keeps of what is sent and not yet taken. Left alone it takes megabytes a socket, and what an
/// attacker's own machine spends on that would be counted against the service.
const UNSENT: u32 = 64 * 1024;

/// A connection.
pub struct Line {
    /// The line itself.
    pub stream: TcpStream,
}

/// An answer.
pub struct Answer {
    /// Its status.
    pub status: u16,
    /// Its body.
    pub body: Vec<u8>,
}

impl Line {
    /// Opens a connection from an address.
    pub async fn open(from: IpAddr, to: SocketAddr) -> Result<Self> {
        let socket = TcpSocket::new_v4()?;
        socket.bind(SocketAddr::new(from, 0))?;
        socket.set_send_buffer_size(UNSENT)?;
        let stream = tokio::time::timeout(LONGEST, socket.connect(to))
            .await
            .map_err(|_| Error::other("no connection"))??;
        stream.set_nodelay(true)?;
        Ok(Self { stream })
    }

    /// Sends a request and reads one answer whose length is stated.
    pub async fn ask(&mut self, request: &[u8]) -> Result<Answer> {
        self.ask_with(request, &[]).await
    }

    /// Sends a head and a body.
    pub async fn send(&mut self, head: &[u8], body: &[u8]) -> Result<()> {
        self.stream.write_all(head).await?;
        self.stream.write_all(body).await
    }

    /// Sends a head with a body and reads one answer whose length is stated.
    pub async fn ask_with(&mut self, head: &[u8], body: &[u8]) -> Result<Answer> {
        tokio::time::timeout(LONGEST, async {
            self.send(head, body).await?;
            self.answer(!head.starts_with(b"HEAD ")).await
        })
        .await
        .map_err(|_| Error::other("no answer"))?
    }

    async fn answer(&mut self, has_body: bool) -> Result<Answer> {
        let (mut bytes, mut part) = (Vec::new(), vec![0; 65_536]);
        loop {
            let length = self.stream.read(&mut part).await?;
            if length == 0 {
                return Err(Error::other("closed"));
            }
            bytes.extend_from_slice(&part[..length]);
            if let Some(answer) = whole(&bytes, has_body) {
                return Ok(answer);
            }
        }
    }
}

/// The answer, when all of it is there. One to `HEAD` states the length of a body that does not come (RFC 9110, 9.3.2).
fn whole(bytes: &[u8], has_body: bool) -> Option<Answer> {
    let end = bytes.windows(4).position(|four| four == b"\r\n\r\n")?;
    let head = String::from_utf8_lossy(&bytes[..end]).to_ascii_lowercase();
    let status = head.split(' ').nth(1)?.parse().ok()?;
    let length: usize = head
        .lines()
        .find_map(|line| line.strip_prefix("content-length:")?.trim().parse().ok())
        .filter(|_| has_body)
        .unwrap_or(0);
    (bytes.len() >= end + 4 + length).then(|| Answer {
        status,
        body: bytes[end + 4..].to_vec(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_answer_to_head_is_whole_at_its_heads_end() {
        let head = b"HTTP/1.1 200 OK\r\ncontent-length: 5\r\n\r\n";
        assert_eq!(whole(head, false).map(|answer| answer.status), Some(200));
        assert!(whole(head, true).is_none(), "five bytes are to come");
        let all = [head.as_slice(), b"12345"].concat();
        assert_eq!(whole(&all, true).map(|answer| answer.body.len()), Some(5));
        assert!(whole(&head[..30], false).is_none());
    }
}
