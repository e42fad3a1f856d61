//! The measure of everything: a bare axum handler that holds a page's bytes and sends them, in a process of its own.

use std::io::Result;
use std::net::{Ipv4Addr, SocketAddr};
use std::path::Path;
use std::process::{Child, Command, Stdio};

use axum::Router;
use axum::body::Bytes;
use axum::response::Html;
use axum::routing::get;
use tokio::net::TcpListener;

use crate::machine::first_line;

/// The word that makes this program the bare handler.
pub const WORD: &str = "bare";

/// A bare handler in a process of its own, ended when dropped.
pub struct Bare {
    /// Where it listens.
    pub socket: SocketAddr,
    child: Child,
}

/// Starts one that sends the bytes of a file.
pub fn start(file: &Path) -> Result<Bare> {
    let mut child = Command::new(std::env::current_exe()?).arg(WORD).arg(file).stdin(Stdio::null()).stdout(Stdio::piped()).spawn()?;
    let socket = first_line(&mut child)?.parse().map_err(std::io::Error::other)?;
    Ok(Bare { socket, child })
}

impl Drop for Bare {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// Sends a file's bytes to whoever asks, until it is ended.
pub async fn serve(file: &Path) -> Result<()> {
    let bytes = Bytes::from(std::fs::read(file)?);
    let router = Router::new().route("/", get(async move || Html(bytes.clone())));
    let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).await?;
    println!("{}", listener.local_addr()?);
    axum::serve(listener, router).await
}
