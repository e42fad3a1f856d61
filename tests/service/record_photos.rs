//! Photographs of the work from outside: by a form and by a program, kept without their place.

use std::io::Write;

use stillground_tests::http::Answer;
use stillground_tests::service::{Kept, Service, start, unknown};

use crate::record_page::page;

/// A photograph in a form, the boundary spelled out.
fn photo(service: &Service, secret: &str, name: &str, picture: &[u8]) -> Answer {
    let mut body = Vec::new();
    for (field, text) in [
        ("task", "dig"),
        ("form", name),
        ("revision", "1"),
        ("who", "A. Helper"),
        ("text", "north side"),
    ] {
        write!(
            body,
            "--edge\r\ncontent-disposition: form-data; name=\"{field}\"\r\n\r\n{text}\r\n"
        )
        .unwrap();
    }
    body.extend(b"--edge\r\ncontent-disposition: form-data; name=\"photo\"; filename=\"../x.jpg\"\r\ncontent-type: image/jpeg\r\n\r\n");
    body.extend(picture);
    body.extend(b"\r\n--edge--\r\n");
    let headers = [
        ("content-type", "multipart/form-data; boundary=edge"),
        ("accept", "application/json"),
    ];
    service.send(
        "POST",
        &format!("/p/{secret}/record/photos"),
        &headers,
        &body,
    )
}

/// A grey JPEG of eight by eight dots, with an EXIF that names the place, as `exiftool` would read it.
fn jpeg_with_place() -> Vec<u8> {
    let plain = include_bytes!("pictures/grey.jpg");
    let place =
        b"Exif\0\0II*\0\x08\0\0\0\x01\0\x25\x88\x04\0\x01\0\0\0\x1a\0\0\0\0\0\0\0GPS 51 30 north";
    let length = u16::try_from(place.len() + 2).unwrap().to_be_bytes();
    [&plain[..2], &[0xff, 0xe1], &length, place, &plain[2..]].concat()
}

#[test]
fn a_photograph_is_kept_without_its_place_and_shown_to_the_plans_links_only() {
    let service = start();
    let (kept, other) = (service.create(&unknown()), service.create(&unknown()));
    let answer = photo(&service, &kept.record, "p1", &jpeg_with_place());
    assert_eq!(answer.status, 200, "{}", answer.text());
    assert_eq!(
        photo(&service, &kept.record, "p1", &jpeg_with_place()).status,
        200,
        "sent again it is kept once"
    );
    let shown = service.get(&format!("/p/{}/photos/p1.photo", kept.view));
    assert_eq!(
        (shown.status, shown.header("content-type")),
        (200, "image/jpeg")
    );
    assert_eq!(
        (
            shown.header("x-content-type-options"),
            shown.header("cache-control")
        ),
        ("nosniff", "private, no-store")
    );
    for word in [&b"Exif"[..], b"GPS"] {
        assert!(
            !shown.body.windows(word.len()).any(|window| window == word),
            "the place is still there"
        );
    }
    assert_eq!(
        service
            .get(&format!("/p/{}/photos/p1.photo", other.view))
            .status,
        404
    );
    assert_eq!(
        page(&service, &kept.record).matches("north side").count(),
        2
    );
    assert_eq!(
        photo(&service, &kept.view, "p2", &jpeg_with_place()).status,
        403
    );
}

