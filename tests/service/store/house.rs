//! A house with an organiser, for the tests of who may do what.

use stillground_server::config::Settings;
use stillground_tests::http::Answer;
use stillground_tests::service::{Service, start_with, titled};

use super::place;

pub const PASSWORD: &str = "twenty letters and more";
pub const FORM: (&str, &str) = ("content-type", "application/x-www-form-urlencoded");

/// A house with an organiser; the folder of its password is kept by the caller.
pub struct HouseOf {
    pub service: Service,
    _place: stillground_tests::place::Place,
}

pub fn house(who: &str, more: impl FnOnce(&mut Settings)) -> HouseOf {
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
    pub fn post(&self, path: &str, cookie: &str, body: &str) -> Answer {
        let mut headers = vec![FORM, ("sec-fetch-site", "same-origin")];
        if !cookie.is_empty() {
            headers.push(("cookie", cookie));
        }
        self.service.send("POST", path, &headers, body.as_bytes())
    }

    pub fn get(&self, path: &str, cookie: &str) -> Answer {
        self.service.send("GET", path, &[("cookie", cookie)], b"")
    }

    pub fn enter(&self) -> String {
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

    pub fn code(&self, cookie: &str, uses: u32) -> String {
        shown(&self.post(
            "/organiser/invitations",
            cookie,
            &format!("do=make&said=me&uses={uses}&days=3"),
        ))
    }

    pub fn created(&self, title: &str) -> stillground_tests::service::Kept {
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
pub fn shown(answer: &Answer) -> String {
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
