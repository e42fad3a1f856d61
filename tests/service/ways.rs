//! Three ways to build it: shown to whoever reads the plan, taken and taken back by whoever may change it.

use serde_json::{Value, json};
use stillground_tests::service::{Kept, Service, start_searching};

use crate::order::form;

/// A plan of which only the depth and the seat are open.
fn small() -> Value {
    json!({
        "schema_version": 1,
        "site": { "soil": "firm_clay", "frost_depth_m": 0.4 },
        "excavation": { "max_depth_m": 0.5 },
        "block": { "length_m": 0.9, "width_m": 0.9 },
        "pier": { "height_m": 1.1, "outside_diameter_mm": 219.1, "wall_mm": 6.3, "fill": "none" },
        "load": { "mass_kg": 45.0 }
    })
}

fn stored(service: &Service, kept: &Kept) -> Value {
    service.read(kept, &kept.edit, "").json()
}

#[test]
fn a_way_is_taken_as_chosen_and_taken_back_with_one_press() {
    let service = start_searching();
    let kept = service.create(&small());
    let before = stored(&service, &kept);
    let root = format!("/p/{}", kept.edit);
    let page = service.get(&format!("{root}/ways")).text();
    for said in [
        "Three ways to build it here",
        "Least digging",
        "Stillest that fits",
        "10 piers are possible here",
    ] {
        assert!(page.contains(said), "{said}: {page}");
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
    let again = service.get(&format!("{root}/ways")).text();
    assert!(
        again.contains("10 piers are possible here") && again.contains("The plan stands so"),
        "{again}"
    );
    let back = form(&service, &format!("{root}/revisions"), &[("number", "1")]);
    assert_eq!(back.status, 303);
    assert_eq!(stored(&service, &kept), before);
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
    let page = service.get(&format!("/p/{}/ways", kept.edit)).text();
    assert!(
        page.contains("Nothing that fits here is still enough"),
        "{page}"
    );
    assert!(page.contains("What stands in the way"));
    let unfit = json!({ "schema_version": 1, "site": { "soil": "peat" } });
    let kept = service.create(&unfit);
    let page = service.get(&format!("/p/{}/ways", kept.edit));
    assert_eq!(page.status, 200);
}
