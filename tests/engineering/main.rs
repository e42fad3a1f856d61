//! The engine against outside references: one module per document, library or body of practice.
//!
//! Each check names its source at the top of its module; the number that it expects stands beside where it is from.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a test fails by panicking"
)]

mod aci_318_17;
mod aisc_design_guide_1;
mod block_again;
mod cautions;
mod checking_page;
mod chosen_parts;
mod column_foot;
mod concrete_practice;
mod digging_practice;
mod edges;
mod en_1992_1_1;
mod en_1992_4;
mod examples;
mod first_numbers;
mod footfall;
mod frost;
mod ground_page;
mod ground_papers;
mod ground_range;
mod groundhog;
mod halfspace_finite;
mod halfspace_free_field;
mod halfspace_papers;
mod halfspace_practice;
mod halfspace_random;
mod hardin;
mod ibc_1806;
mod improvements;
mod inch_aci;
mod inch_parts;
mod iso_898_1;
mod jrc_steel_2014;
mod magnetic_field;
mod metric_figures;
mod motion_finite;
mod neighbours;
mod options;
mod osha_1926_p;
mod pier_dynamics;
mod pier_practice;
mod plate_on_ground;
mod proof_chance;
mod proof_coverage;
mod proof_hurt;
mod proof_libraries;
mod proof_model;
mod proof_page;
mod proof_remedies;
mod proof_traces;
mod proof_verdicts;
mod rigid_base;
mod rock;
mod sci_p398;
mod side_frost;
mod sizing;
mod soil_dynamics;
mod star_again;
mod star_before;
mod star_images;
mod steps_and_doors;
mod stud_forms;
mod stud_practice;
mod sun_and_star;
mod torque;
mod torque_seats;
mod tubes;
mod vertical_cut;
mod wind_on_piers;
