//! Figures for a watcher on their own address, and a log in which no secret stands.

use std::io::{Read, Write};
use std::net::{SocketAddr, TcpListener};
use std::process::Stdio;
use std::thread::JoinHandle;
use std::time::Duration;

use serde_json::Value;
use stillground_tests::binary::command;
use stillground_tests::http::{Answer, send};
use stillground_tests::service::unknown;

/// A port that is free just now.
fn free() -> SocketAddr {
    TcpListener::bind("127.0.0.1:0")
        .unwrap()
        .local_addr()
        .unwrap()
}

/// The service in a process of its own; its log when it has ended.
struct Logged {
    child: std::process::Child,
    socket: SocketAddr,
    reader: JoinHandle<String>,
}

impl Logged {
    fn start(folder: &std::path::Path, flags: &[&str]) -> Self {
        let socket = free();
        let listen = socket.to_string();
        let mut words = vec!["--listen", listen.as_str()];
        words.extend(flags);
        let mut command = command(folder, &words);
        let mut child = command
            .env("RUST_LOG", "debug,hyper=info")
            .stdout(Stdio::null())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        let mut errors = child.stderr.take().unwrap();
        // Read all the while: a full pipe would stop the service.
        let reader = std::thread::spawn(move || {
            let mut log = String::new();
            errors.read_to_string(&mut log).unwrap();
            log
        });
        for _ in 0..800 {
            if std::net::TcpStream::connect(socket).is_ok() {
                break;
            }
            std::thread::sleep(Duration::from_millis(25));
        }
        Self {
            child,
            socket,
            reader,
        }
    }

    fn send(&self, method: &str, path: &str, headers: &[(&str, &str)], body: &str) -> Answer {
        send(self.socket, method, path, headers, body.as_bytes())
    }

    fn log(mut self) -> String {
        self.child.kill().unwrap();
        self.child.wait().unwrap();
        self.reader.join().unwrap()
    }
}

/// Every route of the pages and of the interface, from the source that lists them, with the secret in its place.
fn routes(secret: &str, id: &str) -> Vec<String> {
    let root = stillground_tests::workspace();
    let read = |name: &str| std::fs::read_to_string(root.join(name)).unwrap();
    let text = read("server/src/handlers/pages.rs") + &read("server/src/router.rs");
    let named = text
        .split(".route(")
        .skip(1)
        .filter_map(|rest| rest.split('"').nth(1))
        .map(str::to_owned);
    let api = |path: String| {
        if path.starts_with("/plans") || ["/design", "/options"].contains(&&*path) {
            format!("/api/v1{path}")
        } else {
            path
        }
    };
    let filled = |path: String| {
        path.replace("{secret}", secret)
            .replace("{id}", id)
            .replace("{token}", secret)
            .replace("{step}", "site")
            .replace("{file}", "section.svg")
            .replace("{number}", "1")
            .replace("{right}", "view")
            .replace("{*path}", "style/base.css")
            .replace("{edition}", "x.css")
            .replace("{photo}", "x")
    };
    named.map(api).map(filled).collect()
}

