//! The helper's page from outside: forms without scripts, photographs, and what the owner and an old sheet's holder see.

use std::io::Write;
use std::process::Command;

use serde_json::json;
use stillground_tests::http::Answer;
use stillground_tests::service::{Kept, Service, start, titled, unknown};

fn form(service: &Service, secret: &str, pairs: &[(&str, &str)]) -> Answer {
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

fn page(service: &Service, secret: &str) -> String {
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
    let plan = service.get(&format!("/p/{}/plan", kept.edit)).text();
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
            && text.contains("Nothing was kept yet")
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
        &[("content-type", "text/plain")],
        &vec![b'x'; 2 * 1024 * 1024],
    );
    assert_eq!(large_elsewhere.status, 413);
    assert!(page(&service, &kept.record).contains("Nothing yet."));
}

/// The texts of all codes on a page of a PDF, read by a decoder that has nothing to do with the one that drew them.
fn codes(pdf: &[u8], page: u32) -> Vec<String> {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("sheet.pdf");
    std::fs::write(&file, pdf).unwrap();
    let page = page.to_string();
    let output = Command::new("pdftoppm")
        .args(["-gray", "-r", "300", "-f", &page, "-l", &page])
        .arg(&file)
        .output()
        .unwrap();
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    let (width, height, dots) = grey(&output.stdout);
    let mut picture =
        rqrr::PreparedImage::prepare_from_greyscale(width, height, |x, y| dots[y * width + x]);
    let mut found: Vec<String> = picture
        .detect_grids()
        .iter()
        .filter_map(|grid| grid.decode().ok())
        .map(|(_, text)| text)
        .collect();
    found.sort();
    found
}

/// Width, height and dots of a portable greymap, netpbm's PGM.
pub fn grey(file: &[u8]) -> (usize, usize, &[u8]) {
    let mut start = 0;
    let mut word = || {
        let length = file[start..]
            .iter()
            .position(u8::is_ascii_whitespace)
            .unwrap();
        let word = std::str::from_utf8(&file[start..start + length]).unwrap();
        start += length + 1;
        word.to_owned()
    };
    assert_eq!(word(), "P5");
    let (width, height, _) = (word().parse().unwrap(), word().parse().unwrap(), word());
    (width, height, &file[start..])
}

#[test]
fn the_code_on_every_sheet_is_read_back_and_tells_when_the_plan_has_moved_on() {
    let service = start();
    let kept = service.create(&titled("Secret garden pier"));
    let printed = service.get(&format!("/p/{}/template.pdf", kept.edit)).body;
    let found = codes(&printed, 1);
    let [check] = found.as_slice() else {
        panic!("one code on a sheet printed from an edit link: {found:?}")
    };
    assert!(
        check.contains("/s/") && check.ends_with("?rev=1"),
        "{check}"
    );
    for secret in [&kept.edit, &kept.record, &kept.view, &kept.id] {
        assert!(!check.contains(secret.as_str()), "the code opens nothing");
    }
    let path = format!(
        "/{}",
        check.split('/').skip(3).collect::<Vec<_>>().join("/")
    );
    let ask = |path: &str| {
        let answer = service.get(path);
        assert_eq!(answer.status, 200);
        assert!(
            !answer.text().contains("Secret garden"),
            "nothing of the plan is said"
        );
        answer.text()
    };
    assert!(ask(&path).contains("This sheet is the latest"));
    assert_eq!(
        service.replace(&kept, 1, &json!({ "schema_version": 1, "title": "Secret garden pier", "block": { "depth_m": 0.8 } })).status,
        200
    );
    assert!(ask(&path).contains("This sheet is superseded"));
    for rev in ["0", "9", "x", "-1", "99999999999"] {
        assert!(
            ask(&path.replace("rev=1", &format!("rev={rev}"))).contains("Which sheet is this?"),
            "{rev}"
        );
    }
}

#[test]
fn a_sheet_printed_from_a_view_link_also_opens_the_plan_and_says_what_changed() {
    let service = start();
    let kept = service.create(&json!({ "schema_version": 1, "block": { "depth_m": 0.8 } }));
    let printed = service.get(&format!("/p/{}/template.pdf", kept.view)).body;
    let found = codes(&printed, 1);
    assert_eq!(found.len(), 2, "{found:?}");
    let opens = found
        .iter()
        .find(|code| code.contains(&kept.view))
        .expect("a code that opens the plan");
    let path = format!(
        "/{}",
        opens.split('/').skip(3).collect::<Vec<_>>().join("/")
    );
    assert!(
        service
            .get(&path)
            .text()
            .contains("The sheet that you hold is the latest")
    );
    assert_eq!(
        service
            .replace(
                &kept,
                1,
                &json!({ "schema_version": 1, "block": { "depth_m": 0.9 } })
            )
            .status,
        200
    );
    let text = service.get(&path).text();
    assert!(
        text.contains("The sheet that you hold is superseded")
            && text.contains("Answers that changed")
            && text.contains("Figures that changed")
    );
    assert!(text.contains("0.8\u{a0}m") && text.contains("0.9\u{a0}m"));
    let plain = service.get(&format!("/p/{}/plan", kept.view)).text();
    assert!(!plain.contains("The sheet that you hold"));
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
