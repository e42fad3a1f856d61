//! Whatever is sent, the answer is clear: problem details with the field's path, never a broken line or a fault.

use serde_json::{Value, json};
use stillground_tests::http::{Answer, raw};
use stillground_tests::service::{Service, start, unknown};

fn design(service: &Service, body: &str) -> Answer {
    service.send(
        "POST",
        "/api/v1/design",
        &[("content-type", "application/json")],
        body.as_bytes(),
    )
}

fn problem(answer: &Answer, status: u16) -> Value {
    assert_eq!(answer.status, status, "{}", answer.text());
    assert_eq!(answer.header("content-type"), "application/problem+json");
    let problem = answer.json();
    assert_eq!(problem["status"], status);
    assert!(
        problem["title"].is_string() && problem["detail"].as_str().unwrap().len() > 10,
        "{problem}"
    );
    problem
}

#[test]
fn a_body_that_is_no_json_is_said_to_be_none() {
    let service = start();
    for body in [
        "",
        "{",
        "not json",
        "{\"schema_version\":1,}",
        "{\"schema_version\":NaN}",
        "{\"schema_version\":1} trailing",
        "\u{0}",
    ] {
        assert_eq!(
            problem(&design(&service, body), 400)["code"],
            "not_json",
            "{body}"
        );
    }
    let not_text = service.send(
        "POST",
        "/api/v1/design",
        &[("content-type", "application/json")],
        b"{\"title\":\"\xff\xfe\"}",
    );
    problem(&not_text, 400);
}

#[test]
fn an_unknown_field_is_refused_with_its_path() {
    let service = start();
    for (body, path) in [
        (json!({ "schema_version": 1, "colour": "red" }), "colour"),
        (
            json!({ "schema_version": 1, "site": { "soul": "clay" } }),
            "site.soul",
        ),
        (
            json!({ "schema_version": 1, "floor": { "stands": [{ "name": "a", "x_m": 1, "y_m": 1, "mass_kg": 80, "hat": 1 }] } }),
            "floor.stands[0].hat",
        ),
    ] {
        let problem = problem(&service.post_json("/api/v1/design", &body), 422);
        assert_eq!(problem["errors"][0]["path"], path);
    }
}

#[test]
fn an_answer_of_the_wrong_kind_is_refused_with_its_path() {
    let service = start();
    for (body, path) in [
        (
            json!({ "schema_version": 1, "site": { "soil": "custard" } }),
            "site.soil",
        ),
        (
            json!({ "schema_version": 1, "block": { "depth_m": "deep" } }),
            "block.depth_m",
        ),
        (
            json!({ "schema_version": 1, "anchors": { "count": -4 } }),
            "anchors.count",
        ),
        (
            json!({ "schema_version": 1, "anchors": { "count": 4.5 } }),
            "anchors.count",
        ),
        (
            json!({ "schema_version": 1, "floor": { "walk": [[1, 2], [3]] } }),
            "floor.walk[1]",
        ),
        (json!({ "schema_version": 1, "site": 3 }), "site"),
    ] {
        let problem = problem(&service.post_json("/api/v1/design", &body), 422);
        assert_eq!(problem["errors"][0]["path"], path, "{problem}");
    }
    for body in ["null", "3", "[]", "\"plan\"", "{}"] {
        problem(&design(&service, body), 422);
    }
}

#[test]
fn answers_without_their_names_are_refused() {
    let service = start();
    for (body, path) in [
        (json!([1]), ""),
        (json!({ "schema_version": 1, "work": [null, null] }), "work"),
        (
            json!({ "schema_version": 1, "floor": { "stands": [["a", 1, 1, 80]] } }),
            "floor.stands[0]",
        ),
    ] {
        let problem = problem(&service.post_json("/api/v1/design", &body), 422);
        assert_eq!(problem["errors"][0]["path"], path, "{problem}");
    }
    assert_eq!(
        service
            .post_json(
                "/api/v1/design",
                &json!({ "schema_version": 1, "floor": { "walk": [[1, 2], [3, 4]] } })
            )
            .status,
        200
    );
}

#[test]
fn a_number_out_of_range_is_named_with_its_value_and_range() {
    let service = start();
    let body = json!({ "schema_version": 1, "block": { "depth_m": 1e308, "length_m": -1 } });
    let problem = problem(&service.post_json("/api/v1/design", &body), 422);
    let errors = problem["errors"].as_array().unwrap();
    assert_eq!(errors.len(), 2, "{problem}");
    let depth = errors
        .iter()
        .find(|error| error["path"] == "block.depth_m")
        .unwrap();
    assert_eq!(depth["value"], 1e308);
    assert!(depth["range"]["least"].as_f64() < depth["range"]["most"].as_f64());
    assert_eq!(depth["range"]["unit"], "m");
}

