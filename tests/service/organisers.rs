//! Several organisers: each with a password of their own, or let in by a proxy that is stated.

use std::fs;
use std::path::Path;

use stillground_server::config::Settings;
use stillground_tests::http::Answer;
use stillground_tests::service::{Service, start_with, titled};

use crate::attacks::FORM;

const ANN: &str = "a long word of Ann's own";
const BEN: &str = "a long word of Ben's own";

fn with_passwords(folder: &Path, lines: &str) -> Service {
    let file = folder.join("passwords");
    fs::write(&file, lines).unwrap();
    start_with(Settings {
        data: Some(folder.join("data")),
        organiser_token_file: Some(file),
        ..Settings::default()
    })
}

/// Goes in, and what the browser then has; none when the door stays shut.
fn session(service: &Service, password: &str) -> Option<String> {
    let body = format!("password={}", password.replace(' ', "+"));
    let entered = service.send("POST", "/organiser/in", &[FORM], body.as_bytes());
    let cookie = entered
        .header("set-cookie")
        .split(';')
        .next()
        .unwrap_or_default();
    (entered.status == 303).then(|| cookie.to_owned())
}

fn is_inside(service: &Service, session: &str) -> bool {
    let page = service.send("GET", "/organiser", &[("cookie", session)], b"");
    page.text().contains("All plans")
}

#[test]
fn a_line_taken_out_ends_the_sessions_that_it_opened_and_no_others() {
    let folder = tempfile::tempdir().unwrap();
    let both = format!("ann: {ANN}\nben: {BEN}\n");
    let service = with_passwords(folder.path(), &both);
    let (ann, ben) = (
        session(&service, ANN).unwrap(),
        session(&service, BEN).unwrap(),
    );
    assert!(is_inside(&service, &ann) && is_inside(&service, &ben));
    assert!(session(&service, "ann").is_none());
    assert!(session(&service, &format!("ann: {ANN}")).is_none());
    drop(service);
    let service = with_passwords(
        folder.path(),
        &format!("# ann left\nben: {BEN}\ncid: another long word\n"),
    );
    assert!(!is_inside(&service, &ann), "hers went with her line");
    assert!(is_inside(&service, &ben), "his stays");
    assert!(session(&service, ANN).is_none() && session(&service, BEN).is_some());
    drop(service);
    let service = with_passwords(
        folder.path(),
        &format!("ben: {BEN} anew\ncid: another long word\n"),
    );
    assert!(
        !is_inside(&service, &ben),
        "another password is another line"
    );
}

/// A planner behind a stated proxy at 127.0.0.1 that lets organisers in by `Remote-User`.
fn behind(proxies: &str) -> Service {
    start_with(Settings {
        trusted_proxies: Some(proxies.to_owned()),
        organiser_header: Some("Remote-User".to_owned()),
        organisers: Some("ann,ben".to_owned()),
        ..Settings::default()
    })
}

fn shelf(service: &Service, headers: &[(&str, &str)]) -> Answer {
    service.send("GET", "/organiser", headers, b"")
}

#[test]
fn whom_a_stated_proxy_names_is_an_organiser_and_nobody_else() {
    let service = behind("127.0.0.1");
    let is_open = |headers: &[(&str, &str)]| shelf(&service, headers).text().contains("All plans");
    assert!(is_open(&[("remote-user", "ann")]));
    assert!(!is_open(&[]));
    for other in ["cid", "", "Ann", "ann,ben", "ann ben"] {
        assert!(!is_open(&[("remote-user", other)]), "{other}");
    }
    assert!(
        !is_open(&[("remote-user", "ann"), ("remote-user", "ben")]),
        "the proxy's line and a visitor's own"
    );
    assert!(
        !shelf(&service, &[]).text().contains("type=\"password\""),
        "there is no password to try"
    );
    let stranger = behind("192.0.2.1");
    assert!(
        !shelf(&stranger, &[("remote-user", "ann")])
            .text()
            .contains("All plans"),
        "who is no stated proxy is not believed"
    );
}

#[test]
fn a_browser_that_a_proxy_let_in_sends_no_form_of_another_site() {
    let service = behind("127.0.0.1");
    let kept = service.create(&titled("Hollow Oak"));
    let body = format!("id={}&do=remove", kept.id);
    let change = |more: &[(&str, &str)]| {
        let mut headers = vec![FORM, ("remote-user", "ann")];
        headers.extend(more);
        service
            .send("POST", "/organiser/plan", &headers, body.as_bytes())
            .status
    };
    assert_eq!(change(&[]), 403, "it does not say where it comes from");
    assert_eq!(change(&[("origin", "http://evil.example")]), 403);
    assert_eq!(change(&[("sec-fetch-site", "cross-site")]), 403);
    assert_eq!(service.read(&kept, &kept.view, "").status, 200);
    assert_eq!(change(&[("sec-fetch-site", "same-origin")]), 303);
    assert_eq!(service.read(&kept, &kept.view, "").status, 404);
}

#[test]
fn a_proxys_word_needs_a_stated_proxy_and_stated_names() {
    let folder = tempfile::tempdir().unwrap();
    for (flags, named) in [
        (
            &["--organiser-header", "Remote-User", "--organisers", "ann"][..],
            "STILLGROUND_TRUSTED_PROXIES",
        ),
        (
            &[
                "--organiser-header",
                "Remote-User",
                "--trusted-proxies",
                "127.0.0.1",
            ],
            "STILLGROUND_ORGANISERS",
        ),
        (&["--organisers", "ann"], "STILLGROUND_ORGANISER_HEADER"),
        (
            &[
                "--organiser-header",
                "Cookie",
                "--organisers",
                "ann",
                "--trusted-proxies",
                "127.0.0.1",
            ],
            "STILLGROUND_ORGANISER_HEADER",
        ),
    ] {
        let words: Vec<&str> = ["serve"].into_iter().chain(flags.iter().copied()).collect();
        let refused = stillground_tests::binary::run(folder.path(), &words);
        let said = String::from_utf8_lossy(&refused.stderr).into_owned();
        assert_eq!(refused.status.code(), Some(2), "{flags:?}: {said}");
        assert!(said.contains(named), "{flags:?}: {said}");
    }
}
