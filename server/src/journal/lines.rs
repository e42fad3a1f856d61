//! The form of the log's lines: text or JSON, version and build in each.

use std::fmt;

use stillground::design::ENGINE_VERSION;
use tracing::{Event, Subscriber};
use tracing_subscriber::fmt::FmtContext;
use tracing_subscriber::fmt::format::{
    DefaultFields, Format, FormatEvent, FormatFields, JsonFields, Writer,
};
use tracing_subscriber::registry::LookupSpan;

use crate::watch::BUILD;

/// Lines of a form, each with version and build at their place in it.
struct Stamped<F> {
    form: F,
    stamp: fn(&str) -> String,
}

/// Logs go to the standard error; `RUST_LOG` sets what is written.
pub fn start(json: bool) {
    let filter =
        tracing_subscriber::EnvFilter::try_from_default_env().unwrap_or_else(|_| "info".into());
    let lines = tracing_subscriber::fmt()
        .with_env_filter(filter)
        .with_writer(std::io::stderr)
        .with_ansi(false);
    // A log that was started before, as in a test, stays.
    let _ = if json {
        let form = Stamped {
            form: Format::default().json().flatten_event(true),
            stamp: at_the_head_of_json,
        };
        lines
            .fmt_fields(JsonFields::new())
            .event_format(form)
            .try_init()
    } else {
        let form = Stamped {
            form: Format::default().with_ansi(false),
            stamp: at_the_end_of_text,
        };
        lines
            .fmt_fields(DefaultFields::new())
            .event_format(form)
            .try_init()
    };
}

fn at_the_end_of_text(line: &str) -> String {
    format!("{line} version={ENGINE_VERSION} build={BUILD}")
}

fn at_the_head_of_json(line: &str) -> String {
    format!(
        "{{\"version\":\"{ENGINE_VERSION}\",\"build\":\"{BUILD}\",{}",
        line.strip_prefix('{').unwrap_or_default()
    )
}

impl<S, N, F> FormatEvent<S, N> for Stamped<F>
where
    S: Subscriber + for<'a> LookupSpan<'a>,
    N: for<'a> FormatFields<'a> + 'static,
    F: FormatEvent<S, N>,
{
    fn format_event(
        &self,
        context: &FmtContext<'_, S, N>,
        mut writer: Writer<'_>,
        event: &Event<'_>,
    ) -> fmt::Result {
        let mut line = String::new();
        self.form
            .format_event(context, Writer::new(&mut line), event)?;
        writeln!(writer, "{}", (self.stamp)(line.trim_end()))
    }
}
