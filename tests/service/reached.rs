//! How a reader reached us: what is believed of a request, and what a stranger cannot make us say.

use stillground_server::config::Settings;
use stillground_tests::http::{Answer, raw};
use stillground_tests::service::{Service, start, start_with};

use crate::under_base::begin;

/// The address of a new view link, as the page of links shows it.
fn shown(service: &Service, headers: &[(&str, &str)]) -> String {
    let (location, _) = begin(service, "", &[]);
    let page = location.replace("/short/ground", "/links");
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
        hosts: Some("pier.example".to_owned()),
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
            location.replace("/short/ground", "/links"),
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

/// The answer to a request with these lines in its head.
fn with_head(service: &Service, version: &str, path: &str, head: &str) -> Answer {
    let request = format!("GET {path} HTTP/{version}\r\n{head}connection: close\r\n\r\n");
    raw(service.socket, request.as_bytes())
}

#[test]
fn a_name_that_the_planner_was_not_told_is_refused_with_what_to_set() {
    let service = start();
    let page = with_head(&service, "1.1", "/", "host: evil.example:8080\r\n");
    assert_eq!(page.status, 421);
    assert!(
        page.text()
            .contains("STILLGROUND_PUBLIC_ADDRESS=http://evil.example:8080")
            && page.text().contains("STILLGROUND_HOSTS=evil.example"),
        "{}",
        page.text()
    );
    let api = with_head(
        &service,
        "1.1",
        "/api/v1/openapi.json",
        "host: evil.example\r\n",
    );
    assert_eq!(
        (api.status, api.json()["code"].as_str()),
        (421, Some("foreign_host"))
    );
    for inside in ["localhost", "[::1]:80", "192.168.1.9", "pier", "pier.local"] {
        let answer = with_head(&service, "1.1", "/", &format!("host: {inside}\r\n"));
        assert_eq!(answer.status, 200, "{inside}");
    }
    let told = start_with(Settings {
        hosts: Some("pier.lan".to_owned()),
        ..Settings::default()
    });
    let asked = |host: &str| with_head(&told, "1.1", "/", &format!("host: {host}\r\n")).status;
    assert_eq!((asked("pier.lan:8080"), asked("evil.example")), (200, 421));
}

#[test]
fn a_request_names_its_host_once() {
    let service = start();
    let once = "host: localhost\r\n";
    for (version, head) in [
        ("1.1", String::new()),
        ("1.0", String::new()),
        ("1.1", format!("{once}{once}")),
        ("1.1", format!("{once}host: evil.example\r\n")),
        ("1.1", "host: \r\n".to_owned()),
        ("1.1", "host: a/b\r\n".to_owned()),
    ] {
        assert_eq!(
            with_head(&service, version, "/", &head).status,
            400,
            "{version} {head}"
        );
    }
    assert_eq!(
        with_head(&service, "1.1", "http://evil.example/", once).status,
        400
    );
    assert_eq!(
        with_head(&service, "1.0", "/health/live", "").status,
        200,
        "whoever watches may not know the name"
    );
}

#[test]
fn the_icon_that_browsers_ask_for_by_themselves_is_there() {
    let service = start();
    let icon = service.get("/favicon.ico");
    assert_eq!(
        (icon.status, icon.header("content-type")),
        (200, "image/vnd.microsoft.icon")
    );
    // An icon begins with 0, 0, 1, 0 and the number of its pictures (the format's head, from memory).
    assert_eq!(icon.body[..6], [0, 0, 1, 0, 2, 0]);
    let page = service.get("/").text();
    let href = page.split("rel=\"icon\" href=\"").nth(1).unwrap();
    let drawn = service.get(href.split('"').next().unwrap());
    assert_eq!(
        (drawn.status, drawn.header("content-type")),
        (200, "image/svg+xml")
    );
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
