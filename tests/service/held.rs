//! What one client may hold, tried on a service on this machine: nothing that it leaves unfinished is waited for by
//! anybody else.

use std::io::{ErrorKind, Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::time::{Duration, Instant};

use stillground_server::config::Settings;
use stillground_tests::http::raw;
use stillground_tests::service::{Service, start, start_with, unknown};

/// A service in which this machine is counted like any other.
fn counted() -> Service {
    start_with(Settings {
        uncounted: Some(String::new()),
        ..Settings::default()
    })
}

/// Opens a line and sends something that is not whole.
fn unfinished(to: SocketAddr, bytes: &[u8]) -> TcpStream {
    let mut line = TcpStream::connect(to).unwrap();
    line.set_read_timeout(Some(Duration::from_secs(5))).unwrap();
    line.write_all(bytes).unwrap();
    line
}

/// The status that a line is answered with; none when it is silent or closed.
fn status(line: &mut TcpStream) -> Option<u16> {
    let mut answer = [0; 64];
    let length = line.read(&mut answer).ok()?;
    let head = String::from_utf8_lossy(&answer[..length]).into_owned();
    head.split(' ').nth(1)?.parse().ok()
}

#[test]
fn a_request_that_only_reads_takes_no_body() {
    let service = start();
    for (method, body) in [
        ("GET", "content-length: 2\r\n\r\n{}"),
        ("HEAD", "content-length: 2\r\n\r\n{}"),
        (
            "GET",
            "transfer-encoding: chunked\r\n\r\n2\r\n{}\r\n0\r\n\r\n",
        ),
    ] {
        let request =
            format!("{method} /example/plan HTTP/1.1\r\nhost: a\r\nconnection: close\r\n{body}");
        assert_eq!(
            raw(service.socket, request.as_bytes()).status,
            400,
            "{method}"
        );
    }
}

#[test]
fn a_print_waits_for_no_body() {
    let service = start();
    let _held: Vec<_> = (0..8)
        .map(|_| {
            let request = "GET /example/plan.pdf HTTP/1.1\r\nhost: a\r\ncontent-length: 10\r\n\r\n";
            unfinished(service.socket, request.as_bytes())
        })
        .collect();
    // One that held a turn would keep it for twenty seconds, twice as long as anybody waits for one.
    assert_eq!(service.get("/example/plan.pdf").status, 200);
}

#[test]
fn no_body_is_read_for_a_page_that_does_not_exist() {
    let service = start();
    let wrong = "a".repeat(32);
    for (method, path) in [
        ("POST", "/nowhere".to_owned()),
        ("POST", "/api/v1/nowhere".to_owned()),
        ("DELETE", "/api/v1/plans".to_owned()),
        ("POST", format!("/p/{wrong}/site")),
        ("POST", format!("/p/{wrong}/record/photos")),
    ] {
        let head = format!(
            "{method} {path} HTTP/1.1\r\nhost: a\r\ncontent-type: multipart/form-data; boundary=x\r\ncontent-length: 1000000\r\n\r\n"
        );
        let mut line = unfinished(service.socket, head.as_bytes());
        let status = status(&mut line);
        assert!(
            matches!(status, Some(404 | 405)),
            "{method} {path} was answered {status:?} before its body came"
        );
    }
}

#[test]
fn of_one_client_two_refused_bodies_are_read_and_the_others_are_closed_with_the_answer() {
    let service = counted();
    let head = "POST /nowhere HTTP/1.1\r\nhost: a\r\ncontent-length: 1000000\r\n\r\n";
    let mut lines: Vec<_> = (0..6)
        .map(|_| unfinished(service.socket, head.as_bytes()))
        .collect();
    for line in &lines {
        line.set_read_timeout(Some(Duration::from_millis(50)))
            .unwrap();
    }
    // All go on sending, so that none that is read is answered for want of more.
    let mut answered = [None; 6];
    for _ in 0..10 {
        for (line, answered) in lines.iter_mut().zip(&mut answered) {
            if answered.is_none() {
                let _ = line.write_all(b"more");
                *answered = status(line);
            }
        }
    }
    let refused = answered.iter().filter(|status| **status == Some(404));
    assert_eq!(refused.count(), 4, "{answered:?}");
    let mut closed = 0;
    for (line, answered) in lines.iter_mut().zip(&answered) {
        line.set_read_timeout(Some(Duration::from_secs(5))).unwrap();
        let ends = |read: std::io::Result<usize>| {
            read.map_or_else(|error| error.kind() != ErrorKind::WouldBlock, |_| true)
        };
        closed += usize::from(answered.is_some() && ends(line.read_to_end(&mut Vec::new())));
    }
    assert_eq!(closed, 4, "what they still send is not read");
}

#[test]
fn whoever_is_refused_again_and_again_waits_for_refusals_and_for_nothing_else() {
    let service = counted();
    let kept = service.create(&unknown());
    let right = format!("/p/{}/site", kept.edit);
    assert_eq!(service.get(&right).status, 200);
    let wrong = b"GET /nowhere HTTP/1.1\r\nhost: a\r\n\r\n";
    let begun = Instant::now();
    let mut lines: Vec<_> = (0..60).map(|_| unfinished(service.socket, wrong)).collect();
    for line in &lines {
        line.set_read_timeout(Some(Duration::from_millis(1)))
            .unwrap();
    }
    // The right link is asked after them and answered before them.
    assert_eq!(service.get(&right).status, 200);
    let early = lines.iter_mut().filter_map(status).count();
    // Where the machine took so long that the wait was over, there is nothing to be seen.
    let over = begun.elapsed() > Duration::from_millis(900);
    assert!(
        (20..=45).contains(&early) || over,
        "{early} of 60 refusals came at once"
    );
    for line in &lines {
        line.set_read_timeout(Some(Duration::from_secs(5))).unwrap();
    }
    let late = lines.iter_mut().filter_map(status).count();
    assert_eq!(early + late, 60, "each is answered in the end");
}

#[test]
fn whether_the_service_lives_is_answered_when_one_machine_has_all_its_connections() {
    let service = counted();
    let _silent: Vec<_> = (0..300)
        .map(|_| TcpStream::connect(service.socket).unwrap())
        .collect();
    let begun = Instant::now();
    let health = "GET /health/live HTTP/1.1\r\nhost: a\r\nconnection: close\r\n\r\n";
    assert_eq!(raw(service.socket, health.as_bytes()).status, 200);
    let page = "GET / HTTP/1.1\r\nhost: a\r\nconnection: close\r\n\r\n";
    assert_eq!(
        raw(service.socket, page.as_bytes()).status,
        503,
        "and nothing else"
    );
    assert!(begun.elapsed() < Duration::from_secs(2));
}

#[test]
fn bodies_of_one_client_are_bounded_together() {
    let service = counted();
    // A million bytes each, without the last: they are held until it comes.
    let head = "POST /api/v1/design HTTP/1.1\r\nhost: a\r\ncontent-type: application/json\r\ncontent-length: 1000000\r\n\r\n";
    let mut request = head.as_bytes().to_vec();
    request.resize(request.len() + 999_999, b' ');
    let mut held: Vec<_> = (0..32)
        .map(|_| unfinished(service.socket, &request))
        .collect();
    let refused = held
        .iter_mut()
        .map(|line| {
            let _ = line.set_read_timeout(Some(Duration::from_millis(300)));
            status(line)
        })
        .filter(|status| *status == Some(429))
        .count();
    assert!(
        (9..=11).contains(&refused),
        "twenty-one MiB of 32 million bytes are held, {refused} were refused"
    );
}

#[test]
fn a_print_that_was_made_is_not_made_again() {
    let service = start();
    let kept = service.create(&unknown());
    let path = format!("/p/{}/plan.pdf", kept.view);
    let first = service.get(&path);
    let begun = Instant::now();
    for _ in 0..20 {
        assert_eq!(service.send("HEAD", &path, &[], b"").status, 200);
        assert_eq!(service.get(&path).body, first.body);
    }
    assert!(
        begun.elapsed() < Duration::from_secs(4),
        "forty prints took {:?}",
        begun.elapsed()
    );
    let _ = service.replace(&kept, 1, &unknown());
    assert_ne!(
        service.get(&path).body,
        first.body,
        "another revision is another print"
    );
}

#[test]
fn no_page_that_shows_a_secret_of_another_address_is_compressed() {
    let service = start();
    let kept = service.create(&unknown());
    let coding = |method: &str, path: &str| {
        let headers = [
            ("accept-encoding", "gzip, br"),
            ("content-type", "application/x-www-form-urlencoded"),
        ];
        service
            .send(method, path, &headers, b"")
            .header("content-encoding")
            .to_owned()
    };
    for path in [
        "/".to_owned(),
        "/organiser".to_owned(),
        "/recover".to_owned(),
        format!("/p/{}/links", kept.edit),
    ] {
        assert_eq!(coding("GET", &path), "", "{path}");
    }
    for path in [
        "/example/site".to_owned(),
        "/api/v1/openapi.json".to_owned(),
        format!("/p/{}/site", kept.edit),
    ] {
        assert_eq!(coding("GET", &path), "br", "{path}");
    }
    assert_eq!(
        coding("GET", "/example/plan.pdf"),
        "",
        "a print is compressed in itself"
    );
}

#[test]
fn a_slash_too_many_leads_to_the_same_page_and_a_request_is_named_here_alone() {
    let service = start();
    assert_eq!(service.get("/example/site/").status, 200);
    let answer = service.send("GET", "/", &[("x-request-id", "mine")], b"");
    let id = answer.header("x-request-id");
    assert!(id.len() > 8 && id != "mine", "{id}");
}
