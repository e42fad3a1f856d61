//! What a person does with a plan, used by every journey.

use stillground_tests::browser::Browser;
use stillground_tests::service::{Service, start};

/// The steps by their names in an address.
pub const STEPS: [&str; 7] = [
    "site",
    "excavation",
    "footing",
    "pier",
    "anchors",
    "floor",
    "plan",
];

/// A narrow screen and a wide one.
pub const WIDTHS: [u32; 2] = [360, 1280];

/// A service and a browser.
pub struct Journey {
    /// The service.
    pub service: Service,
    /// The browser.
    pub browser: Browser,
}

impl Journey {
    /// A new service, a new browser, a screen of that width.
    pub fn new(width: u32) -> Self {
        let browser = Browser::start();
        browser.size(width, 900);
        Self {
            service: start(),
            browser,
        }
    }

    /// Opens a page by its path.
    pub fn open(&self, path: &str) {
        self.browser
            .open(&format!("http://{}{path}", self.service.socket));
    }

    /// Starts a plan at the front page and gives the path below which its steps stand.
    pub fn start_a_plan(&self) -> String {
        self.open("/");
        self.browser.follow(".starts button");
        let path = self.path();
        let root = path.strip_suffix("/short/ground").expect(&path).to_owned();
        self.open(&format!("{root}/site"));
        root
    }

    /// The page's path.
    pub fn path(&self) -> String {
        let address = self.browser.address();
        let path = address
            .split_once("://")
            .and_then(|(_, rest)| rest.split_once('/'))
            .map_or("", |(_, path)| path);
        format!("/{}", path.split(['?', '#']).next().unwrap_or_default())
    }

    /// Saves and goes on to the next step.
    pub fn go_on(&self) {
        self.browser.follow("button.main[name=go]");
    }

    /// Saves and stays.
    pub fn save(&self) {
        self.browser.follow("button[value=stay]:not(.first)");
    }

    /// Fails when the page is wider than the screen.
    pub fn fits(&self) {
        let wide = self
            .browser
            .run("return document.documentElement.scrollWidth - window.innerWidth");
        assert!(
            wide.as_i64().unwrap() <= 0,
            "{} is {wide} px too wide",
            self.path()
        );
    }
}
