//! A form of prices changes what was typed, and nothing else.

use super::*;

fn sent(pairs: &[(&str, &str)]) -> Sheet {
    Sheet::sent(
        pairs
            .iter()
            .map(|(name, text)| ((*name).to_owned(), (*text).to_owned()))
            .collect(),
    )
}

fn with(pairs: &[(&str, &str)]) -> SitePlan {
    read(&SitePlan::unknown(), &[], &sent(pairs)).unwrap()
}

#[test]
fn what_is_typed_is_kept_with_its_unit() {
    let plan = with(&[
        ("currency", "EUR"),
        ("price~concrete-ready", "145,50"),
        ("per~concrete-ready", "yd³"),
        ("price~stud", ""),
    ]);
    let price = plan.prices.of("concrete-ready").unwrap();
    assert_eq!(
        (price.price, price.per.as_str(), entry(price).as_str()),
        (145.5, "yd³", "145.50")
    );
    assert_eq!(
        (plan.prices.currency.as_deref(), plan.prices.of("stud")),
        (Some("EUR"), None)
    );
    let boxes = sheet(&plan.prices);
    assert_eq!(
        (
            boxes.text("price~concrete-ready"),
            boxes.text("per~concrete-ready")
        ),
        (Some("145.50"), Some("yd³"))
    );
    let emptied = read(
        &plan,
        &[],
        &sent(&[
            ("price~concrete-ready", " "),
            ("was~concrete-ready", "145.50"),
        ]),
    )
    .unwrap();
    assert!(emptied.prices.lines.is_none_or(|lines| lines.is_empty()));
}

#[test]
fn two_who_price_at_once_lose_nothing_and_the_same_line_is_asked() {
    let theirs = with(&[("price~stud", "3"), ("price~nut", "0.2")]);
    let mine = sent(&[
        ("price~stud", ""),
        ("price~nut", "0.3"),
        ("price~washer", "0.1"),
    ]);
    let faults = read(&theirs, &[], &mine).unwrap_err();
    assert_eq!(faults.len(), 1);
    assert!(
        faults[0].0 == "price~nut" && faults[0].1.contains("0.20 each"),
        "{faults:?}"
    );
    let mine = sent(&[
        ("price~stud", ""),
        ("price~nut", "0.3"),
        ("was~nut", "0.20"),
        ("price~washer", "0.1"),
    ]);
    let joined = read(&theirs, &[], &mine).unwrap();
    assert_eq!(joined.prices.lines.unwrap().len(), 3);
}

#[test]
fn what_cannot_be_a_price_is_said_at_its_box() {
    let wrong = [
        ("currency", "=cmd"),
        ("price~stud", "-1"),
        ("price~nut", "1e12"),
        ("price~washer", "NaN"),
        ("price~tube", "abc"),
    ];
    let faults = read(&SitePlan::unknown(), &[], &sent(&wrong)).unwrap_err();
    let names: Vec<&str> = faults.iter().map(|(name, _)| name.as_str()).collect();
    assert_eq!(
        names,
        [
            "price~tube",
            "price~stud",
            "price~nut",
            "price~washer",
            "currency"
        ]
    );
}
