//! Who asks, and how they reached us: what a proxy says is believed only when the proxy is one of ours.

use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::sync::Arc;

use axum::extract::{ConnectInfo, FromRequestParts, Request};
use axum::http::header::HOST;
use axum::http::request::Parts;
use axum::http::{HeaderMap, HeaderName};

use crate::config::network::{ProxyHeaders, is_host};
use crate::config::{Config, PublicAddress};
use crate::error::Trouble;

/// Most proxies in a row; a longer list is a trick.
const MOST_HOPS: usize = 16;

/// Who asks, and how they reached us.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Client {
    /// The machine nearest to the reader that is no proxy of ours.
    pub address: IpAddr,
    /// Whether the reader's browser speaks TLS.
    pub https: bool,
    /// The host that the reader asked, where it can stand in an address.
    pub host: Option<String>,
    /// A machine that is no proxy of ours says that it speaks for others.
    pub hidden: bool,
}

/// What one of our proxies says about a request.
struct Hop<'a> {
    from: Option<&'a str>,
    proto: Option<&'a str>,
    host: Option<&'a str>,
}

impl Client {
    /// Finds out who asks.
    #[must_use]
    pub fn of(config: &Config, peer: IpAddr, headers: &HeaderMap) -> Self {
        let peer = peer.to_canonical();
        let ours = |ip: IpAddr| config.proxies.iter().any(|network| network.holds(ip));
        let hops = hops(config.proxy_headers, headers);
        let mut client = Self {
            address: peer,
            https: false,
            host: host(headers),
            hidden: !ours(peer) && !hops.is_empty(),
        };
        // From the nearest backwards: what a proxy of ours wrote is believed, what stands before it is not.
        for hop in hops.iter().rev() {
            if !ours(client.address) {
                break;
            }
            client.https = hop
                .proto
                .is_some_and(|proto| proto.eq_ignore_ascii_case("https"));
            client.host = hop
                .host
                .filter(|host| is_host(host))
                .map(str::to_ascii_lowercase)
                .or(client.host);
            match hop.from.and_then(machine) {
                Some(from) => client.address = from.to_canonical(),
                None => break,
            }
        }
        if let Some(PublicAddress { https, host, .. }) = &config.public {
            (client.https, client.host) = (*https, Some(host.clone()));
        }
        client
    }

    /// The whole address of a path of ours; the path alone is no address to hand on.
    #[must_use]
    pub fn link(&self, path: &str) -> Option<String> {
        let scheme = if self.https { "https" } else { "http" };
        self.host
            .as_ref()
            .map(|host| format!("{scheme}://{host}{path}"))
    }

    /// Whether it is somebody at this very machine, and not a proxy that hides who asks.
    #[must_use]
    pub fn is_here(&self) -> bool {
        self.address.is_loopback() && !self.hidden
    }
}

/// Writes down who asks before anything else looks at a request.
pub fn note(config: &Config, request: &mut Request) -> Arc<Client> {
    let peer = request
        .extensions()
        .get::<ConnectInfo<SocketAddr>>()
        .map_or(IpAddr::V4(Ipv4Addr::LOCALHOST), |from| from.0.ip());
    let client = Arc::new(Client::of(config, peer, request.headers()));
    request.extensions_mut().insert(Arc::clone(&client));
    client
}

/// The client of a request, for handlers.
pub struct Asker(pub Arc<Client>);

impl<S: Send + Sync> FromRequestParts<S> for Asker {
    type Rejection = Trouble;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Trouble> {
        let found = parts.extensions.get::<Arc<Client>>().cloned();
        found.map(Self).ok_or_else(|| {
            Trouble::broken("finding out who asks", &"the layer that does it is missing")
        })
    }
}

fn host(headers: &HeaderMap) -> Option<String> {
    let host = headers.get(HOST)?.to_str().ok()?;
    is_host(host).then(|| host.to_ascii_lowercase())
}

/// What the proxies wrote, the farthest first.
fn hops(family: ProxyHeaders, headers: &HeaderMap) -> Vec<Hop<'_>> {
    match family {
        ProxyHeaders::Forwarded => list(headers, "forwarded")
            .into_iter()
            .map(forwarded)
            .collect(),
        ProxyHeaders::XForwarded => {
            let (from, protos, hosts) = (
                list(headers, "x-forwarded-for"),
                list(headers, "x-forwarded-proto"),
                list(headers, "x-forwarded-host"),
            );
            let count = from
                .len()
                .max(usize::from(!protos.is_empty() || !hosts.is_empty()));
            // A proxy adds to a list or writes it anew: counted from the end, the last value speaks for all that are missing.
            let hop = |back: usize| Hop {
                from: from
                    .len()
                    .checked_sub(back)
                    .and_then(|i| from.get(i).copied()),
                proto: protos.get(protos.len().saturating_sub(back)).copied(),
                host: hosts.get(hosts.len().saturating_sub(back)).copied(),
            };
            (1..=count).rev().map(hop).collect()
        }
    }
}

/// The values of a header that is a list, from all its lines.
fn list<'a>(headers: &'a HeaderMap, name: &'static str) -> Vec<&'a str> {
    let lines = headers.get_all(HeaderName::from_static(name)).into_iter();
    let values: Vec<_> = lines
        .flat_map(|line| line.to_str().unwrap_or("?").split(','))
        .map(str::trim)
        .collect();
    let from = values.len().saturating_sub(MOST_HOPS);
    values.into_iter().skip(from).collect()
}

/// One element of `Forwarded`, RFC 7239 section 4.
fn forwarded(element: &str) -> Hop<'_> {
    let mut hop = Hop {
        from: None,
        proto: None,
        host: None,
    };
    for (name, value) in element.split(';').filter_map(|pair| pair.split_once('=')) {
        let value = value.trim().trim_matches('"');
        match name.trim().to_ascii_lowercase().as_str() {
            "for" => hop.from = Some(value),
            "proto" => hop.proto = Some(value),
            "host" => hop.host = Some(value),
            _ => {}
        }
    }
    hop
}

/// An address with or without a port, in brackets or without.
fn machine(text: &str) -> Option<IpAddr> {
    let bare = text
        .strip_prefix('[')
        .and_then(|rest| rest.split_once(']'))
        .map_or(text, |(inner, _)| inner);
    bare.parse()
        .ok()
        .or_else(|| text.parse::<SocketAddr>().ok().map(|socket| socket.ip()))
}

#[cfg(test)]
mod tests;
