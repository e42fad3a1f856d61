//! Load: mount, telescope and what they are used for.

use crate::field::{Problem, choice, section};
use crate::paths;
use crate::site_plan::{HOUSE, SitePlan};
use crate::source::Source;

choice! {
    /// What stands round the telescope.
    pub enum Enclosure {
        /// Nothing.
        Open = "open", "Nothing";
        /// Walls with a roof that rolls away.
        RollOff = "roll_off", "Walls, and a roof that rolls away";
        /// A dome with a slit.
        Dome = "dome", "A dome";
    }
}

section! {
    /// Load.
    pub struct Load in load {
        numbers {
            /// Mass of mount, telescope and counterweights together.
            mass_kg: Kilogram, 1.0..=3000.0, "from a small camera tracker to a telescope of a metre",
                asks "How much do mount, telescope and weights weigh together?",
                unknown "A mount for an average telescope is assumed.";
            /// Height of their common centre of mass above the pier's top.
            centre_above_pier_m: Metre, 0.0..=3.0, "above three metres the mount is a pier of its own",
                asks "How high above the pier is their balance point?",
                hint "About the height of the mount's axes.",
                takes 0.3, because "height of a common mount's axes",
                changes "frequency", from HOUSE;
            /// Moment of inertia about the load's own centre, any horizontal axis.
            inertia_kg_m2: KilogramSquareMetre, 0.0..=20000.0, "zero is a point, the largest is a one-metre telescope",
                asks "Moment of inertia about their own balance point",
                unknown "Worked out from the mass.";
            /// Rotational stiffness of the mount between the pier's top and the load.
            mount_stiffness_n_m_per_rad: NewtonMetrePerRadian, 100.0..=1e15, "softer than 100 falls over; anything above 1e12 is rigid",
                asks "Rotational stiffness of the mount, if you know it",
                hint "Leave it empty when you said how fast the mount trembles; 1e12 is rigid.",
                unknown "An average mount.";
            /// Frequency at which mount and load tremble on a rigid pier after a tap.
            mount_frequency_hz: Hertz, 0.2..=1000.0, "slower than 0.2 hangs loose, faster than 1000 is rigid",
                asks "How fast does the mount tremble when you tap it, with all of this on it?",
                hint "Tap the tube and watch a star at high power, or film a laser pointer on a wall in slow motion, and count the swings in a second. Many mounts tremble 4 to 15 times.",
                unknown "Figures are given for soft and stiff mounts.";
            /// Focal length.
            focal_length_mm: FocalMillimetre, 20.0..=50000.0, "from a camera lens to a long Cassegrain",
                asks "Focal length",
                hint "With the reducer or the Barlow lens you use.",
                takes 1000.0, because "a common imaging telescope",
                changes "arcseconds a pixel", from HOUSE;
            /// Free diameter of the telescope.
            aperture_mm: Millimetre, 10.0..=3000.0, "from a camera lens to a telescope of three metres",
                asks "Aperture",
                takes 200.0, because "a common telescope",
                changes "sharpness that planetary work asks for", from HOUSE;
            /// Size of a pixel.
            pixel_um: Micrometre, 0.5..=50.0, "from a phone's sensor to the coarsest camera",
                asks "Size of a pixel",
                hint "In micrometres, from the camera's data sheet.",
                takes 3.76, because "a common sensor",
                changes "arcseconds a pixel", from HOUSE;
            /// Length of one exposure.
            exposure_s: Second, 0.0001..=7200.0, "from a lucky frame to two hours",
                asks "Length of one exposure",
                because "what is usual for this use",
                changes "what motion is frozen", from HOUSE;
            /// Area that mount and telescope show to the wind.
            wind_area_m2: SquareMetre, 0.0..=30.0, "zero is fully sheltered",
                asks "Area facing the wind",
                unknown "An average telescope with its mount.";
            /// Full width of a star in the site's seeing.
            seeing_arcsec: Arcsecond, 0.2..=20.0, "better than 0.2 is no place on the ground, worse than 20 is fog",
                asks "Width of a star on a good night",
                hint "Full width at half of its height.",
                takes 2.0, because "good nights at a low site",
                changes "the limit on movement", from HOUSE;
            /// Largest movement of the star that is acceptable; when not given, it follows from the use.
            budget_arcsec: Arcsecond, 0.01..=60.0, "below 0.01 nothing can be measured, above 60 nothing needs a pier",
                asks "The most the star may move",
                unknown "Worked out from what the telescope is used for.";
            /// Growth of the star's width that the pier may cause with nobody there, as a share.
            asked_growth_ratio: One, 0.001..=1.0, "less than a thousandth cannot be measured, more than twice as wide needs no pier",
                asks "How much wider may the pier make a star?",
                hint "As a share, with nobody near: 0.05 is a twentieth wider over one exposure.",
                takes 0.05, because "a tenth more is a common limit for long exposures, and half of it is left to the mount",
                changes "whether the star is called still", from Source::judgement(
            "growth of the star by a tenth, half of it the mount's; no standard exists",
        );
            /// Longest time that a knock may take to die; when not given, it follows from the use.
            settle_s: Second, 0.1..=120.0, "quicker than 0.1 nobody sees, longer than two minutes is no pier",
                asks "Longest settling time you accept after a bump",
                unknown "Worked out from what the telescope is used for.";
            /// Mean wind speed in which one still observes.
            observing_wind_m_s: WindMetrePerSecond, 0.0..=30.0, "nobody observes in a storm",
                asks "Strongest wind in which you still observe",
                hint "The mean, not the gusts.",
                takes 5.0, because "a breezy night on which one still observes",
                changes "wind on the star", from HOUSE;
            /// Angular acceleration of the mount when it slews.
            slew_acceleration_deg_s2: DegreePerSecondSquared, 0.0..=500.0, "from a crawling worm drive to a direct drive",
                asks "How sharply does the mount start to slew?",
                takes 2.0, because "a common geared mount",
                changes "settling after a slew", from HOUSE;
            /// Interval between corrections of the guider.
            guiding_interval_s: Second, 0.01..=600.0, "from a fast tip-tilt to a slow guider",
                asks "Guider interval: time between two corrections",
                takes 2.0, because "a common guider",
                changes "which motion is corrected", from HOUSE;
            /// Damping of the finished pier as a ratio of critical.
            damping_ratio: One, 0.0005..=0.3, "from a bare welded tube to a dashpot",
                asks "Damping of the finished pier",
                hint "As a ratio of critical damping, from a knock test.",
                unknown "Worked out from the parts.";
            /// Difference of temperature between the sides of the column.
            thermal_difference_k: Kelvin, 0.0..=20.0, "zero is perfect shade",
                asks "Temperature difference between the column's sides",
                hint "One side sees the warm wall, the other the open sky.",
                takes 1.0, because "one side of a bare column facing the open sky",
                changes "slow turn of the top", from HOUSE;
        }
        counts {}
        others {
            /// What stands round the telescope.
            enclosure: Enclosure,
                asks "What stands round it?",
                takes Enclosure::RollOff, because "most permanent piers stand in one",
                changes "share of the wind that reaches the telescope", from HOUSE;
        }
    }
}

/// Answers about the load that contradict each other.
pub fn contradictions(plan: &SitePlan) -> Vec<Problem> {
    let load = &plan.load;
    let both = load.mount_frequency_hz.is_some() && load.mount_stiffness_n_m_per_rad.is_some();
    both.then(|| {
        Problem::between(
            paths![load.mount_frequency_hz, load.mount_stiffness_n_m_per_rad],
            "Both say how stiff the mount is: keep the one that was measured and take the other away.",
        )
    })
    .into_iter()
    .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mount_is_as_stiff_as_one_answer_says() {
        let mut plan = SitePlan::unknown();
        plan.load.mount_frequency_hz = Some(8.0);
        assert!(contradictions(&plan).is_empty());
        plan.load.mount_stiffness_n_m_per_rad = Some(2e5);
        assert_eq!(contradictions(&plan).len(), 1);
    }
}
