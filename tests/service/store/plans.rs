//! A plan is kept as numbered revisions; what was acknowledged is never lost or overwritten unseen.

use std::collections::HashSet;
use std::thread;

use stillground::design::ENGINE_VERSION;
use stillground_tests::service::{start_with, titled, unknown};

use super::{place, start};

#[test]
fn a_plan_of_which_nothing_is_known_is_kept_and_designed() {
    let service = start();
    let kept = service.create(&unknown());
    let read = service.read(&kept, &kept.view, "");
    assert_eq!((read.status, read.header("etag")), (200, "\"1\""));
    assert_eq!(read.json()["schema_version"], 1);
    let design = service.read(&kept, &kept.view, "/design").json();
    assert!(!design["assumptions"].as_array().unwrap().is_empty());
    assert_eq!(
        design,
        service.post_json("/api/v1/design", &unknown()).json()
    );
}

#[test]
fn each_save_is_a_numbered_revision_that_can_be_read_again() {
    let service = start();
    let kept = service.create(&titled("one"));
    let saved = service.replace(&kept, 1, &titled("two"));
    assert_eq!((saved.status, saved.header("etag")), (200, "\"2\""));
    let revisions = service.read(&kept, &kept.edit, "/revisions").json()["revisions"].clone();
    let titles: Vec<_> = revisions
        .as_array()
        .unwrap()
        .iter()
        .map(|line| line["title"].as_str().unwrap())
        .collect();
    assert_eq!(titles, ["two", "one"]);
    assert!(revisions[0]["saved_at"].as_str().unwrap().ends_with('Z'));
    assert_eq!(
        service.read(&kept, &kept.edit, "/revisions/1").json()["title"],
        "one"
    );
    assert_eq!(service.read(&kept, &kept.edit, "/revisions/3").status, 404);
    assert_eq!(service.read(&kept, &kept.edit, "/revisions/x").status, 404);
}

/// After an update the plan's page says with which version it was saved, and leads to what that changed.
#[test]
fn a_revision_knows_the_version_that_saved_it() {
    let place = place();
    let service = start_with(place.settings());
    let kept = service.create(&titled("one"));
    assert_eq!(service.replace(&kept, 1, &titled("two")).status, 200);
    let revisions = service.read(&kept, &kept.edit, "/revisions").json()["revisions"].clone();
    for line in revisions.as_array().unwrap() {
        assert_eq!(line["engine"], ENGINE_VERSION);
    }
    let page = |below: &str| service.get(&format!("/p/{}/{below}", kept.edit)).text();
    assert!(!page("plan").contains("saved with"));
    place.tamper("UPDATE revisions SET engine = '0.1.9' WHERE number = 2");
    let told = page("plan");
    assert!(told.contains("saved with 0.1.9; today’s planner is "), "{told}");
    assert!(told.contains("/versions\">what changed</a>"));
    assert!(page("revisions").contains("0.1.9"));
    // A revision from before versions were kept says nothing of one.
    place.tamper("UPDATE revisions SET engine = NULL");
    assert!(!page("plan").contains("saved with"));
    assert!(page("revisions").contains("not kept"));
}

#[test]
fn a_save_on_an_old_revision_is_refused_and_shows_the_one_that_stands() {
    let service = start();
    let kept = service.create(&titled("one"));
    assert_eq!(service.replace(&kept, 1, &titled("hers")).status, 200);
    let refused = service.replace(&kept, 1, &titled("his"));
    assert_eq!(
        (refused.status, refused.header("content-type")),
        (412, "application/problem+json")
    );
    assert_eq!(refused.json()["current"]["revision"], 2);
    assert_eq!(refused.json()["current"]["plan"]["title"], "hers");
    assert_eq!(service.read(&kept, &kept.edit, "").json()["title"], "hers");
}

#[test]
fn a_save_that_does_not_say_what_it_replaces_is_refused() {
    let service = start();
    let kept = service.create(&unknown());
    let bearer = format!("Bearer {}", kept.edit);
    let headers = [
        ("content-type", "application/json"),
        ("authorization", &*bearer),
    ];
    assert_eq!(
        service
            .send(
                "PUT",
                &kept.path(""),
                &headers,
                unknown().to_string().as_bytes()
            )
            .status,
        428
    );
    for weak in ["W/\"1\"", "\"7\"", "1", ""] {
        let headers = [headers[0], headers[1], ("if-match", weak)];
        assert_eq!(
            service
                .send(
                    "PUT",
                    &kept.path(""),
                    &headers,
                    unknown().to_string().as_bytes()
                )
                .status,
            412,
            "{weak}"
        );
    }
    let headers = [headers[0], headers[1], ("if-match", "\"9\", \"1\"")];
    assert_eq!(
        service
            .send(
                "PUT",
                &kept.path(""),
                &headers,
                unknown().to_string().as_bytes()
            )
            .status,
        200
    );
}

