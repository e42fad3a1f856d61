//! What is no price is refused at its field.

use super::*;

fn faults(prices: serde_json::Value) -> Vec<(String, String)> {
    let plan: SitePlan =
        serde_json::from_value(serde_json::json!({ "schema_version": 1, "prices": prices }))
            .unwrap();
    match plan.validate() {
        Ok(()) => Vec::new(),
        Err(problems) => problems
            .0
            .into_iter()
            .map(|problem| (problem.fields[0].clone(), problem.said))
            .collect(),
    }
}

fn one(price: f64) -> serde_json::Value {
    serde_json::json!({ "lines": { "stud": { "price": price, "per": "pcs" } } })
}

#[test]
fn prices_have_a_range_and_four_decimals() {
    for fine in [0.0, -0.0, 0.1, 0.0001, 145.5, 999_999_999.999_9, 1e9] {
        assert_eq!(faults(one(fine)), [], "{fine}");
    }
    for wrong in [-0.01, -5.0, 1e12, 1e300, 1_000_000_000.01] {
        let found = faults(one(wrong));
        assert_eq!(found[0].0, "prices.lines.stud.price");
        assert!(
            found[0]
                .1
                .contains("outside the range of 0 to 1\u{202f}000\u{202f}000\u{202f}000"),
            "{found:?}"
        );
    }
    assert!(faults(one(0.000_01))[0].1.contains("four decimals"));
    for nothing in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert!(price_problem(nothing).is_some());
    }
}

#[test]
fn a_currency_is_a_short_word_or_sign() {
    for fine in [
        "EUR",
        "kr",
        "€",
        "$",
        "A$",
        "Fr.",
        "zł",
        "元",
        "US dollars",
        "₹",
    ] {
        assert_eq!(
            faults(serde_json::json!({ "currency": fine })),
            [],
            "{fine}"
        );
    }
    let long = "x".repeat(500);
    for wrong in [
        "",
        " ",
        "=1+1",
        "+E",
        "-E",
        "@A",
        "\tE",
        "E\u{202e}",
        "12",
        "E;R",
        "<b>",
        "EUR\n",
        &long,
    ] {
        let found = faults(serde_json::json!({ "currency": wrong }));
        assert_eq!(found.len(), 1, "{wrong}");
        assert_eq!(found[0].0, "prices.currency", "{wrong}");
    }
}

#[test]
fn a_line_is_known_and_priced_by_a_unit_of_its_own() {
    let line = |id: &str, per: &str| {
        faults(serde_json::json!({ "lines": { id: { "price": 1, "per": per } } }))
    };
    assert_eq!(line("concrete-ready", "m³"), []);
    assert_eq!(line("concrete-ready", "yd³"), []);
    assert_eq!(line("hammer", "d"), []);
    assert_eq!(
        line("concrete-ready", "pcs")[0].0,
        "prices.lines.concrete-ready.per"
    );
    assert_eq!(line("gold", "kg")[0].0, "prices.lines.gold");
    let strange = line(&format!("={}", "x".repeat(5000)), "kg");
    assert!(
        strange[0].0.len() < 60 && strange[0].1.len() < 300,
        "{strange:?}"
    );
}

#[test]
fn an_older_plan_has_no_prices_and_a_new_one_keeps_them_to_the_letter() {
    let old: SitePlan = serde_json::from_str(r#"{ "schema_version": 1 }"#).unwrap();
    assert!(old.prices.lines.is_none());
    let text = r#"{"currency":"EUR","lines":{"stud":{"price":0.1,"per":"pcs","item":null}}}"#;
    let prices: Prices = serde_json::from_str(text).unwrap();
    assert_eq!(serde_json::to_string(&prices).unwrap(), text);
}
