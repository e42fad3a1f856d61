//! The order from outside: ticks that every link sees, prices and totals on every sheet, and what is no price.

use std::process::Command;

use serde_json::{Value, json};
use stillground_tests::http::Answer;
use stillground_tests::service::{Kept, Service, start, titled, unknown};

fn form(service: &Service, path: &str, pairs: &[(&str, &str)]) -> Answer {
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

fn page(service: &Service, secret: &str) -> String {
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

const PRICES: [(&str, &str); 5] = [
    ("currency", "EUR"),
    ("price~nut", "0,40"),
    ("price~concrete-ready", "145.50"),
    ("per~concrete-ready", "m³"),
    ("price~stud-rod-2m", "17.5"),
];

fn pdf_text(pdf: &[u8]) -> String {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("plan.pdf");
    std::fs::write(&file, pdf).unwrap();
    let output = Command::new("pdftotext")
        .arg("-layout")
        .arg(&file)
        .arg("-")
        .output()
        .unwrap();
    String::from_utf8_lossy(&output.stdout).into_owned()
}

#[test]
fn prices_and_totals_stand_on_the_page_in_the_table_on_the_sheets_and_in_the_design() {
    let service = start();
    let mut plan = unknown();
    plan["block"] = json!({ "mix": "ready" });
    let kept = service.create(&plan);
    assert!(
        !page(&service, &kept.edit).contains("So far"),
        "without prices nothing is said of money"
    );
    let saved = form(&service, &format!("/p/{}/prices", kept.edit), &PRICES);
    assert_eq!(saved.status, 303, "{}", saved.text());
    let design = service.read(&kept, &kept.view, "/design").json();
    let costs = &design["costs"];
    let of = |id: &str| {
        costs["lines"]
            .as_array()
            .unwrap()
            .iter()
            .find(|line| line["id"] == id)
            .unwrap()
            .clone()
    };
    let cents = |value: &Value| (value.as_f64().unwrap() * 100.0).round();
    assert_eq!(
        (of("nut")["total"].clone(), of("stud")["counted"].clone()),
        (json!(5.6), json!("stud-rod-2m"))
    );
    let sum: f64 = costs["lines"]
        .as_array()
        .unwrap()
        .iter()
        .map(|line| cents(&line["total"]))
        .sum();
    assert!((sum - cents(&costs["total"])).abs() < 0.5);
    let total = format!("{:.2}\u{a0}EUR", costs["total"].as_f64().unwrap());
    for (secret, below) in [
        (&kept.view, "materials"),
        (&kept.record, "materials"),
        (&kept.view, "plan"),
    ] {
        let text = service.get(&format!("/p/{secret}/{below}")).text();
        assert!(
            text.contains(&total) && text.contains("have no price, so this is the total so far"),
            "{below} without {total}"
        );
    }
    assert!(page(&service, &kept.view).contains("14 × 0.40\u{a0}EUR each"));
    let table = service
        .get(&format!("/p/{}/materials.csv", kept.view))
        .text();
    assert!(
        table.contains(",nut,nut,14.00,pcs,0.40,5.60,EUR,,\r\n"),
        "{table}"
    );
    let sheets = pdf_text(&service.get(&format!("/p/{}/plan.pdf", kept.view)).body);
    assert!(sheets.contains("Without a price:") && sheets.contains("(hire)"));
    assert!(
        sheets.contains("What it comes to")
            && sheets
                .replace('\u{a0}', " ")
                .contains(&total.replace('\u{a0}', " "))
    );
    assert!(
        service
            .get(&format!("/p/{}/plan?rev=1", kept.view))
            .text()
            .contains("Prices that changed")
    );
}

#[test]
fn only_the_edit_link_enters_prices_and_two_who_do_lose_nothing() {
    let service = start();
    let kept = service.create(&titled("Hollow Oak"));
    for secret in [&kept.record, &kept.view] {
        assert_eq!(service.get(&format!("/p/{secret}/prices")).status, 403);
        assert_eq!(
            form(&service, &format!("/p/{secret}/prices"), &PRICES).status,
            403
        );
        assert!(!page(&service, secret).contains("/prices\""));
    }
    let path = format!("/p/{}/prices", kept.edit);
    assert_eq!(
        form(&service, &path, &[("price~nut", "0.4"), ("price~stud", "")]).status,
        303
    );
    assert_eq!(
        form(&service, &path, &[("price~nut", ""), ("price~stud", "3")]).status,
        303
    );
    let plan = service.read(&kept, &kept.edit, "").json();
    assert_eq!(
        (
            &plan["prices"]["lines"]["nut"]["price"],
            &plan["prices"]["lines"]["stud"]["price"]
        ),
        (&json!(0.4), &json!(3.0))
    );
    assert!(
        plan["prices"]["lines"]["nut"]["item"]
            .as_str()
            .unwrap()
            .starts_with("Nut M16")
    );
    let both = form(&service, &path, &[("price~nut", "0.5")]);
    assert!(
        both.status == 422
            && both
                .text()
                .contains("Somebody else wrote 0.40 each here meanwhile"),
        "{}",
        both.text()
    );
    assert_eq!(
        form(
            &service,
            &path,
            &[
                ("price~nut", "0.5"),
                ("was~nut", "0.40"),
                ("was-per~nut", "pcs")
            ]
        )
        .status,
        303
    );
    assert_eq!(
        service.read(&kept, &kept.edit, "").json()["title"],
        "Hollow Oak"
    );
}

#[test]
fn what_is_no_price_is_said_at_its_box_and_nothing_is_kept() {
    let service = start();
    let kept = service.create(&unknown());
    let path = format!("/p/{}/prices", kept.edit);
    let long = "E".repeat(500);
    let before = service.read(&kept, &kept.edit, "").text();
    for (name, text, said) in [
        ("price~nut", "-5", "outside the range of 0 to"),
        ("price~nut", "1000000000000", "outside the range of 0 to"),
        ("price~nut", "1e12", "is not a price"),
        ("price~nut", "NaN", "is not a price"),
        ("price~nut", "<b>free</b>", "is not a price"),
        ("price~nut", "1,234", "in two ways"),
        ("price~nut", "0.00001", "four decimals"),
        ("currency", "=CMD(1)", "1 to 12 letters"),
        ("currency", "+EUR", "1 to 12 letters"),
        ("currency", &long, "This is 500 characters long"),
        ("currency", "E\u{202e}R", "1 to 12 letters"),
    ] {
        let answer = form(&service, &path, &[(name, text), ("price~stud", "3")]);
        let page = answer.text();
        assert_eq!(answer.status, 422, "{name}={text}");
        let field = page
            .split(&format!("id=\"{name}\""))
            .next()
            .unwrap()
            .rsplit("<div class=\"field")
            .next()
            .unwrap();
        assert!(
            field.starts_with(" wrong") || field.starts_with(" priced wrong"),
            "{name}={text}: {field}"
        );
        assert!(field.contains(said), "{name}={text}: {field}");
        assert!(page.contains(&format!("<a href=\"#{name}\">")) && !page.contains("<b>free"));
    }
    assert_eq!(service.read(&kept, &kept.edit, "").text(), before);
}

#[test]
fn the_interface_refuses_a_bad_price_with_its_path() {
    let service = start();
    for (prices, path) in [
        (
            json!({ "lines": { "nut": { "price": -1, "per": "pcs" } } }),
            "prices.lines.nut.price",
        ),
        (
            json!({ "lines": { "nut": { "price": 1e12, "per": "pcs" } } }),
            "prices.lines.nut.price",
        ),
        (
            json!({ "lines": { "nut": { "price": "dear", "per": "pcs" } } }),
            "prices.lines.nut.price",
        ),
        (
            json!({ "lines": { "nut": { "price": 1, "per": "m³" } } }),
            "prices.lines.nut.per",
        ),
        (
            json!({ "lines": { "gold": { "price": 1, "per": "kg" } } }),
            "prices.lines.gold",
        ),
        (
            json!({ "lines": { "nut": { "price": 1, "per": "pcs", "each": 1 } } }),
            "prices.lines.nut.each",
        ),
        (json!({ "currency": "=1+1" }), "prices.currency"),
        (json!({ "currency": "x".repeat(500) }), "prices.currency"),
        (json!({ "coins": 1 }), "prices.coins"),
    ] {
        let mut plan = unknown();
        plan["prices"] = prices.clone();
        let answer = service.post_json("/api/v1/design", &plan);
        assert_eq!(answer.status, 422, "{prices}: {}", answer.text());
        assert_eq!(
            answer.json()["errors"][0]["path"],
            path,
            "{prices}: {}",
            answer.text()
        );
    }
    let nan = service.send(
        "POST",
        "/api/v1/design",
        &[("content-type", "application/json")],
        br#"{"schema_version":1,"prices":{"lines":{"nut":{"price":NaN,"per":"pcs"}}}}"#,
    );
    assert!((400..=422).contains(&nan.status), "{}", nan.status);
}

#[test]
fn the_example_is_ticked_on_paper_only() {
    let service = start();
    let page = service.get("/example/materials");
    assert_eq!(page.status, 200);
    let text = page.text();
    assert!(
        text.contains("they are not kept")
            && !text.contains("Keep all ticks")
            && !text.contains("disabled")
    );
    assert_eq!(
        form(&service, "/example/materials", &[("here~stud", "yes")]).status,
        405
    );
}
