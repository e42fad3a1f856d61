//! The tests of the store on a PostgreSQL database.
#![allow(
    clippy::duplicate_mod,
    reason = "the same tests run on either database"
)]

crate::store::tests_on!(on_postgres);
