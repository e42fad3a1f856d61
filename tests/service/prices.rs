//! Prices of the order: who enters them, what is said of them, and where they stand.

use std::process::Command;

use serde_json::{Value, json};
use stillground_tests::service::{start, titled, unknown};

use crate::order::{form, page};

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
    let design = service.read(&kept, &kept.record, "/design").json();
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
        (&kept.edit, "materials"),
        (&kept.record, "materials"),
        (&kept.record, "plan/order"),
    ] {
        let text = service.get(&format!("/p/{secret}/{below}")).text();
        assert!(
            text.contains(&total) && text.contains("have no price, so this is the total so far"),
            "{below} without {total}"
        );
    }
    assert!(page(&service, &kept.record).contains("14 × 0.40\u{a0}EUR each"));
    let table = service
        .get(&format!("/p/{}/materials.csv", kept.record))
        .text();
    assert!(
        table.contains(",nut,nut,14.00,pcs,0.40,5.60,EUR,,\r\n"),
        "{table}"
    );
    let sheets = |which: &str| {
        let answer = service.get(&format!("/p/{}/{which}", kept.record));
        pdf_text(&answer.body).replace('\u{a0}', " ")
    };
    // The set for the site has the sums; each line's price, and which lines have none, stand in the file.
    let (site, file) = (sheets("plan.pdf"), sheets("file.pdf"));
    for set in [&site, &file] {
        assert!(set.contains("What it comes to") && set.contains("(hire)"));
        assert!(set.contains(&total.replace('\u{a0}', " ")));
        assert!(set.contains("have no price"), "{set}");
    }
    assert!(site.contains("So far") && file.contains("Without a price:"));
    assert!(
        service
            .get(&format!("/p/{}/plan?rev=1", kept.record))
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
