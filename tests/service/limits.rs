//! Limits for each client, counted by its real address, each refusal with when to come back.

use stillground_server::config::Settings;
use stillground_tests::http::Answer;
use stillground_tests::service::{Service, start, start_with, unknown};

/// A service behind a proxy on this machine that says whom it speaks for.
fn behind_a_proxy() -> Service {
    start_with(Settings {
        trusted_proxies: Some("127.0.0.1".to_owned()),
        ..Settings::default()
    })
}

/// Sends the same request for a client until it is refused: how many went through, and the refusal.
fn until_refused(
    service: &Service,
    from: &str,
    method: &str,
    path: &str,
    body: &[u8],
) -> (usize, Answer) {
    let headers = [
        ("x-forwarded-for", from),
        ("content-type", "application/json"),
    ];
    for taken in 0..400 {
        let answer = service.send(method, path, &headers, body);
        if answer.status == 429 {
            return (taken, answer);
        }
    }
    panic!("{path} is never refused");
}

fn wait(answer: &Answer) -> u64 {
    answer.header("retry-after").parse().unwrap()
}

#[test]
fn plans_begun_by_one_client_are_limited_and_another_is_not_hindered() {
    let service = behind_a_proxy();
    let body = unknown().to_string();
    let (taken, refused) = until_refused(
        &service,
        "203.0.113.5",
        "POST",
        "/api/v1/plans",
        body.as_bytes(),
    );
    assert_eq!(
        (
            taken,
            refused.header("content-type"),
            refused.json()["code"].as_str().unwrap()
        ),
        (20, "application/problem+json", "too_often")
    );
    assert!((1..=61).contains(&wait(&refused)), "{}", wait(&refused));
    let page = service.send("POST", "/new", &[("x-forwarded-for", "203.0.113.5")], b"");
    assert_eq!(
        (page.status, page.header("content-type")),
        (429, "text/html; charset=utf-8"),
        "pages and programs are counted together"
    );
    assert!(page.text().contains("Too often"), "in a page of ours");
    let other = service.send("POST", "/new", &[("x-forwarded-for", "203.0.113.6")], b"");
    assert_eq!(other.status, 303);
}

#[test]
fn a_form_that_comes_too_often_is_held_to_be_sent_again() {
    let service = behind_a_proxy();
    let headers = [
        ("x-forwarded-for", "203.0.113.5"),
        ("content-type", "application/x-www-form-urlencoded"),
    ];
    let mut answers = (0..30).map(|_| service.send("POST", "/new", &headers, b"title=Quarry+Lane"));
    let page = answers.find(|answer| answer.status == 429).unwrap().text();
    assert!(
        page.contains("name=\"title\" value=\"Quarry Lane\"") && page.contains("Send it again"),
        "{page}"
    );
}

#[test]
fn a_client_is_not_made_new_by_what_it_writes_into_the_header_itself() {
    let service = behind_a_proxy();
    for invented in 0..20 {
        let from = format!("198.51.100.{invented}, 203.0.113.9");
        let _ = service.send("POST", "/new", &[("x-forwarded-for", &from)], b"");
    }
    assert_eq!(
        service
            .send(
                "POST",
                "/new",
                &[("x-forwarded-for", "198.51.100.77, 203.0.113.9")],
                b""
            )
            .status,
        429
    );
}

#[test]
fn addresses_of_one_household_are_one_client() {
    let service = behind_a_proxy();
    for host in 0..20 {
        let _ = service.send(
            "POST",
            "/new",
            &[("x-forwarded-for", &format!("2001:db8:1:2::{host:x}"))],
            b"",
        );
    }
    assert_eq!(
        service
            .send(
                "POST",
                "/new",
                &[("x-forwarded-for", "2001:db8:1:2:ffff::1")],
                b""
            )
            .status,
        429
    );
    assert_eq!(
        service
            .send(
                "POST",
                "/new",
                &[("x-forwarded-for", "2001:db8:1:3::1")],
                b""
            )
            .status,
        303
    );
}

#[test]
fn guesses_at_links_are_limited_and_then_no_link_is_opened_for_that_client() {
    let service = behind_a_proxy();
    let kept = service.create(&unknown());
    let path = format!("/p/{}/links", "a".repeat(32));
    let (taken, refused) = until_refused(&service, "203.0.113.5", "GET", &path, b"");
    assert!((20..=22).contains(&taken), "{taken}");
    assert!(wait(&refused) <= 16);
    let right = format!("/p/{}/links", kept.edit);
    assert_eq!(
        service
            .send("GET", &right, &[("x-forwarded-for", "203.0.113.5")], b"")
            .status,
        429,
        "or a guess would tell right from wrong"
    );
    assert_eq!(
        service
            .send("GET", &right, &[("x-forwarded-for", "203.0.113.6")], b"")
            .status,
        200
    );
    let bearer = service.send(
        "GET",
        &kept.path(""),
        &[
            ("x-forwarded-for", "203.0.113.5"),
            ("authorization", "Bearer x"),
        ],
        b"",
    );
    assert_eq!(
        bearer.status, 429,
        "the interface for programs counts the same guesses"
    );
}

#[test]
fn prints_and_designs_are_limited() {
    let service = behind_a_proxy();
    let (prints, _) = until_refused(
        &service,
        "203.0.113.5",
        "GET",
        "/example/plan.pdf?paper=none",
        b"",
    );
    assert!((20..=40).contains(&prints), "{prints}");
    let (designs, refused) = until_refused(&service, "203.0.113.7", "POST", "/api/v1/design", b"x");
    assert!(designs >= 240, "{designs}");
    assert!(wait(&refused) <= 2);
}

#[test]
fn whoever_sits_at_the_machine_is_not_limited_but_a_proxy_that_is_not_stated_is_one_client() {
    let service = start();
    for _ in 0..25 {
        assert_eq!(service.send("POST", "/new", &[], b"").status, 303);
    }
    for visitor in 0..20 {
        let _ = service.send(
            "POST",
            "/new",
            &[("x-forwarded-for", &format!("198.51.100.{visitor}"))],
            b"",
        );
    }
    assert_eq!(
        service
            .send("POST", "/new", &[("x-forwarded-for", "203.0.113.5")], b"")
            .status,
        429
    );
}

#[test]
fn links_in_a_cookie_are_guesses_like_any_other_and_are_taken_out_when_they_open_nothing() {
    let service = behind_a_proxy();
    let guesses: Vec<String> = (0..30)
        .map(|n| format!("{:a>32}", char::from(b'b' + n % 24)))
        .collect();
    let cookie = format!("plans={}", guesses.join("."));
    let headers = [
        ("x-forwarded-for", "203.0.113.5"),
        ("cookie", cookie.as_str()),
    ];
    let front = service.send("GET", "/", &headers, b"");
    assert_eq!(front.status, 200);
    assert!(
        front.header("set-cookie").matches('.').count() < 29,
        "{}",
        front.header("set-cookie")
    );
    assert_eq!(
        service
            .send(
                "GET",
                &format!("/p/{}/site", guesses[0]),
                &headers[..1],
                b""
            )
            .status,
        429
    );
}
