//! Starting the service as `main` does, on a free loopback port with a folder of its own, and what a person does with it.

use std::net::SocketAddr;
use std::path::Path;
use std::sync::mpsc;
use std::thread::JoinHandle;
use std::time::Duration;

use serde_json::{Value, json};
use stillground_server::config::{Config, Settings};
use stillground_server::server::Server;
use tokio::sync::oneshot;

use crate::http::{Answer, send};
use crate::place::Place;

/// A running service. It stops when it is dropped.
pub struct Service {
    /// Where it listens.
    pub socket: SocketAddr,
    /// Its first page, as it prints it.
    pub address: String,
    place: Option<Place>,
    stop: Option<oneshot::Sender<()>>,
    thread: Option<JoinHandle<()>>,
}

/// Starts the service in a new place.
#[must_use]
pub fn start() -> Service {
    start_in(Place::on_sqlite())
}

/// Starts the service in a place that lives as long as it.
#[must_use]
pub fn start_in(place: Place) -> Service {
    let mut service = start_with(place.settings());
    service.place = Some(place);
    service
}

/// Starts the service with some settings; what is not said is a free port and a new folder.
///
/// # Panics
/// When it cannot start.
#[must_use]
pub fn start_with(settings: Settings) -> Service {
    started(settings, SHORT_SEARCH)
}

/// Starts a service that has all the time that piers are looked for in.
///
/// # Panics
/// When it does not start.
#[must_use]
pub fn start_searching() -> Service {
    started(Settings::default(), Duration::from_secs(120))
}

/// Time for looking at piers in tests that are about something else: a page that links to them is read by many.
const SHORT_SEARCH: Duration = Duration::from_millis(200);

fn started(mut settings: Settings, longest_search: Duration) -> Service {
    let place = settings.data.is_none().then(Place::on_sqlite);
    if let Some(place) = &place {
        settings.data = place.settings().data;
    }
    settings.listen = settings.listen.or_else(|| Some("127.0.0.1:0".to_owned()));
    // A test asks more than any one person; one that is about the limits says otherwise, with an empty text.
    settings.uncounted = settings
        .uncounted
        .or_else(|| Some("127.0.0.0/8".to_owned()));
    let mut config = Config::new(settings).expect("settings that can be used");
    config.longest_search = longest_search;
    let (stop, stopped) = oneshot::channel();
    let (started, start) = mpsc::channel();
    let thread = std::thread::spawn(move || {
        let runtime = tokio::runtime::Builder::new_multi_thread()
            .worker_threads(2)
            .enable_all()
            .build()
            .expect("a runtime");
        runtime.block_on(async {
            let server = Server::prepare(config)
                .await
                .expect("a service that starts");
            let socket = server.socket().expect("a socket");
            started
                .send((socket, server.address().expect("an address")))
                .expect("a test that waits");
            server.run(async { drop(stopped.await) }).await;
        });
    });
    let (socket, address) = start.recv().expect("the service starts");
    Service {
        socket,
        address,
        place,
        stop: Some(stop),
        thread: Some(thread),
    }
}

impl Service {
    /// Sends a request.
    #[must_use]
    pub fn send(&self, method: &str, path: &str, headers: &[(&str, &str)], body: &[u8]) -> Answer {
        send(self.socket, method, path, headers, body)
    }

    /// Reads a page.
    #[must_use]
    pub fn get(&self, path: &str) -> Answer {
        self.send("GET", path, &[], b"")
    }

    /// Posts JSON.
    #[must_use]
    pub fn post_json(&self, path: &str, body: &Value) -> Answer {
        self.send(
            "POST",
            path,
            &[("content-type", "application/json")],
            body.to_string().as_bytes(),
        )
    }

    /// Keeps a plan.
    ///
    /// # Panics
    /// When it is not taken.
    #[must_use]
    pub fn create(&self, plan: &Value) -> Kept {
        let answer = self.post_json("/api/v1/plans", plan);
        assert_eq!(answer.status, 201, "{}", answer.text());
        let body = answer.json();
        let text = |value: &Value| value.as_str().expect("a text").to_owned();
        let links = &body["links"];
        Kept {
            id: text(&body["id"]),
            edit: text(&links["edit"]),
            record: text(&links["record"]),
            view: text(&links["view"]),
        }
    }

    /// Reads below a stored plan with a link's secret.
    #[must_use]
    pub fn read(&self, kept: &Kept, secret: &str, below: &str) -> Answer {
        self.send(
            "GET",
            &kept.path(below),
            &[("authorization", &format!("Bearer {secret}"))],
            b"",
        )
    }

    /// Makes the plan's recovery code.
    ///
    /// # Panics
    /// When none is made.
    #[must_use]
    pub fn recovery_code(&self, kept: &Kept) -> String {
        let made = self.send(
            "POST",
            &kept.path("/recovery"),
            &[("authorization", &format!("Bearer {}", kept.edit))],
            b"",
        );
        assert_eq!(made.status, 201, "{}", made.text());
        made.json()["code"].as_str().expect("a code").to_owned()
    }

    /// Replaces a stored plan, with the edit link, on top of a revision.
    #[must_use]
    pub fn replace(&self, kept: &Kept, base: u32, plan: &Value) -> Answer {
        let headers = [
            ("content-type", "application/json"),
            ("authorization", &format!("Bearer {}", kept.edit)),
            ("if-match", &format!("\"{base}\"")),
        ];
        self.send("PUT", &kept.path(""), &headers, plan.to_string().as_bytes())
    }

    /// The folder that this service made, when it made one.
    #[must_use]
    pub fn folder(&self) -> Option<&Path> {
        self.place.as_ref().map(Place::folder)
    }
}

impl Drop for Service {
    fn drop(&mut self) {
        drop(self.stop.take());
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

/// A plan that was kept, and its secrets.
#[derive(Debug, Clone)]
pub struct Kept {
    /// Its name in the store.
    pub id: String,
    /// Secret of the edit link.
    pub edit: String,
    /// Secret of the record link.
    pub record: String,
    /// Secret of the view link.
    pub view: String,
}

impl Kept {
    /// An address below the plan; empty for the plan itself.
    #[must_use]
    pub fn path(&self, below: &str) -> String {
        format!("/api/v1/plans/{}{below}", self.id)
    }
}

/// The smallest plan: nothing is known.
#[must_use]
pub fn unknown() -> Value {
    json!({ "schema_version": 1 })
}

/// A plan of which only the title is known.
#[must_use]
pub fn titled(title: &str) -> Value {
    json!({ "schema_version": 1, "title": title })
}
