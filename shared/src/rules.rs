//! Arithmetic of standards and papers: one formula, one pure function, one clause. Named by document and edition.

pub mod aci_207_2r_07;
pub mod aci_211_1_91;
pub mod aci_318_19;
pub mod calendar;
pub mod en_10210_2_2006;
pub mod en_13670_2009;
pub mod en_1991_1_1_2002;
pub mod en_1991_1_4_2005;
pub mod en_1992_1_1_2004;
pub mod en_1992_4_2018;
pub mod en_1993_1_1_2005;
pub mod en_1994_1_1_2004;
pub mod en_1997_1_2004;
pub mod en_206_1_2000;
pub mod gazetas_1991;
pub mod ibc_2012;
pub mod mechanics;
pub mod pais_kausel_1988;
pub mod resin;
pub mod stud_group;
pub mod threads;
pub mod vdi_2230_2015;
