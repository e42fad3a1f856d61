//! Who asks, and how they reached us: what a proxy says is believed only when the proxy is one of ours.

mod circle;
mod hops;
pub mod host;

use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::sync::Arc;

use axum::extract::{ConnectInfo, FromRequestParts, Request};
use axum::http::HeaderMap;
use axum::http::header::HOST;
use axum::http::request::Parts;

use crate::config::network::{is_host, without_port};
use crate::config::{Config, PublicAddress};
use crate::error::Trouble;
pub use circle::Circle;
use hops::{hops, machine, says_anything};

/// Who asks, and how they reached us.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Client {
    /// The machine nearest to the reader that is no proxy of ours, or the last that could be named.
    pub address: IpAddr,
    /// A proxy of ours, the one at `address`, named whoever stands behind it by nothing that is an address, or not at all.
    pub unnamed: bool,
    /// Whether the reader's browser speaks TLS.
    pub https: bool,
    /// The host that the reader asked, where it can stand in an address.
    pub host: Option<String>,
    /// A machine that is no proxy of ours says that it speaks for others.
    pub hidden: bool,
    /// Whether what it asks is not counted, which only a setting says.
    pub uncounted: bool,
    /// The organiser whom a proxy of ours let in and names.
    pub organiser: Option<String>,
}

impl Client {
    /// Somebody who asks from an address without a proxy.
    #[cfg(test)]
    pub(crate) fn at(address: &str) -> Self {
        Self {
            address: address.parse().expect("an address"),
            unnamed: false,
            https: false,
            host: None,
            hidden: false,
            uncounted: false,
            organiser: None,
        }
    }

    /// Finds out who asks.
    #[must_use]
    pub fn of(config: &Config, peer: IpAddr, headers: &HeaderMap) -> Self {
        let peer = peer.to_canonical();
        let ours = |ip: IpAddr| config.proxies.iter().any(|network| network.holds(ip));
        let hops = hops(config.proxy_headers, headers);
        let mut client = Self {
            address: peer,
            unnamed: ours(peer),
            https: false,
            host: asked_for(headers),
            hidden: !ours(peer) && !hops.is_empty(),
            uncounted: false,
            organiser: ours(peer).then(|| let_in(config, headers)).flatten(),
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
            let from = hop.from.and_then(machine);
            client.unnamed = from.is_none();
            match from {
                Some(from) => client.address = from.to_canonical(),
                None => break,
            }
        }
        let alone = !ours(peer) && !says_anything(headers);
        client.uncounted = alone && is_exempt(config, peer, client.host.as_deref());
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
}

/// Whether the setting takes a machine that asks by itself out of the count. At this very machine the host that was asked
/// for must be this machine too: a page of another site may have given its own name our address.
fn is_exempt(config: &Config, peer: IpAddr, host: Option<&str>) -> bool {
    config.uncounted.iter().any(|network| network.holds(peer))
        && (!peer.is_loopback() || host.is_some_and(is_here))
}

/// Whether a host is this very machine.
fn is_here(host: &str) -> bool {
    let name = without_port(host);
    name == "localhost" || machine(name).is_some_and(|ip| ip.to_canonical().is_loopback())
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

/// The organiser whom the proxy's header names, once. Two lines would be the proxy's and a visitor's own.
fn let_in(config: &Config, headers: &HeaderMap) -> Option<String> {
    let by_proxy = config.access.organisers.by_proxy.as_ref()?;
    let mut said = headers.get_all(&by_proxy.header).into_iter();
    let (Some(name), None) = (said.next(), said.next()) else {
        return None;
    };
    let name = name.to_str().ok()?.trim();
    by_proxy.names.iter().find(|known| *known == name).cloned()
}

fn asked_for(headers: &HeaderMap) -> Option<String> {
    let host = headers.get(HOST)?.to_str().ok()?;
    is_host(host).then(|| host.to_ascii_lowercase())
}

#[cfg(test)]
mod tests;
