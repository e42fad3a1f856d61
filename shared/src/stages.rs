//! The stages of a design, in an installer's words: judgement and order. The arithmetic is in [`crate::rules`].

pub mod anchors;
pub mod block;
pub mod cautions;
pub mod costs;
pub mod excavation;
pub mod figures;
pub mod floor;
pub mod ground;
pub mod ground_stiffness;
pub mod joint;
pub mod loads;
pub mod materials;
pub mod motion;
pub mod north;
pub mod parts;
pub mod pier;
pub mod room;
pub mod schedule;
pub mod steel;
