#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use axum::http::HeaderName;

use super::*;
use crate::config::Settings;

fn seen(proxies: &str, family: &str, peer: &str, headers: &[(&'static str, &str)]) -> Client {
    let settings = Settings {
        trusted_proxies: Some(proxies.to_owned()),
        proxy_headers: Some(family.to_owned()),
        data: Some("d".into()),
        ..Settings::default()
    };
    let mut map = HeaderMap::new();
    for (name, value) in headers {
        map.append(HeaderName::from_static(name), value.parse().unwrap());
    }
    Client::of(&Config::new(settings).unwrap(), peer.parse().unwrap(), &map)
}

#[test]
fn a_stranger_is_not_believed_whoever_he_says_he_speaks_for() {
    let headers = [
        ("x-forwarded-for", "192.0.2.1"),
        ("x-forwarded-proto", "https"),
        ("x-forwarded-host", "evil.example"),
        ("host", "pier.example"),
    ];
    let client = seen("", "", "198.51.100.9", &headers);
    assert_eq!(
        (
            client.address.to_string().as_str(),
            client.https,
            client.host.as_deref()
        ),
        ("198.51.100.9", false, Some("pier.example"))
    );
    assert!(client.hidden);
}

#[test]
fn the_machine_nearest_to_the_reader_that_is_no_proxy_of_ours_is_the_client() {
    let far = [
        ("x-forwarded-for", "10.0.0.1, 203.0.113.5, 10.0.0.7"),
        ("x-forwarded-proto", "https"),
        ("x-forwarded-host", "Pier.example"),
    ];
    let client = seen("127.0.0.1 10.0.0.0/8", "", "127.0.0.1", &far);
    assert_eq!(
        client.address.to_string(),
        "203.0.113.5",
        "what stands before a stranger is the stranger's own invention"
    );
    assert_eq!(client.link("/p"), Some("https://pier.example/p".to_owned()));
    let lines = [
        ("x-forwarded-for", "198.51.100.1"),
        ("x-forwarded-for", "203.0.113.5"),
    ];
    assert_eq!(
        seen("127.0.0.1", "", "127.0.0.1", &lines)
            .address
            .to_string(),
        "203.0.113.5",
        "several lines are one list"
    );
}

#[test]
fn a_scheme_that_a_stranger_put_before_the_proxys_own_is_not_believed() {
    let headers = [
        ("x-forwarded-for", "203.0.113.5"),
        ("x-forwarded-proto", "https, http"),
        ("host", "a"),
    ];
    assert!(!seen("127.0.0.1", "", "127.0.0.1", &headers).https);
    assert!(
        seen(
            "127.0.0.1",
            "",
            "127.0.0.1",
            &[("x-forwarded-proto", "https")]
        )
        .https,
        "a proxy that names no client"
    );
}

#[test]
fn only_one_family_of_headers_is_believed() {
    let both = [
        ("forwarded", "for=192.0.2.77;proto=https;host=evil.example"),
        ("x-forwarded-for", "203.0.113.5"),
    ];
    let client = seen("127.0.0.1", "x-forwarded", "127.0.0.1", &both);
    assert_eq!(
        (client.address.to_string().as_str(), client.https),
        ("203.0.113.5", false)
    );
    let standard = [
        (
            "forwarded",
            "for=192.0.2.43, For=\"[2001:db8:cafe::17]:4711\";proto=https;host=pier.example",
        ),
        ("x-forwarded-for", "192.0.2.9"),
    ];
    let client = seen("127.0.0.1", "forwarded", "127.0.0.1", &standard);
    assert_eq!(
        (
            client.address.to_string().as_str(),
            client.https,
            client.host.as_deref()
        ),
        ("2001:db8:cafe::17", true, Some("pier.example"))
    );
}

#[test]
fn whoever_is_named_by_nothing_that_is_an_address_is_a_client_of_its_own_and_not_the_proxy() {
    let proxy = |headers: &[(&'static str, &str)]| seen("127.0.0.1", "", "127.0.0.1", headers);
    let named = proxy(&[("x-forwarded-for", "203.0.113.5")]);
    assert!(!named.unnamed);
    // The words that RFC 7239 allows for a machine that is not named, and what is seen in the field.
    for odd in [
        "unknown",
        "_hidden",
        "unix:",
        "localhost",
        "",
        "203.0.113.5 evil",
        "999.1.1.1",
    ] {
        let client = proxy(&[("x-forwarded-for", odd)]);
        assert!(client.unnamed && !client.uncounted, "{odd}: {client:?}");
        assert_ne!(client.circles(), named.circles(), "{odd}");
    }
    let nothing = proxy(&[("host", "127.0.0.1:8080")]);
    assert!(
        nothing.unnamed && !nothing.uncounted,
        "a proxy that says nothing at all: {nothing:?}"
    );
    let long = vec!["10.0.0.1"; 5000].join(",");
    assert_eq!(
        seen("10.0.0.0/8", "", "10.0.0.1", &[("x-forwarded-for", &long)])
            .address
            .to_string(),
        "10.0.0.1"
    );
}

/// What stands before a proxy on 127.0.0.1 when a visitor at 203.0.113.5 sends `X-Forwarded-For: 198.51.100.1` of their own.
/// nginx 1.22.1 and Caddy 2.6.2 were run and read (there, the visitor's address was the machine's own); of HAProxy's
/// `option forwardfor` and of Traefik it is what their manuals say, from memory.
const AS_SENT: [(&str, &[(&str, &str)]); 4] = [
    (
        "nginx with $proxy_add_x_forwarded_for",
        &[
            ("host", "pier.example"),
            ("x-forwarded-for", "198.51.100.1, 203.0.113.5"),
            ("x-forwarded-proto", "https"),
        ],
    ),
    (
        "Caddy, which takes out what a stranger wrote",
        &[
            ("host", "pier.example"),
            ("x-forwarded-for", "203.0.113.5"),
            ("x-forwarded-host", "pier.example"),
            ("x-forwarded-proto", "https"),
            ("accept-encoding", "gzip"),
        ],
    ),
    (
        "HAProxy, which adds a line of its own",
        &[
            ("host", "pier.example"),
            ("x-forwarded-for", "198.51.100.1"),
            ("x-forwarded-proto", "https"),
            ("x-forwarded-for", "203.0.113.5"),
        ],
    ),
    (
        "Traefik",
        &[
            ("host", "pier.example"),
            ("x-forwarded-for", "203.0.113.5"),
            ("x-forwarded-host", "pier.example"),
            ("x-forwarded-port", "443"),
            ("x-forwarded-proto", "https"),
            ("x-forwarded-server", "gate"),
            ("x-real-ip", "203.0.113.5"),
        ],
    ),
];

#[test]
fn what_each_proxy_sends_names_the_visitor_and_not_what_the_visitor_wrote() {
    for (proxy, headers) in AS_SENT {
        let client = seen("127.0.0.1", "", "127.0.0.1", headers);
        assert_eq!(
            (
                client.address.to_string().as_str(),
                client.unnamed,
                client.link("/p").as_deref()
            ),
            ("203.0.113.5", false, Some("https://pier.example/p")),
            "{proxy}"
        );
    }
}

#[test]
fn an_odd_byte_before_the_proxys_own_word_spoils_nothing() {
    let mut map = HeaderMap::new();
    let odd = axum::http::HeaderValue::from_bytes(b"caf\xe9, 203.0.113.5").unwrap();
    map.append(HeaderName::from_static("x-forwarded-for"), odd);
    let settings = Settings {
        trusted_proxies: Some("127.0.0.1".to_owned()),
        data: Some("d".into()),
        ..Settings::default()
    };
    let config = Config::new(settings).unwrap();
    let client = Client::of(&config, "127.0.0.1".parse().unwrap(), &map);
    assert_eq!(
        (client.address.to_string().as_str(), client.unnamed),
        ("203.0.113.5", false)
    );
}

#[test]
fn an_address_with_the_name_of_a_network_card_is_an_address() {
    let client = seen(
        "127.0.0.1",
        "",
        "127.0.0.1",
        &[("x-forwarded-for", "fe80::1%eth0")],
    );
    assert_eq!(
        (client.address.to_string().as_str(), client.unnamed),
        ("fe80::1", false)
    );
}

#[test]
fn nobody_is_exempt_who_came_through_a_proxy_or_asked_for_another_host() {
    let exempt = |proxies: &str, headers: &[(&'static str, &str)]| {
        let settings = Settings {
            trusted_proxies: Some(proxies.to_owned()),
            uncounted: Some("127.0.0.1".to_owned()),
            data: Some("d".into()),
            ..Settings::default()
        };
        let mut map = HeaderMap::new();
        for (name, value) in headers {
            map.append(HeaderName::from_static(name), value.parse().unwrap());
        }
        let config = Config::new(settings).unwrap();
        Client::of(&config, "127.0.0.1".parse().unwrap(), &map).uncounted
    };
    for here in ["127.0.0.1:8080", "localhost", "[::1]:8080"] {
        assert!(exempt("", &[("host", here)]), "{here}");
        assert!(!exempt("127.0.0.1", &[("host", here)]), "a stated proxy");
    }
    assert!(!exempt("", &[]) && !exempt("", &[("host", "pier.example")]));
    for telling in [
        "x-forwarded-for",
        "x-forwarded-proto",
        "x-real-ip",
        "forwarded",
        "via",
    ] {
        assert!(
            !exempt("", &[("host", "127.0.0.1"), (telling, "127.0.0.1")]),
            "{telling}"
        );
    }
    assert!(
        !seen("", "", "127.0.0.1", &[("host", "127.0.0.1")]).uncounted,
        "without the setting everybody is counted"
    );
}

#[test]
fn a_host_that_can_stand_in_no_address_is_none() {
    for odd in ["a/b", "a b", "me@a", "", "a:b:c"] {
        assert_eq!(
            seen("", "", "127.0.0.1", &[("host", odd)]).host,
            None,
            "{odd}"
        );
    }
}

#[test]
fn a_public_address_is_told_whatever_the_request_says() {
    let settings = Settings {
        public_address: Some("https://pier.example/planner".to_owned()),
        data: Some("d".into()),
        ..Settings::default()
    };
    let config = Config::new(settings).unwrap();
    let mut headers = HeaderMap::new();
    headers.insert(HOST, "evil.example".parse().unwrap());
    let client = Client::of(&config, "127.0.0.1".parse().unwrap(), &headers);
    assert_eq!(
        client.link("/planner/p"),
        Some("https://pier.example/planner/p".to_owned())
    );
    assert_eq!(
        config.base, "/planner",
        "its path is the base path when none is stated"
    );
}
