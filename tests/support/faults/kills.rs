//! The service is killed in the middle of saves, again and again.

use std::thread;
use std::time::Duration;

use super::{Load, Saver, Trial};
use crate::binary::{run_in, serve_in};
use crate::place::Place;

/// Kills the service in the middle of saves so many times.
#[must_use]
pub fn kills(place: &Place, rounds: u32) -> Trial {
    let database = if place.database().is_some() {
        "PostgreSQL"
    } else {
        "SQLite"
    };
    let mut trial = Trial {
        rounds,
        ..Trial::new(format!(
            "service killed (kill -9) in the middle of saves, {database}"
        ))
    };
    let mut process = serve_in(place);
    let mut savers: Vec<_> = (0..3)
        .map(|n| Saver::new(&format!("saver {n} save"), process.socket))
        .collect();
    for round in 0..rounds {
        let (socket, load) = (process.socket, Load::default());
        thread::scope(|scope| {
            for saver in &mut savers {
                scope.spawn(|| saver.save_until(&[socket], &load));
            }
            // Somewhere among saves, at another moment of one each time.
            load.wait(1 + u64::from(round % 12));
            thread::sleep(Duration::from_micros(u64::from(round * 377 % 5000)));
            process.kill();
            load.end();
        });
        process = serve_in(place);
        for saver in &savers {
            let missing = saver.missing_since(process.socket, 3);
            trial.expect(missing.is_empty(), || {
                format!("after round {round}: {missing:?}")
            });
        }
    }
    savers
        .iter()
        .for_each(|saver| trial.count(saver, process.socket));
    process.kill();
    let sound = run_in(place, &["check", "--listen", "127.0.0.1:0"]);
    trial.expect(sound.status.success(), || {
        String::from_utf8_lossy(&sound.stdout).into_owned()
    });
    trial
}
