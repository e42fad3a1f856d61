//! A real browser, driven over the WebDriver protocol (W3C WebDriver 2) by its own driver program.
//!
//! The driver is started on a free port and ended by its handle; nothing else is touched.

use std::io::{BufRead, BufReader};
use std::net::SocketAddr;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use serde_json::{Value, json};

use crate::http::{ask, parse};

/// Longest that the driver may be silent.
const SILENCE: Duration = Duration::from_secs(60);
/// The key under which the protocol names an element.
const ELEMENT: &str = "element-6066-11e4-a52e-4f735466cecf";

/// A browser with one window.
pub struct Browser {
    driver: Child,
    socket: SocketAddr,
    session: String,
}

/// An element on a page.
#[derive(Debug, Clone, PartialEq)]
pub struct Element(String);

/// Keys by their code in the protocol.
pub mod key {
    /// Moves to the next control.
    pub const TAB: &str = "\u{e004}";
    /// Presses a button, follows a link, sends a form.
    pub const ENTER: &str = "\u{e007}";
    /// Ticks a box.
    pub const SPACE: &str = " ";
    /// Moves down among choices.
    pub const DOWN: &str = "\u{e015}";
    /// Moves to the right.
    pub const RIGHT: &str = "\u{e014}";
}

impl Browser {
    /// Starts the driver and a browser without a screen.
    ///
    /// # Panics
    /// When either does not start.
    #[must_use]
    pub fn start() -> Self {
        let program = std::env::var("CHROMEDRIVER").unwrap_or_else(|_| "chromedriver".to_owned());
        let mut driver = Command::new(program)
            .arg("--port=0")
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("chromedriver: install chromium and its driver, or name it in CHROMEDRIVER");
        let port = port(&mut driver);
        let mut browser = Self {
            driver,
            socket: SocketAddr::from(([127, 0, 0, 1], port)),
            session: String::new(),
        };
        let arguments = [
            "--headless=new",
            "--no-sandbox",
            "--disable-gpu",
            "--disable-dev-shm-usage",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
            "--no-first-run",
            "--force-device-scale-factor=1",
        ];
        let capabilities = json!({ "capabilities": { "alwaysMatch": {
            "browserName": "chrome",
            "goog:chromeOptions": { "args": arguments },
        }}});
        let session = browser.call("POST", "/session", &capabilities);
        browser.session = format!(
            "/session/{}",
            session["sessionId"].as_str().expect("a session")
        );
        browser
    }

