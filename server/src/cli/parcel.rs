//! `stillground export PLAN` and `stillground import FILE`: one plan out of a store and into another.

use std::fs::{File, OpenOptions};
use std::io::{Read, Write};
use std::path::Path;

use data_encoding::BASE64;

use super::{Failure, block_on, say};
use crate::config::Config;
use crate::error::Trouble;
use crate::photo;
use crate::store::{BadParcel, CarriedEntry, Created, Parcel, Right, Secret, Store, StoreFailure};

/// Largest file read, bytes: a plan with all the photographs that a record takes.
const LARGEST: u64 = 1024 * 1024 * 1024;

/// Writes one plan with its revisions to a new file, or to the standard output.
pub(super) fn export(config: &Config, plan: &str, out: Option<&Path>) -> Result<(), Failure> {
    let parcel = block_on(with_store(config, async |store| {
        // Either the plan's name in the store or a link's secret will do.
        let id = match Secret::parse(plan).is_some() {
            true => store.open_link(plan).await?.map(|opened| opened.plan_id),
            false => Some(plan.to_owned()),
        };
        match id {
            Some(id) => store.pack(&id).await,
            None => Ok(None),
        }
    }))?;
    let parcel = parcel
        .map_err(Failure::fault)?
        .ok_or_else(|| Failure::fault("no plan has this name or link"))?;
    let mut text = serde_json::to_string_pretty(&parcel).map_err(Failure::fault)?;
    text.push('\n');
    let Some(file) = out else {
        return std::io::stdout()
            .lock()
            .write_all(text.as_bytes())
            .map_err(Failure::fault);
    };
    keep(file, text.as_bytes())
        .map_err(|error| Failure::fault(format!("{}: {error}", file.display())))
}

/// Writes a new file; one that could not be written to its end does not stay.
fn keep(file: &Path, bytes: &[u8]) -> std::io::Result<()> {
    let mut new = OpenOptions::new().write(true).create_new(true).open(file)?;
    let written = new.write_all(bytes).and_then(|()| new.sync_all());
    if written.is_err() {
        let _ = std::fs::remove_file(file);
    }
    written
}

/// Reads a plan that was exported, keeps it as a new one, and prints its name and its links.
pub(super) fn import(config: &Config, file: &Path) -> Result<(), Failure> {
    let parcel =
        read(file).map_err(|said| Failure::input(format!("{}: {said}", file.display())))?;
    let created = block_on(with_store(config, async |store| {
        store.unpack(&parcel).await
    }))?
    .map_err(Failure::fault)?;
    print(config, &created, parcel.revisions.len())
}

/// The links are shown here and nowhere else: the store keeps only their digests.
fn print(config: &Config, created: &Created, revisions: usize) -> Result<(), Failure> {
    say(format_args!(
        "plan {} with {revisions} revisions; its links, shown this once:",
        created.id
    ))?;
    for (right, secret) in [
        (Right::Edit, &created.links.edit),
        (Right::Record, &created.links.record),
        (Right::View, &created.links.view),
    ] {
        say(format_args!(
            "{:<7}{}",
            right.key(),
            config.link(&format!("/p/{}/plan", secret.reveal()))
        ))?;
    }
    Ok(())
}

fn read(file: &Path) -> Result<Parcel, String> {
    let input: Box<dyn Read> = if file == Path::new("-") {
        Box::new(std::io::stdin())
    } else {
        Box::new(File::open(file).map_err(|error| error.to_string())?)
    };
    let mut bytes = Vec::new();
    input
        .take(LARGEST + 1)
        .read_to_end(&mut bytes)
        .map_err(|error| error.to_string())?;
    if bytes.len() as u64 > LARGEST {
        return Err(format!(
            "larger than {} MiB, the most that is read",
            LARGEST >> 20
        ));
    }
    let mut reader = serde_json::Deserializer::from_slice(&bytes);
    let mut parcel: Parcel = serde_path_to_error::deserialize(&mut reader).map_err(|error| {
        Trouble::document(&error.path().to_string(), error.inner().to_string()).sentence()
    })?;
    reader.end().map_err(|error| error.to_string())?;
    parcel.check().map_err(|bad| bad.to_string())?;
    parcel
        .record
        .iter_mut()
        .try_for_each(rewrite_picture)
        .map_err(|bad| bad.to_string())?;
    Ok(parcel)
}

/// A picture is written anew, as one that is sent to the service is: nothing hides in it.
fn rewrite_picture(carried: &mut CarriedEntry) -> Result<(), BadParcel> {
    let Some(bytes) = carried.bytes()? else {
        return Ok(());
    };
    let anew = photo::anew(&bytes).map_err(|_| BadParcel::Picture(carried.entry.id.clone()))?;
    carried.picture = Some(BASE64.encode(&anew));
    Ok(())
}

/// Opens the store, does something with it, and closes it whatever became of it.
pub(super) async fn with_store<T>(
    config: &Config,
    work: impl AsyncFnOnce(&Store) -> Result<T, StoreFailure>,
) -> Result<T, StoreFailure> {
    let store = Store::open(&config.database).await?;
    let done = work(&store).await;
    store.close().await;
    done
}
