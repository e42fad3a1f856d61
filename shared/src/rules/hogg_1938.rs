//! Hogg 1938: a thin plate on an elastic half-space under a point load.

pub mod plate;
