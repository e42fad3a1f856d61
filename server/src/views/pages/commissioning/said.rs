//! What the measurements say, as the page shows it.

use stillground::figure::significant;
use stillground::proof::{Fitted, Range};
use stillground::units::hertz;

use crate::planned::Planned;

/// An unknown after the measurements.
pub struct UnknownView {
    /// What.
    pub what: &'static str,
    /// What was found, or that nothing was.
    pub found: String,
    /// Whether the measurements told of it.
    pub told: bool,
}

/// A measurement beside what was foreseen.
pub struct AgreementView {
    /// Which.
    pub words: String,
    /// Measured, foreseen, fitted.
    pub figures: [String; 3],
    /// In words.
    pub says: String,
}

/// What the measurements say.
pub struct SaidView {
    /// In words.
    pub says: Vec<String>,
    /// What is unlikely to be right.
    pub suspects: Vec<String>,
    /// The unknowns.
    pub unknowns: Vec<UnknownView>,
    /// The measurements.
    pub agreement: Vec<AgreementView>,
    /// What would help.
    pub remedies: Vec<(String, String, Option<String>)>,
    /// What to measure next.
    pub next: Option<String>,
    /// As planned and as this pier: what, planned, fitted.
    pub figures: Vec<(&'static str, String, String)>,
}

/// All of it.
pub(super) fn told(fitted: &Fitted, planned: &Planned, root: &str) -> SaidView {
    let design = &planned.design;
    let figure = |value: Option<f64>| {
        value.map_or_else(|| "not known".to_owned(), |value| significant(value, 3))
    };
    let range = |what, range: Range, unit: &str, factor: f64| {
        let of = |value: Option<f64>| figure(value.map(|value| value * factor));
        let figures = format!(
            "{} ({} to {}) {unit}",
            of(range.typical),
            of(range.low),
            of(range.high)
        );
        UnknownView {
            what,
            found: if range.typical.is_none() {
                "contradictory".to_owned()
            } else {
                figures.trim().to_owned()
            },
            told: range.told,
        }
    };
    let first = design.motion.frequencies.first().map(|f| hertz::get(*f));
    let fitted_motion = fitted.motion.as_ref();
    let mut figures = vec![(
        "First frequency, Hz",
        figure(first),
        figure(fitted.frequency_hz.typical),
    )];
    figures.push((
        "Quiet distance, m",
        figure(design.motion.quiet_distance_m),
        figure(fitted_motion.and_then(|motion| motion.quiet_distance_m)),
    ));
    figures.push((
        "Peak of the wind, arcsec",
        figure(design.motion.wind_arcsec),
        figure(fitted_motion.and_then(|motion| motion.wind_arcsec)),
    ));
    figures.push((
        "Time to come to rest after a bump, s",
        figure(design.motion.settle_s),
        figure(fitted_motion.and_then(|motion| motion.settle_s)),
    ));
    SaidView {
        says: fitted.says.clone(),
        suspects: fitted
            .suspects
            .iter()
            .map(|suspect| suspect.says.clone())
            .collect(),
        unknowns: vec![
            range(
                "Ground, shear modulus",
                fitted.shear_modulus_mpa,
                "MPa",
                1.0,
            ),
            range(
                "Sides held by the ground",
                fitted.side_contact_ratio,
                "%",
                100.0,
            ),
            range(
                "Joint under the column",
                fitted.base_joint_stiffness_n_m_per_rad,
                "MN m/rad",
                1e-6,
            ),
            range(
                "Column, over the plan’s",
                fitted.column_stiffness_ratio,
                "",
                1.0,
            ),
            range(
                "Mount",
                fitted.mount_stiffness_n_m_per_rad,
                "kN m/rad",
                1e-3,
            ),
        ],
        agreement: fitted
            .agreement
            .iter()
            .map(|one| AgreementView {
                words: format!("{}, {}", one.measurement, one.unit),
                figures: [
                    figure(Some(one.measured)),
                    figure(Some(one.foreseen)),
                    figure(one.fitted),
                ],
                says: one.says.clone(),
            })
            .collect(),
        remedies: fitted
            .remedies
            .iter()
            .map(|remedy| {
                let is_of_the_pier = remedy
                    .fields
                    .iter()
                    .any(|new| new.field.to_string().starts_with("pier."));
                let step = is_of_the_pier.then(|| format!("{root}/pier"));
                let tilt = remedy.tilt_from_arcsec.zip(remedy.tilt_to_arcsec);
                let gain = tilt.map(|(from, to)| {
                    format!(
                        "{}″ under a person becomes {}″",
                        significant(from, 2),
                        significant(to, 2)
                    )
                });
                let gain = gain.unwrap_or_else(|| {
                    format!(
                        "{} becomes {} Hz, {} times as stiff",
                        significant(remedy.frequency_from_hz, 3),
                        significant(remedy.frequency_to_hz, 3),
                        significant(remedy.stiffer_ratio, 2)
                    )
                });
                (remedy.says.clone(), gain, step)
            })
            .collect(),
        next: fitted.next.as_ref().map(|next| next.says.clone()),
        figures,
    }
}
