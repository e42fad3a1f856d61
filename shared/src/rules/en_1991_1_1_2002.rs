//! EN 1991-1-1:2002, actions on structures: densities, and the push of a person.

pub mod density;
pub mod person;
