//! SCI P354, 2009: design of floors for vibration, a new approach.

pub mod walking;
