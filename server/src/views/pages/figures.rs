//! The figures that a step decides, chosen from those of the engine's stages.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Amount, Arcsecond, Units};
use stillground::stages::figures::{Figure, Shown};
use stillground::stages::motion::{figures as star, stand_id};
use stillground::stages::{
    anchors::figures as studs, block::figures as block, excavation::figures as pit,
    ground::figures as ground, pier::figures as column,
};

use super::number::Number;
use super::working;
use crate::forms::step::Step;
use crate::planned::Planned;

/// A named figure.
#[derive(Debug, Clone)]
pub struct FigureLine {
    /// What it is.
    pub label: String,
    /// The figure.
    pub number: Number,
    /// Anchor of its working; none where the figure was stated or is a count.
    pub how: Option<String>,
}

/// The figures of a step.
#[must_use]
pub fn of(step: Step, planned: &Planned, units: Units) -> Vec<FigureLine> {
    let Planned { brief, design, .. } = planned;
    let lines = |figures: &[Figure]| -> Vec<FigureLine> {
        figures
            .iter()
            .flat_map(|figure| lines(figure, brief, design, units))
            .collect()
    };
    match step {
        Step::Site => lines(&[
            ground::SHEAR_MODULUS,
            ground::SHEAR_WAVE_SPEED,
            ground::UNIT_WEIGHT,
            ground::POISSON_RATIO,
            ground::PRESUMED_BEARING,
            ground::FROST_DEPTH,
        ]),
        Step::Excavation => lines(&[
            pit::LENGTH,
            pit::WIDTH,
            pit::DEPTH,
            pit::VOLUME,
            pit::SPOIL_VOLUME,
            pit::SPOIL_DISTANCE,
            pit::BARROW_LOADS,
            pit::DIGGING,
        ]),
        Step::Footing => lines(&[
            block::LENGTH,
            block::WIDTH,
            block::DEPTH,
            block::VOLUME,
            block::ORDER_VOLUME,
            block::MASS,
            block::BEARING_PRESSURE,
            block::DRILL_AFTER,
            block::LOAD_AFTER,
            block::ROCKING_EAST_WEST,
            block::ROCKING_NORTH_SOUTH,
        ]),
        Step::Pier => lines(&[
            column::HEIGHT,
            column::OUTSIDE_DIAMETER,
            column::WALL,
            column::MASS,
            column::BENDING_STIFFNESS,
            column::BASE_JOINT,
            column::TOP_STIFFNESS,
            star::FIRST_FREQUENCY,
            star::SECOND_FREQUENCY,
        ]),
        Step::Anchors => lines(&[
            studs::HOLE_DIAMETER,
            studs::HOLE_DEPTH,
            studs::EMBEDMENT,
            studs::RESIN,
            studs::PRELOAD,
        ]),
        Step::Floor => {
            let mut rows = lines(&[star::LIMIT]);
            rows.extend(places(design, units));
            rows.extend(lines(&[
                star::WALK_RMS,
                star::WALK_PEAK,
                star::TRAIL,
                star::TRAIL_ON_SENSOR,
                star::WIND,
                star::THERMAL,
                star::SETTLING,
                star::KEEP_STANDING,
            ]));
            rows
        }
        Step::Plan => Vec::new(),
    }
}

/// A figure's line; a range has three.
fn lines(figure: &Figure, brief: &Brief, design: &Design, units: Units) -> Vec<FigureLine> {
    let line = |label: String, number| FigureLine {
        label,
        number,
        how: working::find(&design.workings, figure.id),
    };
    let of = |amount: Amount| Number::of(Some(amount.value), amount.unit, units);
    match (figure.of)(brief, design) {
        Shown::One(amount) => vec![line(figure.label.to_owned(), of(amount))],
        Shown::Range(spread) => [
            ("low", spread.low),
            ("typical", spread.typical),
            ("high", spread.high),
        ]
        .map(|(which, amount)| line(format!("{}, {which}", figure.label), of(amount)))
        .to_vec(),
        other => vec![line(
            figure.label.to_owned(),
            Number::words(other.say(units)),
        )],
    }
}

/// How far a person at each place tilts the top.
fn places(design: &Design, units: Units) -> Vec<FigureLine> {
    let places = design.motion.stands.iter().enumerate();
    let line = |(i, stand): (usize, &stillground::stages::motion::StandTilt)| FigureLine {
        label: format!("Tilt from “{}”", stand.name),
        number: Number::of(stand.tilt_arcsec, Arcsecond, units),
        how: working::find(&design.workings, stand_id(i)),
    };
    places.map(line).collect()
}
