//! The helper's page from outside: forms without scripts, photographs, and what the owner and an old sheet's holder see.

use serde_json::json;
use stillground_tests::http::Answer;
use stillground_tests::service::{Service, start, unknown};

pub fn form(service: &Service, secret: &str, pairs: &[(&str, &str)]) -> Answer {
    let encode = |text: &str| {
        text.bytes()
            .map(|b| format!("%{b:02x}"))
            .collect::<String>()
    };
    let body: Vec<String> = pairs
        .iter()
        .map(|(name, text)| format!("{}={}", encode(name), encode(text)))
        .collect();
    let headers = [("content-type", "application/x-www-form-urlencoded")];
    service.send(
        "POST",
        &format!("/p/{secret}/record"),
        &headers,
        body.join("&").as_bytes(),
    )
}

const HEAD: [(&str, &str); 4] = [
    ("task", "inspect"),
    ("form", "f1"),
    ("revision", "1"),
    ("who", "A. Helper"),
];

pub fn page(service: &Service, secret: &str) -> String {
    let page = service.get(&format!("/p/{secret}/record"));
    assert_eq!(page.status, 200, "{}", page.text());
    page.text()
}

#[test]
fn a_form_sent_twice_is_kept_once_and_its_findings_stand_on_the_page_and_the_plan() {
    let service = start();
    let kept = service.create(&unknown());
    let water = [
        &HEAD[..],
        &[("item~water_depth", "60 cm"), ("note", "after rain")],
    ]
    .concat();
    for _ in 0..2 {
        let answer = form(&service, &kept.record, &water);
        assert_eq!(answer.status, 303, "{}", answer.text());
        assert!(
            answer
                .header("location")
                .ends_with("/record?kept=2#inspect")
        );
    }
    let shown = page(&service, &kept.record);
    assert!(
        shown.contains("Water at 0.6\u{a0}m: do not pour")
            && shown.contains("Ask: whoever made the plan"),
        "{shown}"
    );
    assert_eq!(
        shown.matches("<bdi>after rain</bdi>").count(),
        2,
        "once at its task and once in the log"
    );
    let plan = service
        .get(&format!("/p/{}/plan/recorded", kept.edit))
        .text();
    assert!(
        plan.contains("What was recorded")
            && plan.contains("A stop stands.")
            && plan.contains("Entered on revision 1")
    );
    assert!(
        !service
            .get("/example/plan")
            .text()
            .contains("What was recorded")
    );
}

#[test]
fn a_form_that_was_gone_back_to_and_changed_comes_again_under_a_new_name() {
    let service = start();
    let kept = service.create(&unknown());
    let with = |depth: &'static str| {
        form(
            &service,
            &kept.record,
            &[&HEAD[..], &[("item~pit_depth", depth)]].concat(),
        )
    };
    assert_eq!(with("90 cm").status, 303);
    let again = with("91 cm");
    assert_eq!(again.status, 422);
    assert!(again.text().contains("was sent before") && again.text().contains("91 cm"));
}

#[test]
fn what_cannot_be_read_comes_back_with_its_words_and_nothing_is_kept() {
    let service = start();
    let kept = service.create(&unknown());
    let bad = [
        &HEAD[..],
        &[
            ("item~pit_depth", "quite deep"),
            ("item~soil_met", "firm_clay"),
            ("note", "kept on the page"),
        ],
    ]
    .concat();
    let answer = form(&service, &kept.record, &bad);
    assert_eq!(answer.status, 422);
    let text = answer.text();
    assert!(
        text.contains("quite deep")
            && text.contains("kept on the page")
            && text.contains("Nothing has been saved yet")
    );
    let long = [
        ("task", "inspect"),
        ("form", "f2"),
        ("revision", "1"),
        ("who", &*"x".repeat(500)),
        ("item~pit_depth", "90 cm"),
    ];
    assert_eq!(form(&service, &kept.record, &long).status, 422);
    assert_eq!(
        form(
            &service,
            &kept.record,
            &[
                ("task", "dance"),
                ("form", "f"),
                ("revision", "1"),
                ("who", "A"),
                ("do", "done")
            ]
        )
        .status,
        422
    );
    assert_eq!(form(&service, &kept.record, &[]).status, 422);
    assert!(page(&service, &kept.record).contains("Nothing yet."));
}

