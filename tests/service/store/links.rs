//! A link is a capability: each opens what it is for, a wrong, revoked or unknown one opens nothing and says no more.

use jiff::{SignedDuration, Timestamp};
use stillground_server::config::Config;
use stillground_server::store::{Right, Store};
use stillground_tests::http::Answer;
use stillground_tests::place::Place;
use stillground_tests::service::{Kept, Service, start_in, start_with, titled, unknown};

use super::{place, start};

#[test]
fn only_the_edit_link_changes_a_plan() {
    let service = start();
    let kept = service.create(&unknown());
    for secret in [&kept.record, &kept.view] {
        assert_eq!(service.read(&kept, secret, "").status, 200);
        let lesser = Kept {
            edit: secret.clone(),
            ..kept.clone()
        };
        let refused = service.replace(&lesser, 1, &titled("changed"));
        assert_eq!(
            (refused.status, refused.json()["code"].as_str().unwrap()),
            (403, "not_with_this_link")
        );
        assert_eq!(service.read(&kept, secret, "/links").status, 403);
        assert_eq!(link(&service, &kept, secret, "POST", "view").status, 403);
    }
    assert_eq!(service.replace(&kept, 1, &titled("changed")).status, 200);
}

#[test]
fn whoever_shares_sees_which_link_was_opened_last_and_when() {
    let service = start();
    let kept = service.create(&unknown());
    let page = || service.get(&format!("/p/{}/links", kept.edit)).text();
    assert_eq!(page().matches("No opening of it is noted yet").count(), 2);
    assert_eq!(service.read(&kept, &kept.view, "").status, 200);
    let opened = || page().matches("Last opened on").count();
    // It is noted beside the answer.
    let begun = std::time::Instant::now();
    while opened() == 0 && begun.elapsed().as_secs() < 20 {
        std::thread::sleep(std::time::Duration::from_millis(20));
    }
    assert_eq!(opened(), 1);
    assert_eq!(page().matches("No opening of it is noted yet").count(), 1);
    let links = service.read(&kept, &kept.edit, "/links").json();
    let of = |right: &str| {
        let all = links["links"].as_array().unwrap();
        let link = all.iter().find(|link| link["opens"] == right).unwrap();
        link["opened_at"].clone()
    };
    assert!(of("view").is_string() && of("record").is_null(), "{links}");
}

/// A save looks its link up once more when it is kept: whatever became of a link or its plan meanwhile, it keeps nothing.
#[test]
fn a_link_that_no_longer_edits_keeps_nothing() {
    let place = place();
    let database = Config::new(place.settings()).unwrap().database;
    let service = start_in(place);
    let runtime = tokio::runtime::Runtime::new().unwrap();
    let store = runtime.block_on(Store::open(&database)).unwrap();
    let past = Timestamp::now() - SignedDuration::from_hours(1);
    let (kept, other) = (service.create(&unknown()), service.create(&unknown()));
    let refused = |secret: &str, what: &str| {
        let answer = service.replace(
            &Kept {
                edit: secret.to_owned(),
                ..kept.clone()
            },
            1,
            &titled("changed"),
        );
        assert_eq!(answer.status, 404, "{what}: {}", answer.text());
        assert_eq!(
            runtime
                .block_on(store.revisions(&kept.id, None))
                .unwrap()
                .len(),
            1,
            "{what}"
        );
    };
    refused(&other.edit, "another plan's");
    let ended = runtime
        .block_on(store.replace_link_until(&kept.id, Right::Edit, Some(past)))
        .unwrap();
    refused(&kept.edit, "replaced");
    refused(ended.reveal(), "ended by itself");
    let edit = runtime
        .block_on(store.replace_link(&kept.id, Right::Edit))
        .unwrap();
    runtime
        .block_on(store.close_plan(&kept.id, Some(past)))
        .unwrap();
    refused(edit.reveal(), "of a closed plan");
    runtime.block_on(store.close_plan(&kept.id, None)).unwrap();
    runtime.block_on(store.remove_plan(&kept.id)).unwrap();
    refused(edit.reveal(), "of a removed plan");
    assert!(runtime.block_on(store.bring_back(&kept.id)).unwrap());
    assert_eq!(
        service
            .replace(
                &Kept {
                    edit: edit.reveal().to_owned(),
                    ..kept.clone()
                },
                1,
                &titled("changed")
            )
            .status,
        200
    );
}

