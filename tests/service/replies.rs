//! Every answer carries its headers, and an address below a base path works.

use stillground_server::config::Settings;
use stillground_tests::http::raw;
use stillground_tests::service::{start, start_with, unknown};

#[test]
fn every_answer_carries_the_security_headers() {
    let service = start();
    let kept = service.create(&unknown());
    let answers = [
        service.get("/"),
        service.get("/nowhere"),
        service.get("/api/v1/design"),
        service.post_json("/api/v1/design", &unknown()),
        service.read(&kept, &kept.view, ""),
        service.get("/health/live"),
    ];
    for answer in answers {
        let policy = answer.header("content-security-policy");
        assert!(
            policy.contains("default-src 'none'") && policy.contains("frame-ancestors 'none'"),
            "{policy}"
        );
        assert!(!policy.contains("unsafe"), "{policy}");
        assert_eq!(answer.header("referrer-policy"), "same-origin");
        assert_eq!(answer.header("x-content-type-options"), "nosniff");
        assert_eq!(answer.header("cache-control"), "no-store");
        assert!(!answer.header("x-request-id").is_empty());
    }
}

#[test]
fn a_form_of_another_site_is_refused_with_a_page() {
    let service = start();
    let form = [
        ("content-type", "application/x-www-form-urlencoded"),
        ("sec-fetch-site", "cross-site"),
    ];
    let answer = service.send("POST", "/new", &form, b"a=b");
    assert_eq!(answer.status, 403);
    assert!(answer.header("content-type").starts_with("text/html"));
    assert_ne!(service.send("POST", "/new", &form[..1], b"a=b").status, 403);
}

#[test]
fn the_service_says_whether_it_lives_and_can_work() {
    let service = start();
    assert_eq!(service.get("/health/live").json()["status"], "live");
    assert_eq!(service.get("/health/ready").json()["status"], "ready");
}

#[test]
fn assets_are_kept_for_ever_under_their_edition_and_asked_about_without_it() {
    let service = start();
    let link = stillground_server::assets::link("", "font/text-regular.woff2");
    let asset = service.get(&link);
    assert_eq!(
        (asset.status, asset.header("content-type")),
        (200, "font/woff2")
    );
    assert!(asset.header("cache-control").contains("immutable"));
    let plain = service.get("/static/font/text-regular.woff2");
    assert_eq!(
        (plain.status, plain.header("cache-control")),
        (200, "public, no-cache")
    );
    let again = service.send(
        "GET",
        &link,
        &[("if-none-match", asset.header("etag"))],
        b"",
    );
    assert_eq!((again.status, again.body.len()), (304, 0));
    let old = service.get("/static/000000000000/font/text-regular.woff2");
    assert_eq!(
        (old.status, old.header("cache-control")),
        (200, "public, no-cache")
    );
    assert_eq!(service.get("/static/nothing.css").status, 404);
    assert_eq!(service.get("/static/").status, 404);
}

#[test]
fn a_base_path_is_before_every_address_and_may_be_taken_off_by_a_proxy() {
    let service = start_with(Settings {
        base_path: Some("/planner/".to_owned()),
        ..Settings::default()
    });
    assert!(
        service.address.ends_with("/planner/"),
        "{}",
        service.address
    );
    let made = service.post_json("/planner/api/v1/plans", &unknown());
    assert_eq!(made.status, 201);
    assert!(
        made.header("location")
            .starts_with("/planner/api/v1/plans/")
    );
    assert_eq!(service.get("/planner/health/live").status, 200);
    assert_eq!(service.get("/health/live").status, 200);
    assert_eq!(service.get("/plannerhealth/live").status, 404);
    let refused = service.get("/planner/api/v1/design");
    assert_eq!(
        (refused.status, refused.header("content-type")),
        (405, "application/problem+json")
    );
    assert_eq!(
        service.get("/planner/").status,
        service.get("/planner").status
    );
}

#[test]
fn a_head_request_is_answered_without_a_body() {
    let service = start();
    let answer = raw(
        service.socket,
        b"HEAD /health/live HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n",
    );
    assert_eq!((answer.status, answer.body.len()), (200, 0));
}
