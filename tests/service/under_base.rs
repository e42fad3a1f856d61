//! Every page, link, redirect and cookie works below a base path: each page is read, and each address on it followed.

use std::collections::{BTreeSet, VecDeque};

use stillground_server::config::Settings;
use stillground_tests::http::Answer;
use stillground_tests::service::{Service, start_with};

const BASE: &str = "/planner";

/// Begins a plan as a browser does: where it leads, and the cookie.
pub fn begin(service: &Service, base: &str, headers: &[(&str, &str)]) -> (String, String) {
    let answer = service.send("POST", &format!("{base}/new"), headers, b"");
    assert_eq!(answer.status, 303, "{}", answer.text());
    (
        answer.header("location").to_owned(),
        answer.header("set-cookie").to_owned(),
    )
}

/// Makes a link of a right on the page of links: its path.
pub fn link(service: &Service, edit_root: &str, right: &str) -> String {
    let answer = service.send(
        "POST",
        &format!("{edit_root}/links"),
        &[("content-type", "application/x-www-form-urlencoded")],
        format!("right={right}&do=replace").as_bytes(),
    );
    let text = answer.text();
    let address = text
        .split("value=\"http")
        .nth(1)
        .and_then(|rest| rest.split('"').next())
        .expect("an address on the page");
    format!(
        "/{}",
        address
            .split_once("://")
            .and_then(|(_, rest)| rest.split_once('/'))
            .expect("a path")
            .1
    )
}

/// The addresses in a page's attributes.
fn addresses(page: &str) -> Vec<String> {
    let of = |name: &str| {
        page.split(&format!(" {name}=\""))
            .skip(1)
            .filter_map(|rest| rest.split('"').next())
            .map(|text| text.replace("&amp;", "&").replace("&#38;", "&"))
            .collect::<Vec<_>>()
    };
    ["href", "src", "action", "formaction", "poster", "data-src"]
        .into_iter()
        .flat_map(of)
        .collect()
}

fn is_page(answer: &Answer) -> bool {
    answer.header("content-type").starts_with("text/html")
}

#[test]
fn every_address_on_every_page_stands_below_the_base_path_and_opens() {
    let service = start_with(Settings {
        base_path: Some(BASE.to_owned()),
        colours: Some("accent=#7a2e1d".to_owned()),
        ..Settings::default()
    });
    let (location, cookie) = begin(&service, BASE, &[]);
    let edit = location.trim_end_matches("/short/ground").to_owned();
    let view = link(&service, &edit, "view");
    let record = link(&service, &edit, "record");
    let kept = cookie.split(';').next().unwrap().to_owned();
    let mut seen: BTreeSet<String> = BTreeSet::new();
    let mut ahead = VecDeque::from([
        format!("{BASE}/"),
        format!("{BASE}/nowhere"),
        location,
        view,
        record,
    ]);
    let mut pages = 0;
    while let Some(path) = ahead.pop_front() {
        let bare = path.split('#').next().unwrap().to_owned();
        if !seen.insert(bare.clone()) {
            continue;
        }
        let answer = service.send("GET", &bare, &[("cookie", &kept)], b"");
        let missing = bare.ends_with("/nowhere");
        // A form that is only sent is no page.
        let sent_only = answer.status == 405;
        assert!(
            answer.status < 400 || missing || sent_only,
            "{bare}: {}",
            answer.status
        );
        if (300..400).contains(&answer.status) {
            let to = answer.header("location").to_owned();
            assert!(to.starts_with(&format!("{BASE}/")), "{bare} leads to {to}");
            ahead.push_back(to);
            continue;
        }
        if !is_page(&answer) {
            continue;
        }
        pages += 1;
        for address in addresses(&answer.text()) {
            if address.starts_with('#') || address.is_empty() {
                continue;
            }
            // A panel is written once for every link, and names drawings and chapters from where the page stands.
            let folder = bare.split('?').next().unwrap().rsplit_once('/').unwrap().0;
            let address = if address.starts_with("drawings/") || address.starts_with("plan/") {
                format!("{folder}/{address}")
            } else {
                address
            };
            assert!(
                address.starts_with(&format!("{BASE}/")),
                "{bare} names {address}"
            );
            let is_form_only = ["/new", "/forget"]
                .iter()
                .any(|form| address == format!("{BASE}{form}"));
            if !is_form_only {
                ahead.push_back(address);
            }
        }
    }
    assert!(pages > 30, "{pages} pages of {}", seen.len());
}

#[test]
fn the_cookie_goes_to_the_planner_only_and_over_tls_only_where_tls_is_spoken() {
    let settings = Settings {
        base_path: Some(BASE.to_owned()),
        trusted_proxies: Some("127.0.0.1".to_owned()),
        ..Settings::default()
    };
    let service = start_with(settings);
    let (_, plain) = begin(&service, BASE, &[]);
    assert!(
        plain.contains("Path=/planner/")
            && plain.contains("HttpOnly")
            && plain.contains("SameSite=Lax"),
        "{plain}"
    );
    assert!(!plain.contains("Secure"), "{plain}");
    let (_, tls) = begin(
        &service,
        BASE,
        &[
            ("x-forwarded-proto", "https"),
            ("x-forwarded-for", "203.0.113.5"),
        ],
    );
    assert!(tls.contains("Secure"), "{tls}");
}

#[test]
fn the_page_of_a_broken_address_below_the_base_leads_back_below_it() {
    let service = start_with(Settings {
        base_path: Some(BASE.to_owned()),
        ..Settings::default()
    });
    for path in [
        "/planner/nowhere",
        "/planner/%2e%2e/%2e%2e/etc",
        "/planner/..%2f",
        "/planner/p/%252e%252e/site",
        "/planner/p/a%0d%0ab/site",
        "/planner/static/..%2f..%2fCargo.toml",
        "/planner/static/%2e%2e/%2e%2e/Cargo.toml",
        "/planner/house/..%2fx.css",
    ] {
        let answer = service.get(path);
        assert_eq!(answer.status, 404, "{path}");
        assert!(answer.text().contains("href=\"/planner/\""), "{path}");
        assert!(!answer.text().contains("[workspace]"), "{path}");
    }
}
