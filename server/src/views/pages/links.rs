//! The links of a plan: who may do what with it.

use askama::Template;

use super::frame::Frame;

/// The page.
#[derive(Template)]
#[template(path = "pages/links.html")]
pub struct LinksPage {
    /// The frame.
    pub frame: Frame,
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
    /// What its holder may do.
    pub may: &'static str,
    /// Since when there is one.
    pub since: Option<String>,
    /// When it ends by itself.
    pub until: Option<String>,
    /// The whole address, shown once after it was made.
    pub address: Option<String>,
    /// Whether it is the one that opened this page.
    pub own: bool,
}
