//! The service, pages, drawings and command line of Stillground.
//!
//! To read in order: [`router`] lists every route; a handler in [`handlers`] loads from the [`store`], asks the engine
//! through [`app::App::planned`], and hands the result to a view. What a person is told when it goes wrong stands in
//! [`error`].

pub mod access;
pub mod app;
pub mod assets;
pub mod cli;
pub mod client;
pub mod config;
pub mod connections;
pub mod copies;
pub mod drawing;
pub mod error;
pub mod forms;
pub mod guard;
pub mod handlers;
pub mod journal;
pub mod lettering;
pub mod limits;
pub mod lookup;
pub mod openapi;
pub mod passage;
pub mod photo;
pub mod planned;
pub mod prints;
pub mod record;
pub mod router;
pub mod searches;
pub mod security;
pub mod server;
pub mod shares;
pub mod shelf;
pub mod store;
pub mod turns;
pub mod views;
pub mod watch;
