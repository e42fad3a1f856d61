//! How a reader reached us: what is believed of a request, and what a stranger cannot make us say.

use stillground_server::config::Settings;
use stillground_tests::http::raw;
use stillground_tests::service::{Service, start, start_with};

use crate::under_base::begin;

/// The address of a new view link, as the page of links shows it.
fn shown(service: &Service, headers: &[(&str, &str)]) -> String {
    let (location, _) = begin(service, "", &[]);
    let page = location.replace("/site", "/links");
    let mut all = vec![("content-type", "application/x-www-form-urlencoded")];
    all.extend(headers);
    let text = service
        .send("POST", &page, &all, b"right=view&do=replace")
        .text();
    let value = text
        .split("class=\"address\"")
        .nth(1)
        .and_then(|rest| rest.split("value=\"").nth(1))
        .expect("an address");
    value.split("/p/").next().unwrap().to_owned()
}

const LIES: [(&str, &str); 4] = [
    ("x-forwarded-proto", "https"),
    ("x-forwarded-host", "evil.example"),
    ("x-forwarded-for", "192.0.2.1"),
    ("forwarded", "proto=https;host=evil.example"),
];

#[test]
fn a_stranger_cannot_choose_the_host_or_the_scheme_of_a_link() {
    let service = start();
    assert_eq!(shown(&service, &LIES), format!("http://{}", service.socket));
}

#[test]
fn a_proxy_of_ours_can() {
    let service = start_with(Settings {
        trusted_proxies: Some("127.0.0.0/8".to_owned()),
        ..Settings::default()
    });
    assert_eq!(
        shown(
            &service,
            &[
                ("x-forwarded-proto", "https"),
                ("x-forwarded-host", "pier.example")
            ]
        ),
        "https://pier.example"
    );
    assert_eq!(
        shown(
            &service,
            &[
                ("x-forwarded-proto", "https"),
                ("x-forwarded-host", "evil\"><b>.example")
            ]
        ),
        format!("https://{}", service.socket)
    );
}

#[test]
fn a_stated_public_address_stands_in_every_link() {
    let service = start_with(Settings {
        public_address: Some("https://pier.example".to_owned()),
        ..Settings::default()
    });
    assert_eq!(shown(&service, &LIES), "https://pier.example");
    let (_, cookie) = begin(&service, "", &[]);
    assert!(cookie.contains("Secure"), "{cookie}");
}

#[test]
fn a_host_that_is_none_stands_in_no_link() {
    let service = start();
    let (location, _) = begin(&service, "", &[]);
    for host in [
        "evil.example/x?",
        "a b",
        "me@evil.example",
        "evil.example\"><script>",
    ] {
        let body = "right=view&do=replace";
        let request = format!(
            "POST {} HTTP/1.1\r\nhost: {host}\r\nconnection: close\r\ncontent-type: application/x-www-form-urlencoded\r\ncontent-length: {}\r\n\r\n{body}",
            location.replace("/site", "/links"),
            body.len()
        );
        let answer = raw(service.socket, request.as_bytes());
        assert!(
            answer.status == 400 || !answer.text().contains("evil.example"),
            "{host}: {}",
            answer.status
        );
    }
}

#[test]
fn a_house_shows_its_name_and_its_checked_colours() {
    let settings = Settings {
        house_name: Some("Ashdown Field <Observers>".to_owned()),
        colours: Some("accent=#7a2e1d, dark-accent=#f0b49c".to_owned()),
        ..Settings::default()
    };
    let service = start_with(settings);
    let page = service.get("/").text();
    assert!(
        page.contains("Ashdown Field &#60;Observers&#62;"),
        "the name is escaped: {}",
        &page[..900]
    );
    let href = page
        .split("href=\"")
        .map(|rest| rest.split('"').next().unwrap())
        .find(|href| href.starts_with("/house/"))
        .expect("a style sheet")
        .to_owned();
    let sheet = service.get(&href);
    assert!(
        sheet.text().contains("--accent: #7a2e1d"),
        "{}",
        sheet.text()
    );
    assert_eq!(
        (sheet.header("content-type"), sheet.header("cache-control")),
        (
            "text/css; charset=utf-8",
            "public, max-age=31536000, immutable"
        )
    );
    assert_eq!(
        service.get("/house/000000.css").header("cache-control"),
        "public, no-cache"
    );
    assert_eq!(service.get("/house/x").status, 404);
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(
        folder.path().join("plan.pdf"),
        service.get("/example/plan.pdf").body,
    )
    .unwrap();
    let mut tool = std::process::Command::new("pdftotext");
    let text = tool
        .args(["plan.pdf", "-"])
        .current_dir(folder.path())
        .output()
        .expect("pdftotext, of poppler-utils")
        .stdout;
    assert!(
        String::from_utf8_lossy(&text).contains("Ashdown Field"),
        "the sheets carry the name"
    );
    assert_eq!(
        start().get("/house/000000.css").status,
        404,
        "a planner without colours has no such sheet"
    );
}
