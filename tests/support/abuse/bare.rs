//! What the machine itself costs: a bare axum server in a process of its own that answers every request with the bytes of
//! the other client's page and does nothing else. How long it keeps the other client waiting under the same attack is what
//! no service on this machine could do better.

use std::io::{Read, Write};
use std::net::SocketAddr;
use std::process::Stdio;

use axum::Router;
use axum::body::Bytes;
use tokio::io::{AsyncBufReadExt, AsyncWriteExt, BufReader};
use tokio::process::{Child, Command};

/// Such a server, stopped when dropped.
pub(super) struct Bare {
    /// Where it listens.
    pub(super) at: SocketAddr,
    _child: Child,
}

impl Bare {
    /// Starts one that answers with a page.
    pub(super) async fn start(page: &[u8]) -> Self {
        let this = std::env::current_exe().expect("this program");
        let mut child = Command::new(this)
            .arg("bare")
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .kill_on_drop(true)
            .spawn()
            .expect("a server");
        let mut input = child.stdin.take().expect("its input");
        input.write_all(page).await.expect("it reads its page");
        drop(input);
        let mut line = String::new();
        BufReader::new(child.stdout.take().expect("its output"))
            .read_line(&mut line)
            .await
            .expect("its address");
        Self {
            at: line.trim().parse().expect("an address"),
            _child: child,
        }
    }
}

/// Answers every request with what stands on the standard input, for ever.
///
/// # Panics
/// When there is no port for it.
pub async fn serve_bare() {
    let mut page = Vec::new();
    std::io::stdin().read_to_end(&mut page).expect("a page");
    let page = Bytes::from(page);
    let router = Router::new().fallback(move || std::future::ready(page.clone()));
    let listener = tokio::net::TcpListener::bind("127.0.0.1:0").await;
    let listener = listener.expect("a port");
    println!("{}", listener.local_addr().expect("an address"));
    let _ = std::io::stdout().flush();
    let _ = axum::serve(listener, router).await;
}
