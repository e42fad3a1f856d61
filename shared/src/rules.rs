//! Arithmetic of standards and papers: one formula, one pure function, one clause. Named by document and edition.

pub mod gazetas_1991;
pub mod pais_kausel_1988;
