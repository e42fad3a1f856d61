//! Dobry & Gazetas 1986 and Gazetas 1991: what a footing radiates into the ground.

pub mod dashpot;