#[test]
fn of_many_who_save_on_one_revision_exactly_one_is_taken() {
    let service = start();
    let kept = service.create(&unknown());
    for base in 1..=5 {
        let statuses: Vec<u16> = thread::scope(|scope| {
            let save = |n: i32| {
                scope.spawn({
                    let (service, kept) = (&service, &kept);
                    move || service.replace(kept, base, &titled(&n.to_string())).status
                })
            };
            let writers: Vec<_> = (0..8).map(save).collect();
            writers
                .into_iter()
                .map(|writer| writer.join().unwrap())
                .collect()
        });
        assert_eq!(
            statuses.iter().filter(|&&status| status == 200).count(),
            1,
            "{statuses:?}"
        );
        assert_eq!(
            statuses.iter().filter(|&&status| status == 412).count(),
            7,
            "{statuses:?}"
        );
    }
}

#[test]
fn saves_that_wait_together_are_each_kept_or_refused_by_themselves() {
    let service = start();
    let plans: Vec<_> = (0..8).map(|_| service.create(&unknown())).collect();
    let statuses: Vec<u16> = thread::scope(|scope| {
        let save = |n: usize| {
            let (service, kept) = (&service, &plans[n / 2]);
            scope.spawn(move || service.replace(kept, 1, &titled(&n.to_string())).status)
        };
        let writers: Vec<_> = (0..16).map(save).collect();
        writers
            .into_iter()
            .map(|writer| writer.join().unwrap())
            .collect()
    });
    for (n, (kept, two)) in plans.iter().zip(statuses.chunks(2)).enumerate() {
        let kept_one = two.iter().position(|&status| status == 200).unwrap();
        assert_eq!(two[1 - kept_one], 412, "{statuses:?}");
        let read = service.read(kept, &kept.view, "");
        let title = (n * 2 + kept_one).to_string();
        assert_eq!(
            (read.header("etag"), read.json()["title"].as_str()),
            ("\"2\"", Some(&*title))
        );
    }
}

#[test]
fn a_plan_that_has_not_changed_is_not_sent_again() {
    let service = start();
    let kept = service.create(&unknown());
    let bearer = format!("Bearer {}", kept.view);
    let again = |below: &str, tag: &str| {
        service.send(
            "GET",
            &kept.path(below),
            &[("authorization", &bearer), ("if-none-match", tag)],
            b"",
        )
    };
    let unchanged = again("", "\"1\"");
    assert_eq!(
        (
            unchanged.status,
            unchanged.header("etag"),
            unchanged.body.len()
        ),
        (304, "\"1\"", 0)
    );
    assert_eq!(again("", "W/\"1\"").status, 304);
    assert_eq!(again("", "*").status, 304);
    assert_eq!(again("", "\"2\"").status, 200);
    let tag = service
        .read(&kept, &kept.view, "/design")
        .header("etag")
        .to_owned();
    assert_eq!(again("/design", &tag).status, 304);
}

#[test]
fn a_restart_keeps_everything() {
    let place = place();
    let before = start_with(place.settings());
    let kept = before.create(&titled("kept"));
    assert_eq!(before.replace(&kept, 1, &titled("kept again")).status, 200);
    drop(before);
    let after = start_with(place.settings());
    assert_eq!(
        after.read(&kept, &kept.view, "").json()["title"],
        "kept again"
    );
    assert_eq!(
        after.read(&kept, &kept.edit, "/revisions/1").json()["title"],
        "kept"
    );
}

#[test]
fn names_and_secrets_never_repeat() {
    let service = start();
    let kept: Vec<_> = (0..20).map(|_| service.create(&unknown())).collect();
    let all: HashSet<_> = kept
        .iter()
        .flat_map(|kept| [&kept.id, &kept.edit, &kept.record, &kept.view])
        .collect();
    assert_eq!(all.len(), 80);
}
