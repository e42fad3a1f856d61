//! `stillground check`: each setting, the value in use, where it came from, what it does, and what is wrong with it.

use std::net::{SocketAddr, TcpListener};
use std::path::Path;

use super::{Failure, block_on, say};
use crate::config::{
    BadSettings, Config, Creators, DEFAULT_LISTEN, NO_TEXT, Origin, Settings, Stated, Stranger,
    default_data,
};
use crate::store::{SCHEMA, StoreFailure, archive};

type Found = Result<String, String>;

/// Explains the settings; fails when the service could not start with them.
pub(super) fn check(
    settings: &Settings,
    stated: &[Stated],
    strangers: &[Stranger],
) -> Result<(), Failure> {
    let (config, read) = Config::read(settings.clone());
    let mut wrong = Vec::new();
    for setting in stated {
        let found = match of(&read, &setting.name) {
            _ if !setting.is_text => Err(NO_TEXT.to_owned()),
            Some(said) => Err(said),
            None => look(setting, &config)?,
        };
        let (mark, said) = match &found {
            Ok(said) => ("fine", said),
            Err(said) => ("wrong", said),
        };
        let value = setting
            .value
            .clone()
            .filter(|value| !value.is_empty())
            .or_else(|| default_of(&setting.name))
            .unwrap_or_default();
        let (name, explains, origin) = (&setting.name, &setting.explains, setting.origin.words());
        say(format_args!(
            "{name} = {value}\n    {explains}; {origin}\n    {mark}: {said}\n"
        ))?;
        if found.is_err() {
            wrong.push(setting.name.as_str());
        }
    }
    for stranger in strangers {
        let mark = if stranger.meant.is_some() {
            "wrong"
        } else {
            "unread"
        };
        say(format_args!(
            "{}\n    {mark}: {}\n",
            stranger.name,
            stranger.words()
        ))?;
    }
    wrong.extend(
        strangers
            .iter()
            .filter(|stranger| stranger.meant.is_some())
            .map(|stranger| stranger.name.as_str()),
    );
    if wrong.is_empty() {
        Ok(())
    } else {
        Err(Failure::fault(format!(
            "cannot start with {}",
            wrong.join(" and ")
        )))
    }
}

/// The value that is used when none is stated.
fn default_of(name: &str) -> Option<String> {
    match name {
        "STILLGROUND_LISTEN" => Some(DEFAULT_LISTEN.to_string()),
        "STILLGROUND_DATA" => Some(default_data().display().to_string()),
        "STILLGROUND_PHOTO_MIB" => Some("8".to_owned()),
        "STILLGROUND_PROXY_HEADERS" => Some("x-forwarded".to_owned()),
        "STILLGROUND_LOG" => Some("text".to_owned()),
        "STILLGROUND_ACCESS_LINES" => Some("no".to_owned()),
        "STILLGROUND_COPIES_EVERY" => Some("1d".to_owned()),
        "STILLGROUND_COPIES_KEPT" => Some("14".to_owned()),
        "STILLGROUND_WHO_CREATES" => Some("anyone".to_owned()),
        _ => None,
    }
}

/// What a setting that can be read comes to.
fn look(setting: &Stated, config: &Config) -> Result<Found, Failure> {
    Ok(match setting.name.as_str() {
        "STILLGROUND_LISTEN" => listen(config.listen),
        "STILLGROUND_DATA" => data(&config.data),
        "STILLGROUND_DATABASE_URL" => database(config)?,
        "STILLGROUND_BASE_PATH" if config.base.is_empty() => Ok("the planner stands at the root".to_owned()),
        "STILLGROUND_BASE_PATH" => Ok(format!("every page stands below {}", config.base)),
        "STILLGROUND_PUBLIC_ADDRESS" if config.public.is_none() => {
            Ok("links and sheets carry the address that each reader asked".to_owned())
        }
        "STILLGROUND_TRUSTED_PROXIES" if config.proxies.is_empty() => {
            Ok("no proxy is believed: behind one, all visitors are counted as one, and cookies are not marked for TLS only".to_owned())
        }
        "STILLGROUND_TRUSTED_PROXIES" => {
            Ok("it can be used: whoever speaks from there is believed".to_owned())
        }
        "STILLGROUND_HOSTS" if config.hosts.is_empty() && config.public.is_none() => {
            Ok("the planner answers to addresses in figures and to names of a local network only; another name is refused".to_owned())
        }
        "STILLGROUND_METRICS" => config.metrics.map_or_else(|| Ok("no figures are served".to_owned()), port),
        "STILLGROUND_WHO_CREATES" => Ok(creators(config).to_owned()),
        "STILLGROUND_ORGANISER_TOKEN_FILE" => Ok(passwords(config)),
        "STILLGROUND_ORGANISER_HEADER" if config.access.organisers.by_proxy.is_some() => {
            Ok("whoever a stated proxy names there is believed: it has to set the header itself, and take out what a visitor wrote".to_owned())
        }
        "STILLGROUND_COPIES" => config.copying.as_ref().map_or_else(
            || Ok("no copies are made by the planner".to_owned()),
            |copying| data(&copying.folder),
        ),
        "STILLGROUND_ACCESS_LINES" if config.access_lines => {
            Ok("each request is logged with its client's address, and never with the address of a page".to_owned())
        }
        "STILLGROUND_CLIMATE_ADDRESS" => Ok(config.climate.as_ref().map_or_else(
            || "nobody outside is asked anything".to_owned(),
            |service| format!("{} is asked, when a person presses the button, and nobody else", service.authority()),
        )),
        _ => Ok(plain(setting)),
    })
}

