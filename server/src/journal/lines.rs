//! The form of the log's lines: text or JSON, version and build in each.

use std::fmt;

use stillground::design::ENGINE_VERSION;
use tracing::{Event, Subscriber};
use tracing_subscriber::fmt::FmtContext;
use tracing_subscriber::fmt::format::{DefaultFields, Format, FormatEvent, FormatFields, Full, Json, JsonFields, Writer};
use tracing_subscriber::registry::LookupSpan;

use crate::watch::BUILD;

/// Lines of text that end in version and build.
struct Text(Format<Full>);
/// Lines of JSON that begin with version and build.
struct AsJson(Format<Json>);

/// Logs go to the standard error; `RUST_LOG` sets what is written.
pub fn start(json: bool) {
    let filter = tracing_subscriber::EnvFilter::try_from_default_env().unwrap_or_else(|_| "info".into());
    let lines = tracing_subscriber::fmt().with_env_filter(filter).with_writer(std::io::stderr).with_ansi(false);
    // A log that was started before, as in a test, stays.
    let _ = if json {
        lines.fmt_fields(JsonFields::new()).event_format(AsJson(Format::default().json().flatten_event(true))).try_init()
    } else {
        lines.fmt_fields(DefaultFields::new()).event_format(Text(Format::default().with_ansi(false))).try_init()
    };
}

impl<S, N> FormatEvent<S, N> for Text
where
    S: Subscriber + for<'a> LookupSpan<'a>,
    N: for<'a> FormatFields<'a> + 'static,
{
    fn format_event(&self, context: &FmtContext<'_, S, N>, mut writer: Writer<'_>, event: &Event<'_>) -> fmt::Result {
        let mut line = String::new();
        self.0.format_event(context, Writer::new(&mut line), event)?;
        writeln!(writer, "{} version={ENGINE_VERSION} build={BUILD}", line.trim_end())
    }
}

impl<S, N> FormatEvent<S, N> for AsJson
where
    S: Subscriber + for<'a> LookupSpan<'a>,
    N: for<'a> FormatFields<'a> + 'static,
{
    fn format_event(&self, context: &FmtContext<'_, S, N>, mut writer: Writer<'_>, event: &Event<'_>) -> fmt::Result {
        let mut line = String::new();
        self.0.format_event(context, Writer::new(&mut line), event)?;
        let inner = line.trim_end().strip_prefix('{').unwrap_or_default();
        writeln!(writer, "{{\"version\":\"{ENGINE_VERSION}\",\"build\":\"{BUILD}\",{inner}")
    }
}
