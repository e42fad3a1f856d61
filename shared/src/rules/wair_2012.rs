//! Wair, DeJong and Shantz: Guidelines for estimation of shear wave velocity profiles, PEER report 2012/08.

pub mod blow_count;
