//! The service is killed in the middle of saves: what it acknowledged is there when it starts again.
//!
//! `STILLGROUND_KILL_ROUNDS` sets the number of rounds; the few here keep the suite quick.

use std::net::SocketAddr;
use std::thread;
use std::time::Duration;

use serde_json::Value;
use stillground_tests::binary;
use stillground_tests::http::exchange;
use stillground_tests::service::{Kept, titled};

#[test]
fn an_acknowledged_save_outlives_a_kill() {
    let folder = tempfile::tempdir().unwrap();
    let rounds = std::env::var("STILLGROUND_KILL_ROUNDS").ok().and_then(|rounds| rounds.parse().ok()).unwrap_or(4_u32);
    let mut process = binary::serve(folder.path());
    let kept = create(process.socket);
    let mut stands = 1;
    for round in 0..rounds {
        let socket = process.socket;
        let saving = thread::spawn({
            let kept = kept.clone();
            move || save_until_it_dies(socket, &kept, stands)
        });
        thread::sleep(Duration::from_millis(20 + u64::from(round * 37 % 90)));
        process.kill();
        let acknowledged = saving.join().unwrap();
        process = binary::serve(folder.path());
        let (revision, plan) = read(process.socket, &kept);
        // One more may be on the disk, whose acknowledgement did not arrive.
        assert!(revision == acknowledged || revision == acknowledged + 1, "round {round}: {acknowledged} acknowledged, {revision} found");
        assert!(revision == 1 || plan["title"] == format!("save {revision}"), "{plan}");
        stands = revision;
    }
    assert!(stands > 1, "no save went through at all");
}

/// Saves one revision after another; the last that was acknowledged.
fn save_until_it_dies(socket: SocketAddr, kept: &Kept, mut base: u32) -> u32 {
    loop {
        let plan = titled(&format!("save {}", base + 1)).to_string();
        let head = format!(
            "PUT {} HTTP/1.1\r\nhost: x\r\nconnection: close\r\nauthorization: Bearer {}\r\nif-match: \"{base}\"\r\n\
             content-type: application/json\r\ncontent-length: {}\r\n\r\n{plan}",
            kept.path(""),
            kept.edit,
            plan.len()
        );
        match exchange(socket, head.as_bytes()) {
            Ok(answer) if answer.starts_with(b"HTTP/1.1 200") => base += 1,
            _ => return base,
        }
    }
}

fn create(socket: SocketAddr) -> Kept {
    let body = titled("save 1").to_string();
    let answer =
        stillground_tests::http::send(socket, "POST", "/api/v1/plans", &[("content-type", "application/json")], body.as_bytes()).json();
    let text = |value: &Value| value.as_str().unwrap().to_owned();
    let links = &answer["links"];
    Kept { id: text(&answer["id"]), edit: text(&links["edit"]), record: text(&links["record"]), view: text(&links["view"]) }
}

fn read(socket: SocketAddr, kept: &Kept) -> (u32, Value) {
    let answer = stillground_tests::http::send(socket, "GET", &kept.path(""), &[("authorization", &format!("Bearer {}", kept.edit))], b"");
    (answer.header("etag").trim_matches('"').parse().unwrap(), answer.json())
}
