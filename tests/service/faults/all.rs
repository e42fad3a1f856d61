//! Breaks the service and its databases in every way that the tests know, and prints what was tried, held and lost:
//! `cargo run -p stillground-tests --example faults -- ROUNDS`.

use std::process::ExitCode;
use std::time::Instant;

use stillground_tests::faults::{self, Trial, heads};
use stillground_tests::place::Place;

fn main() -> ExitCode {
    let rounds = std::env::args()
        .nth(1)
        .and_then(|rounds| rounds.parse().ok())
        .unwrap_or(200_u32);
    let few = (rounds / 10).max(2);
    println!("{}", heads());
    let begun = Instant::now();
    let trials: [&dyn Fn() -> Trial; 13] = [
        &|| faults::kills(&Place::on_sqlite(), rounds),
        &|| faults::kills(&Place::on_postgres(), rounds),
        &faults::full_disk,
        &faults::full_database,
        &faults::limited_file,
        &faults::failing_calls,
        &faults::slow_calls,
        &faults::read_only_folder,
        &|| faults::database_restarts(few),
        &faults::database_silent,
        &|| faults::instance_killed(few),
        &|| faults::two_writers(&Place::on_postgres(), rounds),
        &|| faults::two_writers(&Place::on_sqlite(), rounds),
    ];
    let mut all_held = true;
    for trial in trials {
        let trial = trial();
        println!("{trial}");
        trial
            .wrong
            .iter()
            .take(5)
            .for_each(|wrong| println!("    {wrong}"));
        all_held &= trial.held();
    }
    println!(
        "{:.0} s; {}",
        begun.elapsed().as_secs_f64(),
        if all_held { "all held" } else { "NOT all held" }
    );
    if all_held {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    }
}