    /// Sets the window's inner size.
    pub fn size(&self, width: u32, height: u32) {
        self.devtools(
            "Emulation.setDeviceMetricsOverride",
            &json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false }),
        );
    }

    /// Turns the page's scripts on or off.
    pub fn scripts(&self, on: bool) {
        self.devtools(
            "Emulation.setScriptExecutionDisabled",
            &json!({ "value": !on }),
        );
    }

    /// Says that the reader's system is dark, or that the page is for paper.
    pub fn media(&self, scheme: &str, media: &str) {
        let features = json!([{ "name": "prefers-color-scheme", "value": scheme }]);
        self.devtools(
            "Emulation.setEmulatedMedia",
            &json!({ "media": media, "features": features }),
        );
    }

    /// Sends a command of the browser's own protocol.
    pub fn devtools(&self, command: &str, parameters: &Value) -> Value {
        self.post(
            "/goog/cdp/execute",
            &json!({ "cmd": command, "params": parameters }),
        )
    }

    /// Opens an address.
    pub fn open(&self, address: &str) {
        self.post("/url", &json!({ "url": address }));
    }

    /// The address of the page.
    #[must_use]
    pub fn address(&self) -> String {
        text(&self.get("/url"))
    }

    /// The first element that a style selector matches.
    ///
    /// # Panics
    /// When there is none.
    #[must_use]
    pub fn find(&self, selector: &str) -> Element {
        self.all(selector)
            .into_iter()
            .next()
            .unwrap_or_else(|| panic!("no {selector} at {}", self.address()))
    }

    /// All elements that a style selector matches.
    #[must_use]
    pub fn all(&self, selector: &str) -> Vec<Element> {
        let found = self.post(
            "/elements",
            &json!({ "using": "css selector", "value": selector }),
        );
        found
            .as_array()
            .into_iter()
            .flatten()
            .map(|element| Element(text(&element[ELEMENT])))
            .collect()
    }

    /// The element that has the focus.
    #[must_use]
    pub fn focus(&self) -> Element {
        Element(text(&self.get("/element/active")[ELEMENT]))
    }

    /// Presses an element.
    pub fn press(&self, selector: &str) {
        self.unfold(selector);
        let element = self.find(selector);
        self.post(&format!("/element/{}/click", element.0), &json!({}));
    }

    /// Opens what an element is folded into, as a person would; its own fold stays as it is.
    fn unfold(&self, selector: &str) {
        let quoted = json!(selector);
        let _ = self.run(&format!(
            "let fold = document.querySelector({quoted})?.closest('details'); \
             if (document.querySelector({quoted})?.closest('summary')) fold = fold.parentElement.closest('details'); \
             for (; fold; fold = fold.parentElement.closest('details')) fold.open = true"
        ));
    }

    /// Does something that leads to another page, and waits for it.
    pub fn leaves(&self, act: impl FnOnce()) {
        let _ = self.run("document.documentElement.dataset.left = 'yes'");
        act();
        self.wait(
            "return document.readyState === 'complete' && !document.documentElement.dataset.left",
        );
    }

    /// Presses what leads to another page, and waits for it.
    pub fn follow(&self, selector: &str) {
        self.leaves(|| self.press(selector));
    }

    /// What an element says.
    #[must_use]
    pub fn says(&self, selector: &str) -> String {
        text(&self.get(&format!("/element/{}/text", self.find(selector).0)))
    }

    /// An attribute of an element; empty when it has none.
    #[must_use]
    pub fn attribute(&self, element: &Element, name: &str) -> String {
        text(&self.get(&format!("/element/{}/attribute/{name}", element.0)))
    }

    /// What a box holds.
    #[must_use]
    pub fn holds(&self, selector: &str) -> String {
        text(&self.get(&format!(
            "/element/{}/property/value",
            self.find(selector).0
        )))
    }

    /// Types a text in place of what a box holds.
    pub fn fill(&self, selector: &str, typed: &str) {
        self.unfold(selector);
        let element = self.find(selector).0;
        self.post(&format!("/element/{element}/clear"), &json!({}));
        self.post(
            &format!("/element/{element}/value"),
            &json!({ "text": typed }),
        );
    }

    /// Chooses an answer of a list.
    pub fn choose(&self, selector: &str, value: &str) {
        self.press(&format!("{selector} option[value='{value}']"));
    }

    /// Presses keys, one after the other, wherever the focus is.
    pub fn keys(&self, keys: &[&str]) {
        let press = |key: &&str| {
            [
                json!({ "type": "keyDown", "value": key }),
                json!({ "type": "keyUp", "value": key }),
            ]
        };
        let actions: Vec<Value> = keys.iter().flat_map(press).collect();
        self.post(
            "/actions",
            &json!({ "actions": [{ "type": "key", "id": "keyboard", "actions": actions }] }),
        );
    }

    /// Runs a script on the page and gives what it returns.
    #[must_use]
    pub fn run(&self, script: &str) -> Value {
        self.post("/execute/sync", &json!({ "script": script, "args": [] }))
    }

    /// Runs a script that calls its last argument when it is done.
    #[must_use]
    pub fn run_until_called(&self, script: &str) -> Value {
        self.post("/execute/async", &json!({ "script": script, "args": [] }))
    }

    /// Waits until a script returns something true.
    ///
    /// # Panics
    /// When that takes more than ten seconds.
    pub fn wait(&self, script: &str) {
        let end = Instant::now() + Duration::from_secs(10);
        while self.run(script) != Value::Bool(true) {
            assert!(Instant::now() < end, "waited in vain for: {script}");
            std::thread::sleep(Duration::from_millis(50));
        }
    }

    /// The whole page as a picture.
    #[must_use]
    pub fn picture(&self) -> Vec<u8> {
        let picture = self.devtools(
            "Page.captureScreenshot",
            &json!({ "format": "png", "captureBeyondViewport": true }),
        );
        base64(&picture["data"])
    }

    /// The page as PDF on paper of a size in centimetres, with the page's own margins.
    #[must_use]
    pub fn print(&self, width_cm: f64, height_cm: f64) -> Vec<u8> {
        base64(&self.post(
            "/print",
            &json!({ "page": { "width": width_cm, "height": height_cm }, "margin": { "top": 1.4, "bottom": 1.6, "left": 1.3, "right": 1.3 }, "shrinkToFit": false, "background": false }),
        ))
    }

    fn get(&self, path: &str) -> Value {
        self.call("GET", &format!("{}{path}", self.session), &Value::Null)
    }

    fn post(&self, path: &str, body: &Value) -> Value {
        self.call("POST", &format!("{}{path}", self.session), body)
    }

    fn call(&self, method: &str, path: &str, body: &Value) -> Value {
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
        let answer = ask(self.socket, request.as_bytes(), SILENCE)
            .unwrap_or_else(|error| panic!("{method} {path}: {error}"));
        let answer = parse(&answer).unwrap_or_else(|| panic!("{method} {path}: no HTTP"));
        let value = answer.json()["value"].clone();
        assert!(
            answer.status < 400,
            "{method} {path}: {}: {}",
            value["error"],
            value["message"]
        );
        value
    }
}

impl Drop for Browser {
    fn drop(&mut self) {
        if !self.session.is_empty() {
            let request = format!(
                "DELETE {} HTTP/1.1\r\nhost: {}\r\nconnection: close\r\n\r\n",
                self.session, self.socket
            );
            let _ = ask(self.socket, request.as_bytes(), Duration::from_secs(10));
        }
        let _ = self.driver.kill();
        let _ = self.driver.wait();
    }
}

/// The port that the driver says it took.
fn port(driver: &mut Child) -> u16 {
    let lines = BufReader::new(driver.stdout.take().expect("the driver's words")).lines();
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

fn text(value: &Value) -> String {
    value.as_str().unwrap_or_default().to_owned()
}

fn base64(value: &Value) -> Vec<u8> {
    data_encoding::BASE64
        .decode(text(value).as_bytes())
        .expect("base 64")
}
