//! One question in HTTP/1.1, over TLS: to one host, by one method, without redirects, cookies or a second try, within
//! limits of time and size.

use std::io::{Read, Write};
use std::net::{IpAddr, SocketAddr, TcpStream, ToSocketAddrs};
use std::sync::Arc;
use std::time::{Duration, Instant};

use rustls::pki_types::ServerName;
use rustls::{ClientConfig, ClientConnection, RootCertStore, StreamOwned};

use super::Failure;
use crate::config::ClimateService;

/// Longest time to reach the service, and for each part of its answer.
const PATIENCE: Duration = Duration::from_secs(5);
/// Longest time for all of it.
const LONGEST: Duration = Duration::from_secs(15);
/// Longest answer, bytes: thirty years of days are about three hundred thousand.
const LARGEST: usize = 2 * 1024 * 1024;

/// The body of the service's answer.
pub(super) fn fetch(service: &ClimateService, target: &str) -> Result<Vec<u8>, Failure> {
    let line = reach(service)?;
    let head = format!(
        "GET {target} HTTP/1.1\r\nHost: {}\r\nAccept: application/json\r\nAccept-Encoding: identity\r\nUser-Agent: stillground\r\nConnection: close\r\n\r\n",
        service.authority()
    );
    let answer = if service.https {
        exchange(secured(line, service)?, &head)?
    } else {
        exchange(line, &head)?
    };
    body(&answer)
}

/// A line to the service, at an address where it may be.
fn reach(service: &ClimateService) -> Result<TcpStream, Failure> {
    let away = |error: std::io::Error| Failure::Away(error.kind().to_string());
    let found: Vec<SocketAddr> = (service.host.as_str(), service.port)
        .to_socket_addrs()
        .map_err(away)?
        .collect();
    let open: Vec<&SocketAddr> = found
        .iter()
        .filter(|at| service.is_literal() || is_public(at.ip()))
        .collect();
    let mut last = Failure::Private;
    for at in open.into_iter().take(3) {
        match TcpStream::connect_timeout(at, PATIENCE) {
            Ok(line) => {
                line.set_read_timeout(Some(PATIENCE))
                    .and_then(|()| line.set_write_timeout(Some(PATIENCE)))
                    .map_err(away)?;
                return Ok(line);
            }
            Err(error) => last = away(error),
        }
    }
    Err(last)
}

fn secured(
    line: TcpStream,
    service: &ClimateService,
) -> Result<StreamOwned<ClientConnection, TcpStream>, Failure> {
    let away = |error: String| Failure::Away(error);
    let roots = RootCertStore {
        roots: webpki_roots::TLS_SERVER_ROOTS.to_vec(),
    };
    let provider = Arc::new(rustls::crypto::ring::default_provider());
    let config = ClientConfig::builder_with_provider(provider)
        .with_safe_default_protocol_versions()
        .map_err(|error| away(error.to_string()))?;
    let config = config.with_root_certificates(roots).with_no_client_auth();
    let name =
        ServerName::try_from(service.host.clone()).map_err(|error| away(error.to_string()))?;
    let session =
        ClientConnection::new(Arc::new(config), name).map_err(|error| away(error.to_string()))?;
    Ok(StreamOwned::new(session, line))
}

fn exchange(mut line: impl Read + Write, head: &str) -> Result<Vec<u8>, Failure> {
    let away = |error: std::io::Error| Failure::Away(error.kind().to_string());
    let begun = Instant::now();
    line.write_all(head.as_bytes())
        .and_then(|()| line.flush())
        .map_err(away)?;
    let (mut answer, mut part) = (Vec::new(), [0; 16 * 1024]);
    loop {
        let length = match line.read(&mut part) {
            // A service that closes without a farewell has said all, if its answer is whole; that is looked at below.
            Err(error) if error.kind() == std::io::ErrorKind::UnexpectedEof => 0,
            read => read.map_err(away)?,
        };
        answer.extend_from_slice(part.get(..length).unwrap_or_default());
        if length == 0 {
            return Ok(answer);
        }
        if answer.len() > LARGEST {
            return Err(Failure::TooLong);
        }
        if begun.elapsed() > LONGEST {
            return Err(Failure::Away("it took too long".to_owned()));
        }
    }
}