#[test]
fn a_wrong_a_revoked_and_an_unknown_link_are_answered_alike() {
    let service = start();
    let kept = service.create(&unknown());
    let other = service.create(&unknown());
    let revoked = kept.view.clone();
    assert_eq!(
        link(&service, &kept, &kept.edit, "DELETE", "view").status,
        204
    );
    let nowhere = Kept {
        id: "aaaaaaaaaaaaaaaa".to_owned(),
        ..kept.clone()
    };
    let answers = [
        service.read(&kept, &revoked, ""),
        service.read(&kept, &"a".repeat(32), ""),
        service.read(&kept, "short", ""),
        service.read(&kept, &kept.edit.to_uppercase(), ""),
        service.read(&kept, &other.edit, ""),
        service.read(&nowhere, &kept.edit, ""),
    ];
    for answer in &answers {
        assert_eq!((answer.status, answer.text()), (404, answers[0].text()));
    }
}

#[test]
fn a_page_that_was_shown_before_is_shown_to_no_withdrawn_link_and_never_out_of_date() {
    let service = start();
    let kept = service.create(&titled("first title"));
    let page = |step: &str| service.get(&format!("/p/{}/{step}", kept.view));
    for step in ["site", "plan"] {
        assert_eq!(
            (page(step).status, page(step).text()),
            (200, page(step).text())
        );
        assert!(page(step).text().contains("first title"));
    }
    assert_eq!(
        service.replace(&kept, 1, &titled("second title")).status,
        200
    );
    for step in ["site", "plan"] {
        assert!(
            page(step).text().contains("second title")
                && !page(step).text().contains("first title")
        );
    }
    assert_eq!(
        link(&service, &kept, &kept.edit, "DELETE", "view").status,
        204
    );
    for step in ["site", "plan"] {
        assert_eq!(page(step).status, 404);
    }
}

#[test]
fn a_request_without_a_secret_is_told_how_to_send_one() {
    let service = start();
    let kept = service.create(&unknown());
    let answer = service.get(&kept.path(""));
    assert_eq!(answer.status, 401);
    assert!(answer.header("www-authenticate").starts_with("Bearer"));
    let basic = service.send(
        "GET",
        &kept.path(""),
        &[("authorization", "Basic YTpi")],
        b"",
    );
    assert_eq!(basic.status, 401);
}

#[test]
fn a_replaced_link_opens_nothing_and_its_successor_does() {
    let service = start();
    let kept = service.create(&unknown());
    let made = link(&service, &kept, &kept.edit, "POST", "record");
    assert_eq!(made.status, 201);
    let secret = made.json()["secret"].as_str().unwrap().to_owned();
    assert_ne!(secret, kept.record);
    assert_eq!(service.read(&kept, &kept.record, "").status, 404);
    assert_eq!(service.read(&kept, &secret, "").status, 200);
    assert_eq!(
        link(&service, &kept, &kept.edit, "POST", "owner").status,
        404
    );
}

#[test]
fn the_list_of_links_shows_which_are_alive_and_no_secret() {
    let service = start();
    let kept = service.create(&unknown());
    assert_eq!(
        link(&service, &kept, &kept.edit, "DELETE", "record").status,
        204
    );
    let answer = service.read(&kept, &kept.edit, "/links");
    let links = answer.json()["links"].clone();
    assert!(
        links[0]["made_at"].is_string()
            && links[1]["made_at"].is_null()
            && links[2]["made_at"].is_string()
    );
    for secret in [&kept.edit, &kept.record, &kept.view] {
        assert!(!answer.text().contains(secret.as_str()));
    }
}

#[test]
fn no_secret_stands_in_the_database() {
    let place = place();
    let service = start_with(place.settings());
    let kept = service.create(&unknown());
    let _ = service.read(&kept, &kept.edit, "");
    drop(service);
    let stored = stored(&place);
    assert!(stored.iter().any(|bytes| !bytes.is_empty()), "nothing was stored");
    for bytes in stored {
        for secret in [&kept.edit, &kept.record, &kept.view] {
            assert!(
                !bytes
                    .windows(secret.len())
                    .any(|window| window == secret.as_bytes())
            );
        }
    }
}

fn link(service: &Service, kept: &Kept, secret: &str, method: &str, right: &str) -> Answer {
    service.send(
        method,
        &kept.path(&format!("/links/{right}")),
        &[("authorization", &format!("Bearer {secret}"))],
        b"",
    )
}

/// Everything that the store keeps, as bytes.
fn stored(place: &Place) -> Vec<Vec<u8>> {
    match place.database() {
        None => std::fs::read_dir(place.folder().join("data"))
            .unwrap()
            .map(|file| std::fs::read(file.unwrap().path()).unwrap())
            .collect(),
        Some((cluster, url)) => {
            let tables = cluster.ask(
                url,
                "SELECT tablename FROM pg_tables WHERE schemaname = 'public'",
            );
            tables
                .lines()
                .map(|table| {
                    cluster
                        .ask(url, &format!("SELECT * FROM {table}"))
                        .into_bytes()
                })
                .collect()
        }
    }
}
