//! Li, Fan, Nie, Li & Chen 2010: crowd-induced random vibration of footbridges, J. Sound Vib.

pub mod step;
