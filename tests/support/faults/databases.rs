//! The database's server is stopped, crashes or hangs while people save; the service is not started again.

use std::sync::Arc;
use std::thread;
use std::time::{Duration, Instant};

use super::saver::request;
use super::{Load, Saver, Trial};
use crate::binary::{Process, serve_in};
use crate::place::Place;
use crate::postgres::Cluster;

/// Stops the server under load, in order and as a crash by turns, and starts it again.
#[must_use]
pub fn database_restarts(rounds: u32) -> Trial {
    let mut trial = Trial {
        rounds,
        ..Trial::new("PostgreSQL stopped, crashed and started under load, two instances")
    };
    let cluster = Arc::new(Cluster::start());
    let place = Place::on_cluster(cluster.clone());
    let instances = [serve_in(&place), serve_in(&place)];
    under_load(&mut trial, &instances, |trial, load| {
        for round in 0..rounds {
            load.wait(20);
            cluster.halt(if round % 2 == 0 { "immediate" } else { "fast" });
            unready(trial, &instances[0], Duration::from_secs(6));
            cluster.resume();
        }
    });
    trial
}

/// Stops the server's processes where they are for longer than the service waits, and lets them go on.
#[must_use]
pub fn database_silent() -> Trial {
    let mut trial = Trial {
        rounds: 1,
        ..Trial::new("PostgreSQL hung for 15 s under load, two instances")
    };
    let cluster = Arc::new(Cluster::start());
    let place = Place::on_cluster(cluster.clone());
    let instances = [serve_in(&place), serve_in(&place)];
    under_load(&mut trial, &instances, |trial, load| {
        load.wait(20);
        cluster.freeze(true);
        let begun = Instant::now();
        unready(trial, &instances[0], Duration::from_secs(14));
        thread::sleep(Duration::from_secs(15).saturating_sub(begun.elapsed()));
        cluster.freeze(false);
    });
    trial
}

/// Four people save at two instances while something is done; afterwards each instance takes saves again by itself.
fn under_load(
    trial: &mut Trial,
    instances: &[Process; 2],
    mut work: impl FnMut(&mut Trial, &Load),
) {
    let sockets = [instances[0].socket, instances[1].socket];
    let mut savers: Vec<_> = (0..4)
        .map(|n| Saver::new(&format!("saver {n} save"), sockets[n % 2]))
        .collect();
    let load = Load::default();
    thread::scope(|scope| {
        for saver in &mut savers {
            scope.spawn(|| saver.save_until(&sockets, &load));
        }
        work(trial, &load);
        load.wait(20);
        load.end();
    });
    for (saver, socket) in savers.iter_mut().zip(sockets.iter().cycle()) {
        let again = saver.save_at_last(*socket);
        trial.expect(again.is_some(), || {
            "an instance did not take saves again by itself".to_owned()
        });
    }
    savers
        .iter()
        .for_each(|saver| trial.count(saver, sockets[0]));
}

/// An instance without its database lives, says that it cannot work, and says so in time.
fn unready(trial: &mut Trial, instance: &Process, patience: Duration) {
    let begun = Instant::now();
    let status =
        |path: &str| request(instance.socket, "GET", path, &[], b"").map(|answer| answer.status);
    let (ready, took) = (status("/health/ready"), begun.elapsed());
    trial.expect(ready == Some(503) && took < patience, || {
        format!("ready without a database: {ready:?} after {took:?}")
    });
    let live = status("/health/live");
    trial.expect(live == Some(200), || {
        format!("not alive without a database: {live:?}")
    });
}
