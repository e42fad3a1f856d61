//! Places for connections: bounded for one machine and in all, below the limit of files.

mod files;

use crate::shares::Shares;

/// Most connections at once, where the system gives that many files.
const MOST_CONNECTIONS: usize = 16_384;
/// Most connections of one machine that is no proxy of ours. A browser opens six.
const MOST_OF_ONE: usize = 128;

/// Places for connections, below the limit of files.
#[must_use]
pub fn connections() -> Shares {
    Shares::new(MOST_CONNECTIONS.min(files::for_connections()), MOST_OF_ONE)
}