#[test]
fn what_is_no_photograph_or_too_large_is_refused_in_words() {
    let service = start();
    let kept = service.create(&unknown());
    let said = |answer: &Answer| answer.json()["detail"].as_str().unwrap().to_owned();
    let not_one = photo(&service, &kept.record, "a", b"PK\x03\x04 a zip");
    assert_eq!(
        (not_one.status, said(&not_one)),
        (422, "This file is no JPEG, PNG or WebP picture.".to_owned())
    );
    let large = photo(&service, &kept.record, "b", &vec![0xff; 40 * 1024 * 1024]);
    assert_eq!(
        (large.status, large.json()["code"].as_str().unwrap()),
        (413, "photo_too_large")
    );
    assert!(said(&large).contains("8 MiB"));
    let bomb = photo(
        &service,
        &kept.record,
        "c",
        include_bytes!("pictures/bomb.png"),
    );
    assert_eq!(bomb.status, 422);
    assert!(said(&bomb).contains("more dots"), "{}", said(&bomb));
    assert_eq!(photo(&service, &kept.record, "d", b"").status, 422);
    let torn = service.send(
        "POST",
        &format!("/p/{}/record/photos", kept.record),
        &[("content-type", "multipart/form-data; boundary=edge")],
        b"--edge\r\n",
    );
    assert_eq!(torn.status, 400);
    let large_elsewhere = service.send(
        "POST",
        &format!("/p/{}/record", kept.record),
        &[("content-type", "application/x-www-form-urlencoded")],
        &vec![b'x'; 2 * 1024 * 1024],
    );
    assert_eq!(large_elsewhere.status, 413);
    assert!(page(&service, &kept.record).contains("Nothing yet."));
}

/// The photograph itself, as a program sends it.
fn sent(
    service: &Service,
    kept: &Kept,
    secret: &str,
    about: &str,
    kind: &str,
    picture: &[u8],
) -> Answer {
    let bearer = format!("Bearer {secret}");
    let headers = [("authorization", &*bearer), ("content-type", kind)];
    service.send(
        "POST",
        &kept.path(&format!("/photos?revision=1&task=dig&who=A{about}")),
        &headers,
        picture,
    )
}

#[test]
fn a_program_sends_a_photograph_lists_it_and_reads_it_without_its_place() {
    let service = start();
    let (kept, other) = (service.create(&unknown()), service.create(&unknown()));
    let send = |secret: &str| {
        sent(
            &service,
            &kept,
            secret,
            "&id=p1&text=north%20side",
            "image/jpeg",
            &jpeg_with_place(),
        )
    };
    let first = send(&kept.record);
    assert_eq!(
        (first.status, first.json()["kind"].as_str().unwrap()),
        (201, "photo"),
        "{}",
        first.text()
    );
    assert_eq!(send(&kept.edit).status, 200, "sent again it is kept once");
    assert_eq!(send(&kept.view).status, 403);
    let listed = service.read(&kept, &kept.view, "/photos").json();
    assert_eq!(
        (
            listed["photos"].as_array().unwrap().len(),
            &listed["photos"][0]["text"]
        ),
        (1, &"north side".into())
    );
    let shown = service.read(&kept, &kept.view, "/photos/p1");
    assert_eq!(
        (shown.status, shown.header("content-type")),
        (200, "image/jpeg")
    );
    assert!(
        !shown.body.windows(3).any(|window| window == b"GPS"),
        "the place is still there"
    );
    assert_eq!(service.read(&other, &other.view, "/photos/p1").status, 404);
    assert_eq!(service.read(&kept, &other.view, "/photos/p1").status, 404);
}

#[test]
fn what_a_program_sends_that_is_no_photograph_is_refused_and_not_kept() {
    let service = start();
    let kept = service.create(&unknown());
    let send = |about: &str, kind: &str, picture: &[u8]| {
        sent(&service, &kept, &kept.record, about, kind, picture).status
    };
    assert_eq!(send("&id=a", "image/jpeg", b"PK\x03\x04 a zip"), 422);
    assert_eq!(
        send("&id=a", "image/png", include_bytes!("pictures/bomb.png")),
        422
    );
    assert_eq!(
        send("&id=a", "image/jpeg", &vec![0xff; 40 * 1024 * 1024]),
        413
    );
    assert_eq!(send("&id=a", "image/jpeg", b""), 422);
    assert_eq!(send("&id=a", "application/json", &jpeg_with_place()), 415);
    assert_eq!(send("&id=a&size=3", "image/jpeg", &jpeg_with_place()), 400);
    assert_eq!(send("", "image/jpeg", &jpeg_with_place()), 400);
    assert!(
        service.read(&kept, &kept.view, "/photos").json()["photos"]
            .as_array()
            .unwrap()
            .is_empty()
    );
}
