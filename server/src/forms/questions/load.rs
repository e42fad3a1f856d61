//! What the pier carries, and what looks through it.

use super::super::question::{Topic, number};

pub(super) const CARRIES: Topic = Topic {
    heading: "What stands on it?",
    intro: "Weigh each piece on bathroom scales: mount, telescope, camera, counterweights.",
    common: &[
        number(
            "load.mass_kg",
            "What do mount, telescope and weights weigh together?",
            "",
            "A mount for an average telescope is assumed.",
        ),
        number(
            "load.centre_above_pier_m",
            "How high above the pier is their balance point?",
            "About the height of the mount's axes.",
            "The height of a common mount's axes.",
        ),
        number(
            "load.mount_frequency_hz",
            "How fast does the mount tremble when you tap it, with all of this on it?",
            "Tap the tube and watch a star at high power, or film a laser pointer on a wall in slow motion: swings in a second. Many mounts tremble 4 to 15 times.",
            "Figures are given for soft and stiff mounts.",
        ),
    ],
    rare: &[
        number(
            "load.wind_area_m2",
            "Area that they show to the wind",
            "",
            "An average telescope with its mount.",
        ),
        number(
            "load.inertia_kg_m2",
            "Moment of inertia about their own balance point",
            "",
            "It follows from the mass.",
        ),
        number(
            "load.mount_stiffness_n_m_per_rad",
            "Rotational stiffness of the mount, if you know it",
            "Leave it empty when you said how fast the mount trembles; 1e12 is rigid.",
            "An average mount.",
        ),
        number(
            "load.slew_acceleration_deg_s2",
            "How sharply does the mount start to slew?",
            "",
            "A common geared mount.",
        ),
        number(
            "load.damping_ratio",
            "Damping of the finished pier",
            "A ratio of critical, from a tap test.",
            "It follows from the parts.",
        ),
    ],
};

pub(super) const CAMERA: Topic = Topic {
    heading: "What does it see?",
    intro: "Focal length and pixel say what an arcsecond looks like on your sensor.",
    common: &[
        number(
            "load.focal_length_mm",
            "Focal length",
            "With the reducer or the Barlow lens you use.",
            "A common imaging telescope.",
        ),
        number(
            "load.pixel_um",
            "Size of a pixel",
            "In micrometres, from the camera's data sheet.",
            "A common sensor.",
        ),
        number(
            "load.exposure_s",
            "Length of one exposure",
            "",
            "A common long exposure.",
        ),
    ],
    rare: &[
        number("load.aperture_mm", "Aperture", "", "A common telescope."),
        number(
            "load.seeing_arcsec",
            "Width of a star on a good night",
            "Full width at half of its height.",
            "Good nights at a low site.",
        ),
        number(
            "load.budget_arcsec",
            "The most that the star may move",
            "",
            "It follows from what the telescope is for.",
        ),
        number(
            "load.asked_growth_ratio",
            "How much wider may the pier make a star?",
            "As a share, with nobody near: 0.05 is a twentieth wider over one exposure.",
            "Assumed: a twentieth.",
        ),
        number(
            "load.settle_s",
            "Longest settling time you accept after a bump",
            "",
            "It follows from what the telescope is for.",
        ),
        number(
            "load.guiding_interval_s",
            "Time between two corrections of the guider",
            "",
            "A common guider.",
        ),
        number(
            "load.observing_wind_m_s",
            "Wind in which you still observe",
            "The mean, not the gusts.",
            "A breezy night.",
        ),
        number(
            "load.thermal_difference_k",
            "Difference of temperature between the column's sides",
            "One side sees the warm wall, the other the open sky.",
            "A bare column at dusk.",
        ),
    ],
};
