//! The service from outside: real sockets, the same start as `main`, one module per promise.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a test fails by panicking"
)]

mod attacks;
mod bad_input;
mod bad_stock;
mod bad_studs;
mod behind_proxies;
mod breakage;
mod codes;
mod command_line;
mod commissioning;
mod copies;
mod encrypted;
mod faults;
mod generated;
mod ground_input;
mod held;
mod inch_pages;
mod interface;
mod limits;
mod lookup;
mod measuring;
mod measuring_away;
mod odd_words;
mod on_postgres;
mod on_sqlite;
mod options;
mod order;
mod organisers;
mod prices;
mod reached;
mod record_page;
mod record_photos;
mod replies;
mod rights;
mod settings_told;
mod sheet_codes;
mod sheets;
mod store;
mod strain;
mod tiles;
mod trace;
mod under_base;
mod verdict;
mod waits;
mod watched;
mod ways;
