//! Kwak, Brandenberg, Mikami and Stewart 2015: shear wave velocity from blow count and vertical effective stress.

pub mod speed;
