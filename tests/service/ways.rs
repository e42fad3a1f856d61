//! Three ways to build it: shown to whoever reads the plan, taken and taken back by whoever may change it.

use std::time::{Duration, Instant};

use serde_json::{Value, json};
use stillground_tests::service::{Kept, Service, start_searching};
use stillground_tests::small::small;

use crate::order::form;

fn stored(service: &Service, kept: &Kept) -> Value {
    service.read(kept, &kept.edit, "").json()
}

#[test]
fn a_way_is_taken_as_chosen_and_taken_back_with_one_press() {
    let service = start_searching();
    let kept = service.create(&small());
    let before = stored(&service, &kept);
    let root = format!("/p/{}", kept.edit);
    let page = ways(&service, &kept);
    // Two of the three may be one pier, which stands there once with both names.
    for said in [
        "ways to build it here",
        "least digging",
        "stillest that fits",
        "10 piers are possible here",
    ] {
        assert!(page.to_lowercase().contains(said), "{said}: {page}");
    }
    let found = service.post_json("/api/v1/options", &small()).json();
    let depth = &found["named"]["least_digging"]["block"]["depth_m"];
    let taken = form(
        &service,
        &format!("{root}/ways"),
        &[("way", "least_digging"), ("base", "1")],
    );
    assert_eq!(taken.status, 303, "{}", taken.text());
    assert!(taken.header("location").ends_with("/plan?before=1"));
    let plan = stored(&service, &kept);
    assert_eq!(plan["block"]["depth_m"], *depth);
    assert_eq!(plan["chosen"], json!(["block.depth_m", "pier.levelling"]));
    assert_eq!(plan["block"]["length_m"], 0.9);
    let shown = service.get(&format!("{root}/plan?before=1")).text();
    assert!(shown.contains("Take it back: as in revision 1"));
    // What was taken counts as open: the same ways are found again, and this one is said to stand.
    let again = ways(&service, &kept);
    assert!(
        again.contains("10 piers are possible here") && again.contains("The plan stands so"),
        "{again}"
    );
    let back = form(&service, &format!("{root}/revisions"), &[("number", "1")]);
    assert_eq!(back.status, 303);
    assert_eq!(stored(&service, &kept), before);
}

/// With prices the piers are also compared by what they cost, and the cheapest that is still is a way like the others.
#[test]
fn where_anything_has_a_price_the_cheapest_is_a_way() {
    let service = start_searching();
    let mut plan = small();
    plan["prices"] = json!({
        "currency": "EUR",
        "lines": { "concrete-ready": { "price": 145.5, "per": "m³" }, "grout": { "price": 19, "per": "pcs" } }
    });
    let kept = service.create(&plan);
    let page = ways(&service, &kept);
    for said in [
        "By what they cost",
        "What has a price was added up for",
        "EUR",
        "Cheapest",
    ] {
        assert!(page.contains(said), "{said}: {page}");
    }
    let found = service.post_json("/api/v1/options", &plan).json();
    let by_cost = &found["by_cost"];
    let costs: Vec<f64> = by_cost["front"]
        .as_array()
        .unwrap()
        .iter()
        .map(|point| point["cost"].as_f64().unwrap())
        .collect();
    assert!(costs.is_sorted() && !costs.is_empty(), "{costs:?}");
    let depth = &by_cost["cheapest"]["block"]["depth_m"];
    let taken = form(
        &service,
        &format!("/p/{}/ways", kept.edit),
        &[("way", "cheapest"), ("base", "1")],
    );
    assert_eq!(taken.status, 303, "{}", taken.text());
    assert_eq!(stored(&service, &kept)["block"]["depth_m"], *depth);
    let without = service.post_json("/api/v1/options", &small()).json();
    assert!(without["by_cost"].is_null());
}

#[test]
fn whoever_changes_what_was_taken_has_said_it() {
    let service = start_searching();
    let mut plan = small();
    plan["block"]["depth_m"] = json!(0.45);
    plan["chosen"] = json!(["block.depth_m"]);
    let kept = service.create(&plan);
    let step = format!("/p/{}/footing", kept.edit);
    let same = form(
        &service,
        &step,
        &[("base", "1"), ("block.length_m", "1 m"), ("go", "stay")],
    );
    assert!(same.status == 303 || same.status == 200, "{}", same.text());
    let depth = form(
        &service,
        &step,
        &[("base", "2"), ("block.depth_m", "0.5 m"), ("go", "stay")],
    );
    assert!(
        depth.status == 303 || depth.status == 200,
        "{}",
        depth.text()
    );
    assert_eq!(stored(&service, &kept).get("chosen"), None);
}

