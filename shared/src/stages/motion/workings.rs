//! The lines of calculation behind the frequencies, each stand's lean and the quiet distance.

use crate::brief::Brief;
use crate::figure::{Arcsecond, Newton, One, Unit};
use crate::notes::{Notes, Working};
use crate::rules::mechanics::beam_element;
use crate::site_plan::floor::Stand;
use crate::source::Source;
use crate::units::{STANDARD_GRAVITY_M_S2, gravity, hertz};

use super::{Motion, StandTilt};

/// Names of the frequencies' calculations, slowest first.
const FREQUENCIES: [&str; 6] = [
    "motion.frequency_1",
    "motion.frequency_2",
    "motion.frequency_3",
    "motion.frequency_4",
    "motion.frequency_5",
    "motion.frequency_6",
];
/// Names of the stands' calculations, as many as a plan may have stands.
const STANDS: [&str; crate::site_plan::floor::MOST_STANDS] = [
    "motion.stand_1",
    "motion.stand_2",
    "motion.stand_3",
    "motion.stand_4",
    "motion.stand_5",
    "motion.stand_6",
    "motion.stand_7",
    "motion.stand_8",
    "motion.stand_9",
    "motion.stand_10",
    "motion.stand_11",
    "motion.stand_12",
];
/// Where the lean under a weight comes from.
const LEAN: Source = Source::derived(
    "Betti's theorem on the solved half-space, the column carried along by the block",
);
/// Where the quiet distance comes from.
const QUIET: Source = Source::derived(
    "search inwards along eight directions from 20 m to the edge of block or hole; distance from the pier's axis",
);

/// Name of a stand's calculation, counted from 0.
pub fn stand_id(i: usize) -> &'static str {
    STANDS.get(i).copied().unwrap_or("motion.stand")
}

/// Writes them.
pub(super) fn write(brief: &Brief, motion: &Motion, notes: &mut Notes) {
    for (id, frequency) in FREQUENCIES.into_iter().zip(&motion.frequencies) {
        self::frequency(id, hertz::get(*frequency), motion, notes);
    }
    for ((id, stand), tilt) in STANDS
        .into_iter()
        .zip(&brief.floor.stands.value)
        .zip(&motion.stands)
    {
        self::stand(id, stand, tilt, notes);
    }
    quiet_distance(brief, motion, notes);
}

fn frequency(id: &'static str, frequency_hz: f64, motion: &Motion, notes: &mut Notes) {
    let title = match id {
        "motion.frequency_1" => {
            "First frequency of block, joint, column, mount and load on the ground"
        }
        "motion.frequency_2" => "Second frequency of the same",
        _ => "A higher frequency of the same",
    };
    let mut working = Working::new(
        id,
        title,
        "det(K − ω² M) = 0, f = ω/2π",
        beam_element::SOURCE,
    );
    let mode = motion.modes.iter().find(|mode| {
        (hertz::get(mode.frequency.typical) - frequency_hz).abs() < 1e-6 * frequency_hz
    });
    if let Some(mode) = mode {
        working = working
            .with("share of ground", mode.ground_share_ratio, One)
            .with("share of joint", mode.joint_share_ratio, One)
            .with("share of column", mode.column_share_ratio, One)
            .with("share of mount", mode.mount_share_ratio, One);
    }
    notes.working(working.gives("f", frequency_hz, Unit::Hertz));
}

fn stand(id: &'static str, stand: &Stand, tilt: &StandTilt, notes: &mut Notes) {
    let Some(arcsec) = tilt.tilt_arcsec else {
        return;
    };
    let mut working = Working::new(
        id,
        format!("Lean from “{}”", stand.name),
        "θ = W λ(x, y)/G, λ the turn of the block over G",
        LEAN,
    )
    .with("W", stand.mass_kg * STANDARD_GRAVITY_M_S2, Unit::Newton)
    .with("x", stand.x_m, Unit::Metre)
    .with("y", stand.y_m, Unit::Metre);
    if let Some(by_ground) = tilt.block_tilt_by_ground_arcsec {
        working = working
            .with("θ in soft ground", by_ground.low, Arcsecond)
            .with("θ in stiff ground", by_ground.high, Arcsecond);
    }
    notes.working(working.gives("θ", arcsec, Arcsecond));
}

fn quiet_distance(brief: &Brief, motion: &Motion, notes: &mut Notes) {
    let Some(distance) = motion.quiet_distance_m else {
        return;
    };
    notes.working(
        Working::new(
            "motion.quiet_distance",
            "Distance from the pier's axis beyond which a person who comes there costs the star less than is asked, in the softest ground",
            "d with s(W λ(d)/G_low) = s_asked, the loudest direction counting",
            QUIET,
        )
        .with("W", brief.floor.walker_mass.value * gravity(), Newton)
        .with("s_asked", motion.budget.asked_growth_ratio, One)
        .gives("d", distance, Unit::Metre),
    );
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::decided::design_plan;
    use crate::halfspace::NoShelf;
    use crate::site_plan::SitePlan;

    #[test]
    fn frequencies_stands_and_quiet_distance_can_be_followed() {
        let design = design_plan(&SitePlan::unknown(), &NoShelf).unwrap();
        let value = |id: &str| {
            design
                .workings
                .iter()
                .find(|working| working.id == id)
                .map(|working| working.value)
        };
        assert_eq!(
            value(FREQUENCIES[0]),
            design.motion.frequencies.first().map(|f| hertz::get(*f))
        );
        assert_eq!(
            value(FREQUENCIES[1]),
            design.motion.frequencies.get(1).map(|f| hertz::get(*f))
        );
        assert_eq!(value(stand_id(0)), design.motion.stands[0].tilt_arcsec);
        assert_eq!(
            value("motion.quiet_distance"),
            design.motion.quiet_distance_m
        );
    }
}
