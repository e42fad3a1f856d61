//! What is embedded in the binary for browsers, and the addresses it stands at.

use std::sync::LazyLock;

use data_encoding::HEXLOWER;
use rust_embed::RustEmbed;
use sha2::{Digest, Sha256};

/// Style sheets, scripts, fonts and icons.
#[derive(RustEmbed)]
#[folder = "$CARGO_MANIFEST_DIR/../static/"]
pub struct Assets;

/// A digest of all assets: it stands in their addresses, so that they may be kept for ever and change all at once.
pub static EDITION: LazyLock<String> = LazyLock::new(|| {
    let mut names: Vec<_> = Assets::iter().collect();
    names.sort_unstable();
    let mut digest = Sha256::new();
    for file in names.iter().filter_map(|name| Assets::get(name)) {
        digest.update(file.metadata.sha256_hash());
    }
    HEXLOWER.encode(&digest.finalize()[..6])
});

/// The address of an asset below the base path, for instance `/static/0f3a…/style/main.css`.
#[must_use]
pub fn link(base: &str, name: &str) -> String {
    format!("{base}/static/{}/{name}", *EDITION)
}
