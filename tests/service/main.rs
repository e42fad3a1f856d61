//! The service from outside: real sockets, the same start as `main`, one module per promise.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a test fails by panicking"
)]

mod attacks;
mod bad_input;
mod bad_studs;
mod breakage;
mod codes;
mod command_line;
mod encrypted;
mod faults;
mod generated;
mod ground_input;
mod interface;
mod limits;
mod lookup;
mod on_postgres;
mod on_sqlite;
mod order;
mod reached;
mod record_page;
mod replies;
mod rights;
mod sheets;
mod store;
mod strain;
mod under_base;
mod watched;
