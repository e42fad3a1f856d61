//! Measurements that a page's script sends when it can, files of two directions, and a pier that stood already.

use serde_json::json;
use stillground_tests::http::Answer;
use stillground_tests::service::{Service, start, unknown};
use stillground_tests::workspace;

use crate::order::form;
use crate::sheets::tool;

#[test]
fn a_file_of_two_directions_fills_the_boxes_of_either() {
    let service = start();
    let kept = service.create(&unknown());
    let text = std::fs::read_to_string(
        workspace().join("tests/engineering/reference/records/r01_plain.csv"),
    )
    .unwrap();
    // Both level columns swing, the second a third as far.
    let mut lines = text.lines();
    let mut table = format!("{}\n", lines.next().unwrap());
    for line in lines {
        let cells: Vec<&str> = line.split(',').collect();
        let x: f64 = cells[1].parse().unwrap();
        table.push_str(&format!(
            "{},{},{:.5},{}\n",
            cells[0],
            cells[1],
            x / 3.0,
            cells[3]
        ));
    }
    let body = format!(
        "--line\r\nContent-Disposition: form-data; name=\"kind\"\r\n\r\nknock\r\n--line\r\nContent-Disposition: form-data; name=\"file\"; \
         filename=\"a.csv\"\r\nContent-Type: text/csv\r\n\r\n{table}\r\n--line--\r\n"
    );
    let kind = [("content-type", "multipart/form-data; boundary=line")];
    let path = format!("/p/{}/commissioning/trace", kept.edit);
    let answer = service.send("POST", &path, &kind, body.as_bytes());
    assert_eq!(answer.status, 200, "{}", answer.text());
    let said = answer.text();
    assert!(
        said.contains("<option value=\"x\" selected>east and west"),
        "{said}"
    );
    assert!(
        said.contains("a swing in “ay”, north and south: 16.3"),
        "{said}"
    );
    let from = said.find("measure/knock?").unwrap();
    let query = said[from..].split_once("#enter").unwrap().0;
    let query = query.replace("&#38;", "&").replace("&amp;", "&");
    let other = service.get(&format!("/p/{}/{query}", kept.edit));
    let said = other.text();
    assert!(
        said.contains("<option value=\"y\" selected>north and south")
            && said.contains("value=\"16.3"),
        "{said}"
    );
}

fn by_script(service: &Service, path: &str, pairs: &[(&str, &str)]) -> Answer {
    let body: Vec<String> = pairs
        .iter()
        .map(|(name, value)| format!("{name}={value}"))
        .collect();
    let headers = [
        ("content-type", "application/x-www-form-urlencoded"),
        ("accept", "application/json"),
    ];
    service.send("POST", path, &headers, body.join("&").as_bytes())
}

#[test]
fn a_script_hears_what_became_of_a_measurement_and_sends_it_as_often_as_it_likes() {
    let service = start();
    let kept = service.create(&unknown());
    let pull = [
        ("what", "pull"),
        ("base", "1"),
        ("form", "f1"),
        ("who", "Helper"),
        ("direction", "x"),
        ("height_m", "1.2"),
        ("force_n", "200"),
        ("tilt_arcsec", "18"),
    ];
    for secret in [&kept.edit, &kept.record] {
        let path = format!("/p/{secret}/measure/pull");
        for _ in 0..2 {
            let said = by_script(&service, &path, &pull);
            assert_eq!(said.status, 200, "{}", said.text());
            assert_eq!(said.json()["kept"], json!(1));
        }
        let mut wrong = pull;
        (wrong[2], wrong[6]) = (("form", "f2"), ("force_n", "9000"));
        let said = by_script(&service, &path, &wrong);
        assert_eq!(said.status, 422);
        assert!(said.text().contains("topple"), "{}", said.text());
    }
    let plan = service.read(&kept, &kept.view, "").json();
    assert_eq!(plan["commissioning"]["pulls"].as_array().unwrap().len(), 1);
    let entries = service.read(&kept, &kept.view, "/entries").json();
    assert_eq!(entries["entries"].as_array().unwrap().len(), 1);
}

#[test]
fn a_figure_means_what_its_box_said_though_the_plan_was_changed_meanwhile() {
    let service = start();
    let kept = service.create(&unknown());
    let mut plan = unknown();
    plan["units"] = json!("imperial");
    assert_eq!(service.replace(&kept, 1, &plan).status, 200);
    for (secret, base) in [(&kept.edit, "1"), (&kept.record, "1")] {
        let pull = [
            ("what", "pull"),
            ("base", base),
            ("form", "f1"),
            ("who", "Helper"),
            ("direction", "x"),
            ("height_m", "1.2"),
            ("force_n", "200"),
            ("tilt_arcsec", "18"),
        ];
        let said = by_script(&service, &format!("/p/{secret}/measure/pull"), &pull);
        assert_eq!(said.status, 200, "{}", said.text());
    }
    let plan = service.read(&kept, &kept.view, "").json();
    assert_eq!(plan["commissioning"]["pulls"][0]["height_m"], json!(1.2));
    assert_eq!(plan["commissioning"]["pulls"][0]["force_n"], json!(200.0));
    let entries = service.read(&kept, &kept.view, "/entries").json();
    let entry = &entries["entries"][0]["measurement"]["pull"];
    assert_eq!(entry["height_m"], json!(1.2));
}

#[test]
fn a_pier_that_stood_already_has_boxes_for_level_plumb_nuts_and_gap() {
    let service = start();
    let mut plan = unknown();
    plan["state"] = json!("standing");
    let kept = service.create(&plan);
    let page = service
        .get(&format!("/p/{}/measure/level", kept.record))
        .text();
    for said in [
        "Plate out of level, east to west",
        "Column out of plumb, south to north",
        "Nuts of the base plate",
        "Gap between floor and pier",
    ] {
        assert!(page.contains(said), "{said}: {page}");
    }
    assert!(!page.contains("A week after tightening"), "{page}");
    let found = [
        ("task", "measure"),
        ("form", "f1"),
        ("revision", "1"),
        ("who", "A. Helper"),
        ("do", "keep"),
        ("item~stands_level_x", "6"),
        ("item~stands_nuts", "loose"),
    ];
    let sent = form(&service, &format!("/p/{}/record", kept.record), &found);
    assert_eq!(sent.status, 303, "{}", sent.text());
    let file = service.get(&format!("/p/{}/file.pdf", kept.edit));
    let words = tool("pdftotext", &["-layout"], &file.body);
    assert!(
        words.contains("Plate out of level") && words.contains("one or more move"),
        "{words}"
    );
}
