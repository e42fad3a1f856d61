//! How long the service takes for a page on one core: `cargo bench -p stillground-server --bench pages`.
//!
//! Every page beside a bare axum handler that sends the same bytes, and every sheet beside the design that it shows, in the
//! same run: the ratio of the two lasts longer than the figures. Over sockets and with many at once: `--bench load`.
#![allow(
    clippy::expect_used,
    missing_docs,
    reason = "a bench that cannot start says so by stopping"
)]

use axum::Router;
use axum::body::{Body, Bytes, to_bytes};
use axum::extract::Request;
use axum::response::Html;
use axum::routing::get;
use divan::Bencher;
use stillground::brief::resolve;
use stillground::design::design;
use stillground::halfspace::SmallShelf;
use stillground::site_plan::SitePlan;
use stillground_server::app::App;
use stillground_server::config::{Config, Settings};
use stillground_server::planned::Planned;
use stillground_server::router::router;
use stillground_server::store::Store;
use stillground_server::views::pdf::{self, Paper, Sheet};
use tempfile::TempDir;
use tokio::runtime::{Builder, Runtime};
use tower::ServiceExt;

const STEPS: [&str; 7] = [
    "site",
    "excavation",
    "footing",
    "pier",
    "anchors",
    "floor",
    "plan",
];

fn main() {
    divan::main();
}

fn example() -> SitePlan {
    serde_json::from_str(include_str!("../../tests/examples/quarry-lane.json"))
        .expect("the example is a plan")
}

/// The service on a store with one plan in it.
struct Service {
    runtime: Runtime,
    router: Router,
    root: String,
    _folder: TempDir,
}

impl Service {
    fn start() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let runtime = Builder::new_current_thread()
            .enable_all()
            .build()
            .expect("a runtime");
        let settings = Settings {
            data: Some(folder.path().to_path_buf()),
            uncounted: Some("127.0.0.1".to_owned()),
            ..Settings::default()
        };
        let config = Config::new(settings).expect("the settings are right");
        let (router, root) = runtime.block_on(async {
            let store = Store::open(&config.database).await.expect("a store");
            let links = store.create(&example()).await.expect("a plan").links;
            (
                router(App::new(store, config)),
                format!("/p/{}", links.edit.reveal()),
            )
        });
        Self {
            runtime,
            router,
            root,
            _folder: folder,
        }
    }

    fn get(&self, path: &str) -> Bytes {
        self.runtime.block_on(answer(&self.router, path))
    }
}

async fn answer(router: &Router, path: &str) -> Bytes {
    let request = Request::get(path)
        .header("host", "localhost")
        .body(Body::empty())
        .expect("a request");
    let response = router.clone().oneshot(request).await.expect("an answer");
    assert!(
        response.status().is_success(),
        "{path}: {}",
        response.status()
    );
    to_bytes(response.into_body(), usize::MAX)
        .await
        .expect("a body")
}

/// Put together anew from a kept design.
#[divan::bench(args = STEPS)]
fn step_written(bencher: Bencher<'_, '_>, step: &str) {
    let service = Service::start();
    let path = format!("{}/{step}", service.root);
    service.get(&path);
    bencher.bench_local(|| service.get(&path));
}

/// The same bytes from a bare handler.
#[divan::bench(args = STEPS)]
fn step_bare(bencher: Bencher<'_, '_>, step: &str) {
    let service = Service::start();
    let bytes = service.get(&format!("{}/{step}", service.root));
    let bare = Router::new().route("/", get(async move || Html(bytes.clone())));
    bencher.bench_local(|| service.runtime.block_on(answer(&bare, "/")));
}

/// The front page, with the example's map.
#[divan::bench]
fn front(bencher: Bencher<'_, '_>) {
    let service = Service::start();
    service.get("/");
    bencher.bench_local(|| service.get("/"));
}

#[divan::bench]
fn pdf_of_the_plan(bencher: Bencher<'_, '_>) {
    let planned = Planned::of(&example(), &SmallShelf::holding(8)).expect("the example is valid");
    bencher.bench_local(|| pdf::plan(&sheet(&planned), Paper::A4).expect("a PDF"));
}

#[divan::bench]
fn pdf_of_the_template(bencher: Bencher<'_, '_>) {
    let planned = Planned::of(&example(), &SmallShelf::holding(8)).expect("the example is valid");
    bencher.bench_local(|| pdf::template(&sheet(&planned), Paper::A4).expect("a PDF"));
}

/// What both show.
#[divan::bench]
fn design_beside_them(bencher: Bencher<'_, '_>) {
    let (brief, shelf) = (
        resolve(&example()).expect("the example is valid"),
        SmallShelf::holding(8),
    );
    let _ = design(&brief, &shelf);
    bencher.bench_local(|| design(&brief, &shelf));
}

fn sheet(planned: &Planned) -> Sheet<'_> {
    let (brief, design) = (&planned.brief, &planned.design);
    Sheet {
        brief,
        design,
        revision: Some(1),
        date: Some("2026-03-01"),
        view_link: None,
        check_link: None,
        letterhead: None,
        built: &[],
    }
}