#[test]
fn no_secret_stands_in_the_log_after_every_route_was_driven_with_one() {
    let folder = tempfile::tempdir().unwrap();
    let password = "a password of twenty-odd letters";
    std::fs::write(folder.path().join("token"), password).unwrap();
    let service = Logged::start(
        folder.path(),
        &[
            "--log",
            "json",
            "--organiser-token-file",
            "token",
            "--who-creates",
            "invited",
        ],
    );
    let form = [("content-type", "application/x-www-form-urlencoded")];
    let entered = service.send(
        "POST",
        "/organiser/in",
        &form,
        "password=a+password+of+twenty-odd+letters",
    );
    assert_eq!(entered.status, 303, "{}", entered.text());
    let session = entered
        .header("set-cookie")
        .split(';')
        .next()
        .unwrap()
        .to_owned();
    let inside = [
        form[0],
        ("cookie", session.as_str()),
        ("sec-fetch-site", "same-origin"),
    ];
    let made = service
        .send(
            "POST",
            "/organiser/invitations",
            &inside,
            "do=make&uses=3&said=me",
        )
        .text();
    let code = made
        .split("value=\"")
        .filter_map(|rest| rest.split('"').next())
        .find(|value| value.len() == 32)
        .expect("a code")
        .to_owned();
    let json = [
        ("content-type", "application/json"),
        ("stillground-invitation", code.as_str()),
    ];
    let created = service
        .send("POST", "/api/v1/plans", &json, &unknown().to_string())
        .json();
    let text = |value: &Value| value.as_str().unwrap().to_owned();
    let (id, edit, view) = (
        text(&created["id"]),
        text(&created["links"]["edit"]),
        text(&created["links"]["view"]),
    );
    let recovery = service
        .send(
            "POST",
            &format!("/p/{edit}/links"),
            &form,
            "right=edit&do=recovery",
        )
        .text();
    let recovery = recovery
        .split("recovery-code\"")
        .nth(2)
        .and_then(|rest| rest.split("value=\"").nth(1))
        .and_then(|rest| rest.split('"').next())
        .unwrap_or("none-was-made")
        .to_owned();
    assert_eq!(recovery.len(), 32, "{recovery}");
    for secret in [&edit, &view, &"z".repeat(32)] {
        let bearer = format!("Bearer {secret}");
        for path in routes(secret, &id) {
            if path.contains("/links") && path.starts_with("/p/") {
                let _ = service.send("GET", &path, &[], "");
                continue;
            }
            for method in ["GET", "POST", "PUT", "BREW"] {
                let _ = service.send(
                    method,
                    &path,
                    &[
                        ("authorization", &bearer),
                        form[0],
                        ("referer", &format!("http://x/p/{secret}")),
                    ],
                    "a=b&code=zzz",
                );
            }
        }
    }
    let _ = service.send("GET", &format!("/p/{edit}%2e/{edit}?x={edit}"), &[], "");
    let log = service.log();
    assert!(log.lines().count() > 100, "{log}");
    for secret in [
        &edit,
        &view,
        &code,
        &recovery,
        &session.split('=').nth(1).unwrap().to_owned(),
        &password.to_owned(),
        &"z".repeat(32),
    ] {
        assert!(
            !log.contains(secret.as_str()),
            "{secret} stands in the log: {}",
            log.lines()
                .find(|line| line.contains(secret.as_str()))
                .unwrap()
        );
    }
    for line in log.lines() {
        let line: Value =
            serde_json::from_str(line).unwrap_or_else(|error| panic!("{error}: {line}"));
        assert!(
            line["version"].is_string() && line["build"].is_string(),
            "{line}"
        );
    }
    assert!(
        log.contains("\"route\":\"/p/{secret}/{step}\"") && log.contains("took_us"),
        "routes are named"
    );
}

#[test]
fn figures_stand_at_their_own_address_and_name_routes_and_no_address() {
    let folder = tempfile::tempdir().unwrap();
    let watcher = free();
    let service = Logged::start(folder.path(), &["--metrics", &watcher.to_string()]);
    let secret = "y".repeat(32);
    let _ = service.send("GET", &format!("/p/{secret}/site"), &[], "");
    let _ = service.send("BREW", "/", &[], "");
    assert_eq!(
        service.send("GET", "/metrics", &[], "").status,
        404,
        "not where the plans are"
    );
    let figures = send(watcher, "GET", "/metrics", &[], b"");
    let text = figures.text();
    assert_eq!(
        (figures.status, figures.header("content-type")),
        (200, "text/plain; version=0.0.4; charset=utf-8")
    );
    for line in [
        "stillground_build_info{version=",
        "stillground_store_up 1",
        "route=\"/p/{secret}/{step}\",method=\"GET\",status=\"404\",le=\"+Inf\"} 1",
        "method=\"other\"",
        "stillground_resident_bytes ",
        "stillground_connections ",
        "stillground_body_bytes_held 0",
        "stillground_requests_placed 0",
        "stillground_refusals_late 0",
        "stillground_turns{work=\"press\",state=\"waiting\"} 0",
        "stillground_turns{work=\"darkroom\",state=\"working\"} 0",
        "stillground_damaged_rows 0",
    ] {
        assert!(text.contains(line), "{line} is missing: {text}");
    }
    assert!(!text.contains(&secret));
    assert_eq!(send(watcher, "GET", "/", &[], b"").status, 404);
    let _ = service.log();
}

