//! What moves the star: each disturbance with its share and verdict, what rings, what comes slowly, and what is allowed.

mod mount;

use stillground::figure::{Arcminute, Arcsecond, Kelvin, PerCent, Unit, Units};
use stillground::site_plan::load::Enclosure;
use stillground::stages::motion::conduct::ALONE;
use stillground::stages::motion::{Conduct, Disturbance, Housing, Knock, Measure, Motion};
use stillground::units::Outcome;

use super::{Chapter, Table};
use crate::views::verdict::per_cent;
use crate::views::words::answer;

const UNKNOWN: &str = "not known";
/// Growth of a star's width below which its figure says nothing, per cent.
const LEAST_GROWTH: f64 = 0.01;

/// The star's chapters.
pub fn chapters(motion: &Motion, units: Units) -> Vec<Chapter> {
    let first = [
        movers(motion, units),
        conduct(motion, units),
        knocks(motion, units),
    ];
    let last = [slow(motion, units), allowed(motion, units)];
    first
        .into_iter()
        .chain(mount::chapter(motion, units))
        .chain(housings(motion, units))
        .chain(last)
        .collect()
}

fn movers(motion: &Motion, units: Units) -> Chapter {
    let say = |value: Option<f64>| {
        value.map_or_else(|| UNKNOWN.to_owned(), |value| units.say(value, Arcsecond))
    };
    let share = |one: &Disturbance| {
        one.share_ratio
            .map_or_else(|| "–".to_owned(), |share| units.say(100.0 * share, PerCent))
    };
    let row = |one: &Disturbance| {
        let wider = one.star_width_arcsec.zip(motion.star).map_or_else(
            || UNKNOWN.to_owned(),
            |(width, star)| growth(100.0 * (width / star.seeing_arcsec - 1.0), units),
        );
        let figures = [
            say(one.arcsec),
            say(one.worst_arcsec),
            share(one),
            wider,
            verdict(one),
        ];
        (one.title.to_owned(), figures.to_vec())
    };
    let columns = [
        "Typical",
        "At worst",
        "Share",
        "Star wider by",
        "In the limit?",
    ]
    .map(str::to_owned)
    .to_vec();
    Chapter {
        title: "What moves the star, and by how much",
        told: Vec::new(),
        words: motion.summary.first().cloned().into_iter().collect(),
        table: Some(Table {
            names: "What happens",
            columns,
            rows: motion.disturbances.iter().map(row).collect(),
        }),
        after: after(motion, units),
    }
}

fn growth(per_cent: f64, units: Units) -> String {
    if per_cent < LEAST_GROWTH {
        "nothing that shows".to_owned()
    } else {
        units.say(per_cent, PerCent)
    }
}

fn after(motion: &Motion, units: Units) -> Vec<String> {
    let budget = &motion.budget;
    let limit = match budget.measure {
        Measure::EyeMovement => format!(
            "by its movement, with the limit of {}",
            units.say(budget.arcsec, Arcsecond)
        ),
        Measure::StarWidth | Measure::FrameBlur => format!(
            "by how much wider it makes the star, with the limit of {}",
            units.say(100.0 * budget.asked_growth_ratio, PerCent)
        ),
    };
    let mut said = vec![format!(
        "What comes with nobody near is compared {limit}, at worst: the unfavourable twentieth of ground and load, with a rigid load on \
         the pier. What people do has its rule below. A share is that of the widening; the second walker comes on top of the first and \
         has none."
    )];
    if let Some(star) = motion.star {
        said.push(format!(
            "Widths add as squares. With all of it once in one exposure a star of {} grows by {}.",
            units.say(star.seeing_arcsec, Arcsecond),
            units.say(100.0 * star.growth_ratio, PerCent)
        ));
    }
    said
}

/// Whether the movement is within the limit; what people do is never judged.
fn verdict(one: &Disturbance) -> String {
    if ALONE.contains(&one.id) {
        answer(one.verdict).to_owned()
    } else {
        "–".to_owned()
    }
}

/// What people do while the telescope exposes, what each of it costs, and its rule.
fn conduct(motion: &Motion, units: Units) -> Chapter {
    let row = |one: &Conduct| {
        let cost = |end: fn(Outcome<f64>) -> f64| {
            one.star_growth_ratio
                .map_or_else(|| UNKNOWN.to_owned(), |ratio| per_cent(end(ratio), units))
        };
        let figures = [
            cost(|ratio| ratio.expected),
            cost(|ratio| ratio.worst),
            one.rule.clone(),
        ];
        (one.event.to_owned(), figures.to_vec())
    };
    let columns = ["Star wider by", "At worst", "Rule"].map(str::to_owned);
    Chapter {
        title: "What people do, and what it costs the star",
        told: Vec::new(),
        words: vec![
            "Each happens once in an exposure. None of it fails the pier: it costs one exposure, or nothing where the rule is kept."
                .to_owned(),
        ],
        table: Some(Table {
            names: "Event",
            columns: columns.to_vec(),
            rows: motion.conduct.iter().map(row).collect(),
        }),
        after: Vec::new(),
    }
}

