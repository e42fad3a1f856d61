//! The look-up of a place's climate: asked only where the host named a service and a person pressed the button, with
//! recorded answers from a server on this machine.

use std::fmt::Write as _;
use std::io::{Read, Write as _};
use std::net::{SocketAddr, TcpListener};
use std::sync::{Arc, Mutex};
use std::time::Duration;

use stillground_server::config::Settings;
use stillground_tests::http::Answer;
use stillground_tests::service::{Kept, Service, start, start_with, unknown};

/// A server that answers every question with the same bytes, and remembers the questions.
fn recorded(answer: Vec<u8>) -> (SocketAddr, Arc<Mutex<Vec<String>>>) {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let socket = listener.local_addr().unwrap();
    let asked = Arc::new(Mutex::new(Vec::new()));
    let heard = asked.clone();
    std::thread::spawn(move || {
        for line in listener.incoming() {
            let Ok(mut line) = line else { return };
            let _ = line.set_read_timeout(Some(Duration::from_secs(5)));
            let (mut head, mut part) = (Vec::new(), [0; 4096]);
            while !head.windows(4).any(|four| four == b"\r\n\r\n") {
                match line.read(&mut part) {
                    Ok(length) if length > 0 => head.extend_from_slice(&part[..length]),
                    _ => break,
                }
            }
            heard
                .lock()
                .unwrap()
                .push(String::from_utf8_lossy(&head).into_owned());
            let _ = line.write_all(&answer);
        }
    });
    (socket, asked)
}

/// Thirty years with the same winter: sixty days of five degrees below freezing, an index of 300, between days of ten.
fn thirty_years() -> Vec<u8> {
    let (mut time, mut temperature, mut gust) = (String::new(), String::new(), String::new());
    for year in 1995..2025 {
        for month in 1..=12 {
            for day in 1..=28 + 2 * i32::from(month != 2) {
                let cold = month == 1 || (month == 2 && day <= 28);
                let _ = write!(time, "\"{year}-{month:02}-{day:02}\",");
                temperature.push_str(if cold { "-5.0," } else { "10.0," });
                gust.push_str(if month == 11 && day == 3 {
                    "108.0,"
                } else {
                    "20.0,"
                });
            }
        }
    }
    let list = |text: &str| text.trim_end_matches(',').to_owned();
    let body = format!(
        "{{\"daily_units\":{{\"temperature_2m_mean\":\"°C\",\"wind_gusts_10m_max\":\"km/h\"}},\"daily\":{{\"time\":[{}],\"temperature_2m_mean\":[{}],\"wind_gusts_10m_max\":[{}]}}}}",
        list(&time),
        list(&temperature),
        list(&gust)
    );
    answer("200 OK", "application/json; charset=utf-8", body.as_bytes())
}

fn answer(status: &str, kind: &str, body: &[u8]) -> Vec<u8> {
    let mut bytes =
        format!("HTTP/1.1 {status}\r\ncontent-type: {kind}\r\nlocation: http://127.0.0.1:1/\r\ncontent-length: {}\r\n\r\n", body.len())
            .into_bytes();
    bytes.extend_from_slice(body);
    bytes
}

fn asking(socket: SocketAddr) -> (Service, Kept) {
    let address = format!(
        "http://{socket}/v1?latitude={{latitude}}&longitude={{longitude}}&start_date={{start}}&end_date={{end}}&daily=x"
    );
    let settings = Settings {
        climate_address: Some(address),
        climate_source: Some("Open Archive, CC BY".to_owned()),
        ..Settings::default()
    };
    let service = start_with(settings);
    let kept = service.create(&unknown());
    (service, kept)
}

fn post(service: &Service, secret: &str, body: &str) -> Answer {
    service.send(
        "POST",
        &format!("/p/{secret}/climate"),
        &[("content-type", "application/x-www-form-urlencoded")],
        body.as_bytes(),
    )
}

#[test]
fn nothing_is_asked_unless_the_host_names_a_service_and_a_person_presses_the_button() {
    let service = start();
    let kept = service.create(&unknown());
    assert_eq!(
        service.get(&format!("/p/{}/climate", kept.edit)).status,
        404
    );
    assert!(
        !service
            .get(&format!("/p/{}/site", kept.edit))
            .text()
            .contains("/climate")
    );
    let (socket, asked) = recorded(thirty_years());
    let (service, kept) = asking(socket);
    assert!(
        service
            .get(&format!("/p/{}/site", kept.edit))
            .text()
            .contains(&format!("/p/{}/climate", kept.edit))
    );
    assert_eq!(
        service.get(&format!("/p/{}/climate", kept.edit)).status,
        200
    );
    assert_eq!(
        service.get(&format!("/p/{}/climate", kept.view)).status,
        403
    );
    assert_eq!(
        post(&service, &kept.view, "do=look&latitude=52&longitude=0").status,
        403
    );
    assert!(
        asked.lock().unwrap().is_empty(),
        "{:?}",
        asked.lock().unwrap()
    );
}