#[test]
fn a_way_is_taken_on_top_of_the_revision_that_was_seen_and_by_the_edit_link_only() {
    let service = start_searching();
    let kept = service.create(&small());
    ways(&service, &kept);
    let way = [("way", "least_digging"), ("base", "7")];
    let stale = form(&service, &format!("/p/{}/ways", kept.edit), &way);
    assert_eq!(stale.status, 412, "{}", stale.text());
    let unknown = form(
        &service,
        &format!("/p/{}/ways", kept.edit),
        &[("way", "cheapest"), ("base", "1")],
    );
    assert_eq!(unknown.status, 404);
    for link in [&kept.view, &kept.record] {
        ways(&service, &kept);
        let page = service.get(&format!("/p/{link}/ways"));
        assert_eq!(page.status, 200);
        assert!(!page.text().contains("Take: "), "no button");
        let refused = form(&service, &format!("/p/{link}/ways"), &way);
        assert_eq!(refused.status, 403);
    }
    assert_eq!(stored(&service, &kept).get("chosen"), None);
}

#[test]
fn where_nothing_is_enough_the_page_says_what_stands_in_the_way() {
    let service = start_searching();
    let mut plan = small();
    plan["load"] = json!({ "mass_kg": 45.0, "asked_growth_ratio": 0.001, "enclosure": "open", "observing_wind_m_s": 20.0 });
    let kept = service.create(&plan);
    let page = ways(&service, &kept);
    assert!(
        page.contains("Nothing that fits here is still enough"),
        "{page}"
    );
    assert!(page.contains("What stands in the way"));
    let mut unfit = small();
    unfit["site"]["soil"] = json!("peat");
    let kept = service.create(&unfit);
    let page = ways(&service, &kept);
    assert!(page.contains("Nothing that fits here is still enough"));
    assert!(page.contains("ground engineer"), "{page}");
}

/// The page of a plan's ways when the search for them is over.
fn ways(service: &Service, kept: &Kept) -> String {
    let began = Instant::now();
    loop {
        let page = service.get(&format!("/p/{}/ways", kept.edit)).text();
        if !page.contains("Looking at the piers that fit") {
            return page;
        }
        assert!(began.elapsed() < Duration::from_secs(300), "{page}");
        std::thread::sleep(Duration::from_millis(500));
    }
}

#[test]
fn while_the_search_goes_on_the_page_says_how_far_it_is_and_asks_again() {
    let service = start_searching();
    // Forty-three depths, each a shape that has to be solved: more than a page waits for.
    let mut plan = small();
    plan["excavation"]["max_depth_m"] = json!(2.4);
    let kept = service.create(&plan);
    let first = service.get(&format!("/p/{}/ways", kept.edit)).text();
    assert!(first.contains("Looking at the piers that fit"), "{first}");
    assert!(first.contains("http-equiv=\"refresh\"") && first.contains("script/ways.js"));
    // Another plan's page is there while it goes on.
    let other = service.create(&small());
    let plan = service.get(&format!("/p/{}/plan", other.edit));
    assert_eq!(plan.status, 200);
    let page = ways(&service, &kept);
    assert!(page.contains("piers are possible here"), "{page}");
}

#[test]
fn an_answer_of_a_way_is_pinned_and_the_rest_looked_for_again() {
    let service = start_searching();
    let kept = service.create(&small());
    let page = ways(&service, &kept);
    assert!(page.contains("Keep one thing, and look again"), "{page}");
    let pin = [("way", "stillest"), ("pin", "seat"), ("base", "1")];
    let address = format!("/p/{}/ways", kept.edit);
    let pinned = form(&service, &address, &pin);
    assert_eq!(pinned.status, 303, "{}", pinned.text());
    assert!(pinned.header("location").ends_with("/ways"));
    let plan = stored(&service, &kept);
    assert!(plan["pier"]["levelling"].is_string(), "{plan}");
    assert_eq!(plan.get("chosen"), None, "it is said now, and not chosen");
    assert_eq!(plan["block"]["depth_m"], Value::Null, "still open");
    // Half as many: the seat is no longer open.
    let again = ways(&service, &kept);
    assert!(again.contains("5 piers are possible here"), "{again}");
    let unknown = [("way", "stillest"), ("pin", "colour"), ("base", "2")];
    assert_eq!(form(&service, &address, &unknown).status, 404);
}

