//! How many files the system lets this process have open: each connection is one.

use rustix::process::{Resource, Rlimit, getrlimit, setrlimit};

/// Files for everything else: the database and its log, the lobby, the standard streams.
const FOR_THE_REST: u64 = 128;
/// Where the system names no limit.
const UNLIMITED: u64 = 1 << 20;

/// How many connections there are files for. The limit is raised first, as far as the system lets its own be raised.
pub(super) fn for_connections() -> usize {
    let found = getrlimit(Resource::Nofile);
    let highest = Rlimit {
        current: found.maximum,
        maximum: found.maximum,
    };
    let limit = match setrlimit(Resource::Nofile, highest) {
        Ok(()) => found.maximum,
        Err(_) => found.current,
    };
    places(limit)
}

fn places(limit: Option<u64>) -> usize {
    let files = limit.unwrap_or(UNLIMITED);
    let places = files.saturating_sub(FOR_THE_REST).max(files / 4);
    usize::try_from(places).unwrap_or(usize::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn there_are_always_fewer_connections_than_files() {
        assert_eq!(
            [Some(64), Some(256), Some(1024), None].map(places),
            [16, 128, 896, (1 << 20) - 128]
        );
    }
}
