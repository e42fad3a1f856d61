//! The organiser's page: who gets in, and what is done with a plan there.

use stillground_tests::service::{start_with, titled, unknown};

use super::house::{FORM, PASSWORD, house, shown};
use super::place;

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
            door.text().contains("Organiser sign-in") && !door.text().contains("Hollow Oak")
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