#[test]
fn a_number_beyond_what_a_computer_holds_is_refused() {
    let service = start();
    for number in ["1e999", "-1e999", &"9".repeat(400)] {
        problem(
            &design(
                &service,
                &format!("{{\"schema_version\":1,\"block\":{{\"depth_m\":{number}}}}}"),
            ),
            400,
        );
    }
    assert_eq!(
        design(
            &service,
            "{\"schema_version\":1,\"block\":{\"depth_m\":1e-999}}"
        )
        .status,
        422
    );
}

#[test]
fn a_body_nested_a_thousand_deep_is_refused() {
    let service = start();
    for open in ["[", "{\"a\":"] {
        let status = design(&service, &open.repeat(1000)).status;
        assert!(matches!(status, 400 | 422), "{status}");
    }
    let status = design(
        &service,
        &format!("{{\"schema_version\":1,\"title\":{}", "[".repeat(100_000)),
    )
    .status;
    assert!(matches!(status, 400 | 422), "{status}");
}

#[test]
fn a_body_that_is_too_large_is_refused_and_its_sender_hears_why() {
    let service = start();
    for size in [1024 * 1024 + 1, 50 * 1024 * 1024] {
        let answer = service.send(
            "POST",
            "/api/v1/design",
            &[("content-type", "application/json")],
            &vec![b' '; size],
        );
        assert_eq!(problem(&answer, 413)["code"], "too_large");
    }
    let head = format!(
        "POST /api/v1/design HTTP/1.1\r\nhost: x\r\nconnection: close\r\ncontent-type: application/json\r\nexpect: 100-continue\r\ncontent-length: {}\r\n\r\n",
        1_u64 << 40
    );
    problem(&raw(service.socket, head.as_bytes()), 413);
    assert_eq!(service.post_json("/api/v1/design", &unknown()).status, 200);
}

#[test]
fn a_plan_of_another_media_type_is_refused() {
    let service = start();
    for kind in [
        "text/plain",
        "application/x-www-form-urlencoded",
        "multipart/form-data",
        "",
    ] {
        let answer = service.send(
            "POST",
            "/api/v1/design",
            &[("content-type", kind)],
            unknown().to_string().as_bytes(),
        );
        problem(&answer, 415);
    }
    problem(&service.send("POST", "/api/v1/design", &[], b"{}"), 415);
    let spelled_out = service.send(
        "POST",
        "/api/v1/design",
        &[("content-type", "Application/JSON; charset=utf-8")],
        unknown().to_string().as_bytes(),
    );
    assert_eq!(spelled_out.status, 200);
}

#[test]
fn a_wrong_method_or_address_is_answered_in_the_readers_form() {
    let service = start();
    problem(&service.get("/api/v1/design"), 405);
    assert_eq!(service.get("/api/v1/design").header("allow"), "POST");
    problem(&service.send("DELETE", "/api/v1/plans", &[], b""), 405);
    problem(&service.get("/api/v1/nowhere"), 404);
    for path in [
        "/nowhere",
        "/p/x/y/z/%00",
        "/%ff",
        "/static/../Cargo.toml",
        "/static/%2e%2e/Cargo.toml",
        "/?a=%ff",
    ] {
        let answer = service.get(path);
        assert!(
            answer.header("content-type").starts_with("text/html"),
            "{path}: {}",
            answer.text()
        );
        assert!(!answer.text().contains("[workspace]"));
    }
}

#[test]
fn lines_that_are_no_http_do_no_harm() {
    let service = start();
    for bytes in [
        &b"\x16\x03\x01\x02\x00"[..],
        b"GET\r\n\r\n",
        b"GET / HTTP/9.9\r\n\r\n",
        b"\r\n\r\n\r\n\r\n",
    ] {
        let mut line = std::net::TcpStream::connect(service.socket).unwrap();
        std::io::Write::write_all(&mut line, bytes).unwrap();
    }
    let long = format!(
        "GET /{} HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n",
        "a".repeat(70_000)
    );
    assert!(raw(service.socket, long.as_bytes()).status >= 400);
    assert_eq!(service.post_json("/api/v1/design", &unknown()).status, 200);
}

#[test]
fn what_was_refused_was_not_kept() {
    let service = start();
    let body = json!({ "schema_version": 1, "block": { "depth_m": 99 } });
    problem(&service.post_json("/api/v1/plans", &body), 422);
    let kept = service.create(&unknown());
    problem(&service.replace(&kept, 1, &body), 422);
    assert_eq!(service.read(&kept, &kept.edit, "").header("etag"), "\"1\"");
}

#[test]
fn a_path_that_is_no_header_text_is_a_plain_refusal() {
    let service = start();
    let kept = service.create(&unknown());
    let answer = service.send(
        "GET",
        &kept.path(""),
        &[("authorization", "Bearer \u{fc}")],
        b"",
    );
    assert!(matches!(answer.status, 401 | 404), "{}", answer.status);
}
