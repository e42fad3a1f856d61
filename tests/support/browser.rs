//! A real browser, driven over the WebDriver protocol (W3C WebDriver 2) by its own driver program.
//!
//! To start one takes longer than most journeys, so that one is handed from test to test, each time with a new window and nothing
//! left of the one before. The driver is started on a free port by a shell that ends it with the tests; nothing else is touched.

mod session;

use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

use serde_json::{Value, json};

use session::Session;

/// The key under which the protocol names an element.
const ELEMENT: &str = "element-6066-11e4-a52e-4f735466cecf";

/// Browsers that no test has now.
static FREE: Mutex<Vec<Session>> = Mutex::new(Vec::new());

/// A browser with one window.
pub struct Browser {
    /// None only while it is dropped.
    session: Option<Session>,
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
    /// A browser without a screen: one that no test has now, or a new one.
    ///
    /// # Panics
    /// When driver or browser does not start.
    #[must_use]
    pub fn start() -> Self {
        let free = FREE.lock().unwrap_or_else(PoisonError::into_inner).pop();
        Self {
            session: Some(free.unwrap_or_else(Session::start)),
        }
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
        self.session().get(path)
    }

    fn post(&self, path: &str, body: &Value) -> Value {
        self.session().post(path, body)
    }

    fn session(&self) -> &Session {
        self.session.as_ref().expect("a browser that is in use")
    }
}

impl Drop for Browser {
    /// What a test that failed leaves behind is nobody's business: its browser ends with it.
    fn drop(&mut self) {
        let Some(session) = self.session.take() else {
            return;
        };
        if !std::thread::panicking() && session.forgets().is_some() {
            FREE.lock()
                .unwrap_or_else(PoisonError::into_inner)
                .push(session);
        }
    }
}

fn text(value: &Value) -> String {
    value.as_str().unwrap_or_default().to_owned()
}

fn base64(value: &Value) -> Vec<u8> {
    data_encoding::BASE64
        .decode(text(value).as_bytes())
        .expect("base 64")
}
