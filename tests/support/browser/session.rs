//! A browser and the program that drives it.

use std::io::{BufRead, BufReader, Write as _};
use std::net::SocketAddr;
use std::process::{Child, ChildStdin, Command, Stdio};
use std::time::Duration;

use serde_json::{Value, json};

use crate::http::{ask, parse};

/// Longest that the driver may be silent.
const SILENCE: Duration = Duration::from_secs(60);
/// Starts the driver, reads its port, and shuts it down with its browser when nobody holds the other end of the input any more,
/// however the tests end.
const ENDS_WITH_THE_TESTS: &str = r#""$0" --port=0 & read -r port; read -r _
{ exec 3<>"/dev/tcp/127.0.0.1/$port" && printf 'GET /shutdown HTTP/1.1\r\nhost: localhost\r\nconnection: close\r\n\r\n' >&3 && cat <&3 >/dev/null; } || kill $!
wait"#;

/// A driver, and the browser that it started.
pub(super) struct Session {
    socket: SocketAddr,
    path: String,
    shell: Child,
    /// Its end tells the shell to end the driver.
    until: Option<ChildStdin>,
}

impl Session {
    pub(super) fn start() -> Self {
        let program = std::env::var("CHROMEDRIVER").unwrap_or_else(|_| "chromedriver".to_owned());
        let mut shell = Command::new("bash")
            .args(["-c", ENDS_WITH_THE_TESTS, &program])
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("a shell");
        let port = port(&mut shell);
        let mut until = shell.stdin.take();
        let told = until.as_mut().map(|until| writeln!(until, "{port}"));
        told.expect("the shell's input")
            .expect("a shell that reads");
        let mut session = Self {
            socket: SocketAddr::from(([127, 0, 0, 1], port)),
            path: String::new(),
            shell,
            until,
        };
        let arguments = [
            "--headless",
            "--hide-scrollbars",
            "--font-render-hinting=none",
            "--no-sandbox",
            "--disable-gpu",
            "--disable-dev-shm-usage",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
            "--no-first-run",
            "--force-device-scale-factor=1",
        ];
        let mut options = json!({ "args": arguments });
        if let Ok(program) = std::env::var("CHROMIUM") {
            options["binary"] = program.into();
        }
        let capabilities = json!({ "capabilities": { "alwaysMatch": {
            "browserName": "chrome",
            "goog:chromeOptions": options,
        }}});
        let begun = session.call("POST", "/session", &capabilities);
        session.path = format!(
            "/session/{}",
            begun["sessionId"].as_str().expect("a session")
        );
        session
    }

    /// Opens a new window, closes all others, and clears what the pages of the last test kept; none where that does not work.
    pub(super) fn forgets(&self) -> Option<()> {
        let address = self.try_get("/url")?;
        let origin = address.as_str()?.split('/').take(3).collect::<Vec<_>>();
        let devtools = |command: &str, parameters: Value| {
            self.try_post(
                "/goog/cdp/execute",
                &json!({ "cmd": command, "params": parameters }),
            )
        };
        let everything = json!({ "origin": origin.join("/"), "storageTypes": "all" });
        devtools("Storage.clearDataForOrigin", everything)?;
        devtools("Network.clearBrowserCookies", json!({}))?;
        devtools("Network.clearBrowserCache", json!({}))?;
        let old = self.try_get("/window/handles")?;
        let new = self.try_post("/window/new", &json!({ "type": "tab" }))?;
        for handle in old.as_array()? {
            self.try_post("/window", &json!({ "handle": handle }))?;
            self.tries("DELETE", "/window", &Value::Null)?;
        }
        self.try_post("/window", &json!({ "handle": new["handle"] }))?;
        Some(())
    }

    pub(super) fn get(&self, path: &str) -> Value {
        self.call("GET", &format!("{}{path}", self.path), &Value::Null)
    }

    pub(super) fn post(&self, path: &str, body: &Value) -> Value {
        self.call("POST", &format!("{}{path}", self.path), body)
    }

    fn try_get(&self, path: &str) -> Option<Value> {
        self.tries("GET", path, &Value::Null)
    }

    fn try_post(&self, path: &str, body: &Value) -> Option<Value> {
        self.tries("POST", path, body)
    }

    fn tries(&self, method: &str, path: &str, body: &Value) -> Option<Value> {
        self.asks(method, &format!("{}{path}", self.path), body)
            .ok()
    }

    fn call(&self, method: &str, path: &str, body: &Value) -> Value {
        self.asks(method, path, body)
            .unwrap_or_else(|error| panic!("{method} {path}: {error}"))
    }

    fn asks(&self, method: &str, path: &str, body: &Value) -> Result<Value, String> {
        let body = if body.is_null() {
            String::new()
        } else {
            body.to_string()
        };
        let head = format!(
            "{method} {path} HTTP/1.1\r\nhost: {}\r\nconnection: close\r\ncontent-type: application/json\r\n",
            self.socket
        );
        let request = format!("{head}content-length: {}\r\n\r\n{body}", body.len());
        let answer = ask(self.socket, request.as_bytes(), SILENCE).map_err(|e| e.to_string())?;
        let answer = parse(&answer).ok_or("no HTTP")?;
        let value = answer.json()["value"].clone();
        if answer.status < 400 {
            Ok(value)
        } else {
            Err(format!("{}: {}", value["error"], value["message"]))
        }
    }
}

impl Drop for Session {
    fn drop(&mut self) {
        let _ = self.tries("DELETE", "", &Value::Null);
        drop(self.until.take());
        let _ = self.shell.wait();
    }
}

/// The port that the driver says it took.
fn port(shell: &mut Child) -> u16 {
    let lines = BufReader::new(shell.stdout.take().expect("the driver's words")).lines();
    let named = |line: String| {
        line.strip_prefix("ChromeDriver was started successfully on port ")?
            .trim_end_matches('.')
            .parse()
            .ok()
    };
    lines
        .map_while(Result::ok)
        .find_map(named)
        .expect("the driver names its port")
}
