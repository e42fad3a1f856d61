//! FHWA Geotechnical Engineering Circular No. 5, 2017.

pub mod shear_modulus;
