//! People on the floor: what each does, what a lining buys, and for which ground the trade's figure holds.

use stillground::figure::{Arcsecond, Unit, Units};
use stillground::stages::motion::stands::{Isolation, Practice};

use super::{Chapter, Table, by_ground, grounds};
use crate::planned::Planned;

/// The quarters of the sky, clockwise from north.
const QUARTERS: [&str; 8] = [
    "north",
    "north-east",
    "east",
    "south-east",
    "south",
    "south-west",
    "west",
    "north-west",
];

/// The floor's chapters.
pub fn chapters(planned: &Planned) -> Vec<Chapter> {
    let (motion, units) = (&planned.design.motion, planned.brief.units);
    let mut chapters = Vec::new();
    if !motion.stands.is_empty() {
        chapters.push(stands(planned));
    }
    chapters.extend(
        motion
            .on_ground
            .isolation
            .as_ref()
            .map(|isolation| lining(isolation, units)),
    );
    chapters.extend(
        motion
            .on_ground
            .practice
            .as_ref()
            .map(|practice| trade(practice, units)),
    );
    chapters
}

fn stands(planned: &Planned) -> Chapter {
    let (motion, units) = (&planned.design.motion, planned.brief.units);
    let row = |stand: &stillground::stages::motion::StandTilt| {
        let mut figures = by_ground(stand.block_tilt_by_ground_arcsec, Unit::Arcsecond, units);
        figures.push(stand.bearing_deg.map_or_else(
            || "not known".to_owned(),
            |bearing| quarter(bearing).to_owned(),
        ));
        (stand.name.clone(), figures)
    };
    let mut columns = grounds();
    columns.push("Leans to".to_owned());
    Chapter {
        title: "What each person does to the pier",
        told: Vec::new(),
        words: vec![
            "The weight of somebody standing still dents the ground, and the block tilts into the dent."
                .to_owned(),
        ],
        table: Some(Table {
            names: "Person",
            columns,
            rows: motion.stands.iter().map(row).collect(),
        }),
        after: Vec::new(),
    }
}

fn lining(isolation: &Isolation, units: Units) -> Chapter {
    let row = |row: &stillground::stages::motion::stands::IsolationRow| {
        let figures = [
            units.say(
                row.rocking_n_m_per_rad / 1e6,
                Unit::MeganewtonMetrePerRadian,
            ),
            units.say(row.person_arcsec.typical, Arcsecond),
            units.say(row.push_arcsec.typical, Arcsecond),
        ];
        (
            crate::views::words::sentence(row.contact)
                .trim_end_matches('.')
                .to_owned(),
            figures.to_vec(),
        )
    };
    let person = format!(
        "Person at {}",
        units.say(isolation.person_at_m, Unit::Metre)
    );
    Chapter {
        title: "Does a soft lining round the block help?",
        told: isolation.words.clone(),
        words: Vec::new(),
        table: Some(Table {
            names: "Sides of the block",
            columns: vec![
                "Against rocking".to_owned(),
                person,
                "Hand’s push".to_owned(),
            ],
            rows: isolation.rows.iter().map(row).collect(),
        }),
        after: vec!["All three in typical ground, with the block of this plan.".to_owned()],
    }
}

fn trade(practice: &Practice, units: Units) -> Chapter {
    let row = |row: &stillground::stages::motion::stands::PracticeRow| {
        let mut figures = by_ground(Some(row.tilt_arcsec), Unit::Arcsecond, units);
        figures.push(units.say(row.holds_at_shear_wave_speed_m_s, Unit::MetrePerSecond));
        (
            crate::views::words::sentence(row.place)
                .trim_end_matches('.')
                .to_owned(),
            figures,
        )
    };
    let mut columns = grounds();
    columns.push("Rule holds at".to_owned());
    Chapter {
        title: "The trade’s figure for somebody beside the pier",
        told: vec![practice.words.clone()],
        words: Vec::new(),
        table: Some(Table { names: "Where the person stands", columns, rows: practice.rows.iter().map(row).collect() }),
        after: vec!["“Rule holds at” is the shear-wave speed of ground for which the trade’s figure would be right.".to_owned()],
    }
}

/// The quarter that a bearing points to.
fn quarter(bearing_deg: f64) -> &'static str {
    let eighth = (bearing_deg.rem_euclid(360.0) / 45.0).round() as usize;
    QUARTERS
        .get(eighth % QUARTERS.len())
        .copied()
        .unwrap_or("north")
}

#[cfg(test)]
mod tests {
    use super::quarter;

    #[test]
    fn a_bearing_is_said_by_its_nearest_quarter() {
        for (bearing, said) in [
            (0.0, "north"),
            (22.4, "north"),
            (22.6, "north-east"),
            (180.0, "south"),
            (359.0, "north"),
            (-90.0, "west"),
        ] {
            assert_eq!(quarter(bearing), said, "{bearing}");
        }
    }
}
