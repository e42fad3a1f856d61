//! The mount between pier and telescope: how soft it may be, and what that does in the wind. It never fails the pier.

use serde::Serialize;

use crate::brief::load::MOUNT_BAND_N_M_PER_RAD;
use crate::brief::{Brief, Origin};
use crate::figure::{KilogramSquareMetre, Unit};
use crate::notes::{Notes, Working};
use crate::rules::mechanics::mount;
use crate::stages::motion::system::{Planes, RIGID_N_M_PER_RAD};
use crate::stages::motion::wind;
use crate::stages::pier::Pier;
use crate::units::{
    Length, RotationalStiffness, Spread, hertz, kilogram_square_metre, newton_metre_per_radian,
};

/// The mount: as it was said, or a band of what there is.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Mount {
    /// Whether a frequency or a stiffness was said; if so, the ends of each band are the same.
    pub said: bool,
    /// Stiffness.
    pub stiffness_n_m_per_rad: Spread<f64>,
    /// Frequency at which the load trembles on it on a rigid pier.
    pub frequency_hz: Spread<f64>,
    /// Flutter of the star in the wind with a guider, root mean square, typical ground: the softest mount first.
    pub wind_arcsec: Spread<f64>,
    /// The same on a rigid mount: what is the pier's own.
    pub rigid_wind_arcsec: f64,
}

/// Finds it; none where the load has no inertia or the ground is not known. `solve` gives the modes on another mount.
pub fn find(
    brief: &Brief,
    pier: &Pier,
    foot_above_ground: Length,
    solve: impl Fn(RotationalStiffness) -> Option<Planes>,
    notes: &mut Notes,
) -> Option<Mount> {
    let load = &brief.load;
    let inertia = mount::inertia_about_top(
        load.inertia.value,
        load.mass.value,
        load.centre_above_pier.value,
    );
    if kilogram_square_metre::get(inertia) <= 0.0 {
        return None;
    }
    let said = load.mount_stiffness.origin == Origin::Said;
    let typical = newton_metre_per_radian::get(load.mount_stiffness.value);
    let (low, high) = if said {
        (typical, typical)
    } else {
        MOUNT_BAND_N_M_PER_RAD
    };
    let stiffness = Spread { low, typical, high };
    let frequency =
        stiffness.map(|k| hertz::get(mount::frequency(newton_metre_per_radian::new(k), inertia)));
    let wind = |k: f64| {
        solve(newton_metre_per_radian::new(k))
            .map(|planes| wind::guided_rms_arcsec(brief, pier, foot_above_ground, &planes))
    };
    let middle = wind(typical)?;
    let (low, high) = if said {
        (middle, middle)
    } else {
        (wind(low)?, wind(high)?)
    };
    notes.working(
        Working::new(
            "motion.mount",
            "Stiffness of the mount from how fast it trembles with its load",
            "K = (2πf)² (J + m c²)",
            mount::SOURCE,
        )
        .with("f", frequency.typical, Unit::Hertz)
        .with("J + m c²", inertia, KilogramSquareMetre)
        .gives("K", typical, Unit::NewtonMetrePerRadian),
    );
    Some(Mount {
        said,
        stiffness_n_m_per_rad: stiffness,
        frequency_hz: frequency,
        wind_arcsec: Spread {
            low,
            typical: middle,
            high,
        },
        rigid_wind_arcsec: wind(RIGID_N_M_PER_RAD)?,
    })
}
