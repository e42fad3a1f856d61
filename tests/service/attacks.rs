//! What a stranger might send: nothing of it changes a plan, splits an answer, or stops the next reader.

use std::io::{Read, Write};
use std::net::TcpStream;
use std::time::{Duration, Instant};

use stillground_tests::http::{exchange, raw};
use stillground_tests::routes::{of_a_plan, pages};
use stillground_tests::service::{Service, start, titled, unknown};

use crate::under_base::begin;

/// All that a plan's holder can ask for, but for the day on which each link was opened last.
fn state(service: &Service, kept: &stillground_tests::service::Kept) -> String {
    let read = |below: &&str| {
        let mut answer = service.read(kept, &kept.edit, below).json();
        for link in answer["links"].as_array_mut().into_iter().flatten() {
            link["opened_at"].take();
        }
        answer.to_string()
    };
    ["", "/revisions", "/links", "/entries"]
        .iter()
        .map(read)
        .collect()
}

#[test]
fn reading_any_address_changes_nothing() {
    let service = start();
    let kept = service.create(&titled("before"));
    let before = state(&service, &kept);
    for secret in [&kept.edit, &kept.record, &kept.view] {
        for page in of_a_plan(secret) {
            for method in ["GET", "HEAD", "OPTIONS"] {
                let robot = [("user-agent", "preview robot"), ("accept", "*/*")];
                let head = format!(
                    "{method} {page} HTTP/1.1\r\nhost: {}\r\nconnection: close\r\n{}: {}\r\n\r\n",
                    service.socket, robot[0].0, robot[0].1
                );
                let _ = exchange(service.socket, head.as_bytes());
            }
        }
    }
    assert_eq!(state(&service, &kept), before);
}

#[test]
fn a_preview_shows_neither_title_nor_content_of_a_plan() {
    let service = start();
    let kept = service.create(&titled("Hollow Oak"));
    let page = service.get(&format!("/p/{}/plan", kept.view)).text();
    let offered: Vec<&str> = page
        .split("<meta ")
        .skip(1)
        .filter_map(|rest| rest.split('>').next())
        .collect();
    assert!(
        offered.iter().any(|meta| meta.contains("og:title"))
            && offered.iter().any(|meta| meta.contains("noindex")),
        "{offered:?}"
    );
    assert!(
        offered
            .iter()
            .all(|meta| !meta.contains("Hollow Oak") && !meta.contains("og:image")),
        "{offered:?}"
    );
}

#[test]
fn no_answer_that_holds_a_plan_or_a_secret_may_be_kept_by_a_cache() {
    let service = start();
    let kept = service.create(&titled("Hollow Oak"));
    for page in of_a_plan(&kept.edit) {
        let answer = service.get(&page);
        assert_eq!(answer.header("cache-control"), "no-store", "{page}");
    }
    for below in ["", "/design", "/links", "/revisions", "/plan.pdf"] {
        assert_eq!(
            service
                .read(&kept, &kept.edit, below)
                .header("cache-control"),
            "no-store",
            "{below}"
        );
    }
    assert_eq!(service.get("/").header("cache-control"), "no-store");
    assert_eq!(
        service.get("/organiser").header("cache-control"),
        "no-store"
    );
}

#[test]
fn the_front_page_forgets_the_plans_begun_in_this_browser() {
    let service = start();
    let (_, cookie) = begin(&service, "", &[]);
    let kept = cookie.split(';').next().unwrap();
    assert!(
        service
            .send("GET", "/", &[("cookie", kept)], b"")
            .text()
            .contains("Started in this browser")
    );
    let gone = service.send(
        "POST",
        "/forget",
        &[("cookie", kept), ("sec-fetch-site", "same-origin")],
        b"",
    );
    assert!(
        gone.header("set-cookie").starts_with("plans=;")
            && gone.header("set-cookie").contains("Max-Age=0"),
        "{}",
        gone.header("set-cookie")
    );
}

#[test]
fn what_a_plan_says_is_shown_as_text() {
    let service = start();
    let title = "</title><script>alert(1)</script><img src=x onerror=y>\"'&";
    let kept = service.create(&titled(title));
    for page in of_a_plan(&kept.edit) {
        let answer = service.get(&page);
        assert_eq!(
            answer.header("x-content-type-options"),
            "nosniff",
            "a sheet or a table is never taken for a page"
        );
        let (text, is_page) = (
            answer.text(),
            answer.header("content-type").starts_with("text/html"),
        );
        assert!(
            !is_page || !(text.contains("<script>alert") || text.contains("<img src=x")),
            "{page}"
        );
    }
    let svg = service
        .get(&format!("/p/{}/drawings/section.svg", kept.edit))
        .text();
    assert!(!svg.contains("<script"));
}

#[test]
fn no_header_is_split_by_what_is_sent() {
    let service = start();
    let kept = service.create(&unknown());
    for path in [
        "/p/%0d%0aset-cookie:%20x=y/site".to_owned(),
        format!("/p/{}/site%0d%0ax:%20y", kept.edit),
        format!("/p/{}?x=%0d%0aset-cookie:y", kept.edit),
        "/example?%0d%0ax:y".to_owned(),
    ] {
        let answer = service.get(&path);
        assert!(
            answer.header("set-cookie").is_empty() && answer.header("x").is_empty(),
            "{path}"
        );
        assert!(
            !answer.header("location").contains('\n') && !answer.header("location").contains("%0d"),
            "{path}"
        );
    }
    let form = [("content-type", "application/x-www-form-urlencoded")];
    let sent = service.send(
        "POST",
        &format!("/p/{}/site", kept.edit),
        &form,
        b"base=1&shown_in=metric&go=//evil.example/%0d%0ax:y",
    );
    assert!(
        sent.header("location")
            .starts_with(&format!("/p/{}/", kept.edit))
            || sent.header("location").is_empty(),
        "{}",
        sent.header("location")
    );
}

