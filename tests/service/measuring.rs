//! A finished pier measured with the record link and with the edit link, and what becomes of it on pages and paper.

use serde_json::json;
use stillground_tests::http::Answer;
use stillground_tests::service::{Service, start, unknown};
use stillground_tests::workspace;

use crate::order::form;
use crate::sheets::tool;

const WAYS: [&str; 5] = ["knock", "lean", "pull", "walk", "level"];

fn knock(service: &Service, secret: &str, name: &str, hertz: &str) -> Answer {
    let pairs = [
        ("what", "knock"),
        ("base", "1"),
        ("form", name),
        ("who", "A. Helper"),
        ("direction", "x"),
        ("with_mount", "yes"),
        ("frequency_hz", hertz),
        ("frequency_sd_hz", "0.1"),
    ];
    form(service, &format!("/p/{secret}/measure/knock"), &pairs)
}

#[test]
fn every_way_to_measure_says_how_and_shows_it_to_whoever_may_look() {
    let service = start();
    let kept = service.create(&unknown());
    for way in WAYS {
        for secret in [&kept.edit, &kept.record, &kept.view] {
            let page = service.get(&format!("/p/{secret}/measure/{way}"));
            assert_eq!(page.status, 200, "{way}");
            let text = page.text();
            for said in ["How it is done", "What can go wrong", "caution", "<svg"] {
                assert!(text.contains(said), "{way}: no {said}");
            }
            assert_eq!(
                text.contains("name=\"who\""),
                *secret == kept.record
                    || (*secret == kept.edit && ["walk", "level"].contains(&way)),
                "{way}: who enters a measurement stands in the record"
            );
        }
    }
    assert_eq!(
        service
            .get(&format!("/p/{}/measure/guess", kept.edit))
            .status,
        404
    );
    assert_eq!(service.get("/example/measure/knock").status, 200);
}

#[test]
fn a_helpers_knock_stands_in_the_record_once_and_goes_into_the_plan_when_its_owner_takes_it() {
    let service = start();
    let kept = service.create(&unknown());
    for _ in 0..2 {
        let answer = knock(&service, &kept.record, "f1", "14.2");
        assert_eq!(answer.status, 303, "{}", answer.text());
        assert!(answer.header("location").ends_with("/measure/knock?kept=1"));
    }
    let entries = service.read(&kept, &kept.view, "/entries").json();
    let entries = entries["entries"].as_array().unwrap();
    assert_eq!(entries.len(), 1);
    assert_eq!(
        entries[0]["measurement"]["knock"]["frequency_hz"],
        json!(14.2)
    );
    let today = service.get(&format!("/p/{}/record", kept.record)).text();
    assert!(
        today.contains("Knock, east and west, mount and telescope on: 14.2"),
        "{today}"
    );
    let page = format!("/p/{}/commissioning", kept.edit);
    let before = service.get(&page).text();
    assert!(
        before.contains("Entered by helpers") && before.contains("Foreseen:"),
        "{before}"
    );
    assert!(!before.contains("What the measurements say"));
    // A helper may enter it, and not take it.
    let take = [("what", "take"), ("base", "1"), ("entry", "f1.knock")];
    let helper = form(
        &service,
        &format!("/p/{}/commissioning", kept.record),
        &take,
    );
    assert_eq!(helper.status, 403);
    let taken = form(&service, &page, &take);
    assert_eq!(taken.status, 303, "{}", taken.text());
    let after = service.get(&format!("{page}?before=1")).text();
    assert!(after.contains("What the measurements say"), "{after}");
    assert!(
        after.contains("It is in the plan") && after.contains("Take it back"),
        "{after}"
    );
    // Taken twice it would be there once.
    let again = form(
        &service,
        &page,
        &[("what", "take"), ("base", "2"), ("entry", "f1.knock")],
    );
    assert_eq!(again.status, 404);
    let chapter = service.get(&format!("/p/{}/plan/proof", kept.edit));
    assert_eq!(chapter.status, 200);
    assert!(
        chapter
            .text()
            .contains("The plan’s figures, and this pier’s")
    );
    let first = service.get(&format!("/p/{}/plan", kept.edit)).text();
    assert!(
        first.contains("/plan/proof"),
        "the chapter stands in the list"
    );
}

#[test]
fn what_an_older_version_entered_as_one_figure_is_taken_as_a_knock() {
    let service = start();
    let kept = service.create(&unknown());
    let entry = json!({
        "id": "old", "revision": 1, "task": "measure", "kind": "measured", "item": "first_frequency", "value": 14.2, "who": "A. Helper"
    });
    let path = format!("/api/v1/plans/{}/entries", kept.id);
    let bearer = format!("Bearer {}", kept.record);
    let headers = [
        ("content-type", "application/json"),
        ("authorization", bearer.as_str()),
    ];
    let sent = service.send("POST", &path, &headers, entry.to_string().as_bytes());
    assert_eq!(sent.status, 201, "{}", sent.text());
    let page = format!("/p/{}/commissioning", kept.edit);
    let take = [("what", "take"), ("base", "1"), ("entry", "old")];
    assert_eq!(form(&service, &page, &take).status, 303);
    let plan = service.read(&kept, &kept.view, "").json();
    assert_eq!(
        plan["commissioning"]["knocks"][0]["frequency_hz"],
        json!(14.2)
    );
}

