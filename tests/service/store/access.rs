//! Who may begin plans, the organiser's shelf, and what is found again: the same on either database.

use stillground_tests::service::{titled, unknown};

use super::house::{FORM, house, shown};

#[test]
fn with_invitations_a_code_begins_as_many_plans_as_it_says_and_no_more() {
    let house = house("invited", |_| {});
    let front = house.get("/", "").text();
    assert!(
        front.contains("name=\"code\""),
        "the front page asks for it"
    );
    for body in ["", "code=", &format!("code={}", "a".repeat(32)), "code=%00"] {
        let refused = house.post("/new", "", body);
        assert_eq!(refused.status, 403, "{body}");
        assert!(refused.text().contains("With an invitation only"));
    }
    let cookie = house.enter();
    let code = house.code(&cookie, 2);
    assert_eq!(house.post("/new", "", &format!("code={code}")).status, 303);
    assert_eq!(
        house.post("/example", "", &format!("code={code}")).status,
        303
    );
    assert_eq!(
        house.post("/new", "", &format!("code={code}")).status,
        403,
        "it is used up"
    );
    let json = [
        ("content-type", "application/json"),
        ("stillground-invitation", code.as_str()),
    ];
    let refused = house.service.send(
        "POST",
        "/api/v1/plans",
        &json,
        unknown().to_string().as_bytes(),
    );
    assert_eq!(
        (refused.status, refused.json()["code"].as_str().unwrap()),
        (403, "not_invited")
    );
    let another = house.code(&cookie, 5);
    let shelf = house.get("/organiser", &cookie).text();
    assert!(
        !shelf.contains(&another) && shelf.contains("me: 5 plans"),
        "the shelf shows no code"
    );
    let id = shelf
        .split("organiser/invitations")
        .nth(1)
        .unwrap()
        .split("value=\"")
        .nth(1)
        .unwrap()
        .split('"')
        .next()
        .unwrap();
    assert_eq!(
        house
            .post(
                "/organiser/invitations",
                &cookie,
                &format!("do=withdraw&id={id}")
            )
            .status,
        303
    );
    assert_eq!(
        house.post("/new", "", &format!("code={another}")).status,
        403,
        "it is withdrawn"
    );
    assert_eq!(
        house.post("/new", &cookie, "").status,
        303,
        "the organiser needs none"
    );
}

#[test]
fn where_only_the_organiser_begins_plans_nobody_else_does() {
    let house = house("organiser", |_| {});
    assert_eq!(house.post("/new", "", "").status, 403);
    assert_eq!(house.post("/example", "", "").status, 403);
    assert_eq!(
        house.service.post_json("/api/v1/plans", &unknown()).status,
        403
    );
    assert!(!house.get("/", "").text().contains("Plan a pier"));
    let cookie = house.enter();
    assert!(house.get("/", &cookie).text().contains("Plan a pier"));
    assert_eq!(house.post("/new", &cookie, "").status, 303);
    let _ = house.created("by a program");
}

#[test]
fn a_lost_edit_link_is_replaced_with_the_recovery_code_once() {
    let house = house("anyone", |_| {});
    let kept = house.created("Hollow Oak");
    let old = shown(&house.post(
        &format!("/p/{}/links", kept.edit),
        "",
        "right=edit&do=recovery",
    ));
    let code = shown(&house.post(
        &format!("/p/{}/links", kept.edit),
        "",
        "right=edit&do=recovery",
    ));
    assert_ne!(old, code);
    assert_eq!(
        house.post("/recover", "", &format!("code={old}")).status,
        403,
        "a newer one was made since"
    );
    let found = house.post("/recover", "", &format!("code={}", code.to_uppercase()));
    assert_eq!(found.status, 303, "{}", found.text());
    assert!(
        found.header("location").starts_with("/p/") && found.header("location").ends_with("/links")
    );
    assert_eq!(house.service.read(&kept, &kept.edit, "").status, 404);
    assert_eq!(house.service.get(found.header("location")).status, 200);
    assert_eq!(
        house.post("/recover", "", &format!("code={code}")).status,
        403,
        "it is used up"
    );
    let viewer = house.post(
        &format!("/p/{}/links", kept.view),
        "",
        "right=edit&do=recovery",
    );
    assert_eq!(viewer.status, 403, "only who may edit makes one");
}

