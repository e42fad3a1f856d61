//! One question over HTTP: to one host, by one method, without redirects, cookies, proxies or a second try, within limits of
//! time and size, and to no address inside a private network.

use std::error::Error;
use std::net::IpAddr;
use std::sync::Arc;
use std::time::Duration;

use reqwest::dns::{Name, Resolve, Resolving};
use reqwest::header::{ACCEPT, CONTENT_TYPE};
use reqwest::{Client, redirect};
use rustls::{ClientConfig, RootCertStore};

use super::Failure;
use crate::config::ClimateService;

/// Longest time to reach the service, and for each part of its answer.
const PATIENCE: Duration = Duration::from_secs(5);
/// Longest time for all of it.
const LONGEST: Duration = Duration::from_secs(15);
/// Longest answer, bytes: thirty years of days are about three hundred thousand.
const LARGEST: usize = 2 * 1024 * 1024;

/// The body of the service's answer.
pub(super) async fn fetch(service: &ClimateService, target: &str) -> Result<Vec<u8>, Failure> {
    let literal: Option<IpAddr> = service.host.parse().ok();
    if literal.is_some_and(|ip| !service.is_literal() && !is_public(ip)) {
        return Err(Failure::Private);
    }
    let scheme = if service.https { "https" } else { "http" };
    let address = format!("{scheme}://{}{target}", service.authority());
    let mut answer = client()?
        .get(address)
        .header(ACCEPT, "application/json")
        .send()
        .await
        .map_err(failure)?;
    if answer.status() != 200 {
        return Err(Failure::Status(answer.status().as_u16()));
    }
    let is_json = answer
        .headers()
        .get(CONTENT_TYPE)
        .is_some_and(|kind| kind.as_bytes().starts_with(b"application/json"));
    if !is_json {
        return Err(Failure::Unread("it is no JSON".to_owned()));
    }
    let mut body = Vec::new();
    while let Some(part) = answer.chunk().await.map_err(failure)? {
        body.extend_from_slice(&part);
        if body.len() > LARGEST {
            return Err(Failure::TooLong);
        }
    }
    Ok(body)
}

fn client() -> Result<Client, Failure> {
    Client::builder()
        .tls_backend_preconfigured(tls()?)
        .http1_only()
        .redirect(redirect::Policy::none())
        .no_proxy()
        .dns_resolver(Arc::new(OpenNetwork))
        .user_agent("stillground")
        .connect_timeout(PATIENCE)
        .read_timeout(PATIENCE)
        .timeout(LONGEST)
        .pool_max_idle_per_host(0)
        .build()
        .map_err(failure)
}

/// The provider and the roots that the database's connections have, whatever the machine has.
fn tls() -> Result<ClientConfig, Failure> {
    let roots = RootCertStore {
        roots: webpki_roots::TLS_SERVER_ROOTS.to_vec(),
    };
    let provider = Arc::new(rustls::crypto::ring::default_provider());
    let config = ClientConfig::builder_with_provider(provider)
        .with_safe_default_protocol_versions()
        .map_err(|error| Failure::Away(error.to_string()))?;
    Ok(config.with_root_certificates(roots).with_no_client_auth())
}

fn failure(error: reqwest::Error) -> Failure {
    if is_private(&error) {
        Failure::Private
    } else if error.is_body() || error.is_decode() {
        Failure::Unread("it broke off".to_owned())
    } else if error.is_timeout() {
        Failure::Away("it took too long".to_owned())
    } else {
        Failure::Away("no connection".to_owned())
    }
}

fn is_private(error: &reqwest::Error) -> bool {
    let mut cause = error.source();
    while let Some(error) = cause {
        if error.is::<Private>() {
            return true;
        }
        cause = error.source();
    }
    false
}

/// A name that leads to no address of the open network.
#[derive(Debug, thiserror::Error)]
#[error("no public address")]
struct Private;

/// Finds the addresses of a name, and keeps those of the open network.
struct OpenNetwork;

impl Resolve for OpenNetwork {
    fn resolve(&self, name: Name) -> Resolving {
        Box::pin(async move {
            let found = tokio::net::lookup_host((name.as_str(), 0)).await?;
            let open: Vec<_> = found.filter(|at| is_public(at.ip())).collect();
            if open.is_empty() {
                return Err(Private.into());
            }
            Ok(Box::new(open.into_iter()) as _)
        })
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
    use std::io::{Read, Write};
    use std::net::TcpListener;

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

    /// What is read of a service on this machine that sends these bytes and closes.
    async fn read(bytes: String) -> Result<Vec<u8>, Failure> {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let at = listener.local_addr().unwrap();
        std::thread::spawn(move || {
            let (mut line, _) = listener.accept().unwrap();
            let _ = line.read(&mut [0; 4096]);
            let _ = line.write_all(bytes.as_bytes());
        });
        let address = format!("http://{at}/x?a={{latitude}}&b={{longitude}}&c={{start}}&d={{end}}");
        let service = ClimateService::parse(&address, None).unwrap();
        fetch(&service, "/x").await
    }

    #[tokio::test]
    async fn an_answer_is_whole_json_with_status_200_or_it_is_none() {
        let ok = "HTTP/1.1 200 OK\r\nContent-Type: application/json\r\n";
        assert_eq!(
            read(format!("{ok}content-length: 2\r\n\r\n{{}}")).await,
            Ok(b"{}".to_vec())
        );
        let chunked = "transfer-encoding: chunked\r\n\r\n1\r\n{\r\n1;x=y\r\n}\r\n0\r\n\r\n";
        assert_eq!(read(format!("{ok}{chunked}")).await, Ok(b"{}".to_vec()));
        for broken in [
            "content-length: 9\r\n\r\n{}",
            "transfer-encoding: chunked\r\n\r\n5\r\n{",
            "transfer-encoding: chunked\r\n\r\nffffffffffffffffff\r\n{",
            "content-length: 2",
        ] {
            let found = read(format!("{ok}{broken}")).await;
            assert!(found.is_err(), "{broken}: {found:?}");
        }
        assert_eq!(
            read("HTTP/1.1 302 Found\r\nlocation: http://127.0.0.1:1/\r\n\r\n".to_owned()).await,
            Err(Failure::Status(302)),
            "nobody is led elsewhere"
        );
        assert!(
            read("HTTP/1.1 200 OK\r\ncontent-type: text/html\r\n\r\n{}".to_owned())
                .await
                .is_err()
        );
        let long = " ".repeat(LARGEST + 1);
        assert_eq!(
            read(format!("{ok}content-length: {}\r\n\r\n{long}", long.len())).await,
            Err(Failure::TooLong)
        );
    }

    #[tokio::test]
    async fn a_name_that_leads_inside_is_not_asked() {
        let address = "https://localhost:9/x?a={latitude}&b={longitude}&c={start}&d={end}";
        let service = ClimateService::parse(address, None).unwrap();
        assert_eq!(fetch(&service, "/x").await, Err(Failure::Private));
        let literal = address.replace("localhost", "10.0.0.1");
        let service = ClimateService::parse(&literal, None).unwrap();
        assert_eq!(fetch(&service, "/x").await, Err(Failure::Private));
    }
}