/// The body of an answer that is whole and right.
fn body(answer: &[u8]) -> Result<Vec<u8>, Failure> {
    let unread = |said: &str| Failure::Unread(said.to_owned());
    let end = answer
        .windows(4)
        .position(|four| four == b"\r\n\r\n")
        .ok_or_else(|| unread("it broke off"))?;
    let head = answer
        .get(..end)
        .and_then(|head| std::str::from_utf8(head).ok())
        .ok_or_else(|| unread("its head is no text"))?;
    let body = answer.get(end + 4..).unwrap_or_default();
    let status = head
        .split(' ')
        .nth(1)
        .and_then(|status| status.parse().ok())
        .ok_or_else(|| unread("it is no HTTP"))?;
    if status != 200 {
        return Err(Failure::Status(status));
    }
    let header = |name: &str| {
        head.lines()
            .skip(1)
            .filter_map(|line| line.split_once(':'))
            .find(|(found, _)| found.trim().eq_ignore_ascii_case(name))
            .map(|(_, value)| value.trim().to_ascii_lowercase())
    };
    if !header("content-type").is_some_and(|kind| kind.starts_with("application/json")) {
        return Err(unread("it is no JSON"));
    }
    match (
        header("transfer-encoding"),
        header("content-length").map(|length| length.parse::<usize>()),
    ) {
        (Some(coding), _) if coding == "chunked" => {
            unchunked(body).ok_or_else(|| unread("it broke off"))
        }
        (Some(_), _) => Err(unread("its coding is not known")),
        (None, Some(Ok(length))) if body.len() >= length => {
            Ok(body.get(..length).unwrap_or_default().to_vec())
        }
        (None, Some(_)) => Err(unread("it broke off")),
        (None, None) => Ok(body.to_vec()),
    }
}

fn unchunked(mut bytes: &[u8]) -> Option<Vec<u8>> {
    let mut body = Vec::new();
    loop {
        let end = bytes.windows(2).position(|two| two == b"\r\n")?;
        let line = std::str::from_utf8(bytes.get(..end)?).ok()?;
        let size = usize::from_str_radix(line.split(';').next()?.trim(), 16).ok()?;
        if size == 0 {
            return Some(body);
        }
        let from = end + 2;
        body.extend_from_slice(bytes.get(from..from.checked_add(size)?)?);
        bytes = bytes.get(from.checked_add(size)?.checked_add(2)?..)?;
    }
}

/// Whether an address is one of the open network's: not this machine, not a private network, nothing special
/// (RFC 1918, 6598, 3927, 5737, 6890, 4193, 4291).
pub(super) fn is_public(ip: IpAddr) -> bool {
    match ip.to_canonical() {
        IpAddr::V4(ip) => {
            let [a, b, ..] = ip.octets();
            let shared = a == 100 && (64..128).contains(&b);
            let special =
                a == 0 || a >= 224 || (a == 192 && b == 0) || (a == 198 && (b == 18 || b == 19));
            !(ip.is_loopback()
                || ip.is_private()
                || ip.is_link_local()
                || ip.is_documentation()
                || shared
                || special)
        }
        IpAddr::V6(ip) => {
            let first = ip.segments()[0];
            // Of what is given out today (2000::/3), without documentation and the tunnels that lead back inside.
            (0x2000..0x4000).contains(&first)
                && !(first == 0x2001 && ip.segments()[1] < 0x0200)
                && first != 0x2002
                && !(first == 0x2001 && ip.segments()[1] == 0x0db8)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_addresses_of_the_open_network_are_public() {
        for inner in [
            "127.0.0.1",
            "10.1.2.3",
            "172.20.0.1",
            "192.168.1.1",
            "169.254.169.254",
            "100.64.0.1",
            "0.0.0.0",
            "224.0.0.1",
            "::1",
            "fe80::1",
            "fd00::1",
            "::ffff:10.0.0.1",
            "2002:a00:1::",
            "2001:db8::1",
            "2001::1",
        ] {
            assert!(!inner.parse().is_ok_and(is_public), "{inner}");
        }
        for outer in ["93.184.216.34", "2606:2800:220:1::1", "8.8.8.8"] {
            assert!(outer.parse().is_ok_and(is_public), "{outer}");
        }
    }

    #[test]
    fn an_answer_is_whole_json_with_status_200_or_it_is_none() {
        let ok = "HTTP/1.1 200 OK\r\nContent-Type: application/json\r\n";
        assert_eq!(
            body(format!("{ok}content-length: 2\r\n\r\n{{}}").as_bytes()),
            Ok(b"{}".to_vec())
        );
        assert_eq!(
            body(
                format!(
                    "{ok}transfer-encoding: chunked\r\n\r\n1\r\n{{\r\n1;x=y\r\n}}\r\n0\r\n\r\n"
                )
                .as_bytes()
            ),
            Ok(b"{}".to_vec())
        );
        for broken in [
            "content-length: 9\r\n\r\n{}",
            "transfer-encoding: chunked\r\n\r\n5\r\n{",
            "transfer-encoding: chunked\r\n\r\nffffffffffffffff\r\n{",
            "transfer-encoding: gzip\r\n\r\n{}",
            "content-length: 2",
        ] {
            assert!(
                matches!(
                    body(format!("{ok}{broken}").as_bytes()),
                    Err(Failure::Unread(_))
                ),
                "{broken}"
            );
        }
        assert_eq!(
            body(b"HTTP/1.1 302 Found\r\nlocation: http://elsewhere/\r\n\r\n"),
            Err(Failure::Status(302))
        );
        assert!(body(b"HTTP/1.1 200 OK\r\ncontent-type: text/html\r\n\r\n{}").is_err());
    }
}
