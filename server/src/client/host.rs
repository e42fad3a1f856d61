//! Which hosts the planner answers to.
//!
//! A page of another site can have its own name lead to an address in here (rebinding): the browser then takes the planner
//! for a part of that site, and lets the site's scripts read and send what they like. Such a request still names the other
//! site as its host. So only those hosts are answered whose name nobody outside can have: the ones that the settings state,
//! addresses in figures, and names that mean something within a local network only.

use std::net::IpAddr;

use axum::http::header::HOST;
use axum::http::{HeaderMap, Uri};

use crate::config::Config;
use crate::config::network::{is_host, without_port};
use crate::error::Trouble;

/// Ends of names that no name server outside answers for: RFC 6761 (localhost), RFC 6762 (local), RFC 8375 (home.arpa),
/// and `internal`, which was set aside for such networks in 2024. From memory.
const INSIDE: [&str; 4] = ["localhost", "local", "home.arpa", "internal"];

/// Refuses a request whose host is missing, stated twice, no host at all, or none of ours. `believed` is the host that a
/// proxy of ours names; the one that the request itself names has to be right too, for a script may write the other.
///
/// # Errors
/// Such a request.
pub fn check(
    config: &Config,
    believed: Option<&str>,
    headers: &HeaderMap,
    uri: &Uri,
) -> Result<(), Trouble> {
    let mut stated = headers.get_all(HOST).into_iter();
    let (Some(host), None) = (stated.next(), stated.next()) else {
        return Err(Trouble::one_host());
    };
    let host = host
        .to_str()
        .ok()
        .filter(|host| is_host(host))
        .ok_or_else(Trouble::one_host)?;
    // A request in the form that is meant for a proxy names its host twice (RFC 9112, 3.2.2).
    if uri
        .authority()
        .is_some_and(|authority| !authority.as_str().eq_ignore_ascii_case(host))
    {
        return Err(Trouble::one_host());
    }
    [Some(host), believed]
        .into_iter()
        .flatten()
        .find(|host| !is_answered(config, host))
        .map_or(Ok(()), |host| Err(Trouble::foreign_host(host)))
}

/// Whether the planner answers to a host, whatever its port.
fn is_answered(config: &Config, host: &str) -> bool {
    let name = name_of(host);
    let stated = config
        .public
        .iter()
        .map(|public| name_of(&public.host))
        .chain(config.hosts.iter().cloned());
    is_inside(&name) || stated.into_iter().any(|stated| stated == name)
}

/// An address in figures, a name without a dot, or one that means something within a local network only.
fn is_inside(name: &str) -> bool {
    name.trim_matches(['[', ']']).parse::<IpAddr>().is_ok()
        || !name.contains('.')
        || INSIDE.iter().any(|end| {
            name.strip_suffix(end)
                .is_some_and(|before| before.ends_with('.'))
        })
}

/// The name alone, in small letters and without the dot that may end it.
fn name_of(host: &str) -> String {
    without_port(host)
        .trim_end_matches('.')
        .to_ascii_lowercase()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use axum::http::HeaderValue;

    use super::*;
    use crate::config::Settings;

    fn answered(public: Option<&str>, hosts: Option<&str>, host: &str) -> bool {
        let settings = Settings {
            public_address: public.map(str::to_owned),
            hosts: hosts.map(str::to_owned),
            data: Some("d".into()),
            ..Settings::default()
        };
        let mut headers = HeaderMap::new();
        headers.insert(HOST, HeaderValue::from_str(host).unwrap());
        let config = Config::new(settings).unwrap();
        check(&config, None, &headers, &Uri::from_static("/")).is_ok()
    }

    #[test]
    fn only_names_that_nobody_outside_can_have_are_answered_unasked() {
        for inside in [
            "127.0.0.1:8080",
            "[::1]:8080",
            "[2001:db8::1]",
            "192.168.1.20",
            "localhost:8080",
            "LOCALHOST.",
            "planner.localhost",
            "pier",
            "pier:8080",
            "pier.local",
            "pier.home.arpa:80",
            "planner.club.svc.cluster.local",
            "pier.internal",
        ] {
            assert!(answered(None, None, inside), "{inside}");
        }
        for outside in [
            "evil.example",
            "evil.example:8080",
            "127.0.0.1.evil.example",
            "local.evil.example",
            "evillocal.example",
            "1.2.3.4.5",
            "pier.lan",
        ] {
            assert!(!answered(None, None, outside), "{outside}");
        }
    }

    #[test]
    fn a_stated_name_is_answered_at_any_port_and_no_other() {
        let public = Some("https://Pier.example/planner");
        assert!(answered(public, None, "pier.example"));
        assert!(answered(public, None, "pier.example.:443"));
        assert!(
            answered(public, None, "127.0.0.1:8080"),
            "a proxy's own way of asking"
        );
        assert!(!answered(public, None, "evil.example"));
        assert!(!answered(public, None, "sub.pier.example"));
        assert!(answered(
            None,
            Some("pier.lan, other.example"),
            "other.example"
        ));
        assert!(!answered(None, Some("pier.lan"), "other.example"));
    }

    #[test]
    fn a_request_names_one_host_and_a_proxy_of_ours_no_other() {
        let config = Config::new(Settings {
            data: Some("d".into()),
            ..Settings::default()
        })
        .unwrap();
        let here = Uri::from_static("/");
        let code = |hosts: &[&'static str], believed: Option<&str>, uri: &Uri| {
            let mut headers = HeaderMap::new();
            for host in hosts {
                headers.append(HOST, HeaderValue::from_static(host));
            }
            check(&config, believed, &headers, uri)
                .err()
                .map(|trouble| trouble.status.as_u16())
        };
        assert_eq!(code(&["localhost"], Some("localhost"), &here), None);
        assert_eq!(code(&[], None, &here), Some(400));
        assert_eq!(code(&["localhost", "localhost"], None, &here), Some(400));
        assert_eq!(code(&["a/b"], None, &here), Some(400));
        assert_eq!(code(&[""], None, &here), Some(400));
        assert_eq!(code(&["localhost"], Some("evil.example"), &here), Some(421));
        assert_eq!(
            code(&["evil.example"], Some("localhost"), &here),
            Some(421),
            "a script may write a forwarded header, and not the host"
        );
        let whole = Uri::from_static("http://evil.example/");
        assert_eq!(code(&["localhost"], None, &whole), Some(400));
    }
}