fn knocks(motion: &Motion, units: Units) -> Chapter {
    let time = |time: Option<f64>| match time {
        Some(0.0) => "at once".to_owned(),
        Some(time) => units.say(time, Unit::Second),
        None => "over ten minutes".to_owned(),
    };
    let row = |name: &str, knock: Option<Knock>| {
        let figures = match knock {
            Some(knock) => vec![
                units.say(knock.arcsec, Arcsecond),
                time(knock.settle_s),
                time(knock.worst_settle_s),
            ],
            None => vec![UNKNOWN.to_owned(); 3],
        };
        (name.to_owned(), figures)
    };
    let budget = &motion.budget;
    Chapter {
        title: "What rings, and for how long",
        told: Vec::new(),
        words: Vec::new(),
        table: Some(Table {
            names: "Knock",
            columns: [
                "First swing, at most",
                "Settles in, at most",
                "In the worst ground",
            ]
            .map(str::to_owned)
            .to_vec(),
            rows: vec![
                row("A bump by hand at the telescope", motion.bump),
                row("A slew stops", motion.slew),
                row("A flip across the meridian ends", motion.flip),
            ],
        }),
        after: vec![format!(
            "A bump has settled when the star moves by less than {}; it may take {}. {} ({})",
            units.say(budget.arcsec, Arcsecond),
            units.say(budget.settle_s, Unit::Second),
            crate::views::words::sentence(&budget.settle_why),
            budget.settle_source
        )],
    }
}

fn slow(motion: &Motion, units: Units) -> Chapter {
    let heat = &motion.heat;
    let arcsec = |value| units.say(value, Arcsecond);
    let mut rows = vec![
        (
            "Column warmer on one side, the whole turn".to_owned(),
            vec![arcsec(heat.arcsec)],
        ),
        (
            "The same in a minute, while it comes about".to_owned(),
            vec![arcsec(heat.arcsec_per_min)],
        ),
        (
            "The same within one exposure, not guided".to_owned(),
            vec![arcsec(heat.unguided_arcsec)],
        ),
    ];
    match motion.season {
        Some(season) => {
            rows.push((
                "Polar axis, lean in a year".to_owned(),
                vec![units.say(season.arcmin_per_year, Arcminute)],
            ));
            rows.push((
                "Drift in declination by that lean, in a minute".to_owned(),
                vec![arcsec(season.drift_arcsec_per_min)],
            ));
        }
        None => rows.push((
            "Polar axis, lean in a year".to_owned(),
            vec!["not known in advance in this ground".to_owned()],
        )),
    }
    Chapter {
        title: "What comes slowly",
        told: Vec::new(),
        words: vec![format!(
            "One side of the column {} warmer than the other comes about within {} of dusk.",
            units.say(motion.thermal_difference_k, Kelvin),
            units.say(heat.over_s / 3600.0, Unit::Hour)
        )],
        table: Some(Table {
            names: "Drift",
            columns: vec!["How much".to_owned()],
            rows,
        }),
        after: Vec::new(),
    }
}

/// The same wind in the three housings; none where the ground is not known.
fn housings(motion: &Motion, units: Units) -> Option<Chapter> {
    let row = |housing: &Housing| {
        let name = match housing.enclosure {
            Enclosure::Open => "In the open",
            Enclosure::RollOff => "Walls, and a roof that rolls away",
            Enclosure::Dome => "A dome with a slit",
        };
        let arcsec = |value| units.say(value, Arcsecond);
        let speed = units.say(housing.speed_m_s, Unit::WindMetrePerSecond);
        (
            name.to_owned(),
            vec![
                speed,
                arcsec(housing.worst_arcsec),
                arcsec(housing.gust_arcsec),
            ],
        )
    };
    let rows = motion.wind.as_ref()?.housings.iter().map(row).collect();
    Some(Chapter {
        title: "What walls keep off the telescope",
        told: Vec::new(),
        words: vec!["How much of the wind reaches the telescope is a judgement: nobody has measured it at your site.".to_owned()],
        table: Some(Table { names: "Housing", columns: ["Wind", "Flutter", "One gust in ten minutes"].map(str::to_owned).to_vec(), rows }),
        after: vec!["With the mount's own softness, in the worst ground; the check judges the pier with a rigid load. A single gust spoils one exposure.".to_owned()],
    })
}

fn allowed(motion: &Motion, units: Units) -> Chapter {
    let budget = &motion.budget;
    Chapter {
        title: "How far it may move, and why",
        told: Vec::new(),
        words: vec![
            format!(
                "The limit is {}, as a swing all through one exposure. {}",
                units.say(budget.arcsec, Arcsecond),
                crate::views::words::sentence(&budget.why)
            ),
            format!(
                "Where it comes from: {}. The star growth and the settling time that you accept can be changed at the step “Pier and load”.",
                budget.source
            ),
        ],
        table: None,
        after: Vec::new(),
    }
}
