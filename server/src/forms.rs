//! Forms: what is asked, how what is typed becomes an answer, and how an answer is shown again.

pub mod branch;
pub mod chapter;
pub mod commissioning;
pub mod price;
pub mod prices;
pub mod question;
pub mod questions;
pub mod reading;
pub mod record;
pub mod sheet;
pub mod short;
pub mod step;
pub mod table;
pub mod typed;
