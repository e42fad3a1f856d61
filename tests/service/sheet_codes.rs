//! The codes on printed sheets, read back by another library.

use std::process::Command;

use serde_json::json;
use stillground_tests::service::{start, titled};

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
