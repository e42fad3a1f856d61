//! What each route does: load, call, view.

pub mod api;
pub mod asset;
pub mod health;
pub mod house;
pub mod pages;
pub mod photograph;
pub mod print;
