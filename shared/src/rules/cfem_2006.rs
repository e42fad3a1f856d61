//! Canadian Foundation Engineering Manual, fourth edition: ground that freezes to the sides of a foundation.

pub mod adfreeze;
