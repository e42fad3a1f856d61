//! The links of a plan: who may do what with it.

use askama::Template;

use super::frame::Frame;

/// The page.
#[derive(Template)]
#[template(path = "pages/links.html")]
pub struct LinksPage {
    /// The frame.
    pub frame: Frame,
    /// Address below which the plan's pages stand.
    pub root: String,
    /// The links.
    pub links: Vec<LinkView>,
    /// A recovery code, shown once after it was made.
    pub recovery: Option<String>,
    /// Since when there is one.
    pub recovery_since: Option<String>,
}

/// A link.
#[derive(Debug, Clone)]
pub struct LinkView {
    /// Its name in a form.
    pub key: &'static str,
    /// What it is called.
    pub title: &'static str,
    /// For whom it is.
    pub whom: &'static str,
    /// What its holder may do.
    pub may: &'static [&'static str],
    /// The code of its address as SVG, where this page may show it: of a new link, and of the one that opened the page.
    pub code: Option<String>,
    /// Since when there is one.
    pub since: Option<String>,
    /// When it ends by itself.
    pub until: Option<String>,
    /// The day on which it was last used.
    pub opened: Option<String>,
    /// The whole address, shown once after it was made.
    pub address: Option<String>,
    /// Whether it is the one that opened this page.
    pub own: bool,
}
