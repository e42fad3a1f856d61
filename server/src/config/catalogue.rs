//! Each setting as it was stated: its name, what it is, its value and where that came from.

use std::any::TypeId;

use clap::builder::{OsStringValueParser, TypedValueParser as _};
use clap::parser::ValueSource;
use clap::{Arg, ArgMatches, Args as _};

use super::Settings;

/// Where a value came from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Origin {
    /// A flag on the command line.
    Flag,
    /// The environment.
    Environment,
    /// Nowhere: the default is used.
    Default,
}

/// A setting as it was stated.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stated {
    /// Its name in the environment.
    pub name: String,
    /// What it is.
    pub explains: String,
    /// Its value, where it may be shown.
    pub value: Option<String>,
    /// Where the value came from.
    pub origin: Origin,
    /// Whether its bytes are text. The name of a file or folder need not be.
    pub is_text: bool,
}

/// What is wrong with a value whose bytes are no text.
pub const NO_TEXT: &str = "its bytes are no text in UTF-8; write it anew, or leave it out";

impl Origin {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Flag => "from the command line",
            Self::Environment => "from the environment",
            Self::Default => "left out",
        }
    }
}

/// A setting that takes whatever bytes there are, so that it is explained and not refused before anything is explained.
#[must_use]
pub fn of_any_bytes(arg: Arg) -> Arg {
    if is_written(&arg) {
        arg.value_parser(
            OsStringValueParser::new().map(|value| value.to_string_lossy().into_owned()),
        )
    } else {
        arg
    }
}

/// Whether a setting's value is text.
fn is_written(arg: &Arg) -> bool {
    arg.get_value_parser().type_id() == TypeId::of::<String>()
}

/// Every setting, in the order of the help.
#[must_use]
pub fn stated(matches: &ArgMatches) -> Vec<Stated> {
    let known = Settings::augment_args(clap::Command::new("settings"));
    let one = |arg: &Arg| {
        let id = arg.get_id().as_str();
        let origin = match matches.value_source(id) {
            Some(ValueSource::CommandLine) => Origin::Flag,
            Some(ValueSource::EnvVariable) => Origin::Environment,
            _ => Origin::Default,
        };
        let raw = matches.get_raw(id).and_then(|mut values| values.next());
        let value = raw.map(|value| value.to_string_lossy().into_owned());
        Some(Stated {
            name: arg.get_env()?.to_string_lossy().into_owned(),
            explains: arg.get_help().map(ToString::to_string).unwrap_or_default(),
            value: value.map(|value| {
                if arg.is_hide_env_values_set() {
                    "stated, and not shown".to_owned()
                } else {
                    value
                }
            }),
            origin,
            is_text: !is_written(arg) || raw.is_none_or(|value| value.to_str().is_some()),
        })
    };
    known.get_arguments().filter_map(one).collect()
}
