//! What each route does: load, call, view.

pub mod api;
pub mod pages;
