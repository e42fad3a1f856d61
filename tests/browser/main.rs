//! Journeys in a real browser, on a narrow screen and a wide one, with scripts and without, by keyboard, and on paper.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a test fails by panicking"
)]

mod access;
mod answers;
mod beginnings;
mod budgets;
mod budgets_deeper;
mod check_answers;
mod drawings;
mod floor;
mod helper_away;
mod keyboard;
mod left;
mod measuring;
mod order;
mod organiser;
mod paper;
mod pictures;
mod record;
mod refused;
mod slow_line;
mod walk;
