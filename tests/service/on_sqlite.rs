//! The tests of the store on a SQLite file.

use stillground_tests::place::Place;
use stillground_tests::service::{Service, start_in};

#[path = "store/access.rs"]
mod access;
#[path = "store/archive.rs"]
mod archive;
#[path = "store/links.rs"]
mod links;
#[path = "store/plans.rs"]
mod plans;
#[path = "store/record.rs"]
mod record;
#[path = "store/releases.rs"]
mod releases;

fn place() -> Place {
    Place::on_sqlite()
}

fn start() -> Service {
    start_in(place())
}
