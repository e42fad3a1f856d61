//! Load, decided.

use crate::brief::{Ask, Given, Taken, taken, usual};
use crate::figure::Unit;
use crate::rules::mechanics::mount;
use crate::site_plan::load::Enclosure;
use crate::site_plan::{HOUSE, Load as Said, SitePlan, Use};
use crate::source::Source;
use crate::units::{
    Area, Length, Mass, MomentOfInertia, RotationalStiffness, Time, Velocity, hertz, kilogram,
};

/// Stiffness that mounts of amateurs have, N m/rad: where none is said, figures are given for all of this.
pub const MOUNT_BAND_N_M_PER_RAD: (f64, f64) = (1e4, 3e5);

/// Complete answers about what stands on the pier.
#[derive(Debug, Clone, PartialEq)]
pub struct Load {
    /// Mass of mount and telescope.
    pub mass: Given<Mass>,
    /// Height of their centre above the pier.
    pub centre_above_pier: Given<Length>,
    /// Inertia about their own centre.
    pub inertia: Given<MomentOfInertia>,
    /// Stiffness of the mount.
    pub mount_stiffness: Given<RotationalStiffness>,
    /// Focal length.
    pub focal_length: Given<Length>,
    /// Free diameter of the telescope.
    pub aperture: Given<Length>,
    /// Pixel.
    pub pixel: Given<Length>,
    /// One exposure.
    pub exposure: Given<Time>,
    /// Area in the wind.
    pub wind_area: Given<Area>,
    /// Width of a star, arcsec.
    pub seeing_arcsec: Given<f64>,
    /// Stated budget, arcsec.
    pub budget_arcsec: Option<f64>,
    /// Growth of the star's width that the pier may cause with nobody there, as a share.
    pub asked_growth_ratio: Given<f64>,
    /// Stated time for a knock to die.
    pub settle_s: Option<Time>,
    /// Wind while observing.
    pub observing_wind: Given<Velocity>,
    /// Slew acceleration, degrees per second squared.
    pub slew_acceleration_deg_s2: Given<f64>,
    /// Interval of the guider.
    pub guiding_interval: Given<Time>,
    /// Damping ratio; none: from the parts.
    pub damping_ratio: Option<f64>,
    /// Difference across the column, K.
    pub thermal_difference_k: Given<f64>,
    /// What stands round it.
    pub enclosure: Given<Enclosure>,
}

/// The mount as stiff as it was said to be, or as it trembles; what is taken otherwise lies in a wide band.
fn mount_stiffness(plan: &SitePlan, load: &LoadBody, ask: &mut Ask) -> Given<RotationalStiffness> {
    let said = &plan.load;
    if let Some(frequency) = said.mount_frequency_hz {
        let inertia = mount::inertia_about_top(load.inertia, load.mass, load.centre);
        return Given::said(mount::stiffness(hertz::new(frequency), inertia));
    }
    let [low, high] = [MOUNT_BAND_N_M_PER_RAD.0, MOUNT_BAND_N_M_PER_RAD.1]
        .map(|k| ask.units.say(k, Unit::NewtonMetrePerRadian));
    ask.number(
        Said::mount_stiffness_n_m_per_rad,
        2e5,
        Taken::new(
            format!("a good mount; there are mounts from {low} to {high}, and a knock test tells"),
            "how much of the wind's movement is the mount's",
            Source::judgement("what mounts for amateurs have"),
        ),
    )
}

/// What the mount carries, for its frequency.
struct LoadBody {
    mass: Mass,
    centre: Length,
    inertia: MomentOfInertia,
}

/// Decides the load's unknowns.
pub fn resolve(plan: &SitePlan, ask: &mut Ask) -> Load {
    let said = &plan.load;
    let load_mass = ask.number(
        Said::mass_kg,
        60.0,
        Taken::new(
            format!(
                "a mount for a {} telescope with its weights",
                ask.units.about(250.0, Unit::Millimetre)
            ),
            "frequency and the force on the studs",
            HOUSE,
        ),
    );
    let centre_above_pier = usual!(ask, Said::centre_above_pier_m);
    let inertia = ask.number(
        Said::inertia_kg_m2,
        kilogram::get(load_mass.value) * 0.25 * 0.25,
        Taken::new(
            format!(
                "a radius of gyration of {}",
                ask.units.about(0.25, Unit::Metre)
            ),
            "frequency",
            HOUSE,
        ),
    );
    let body = LoadBody {
        mass: load_mass.value,
        centre: centre_above_pier.value,
        inertia: inertia.value,
    };
    Load {
        mass: load_mass,
        centre_above_pier,
        inertia,
        mount_stiffness: mount_stiffness(plan, &body, ask),
        focal_length: usual!(ask, Said::focal_length_mm),
        aperture: usual!(ask, Said::aperture_mm),
        pixel: usual!(ask, Said::pixel_um),
        exposure: taken!(
            ask,
            Said::exposure_s,
            usual_exposure_s(plan.purpose.unwrap_or(Use::DeepSky))
        ),
        wind_area: ask.number(
            Said::wind_area_m2,
            0.3,
            Taken::new(
                format!(
                    "a telescope of {} with its mount",
                    ask.units.about(250.0, Unit::Millimetre)
                ),
                "wind force",
                HOUSE,
            ),
        ),
        seeing_arcsec: usual!(ask, Said::seeing_arcsec),
        budget_arcsec: said.budget_arcsec,
        asked_growth_ratio: asked_growth(ask),
        settle_s: Said::settle_s.said(plan),
        observing_wind: usual!(ask, Said::observing_wind_m_s),
        slew_acceleration_deg_s2: usual!(ask, Said::slew_acceleration_deg_s2),
        guiding_interval: usual!(ask, Said::guiding_interval_s),
        damping_ratio: said.damping_ratio,
        thermal_difference_k: usual!(ask, Said::thermal_difference_k),
        enclosure: usual!(ask, Said::enclosure),
    }
}

/// Growth of the star that the pier may cause; no standard says how much.
fn asked_growth(ask: &mut Ask) -> Given<f64> {
    usual!(ask, Said::asked_growth_ratio)
}

/// One exposure: five minutes on a faint object, a hundredth of a second on a planet, a tenth for the eye.
fn usual_exposure_s(purpose: Use) -> f64 {
    match purpose {
        Use::DeepSky => 300.0,
        Use::Planetary => 0.01,
        Use::Visual => 0.1,
    }
}
