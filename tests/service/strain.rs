//! Slow senders, ten thousand lines at once, and a stop in the middle of a request.

use std::io::{Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::process::Command;
use std::thread;
use std::time::{Duration, Instant};

use stillground_tests::binary::serve;
use stillground_tests::http::{parse, send};
use stillground_tests::service::{start, titled};

/// Lines held open at once.
const LINES: usize = 10_000;

#[test]
fn a_head_or_a_body_that_never_ends_is_given_up_while_others_are_answered() {
    let service = start();
    let head = "POST /api/v1/plans HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\ncontent-length: 40\r\n\r\n";
    let slow_body = thread::spawn({
        let line = open(service.socket, format!("{head}{{\"schema").as_bytes());
        move || rest(line)
    });
    let slow_head = thread::spawn({
        let line = open(service.socket, b"GET / HTTP/1.1\r\nhost: x\r\nx-slow: ");
        move || rest(line)
    });
    for _ in 0..20 {
        assert_eq!(service.get("/health/live").status, 200);
    }
    let (answer, took) = slow_body.join().unwrap();
    assert_eq!(parse(&answer).unwrap().status, 408);
    assert!(took < Duration::from_secs(40), "{took:?}");
    let (answer, took) = slow_head.join().unwrap();
    assert!(
        answer.is_empty() || parse(&answer).is_some_and(|answer| answer.status == 408),
        "{}",
        String::from_utf8_lossy(&answer)
    );
    assert!(took < Duration::from_secs(50), "{took:?}");
}

#[test]
fn ten_thousand_open_lines_leave_room_for_one_more() {
    if !may_open(LINES + 500) {
        println!("not tried: the system does not let this process open so many files");
        return;
    }
    let folder = tempfile::tempdir().unwrap();
    let process = serve(folder.path());
    let mut lines: Vec<_> = (0..LINES)
        .map(|_| (open(process.socket, b""), Instant::now()))
        .collect();
    let begun = Instant::now();
    assert_eq!(
        send(process.socket, "GET", "/health/live", &[], b"").status,
        200
    );
    assert!(
        begun.elapsed() < Duration::from_secs(10),
        "{:?}",
        begun.elapsed()
    );
    for (line, opened) in lines.iter_mut().rev().step_by(250) {
        let mut answer = Vec::new();
        let sent =
            line.write_all(b"GET /health/live HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n");
        let read = sent.and_then(|()| line.read_to_end(&mut answer));
        // One that said nothing for half a minute was closed, as it should be.
        let closed = answer.is_empty() && opened.elapsed() > Duration::from_secs(25);
        assert!(
            closed || parse(&answer).is_some_and(|answer| answer.status == 200),
            "{read:?} {}",
            String::from_utf8_lossy(&answer)
        );
    }
}

#[test]
fn a_service_that_is_told_to_stop_finishes_what_it_was_asked() {
    let folder = tempfile::tempdir().unwrap();
    let process = serve(folder.path());
    let body = titled("asked before the stop").to_string();
    let head = format!(
        "POST /api/v1/plans HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\ncontent-length: {}\r\n\r\n",
        body.len()
    );
    let (first, second) = body.split_at(body.len() / 2);
    let mut line = open(process.socket, format!("{head}{first}").as_bytes());
    // The head has to be there before the stop is.
    thread::sleep(Duration::from_millis(300));
    let socket = process.socket;
    process.tell_to_stop();
    let begun = Instant::now();
    while TcpStream::connect(socket).is_ok() {
        assert!(
            begun.elapsed() < Duration::from_secs(10),
            "it goes on taking requests"
        );
        thread::sleep(Duration::from_millis(20));
    }
    line.write_all(second.as_bytes()).unwrap();
    let (answer, _) = rest(line);
    let answer = parse(&answer).unwrap();
    assert_eq!(answer.status, 201, "{}", answer.text());
    assert!(process.ended().success());

    let again = serve(folder.path());
    let made = answer.json();
    let path = format!("/api/v1/plans/{}", made["id"].as_str().unwrap());
    let bearer = format!("Bearer {}", made["links"]["view"].as_str().unwrap());
    assert_eq!(
        send(
            again.socket,
            "GET",
            &path,
            &[("authorization", &bearer)],
            b""
        )
        .json()["title"],
        "asked before the stop"
    );
}

fn open(to: SocketAddr, bytes: &[u8]) -> TcpStream {
    let mut line = TcpStream::connect(to).unwrap();
    line.set_read_timeout(Some(Duration::from_secs(60)))
        .unwrap();
    line.write_all(bytes).unwrap();
    line
}

/// What comes until the service closes the line, and how long that took.
fn rest(mut line: TcpStream) -> (Vec<u8>, Duration) {
    let (begun, mut answer) = (Instant::now(), Vec::new());
    line.read_to_end(&mut answer).unwrap();
    (answer, begun.elapsed())
}

/// Whether this process, and those it starts, may open so many files; asks the system for it.
fn may_open(files: usize) -> bool {
    let own = std::process::id().to_string();
    let asked = |soft: &str| {
        Command::new("prlimit")
            .args(["--pid", &own, &format!("--nofile={soft}")])
            .status()
            .is_ok_and(|done| done.success())
    };
    asked(&format!("{files}:")) || asked(&format!("{files}:{files}"))
}
