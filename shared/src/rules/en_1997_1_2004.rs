//! EN 1997-1:2004, geotechnical design: eccentric bases, sliding, uplift.

pub mod eccentric_base;
pub mod sliding;
pub mod uplift;
