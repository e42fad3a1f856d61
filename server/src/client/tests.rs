#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

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
fn what_is_no_address_ends_the_search_at_the_last_machine_known() {
    for odd in ["unknown", "_hidden", "", "203.0.113.5 evil", "999.1.1.1"] {
        assert_eq!(
            seen("10.0.0.0/8", "", "10.0.0.1", &[("x-forwarded-for", odd)])
                .address
                .to_string(),
            "10.0.0.1",
            "{odd}"
        );
    }
    let long = vec!["10.0.0.1"; 5000].join(",");
    assert_eq!(
        seen("10.0.0.0/8", "", "10.0.0.1", &[("x-forwarded-for", &long)])
            .address
            .to_string(),
        "10.0.0.1"
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
