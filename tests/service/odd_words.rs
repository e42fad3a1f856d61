//! Words and forms that are meant to be taken for something else.

use stillground_tests::service::{start, unknown};

use crate::attacks::FORM;

#[test]
fn the_name_in_a_cookie_is_shown_as_text() {
    let service = start();
    let kept = service.create(&unknown());
    let sent = "task=inspect&form=f1&revision=1&who=%3Cscript%3Ealert%281%29%3C%2Fscript%3E&note=%3Cimg+src%3Dx+onerror%3Dy%3E";
    let entered = service.send(
        "POST",
        &format!("/p/{}/record", kept.record),
        &[FORM],
        sent.as_bytes(),
    );
    let cookie = entered.header("set-cookie").to_owned();
    assert_eq!(entered.status, 303, "{}", entered.text());
    assert!(
        cookie.starts_with("who=")
            && ["HttpOnly", "SameSite=Lax", "Path=/"]
                .iter()
                .all(|part| cookie.contains(part)),
        "{cookie}"
    );
    let by_hand = [
        "who=<script>alert(1)</script>",
        "who=PHNjcmlwdD4NCnNldC1jb29raWU6eA",
        "who=%ff%fe",
        "who=",
    ]
    .map(str::to_owned);
    for cookie in by_hand.into_iter().chain([
        cookie.split(';').next().unwrap().to_owned(),
        format!("who={}", "a".repeat(8000)),
    ]) {
        for page in ["/record", "/plan", "/card", "/materials"] {
            let answer = service.send(
                "GET",
                &format!("/p/{}{page}", kept.record),
                &[("cookie", &cookie)],
                b"",
            );
            let text = answer.text();
            assert_eq!((answer.status, answer.header("x")), (200, ""), "{cookie}");
            assert!(
                !text.contains("<script>") && !text.contains("<img src=x"),
                "{cookie} on {page}"
            );
        }
    }
}

#[test]
fn an_entry_turns_nothing_around_on_the_page() {
    let service = start();
    let kept = service.create(&unknown());
    let bearer = format!("Bearer {}", kept.record);
    let headers = [
        ("content-type", "application/json"),
        ("authorization", &*bearer),
    ];
    for mark in ["\u{202e}", "\u{2066}", "\u{2028}", "\u{fffe}"] {
        for (who, text, field) in [
            (format!("A{mark}"), "stones".to_owned(), "who"),
            ("A".to_owned(), format!("stones{mark}"), "text"),
        ] {
            let entry = serde_json::json!({ "id": "a", "revision": 1, "task": "dig", "kind": "note", "text": text, "who": who });
            let refused = service.send(
                "POST",
                &kept.path("/entries"),
                &headers,
                entry.to_string().as_bytes(),
            );
            assert_eq!(
                (
                    refused.status,
                    refused.json()["errors"][0]["path"].as_str().unwrap()
                ),
                (422, field),
                "{mark:?}"
            );
        }
    }
    let two = serde_json::json!({ "id": "a", "revision": 1, "task": "dig", "kind": "note", "text": "two\nlines", "who": "\u{627}\u{644}" });
    assert_eq!(
        service
            .send(
                "POST",
                &kept.path("/entries"),
                &headers,
                two.to_string().as_bytes()
            )
            .status,
        201
    );
}

#[test]
fn a_parcel_of_a_form_that_is_odd_is_refused() {
    let service = start();
    let kept = service.create(&unknown());
    let kind = ("content-type", "multipart/form-data; boundary=x");
    let part = |name: &str, text: &str| {
        format!("--x\r\ncontent-disposition: form-data; name=\"{name}\"\r\n\r\n{text}\r\n")
    };
    let head: String = [
        ("form", "q1"),
        ("revision", "1"),
        ("task", "inspect"),
        ("who", "A"),
    ]
    .map(|(name, text)| part(name, text))
    .concat();
    let file = |bytes: &str| {
        let named = "content-disposition: form-data; name=\"photo\"; filename=\"../../x.svg\"";
        format!("{head}--x\r\n{named}\r\ncontent-type: image/png\r\n\r\n{bytes}\r\n--x--")
    };
    let bodies = [
        (
            file("<svg xmlns=\"http://www.w3.org/2000/svg\"><script>alert(1)</script></svg>"),
            422,
        ),
        (file("GIF89a"), 422),
        (file(&"P".repeat(30_000_000)), 413),
        (file("P").trim_end_matches("--x--").to_owned(), 400),
        (part("a", "b").repeat(20_000) + "--x--", 422),
        ("--x\r\n\r\nabc\r\n--x--".to_owned(), 400),
        ("zzz".to_owned(), 400),
    ];
    for (body, status) in bodies {
        let answer = service.send(
            "POST",
            &format!("/p/{}/record/photos", kept.record),
            &[kind],
            body.as_bytes(),
        );
        assert_eq!(
            (answer.status, answer.header("cache-control")),
            (status, "no-store"),
            "{}",
            &body[..body.len().min(300)]
        );
    }
    assert_eq!(
        service.read(&kept, &kept.edit, "/entries").json()["entries"]
            .as_array()
            .unwrap()
            .len(),
        0
    );
    assert_eq!(service.get("/health/ready").status, 200);
}
