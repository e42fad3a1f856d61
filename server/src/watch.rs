//! Figures for a watcher, in the text form of Prometheus (version 0.0.4): counts and times by route, never by address.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::sync::atomic::{AtomicI64, AtomicU64, Ordering};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

use axum::http::Method;
use stillground::design::ENGINE_VERSION;

/// Which source this was built from, when whoever built it said so.
pub const BUILD: &str = match option_env!("STILLGROUND_BUILD") {
    Some(build) => build,
    None => "unnamed",
};

/// Upper ends of the classes of time, seconds.
const CLASSES: [f64; 10] = [0.001, 0.0025, 0.01, 0.025, 0.05, 0.1, 0.25, 1.0, 5.0, 30.0];

/// What is counted. Cheap to clone.
#[derive(Clone, Default)]
pub struct Watch {
    seen: Arc<Seen>,
}

#[derive(Default)]
struct Seen {
    routes: Mutex<BTreeMap<String, Answers>>,
    refused: AtomicU64,
    running: AtomicI64,
}

/// By method and status.
type Answers = BTreeMap<(&'static str, u16), Times>;

#[derive(Default, Clone, Copy)]
struct Times {
    classes: [u64; CLASSES.len()],
    count: u64,
    sum_s: f64,
}

/// A request that runs; it is counted until this is dropped.
pub struct Running(Arc<Seen>);

impl Drop for Running {
    fn drop(&mut self) {
        self.0.running.fetch_sub(1, Ordering::Relaxed);
    }
}

impl Watch {
    /// A request begins.
    #[must_use]
    pub fn begins(&self) -> Running {
        self.seen.running.fetch_add(1, Ordering::Relaxed);
        Running(self.seen.clone())
    }

    /// A request was answered.
    pub fn answered(&self, route: &str, method: &Method, status: u16, took: Duration) {
        let mut routes = self
            .seen
            .routes
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        if !routes.contains_key(route) {
            routes.insert(route.to_owned(), BTreeMap::new());
        }
        let Some(times) = routes
            .get_mut(route)
            .map(|route| route.entry((known(method), status)).or_default())
        else {
            return;
        };
        let took = took.as_secs_f64();
        if let Some(class) = CLASSES.iter().position(|end| took <= *end) {
            times.classes[class] += 1;
        }
        times.count += 1;
        times.sum_s += took;
    }

    /// A client came too often.
    pub fn refused(&self) {
        self.seen.refused.fetch_add(1, Ordering::Relaxed);
    }

    /// The figures.
    #[must_use]
    pub fn text(&self, store_answers: bool) -> String {
        let mut text = String::new();
        let mut figure = |name: &str, kind: &str, help: &str, value: &str| {
            let _ = writeln!(
                text,
                "# HELP stillground_{name} {help}\n# TYPE stillground_{name} {kind}\nstillground_{name}{value}"
            );
        };
        let build = format!("{{version=\"{ENGINE_VERSION}\",build=\"{BUILD}\"}} 1");
        figure("build_info", "gauge", "Version and build.", &build);
        figure(
            "store_up",
            "gauge",
            "Whether the store answers.",
            &format!(" {}", u8::from(store_answers)),
        );
        figure(
            "requests_running",
            "gauge",
            "Requests that run.",
            &format!(" {}", self.seen.running.load(Ordering::Relaxed)),
        );
        figure(
            "refused_total",
            "counter",
            "Requests of clients that came too often.",
            &format!(" {}", self.seen.refused.load(Ordering::Relaxed)),
        );
        text + &self.times()
    }

    fn times(&self) -> String {
        let routes = self
            .seen
            .routes
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .clone();
        let name = "stillground_request_seconds";
        let mut text =
            format!("# HELP {name} Time until a request was answered.\n# TYPE {name} histogram\n");
        let all = routes.iter().flat_map(|(route, answers)| {
            answers
                .iter()
                .map(move |(answer, times)| (route, answer, times))
        });
        for (route, (method, status), times) in all {
            let labels = format!("route=\"{route}\",method=\"{method}\",status=\"{status}\"");
            let mut below = 0;
            for (end, class) in CLASSES.iter().zip(times.classes) {
                below += class;
                let _ = writeln!(text, "{name}_bucket{{{labels},le=\"{end}\"}} {below}");
            }
            let _ = writeln!(
                text,
                "{name}_bucket{{{labels},le=\"+Inf\"}} {}",
                times.count
            );
            let _ = writeln!(
                text,
                "{name}_sum{{{labels}}} {}\n{name}_count{{{labels}}} {}",
                times.sum_s, times.count
            );
        }
        text
    }
}

/// A method by its name; what a stranger invents is one.
fn known(method: &Method) -> &'static str {
    match method.as_str() {
        "GET" => "GET",
        "HEAD" => "HEAD",
        "POST" => "POST",
        "PUT" => "PUT",
        "DELETE" => "DELETE",
        "OPTIONS" => "OPTIONS",
        _ => "other",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// As two services of the tests do, each answering in tasks of its own.
    #[tokio::test]
    async fn two_services_of_one_process_count_apart() {
        let (one, other) = (Watch::default(), Watch::default());
        let counted = one.clone();
        let answered = tokio::spawn(async move {
            counted.answered("/about", &Method::GET, 200, Duration::from_millis(2));
        });
        answered.await.unwrap();
        assert!(one.text(true).contains("route=\"/about\""));
        assert!(!other.text(true).contains("/about"));
    }
}
