//! Hardin and Richart 1963, Hardin and Black 1968: small-strain shear modulus of sand and clay.

pub mod modulus;