#[test]
fn what_the_service_says_is_a_proposal_with_its_source_and_changes_nothing_until_it_is_taken() {
    let (socket, asked) = recorded(thirty_years());
    let (service, kept) = asking(socket);
    let page = post(
        &service,
        &kept.edit,
        "do=look&latitude=52.1234&longitude=-1.5",
    )
    .text();
    assert!(
        page.contains("Open Archive, CC BY") && page.contains("1995 to 2024"),
        "{page}"
    );
    let heard = asked.lock().unwrap()[0].clone();
    assert!(
        heard.starts_with("GET /v1?latitude=52.12&longitude=-1.50&start_date="),
        "{heard}"
    );
    assert!(
        !heard.to_lowercase().contains("cookie")
            && !heard.contains(&kept.edit)
            && !heard.to_lowercase().contains("referer"),
        "{heard}"
    );
    let value = |key: &str| {
        page.split(&format!("name=\"{key}\" value=\""))
            .nth(1)
            .unwrap()
            .split('"')
            .next()
            .unwrap()
            .parse::<f64>()
            .unwrap()
    };
    assert!(
        (value("index") - 290.0).abs() < 11.0,
        "58 cold days of 5 degrees: {}",
        value("index")
    );
    assert!(
        (value("gust") - 30.0).abs() < 1e-9,
        "108 km/h each year, without any spread: {}",
        value("gust")
    );
    assert_eq!(
        service.read(&kept, &kept.view, "").json()["site"]["freezing_index_c_days"],
        serde_json::Value::Null
    );
    let place = "latitude=52.1234&longitude=-1.5";
    let body = format!(
        "do=take&base=1&{place}&index={}&take_index=yes&gust={}&take_gust=yes&mean={}",
        value("index"),
        value("gust"),
        value("mean")
    );
    assert_eq!(post(&service, &kept.edit, &body).status, 303);
    let site = service.read(&kept, &kept.view, "").json()["site"].clone();
    assert_eq!(
        (
            site["freezing_index_c_days"].as_f64(),
            site["design_gust_m_s"].as_f64()
        ),
        (Some(value("index")), Some(30.0))
    );
    assert!(
        site["mean_annual_temperature_c"].is_null(),
        "what is not ticked is not taken"
    );
    let source = "Looked up: Open Archive, CC BY for 52.12° north, 1.50° west, 1995 to 2024: freezing index, gust";
    assert_eq!(site["climate_source"], source);
    assert_eq!(
        asked.lock().unwrap().len(),
        1,
        "what was said is held, and not asked again"
    );
    assert!(
        service
            .get(&format!("/p/{}/site", kept.edit))
            .text()
            .contains(source),
        "the step shows where they come from"
    );
    let assumed = service.read(&kept, &kept.view, "/design").json()["assumptions"].to_string();
    assert!(
        assumed.contains(source),
        "so does what was taken for the depth of frost: {assumed}"
    );
    let late = format!(
        "do=take&base=1&{place}&mean={}&take_mean=yes",
        value("mean")
    );
    assert_eq!(
        post(&service, &kept.edit, &late).status,
        412,
        "on top of what stands, or not at all"
    );
}

