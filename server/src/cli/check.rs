//! `stillground check`: each setting, the value in use, what it does, and what is wrong with it.

use std::net::TcpListener;
use std::path::Path;

use super::{Failure, block_on};
use crate::config::{BadSetting, Config, DEFAULT_LISTEN, Database, Settings, default_data};
use crate::store::{SCHEMA, StoreFailure, archive};

/// One setting as it stands.
struct Line {
    name: &'static str,
    value: String,
    explains: &'static str,
    /// What was found, and whether the service can start with it.
    found: Result<String, String>,
}

/// Explains the settings; fails when the service could not start with them.
pub(super) fn check(settings: &Settings) -> Result<(), Failure> {
    let config = Config::new(settings.clone());
    let lines = [listen(settings), data(settings), database(settings, &config)?, base(settings, &config), photo(settings, &config)];
    for line in &lines {
        let (mark, found) = match &line.found {
            Ok(found) => ("fine", found),
            Err(found) => ("wrong", found),
        };
        println!("{} = {}\n    {}\n    {mark}: {found}\n", line.name, line.value, line.explains);
    }
    let wrong: Vec<_> = lines.iter().filter(|line| line.found.is_err()).map(|line| line.name).collect();
    if wrong.is_empty() { Ok(()) } else { Err(Failure::fault(format!("cannot start with {}", wrong.join(" and ")))) }
}

fn listen(settings: &Settings) -> Line {
    let address = settings.listen.unwrap_or(DEFAULT_LISTEN);
    let found = match (TcpListener::bind(address), settings.listen) {
        (Ok(_), _) => Ok("the port is free".to_owned()),
        (Err(_), None) => Ok("the port is taken; another free one will be used".to_owned()),
        (Err(error), Some(_)) => Err(format!("{error}; name a free port, or stop what uses this one")),
    };
    let found = found.map(|said| match address.ip().is_loopback() {
        true => format!("{said}; only this machine reaches it"),
        false => format!("{said}; other machines reach it: put a proxy with TLS before it"),
    });
    Line { name: "STILLGROUND_LISTEN", value: address.to_string(), explains: "address and port of the planner", found }
}

fn data(settings: &Settings) -> Line {
    let folder = settings.data.clone().unwrap_or_else(default_data);
    let found = match writable(&folder) {
        Ok(true) => Ok("the folder is there and can be written".to_owned()),
        Ok(false) => Ok("the folder will be made on first start".to_owned()),
        Err(error) => Err(format!("{error}; name a folder that this user may write")),
    };
    Line { name: "STILLGROUND_DATA", value: folder.display().to_string(), explains: "folder of the plans", found }
}

fn photo(settings: &Settings, config: &Result<Config, BadSetting>) -> Line {
    let found = match config {
        Err(bad) if bad.name == "STILLGROUND_PHOTO_MIB" => Err(bad.said.clone()),
        _ => Ok("larger ones are refused with these words".to_owned()),
    };
    let value = settings.photo_mib.unwrap_or(8).to_string();
    Line { name: "STILLGROUND_PHOTO_MIB", value, explains: "largest photograph taken into a record, MiB", found }
}

/// Whether the folder is there; an error when it is and cannot be written.
fn writable(folder: &Path) -> std::io::Result<bool> {
    if !folder.exists() {
        return Ok(false);
    }
    tempfile_in(folder).map(|()| true)
}

fn tempfile_in(folder: &Path) -> std::io::Result<()> {
    let trial = folder.join(format!(".stillground-check-{}", std::process::id()));
    std::fs::write(&trial, b"")?;
    std::fs::remove_file(trial)
}

fn database(settings: &Settings, config: &Result<Config, BadSetting>) -> Result<Line, Failure> {
    let explains = "where the plans are: a SQLite file, by default in the data folder, or a PostgreSQL database";
    let name = "STILLGROUND_DATABASE_URL";
    let Ok(Config { database, .. }) = config else {
        let found = of(config, name).map_or_else(|| Ok("not looked at: another setting is wrong".to_owned()), Err);
        return Ok(Line { name, value: if settings.database_url.is_some() { "stated" } else { "" }.to_owned(), explains, found });
    };
    let found = match block_on(archive::look(database))? {
        Ok(held) => Ok(format!("schema {} of {SCHEMA}, {held}, sound", held.schema)),
        Err(StoreFailure::Missing(_)) => Ok("it will be made on first start".to_owned()),
        Err(failure) => Err(failure.to_string()),
    };
    let value = match database {
        Database::Sqlite(file) => format!("sqlite://{}", file.display()),
        Database::Postgres(server) => server.without_password(),
    };
    Ok(Line { name, value, explains, found })
}

fn base(settings: &Settings, config: &Result<Config, BadSetting>) -> Line {
    let value = settings.base_path.clone().unwrap_or_default();
    let found = of(config, "STILLGROUND_BASE_PATH").map_or_else(
        || Ok(if value.trim_matches('/').is_empty() { "the planner stands at the root" } else { "every page stands below it" }.to_owned()),
        Err,
    );
    Line { name: "STILLGROUND_BASE_PATH", value, explains: "path under which a proxy shows the planner", found }
}

fn of(config: &Result<Config, BadSetting>, name: &str) -> Option<String> {
    config.as_ref().err().filter(|bad| bad.name == name).map(|bad| bad.said.clone())
}
