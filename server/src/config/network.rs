//! Which machines are proxies of ours, and the address under which people know the planner.

use std::net::IpAddr;

/// A network: its first address and how many leading bits its machines share.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Network {
    first: u128,
    bits: u32,
}

/// The family of headers in which the proxies say whom they speak for. One only is believed: a proxy that writes the one
/// may pass on what a stranger wrote in the other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum ProxyHeaders {
    /// `X-Forwarded-For`, `-Proto` and `-Host`.
    #[default]
    XForwarded,
    /// `Forwarded`, RFC 7239.
    Forwarded,
}

/// The address under which people know the planner.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PublicAddress {
    /// Whether it begins with `https`.
    pub https: bool,
    /// Name or address, with the port where there is one.
    pub host: String,
    /// Path: empty, or `/planner` without a slash at its end.
    pub path: String,
}

impl Network {
    /// Reads `192.0.2.7`, `192.0.2.0/24` or `2001:db8::/32`.
    ///
    /// # Errors
    /// What is wrong with it.
    pub fn parse(text: &str) -> Result<Self, String> {
        let (address, length) = text
            .split_once('/')
            .map_or((text, None), |(address, length)| (address, Some(length)));
        let ip: IpAddr = address.trim().parse().map_err(|_| {
            format!("{text} is no address and no network; write 127.0.0.1 or 10.0.0.0/8")
        })?;
        let offset = if ip.is_ipv4() { 96 } else { 0 };
        let bits = match length {
            None => 128,
            Some(length) => {
                let length: u32 = length
                    .trim()
                    .parse()
                    .map_err(|_| format!("{text} does not end in a number of bits"))?;
                if length > 128 - offset {
                    return Err(format!("{text} has more bits than such an address"));
                }
                length + offset
            }
        };
        Ok(Self {
            first: number(ip) & mask(bits),
            bits,
        })
    }

    /// Whether a machine belongs to it.
    #[must_use]
    pub fn holds(&self, ip: IpAddr) -> bool {
        number(ip) & mask(self.bits) == self.first
    }

    /// Whether it holds more machines than any private network has: 10.0.0.0/8 is the widest of IPv4 (RFC 1918), and
    /// fc00::/7 and fe80::/10 hold no visitor from outside (RFC 4193, RFC 4291).
    #[must_use]
    pub const fn is_too_wide(self) -> bool {
        const DRESSED: u128 = 0xffff << 32;
        let is_v4 = self.bits >= 96 && self.first & mask(96) == DRESSED;
        let is_local = (self.bits >= 7 && self.first >> 121 == 0xfc >> 1)
            || (self.bits >= 10 && self.first >> 118 == 0xfe80 >> 6);
        if is_v4 {
            self.bits < 96 + 8
        } else {
            self.bits < 16 && !is_local
        }
    }
}

/// Reads a list of proxies. One that holds machines of half the world's would believe every visitor.
///
/// # Errors
/// What is wrong with the first that is none, or that is too wide.
pub fn proxies(text: &str) -> Result<Vec<Network>, String> {
    let networks = networks(text)?;
    match networks.iter().find(|network| network.is_too_wide()) {
        None => Ok(networks),
        Some(_) => Err(
            "whoever speaks from within such a network is believed, and one of these holds every visitor, so that each could \
             choose whom to be counted as; name the proxy's own address, or a network of at least 8 bits (IPv4) or 16 (IPv6)"
                .to_owned(),
        ),
    }
}

/// Reads a list of hosts between commas or blanks, without ports.
///
/// # Errors
/// The first that is no host.
pub fn hosts(text: &str) -> Result<Vec<String>, String> {
    let host = |part: &str| {
        if is_host(part) && without_port(part) == part {
            Ok(part.trim_end_matches('.').to_ascii_lowercase())
        } else {
            Err(format!(
                "\u{201c}{part}\u{201d} is no name of a machine; write pier.lan or pier.example, without a scheme and without a port"
            ))
        }
    };
    text.split([',', ' '])
        .filter(|part| !part.is_empty())
        .map(host)
        .collect()
}

/// An address as a number; IPv4 as IPv6 maps it (RFC 4291, 2.5.5.2).
fn number(ip: IpAddr) -> u128 {
    match ip {
        IpAddr::V4(ip) => ip.to_ipv6_mapped().to_bits(),
        IpAddr::V6(ip) => ip.to_bits(),
    }
}

const fn mask(bits: u32) -> u128 {
    if bits == 0 {
        0
    } else {
        u128::MAX << (128 - bits)
    }
}

/// Reads a list of networks between commas or blanks.
///
/// # Errors
/// What is wrong with the first that is none.
pub fn networks(text: &str) -> Result<Vec<Network>, String> {
    text.split([',', ' '])
        .filter(|part| !part.is_empty())
        .map(Network::parse)
        .collect()
}

