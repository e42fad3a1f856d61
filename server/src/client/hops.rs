//! What proxies wrote into a request about whom they speak for.

use std::net::{IpAddr, SocketAddr};

use axum::http::{HeaderMap, HeaderName};

use crate::config::network::ProxyHeaders;

/// Most proxies in a row; a longer list is a trick.
const MOST_HOPS: usize = 16;

/// Headers by which any proxy may say that it is one, whichever are believed.
const TELLING: [&str; 6] = [
    "forwarded",
    "via",
    "x-forwarded-for",
    "x-forwarded-host",
    "x-forwarded-proto",
    "x-real-ip",
];

/// What one of our proxies says about a request.
pub(super) struct Hop<'a> {
    pub(super) from: Option<&'a str>,
    pub(super) proto: Option<&'a str>,
    pub(super) host: Option<&'a str>,
}

/// Whether anything in a request says that a proxy sent it on.
pub(super) fn says_anything(headers: &HeaderMap) -> bool {
    TELLING.iter().any(|name| headers.contains_key(*name))
}

/// What the proxies wrote, the farthest first.
pub(super) fn hops(family: ProxyHeaders, headers: &HeaderMap) -> Vec<Hop<'_>> {
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

/// The values of a header that is a list, from all its lines. One that is no text is an empty text: it names nobody, and
/// says nothing of those beside it.
fn list<'a>(headers: &'a HeaderMap, name: &'static str) -> Vec<&'a str> {
    let lines = headers.get_all(HeaderName::from_static(name)).into_iter();
    let values: Vec<_> = lines
        .flat_map(|line| line.as_bytes().split(|byte| *byte == b','))
        .map(|value| std::str::from_utf8(value).unwrap_or_default().trim())
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

/// An address with or without a port, in brackets or without, and without the name of the machine's own network card.
pub(super) fn machine(text: &str) -> Option<IpAddr> {
    let bare = text
        .strip_prefix('[')
        .and_then(|rest| rest.split_once(']'))
        .map_or(text, |(inner, _)| inner);
    let alone = bare.split_once('%').map_or(bare, |(address, _)| address);
    alone
        .parse()
        .ok()
        .or_else(|| text.parse::<SocketAddr>().ok().map(|socket| socket.ip()))
}
