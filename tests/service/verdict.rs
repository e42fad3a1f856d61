//! The three questions: the same answers on the plan's page and in the interface, conduct beside them and never among them.

use serde_json::{Value, json};
use stillground_tests::service::{Service, start, unknown};

fn design(service: &Service, plan: &Value) -> Value {
    let answer = service.post_json("/api/v1/design", plan);
    assert_eq!(answer.status, 200, "{}", answer.text());
    answer.json()
}

fn page(service: &Service, plan: &Value) -> String {
    let kept = service.create(plan);
    let page = service.get(&format!("/p/{}/plan", kept.view));
    assert_eq!(page.status, 200);
    page.text()
}

/// What stands in the answer to a question of the page.
fn answer<'a>(page: &'a str, question: &str) -> &'a str {
    let from = page.find(&format!("<dt>{question}</dt>")).unwrap();
    let answer = &page[from..];
    &answer[..answer.find("</div>").unwrap()]
}

#[test]
fn a_plan_that_fails_says_no_with_its_reason_before_anything_else() {
    let service = start();
    let mut plan = unknown();
    plan["block"] = json!({ "length_m": 0.4, "width_m": 0.4, "depth_m": 1.0 });
    plan["pier"] = json!({ "plate_side_mm": 390.0 });
    let found = design(&service, &plan);
    assert_eq!(found["verdict"]["build"]["says"], "no");
    let because = found["verdict"]["build"]["because"].as_array().unwrap();
    assert!(because.contains(&json!("block.plate_fits")), "{because:?}");
    let page = page(&service, &plan);
    let said = answer(&page, "Build it?");
    assert!(said.contains("No.</strong>"), "{said}");
    let (verdict, drawings) = (page.find("Build it?"), page.find("id=\"drawings\""));
    assert!(verdict < drawings && verdict.is_some());
}

#[test]
fn ground_that_nobody_may_presume_asks() {
    let service = start();
    let mut plan = unknown();
    plan["site"] = json!({ "soil": "peat" });
    let found = design(&service, &plan);
    let build = &found["verdict"]["build"];
    assert_ne!(build["says"], "yes", "{build}");
    assert_eq!(found["verdict"]["still"]["says"], Value::Null);
    assert!(answer(&page(&service, &plan), "Still when left alone?").contains("Ask.</strong>"));
}

/// A second person or a door may widen a star as much as they like: they cost, and fail nothing.
#[test]
fn what_people_do_costs_and_fails_nothing() {
    let service = start();
    let found = design(&service, &unknown());
    let checks = found["checks"].as_array().unwrap();
    for check in checks {
        let id = check["id"].as_str().unwrap();
        let still = id.starts_with("motion.");
        assert_eq!(
            check["question"],
            if still { "still" } else { "build" },
            "{id}"
        );
    }
    let conduct = found["motion"]["conduct"].as_array().unwrap();
    assert_eq!(conduct.len(), 7);
    for one in conduct {
        let growth = &one["star_growth_ratio"];
        let [expected, worst] = ["expected", "worst"].map(|end| growth[end].as_f64().unwrap());
        assert!(0.0 <= expected && expected <= worst, "{one}");
        let id = one["id"].as_str().unwrap();
        assert!(
            checks
                .iter()
                .all(|check| check["id"] != format!("motion.{id}"))
        );
    }
    let page = page(&service, &unknown());
    assert!(page.contains("What may people do?"));
    let stillness = service.get("/example/plan/stillness").text();
    assert!(stillness.contains("What people do, and what it costs the star"));
}

#[test]
fn the_page_of_a_plan_leads_to_what_this_version_judges_differently() {
    let service = start();
    assert!(page(&service, &unknown()).contains("href=\"/versions\""));
    let versions = service.get("/versions");
    assert_eq!(versions.status, 200);
    assert!(versions.text().contains("A tonne of concrete at least"));
}