impl ProxyHeaders {
    /// Reads the family's name.
    ///
    /// # Errors
    /// Which names there are.
    pub fn parse(text: &str) -> Result<Self, String> {
        match text.to_ascii_lowercase().as_str() {
            "" | "x-forwarded" => Ok(Self::XForwarded),
            "forwarded" => Ok(Self::Forwarded),
            _ => Err("write x-forwarded or forwarded, whichever your proxy sets".to_owned()),
        }
    }
}

impl PublicAddress {
    /// Reads `https://pier.example/planner`.
    ///
    /// # Errors
    /// What would be right.
    pub fn parse(text: &str) -> Result<Self, String> {
        let wrong =
            || "write the whole address, for instance https://pier.example/planner".to_owned();
        let (scheme, rest) = text.split_once("://").ok_or_else(wrong)?;
        let https = match scheme.to_ascii_lowercase().as_str() {
            "https" => true,
            "http" => false,
            _ => return Err(wrong()),
        };
        let (host, path) = rest.split_once('/').unwrap_or((rest, ""));
        if !is_host(host) {
            return Err(wrong());
        }
        let path = super::base(path).map_err(|_| wrong())?;
        Ok(Self {
            https,
            host: host.to_ascii_lowercase(),
            path,
        })
    }
}

/// A host without its port.
#[must_use]
pub fn without_port(host: &str) -> &str {
    match host.rsplit_once(':') {
        Some((name, port)) if !port.ends_with(']') => name,
        _ => host,
    }
}

/// Whether a text may stand as the host of an address: a name or an address, and perhaps a port.
#[must_use]
pub fn is_host(text: &str) -> bool {
    let (name, port) = match text.strip_prefix('[').and_then(|rest| rest.split_once(']')) {
        Some((inner, port)) if inner.parse::<std::net::Ipv6Addr>().is_ok() => (
            "v6",
            port.strip_prefix(':').or(port.is_empty().then_some("0")),
        ),
        Some(_) => return false,
        None => text
            .split_once(':')
            .map_or((text, Some("0")), |(name, port)| (name, Some(port))),
    };
    let letters = name
        .bytes()
        .all(|b| b.is_ascii_alphanumeric() || matches!(b, b'.' | b'-' | b'_'));
    !name.is_empty()
        && text.len() <= 260
        && letters
        && port.is_some_and(|port| port.parse::<u16>().is_ok())
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;

    #[test]
    fn a_network_holds_its_own_machines_and_no_others() {
        let holds =
            |network: &str, ip: &str| Network::parse(network).unwrap().holds(ip.parse().unwrap());
        assert!(holds("10.0.0.0/8", "10.200.3.4") && !holds("10.0.0.0/8", "11.0.0.1"));
        assert!(holds("127.0.0.1", "127.0.0.1") && !holds("127.0.0.1", "127.0.0.2"));
        assert!(holds("2001:db8::/32", "2001:db8:1::2") && !holds("2001:db8::/32", "2001:db9::1"));
        assert!(holds("0.0.0.0/0", "198.51.100.7") && !holds("0.0.0.0/0", "2001:db8::1"));
        assert!(
            holds("192.0.2.0/24", "::ffff:192.0.2.9"),
            "an address of version 4 in a dress of version 6"
        );
        for wrong in ["", "proxy", "10.0.0.0/33", "10.0.0.0/x", "::/129"] {
            assert!(Network::parse(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn a_network_that_holds_every_visitor_is_no_proxy() {
        for wide in [
            "0.0.0.0/0",
            "::/0",
            "0.0.0.0/1, 128.0.0.0/1",
            "::ffff:0.0.0.0/96",
            "2000::/3",
            "127.0.0.1, ::/1",
        ] {
            assert!(proxies(wide).is_err(), "{wide}");
        }
        for fine in [
            "127.0.0.1",
            "10.0.0.0/8",
            "172.16.0.0/12",
            "fd00::/8",
            "fc00::/7",
            "fe80::/10",
            "2001:db8::/32",
            "0.0.0.0",
        ] {
            assert!(proxies(fine).is_ok(), "{fine}");
        }
    }

    #[test]
    fn a_host_is_stated_by_its_name_alone() {
        assert_eq!(
            hosts("Pier.lan, [::1] pier.example.").unwrap(),
            ["pier.lan", "[::1]", "pier.example"]
        );
        for wrong in ["https://pier.lan", "pier.lan:8080", "a/b", "*.example"] {
            assert!(hosts(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn a_public_address_is_whole_and_holds_no_tricks() {
        let known = PublicAddress::parse("https://Pier.example:8443/planner/").unwrap();
        assert_eq!(
            (known.https, known.host.as_str(), known.path.as_str()),
            (true, "pier.example:8443", "/planner")
        );
        for wrong in [
            "pier.example",
            "ftp://pier.example",
            "https://",
            "https://a b",
            "https://me@pier.example",
            "https://p/a?b",
            "https://p:x",
        ] {
            assert!(PublicAddress::parse(wrong).is_err(), "{wrong}");
        }
        assert!(
            is_host("[2001:db8::1]:80")
                && is_host("[::1]")
                && !is_host("[zz]")
                && !is_host("a\r\nb")
                && !is_host("a/b")
        );
    }
}
