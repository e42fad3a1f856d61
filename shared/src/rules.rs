//! Arithmetic of standards and papers: one formula, one pure function, one clause. Named by document and edition.

pub mod aci_207_2r_07 {
    //! ACI 207.2R-07, thermal and volume change effects in mass concrete.
    pub mod adiabatic_rise;
}
pub mod aci_211_1_91 {
    //! ACI 211.1-91, proportions of concrete.
    pub mod absolute_volume;
}
pub mod aci_318_19;
pub mod aisc_360_16 {
    //! ANSI/AISC 360-16, specification for structural steel buildings.
    pub mod wall;
    pub mod weld;
}
pub mod annular_plate;
pub mod base_on_slope;
pub mod blow_count_regression;
pub mod brandenberg_2010 {
    //! Brandenberg, Bellana and Shantz 2010: shear wave velocity as a function of blow count and vertical effective stress.
    pub mod speed;
}
pub mod calendar;
pub mod ccip_016_2006 {
    //! CCIP-016, 2006: a design guide for footfall induced vibration of structures.
    pub mod walking;
}
pub mod cfem_2006 {
    //! Canadian Foundation Engineering Manual, fourth edition: ground that freezes to the sides of a foundation.
    pub mod adfreeze;
}
pub mod dobry_gazetas_1986 {
    //! Dobry & Gazetas 1986 and Gazetas 1991: what a footing radiates into the ground.
    pub mod dashpot;
}
pub mod en_10210_2_2006 {
    //! EN 10210-2:2006: hot finished structural hollow sections, sectional properties.
    pub mod section;
}
pub mod en_13670_2009 {
    //! EN 13670:2009, execution of concrete structures: curing.
    pub mod curing;
}
pub mod en_1991_1_1_2002 {
    //! EN 1991-1-1:2002, actions on structures: densities, and the push of a person.
    pub mod concrete;
    pub mod person;
}
pub mod en_1991_1_4_2005 {
    //! EN 1991-1-4:2005, wind actions.
    pub mod cylinder;
    pub mod gust;
    pub mod turbulence;
}
pub mod en_1992_1_1_2004 {
    //! EN 1992-1-1:2004, design of concrete structures: strength by age, maturity, modulus, least steel.
    pub mod maturity;
    pub mod minimum_steel;
    pub mod strength;
    pub mod strength_by_age;
}
pub mod en_1992_4_2018;
pub mod en_1993_1_1_2005 {
    //! EN 1993-1-1:2005: design of steel structures.
    pub mod buckling;
    pub mod material;
    pub mod resistance;
}
pub mod en_1993_1_8_2005;
pub mod en_1994_1_1_2004 {
    //! EN 1994-1-1:2004: composite structures.
    pub mod filled_tube;
}
pub mod en_1997_1_2004 {
    //! EN 1997-1:2004, geotechnical design: bearing resistance, eccentric bases, sliding, uplift.
    pub mod annex_d;
    pub mod design_approaches;
    pub mod eccentric_base;
    pub mod sliding;
    pub mod uplift;
}
pub mod en_206_1_2000 {
    //! EN 206-1:2000, concrete: exposure classes, and the concrete as it comes off the lorry.
    pub mod exposure;
    pub mod fresh;
}
pub mod fhwa_gec5_2017 {
    //! FHWA Geotechnical Engineering Circular No. 5, 2017.
    pub mod shear_modulus;
}
pub mod gazetas_1991;
pub mod hogg_1938 {
    //! Hogg 1938: a thin plate on an elastic half-space under a point load.
    pub mod plate;
}
pub mod ibc_2012 {
    //! International Building Code, 2012 edition: presumed values of ground.
    pub mod presumptive;
    pub mod sliding;
}
pub mod image_motion {
    //! What movement does to an image: scale, the star's places and its width, blur within an exposure, drift of a polar axis.
    pub mod fit;
    pub mod places;
    pub mod polar;
    pub mod scale;
    pub mod width;
}
pub mod kwak_2015 {
    //! Kwak, Brandenberg, Mikami and Stewart 2015: shear wave velocity from blow count and vertical effective stress.
    pub mod speed;
}
pub mod lamb_1904 {
    //! Lamb 1904, Philosophical Transactions of the Royal Society A 203: waves of a load on the surface of a half-space.
    pub mod slope;
}
pub mod layer_on_rock;
pub mod li_2010 {
    //! Li, Fan, Nie, Li & Chen 2010: crowd-induced random vibration of footbridges, J. Sound Vib.
    pub mod step;
}
pub mod mechanics {
    //! Mechanics of a column: beams, heat and oscillators, derived here and checked against books.
    pub mod beam_element;
    pub mod cantilever;
    pub mod guider;
    pub mod heat;
    pub mod mount;
    pub mod oscillator;
    pub mod settlement;
}
pub mod meeus_1998;
pub mod monotone;
pub mod osha_1926_p_1989 {
    //! 29 CFR 1926 Subpart P, Excavations, as published in 1989 and in force since.
    pub mod distances;
    pub mod slopes;
}
pub mod pais_kausel_1988;
pub mod prying;
pub mod resin;
pub mod ribbed_plate;
pub mod rock_dowel;
pub mod scatter;
pub mod sightline;
pub mod stud_group;
pub mod terzaghi_1943 {
    //! Terzaghi: Theoretical Soil Mechanics, 1943.
    pub mod vertical_cut;
}
pub mod thread_engagement;
pub mod threads;
pub mod tree_reach;
pub mod tubes;
pub mod ufc_3_130_06_2004 {
    //! UFC 3-130-06, Calculation methods for determination of depths of freeze and thaw in soils, 2004; formerly TM 5-852-6.
    pub mod berggren;
    pub mod stefan;
}
pub mod vdi_2230_2015;
pub mod wair_2012 {
    //! Wair, DeJong and Shantz: Guidelines for estimation of shear wave velocity profiles, PEER report 2012/08.
    pub mod blow_count;
}
pub mod world_magnetic_model_2025;
pub mod yearly_wave;
