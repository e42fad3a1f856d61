//! CCIP-016, 2006: a design guide for footfall induced vibration of structures.

pub mod walking;
