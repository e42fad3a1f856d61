//! Limits for each client, counted by its real address, each refusal with when to come back.

use stillground_server::config::Settings;
use stillground_tests::http::{Answer, raw};
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

/// Asks so many times, many at once, since whoever is refused again and again waits: how often with success.
fn at_once(times: usize, ask: impl Fn(usize) -> bool + Sync) -> usize {
    const LINES: usize = 100;
    let ask = &ask;
    std::thread::scope(|scope| {
        let lines: Vec<_> = (0..LINES)
            .map(|line| {
                scope.spawn(move || (line..times).step_by(LINES).filter(|i| ask(*i)).count())
            })
            .collect();
        lines.into_iter().map(|line| line.join().unwrap()).sum()
    })
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
fn a_line_of_many_households_is_one_client_too() {
    let service = behind_a_proxy();
    let begun = at_once(400, |household| {
        let from = format!("2001:db8:9:{household:x}::1");
        let answer = service.send("POST", "/new", &[("x-forwarded-for", &from)], b"");
        answer.status == 303
    });
    assert_eq!(
        begun,
        2 * 4 * 20,
        "two /56, each with four households' part"
    );
}

#[test]
fn guesses_at_links_are_limited_and_a_right_link_opens_all_the_same() {
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
        200,
        "whoever made the guesses: a page of another site can make any browser guess"
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
fn wrong_links_use_up_nothing_that_a_right_one_needs() {
    let service = start_with(Settings {
        uncounted: Some(String::new()),
        ..Settings::default()
    });
    let kept = service.create(&unknown());
    let wrong = format!("/p/{}/site", "a".repeat(32));
    assert_eq!(at_once(300, |_| service.get(&wrong).status == 200), 0);
    let right = service.get(&format!("/p/{}/site", kept.edit));
    assert_eq!(right.status, 200, "{}", right.text());
}

#[test]
fn guesses_at_the_organisers_password_are_counted_whatever_the_proxy_says() {
    let folder = tempfile::tempdir().unwrap();
    let token = folder.path().join("token");
    std::fs::write(&token, "a password of many letters").unwrap();
    for proxies in ["127.0.0.1", ""] {
        let service = start_with(Settings {
            trusted_proxies: Some(proxies.to_owned()),
            organiser_token_file: Some(token.clone()),
            uncounted: Some(String::new()),
            ..Settings::default()
        });
        // As an odd proxy names its client; and a proxy that says nothing, with the host that it was told to ask.
        for from in [
            &b"\xff"[..],
            b"unknown",
            b"_hidden",
            b"unix:",
            b"localhost",
            b"",
        ] {
            let guess = || {
                let body = "password=wrong+wrong+wrong+wrong";
                let mut head = format!(
                    "POST /organiser/in HTTP/1.1\r\nhost: 127.0.0.1\r\nconnection: close\r\n\
                     content-type: application/x-www-form-urlencoded\r\ncontent-length: {}\r\n",
                    body.len()
                )
                .into_bytes();
                if !from.is_empty() {
                    head.extend(b"x-forwarded-for: ");
                    head.extend(from);
                    head.extend(b"\r\n");
                }
                head.extend(b"\r\n");
                head.extend(body.as_bytes());
                raw(service.socket, &head).status
            };
            let taken = at_once(30, |_| guess() != 429);
            assert!(taken <= 10, "{from:?} behind {proxies:?}: {taken} of 30");
        }
    }
}

#[test]
fn prints_and_designs_are_limited() {
    let service = behind_a_proxy();
    let kept = service.create(&unknown());
    let (prints, _) = until_refused(
        &service,
        "203.0.113.5",
        "GET",
        &format!("/p/{}/plan.pdf?paper=none", kept.view),
        b"",
    );
    assert!((20..=40).contains(&prints), "{prints}");
    let contradictory = br#"{"schema_version":1,"footing":{"length_m":-1}}"#;
    let (designs, refused) = until_refused(
        &service,
        "203.0.113.7",
        "POST",
        "/api/v1/design",
        contradictory,
    );
    assert!(designs >= 240, "{designs}");
    assert!(wait(&refused) <= 2);
}

#[test]
fn everybody_is_counted_unless_the_setting_says_otherwise() {
    let begun = |service: &Service, headers: &[(&str, &str)]| {
        (0..25)
            .filter(|_| service.send("POST", "/new", headers, b"").status == 303)
            .count()
    };
    let counted = start_with(Settings {
        uncounted: Some(String::new()),
        ..Settings::default()
    });
    assert_eq!(begun(&counted, &[]), 20, "at this very machine too");
    let exempt = start();
    assert_eq!(begun(&exempt, &[]), 25);
    assert_eq!(
        begun(&exempt, &[("x-forwarded-for", "198.51.100.7")]),
        20,
        "a proxy that is not stated is one client"
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
