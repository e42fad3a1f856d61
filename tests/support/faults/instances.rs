//! Several instances on one database.

use std::collections::BTreeMap;
use std::thread;

use super::{Load, Saver, Trial};
use crate::binary::serve_in;
use crate::place::Place;

/// Kills one of two instances under load, so many times; those who saved there go on at the other.
#[must_use]
pub fn instance_killed(rounds: u32) -> Trial {
    let mut trial = Trial {
        rounds,
        ..Trial::new("one of two instances killed (kill -9) under load, PostgreSQL")
    };
    let place = Place::on_postgres();
    let stays = serve_in(&place);
    let mut savers: Vec<_> = (0..4)
        .map(|n| Saver::new(&format!("saver {n} save"), stays.socket))
        .collect();
    for round in 0..rounds {
        let goes = serve_in(&place);
        let (sockets, load) = ([goes.socket, stays.socket], Load::default());
        thread::scope(|scope| {
            for saver in &mut savers {
                scope.spawn(|| saver.save_until(&sockets, &load));
            }
            load.wait(5 + u64::from(round % 20));
            goes.kill();
            load.wait(10);
            load.end();
        });
    }
    savers
        .iter()
        .for_each(|saver| trial.count(saver, stays.socket));
    trial
}

/// Two people save one plan at two instances; each revision is the one person's or the other's, and both know whose.
#[must_use]
pub fn two_writers(place: &Place, saves: u32) -> Trial {
    let database = if place.database().is_some() {
        "PostgreSQL"
    } else {
        "SQLite"
    };
    let mut trial = Trial {
        rounds: 1,
        ..Trial::new(format!(
            "two people save one plan at two instances, {database}"
        ))
    };
    let instances = [serve_in(place), serve_in(place)];
    let first = Saver::new("first", instances[0].socket);
    let second = Saver::with("second", first.plan().clone());
    let mut savers = [first, second];
    thread::scope(|scope| {
        for (saver, instance) in savers.iter_mut().zip(&instances) {
            scope.spawn(move || (0..saves).for_each(|_| _ = saver.save(instance.socket)));
        }
    });
    let mut all = BTreeMap::new();
    for saver in &savers {
        trial.count(saver, instances[0].socket);
        for (number, title) in &saver.acknowledged {
            let other = all.insert(*number, title.clone());
            trial.expect(other.is_none(), || {
                format!("revision {number} was acknowledged to both: {title}, {other:?}")
            });
        }
    }
    let acknowledged = u32::try_from(all.len()).unwrap_or(u32::MAX);
    let last = all.keys().next_back().copied().unwrap_or(0);
    trial.expect(last == acknowledged + 1, || {
        format!("{acknowledged} acknowledged, but the newest is revision {last}")
    });
    trial
}
