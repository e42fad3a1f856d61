//! Who may begin plans, the organiser's shelf, and what is found again: the same on either database.

use stillground_server::config::Settings;
use stillground_tests::http::Answer;
use stillground_tests::service::{Service, start_with, titled, unknown};

use super::place;

const PASSWORD: &str = "twenty letters and more";
const FORM: (&str, &str) = ("content-type", "application/x-www-form-urlencoded");

/// A house with an organiser; the folder of its password is kept by the caller.
struct HouseOf {
    service: Service,
    _place: stillground_tests::place::Place,
}

fn house(who: &str, more: impl FnOnce(&mut Settings)) -> HouseOf {
    let place = place();
    let file = place.folder().join("password");
    std::fs::write(&file, PASSWORD).unwrap();
    let mut settings = Settings {
        who_creates: Some(who.to_owned()),
        organiser_token_file: Some(file),
        ..place.settings()
    };
    more(&mut settings);
    HouseOf {
        service: start_with(settings),
        _place: place,
    }
}

impl HouseOf {
    fn post(&self, path: &str, cookie: &str, body: &str) -> Answer {
        let mut headers = vec![FORM, ("sec-fetch-site", "same-origin")];
        if !cookie.is_empty() {
            headers.push(("cookie", cookie));
        }
        self.service.send("POST", path, &headers, body.as_bytes())
    }

    fn get(&self, path: &str, cookie: &str) -> Answer {
        self.service.send("GET", path, &[("cookie", cookie)], b"")
    }

    fn enter(&self) -> String {
        let answer = self.post(
            "/organiser/in",
            "",
            &format!("password={}", PASSWORD.replace(' ', "+")),
        );
        assert_eq!(answer.status, 303, "{}", answer.text());
        answer
            .header("set-cookie")
            .split(';')
            .next()
            .unwrap()
            .to_owned()
    }

    fn code(&self, cookie: &str, uses: u32) -> String {
        shown(&self.post(
            "/organiser/invitations",
            cookie,
            &format!("do=make&said=me&uses={uses}&days=3"),
        ))
    }

    fn created(&self, title: &str) -> stillground_tests::service::Kept {
        let answer = self.service.send(
            "POST",
            "/api/v1/plans",
            &[
                ("content-type", "application/json"),
                ("authorization", &format!("Bearer {PASSWORD}")),
            ],
            titled(title).to_string().as_bytes(),
        );
        assert_eq!(answer.status, 201, "{}", answer.text());
        let body = answer.json();
        let text = |value: &serde_json::Value| value.as_str().unwrap().to_owned();
        let links = &body["links"];
        stillground_tests::service::Kept {
            id: text(&body["id"]),
            edit: text(&links["edit"]),
            record: text(&links["record"]),
            view: text(&links["view"]),
        }
    }
}

/// The value of the box that is shown once.
fn shown(answer: &Answer) -> String {
    let text = answer.text();
    let of = |after: &str| {
        text.split(after)
            .nth(1)
            .and_then(|rest| rest.split("value=\"").nth(1))
            .and_then(|rest| rest.split('"').next())
            .map(str::to_owned)
    };
    of("id=\"once\"")
        .or_else(|| of("id=\"recovery-code\""))
        .unwrap_or_else(|| panic!("nothing is shown: {text}"))
}

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
    assert!(!house.get("/", "").text().contains("Start a plan"));
    let cookie = house.enter();
    assert!(house.get("/", &cookie).text().contains("Start a plan"));
    assert_eq!(house.post("/new", &cookie, "").status, 303);
    let _ = house.created("by a program");
}

#[test]
fn nothing_behind_the_door_is_seen_or_done_without_a_session() {
    let house = house("anyone", |_| {});
    let kept = house.created("Hollow Oak");
    let bodies = [
        ("/organiser/plan", format!("id={}&do=remove", kept.id)),
        ("/organiser/plan", format!("id={}&do=link", kept.id)),
        ("/organiser/invitations", "do=make&uses=1".to_owned()),
    ];
    for cookie in [
        "",
        "organiser=",
        &format!("organiser={}", "a".repeat(32)),
        &format!("organiser={PASSWORD}"),
    ] {
        for (path, body) in &bodies {
            assert_eq!(
                house.post(path, cookie, body).status,
                403,
                "{path} {cookie}"
            );
        }
        let door = house.get("/organiser", cookie);
        assert!(
            door.text().contains("The organiser’s door") && !door.text().contains("Hollow Oak")
        );
    }
    assert_eq!(
        house.post("/organiser/in", "", "password=wrong").status,
        403
    );
    let cookie = house.enter();
    assert!(
        house
            .get("/organiser", &cookie)
            .text()
            .contains("Hollow Oak")
    );
    let stolen = house.service.send(
        "POST",
        "/organiser/plan",
        &[FORM, ("cookie", &cookie), ("sec-fetch-site", "cross-site")],
        bodies[0].1.as_bytes(),
    );
    assert_eq!(stolen.status, 403, "another site's form");
    let hidden = house.service.send(
        "POST",
        "/organiser/plan",
        &[FORM, ("cookie", &cookie)],
        bodies[0].1.as_bytes(),
    );
    assert_eq!(hidden.status, 403, "a form that hides where it comes from");
    assert_eq!(house.post("/organiser/out", &cookie, "").status, 303);
    assert!(
        !house
            .get("/organiser", &cookie)
            .text()
            .contains("Hollow Oak"),
        "a session that was left is over, not forgotten by the browser only"
    );
}