#[test]
fn figures_out_of_range_come_back_with_their_box_and_nothing_is_kept() {
    let service = start();
    let kept = service.create(&unknown());
    for secret in [&kept.edit, &kept.record] {
        let answer = knock(&service, secret, "f2", "3000");
        assert_eq!(answer.status, 422);
        let text = answer.text();
        assert!(
            text.contains("outside the range") && text.contains("value=\"3000\""),
            "{text}"
        );
    }
    assert_eq!(knock(&service, &kept.view, "f3", "14").status, 403);
    let entries = service.read(&kept, &kept.view, "/entries").json();
    assert_eq!(entries["entries"].as_array().map(Vec::len), Some(0));
}

#[test]
fn boxes_and_words_are_in_the_plans_own_units() {
    let service = start();
    let mut plan = unknown();
    plan["units"] = json!("imperial");
    let kept = service.create(&plan);
    let page = format!("/p/{}/measure/pull", kept.edit);
    let shown = service.get(&page).text();
    assert!(
        shown.contains("lbf") && shown.contains("<span class=\"unit\">ft</span>"),
        "{shown}"
    );
    let pull = [
        ("what", "pull"),
        ("base", "1"),
        ("direction", "y"),
        ("height_m", "4 ft 6 in"),
        ("force_n", "45 lb"),
        ("tilt_arcsec", "18"),
    ];
    let sent = form(&service, &page, &pull);
    assert_eq!(sent.status, 303, "{}", sent.text());
    let plan = service.read(&kept, &kept.view, "").json();
    let kept_pull = &plan["commissioning"]["pulls"][0];
    // Computed: 45 pounds-force are 200.17 N, four and a half feet 1.3716 m.
    assert!((kept_pull["force_n"].as_f64().unwrap() - 200.17).abs() < 0.01);
    assert!((kept_pull["height_m"].as_f64().unwrap() - 1.3716).abs() < 1e-6);
    let said = service
        .get(&format!("/p/{}/commissioning", kept.edit))
        .text();
    assert!(said.contains("45\u{a0}lbf at 4′\u{a0}6″"), "{said}");
}

#[test]
fn a_helper_sends_a_record_of_samples_too() {
    let service = start();
    let kept = service.create(&unknown());
    let record =
        std::fs::read(workspace().join("tests/engineering/reference/records/r01_plain.csv"))
            .unwrap();
    let mut body = b"--line\r\nContent-Disposition: form-data; name=\"kind\"\r\n\r\nknock\r\n--line\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a.csv\"\r\nContent-Type: text/csv\r\n\r\n".to_vec();
    body.extend_from_slice(&record);
    body.extend_from_slice(b"\r\n--line--\r\n");
    let kind = [("content-type", "multipart/form-data; boundary=line")];
    let send = |secret: &str| {
        let path = format!("/p/{secret}/commissioning/trace");
        service.send("POST", &path, &kind, &body)
    };
    let answer = send(&kept.record);
    assert_eq!(answer.status, 200, "{}", answer.text());
    assert!(answer.text().contains("value=\"16.31"), "{}", answer.text());
    assert!(answer.text().contains("Keep it in the record"));
    assert_eq!(send(&kept.view).status, 403);
}

#[test]
fn a_remedy_goes_into_the_plan_with_one_button_and_out_again() {
    let service = start();
    let kept = service.create(&unknown());
    assert_eq!(knock(&service, &kept.edit, "f1", "9").status, 303);
    let page = format!("/p/{}/commissioning", kept.edit);
    let said = service.get(&page).text();
    assert!(said.contains("What would help now"), "{said}");
    assert!(
        said.contains("name=\"remedy\" value=\"weight_down\""),
        "{said}"
    );
    let root = format!("/p/{}", kept.edit);
    let made = form(
        &service,
        &format!("{root}/remedy"),
        &[("remedy", "weight_down"), ("base", "2")],
    );
    assert_eq!(made.status, 303, "{}", made.text());
    let plan = service.read(&kept, &kept.view, "").json();
    assert!(plan["load"]["centre_above_pier_m"].is_number(), "{plan}");
    let back = form(&service, &format!("{root}/revisions"), &[("number", "2")]);
    assert_eq!(back.status, 303);
    let plan = service.read(&kept, &kept.view, "").json();
    assert!(plan["load"]["centre_above_pier_m"].is_null(), "{plan}");
    // One that nobody worked out is made by none, and neither is one of a plan that changed meanwhile.
    let unknown = form(
        &service,
        &format!("{root}/remedy"),
        &[("remedy", "none"), ("base", "4")],
    );
    assert_eq!(unknown.status, 404);
    let stale = form(
        &service,
        &format!("{root}/remedy"),
        &[("remedy", "weight_down"), ("base", "2")],
    );
    assert_eq!(stale.status, 412);
}

#[test]
fn the_file_has_a_sheet_of_proof_where_something_was_measured_or_entered() {
    let service = start();
    let kept = service.create(&unknown());
    let words = || {
        let file = service.get(&format!("/p/{}/file.pdf", kept.edit));
        assert_eq!(file.status, 200);
        tool("pdftotext", &["-layout"], &file.body)
    };
    assert!(!words().contains("As measured, and as foreseen"));
    assert_eq!(knock(&service, &kept.record, "f1", "14.2").status, 303);
    let entered = words();
    assert!(
        entered.contains("As built") && entered.contains("A. Helper"),
        "{entered}"
    );
    assert_eq!(knock(&service, &kept.edit, "f2", "14.2").status, 303);
    let measured = words();
    for said in [
        "As measured, and as foreseen",
        "The pier itself",
        "Signed",
        "Owner",
    ] {
        assert!(measured.contains(said), "no {said}");
    }
}
