//! The order from outside: ticks that every link sees, prices and totals on every sheet, and what is no price.

use serde_json::{Value, json};
use stillground_tests::http::Answer;
use stillground_tests::service::{Kept, Service, start, unknown};

pub(crate) fn form(service: &Service, path: &str, pairs: &[(&str, &str)]) -> Answer {
    let encode = |text: &str| {
        text.bytes()
            .map(|b| format!("%{b:02x}"))
            .collect::<String>()
    };
    let body: Vec<String> = pairs
        .iter()
        .map(|(name, text)| format!("{}={}", encode(name), encode(text)))
        .collect();
    service.send(
        "POST",
        path,
        &[("content-type", "application/x-www-form-urlencoded")],
        body.join("&").as_bytes(),
    )
}

fn tick(service: &Service, secret: &str, pairs: &[(&str, &str)]) -> Answer {
    let head = [("form", "f1"), ("revision", "1"), ("who", "A. Helper")];
    form(
        service,
        &format!("/p/{secret}/materials"),
        &[&head[..], pairs].concat(),
    )
}

pub(crate) fn page(service: &Service, secret: &str) -> String {
    let page = service.get(&format!("/p/{secret}/materials"));
    assert_eq!(page.status, 200, "{}", page.text());
    page.text()
}

fn is_ticked(page: &str, line: &str) -> bool {
    let from = page.split(&format!("id=\"line-{line}\"")).nth(1).unwrap();
    from.split('>').next().unwrap().contains("checked")
}

fn here(service: &Service, kept: &Kept) -> Vec<String> {
    let entries = service.read(kept, &kept.view, "/entries").json();
    entries["materials"]
        .as_object()
        .unwrap()
        .keys()
        .cloned()
        .collect()
}

#[test]
fn what_one_telephone_ticks_stands_on_every_other() {
    let service = start();
    let kept = service.create(&unknown());
    for _ in 0..2 {
        let answer = tick(
            &service,
            &kept.record,
            &[("here~stud", "yes"), ("here~tube", "yes")],
        );
        assert_eq!(
            (
                answer.status,
                answer.header("location").ends_with("/materials?kept=2")
            ),
            (303, true),
            "{}",
            answer.text()
        );
    }
    for secret in [&kept.edit, &kept.record, &kept.view] {
        let page = page(&service, secret);
        assert!(is_ticked(&page, "stud") && is_ticked(&page, "tube") && !is_ticked(&page, "nut"));
        assert!(
            page.contains("<bdi>A. Helper, 20") && page.contains("2 of "),
            "who and when"
        );
    }
    assert_eq!(here(&service, &kept), ["stud", "tube"]);
    let log = service.get(&format!("/p/{}/record", kept.edit)).text();
    assert!(
        log.contains("there: Stud M16") && log.matches("there: Stud M16").count() == 1,
        "kept once, though sent twice"
    );
    let gone = tick(
        &service,
        &kept.edit,
        &[
            ("was~stud", "yes"),
            ("was~tube", "yes"),
            ("here~tube", "yes"),
            ("form", "f1"),
        ],
    );
    assert_eq!(gone.status, 303);
    assert_eq!(here(&service, &kept), ["tube"]);
}

#[test]
fn a_page_that_did_not_know_of_a_tick_does_not_take_it_back() {
    let service = start();
    let kept = service.create(&unknown());
    assert_eq!(
        tick(&service, &kept.record, &[("here~stud", "yes")]).status,
        303
    );
    let second = [("here~nut", "yes"), ("here~stud", "yes")];
    let answer = form(
        &service,
        &format!("/p/{}/materials", kept.record),
        &[
            &[("form", "f2"), ("revision", "1"), ("who", "B. Driver")],
            &second[..],
        ]
        .concat(),
    );
    assert!(
        answer.header("location").ends_with("kept=1"),
        "the stud was there already: {}",
        answer.header("location")
    );
    assert_eq!(here(&service, &kept), ["nut", "stud"]);
    assert!(page(&service, &kept.view).contains("<bdi>A. Helper, 20"));
}

#[test]
fn a_tick_needs_a_name_a_link_that_records_and_a_line_of_the_plan() {
    let service = start();
    let kept = service.create(&unknown());
    let nameless = form(
        &service,
        &format!("/p/{}/materials", kept.record),
        &[("form", "f"), ("revision", "1"), ("here~stud", "yes")],
    );
    assert_eq!(nameless.status, 422);
    assert!(is_ticked(&nameless.text(), "stud") && nameless.text().contains("Say who enters this"));
    assert_eq!(
        tick(&service, &kept.view, &[("here~stud", "yes")]).status,
        403
    );
    assert_eq!(
        tick(&service, &kept.record, &[("here~fill-sand", "yes")]).status,
        422,
        "this plan fills nothing with sand"
    );
    let bearer = format!("Bearer {}", kept.record);
    let headers = [
        ("content-type", "application/json"),
        ("authorization", &*bearer),
    ];
    let entry = |item: &str, kind: &str| json!({ "id": format!("x.{item}"), "revision": 1, "task": "order", "kind": kind, "item": item, "who": "A" });
    let send = |entry: Value| {
        service.send(
            "POST",
            &kept.path("/entries"),
            &headers,
            entry.to_string().as_bytes(),
        )
    };
    let refused = send(entry("gold", "here"));
    assert_eq!(
        (
            refused.status,
            refused.json()["errors"][0]["path"].as_str().unwrap()
        ),
        (422, "item")
    );
    assert_eq!(send(entry("nut", "here")).status, 201);
    assert_eq!(here(&service, &kept), ["nut"]);
}

#[test]
fn what_came_before_the_plan_was_changed_is_to_be_looked_at_again() {
    let service = start();
    let kept = service.create(&unknown());
    assert_eq!(
        tick(&service, &kept.record, &[("here~nut", "yes")]).status,
        303
    );
    let mut plan = unknown();
    plan["units"] = json!("imperial");
    plan["stock"] = json!("metric");
    assert_eq!(service.replace(&kept, 1, &plan).status, 200);
    assert!(
        !page(&service, &kept.record).contains("Look again:"),
        "other units are no other thing"
    );
    plan["anchors"] = json!({ "size": "M20" });
    assert_eq!(service.replace(&kept, 2, &plan).status, 200);
    let page = page(&service, &kept.record);
    assert!(
        is_ticked(&page, "nut") && page.contains("Look again:") && page.contains("<bdi>Nut M16"),
        "{page}"
    );
}

#[test]
fn the_example_is_ticked_on_paper_only() {
    let service = start();
    let page = service.get("/example/materials");
    assert_eq!(page.status, 200);
    let text = page.text();
    assert!(
        text.contains("they are not kept")
            && !text.contains("Save ticks")
            && !text.contains("disabled")
    );
    assert_eq!(
        form(&service, "/example/materials", &[("here~stud", "yes")]).status,
        405
    );
}