#[test]
fn memory_and_bodies_under_way_stand_among_the_figures() {
    let folder = tempfile::tempdir().unwrap();
    let watcher = free();
    let service = Logged::start(folder.path(), &["--metrics", &watcher.to_string()]);
    let figure = |name: &str| {
        let text = send(watcher, "GET", "/metrics", &[], b"").text();
        let begin = format!("stillground_{name} ");
        let line = text.lines().find(|line| line.starts_with(&begin));
        line.unwrap()[begin.len()..].parse::<f64>().unwrap()
    };
    assert!(
        (1e6..1e9).contains(&figure("resident_bytes")),
        "a megabyte to a gigabyte is what a process has that does nothing (judgement)"
    );
    let mut slow = std::net::TcpStream::connect(service.socket).unwrap();
    let body = vec![b' '; 50_000];
    let head = format!(
        "POST /api/v1/design HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\ncontent-length: {}\r\n\r\n",
        body.len() + 1
    );
    slow.write_all(head.as_bytes()).unwrap();
    slow.write_all(&body).unwrap();
    let held = |least: f64| {
        (0..200).any(|_| {
            std::thread::sleep(Duration::from_millis(20));
            figure("body_bytes_held") >= least
        })
    };
    assert!(held(50_000.0), "what is awaited is held");
    assert!(figure("connections") >= 1.0 && figure("requests_placed") >= 1.0);
    drop(slow);
    let back = (0..200).any(|_| {
        std::thread::sleep(Duration::from_millis(20));
        figure("body_bytes_held") == 0.0
    });
    assert!(back, "and goes back");
    let _ = service.log();
}

#[test]
fn a_line_with_the_clients_address_is_logged_only_when_it_is_said() {
    let folder = tempfile::tempdir().unwrap();
    let secret = "y".repeat(32);
    let lines = |flags: &[&str]| {
        let service = Logged::start(folder.path(), flags);
        let _ = service.send(
            "GET",
            &format!("/p/{secret}/site"),
            &[("x-forwarded-for", "203.0.113.5")],
            "",
        );
        let log = service.log();
        assert!(!log.contains(&secret), "{log}");
        log
    };
    let silent = lines(&["--log", "json", "--trusted-proxies", "127.0.0.1"]);
    assert!(
        !silent.contains("203.0.113.5") && !silent.contains("127.0.0.1\""),
        "{silent}"
    );
    let told = lines(&[
        "--log",
        "json",
        "--trusted-proxies",
        "127.0.0.1",
        "--access-lines",
        "yes",
    ]);
    let line = told
        .lines()
        .find(|line| line.contains("\"asked\""))
        .unwrap_or_else(|| panic!("{told}"));
    // As the filter in docs/hosting.md finds it.
    let from = line.find("\"from\":\"203.0.113.5\"").unwrap();
    let code = line.find("\"code\":\"no_such_link\"").unwrap();
    assert!(from < code, "{line}");
    assert!(line.contains("\"route\":\"/p/{secret}/{step}\""), "{line}");
}

#[test]
fn figures_are_served_nowhere_unless_it_is_said() {
    let folder = tempfile::tempdir().unwrap();
    let service = Logged::start(folder.path(), &[]);
    assert_eq!(service.send("GET", "/metrics", &[], "").status, 404);
    let log = service.log();
    assert!(
        log.lines().any(|line| line.contains("answered")
            && line.contains("version=")
            && line.contains("build=")),
        "{log}"
    );
}
