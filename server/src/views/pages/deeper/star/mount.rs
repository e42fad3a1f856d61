//! The mount's own softness: what it adds, apart from the pier and never its fault.

use stillground::figure::{Arcsecond, Unit, Units};
use stillground::stages::motion::{Motion, Mount};

use super::{Chapter, Table, growth};

/// What the mount adds; none where the ground is not known.
pub fn chapter(motion: &Motion, units: Units) -> Option<Chapter> {
    let mount = motion.mount.as_ref()?;
    Some(Chapter {
        title: "What the mount adds, apart from the pier",
        told: Vec::new(),
        words: vec![format!("{} {}", known(mount), adds(motion, units))],
        table: Some(Table {
            names: "Mount",
            columns: ["Trembles, on a rigid pier", "Stiffness", "Wind moves the star"]
                .map(str::to_owned)
                .to_vec(),
            rows: rows(mount, units),
        }),
        after: vec![
            "Movements by wind are root mean square after the guider, in typical ground. The pier is judged with a rigid load on it: \
             no pier makes up for a soft mount, and no soft mount fails a pier."
                .to_owned(),
        ],
    })
}

fn known(mount: &Mount) -> &'static str {
    if mount.said {
        "The mount is as you described it."
    } else {
        "How stiff the mount is was not said, so a range of usual ones is shown. Tap it with everything on it and count how often it \
         trembles in a second: that answer, at the step “Pier and load”, replaces the range."
    }
}

fn adds(motion: &Motion, units: Units) -> String {
    motion.mount_adds_ratio.map_or_else(
        || "What it adds to the growth of the star is not known.".to_owned(),
        |adds| {
            format!(
                "With nobody near it adds {} to the growth of the star, {} at worst. That is no fault of the pier.",
                growth(100.0 * adds.expected, units),
                growth(100.0 * adds.worst, units)
            )
        },
    )
}

fn rows(mount: &Mount, units: Units) -> Vec<(String, Vec<String>)> {
    let arcsec = |value| units.say(value, Arcsecond);
    let row = |name: &str, hertz: f64, stiffness: f64, wind: f64| {
        let figures = [
            units.say(hertz, Unit::Hertz),
            units.say(stiffness, Unit::NewtonMetrePerRadian),
            arcsec(wind),
        ];
        (name.to_owned(), figures.to_vec())
    };
    let (f, k, wind) = (
        mount.frequency_hz,
        mount.stiffness_n_m_per_rad,
        mount.wind_arcsec,
    );
    let mut rows = if mount.said {
        vec![row("Yours", f.typical, k.typical, wind.typical)]
    } else {
        vec![
            row("A soft one", f.low, k.low, wind.low),
            row("What the plan assumes", f.typical, k.typical, wind.typical),
            row("A stiff one", f.high, k.high, wind.high),
        ]
    };
    rows.push((
        "The pier alone, with a rigid load".to_owned(),
        vec![
            "–".to_owned(),
            "–".to_owned(),
            arcsec(mount.rigid_wind_arcsec),
        ],
    ));
    rows
}
