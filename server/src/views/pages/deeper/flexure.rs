//! What tightening bends.

use stillground::figure::{Kilonewton, MeganewtonMetrePerRadian, Megapascal, NewtonMetre, PerCent};
use stillground::units::millimetre;

use super::{Chapter, Table};
use crate::planned::Planned;

/// The chapter about plate and foot of the wall.
pub fn chapters(planned: &Planned) -> Vec<Chapter> {
    let units = planned.brief.units;
    let Some(flexure) = &planned.design.anchors.flexure else {
        return Vec::new();
    };
    let mpa = |stress| units.say(stress, Megapascal);
    let turn = |stiffness| units.say(stiffness, MeganewtonMetrePerRadian);
    let row = |name: &str, figure: String| (name.to_owned(), vec![figure]);
    let rows = vec![
        row(
            "Pull of each stud, at its highest",
            units.say(flexure.pull, Kilonewton),
        ),
        row(
            "Movement of the plate at the studs",
            units.to_feel(millimetre::get(flexure.plate)).to_string(),
        ),
        row("Stress in the wall", mpa(flexure.wall_stress)),
        row("Stress in the plate", mpa(flexure.plate_stress)),
        row("Yield strength", mpa(flexure.yield_strength)),
        row(
            "Of the yield strength",
            units.say(flexure.yield_ratio * 100.0, PerCent),
        ),
        row(
            "A fifth stays in hand up to",
            units.say(flexure.most_torque, NewtonMetre),
        ),
        row(
            "Height of wall that bends",
            units
                .to_measure(millimetre::get(flexure.wall_height))
                .to_string(),
        ),
        row("Foot against turning, edge held down", turn(flexure.closed)),
        row("Foot against turning, edge lifted", turn(flexure.lifted)),
        row("Foot against turning, on tight nuts", turn(flexure.on_nuts)),
    ];
    vec![Chapter {
        title: "What tightening bends: the plate and the foot of the wall",
        told: Vec::new(),
        words: flexure.says.clone(),
        table: Some(Table {
            names: "What",
            columns: vec![
                if flexure.acts {
                    "In this plan"
                } else {
                    "Were nothing under the plate"
                }
                .to_owned(),
            ],
            rows,
        }),
        after: Vec::new(),
    }]
}
