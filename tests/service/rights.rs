//! What each link lets its holder do is one table; here every cell of it is tried, on pages and through the interface.

use serde_json::json;
use stillground_server::store::{Deed, Right};
use stillground_tests::service::{Kept, Service, start, titled};

/// One way to do a deed.
struct Way {
    deed: Deed,
    method: &'static str,
    /// Below the plan: on the pages where it begins with a slash, else through the interface.
    path: &'static str,
    body: &'static str,
}

const fn way(deed: Deed, method: &'static str, path: &'static str, body: &'static str) -> Way {
    Way {
        deed,
        method,
        path,
        body,
    }
}

const DONE: &str =
    r#"{"id":"ID","revision":1,"task":"dig","kind":"note","text":"dry","who":"A helper"}"#;

/// Every way to do every deed. Those that change the links stand last.
const WAYS: [Way; 42] = [
    way(Deed::Read, "GET", "/plan", ""),
    way(Deed::Read, "GET", "/plan/order", ""),
    way(Deed::Read, "GET", "/ways", ""),
    way(Deed::Read, "POST", "/beside", "link=none"),
    way(Deed::Read, "GET", "/site", ""),
    way(Deed::Read, "GET", "/record", ""),
    way(Deed::Read, "GET", "/commissioning", ""),
    way(Deed::Read, "GET", "/measure/knock", ""),
    way(Deed::Read, "GET", "/measure/level", ""),
    way(Deed::Read, "GET", "/found", ""),
    way(Deed::Read, "GET", "/materials", ""),
    way(Deed::Read, "GET", "/materials.csv", ""),
    way(Deed::Read, "GET", "/plan.pdf", ""),
    way(Deed::Read, "GET", "/file.pdf", ""),
    way(Deed::Read, "GET", "api:", ""),
    way(Deed::Read, "GET", "api:/design", ""),
    way(Deed::Read, "GET", "api:/entries", ""),
    way(Deed::Read, "GET", "api:/photos", ""),
    way(Deed::Read, "GET", "api:/materials.csv", ""),
    way(Deed::Read, "GET", "api:/drawings/section.svg", ""),
    way(Deed::Record, "POST", "api:/entries", DONE),
    way(Deed::Record, "POST", "/record", "task=dig&who=A"),
    way(Deed::Record, "POST", "/measure/pull", "what=pull&base=1"),
    way(Deed::ReadRevisions, "GET", "/revisions", ""),
    way(Deed::ReadRevisions, "GET", "/ways?with=1", ""),
    way(Deed::ReadRevisions, "GET", "api:/revisions", ""),
    way(Deed::ReadRevisions, "GET", "api:/revisions/1", ""),
    way(Deed::Change, "GET", "/prices", ""),
    way(Deed::Change, "POST", "/prices", ""),
    way(Deed::Change, "POST", "/commissioning", "what=none&base=1"),
    way(
        Deed::Change,
        "POST",
        "/commissioning",
        "what=take&base=1&entry=none",
    ),
    way(Deed::Change, "POST", "/remedy", "remedy=none&base=1"),
    way(Deed::Change, "POST", "/ways", "way=none&base=1"),
    way(Deed::Change, "POST", "/found", "entry=none&base=1"),
    way(Deed::Change, "POST", "/improve", "change=none&base=1"),
    way(Deed::Change, "GET", "/short/ground", ""),
    way(Deed::Change, "POST", "/short/ground", "base=1"),
    way(Deed::Change, "POST", "/revisions", "number=1"),
    way(Deed::Change, "PUT", "api:", r#"{"schema_version":1}"#),
    way(Deed::Share, "GET", "/links", ""),
    way(Deed::Share, "GET", "api:/links", ""),
    way(Deed::Share, "POST", "api:/recovery", ""),
];

fn go(service: &Service, kept: &Kept, secret: &str, way: &Way, number: usize) -> u16 {
    let bearer = format!("Bearer {secret}");
    match way.path.strip_prefix("api:") {
        Some(below) => {
            let headers = [
                ("authorization", bearer.as_str()),
                ("content-type", "application/json"),
                ("if-match", "\"1\""),
            ];
            let body = way.body.replace("ID", &format!("n{number}"));
            service
                .send(way.method, &kept.path(below), &headers, body.as_bytes())
                .status
        }
        None => {
            let form = [("content-type", "application/x-www-form-urlencoded")];
            let path = format!("/p/{secret}{}", way.path);
            service
                .send(way.method, &path, &form, way.body.as_bytes())
                .status
        }
    }
}

#[test]
fn every_cell_of_the_table_of_rights_holds_on_pages_and_through_the_interface() {
    let service = start();
    let mut tried = 0;
    for right in Right::ALL {
        let kept = service.create(&titled("rights"));
        let secret = match right {
            Right::Edit => &kept.edit,
            Right::Record => &kept.record,
            Right::View => &kept.view,
        };
        for (number, way) in WAYS.iter().enumerate() {
            let status = go(&service, &kept, secret, way, number);
            let refused = status == 403;
            assert_eq!(
                refused,
                !right.may(way.deed),
                "{} {} with the {} link: {status}",
                way.method,
                way.path,
                right.key()
            );
            assert!(refused || status < 500, "{}: {status}", way.path);
            tried += 1;
        }
    }
    assert_eq!(tried, 3 * WAYS.len());
}

#[test]
fn a_view_link_shows_no_price_anywhere() {
    let service = start();
    let mut plan = titled("priced");
    plan["prices"] = json!({ "currency": "EUR", "lines": { "concrete-ready": { "price": 147.25, "per": "m³" } } });
    let kept = service.create(&plan);
    for (secret, shown) in [
        (&kept.edit, true),
        (&kept.record, true),
        (&kept.view, false),
    ] {
        for below in ["", "/design", "/materials.csv"] {
            let text = service.read(&kept, secret, below).text();
            assert_eq!(text.contains("147.25"), shown, "{below}: {text}");
        }
        for page in ["/materials", "/materials.csv"] {
            let text = service.get(&format!("/p/{secret}{page}")).text();
            assert_eq!(text.contains("147.25"), shown, "{page}");
        }
    }
}

#[test]
fn a_long_list_of_revisions_is_read_a_hundred_at_a_time() {
    let service = start();
    let kept = service.create(&titled("1"));
    for number in 1..=120 {
        let saved = service.replace(&kept, number, &titled(&format!("{}", number + 1)));
        assert_eq!(saved.status, 200);
    }
    let first = service.read(&kept, &kept.edit, "/revisions").json();
    assert_eq!(first["revisions"].as_array().unwrap().len(), 100);
    assert_eq!(
        (&first["revisions"][0]["revision"], &first["next"]),
        (&json!(121), &json!(22))
    );
    let second = service
        .read(&kept, &kept.edit, "/revisions?below=22")
        .json();
    assert_eq!(second["revisions"].as_array().unwrap().len(), 21);
    assert_eq!(second["next"], json!(null));
    let page = service.get(&format!("/p/{}/revisions", kept.edit)).text();
    assert!(
        page.contains("revisions?below=22"),
        "there is a way to the older ones"
    );
    let bad = service.read(&kept, &kept.edit, "/revisions?below=x");
    assert_eq!(bad.status, 400);
}
