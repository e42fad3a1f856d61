//! Parts that are not sold: rows that no catalogue has are refused by field and name; sizes beyond it are taken, checked and said
//! to be no stock size.

use serde_json::{Value, json};
use stillground_tests::service::{Service, start};

fn plan(rest: Value) -> Value {
    let mut plan = json!({ "schema_version": 1, "units": "imperial", "stock": "inch" });
    plan.as_object_mut()
        .unwrap()
        .extend(rest.as_object().unwrap().clone());
    plan
}

#[test]
fn a_row_that_no_catalogue_has_is_named_with_its_field() {
    let service = start();
    for (rest, field, name) in [
        (
            json!({ "yard": { "tubes": ["NPS 8 Sch 40", "NPS 9 Sch 40"] } }),
            "yard.tubes[1]",
            "NPS 9 Sch 40",
        ),
        (
            json!({ "yard": { "plates": ["13/17 in"] } }),
            "yard.plates[0]",
            "13/17 in",
        ),
        (
            json!({ "yard": { "sizes": ["M16"] } }),
            "yard.sizes[0]",
            "M16",
        ),
        (
            json!({ "yard": { "longest_rod_m": 40.0 } }),
            "yard.longest_rod_m",
            "no rod is sold",
        ),
        (
            json!({ "pier": { "tube": "NPS 9 Sch 40" } }),
            "pier.tube",
            "no tube of this name",
        ),
        (
            json!({ "prices": { "lines": { "tube": { "price": 12.0, "per": "furlong" } } } }),
            "prices.lines.tube.per",
            "is ordered, and priced, by",
        ),
    ] {
        let answer = service.post_json("/api/v1/design", &plan(rest));
        let said = answer.text();
        assert!((400..500).contains(&answer.status), "{field}: {said}");
        assert!(
            said.contains(field) && said.contains(name),
            "{field}: {said}"
        );
    }
    let answer = service.post_json("/api/v1/design", &plan(json!({ "stock": "cubits" })));
    assert!((400..500).contains(&answer.status) && answer.text().contains("stock"));
}

/// The caution of a design that names what is no stock size; empty where there is none.
fn not_stock(service: &Service, rest: Value) -> (Value, String) {
    let answer = service.post_json("/api/v1/design", &plan(rest));
    assert_eq!(answer.status, 200, "{}", answer.text());
    let design = answer.json();
    let caution = design["cautions"]
        .as_array()
        .unwrap()
        .iter()
        .find(|caution| caution["id"] == "materials.not_stock")
        .map_or_else(String::new, |caution| {
            caution["text"].as_str().unwrap().to_owned()
        });
    (design, caution)
}

#[test]
fn what_is_stated_beyond_the_catalogue_is_taken_and_said_to_be_no_stock_size() {
    let service = start();
    let (design, said) = not_stock(&service, json!({}));
    assert_eq!(said, "", "what is chosen is sold");
    let parts = design["parts"].as_array().unwrap();
    assert!(parts.len() >= 10 && parts.iter().all(|part| part["sold"] == true));
    assert!(
        parts.iter().any(|part| part["stock_row"] == "NPS 8 Sch 40"),
        "{parts:?}"
    );
    let line = |id: &str| {
        let materials = design["materials"].as_array().unwrap();
        materials
            .iter()
            .find(|line| line["id"] == id)
            .unwrap()
            .clone()
    };
    assert_eq!(line("stud")["stock_row"], "5/8-11");
    assert_eq!(line("concrete-ready")["stock_row"], "4500 psi");
    for (rest, field) in [
        (
            json!({ "pier": { "outside_diameter_mm": 200.0, "wall_mm": 5.0 } }),
            "pier.outside_diameter_mm",
        ),
        (
            json!({ "pier": { "plate_thickness_mm": 21.0 } }),
            "pier.plate_thickness_mm",
        ),
        (
            json!({ "pier": { "plate_thickness_mm": 76.2 }, "yard": { "plates": ["3/4 in", "1 in"] } }),
            "pier.plate_thickness_mm",
        ),
        (
            json!({ "anchors": { "length_mm": 304.8 }, "yard": { "longest_rod_m": 0.254 } }),
            "anchors.length_mm",
        ),
        (json!({ "anchors": { "size": "M16" } }), "anchors.size"),
        (
            json!({ "block": { "concrete": "C30/37" } }),
            "block.concrete",
        ),
        (json!({ "block": { "length_m": 1.2345 } }), "block.length_m"),
    ] {
        let (design, said) = not_stock(&service, rest);
        let parts = design["parts"].as_array().unwrap();
        let missing: Vec<&Value> = parts.iter().filter(|part| part["sold"] == false).collect();
        assert!(
            missing.iter().any(|part| part["field"] == field
                && said.contains(part["says"].as_str().unwrap())),
            "{field}: {missing:?} {said}"
        );
        assert!(said.starts_with("Not every size of this plan is a stock size."));
    }
}
