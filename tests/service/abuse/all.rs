//! One client's worst against another's page, line by line, as a table:
//! `cargo run --release -p stillground-tests --example abuse`.

use std::process::ExitCode;
use std::time::Instant;

use stillground_tests::abuse::{HEADS, attacks, trial};

#[tokio::main]
async fn main() -> ExitCode {
    let only: Option<u8> = std::env::args().nth(1).and_then(|line| line.parse().ok());
    println!("{HEADS}");
    let (begun, mut all_held) = (Instant::now(), true);
    for attack in attacks() {
        if only.is_some_and(|line| !attack.is_of(line)) {
            continue;
        }
        let trial = trial(attack).await;
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