#[test]
fn two_revisions_stand_side_by_side() {
    let service = start_searching();
    let kept = service.create(&small());
    let mut deeper = small();
    deeper["block"]["depth_m"] = json!(0.45);
    assert_eq!(service.replace(&kept, 1, &deeper).status, 200);
    let list = service.get(&format!("/p/{}/revisions", kept.edit)).text();
    assert!(list.contains("/ways?with=1"), "{list}");
    let page = service.get(&format!("/p/{}/ways?with=1", kept.edit));
    assert_eq!(page.status, 200);
    let page = page.text();
    for said in [
        "Revision 1",
        "Revision 2, which stands",
        "Star growth, at worst",
        "Answers that differ",
    ] {
        assert!(page.contains(said), "{said}: {page}");
    }
    let none = service.get(&format!("/p/{}/ways?with=9", kept.edit));
    assert_eq!(none.status, 404);
}

#[test]
fn two_plans_stand_side_by_side_and_no_address_has_the_others_link() {
    let service = start_searching();
    let kept = service.create(&small());
    let mut other = small();
    other["title"] = json!("The one next door");
    other["block"]["depth_m"] = json!(0.45);
    let other = service.create(&other);
    let address = format!("/p/{}/beside", kept.edit);
    let link = format!("http://planner.example/p/{}/plan?rev=1", other.view);
    let page = form(&service, &address, &[("link", &link)]);
    assert_eq!(page.status, 200);
    let page = page.text();
    for said in [
        "Two plans side by side",
        "The one next door",
        "The other plan",
        "Answers that differ",
    ] {
        assert!(page.contains(said), "{said}: {page}");
    }
    assert!(!page.contains(&other.view));
    let nothing = form(&service, &address, &[("link", "no link")]);
    assert_eq!(nothing.status, 404);
    assert!(ways(&service, &kept).contains("Beside another plan"));
}

#[test]
fn a_change_that_would_help_is_made_with_one_press_and_taken_back() {
    let service = start_searching();
    let kept = service.create(&json!({ "schema_version": 1, "block": { "length_m": 1.0, "width_m": 1.0, "depth_m": 0.9 } }));
    let before = stored(&service, &kept);
    let root = format!("/p/{}", kept.edit);
    let page = service.get(&format!("{root}/plan/stillness")).text();
    assert!(page.contains("Make this change"), "{page}");
    let design = service.read(&kept, &kept.edit, "/design").json();
    let all = design["motion"]["improvements"].as_array().unwrap();
    assert!(all.len() >= 4);
    let change = all[0]["change"].as_str().unwrap();
    let address = format!("{root}/improve");
    let made = form(&service, &address, &[("change", change), ("base", "1")]);
    assert_eq!(made.status, 303, "{}", made.text());
    assert!(made.header("location").ends_with("/plan?before=1"));
    let plan = stored(&service, &kept);
    let fields = all[0]["fields"].as_array().unwrap();
    assert!(!fields.is_empty());
    for new in fields {
        let path = new["field"].as_str().unwrap();
        let (section, name) = path.split_once('.').unwrap();
        assert_eq!(plan[section][name], new["value"], "{path}");
    }
    let shown = service.get(&format!("{root}/plan?before=1")).text();
    for said in ["This is in the plan now", "Take it back: as in revision 1"] {
        assert!(shown.contains(said), "{said}: {shown}");
    }
    // A form that was left open makes nothing on top of another revision, and a change that nobody worked out is none.
    let stale = form(&service, &address, &[("change", change), ("base", "1")]);
    assert_eq!(stale.status, 412);
    let unknown = form(&service, &address, &[("change", "wings"), ("base", "2")]);
    assert_eq!(unknown.status, 404);
    let view = format!("/p/{}/plan/stillness", kept.view);
    assert!(!service.get(&view).text().contains("Make this change"));
    let back = form(&service, &format!("{root}/revisions"), &[("number", "1")]);
    assert_eq!(back.status, 303);
    assert_eq!(stored(&service, &kept), before);
}