#[test]
fn a_program_finds_a_plan_again_with_its_recovery_code_once() {
    let house = house("anyone", |_| {});
    let kept = house.created("Hollow Oak");
    let code = house.service.recovery_code(&kept);
    let found = house
        .service
        .post_json("/api/v1/recover", &serde_json::json!({ "code": code }));
    assert_eq!(
        (found.status, found.json()["opens"].as_str().unwrap()),
        (201, "edit"),
        "{}",
        found.text()
    );
    assert_eq!(found.header("cache-control"), "no-store");
    let secret = found.json()["secret"].as_str().unwrap().to_owned();
    assert_eq!(
        (
            house.service.read(&kept, &kept.edit, "").status,
            house.service.read(&kept, &secret, "").status
        ),
        (404, 200)
    );
    for wrong in [code.as_str(), "", "x", &"a".repeat(32)] {
        let refused = house
            .service
            .post_json("/api/v1/recover", &serde_json::json!({ "code": wrong }));
        assert_eq!(
            (refused.status, refused.json()["code"].as_str().unwrap()),
            (403, "no_such_code"),
            "{wrong}"
        );
    }
    let refused = house.service.send(
        "POST",
        &kept.path("/recovery"),
        &[("authorization", &format!("Bearer {}", kept.view))],
        b"",
    );
    assert_eq!(refused.status, 403, "only who may edit makes one");
    let form = house.service.send(
        "POST",
        "/api/v1/recover",
        &[FORM],
        format!("code={code}").as_bytes(),
    );
    assert_eq!(form.status, 415, "a form of another site cannot send one");
}

#[test]
fn a_link_may_end_by_itself() {
    let house = house("anyone", |_| {});
    let kept = house.created("Hollow Oak");
    let page = house
        .post(
            &format!("/p/{}/links", kept.edit),
            "",
            "right=view&do=replace&days=30",
        )
        .text();
    assert!(page.contains("/p/"), "{page}");
    assert!(
        house
            .get(&format!("/p/{}/links", kept.edit), "")
            .text()
            .contains("and it ends 20")
    );
    for days in ["0", "-1", "x", "99999"] {
        assert_eq!(
            house
                .post(
                    &format!("/p/{}/links", kept.edit),
                    "",
                    &format!("right=view&do=replace&days={days}")
                )
                .status,
            400,
            "{days}"
        );
    }
}

#[test]
fn no_more_is_kept_than_the_house_says() {
    let house = house("anyone", |settings| {
        settings.most_plans = Some("2".to_owned());
        settings.most_revisions = Some("3".to_owned());
    });
    let kept = house.created("Hollow Oak");
    assert_eq!(house.service.replace(&kept, 1, &titled("two")).status, 200);
    assert_eq!(
        house.service.replace(&kept, 2, &titled("three")).status,
        200
    );
    let refused = house.service.replace(&kept, 3, &titled("four"));
    assert_eq!(
        (refused.status, refused.json()["code"].as_str().unwrap()),
        (403, "quota")
    );
    assert_eq!(
        house.service.read(&kept, &kept.view, "").json()["title"],
        "three",
        "nothing was half saved"
    );
    let _ = house.created("Long Barn");
    let full = house.service.post_json("/api/v1/plans", &unknown());
    assert_eq!(
        (full.status, full.json()["code"].as_str().unwrap()),
        (403, "shelf_full")
    );
    let shelf = house.get("/organiser", &house.enter()).text();
    assert!(
        shelf.contains("2 plans are kept here, of 2 at most"),
        "{shelf}"
    );
    let small = self::house("anyone", |settings| {
        settings.most_plan_bytes = Some("10".to_owned())
    });
    let kept = small.created("Hollow Oak");
    assert_eq!(small.service.replace(&kept, 1, &titled("two")).status, 403);
}

#[test]
fn a_new_plan_starts_from_what_the_house_knows_and_says_so() {
    let file = tempfile::tempdir().unwrap();
    let path = file.path().join("house.json");
    std::fs::write(
        &path,
        r#"{"plan":{"schema_version":1,"code":"eurocode","site":{"frost_depth_m":0.85}},"tubes_mm":[[168.3,6.3],[219.1,8.0]]}"#,
    )
    .unwrap();
    let house = house("anyone", |settings| settings.defaults_file = Some(path));
    let begun = house.post("/new", "", "");
    let site = begun.header("location").replace("/short/ground", "/site");
    let page = house.get(&site, "").text();
    assert!(
        page.contains("From the club’s defaults") && page.contains("0.85"),
        "{page}"
    );
    let pier = house.get(&site.replace("/site", "/pier"), "").text();
    assert!(pier.contains("Tubes in stock") && pier.contains("168"));
    let floor = house.get(&site.replace("/site", "/floor"), "").text();
    assert!(!floor.contains("From the club’s defaults"));
}
