//! One client's worst against another's page, line by line, as a table:
//! `tests/abuse`. How the service's own share is told from the machine's stands in `support/abuse.rs`.

use std::process::ExitCode;
use std::time::Instant;

use stillground_tests::abuse::{HEADS, attack, attacks, serve_bare, trial};

#[tokio::main]
async fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    // The attacker and the bare server are this program too, in processes of their own.
    match words.first().map(String::as_str) {
        Some("attack") => attack(&words[1..]).await,
        Some("bare") => serve_bare().await,
        line => return all(line.and_then(|line| line.parse().ok())).await,
    }
    ExitCode::SUCCESS
}

async fn all(only: Option<u8>) -> ExitCode {
    println!("{HEADS}");
    let (begun, mut all_held) = (Instant::now(), true);
    for (number, attack) in attacks().iter().enumerate() {
        if only.is_some_and(|line| !attack.is_of(line)) {
            continue;
        }
        let trial = trial(number, attack).await;
        println!("{trial}");
        all_held &= trial.wrong().is_empty();
    }
    println!(
        "\n{:.0} s; {}",
        begun.elapsed().as_secs_f64(),
        if all_held { "all held" } else { "NOT all held" }
    );
    if all_held {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    }
}