#[test]
fn the_session_is_kept_from_scripts_from_other_sites_and_from_the_open_air() {
    let house = house("anyone", |settings| {
        settings.trusted_proxies = Some("127.0.0.1".to_owned())
    });
    let tls = [
        FORM,
        ("x-forwarded-proto", "https"),
        ("x-forwarded-for", "203.0.113.5"),
    ];
    let answer = house.service.send(
        "POST",
        "/organiser/in",
        &tls,
        format!("password={PASSWORD}").replace(' ', "+").as_bytes(),
    );
    let cookie = answer.header("set-cookie");
    for part in ["HttpOnly", "SameSite=Strict", "Secure"] {
        assert!(cookie.contains(part), "{cookie}");
    }
    assert!(
        !cookie.contains("Max-Age") && !cookie.contains("Expires"),
        "it ends with the browser: {cookie}"
    );
}

#[test]
fn guesses_at_the_password_are_limited() {
    let house = house("anyone", |settings| {
        settings.trusted_proxies = Some("127.0.0.1".to_owned())
    });
    let from = |from: &'static str| [FORM, ("x-forwarded-for", from)];
    for _ in 0..10 {
        assert_eq!(
            house
                .service
                .send(
                    "POST",
                    "/organiser/in",
                    &from("203.0.113.5"),
                    b"password=wrong"
                )
                .status,
            403
        );
    }
    let right = format!("password={PASSWORD}").replace(' ', "+");
    assert_eq!(
        house
            .service
            .send(
                "POST",
                "/organiser/in",
                &from("203.0.113.5"),
                right.as_bytes()
            )
            .status,
        429
    );
    assert_eq!(
        house
            .service
            .send(
                "POST",
                "/organiser/in",
                &from("203.0.113.6"),
                right.as_bytes()
            )
            .status,
        303
    );
    let bearer = [
        ("content-type", "application/json"),
        ("authorization", "Bearer wrong"),
        ("x-forwarded-for", "203.0.113.7"),
    ];
    let answers: Vec<u16> = (0..12)
        .map(|_| {
            house
                .service
                .send(
                    "POST",
                    "/api/v1/plans",
                    &bearer,
                    unknown().to_string().as_bytes(),
                )
                .status
        })
        .collect();
    assert!(answers.contains(&429), "{answers:?}");
}

#[test]
fn a_plan_is_found_by_its_title_closed_removed_and_brought_back() {
    let house = house("anyone", |_| {});
    let kept = house.created("Hollow Oak 100%");
    let _ = house.created("Long Barn");
    let cookie = house.enter();
    let found = house.get("/organiser?title=oAk%20100%25", &cookie).text();
    assert!(found.contains("Hollow Oak") && !found.contains("Long Barn"));
    let opens = || house.service.read(&kept, &kept.view, "").status;
    let act = |action: &str, more: &str| {
        house
            .post(
                "/organiser/plan",
                &cookie,
                &format!("id={}&do={action}{more}", kept.id),
            )
            .status
    };
    assert_eq!((act("close", "&on=2999-01-01"), opens()), (303, 200));
    assert!(
        house
            .get("/organiser", &cookie)
            .text()
            .contains("open until 2999-01-01")
    );
    assert_eq!((act("close", ""), opens()), (303, 404));
    assert_eq!(
        house
            .service
            .replace(&kept, 1, &titled("behind the back"))
            .status,
        404
    );
    assert_eq!((act("open", ""), opens()), (303, 200));
    assert_eq!((act("remove", ""), opens()), (303, 404));
    assert!(
        !house
            .get("/organiser", &cookie)
            .text()
            .contains("Hollow Oak")
    );
    assert!(
        house
            .get("/organiser?removed=yes", &cookie)
            .text()
            .contains("Hollow Oak")
    );
    assert_eq!((act("restore", ""), opens()), (303, 200));
    assert_eq!(act("close", "&on=tomorrow"), 400);
    assert_eq!(act("burn", ""), 400);
}

#[test]
fn a_lost_edit_link_is_replaced_by_the_organiser() {
    let house = house("anyone", |_| {});
    let kept = house.created("Hollow Oak");
    let cookie = house.enter();
    let address = shown(&house.post(
        "/organiser/plan",
        &cookie,
        &format!("id={}&do=link", kept.id),
    ));
    let secret = address.rsplit('/').next().unwrap().to_owned();
    assert_eq!(
        house.service.read(&kept, &kept.edit, "").status,
        404,
        "the old one opens nothing"
    );
    assert_eq!(house.service.read(&kept, &secret, "/links").status, 200);
    assert_eq!(
        house.service.read(&kept, &kept.view, "").status,
        200,
        "the others stay"
    );
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
    let site = begun.header("location").to_owned();
    let page = house.get(&site, "").text();
    assert!(
        page.contains("From this house’s own values") && page.contains("0.85"),
        "{page}"
    );
    let pier = house.get(&site.replace("/site", "/pier"), "").text();
    assert!(pier.contains("Tubes in stock") && pier.contains("168"));
    let floor = house.get(&site.replace("/site", "/floor"), "").text();
    assert!(!floor.contains("From this house’s own values"));
}

#[test]
fn without_a_password_there_is_no_shelf() {
    let place = place();
    let service = start_with(place.settings());
    assert_eq!(service.get("/organiser").status, 404);
    assert_eq!(
        service
            .send("POST", "/organiser/in", &[FORM], b"password=")
            .status,
        404
    );
    assert_eq!(
        service
            .send("POST", "/organiser/plan", &[FORM], b"id=x&do=remove")
            .status,
        404
    );
}
