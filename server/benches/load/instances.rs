//! One instance on PostgreSQL, and then two on the same one: how much more they answer together, and what each process
//! took of the processors meanwhile.

use std::io::{Error, Result};
use std::path::Path;
use std::time::Duration;

use crate::drive::{Seen, always, drive};
use crate::machine::{Planner, processor_time};
use crate::postgres::Cluster;
use crate::saves;

/// Connections at once, to all instances together.
const CONNECTIONS: usize = 64;
/// How long each number of instances is asked in a turn.
const TURN: Duration = Duration::from_secs(2);
/// Turns of each.
const TURNS: usize = 2;

/// What is asked of them.
#[derive(Debug, Clone, Copy)]
pub enum Work {
    /// A step's page.
    Page,
    /// Saves, each of another person's plan.
    Save,
}

/// What so many instances gave.
pub struct Instances {
    /// What was asked.
    pub what: &'static str,
    /// From one, and from two.
    pub seen: [Seen; 2],
    /// Processors that were busy with two, of instances, database and client.
    pub busy: [f64; 3],
}

/// Asks one instance and two in turn, for each kind of work.
pub async fn find(folder: &Path) -> Result<Vec<Instances>> {
    let Some(cluster) =
        tokio::task::spawn_blocking(|| std::panic::catch_unwind(Cluster::start).ok())
            .await
            .map_err(Error::other)?
    else {
        eprintln!("PostgreSQL could not be started: left out");
        return Ok(Vec::new());
    };
    let url = cluster.database();
    let planners = [
        Planner::start_on(folder, &url).await?,
        Planner::start_on(folder, &url).await?,
    ];
    let mut found = Vec::new();
    for (what, work) in [("step page", Work::Page), ("saves", Work::Save)] {
        eprintln!("two instances, {what}");
        let mut seen = [Seen::default(), Seen::default()];
        let mut busy = [0.0; 3];
        for _ in 0..TURNS {
            let [one, two] = seen;
            let one = one.and(ask(&planners[..1], work).await?);
            let before = times(&planners, &cluster)?;
            let two = two.and(ask(&planners, work).await?);
            let after = times(&planners, &cluster)?;
            busy = std::array::from_fn(|part| {
                busy[part]
                    + (after[part] - before[part]) / (TURN.as_secs_f64() + 0.5) / TURNS as f64
            });
            seen = [one, two];
        }
        found.push(Instances { what, seen, busy });
    }
    Ok(found)
}

/// The same number of connections, shared among the instances.
async fn ask(planners: &[Planner], work: Work) -> Result<Seen> {
    let mut tasks = Vec::new();
    for planner in planners {
        let (share, socket) = (CONNECTIONS / planners.len(), planner.socket);
        let plan = saves::create(planner).await?;
        let next = match work {
            Work::Page => always(&format!("/p/{}/site", plan.edit)),
            Work::Save => saves::savers(planner, share).await?,
        };
        tasks.push(tokio::spawn(drive(socket, share, TURN, next)));
    }
    let mut all = Seen::default();
    for task in tasks {
        all = all.beside(task.await.map_err(Error::other)??);
    }
    Ok(all)
}

/// Processor time that instances, database and this program have taken, seconds.
fn times(planners: &[Planner], cluster: &Cluster) -> Result<[f64; 3]> {
    let instances = planners
        .iter()
        .map(Planner::processor_time)
        .sum::<Result<f64>>()?;
    let database = cluster
        .processes()
        .into_iter()
        .filter_map(|process| processor_time(process).ok())
        .sum();
    Ok([instances, database, processor_time(std::process::id())?])
}
