//! EN 1994-1-1:2004: composite structures.

pub mod filled_tube;