#[test]
fn odd_requests_are_refused_and_the_next_is_served() {
    let service = start();
    let long = "x".repeat(200_000);
    let requests = [
        format!("GET / HTTP/1.1\r\nhost: a\r\ncookie: plans={long}\r\nconnection: close\r\n\r\n"),
        format!("GET /{long} HTTP/1.1\r\nhost: a\r\nconnection: close\r\n\r\n"),
        format!("GET / HTTP/1.1\r\nhost: a\r\nconnection: close\r\n{}\r\n", "x: y\r\n".repeat(5000)),
        "GET / HTTP/1.1\r\nhost: a\r\ncontent-length: 5\r\ntransfer-encoding: chunked\r\nconnection: close\r\n\r\n0\r\n\r\n".to_owned(),
        "GET / HTTP/1.1\r\nhost: a\r\ncontent-length: -1\r\n\r\n".to_owned(),
        "GET http://evil.example/ HTTP/1.1\r\nhost: a\r\nconnection: close\r\n\r\n".to_owned(),
        "CONNECT evil.example:443 HTTP/1.1\r\nhost: evil.example\r\nconnection: close\r\n\r\n".to_owned(),
        "\r\n\r\n\u{0}\u{1}".to_owned(),
    ];
    for request in requests {
        let answer = exchange(service.socket, request.as_bytes()).unwrap_or_default();
        let line = String::from_utf8_lossy(&answer)
            .lines()
            .next()
            .unwrap_or_default()
            .to_owned();
        assert!(
            !line.contains(" 500 "),
            "{}: {line}",
            &request[..40.min(request.len())]
        );
    }
    let cookie = format!("plans={}", vec!["a".repeat(32); 200].join("."));
    let many = service.send("GET", "/", &[("cookie", &cookie)], b"");
    assert_eq!(many.status, 200, "a long list of links that open nothing");
    assert_eq!(service.get("/health/ready").status, 200);
}

#[test]
fn a_client_that_sends_nothing_hinders_nobody() {
    let service = start();
    let mut silent: Vec<TcpStream> = (0..300)
        .map(|_| TcpStream::connect(service.socket).unwrap())
        .collect();
    for line in &mut silent {
        line.write_all(
            b"POST /new HTTP/1.1\r\nhost: a\r\ncontent-type: application/x-www-form-urlencoded\r\ncontent-length: 10\r\n",
        )
            .unwrap();
    }
    let begun = Instant::now();
    assert_eq!(service.get("/health/live").status, 200);
    assert_eq!(service.create(&unknown()).id.len(), 16);
    assert!(begun.elapsed() < Duration::from_secs(5));
    let mut first = silent.swap_remove(0);
    first.write_all(b"\r\nab").unwrap();
    first
        .set_read_timeout(Some(Duration::from_secs(25)))
        .unwrap();
    let mut answer = String::new();
    let _ = first.read_to_string(&mut answer);
    assert!(
        answer.starts_with("HTTP/1.1 408"),
        "a body that never comes is given up: {answer}"
    );
    assert!(!answer.contains("set-cookie"), "no plan was begun");
}

#[test]
fn an_answer_says_nothing_of_what_it_is_made_with() {
    let service = start();
    let answer = raw(
        service.socket,
        b"GET / HTTP/1.1\r\nhost: a\r\nconnection: close\r\n\r\n",
    );
    assert!(answer.header("server").is_empty() && answer.header("x-powered-by").is_empty());
}

/// A form's own header, and ways in which a browser tells that another site sent it.
pub(crate) const FORM: (&str, &str) = ("content-type", "application/x-www-form-urlencoded");
const FOREIGN: [(&str, &str); 7] = [
    ("sec-fetch-site", "cross-site"),
    ("sec-fetch-site", "same-site"),
    ("origin", "https://evil.example"),
    ("origin", "null"),
    ("origin", "http://127.0.0.1.evil.example"),
    ("referer", "https://evil.example/organiser"),
    ("cookie", "plans=x"),
];

#[test]
fn no_form_is_taken_from_another_site() {
    let service = start();
    let kept = service.create(&titled("before"));
    let before = state(&service, &kept);
    // A form that is sent to a step is the same whichever step it is.
    let forms: Vec<String> = pages()
        .iter()
        .filter(|route| route.sent)
        .filter_map(|route| route.addresses(&kept.edit).into_iter().next())
        .collect();
    assert!(forms.len() > 12, "{forms:?}");
    for form in &forms {
        for foreign in FOREIGN {
            let answer = service.send("POST", form, &[FORM, foreign], b"right=edit&do=replace");
            assert_eq!(
                (answer.status, answer.header("cache-control")),
                (403, "no-store"),
                "{form} {foreign:?}"
            );
            assert!(answer.header("set-cookie").is_empty(), "{form} {foreign:?}");
        }
    }
    assert_eq!(state(&service, &kept), before);
}

#[test]
fn whatever_is_answered_on_a_private_address_no_cache_keeps_it() {
    let service = start();
    let kept = service.create(&titled("Hollow Oak"));
    for secret in [
        &kept.edit,
        &kept.record,
        &kept.view,
        &"z".repeat(32),
        &"x".to_owned(),
    ] {
        let nowhere = ["nothing", "..%2fx"].map(|page| format!("/p/{secret}/{page}"));
        for page in of_a_plan(secret).into_iter().chain(nowhere) {
            for method in ["GET", "POST", "DELETE"] {
                let answer = service.send(method, &page, &[FORM], b"base=x");
                assert!(
                    answer.header("cache-control").ends_with("no-store"),
                    "{method} {page}: {}",
                    answer.status
                );
            }
        }
    }
}
