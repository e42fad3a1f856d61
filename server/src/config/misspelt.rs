//! Names in the environment that look like settings and are none: a setting whose name is misspelt would be left out in
//! silence, and what it was to close would stay open.

use super::Stated;

/// What every setting's name begins with.
const OURS: &str = "STILLGROUND_";
/// Names that are read elsewhere: by the build, and by the project's tests.
const ELSEWHERE: [&str; 4] = ["BUILD", "BINARY", "BLESS", "CACHE"];
/// How alike two names are when one is likely the other misspelt, from 0 to 1, by Jaro's measure: a judgement. What a
/// container's manager adds by itself, such as a service's host and port, is less like any of ours.
const ALIKE: f64 = 0.8;

/// A name in the environment that no setting has.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stranger {
    /// The name as it was found.
    pub name: String,
    /// The setting that was likely meant; `None`: it is like none of them.
    pub meant: Option<String>,
}

impl Stranger {
    /// What is wrong with it, in words.
    #[must_use]
    pub fn words(&self) -> String {
        match &self.meant {
            Some(meant) => format!("there is no such setting; write {meant}, or leave it out"),
            None => "there is no such setting, and nothing reads it".to_owned(),
        }
    }
}

/// The names that begin as settings do and are none.
#[must_use]
pub fn strangers(names: impl IntoIterator<Item = String>, settings: &[Stated]) -> Vec<Stranger> {
    let own = |name: &str| settings.iter().any(|setting| setting.name == name);
    let found = names.into_iter().filter_map(|name| {
        let rest = name.strip_prefix(OURS)?;
        (!ELSEWHERE.contains(&rest) && !own(&name)).then(|| Stranger {
            meant: nearest(rest, settings),
            name: name.clone(),
        })
    });
    let mut found: Vec<Stranger> = found.collect();
    found.sort_by(|a, b| a.name.cmp(&b.name));
    found
}

fn nearest(rest: &str, settings: &[Stated]) -> Option<String> {
    let alike =
        |setting: &Stated| strsim::jaro(rest, setting.name.strip_prefix(OURS).unwrap_or_default());
    let best = settings
        .iter()
        .max_by(|a, b| alike(a).total_cmp(&alike(b)))?;
    (alike(best) >= ALIKE).then(|| best.name.clone())
}

#[cfg(test)]
mod tests {
    use clap::CommandFactory;

    use super::*;
    use crate::config::{Settings, stated};

    #[derive(clap::Parser)]
    struct Line {
        #[command(flatten)]
        _settings: Settings,
    }

    fn found(names: &[&str]) -> Vec<Stranger> {
        let stated = stated(&Line::command().get_matches_from(["stillground"]));
        strangers(names.iter().map(|&name| name.to_owned()), &stated)
    }

    #[test]
    fn a_misspelt_setting_is_told_with_the_one_that_was_meant() {
        for (misspelt, meant) in [
            ("WHO_CREATE", "WHO_CREATES"),
            ("WHOCREATES", "WHO_CREATES"),
            ("ORGANISER_TOKEN", "ORGANISER_TOKEN_FILE"),
            ("ORGANIZER_TOKEN_FILE", "ORGANISER_TOKEN_FILE"),
            ("TRUSTED_PROXY", "TRUSTED_PROXIES"),
            ("LISEN", "LISTEN"),
            ("DATABASE", "DATABASE_URL"),
            ("COLORS", "COLOURS"),
            ("MAX_PLANS", "MOST_PLANS"),
            ("DATA_DIR", "DATA"),
        ] {
            let meant = Some(format!("{OURS}{meant}"));
            assert_eq!(
                found(&[&format!("{OURS}{misspelt}")])
                    .first()
                    .map(|one| one.meant.clone()),
                Some(meant),
                "{misspelt}"
            );
        }
    }

    #[test]
    fn what_a_manager_of_containers_adds_is_no_misspelling() {
        let added = [
            "PORT",
            "SERVICE_HOST",
            "SERVICE_PORT",
            "SERVICE_PORT_HTTP",
            "PORT_8080_TCP",
            "PORT_8080_TCP_ADDR",
        ];
        let found = found(
            &added
                .map(|name| format!("{OURS}{name}"))
                .each_ref()
                .map(String::as_str),
        );
        assert_eq!(found.len(), added.len());
        assert!(
            found.iter().all(|stranger| stranger.meant.is_none()),
            "{found:?}"
        );
    }

    #[test]
    fn settings_and_what_others_read_are_no_strangers() {
        assert_eq!(
            found(&[
                "STILLGROUND_LISTEN",
                "STILLGROUND_BUILD",
                "STILLGROUND_CACHE",
                "PATH",
                "STILL",
                ""
            ]),
            []
        );
    }
}