#[test]
fn nobody_takes_what_the_service_did_not_say_or_writes_its_word() {
    let (socket, asked) = recorded(thirty_years());
    let (service, kept) = asking(socket);
    let place = "latitude=52.1234&longitude=-1.5";
    let forged = format!(
        "do=take&base=1&{place}&of=anywhere&index=999&take_index=yes&source=a+weather+office"
    );
    let answer = post(&service, &kept.edit, &forged);
    assert_eq!(answer.status, 409);
    assert!(
        answer.text().contains("does not say what this page showed"),
        "{}",
        answer.text()
    );
    assert_eq!(
        asked.lock().unwrap().len(),
        1,
        "nothing was held: it was asked"
    );
    let plan = service.read(&kept, &kept.edit, "").json();
    assert!(plan["site"]["freezing_index_c_days"].is_null(), "{plan}");
    assert!(plan["site"]["climate_source"].is_null(), "{plan}");

    // By the interface, by a new plan, and by the step's own form.
    let claim = |index: f64, source: &str| {
        let mut plan = unknown();
        plan["site"] =
            serde_json::json!({ "freezing_index_c_days": index, "climate_source": source });
        plan
    };
    let word = "Looked up: Open Archive, CC BY for 52.12° north, 1.50° west, 1995 to 2024: gust";
    for plan in [claim(999.0, word), claim(999.0, "looked up somewhere")] {
        let refused = service.replace(&kept, 1, &plan);
        assert_eq!(refused.status, 422, "{}", refused.text());
        assert_eq!(refused.json()["errors"][0]["path"], "site.climate_source");
        assert_eq!(service.post_json("/api/v1/plans", &plan).status, 422);
    }
    let own = "The weather office, 1991 to 2020";
    assert_eq!(service.replace(&kept, 1, &claim(300.0, own)).status, 200);
    let form = |base: u32, index: &str, source: &str| {
        let body = format!(
            "base={base}&shown_in=metric&site.freezing_index_c_days={index}&site.climate_source={source}&go=stay"
        );
        service.send(
            "POST",
            &format!("/p/{}/site", kept.edit),
            &[("content-type", "application/x-www-form-urlencoded")],
            body.as_bytes(),
        )
    };
    let refused = form(2, "300", "Looked+up:+by+a+friend");
    assert_eq!(refused.status, 422);
    assert!(refused.text().contains("Looked up"), "{}", refused.text());

    // What was looked up stays while its figures do, and not under others.
    let page = post(&service, &kept.edit, &format!("do=look&{place}")).text();
    let index = page
        .split("name=\"index\" value=\"")
        .nth(1)
        .and_then(|rest| rest.split('"').next())
        .unwrap();
    let take = format!("do=take&base=2&{place}&index={index}&take_index=yes");
    assert_eq!(post(&service, &kept.edit, &take).status, 303);
    let mut plan = service.read(&kept, &kept.edit, "").json();
    plan["title"] = "renamed".into();
    assert_eq!(service.replace(&kept, 3, &plan).status, 200);
    plan["site"]["freezing_index_c_days"] = 12.into();
    assert_eq!(service.replace(&kept, 4, &plan).status, 422);
}

#[test]
fn a_service_that_answers_something_else_is_not_believed_and_not_followed() {
    let (elsewhere, followed) = recorded(thirty_years());
    let broken: Vec<Vec<u8>> = vec![
        answer("302 Found", "application/json", b"{}"),
        format!("HTTP/1.1 301 Moved\r\nlocation: http://{elsewhere}/\r\ncontent-length: 0\r\n\r\n")
            .into_bytes(),
        answer("500 No", "application/json", b"{}"),
        answer("200 OK", "text/html", b"<p>"),
        answer(
            "200 OK",
            "application/json",
            b"{\"daily\":{\"time\":[],\"temperature_2m_mean\":[]}}",
        ),
        answer(
            "200 OK",
            "application/json",
            b"{\"daily\":{\"time\":[\"2020-01-01\"],\"temperature_2m_mean\":[1e999]}}",
        ),
        answer("200 OK", "application/json", &vec![b' '; 3 << 20]),
        b"HTTP/1.1 200 OK\r\ncontent-type: application/json\r\ncontent-length: 99\r\n\r\n{"
            .to_vec(),
        b"not http".to_vec(),
        Vec::new(),
    ];
    for bytes in broken {
        let start = String::from_utf8_lossy(&bytes[..bytes.len().min(60)]).into_owned();
        let (socket, _) = recorded(bytes);
        let (service, kept) = asking(socket);
        let page = post(&service, &kept.edit, "do=look&latitude=52&longitude=0");
        assert_eq!(page.status, 200, "{start}");
        assert!(page.text().contains("Nothing was found out"), "{start}");
    }
    assert!(followed.lock().unwrap().is_empty());
}

#[test]
fn a_place_that_is_none_is_asked_of_nobody() {
    let (socket, asked) = recorded(thirty_years());
    let (service, kept) = asking(socket);
    for place in [
        "latitude=&longitude=",
        "latitude=91&longitude=0",
        "latitude=52&longitude=x",
        "latitude=NaN&longitude=0",
        "latitude=52%0d%0aHost:evil&longitude=0",
    ] {
        assert!(
            post(&service, &kept.edit, &format!("do=look&{place}"))
                .text()
                .contains("in degrees"),
            "{place}"
        );
    }
    assert!(asked.lock().unwrap().is_empty());
}