#[test]
fn a_form_means_what_its_own_revision_asked_whatever_became_of_the_plan() {
    let service = start();
    let kept = service.create(&unknown());
    let now = json!({ "schema_version": 1, "units": "imperial", "anchors": { "count": 3 } });
    assert_eq!(service.replace(&kept, 1, &now).status, 200);
    let nut = [
        ("task", "torque"),
        ("form", "f4"),
        ("revision", "1"),
        ("who", "A. Helper"),
        ("item~torque:1:4", "12"),
    ];
    for answer in [
        form(
            &service,
            &kept.record,
            &[&HEAD[..], &[("item~pit_depth", "0.9")]].concat(),
        ),
        form(&service, &kept.record, &nut),
    ] {
        assert_eq!(answer.status, 303, "{}", answer.text());
        assert!(
            answer.header("location").contains("kept=1&seen=1#"),
            "{}",
            answer.header("location")
        );
    }
    let entries = service.read(&kept, &kept.view, "/entries").json()["entries"].clone();
    assert!(
        (entries[0]["value"].as_f64().unwrap() - 0.9).abs() < 1e-9,
        "metres, not feet: {entries}"
    );
    assert_eq!(
        entries[1]["item"], "torque:1:4",
        "a nut that the plan no longer has was tightened all the same"
    );
    let told = service
        .get(&format!("/p/{}/record?kept=1&seen=1", kept.record))
        .text();
    assert!(
        told.contains("it was revision 1 and is revision 2"),
        "{told}"
    );
}

#[test]
fn a_view_link_reads_the_record_and_writes_nothing() {
    let service = start();
    let kept = service.create(&unknown());
    let shown = page(&service, &kept.view);
    assert!(!shown.contains("<form") && shown.contains("enters nothing"));
    assert_eq!(
        form(
            &service,
            &kept.view,
            &[&HEAD[..], &[("do", "done")]].concat()
        )
        .status,
        403
    );
    assert_eq!(
        form(
            &service,
            &"a".repeat(32),
            &[&HEAD[..], &[("do", "done")]].concat()
        )
        .status,
        404
    );
    let foreign = [
        ("content-type", "application/x-www-form-urlencoded"),
        ("sec-fetch-site", "cross-site"),
    ];
    let path = format!("/p/{}/record", kept.record);
    assert_eq!(
        service
            .send(
                "POST",
                &path,
                &foreign,
                b"task=dig&form=f&revision=1&who=A&do=done"
            )
            .status,
        403
    );
    let opened = service.get(&format!("/p/{}", kept.record));
    assert!(
        opened.header("location").ends_with("/record"),
        "a helper's link leads to the work"
    );
}

#[test]
fn the_script_hears_in_json_what_became_of_a_form() {
    let service = start();
    let kept = service.create(&unknown());
    let send = |body: &str| {
        let headers = [
            ("content-type", "application/x-www-form-urlencoded"),
            ("accept", "application/json"),
        ];
        service.send(
            "POST",
            &format!("/p/{}/record", kept.record),
            &headers,
            body.as_bytes(),
        )
    };
    let done = send("task=dig&form=f&revision=1&who=A&do=done");
    assert_eq!((done.status, done.json()["kept"].as_u64()), (200, Some(1)));
    let bad = send("task=dig&form=g&revision=1&who=&do=done");
    assert_eq!(
        (bad.status, bad.json()["refused"][0].as_str().unwrap()),
        (422, "Say who enters this: a name or initials.")
    );
    let taken = send("task=dig&form=f&revision=1&who=B&do=done");
    assert_eq!(
        (taken.status, taken.json()["code"].as_str().unwrap()),
        (409, "name_taken")
    );
}