fn plain(setting: &Stated) -> String {
    if setting.origin == Origin::Default {
        "nothing is stated"
    } else {
        "it can be used"
    }
    .to_owned()
}

fn passwords(config: &Config) -> String {
    let organisers = &config.access.organisers;
    match organisers.with_password.len() {
        0 if !organisers.are_there() => "there is no organiser's shelf".to_owned(),
        0 => "nobody goes in with a password".to_owned(),
        1 => "the shelf stands at /organiser".to_owned(),
        many => format!("the shelf stands at /organiser, for {many} passwords"),
    }
}

const fn creators(config: &Config) -> &'static str {
    match config.access.creators {
        Creators::Anyone => "whoever reaches the planner may begin a plan",
        Creators::Invited => "a plan begins with a code that the organiser makes",
        Creators::Organiser => "only the organiser begins plans",
    }
}

fn listen(stated: Option<SocketAddr>) -> Found {
    let address = stated.unwrap_or(DEFAULT_LISTEN);
    let found = match (TcpListener::bind(address), stated) {
        (Ok(_), _) => Ok("the port is free"),
        (Err(_), None) => Ok("the port is taken; another free one will be used"),
        (Err(error), Some(_)) => Err(format!(
            "{error}; name a free port, or stop what uses this one"
        )),
    };
    found.map(|said| match address.ip().is_loopback() {
        true => format!("{said}; only this machine reaches it"),
        false => format!("{said}; other machines reach it: put a proxy with TLS before it"),
    })
}

fn port(address: SocketAddr) -> Found {
    TcpListener::bind(address).map_err(|error| format!("{error}; name a free port"))?;
    Ok(match address.ip().is_loopback() {
        true => "figures are served to this machine only",
        false => "figures are served to whoever reaches this address: they hold no plan and no link, but keep it inside",
    }
    .to_owned())
}

fn data(folder: &Path) -> Found {
    match writable(folder) {
        Ok(true) => Ok("the folder is there and can be written".to_owned()),
        Ok(false) => Ok("the folder will be made on first start".to_owned()),
        Err(error) => Err(format!("{error}; name a folder that this user may write")),
    }
}

/// Whether the folder is there; an error when it cannot be written, or made in the one above it that is there.
fn writable(folder: &Path) -> std::io::Result<bool> {
    let whole = std::path::absolute(folder)?;
    let there = whole
        .ancestors()
        .find(|above| above.exists())
        .unwrap_or(&whole);
    let trial = there.join(format!(".stillground-check-{}", std::process::id()));
    std::fs::write(&trial, b"")?;
    std::fs::remove_file(trial).map(|()| there == whole)
}

fn database(config: &Config) -> Result<Found, Failure> {
    let place = &config.database;
    Ok(match block_on(archive::look(place))? {
        Ok(held) => Ok(format!(
            "{place}: schema {} of {SCHEMA}, {held}, sound",
            held.schema
        )),
        Err(StoreFailure::Missing(_)) => Ok(format!("{place}: it will be made on first start")),
        Err(failure) => Err(failure.to_string()),
    })
}

fn of(read: &Result<(), BadSettings>, name: &str) -> Option<String> {
    let wrong = read
        .as_ref()
        .err()?
        .0
        .iter()
        .filter(|bad| bad.name == name)
        .map(|bad| bad.said.clone());
    Some(wrong.collect::<Vec<_>>().join("; ")).filter(|said| !said.is_empty())
}
