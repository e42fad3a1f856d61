//! EN 1997-1:2004, geotechnical design: bearing resistance, eccentric bases, sliding, uplift.

pub mod annex_d;
pub mod design_approaches;
pub mod eccentric_base;
pub mod sliding;
pub mod uplift;
