//! The measure of everything: a bare axum handler in a process of its own, that holds a page's bytes and sends them, or puts
//! the bytes that it is sent into a bare SQLite file.

use std::io::Result;
use std::net::{Ipv4Addr, SocketAddr};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::sync::Arc;

use axum::Router;
use axum::body::Bytes;
use axum::http::StatusCode;
use axum::response::Html;
use axum::routing::{get, put};
use tokio::net::TcpListener;
use tokio::sync::Mutex;

use crate::machine::first_line;
use crate::saves;

/// The word that makes this program the bare handler of pages.
pub const PAGES: &str = "bare-pages";
/// The word that makes it the one that puts rows into a file.
pub const ROWS: &str = "bare-rows";

/// A bare handler in a process of its own, ended when dropped.
pub struct Bare {
    /// Where it listens.
    pub socket: SocketAddr,
    child: Child,
}

/// Starts one: what it is, and the page's file or the folder for rows.
pub fn start(word: &str, path: &Path) -> Result<Bare> {
    let mut child = Command::new(std::env::current_exe()?)
        .arg(word)
        .arg(path)
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .spawn()?;
    let socket = first_line(&mut child)?
        .parse()
        .map_err(std::io::Error::other)?;
    Ok(Bare { socket, child })
}

impl Drop for Bare {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// Sends a file's bytes to whoever asks, until it is ended.
pub async fn pages(file: &Path) -> Result<()> {
    let bytes = Bytes::from(std::fs::read(file)?);
    listen(Router::new().route("/", get(async move || Html(bytes.clone())))).await
}

/// Puts what it is sent into a SQLite file in a folder, a row each, until it is ended.
pub async fn rows(folder: &Path) -> Result<()> {
    let file = Arc::new(Mutex::new(
        saves::bare_file(folder)
            .await
            .map_err(std::io::Error::other)?,
    ));
    let keep =
        async move |document: String| match saves::bare_row(&mut *file.lock().await, &document)
            .await
        {
            Ok(()) => (StatusCode::OK, "kept"),
            Err(_) => (StatusCode::INTERNAL_SERVER_ERROR, "not kept"),
        };
    listen(Router::new().route("/", put(keep))).await
}

async fn listen(router: Router) -> Result<()> {
    let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).await?;
    println!("{}", listener.local_addr()?);
    axum::serve(listener, router).await
}
