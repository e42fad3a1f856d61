//! What the pier carries, and what looks through it.

use super::super::question::{Topic, number};
use stillground::row;

pub(super) const CARRIES: Topic = Topic {
    heading: "What stands on it?",
    intro: "Weigh each piece on bathroom scales: mount, telescope, camera, counterweights.",
    common: &[
        number(row!(load.mass_kg)),
        number(row!(load.centre_above_pier_m)),
        number(row!(load.mount_frequency_hz)),
    ],
    rare: &[
        number(row!(load.wind_area_m2)),
        number(row!(load.inertia_kg_m2)),
        number(row!(load.mount_stiffness_n_m_per_rad)),
        number(row!(load.slew_acceleration_deg_s2)),
        number(row!(load.damping_ratio)),
    ],
};

pub(super) const CAMERA: Topic = Topic {
    heading: "What does it see?",
    intro: "Focal length and pixel say what an arcsecond looks like on your sensor.",
    common: &[
        number(row!(load.focal_length_mm)),
        number(row!(load.pixel_um)),
        number(row!(load.exposure_s)),
    ],
    rare: &[
        number(row!(load.aperture_mm)),
        number(row!(load.seeing_arcsec)),
        number(row!(load.budget_arcsec)),
        number(row!(load.asked_growth_ratio)),
        number(row!(load.settle_s)),
        number(row!(load.guiding_interval_s)),
        number(row!(load.observing_wind_m_s)),
        number(row!(load.thermal_difference_k)),
    ],
};
