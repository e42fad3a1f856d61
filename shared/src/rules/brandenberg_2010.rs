//! Brandenberg, Bellana and Shantz 2010: shear wave velocity as a function of blow count and vertical effective stress.

pub mod speed;
